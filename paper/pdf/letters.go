package pdf

import (
	"slices"
	"unicode/utf8"
)

// letters is a set of letters.
type letters struct {
	ascii  [utf8.RuneSelf]bool // most of them
	others map[rune]bool
}

func (s *letters) add(r rune) {
	if r < utf8.RuneSelf {
		s.ascii[r] = true
		return
	}
	if s.others == nil {
		s.others = map[rune]bool{}
	}
	s.others[r] = true
}

// String returns the letters, in the order of their numbers.
func (s *letters) String() string {
	var all []rune
	for r, in := range s.ascii {
		if in {
			all = append(all, rune(r))
		}
	}
	for r := range s.others {
		all = append(all, r)
	}
	slices.Sort(all)
	return string(all)
}

// lettersUsed is which letters of the two faces are used.
type lettersUsed struct{ regular, bold letters }

func (u *lettersUsed) of(bold bool) *letters {
	if bold {
		return &u.bold
	}
	return &u.regular
}

// add adds those of another.
func (u *lettersUsed) add(other *lettersUsed) {
	for _, bold := range []bool{false, true} {
		for _, r := range other.of(bold).String() {
			u.of(bold).add(r)
		}
	}
}
