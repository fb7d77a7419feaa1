package words

import (
	"strings"
)

// Nearest returns the known word most like word, and whether any is like enough to be what was
// meant: a slip or two of the keyboard, or a word broken off or drawn out. Of two equally near,
// the first wins.
func Nearest(word string, known []string) (string, bool) {
	w := plainWord(word)
	best, least := "", len(w)/3+1
	if len(w) < 3 {
		least = 1
	}
	for _, k := range known {
		p := plainWord(k)
		d := slips(w, p, least)
		brokenOff := len(w) >= 3 && strings.HasPrefix(p, w) || len(p) >= 2 && strings.HasPrefix(w, p)
		if d > 0 && brokenOff {
			d = 1
		}
		if d < least || d == least && best == "" {
			best, least = k, d
		}
	}
	return best, best != ""
}

// Instead says what to write in place of an unknown word: the nearest known one, or any of them.
func Instead(word string, known []string) string {
	if near, ok := Nearest(word, known); ok {
		return Quote(near)
	}
	return OneOf(known)
}

// plainWord takes off what people mix up without noticing: capitals, and the sign that joins
// two words.
func plainWord(s string) string {
	return strings.NewReplacer("_", "-", " ", "-", ".", "-").Replace(strings.ToLower(strings.TrimSpace(s)))
}

// slips counts the letters left out, put in, changed or swapped with a neighbour between two
// words (the optimal string alignment distance). Words further apart than limit may be
// counted as any number above it.
func slips(a, b string, limit int) int {
	s, t := []rune(a), []rune(b)
	if len(s)-len(t) > limit || len(t)-len(s) > limit {
		return limit + 1
	}
	before, last := make([]int, len(t)+1), make([]int, len(t)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(s); i++ {
		row := make([]int, len(t)+1)
		row[0] = i
		for j := 1; j <= len(t); j++ {
			change := 1
			if s[i-1] == t[j-1] {
				change = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+change)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last = last, row
	}
	return last[len(t)]
}
