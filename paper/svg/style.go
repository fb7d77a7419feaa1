package svg

import (
	"fmt"
	"strings"

	"underlay/geometry"
	"underlay/paper"
)

// style is how a mark is drawn, and what it is: the marks of a group share it.
type style struct {
	kind string // of the role
	how  how
	pen  paper.Pen       // of a line; of all others its ink alone
	size geometry.Length // of a dot, across, or of letters
	bold bool
}

// how is what a mark is drawn as.
type how uint8

const (
	filled how = iota
	dotted
	stroked
	written
)

// group goes on in a group of a style, a new one where it has other attributes.
func (s *picture) group(y style) {
	if y == s.style && s.open != "" {
		return
	}
	attributes, ok := s.styles[y]
	if !ok {
		attributes = y.attributes()
		s.styles[y] = attributes
	}
	if s.style = y; attributes == s.open {
		return
	}
	s.close()
	s.line(`<g %s>`, attributes)
	s.open = attributes
}

// close closes the open group, if there is one.
func (s *picture) close() {
	s.end()
	if s.open != "" {
		s.line(`</g>`)
	}
	s.open = ""
}

// family is the name the embedded typeface goes by.
const family = "Go"

// attributes returns what draws in a style; the first says what the mark is.
func (y style) attributes() string {
	ink, a := hex(y.pen.Ink), ""
	if y.kind != "" {
		a = fmt.Sprintf(`class="%s" `, escaped(y.kind))
	}
	switch y.how {
	case filled:
		return a + fmt.Sprintf(`fill="%s"`, ink)
	case dotted:
		return a + fmt.Sprintf(`fill="none" stroke="%s" stroke-width="%s" stroke-linecap="round"`, ink, decimal(y.size))
	case written:
		weight := ""
		if y.bold {
			weight = ` font-weight="bold"`
		}
		return a + fmt.Sprintf(`font-family="%s, sans-serif" font-size="%s"%s fill="%s"`, family, decimal(y.size), weight, ink)
	}
	// A PDF's lines end butt and meet in a mitre up to ten times their width (ISO 32000-1,
	// Table 52); the first is what SVG does too, the second is four times there.
	a += fmt.Sprintf(`fill="none" stroke="%s" stroke-width="%s" stroke-miterlimit="10"`, ink, decimal(y.pen.Width))
	var dashes []string
	for _, l := range y.pen.Dashes() {
		dashes = append(dashes, decimal(geometry.Length(l)))
	}
	if dashes != nil {
		a += fmt.Sprintf(` stroke-dasharray="%s"`, strings.Join(dashes, " "))
	}
	return a
}

// hex writes an ink the way a style sheet does.
func hex(i paper.Ink) string { return fmt.Sprintf("#%02x%02x%02x", i.R, i.G, i.B) }
