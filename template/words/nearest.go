package words

import (
	"strings"
	"unicode/utf8"
)

// Nearest returns the known word that word is nearly, and whether there is one: a slip of the
// keyboard; more of them, one for every three letters, where both words begin alike; or a word
// broken off or drawn out. Of two equally near, the first wins.
func Nearest(word string, known []string) (string, bool) {
	w := Plain(word)
	letters := len([]rune(w))
	most := max(1, letters/3)
	if letters < 3 {
		most = 0
	}
	best, least := "", most+1
	for _, k := range known {
		p := Plain(k)
		d := slips(w, p, most)
		if d > 1 && !beginAlike(w, p) {
			d = most + 1
		}
		if d > 1 && letters >= 3 && strings.HasPrefix(p, w) || d > 0 && drawnOut(w, p) {
			d = 1
		}
		if d < least || d == 1 && best == "" && drawnOut(w, p) {
			best, least = k, d
		}
	}
	return best, best != ""
}

func beginAlike(a, b string) bool {
	first, n := utf8.DecodeRuneInString(a)
	return n > 0 && strings.HasPrefix(b, string(first))
}

// drawnOut tells whether a word begins with a known one: of one or two letters, with no more
// than one after them.
func drawnOut(word, known string) bool {
	n := len([]rune(known))
	return strings.HasPrefix(word, known) && (n >= 3 || n == 2 && len([]rune(word)) == 3)
}

// Instead says what to write in place of an unknown word: the nearest known one, or any of them.
func Instead(word string, known []string) string {
	if near, ok := Nearest(word, known); ok {
		return Quote(near)
	}
	return OneOf(known)
}

// Plain takes off what people mix up without noticing: capitals, and the sign that joins
// two words.
func Plain(s string) string {
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
