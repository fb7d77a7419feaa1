package guide

import (
	"math"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// numberHeights are the heights of the numbers on prints (ISO 3098, and below it what tiny
// blocks leave room for).
var numberHeights = []geometry.Length{7, 5, 3.5, 2.5, 1.8, 1.3, 0.9, 0.6}

// drawPrints draws every print of the face: footprint, wood, touch-down dot, number, arrow.
func (g *guide) drawPrints() {
	for i, p := range g.face.Passes {
		pen := g.pens.Pass(i)
		g.drawOutlines(p, p.Pass.Block.Face, pen, "edge")
		if wood := p.Pass.Block.Wood; !wood.None() {
			g.drawOutlines(p, wood, g.pens.Wood, "wood")
		}
		g.drawDots(p)
	}
	for i, p := range g.face.Passes {
		g.drawNumbers(p, i)
	}
}

// drawOutlines draws an outline of a pass's block, given in the block's own frame, round every
// print.
func (g *guide) drawOutlines(p plan.FacePass, outline geometry.Outline, pen paper.Pen, kind string) {
	shape := paper.NewShape(outline.Path())
	for i, print := range p.Prints {
		role := paper.Role{Kind: kind, Number: p.First + i}
		at := paper.Place{At: print.Origin, Turn: print.Turn}
		for n, o := range g.face.Item.Area.Again(print, outline.Place(print.Origin, print.Turn).Outline) {
			if n == 0 {
				g.Stamp(shape, at, pen, role)
			} else { // what comes in at a seam's other side
				g.Stamp(paper.NewShape(o.Path()), paper.Place{}, pen, role)
			}
			g.takeEdge(o)
		}
	}
}

// takeEdge remembers where an outline runs, if there are passes that may lie on each other.
func (g *guide) takeEdge(o geometry.Outline) {
	if len(g.face.Passes) < 2 {
		return
	}
	const step, air = 3 * geometry.Millimetre, 0.2 * geometry.Millimetre
	corners := o.Corners()
	if c, r, round := o.Round(); round {
		n := geometry.Angle(math.Ceil(2 * math.Pi * float64(r/step)))
		for a := geometry.Angle(0); a < n; a++ {
			corners = append(corners, c.Add(geometry.Pt(r, 0).Turn(a/n*360)))
		}
	}
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		side, n := b.Sub(a), 1.0
		if side.X != 0 && side.Y != 0 {
			n = math.Ceil(float64(side.Norm() / step))
		}
		for k := range int(n) {
			from, to := a.Add(side.Mul(float64(k)/n)), a.Add(side.Mul(float64(k+1)/n))
			g.lines.Take(geometry.Line(from, to).Bounds().Grow(air))
		}
	}
}

// drawDots puts a dot in the touch-down corner of every print, just inside the footprint.
func (g *guide) drawDots(p plan.FacePass) {
	r := dotRadius(p.Pass.Block)
	dot := paper.Disc(r)
	for _, print := range p.Prints {
		in := print.Origin.Sub(print.TouchDown)
		at := print.TouchDown
		if d := in.Norm(); d > 0 {
			// A square corner's dot then clears both edges by half its radius.
			at = at.Add(in.Mul(min(1, float64(2.1*r/d))))
		}
		g.StampFill(dot, paper.Place{At: at}, paper.Ink{}, paper.Role{Kind: "dot"})
		g.crowd.Take(geometry.RectAround(at, geometry.Size{W: 2 * r, H: 2 * r}))
	}
}

func dotRadius(b *job.Block) geometry.Length {
	return max(0.15, min(1.4, min(b.Size.W, b.Size.H)*0.02))
}

// marks is how number and arrow stand by the middle of a print: side by side, above or below
// it, clear of both lines through it.
type marks struct {
	middle geometry.Point  // in the face's frame
	arrow  geometry.Length // its length
	off    geometry.Length // kept from both lines
	height geometry.Length // of the number
}

// arrangement returns the marks that fit a pass's block, its numbers of the given digits. The
// number of a small block takes up more of it, to be read at all.
func arrangement(p *job.Pass, digits string) marks {
	middle, depth := deepest(p.Block)
	s := 2 * depth
	wide := s
	if p.Block.Shape == job.RectangleFace && !p.Turns.AnyAside() {
		wide = p.Block.Size.W
	}
	m := marks{middle: middle, arrow: min(16, s*0.2), off: s * 0.07}
	room := wide/2 - 2*m.off
	m.height = numberHeights[len(numberHeights)-1]
	for _, h := range numberHeights {
		if h <= max(s*0.09, min(2.5, s*0.2)) && paper.TextWidth(digits, h, true) <= room {
			m.height = h
			break
		}
	}
	return m
}

// deepest returns the point of a face that is farthest from its edge, and how far: the centre,
// but for an outline of the maker's own. That is looked for on a grid, then ever closer.
func deepest(b *job.Block) (geometry.Point, geometry.Length) {
	best, most := geometry.Point{}, min(b.Size.W, b.Size.H)/2
	if b.Shape != job.OutlineFace {
		return best, most
	}
	const steps = 12
	corners := b.Face.Corners()
	most = 0
	for span := max(b.Size.W, b.Size.H) / 2; span > 0.05; span /= steps / 2 {
		around := best
		for i := -steps; i <= steps; i++ {
			for j := -steps; j <= steps; j++ {
				p := around.Add(geometry.Pt(span*geometry.Length(i)/steps, span*geometry.Length(j)/steps))
				if d := corners.EdgeDistance(p); d > most && corners.Contains(p) {
					best, most = p, d
				}
			}
		}
	}
	if most == 0 { // a sliver that slips through the grid
		return geometry.Point{}, min(b.Size.W, b.Size.H) / 2
	}
	return best, most
}

// places returns the middle of the arrow and the number's label for one of four sides of the
// middle: number above left, below left, above right, below right, the arrow beside it.
func (m marks) places(print plan.Print, text string, side int) (arrow geometry.Point, number paper.Label) {
	across, down := m.off+m.arrow/2, -(m.off + m.arrow/2)
	anchor := paper.AnchorRight
	x := -m.off
	if side%2 == 1 {
		down = -down
	}
	if side >= 2 {
		across, x, anchor = -across, -x, paper.AnchorLeft
	}
	o := print.Origin.Add(m.middle.Turn(print.Turn))
	return o.Add(geometry.Pt(across, down)), paper.Label{
		Text: text, At: o.Add(geometry.Pt(x, down)), Anchor: anchor, Height: m.height, Bold: true,
	}
}

// smaller returns the marks a share as large, the number in the next of its heights.
func (m marks) smaller(share geometry.Length) marks {
	most := m.height * share
	m.arrow, m.off, m.height = m.arrow*share, m.off*share, numberHeights[len(numberHeights)-1]
	for _, h := range numberHeights {
		if h <= most {
			m.height = h
			break
		}
	}
	return m
}

// tries lists the marks as they are, then smaller, and last small and away from the middle.
func (m marks) tries() []marks {
	all := []marks{m, m.smaller(0.7), m.smaller(0.5), m.smaller(0.35)}
	away := 3.2 * m.off // not half the way to the edge
	for _, small := range all[2:] {
		for _, d := range []geometry.Point{{X: away}, {X: -away}, {Y: away}, {Y: -away}} {
			moved := small
			moved.middle = m.middle.Add(d)
			all = append(all, moved)
		}
	}
	return all
}

// What is amiss with a place for the marks of a print, worst first.
const (
	onMarks    = 64 // the number on other marks
	outOfPrint = 32
	onLine     = 16 // the number on an edge
	arrowOn    = 8
	arrowOut   = 4
	arrowLine  = 2
	onCrease   = 1
)

// amiss adds up what is amiss with number and arrow in their boxes.
func (g *guide) amiss(print plan.Print, number, arrow geometry.Rect) int {
	c, sum := g.cloth.Centre(), 0
	add := func(wrong bool, what int) {
		if wrong {
			sum += what
		}
	}
	add(!g.crowd.Free(number), onMarks)
	add(!within(print.Footprint.Outline, number), outOfPrint)
	add(!g.lines.Free(number), onLine)
	add(!g.crowd.Free(arrow), arrowOn)
	add(!within(print.Footprint.Outline, arrow), arrowOut)
	add(!g.lines.Free(arrow), arrowLine)
	for _, box := range []geometry.Rect{number, arrow} {
		add(box.Touches(geometry.Rect{Min: geometry.Pt(c.X, g.cloth.Min.Y), Max: geometry.Pt(c.X, g.cloth.Max.Y)}) ||
			box.Touches(geometry.Rect{Min: geometry.Pt(g.cloth.Min.X, c.Y), Max: geometry.Pt(g.cloth.Max.X, c.Y)}), onCrease)
	}
	return sum
}

// drawNumbers writes the number of every print and draws its arrow, on the side of its middle
// where neither is on a crease or on what other passes wrote; smaller where passes that lie on
// each other leave no such side.
func (g *guide) drawNumbers(p plan.FacePass, pass int) {
	full := arrangement(p.Pass, strconv.Itoa(p.First+len(p.Prints)-1))
	tries := full.tries()
	arrows := map[geometry.Length]*paper.Shape{} // by their length
	for i, print := range p.Prints {
		text := strconv.Itoa(p.First + i)
		var arrow geometry.Point
		var number paper.Label
		var m marks
		least := math.MaxInt
		for _, try := range tries {
			for k := range 4 {
				at, label := try.places(print, text, (pass+k)%4)
				wrong := g.amiss(print, label.Extent(), geometry.RectAround(at, geometry.Size{W: try.arrow, H: try.arrow}))
				if wrong < least {
					least, m, arrow, number = wrong, try, at, label
				}
				if least == 0 {
					break
				}
			}
			if least < arrowOn {
				break
			}
		}
		if arrows[m.arrow] == nil {
			arrows[m.arrow] = paper.NewShape(geometry.UpArrow(geometry.Point{}, m.arrow, 0))
		}
		g.Stamp(arrows[m.arrow], paper.Place{At: arrow, Turn: print.Turn}, g.pens.Arrow, paper.Role{Kind: "arrow"})
		number.Role = paper.Role{Kind: "number"}
		g.Write(number)
		g.crowd.Take(number.Extent())
		g.crowd.Take(geometry.RectAround(arrow, geometry.Size{W: m.arrow, H: m.arrow}))
	}
}

// within tells whether a box lies in an outline.
func within(o geometry.Outline, box geometry.Rect) bool {
	if r, upright := o.Upright(); upright {
		return r.Holds(box)
	}
	for _, c := range box.Polygon() {
		if !o.Contains(c) {
			return false
		}
	}
	return true
}
