package template

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// counted is a number with its word.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// plainNumber writes a whole number with commas between its thousands.
func plainNumber(n float64) string {
	s := fmt.Sprintf("%.0f", n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

// upperFirst begins a text with a capital.
func upperFirst(s string) string {
	first, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(first)) + s[n:]
}

// article puts "a" or "an" before a word.
func article(word string) string {
	if strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}

// inWords joins names: "a", "a and b", "a, b and c".
func inWords(names []string) string { return joined(names, "and") }

// oneOf lists words to choose from: `"a", "b" or "c"`.
func oneOf(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = quote(w)
	}
	return joined(quoted, "or")
}

// joined joins words with commas, the last with a word of its own.
func joined(words []string, word string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " " + word + " " + words[last]
}

// longestShown is how much of the maker's own text a message repeats.
const longestShown = 60

// quote shows the maker's own text in a message: in double quotes, on one line, cut short.
func quote(s string) string { return `"` + shown(s) + `"` }

// shown is the maker's own text on one line, cut short.
func shown(s string) string {
	clean := strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || r == 0x2028 || r == 0x2029 {
			return ' '
		}
		return r
	}, s)
	r := []rune(clean)
	if len(r) > longestShown {
		return string(r[:longestShown-1]) + "…"
	}
	return clean
}
