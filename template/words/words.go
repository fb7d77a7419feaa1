package words

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Counted is a number with its word.
func Counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// PlainNumber writes a whole number with commas between its thousands.
func PlainNumber(n float64) string {
	s := fmt.Sprintf("%.0f", n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

// UpperFirst begins a text with a capital.
func UpperFirst(s string) string {
	first, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(first)) + s[n:]
}

// Article puts "a" or "an" before a word.
func Article[S ~string](word S) string {
	if strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + string(word)
	}
	return "a " + string(word)
}

// Texts returns words of any kind as texts.
func Texts[S ~string](words []S) []string {
	texts := make([]string, len(words))
	for i, w := range words {
		texts[i] = string(w)
	}
	return texts
}

// InWords joins names: "a", "a and b", "a, b and c".
func InWords(names []string) string { return Joined(names, "and") }

// OneOf lists words to choose from: `"a", "b" or "c"`.
func OneOf[S ~string](words []S) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = Quote(string(w))
	}
	return Joined(quoted, "or")
}

// Joined joins words with commas, the last with a word of its own.
func Joined(words []string, word string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " " + word + " " + words[last]
}

// longestShown is how much of the maker's own text a message repeats.
const longestShown = 60

// Quote shows the maker's own text in a message, on one line, cut short, and so that a job file
// takes it: in double quotes, or in single ones where there are double ones in it.
func Quote(s string) string {
	text := Shown(s)
	switch {
	case !strings.ContainsAny(text, `"\\`):
		return `"` + text + `"`
	case !strings.Contains(text, "'"):
		return "'" + text + "'"
	}
	return TOML(text)
}

// Unseen tells whether a character moves what comes after it instead of being seen: one that
// controls a terminal, ends a line, or turns the direction of writing.
func Unseen(r rune) bool {
	return unicode.IsControl(r) || r == 0x2028 || r == 0x2029 || r == 0xfeff || unicode.Is(unicode.Bidi_Control, r)
}

// Shown is the maker's own text on one line, cut short; what cannot be seen by its number.
func Shown(s string) string {
	var clean strings.Builder
	for _, r := range s {
		switch {
		case strings.ContainsRune("\n\r\t\v\f\u2028\u2029", r):
			clean.WriteByte(' ')
		case Unseen(r):
			fmt.Fprintf(&clean, "<%U>", r)
		default:
			clean.WriteRune(r)
		}
	}
	r := []rune(clean.String())
	if len(r) > longestShown {
		return string(r[:longestShown-1]) + "…"
	}
	return clean.String()
}
