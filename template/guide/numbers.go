package guide

import (
	"math"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// The shorter sides of a print from which on its number, arrow and sign are larger.
const (
	largeSide  = 25 * geometry.Millimetre
	middleSide = 15 * geometry.Millimetre
)

// numberHeight is the height of the numbers on a block's prints (ISO 3098).
func numberHeight(block geometry.Size) geometry.Length {
	switch side := min(block.W, block.H); {
	case side >= largeSide-geometry.Tolerance:
		return 3.5
	case side >= middleSide-geometry.Tolerance:
		return 2.5
	}
	return 1.8
}

// arrowLength is the length of the arrows on a block's prints, where there is room.
func arrowLength(block geometry.Size) geometry.Length {
	side := min(block.W, block.H)
	long := 2.6 * geometry.Millimetre
	switch {
	case side >= largeSide-geometry.Tolerance:
		long = 5
	case side >= middleSide-geometry.Tolerance:
		long = 3.6
	}
	return min(long, side*0.4)
}

// Papers keep clear: of text from the edge of its print, at the least and where there is room.
const (
	tightMargin = 0.2 * geometry.Millimetre
	easyMargin  = 0.5 * geometry.Millimetre
)

// numbering writes the numbers and draws the arrows of a pass.
type numbering struct {
	*guide
	pass   int
	height geometry.Length
	arrow  geometry.Length
	middle geometry.Point // of the marks, in the face's frame: the point farthest from its edge
	off    geometry.Length
	shapes map[geometry.Length]*paper.Shape // of arrows, by their length
	// reserved is kept free for a number that is about to be written.
	reserved geometry.Rect
	found    *[2][]kept // where numbers, and arrows, of other prints stand
}

// kept is a place that a search found, tried first for the next print: prints of a pass look
// alike then, and few need a search of their own.
type kept struct {
	from  geometry.Point // the print's middle
	wrong int            // what was amiss with it
}

// drawNumbers writes the number of every print and draws its arrow: side by side, clear of the
// lines through its middle, or one above the other; where other marks are in the way, wherever
// in the print there is room, on white ground where lines cannot be kept off; a number that
// finds none, beside the prints, on a leader. What finds no place at all is counted.
func (g *guide) drawNumbers(p plan.FacePass, pass int) {
	of := map[*job.Block]numbering{}
	for _, b := range p.Blocks() {
		middle, depth := Deepest(b)
		of[b] = numbering{
			guide: g, pass: pass, height: numberHeight(b.Size), arrow: arrowLength(b.Size),
			middle: middle, off: min(2.5, max(0.6, depth*0.1)), shapes: map[geometry.Length]*paper.Shape{}, found: &[2][]kept{},
		}
	}
	for i, print := range p.Prints {
		n := of[print.Block]
		f := n.field(print)
		n.mark(f, print, strconv.Itoa(p.NumberOf(i)))
		n.namePart(f, p)
	}
}

// field is where the marks of a print may stand.
type field struct {
	outlines []geometry.Outline // of the print; of one across a seam, on both sides of it
	centre   geometry.Point
	turn     geometry.Angle
	seam     bool
}

func (n numbering) field(print plan.Print) field {
	f := field{centre: print.Origin.Add(n.middle.Turn(print.Turn)), turn: print.Turn, seam: print.Seam, outlines: []geometry.Outline{print.Outline}}
	if print.Seam {
		f.outlines = n.face.Item.Area.Again(print, print.Outline)
	}
	return f
}

// holds tells whether a box lies in the print with a margin round it, and on the cloth.
func (n numbering) holds(f field, box geometry.Rect, margin geometry.Length) bool {
	if f.seam && !n.onCloth(box) {
		return false
	}
	box = box.Grow(margin)
	for _, o := range f.outlines {
		if r, upright := o.Upright(); upright {
			if r.Holds(box) {
				return true
			}
		} else if o.HoldsClear(geometry.RectOutline(box), 0) {
			return true
		}
	}
	return false
}

// onCloth tells whether a box lies on a shade as it is laid flat.
func (g *guide) onCloth(box geometry.Rect) bool {
	flat := g.face.Item.Area.Flat
	if flat == nil {
		return g.cloth.Holds(box)
	}
	for _, c := range box.Polygon() {
		d := c.Sub(flat.Apex)
		a := geometry.Degrees(math.Atan2(float64(d.X), float64(d.Y)))
		if r := d.Norm(); r < flat.Inner || r > flat.Outer || max(a, -a) > flat.Angle/2 {
			return false
		}
	}
	return true
}

// mark puts number and arrow of a print in their places.
func (n numbering) mark(f field, print plan.Print, text string) {
	wide := paper.TextWidth(text, n.height, true)
	for _, at := range n.pairs(f.centre, wide) {
		label := n.label(text, at[0])
		box := label.Extent()
		if n.holds(f, box, easyMargin) && n.holds(f, arrowBox(at[1], n.arrow, print.Turn), easyMargin) &&
			n.faults(box) == 0 && n.faults(arrowBox(at[1], n.arrow, print.Turn)) == 0 {
			n.write(label)
			n.point(at[1], n.arrow, print)
			return
		}
	}
	label, found := n.search(f, text)
	beside := n
	if found {
		beside.reserved = label.GroundBox()
	}
	at, long, room := beside.findArrow(f)
	if found && !room { // the arrow comes first: a number can be led from elsewhere
		if at, long, room = n.findArrow(f); room {
			n.reserved = arrowBox(at, long, print.Turn)
			label, found = n.search(f, text)
		}
	}
	n.point(at, long, print)
	if found {
		n.write(label)
	}
	if !found {
		n.lead(f, text)
	}
}

// pairs lists places for the middles of number and arrow round a point: side by side, above or
// below the line across it, on each side of the line down; then one above the other.
func (n numbering) pairs(c geometry.Point, wide geometry.Length) [][2]geometry.Point {
	x, y := n.off+wide/2, n.off+max(n.height, n.arrow)/2
	a := n.off + n.arrow/2
	pairs := make([][2]geometry.Point, 0, 6)
	for k := range 4 {
		// Passes that lie on each other begin at different corners.
		sx, sy := geometry.Length(-1), geometry.Length(-1)
		if (k+n.pass)%2 == 1 {
			sy = 1
		}
		if (k+n.pass)%4 >= 2 {
			sx = 1
		}
		pairs = append(pairs, [2]geometry.Point{c.Add(geometry.Pt(sx*x, sy*y)), c.Add(geometry.Pt(-sx*a, sy*y))})
	}
	up := n.off/2 + n.height/2
	down := n.off/2 + n.arrow/2
	return append(pairs,
		[2]geometry.Point{c.Sub(geometry.Pt(0, up)), c.Add(geometry.Pt(0, down))},
		[2]geometry.Point{c.Add(geometry.Pt(0, up)), c.Sub(geometry.Pt(0, down))})
}

// What is amiss with a place that is free of other marks.
const (
	nearLine = 1
	onLine   = 2
	onOther  = 8 // on prints of another pass, each
)

// roomy is the paper round a place at which no line counts as near.
const roomy = 0.8 * geometry.Millimetre

// faults adds up what is amiss with a place; below 0: other marks are there.
func (n numbering) faults(box geometry.Rect) int {
	if !n.crowd.Free(box) || n.reserved.Overlaps(box) {
		return -1
	}
	sum := 0
	if !n.lines.Free(box.Grow(roomy)) {
		sum += nearLine
		if !n.lines.Free(box) {
			sum += onLine
		}
	}
	for i, prints := range n.covered {
		if i != n.pass && !prints.Free(box) {
			sum += onOther
		}
	}
	return sum
}

// label returns the number with its middle at a point.
func (n numbering) label(text string, middle geometry.Point) paper.Label {
	return paper.Label{Text: text, At: middle, Anchor: paper.AnchorMiddle, Height: n.height, Bold: true}
}

// write writes a number, on white ground where a line runs through.
func (n numbering) write(l paper.Label) {
	l.Role = paper.Role{Kind: RoleNumber}
	l.Ground = !n.lines.Free(l.Extent())
	n.Write(l)
	n.crowd.Take(l.GroundBox())
}

// point draws the arrow of a print.
func (n numbering) point(at geometry.Point, long geometry.Length, print plan.Print) {
	shape := n.shapes[long]
	if shape == nil {
		shape = paper.NewShape(geometry.UpArrow(geometry.Point{}, long, 0))
		n.shapes[long] = shape
	}
	n.StampFill(shape, paper.Place{At: at, Turn: print.Turn}, paper.Ink{}, paper.Role{Kind: RoleArrow})
	n.crowd.Take(arrowBox(at, long, print.Turn))
}

// arrowBox holds an arrow as it is turned on a print: straight up it is as high as long, its
// barbs stand off its middle by 0.583 of that.
func arrowBox(at geometry.Point, long geometry.Length, turn geometry.Angle) geometry.Rect {
	side := long * 1.02
	if math.Mod(float64(turn), 90) != 0 {
		side = long * 1.17
	}
	return geometry.RectAround(at, geometry.Size{W: side, H: side})
}

// search looks all over a print for a place for its number: with room round it, then with
// little.
func (n numbering) search(f field, text string) (paper.Label, bool) {
	box := n.label(text, geometry.Point{}).Extent()
	for _, margin := range []geometry.Length{easyMargin, tightMargin} {
		if at, ok := n.best(f, box.Size(), margin, 0); ok {
			return n.label(text, at.Sub(box.Centre())), true
		}
	}
	return paper.Label{}, false
}

// findArrow looks all over a print for a place for its arrow, smaller and smaller, and returns
// its middle and length; where there is none it is small and in the middle.
func (n numbering) findArrow(f field) (at geometry.Point, long geometry.Length, room bool) {
	for _, share := range []geometry.Length{1, 0.75, 0.55, 0.4} {
		long = n.arrow * share
		for _, margin := range []geometry.Length{easyMargin, tightMargin / 2} {
			if at, ok := n.best(f, arrowBox(geometry.Point{}, long, f.turn).Size(), margin, 1); ok {
				return at, long, true
			}
		}
	}
	return f.centre, long, false
}

// best returns the middle of the best place in a print for a box so large: free of marks, with
// as little amiss as can be, as near to the middle as can be. What tells numbers from arrows.
func (n numbering) best(f field, size geometry.Size, margin geometry.Length, what int) (geometry.Point, bool) {
	for _, k := range n.found[what] {
		p := f.centre.Add(k.from)
		if box := geometry.RectAround(p, size); n.holds(f, box, margin) {
			if wrong := n.faults(box); wrong >= 0 && wrong <= k.wrong {
				return p, true
			}
		}
	}
	var at geometry.Point
	least, nearest := math.MaxInt, geometry.Length(math.Inf(1))
	for _, o := range f.outlines {
		room := o.Bounds().Grow(-margin)
		spare := geometry.Size{W: room.W() - size.W, H: room.H() - size.H}
		if spare.W < 0 || spare.H < 0 {
			continue
		}
		first := room.Min.Add(geometry.Pt(size.W/2, size.H/2))
		nx, ny := stepsOf(spare.W), stepsOf(spare.H)
		for i := range nx {
			for k := range ny {
				p := first.Add(geometry.Pt(spare.W*share(i, nx), spare.H*share(k, ny)))
				far := p.Distance(f.centre)
				if least == 0 && far >= nearest {
					continue
				}
				box := geometry.RectAround(p, size)
				if !n.holds(f, box, margin) {
					continue
				}
				if wrong := n.faults(box); wrong >= 0 && (wrong < least || wrong == least && far < nearest) {
					least, nearest, at = wrong, far, p
				}
			}
		}
	}
	const most = 12
	if all := &n.found[what]; least < math.MaxInt && len(*all) < most {
		*all = append(*all, kept{at.Sub(f.centre), least})
	}
	return at, least < math.MaxInt
}

// stepsOf returns how many places to try along a length, an odd number: its middle is one.
func stepsOf(l geometry.Length) int {
	const most, step = 20, 0.6 * geometry.Millimetre
	return 1 + 2*min(most, int(math.Ceil(float64(l/2/step))))
}

// share returns where the i-th of n places lies, as a share of the way.
func share(i, n int) geometry.Length {
	if n == 1 {
		return 0.5
	}
	return geometry.Length(i) / geometry.Length(n-1)
}
