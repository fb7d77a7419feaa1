package plan

import (
	"math"
	"slices"

	"underlay/geometry"
)

// Overlap is a pass whose prints lie on those of an earlier one on the same face, where the job
// does not say that they are meant to.
type Overlap struct {
	Pass, On *PassPlan
	Prints   int // of Pass, that lie on any of On
	remedy   func() Remedy
}

// Remedy returns what would avoid the overlap.
func (o Overlap) Remedy() Remedy { return o.remedy() }

// overlapsWith lists which of the passes before it, on a face they share, a pass lies on. Prints
// set on those of another lie on them as they should, and those in openings are held against the
// prints round them alone.
func (p *PassPlan) overlapsWith(before []*PassPlan) []Overlap {
	if p.Pass.Over || p.Pass.On != nil {
		return nil
	}
	var all []Overlap
	for _, q := range before {
		if p.Pass.Between != nil && p.Pass.Between != q.Pass || !p.sharesFace(q) {
			continue
		}
		if n := p.countOn(q); n > 0 {
			all = append(all, Overlap{Pass: p, On: q, Prints: n})
		}
	}
	return all
}

// sharesFace tells whether two passes are printed on the same face.
func (p *PassPlan) sharesFace(q *PassPlan) bool {
	return p.Pass.Face == "" || q.Pass.Face == "" || p.Pass.Face == q.Pass.Face
}

// countOn returns how many of its prints lie on prints of q. What only touches does not lie on it.
func (p *PassPlan) countOn(q *PassPlan) int {
	index := newOutlineIndex(q.outlines())
	n := 0
	for _, print := range p.Prints {
		if index.overlaps(print.Outline) || print.Seam && slices.ContainsFunc(p.again(print), index.overlaps) {
			n++
		}
	}
	return n
}

// again lists where a print across the seam of a shade lies.
func (p *PassPlan) again(print Print) []geometry.Outline {
	return p.layout.area.Again(print, print.Outline)
}

// outlines lists where the prints lie; of one across the seam of a shade, twice.
func (p *PassPlan) outlines() []geometry.Outline {
	all := make([]geometry.Outline, 0, len(p.Prints))
	for _, print := range p.Prints {
		if print.Seam {
			all = append(all, p.again(print)...)
		} else {
			all = append(all, print.Outline)
		}
	}
	return all
}

// outlineIndex finds outlines by where they lie: each is in the square of a grid in which the
// middle of its bounds is.
type outlineIndex struct {
	outlines []geometry.Outline
	boxes    []geometry.Rect
	from     geometry.Point  // top left corner of the grid
	side     geometry.Length // of a square
	columns  int
	starts   []int32 // of each square, where its outlines begin in order; one more at the end
	order    []int32
	half     geometry.Size // of the largest bounds
}

func newOutlineIndex(outlines []geometry.Outline) *outlineIndex {
	x := &outlineIndex{outlines: outlines, boxes: make([]geometry.Rect, len(outlines))}
	var all geometry.Rect
	for i, o := range outlines {
		b := o.Bounds()
		x.boxes[i] = b
		if i == 0 {
			all = b
		}
		all = all.Union(b)
		x.half = geometry.Size{W: max(x.half.W, b.W()/2), H: max(x.half.H, b.H()/2)}
	}
	x.from = all.Min
	// Squares about as large as what lies in them, and no more of them than outlines.
	room := math.Sqrt(float64(all.W()) * float64(all.H()) / float64(max(1, len(outlines))))
	x.side = max(2*x.half.W, 2*x.half.H, geometry.Length(room), 1e-3)
	x.columns = int(all.W()/x.side) + 1
	squares := x.columns * (int(all.H()/x.side) + 1)
	x.starts, x.order = make([]int32, squares+1), make([]int32, len(outlines))
	square := func(i int) int {
		c := x.boxes[i].Centre().Sub(x.from)
		return int(c.Y/x.side)*x.columns + int(c.X/x.side)
	}
	for i := range outlines {
		x.starts[square(i)+1]++
	}
	for i := range squares {
		x.starts[i+1] += x.starts[i]
	}
	next := append([]int32(nil), x.starts...)
	for i := range outlines {
		s := square(i)
		x.order[next[s]] = int32(i)
		next[s]++
	}
	return x
}

// overlaps tells whether an outline overlaps one of those in the index.
func (x *outlineIndex) overlaps(o geometry.Outline) bool {
	b := o.Bounds()
	low, high := b.Min.Sub(x.from), b.Max.Sub(x.from)
	rows := (len(x.starts) - 1) / x.columns
	left, right := max(0, int((low.X-x.half.W)/x.side)), min(x.columns-1, int((high.X+x.half.W)/x.side))
	top, bottom := max(0, int((low.Y-x.half.H)/x.side)), min(rows-1, int((high.Y+x.half.H)/x.side))
	for row := top; row <= bottom; row++ {
		if left > right {
			break
		}
		first, last := x.starts[row*x.columns+left], x.starts[row*x.columns+right+1]
		for _, i := range x.order[first:last] {
			if x.boxes[i].Overlaps(b) && x.outlines[i].Overlaps(o) {
				return true
			}
		}
	}
	return false
}
