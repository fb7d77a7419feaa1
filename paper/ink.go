package paper

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/image/colornames"
)

// Ink is a colour as 8-bit red, green and blue. The zero Ink is black.
type Ink struct{ R, G, B uint8 }

// Grey returns a grey: 0 is black, 255 white.
func Grey(level uint8) Ink { return Ink{level, level, level} }

// String writes the ink as CSS does, "#5f7a3a".
func (k Ink) String() string { return fmt.Sprintf("#%02x%02x%02x", k.R, k.G, k.B) }

// rebecca is the one named colour of CSS that SVG 1.1 does not have.
var rebecca = Ink{0x66, 0x33, 0x99}

// NamedInk returns the colour that CSS has of a name (CSS Color Module Level 4, section 6.1). Capitals
// mean nothing, nor do spaces and hyphens between words: "Light blue" is lightblue.
func NamedInk(name string) (Ink, bool) {
	plain := strings.ToLower(strings.Map(func(r rune) rune {
		if strings.ContainsRune(" \t-_", r) {
			return -1
		}
		return r
	}, name))
	if plain == "rebeccapurple" {
		return rebecca, true
	}
	c, ok := colornames.Map[plain]
	return Ink{c.R, c.G, c.B}, ok
}

// InkNames lists what NamedInk knows, in alphabetical order.
func InkNames() []string {
	names := append(slices.Clone(colornames.Names), "rebeccapurple")
	slices.Sort(names)
	return names
}

var hexInk = regexp.MustCompile(`^#([0-9a-f]{3}|[0-9a-f]{6})$`)

// ParseInk reads a colour as "#5f7a3a", "#5a3" for "#55aa33", or by its CSS name; large and small
// letters are the same. ok tells whether it is one.
func ParseInk(text string) (ink Ink, ok bool) {
	text = strings.ToLower(strings.TrimSpace(text))
	found := hexInk.FindStringSubmatch(text)
	if found == nil {
		return NamedInk(text)
	}
	digits := found[1]
	n, _ := strconv.ParseUint(digits, 16, 32)
	if len(digits) == 3 {
		// A figure stands for two of its kind: 17 times as much.
		return Ink{uint8(n>>8) * 17, uint8(n>>4&15) * 17, uint8(n&15) * 17}, true
	}
	return Ink{uint8(n >> 16), uint8(n >> 8), uint8(n)}, true
}
