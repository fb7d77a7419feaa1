package svg

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
)

// look is a shape as it is turned: drawn once, and used at many places.
type look struct {
	shape *paper.Shape
	turn  geometry.Angle // each use turns it, but where the view's scale is not even
	scale paper.Scale
}

func lookOf(shape *paper.Shape, at paper.Place, scale paper.Scale) look {
	if scale.Of(geometry.Pt(1, 1)) == geometry.Pt(1, 1) {
		return look{shape, 0, scale}
	}
	return look{shape, at.Turn, scale}
}

// leastUses is how often a look must come to be shorter so.
const leastUses = 3

// count finds the looks that come often, in the order they are first met.
func (s *picture) count(views []paper.View) {
	uses := map[look]int{}
	count := func(shape *paper.Shape, at paper.Place, scale paper.Scale) {
		l := lookOf(shape, at, scale)
		if uses[l]++; uses[l] == 1 {
			s.looks = append(s.looks, l)
		}
	}
	for _, v := range views {
		v.Stamps(
			func(m paper.Stroke) { count(m.Shape, m.Place, v.Scale) },
			func(m paper.Fill) {
				if even := v.Scale.Of(geometry.Pt(1, 1)) == geometry.Pt(1, 1); !even || m.Shape.Disc() == 0 {
					count(m.Shape, m.Place, v.Scale)
				}
			})
	}
	s.looks = slices.DeleteFunc(s.looks, func(l look) bool { return uses[l] < leastUses })
	s.numbers = map[look]int{}
	for i, l := range s.looks {
		s.numbers[l] = i + 1
	}
}

// linking returns the declaration that uses need; nothing where there are none.
func (s *picture) linking() string {
	if len(s.looks) == 0 || !s.old {
		return ""
	}
	return ` xmlns:xlink="http://www.w3.org/1999/xlink"`
}

// define draws the shapes for use.
func (s *picture) define(looks []look) {
	if len(looks) == 0 {
		return
	}
	s.line(`<defs>`)
	for i, l := range looks {
		s.out.WriteString(`<path id="` + escaped(s.ids))
		s.out.WriteString(strconv.Itoa(i + 1))
		s.out.WriteString(`" d="`)
		s.see(paper.View{Scale: l.scale})
		for _, p := range l.shape.Turned(l.turn) {
			s.piece(p)
		}
		s.line(`"/>`)
	}
	s.line(`</defs>`)
}

// use draws a shape at a place, painted as its group says; false: it is not one for use.
func (s *picture) use(shape *paper.Shape, at paper.Place, r paper.Role) bool {
	if !shape.Often() {
		return false
	}
	l := lookOf(shape, at, s.view.Scale)
	n, ok := s.numbers[l]
	if !ok {
		return false
	}
	b := append(s.out.AvailableBuffer(), `<use `...)
	if s.old {
		b = append(b, `xlink:`...)
	}
	b = append(append(append(b, `href="#`...), escaped(s.ids)...), strconv.Itoa(n)...)
	p := s.place(at.At)
	b = appendAt(append(b, '"'), p)
	if turn := at.Turn - l.turn; turn != 0 {
		b = fmt.Appendf(b, ` transform="rotate(%s %s %s)"`, strconv.FormatFloat(math.Round(float64(turn)*1e5)/1e5, 'f', -1, 64), decimal(p.X), decimal(p.Y))
	}
	s.finish(b, r)
	return true
}
