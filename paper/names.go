package paper

import (
	"slices"
	"strings"

	"underlay/geometry"
)

// Name names a part of a drawing. It stands in the middle of what is shown of it, on white
// ground: a view of the whole drawing has it once, and of sheets each that shows some of the part
// has it again.
type Name struct {
	Text string
	Of   geometry.Rect
	// Least is how much of the part a sheet has to show to name it, where that is more than a trace.
	Least geometry.Size
	Role  Role
}

// Name adds a name.
func (d *Drawing) Name(n Name) { d.Names = append(d.Names, n) }

// nameSizes are the heights of names, from large to small (ISO 3098).
var nameSizes = []geometry.Length{3.5, 2.5, 1.8}

// namePitch is from row to row of a name, in heights of capitals.
const namePitch = 1.7

// fit returns the name's rows for a place so large, and the height of their letters: whole where
// some height allows it, broken into rows; else at the smallest height the rows that there is
// room for, the last of them shortened. No rows: not even that.
func (n Name) fit(room geometry.Size) ([]string, geometry.Length) {
	most := func(h geometry.Length) int {
		return max(0, int(float64((room.H-2*h+h*(namePitch-1))/(h*namePitch))+1e-6))
	}
	words := strings.Fields(n.Text)
	for _, h := range nameSizes {
		rows := Wrap(n.Text, h, false, room.W-h)
		if slices.Equal(strings.Fields(strings.Join(rows, " ")), words) && len(rows) <= most(h) {
			return rows, h
		}
	}
	h := nameSizes[len(nameSizes)-1]
	rows := Wrap(n.Text, h, false, room.W-h)
	if k := most(h); len(rows) > k {
		if k == 0 {
			return nil, h
		}
		rest := strings.Join(rows[k-1:], " ")
		rows = append(slices.Clone(rows[:k-1]), Shorten(rest, h, false, room.W-h))
	}
	if len(rows) == 1 && len([]rune(rows[0])) < min(4, len([]rune(n.Text))) {
		return nil, h // an ellipsis and a letter or two
	}
	return rows, h
}

// Fits tells whether the name goes whole into what it names, in letters of some height.
func (n Name) Fits() bool {
	rows, _ := n.fit(n.Of.Size())
	return slices.Equal(strings.Fields(strings.Join(rows, " ")), strings.Fields(n.Text))
}

// labels sets rows round a point.
func (n Name) labels(rows []string, h geometry.Length, middle geometry.Point) []Label {
	var all []Label
	top := middle.Y - h*namePitch*geometry.Length(len(rows)-1)/2
	for i, row := range rows {
		at := geometry.Pt(middle.X, top+h*namePitch*geometry.Length(i))
		all = append(all, Label{Text: row, At: at, Anchor: AnchorMiddle, Height: h, Role: n.Role, Ground: true})
	}
	return all
}

// whole returns the name as a view of all it names shows it: in its middle, whole where it goes
// in, else in small letters on one row.
func (n Name) whole() []Label {
	rows, h := n.fit(n.Of.Size())
	if rows == nil {
		rows = []string{n.Text}
	}
	return n.labels(rows, h, n.Of.Centre())
}

// leastNamed is how much of a part a sheet has to show to name it.
const leastNamed = 0.5 * geometry.Millimetre

// putNames names the parts of the drawing that the sheet shows: each in the middle of what is
// kept of it on this sheet, or of all that is shown; off the middle where other text is there;
// where the name has no room in it, beside it, on a leader.
func (b *board) putNames(names []Name, s Sheet) {
	for _, n := range names {
		shown := n.Of.Intersect(s.Area)
		if min(shown.W(), shown.H()) < leastNamed || shown.W() < min(n.Least.W, n.Of.W()) || shown.H() < min(n.Least.H, n.Of.H()) {
			continue
		}
		kept := n.Of.Intersect(s.Kept)
		if !kept.Empty() && b.putWithin(n, s.rectOnPage(kept)) || b.putWithin(n, s.rectOnPage(shown)) {
			continue
		}
		part := shown
		if !kept.Empty() {
			part = kept
		}
		b.putBeside(n, s.rectOnPage(part))
	}
}

// putWithin puts a name into a part of the page.
func (b *board) putWithin(n Name, part geometry.Rect) bool {
	part = part.Intersect(b.space.area)
	rows, h := n.fit(part.Size())
	if len(rows) == 0 {
		return false
	}
	var d Drawing
	d.Labels = n.labels(rows, h, geometry.Point{})
	sign := sign(d)
	size := sign.Bounds.Size()
	middle := geometry.RectAround(part.Centre(), size)
	for _, within := range []geometry.Rect{middle, part} {
		if p, ok := b.space.find(size, wish{within, part.Centre()}, ground, true); ok {
			return b.set(sign, p.at)
		}
	}
	return false
}

// putBeside puts a name near a part of the page, and a leader from it to there.
func (b *board) putBeside(n Name, part geometry.Rect) {
	const near = 40 * geometry.Millimetre
	h := nameSizes[1]
	var d Drawing
	d.Labels = n.labels(Wrap(n.Text, h, false, 2*near), h, geometry.Point{})
	signs := []Drawing{sign(d)}
	within := part.Grow(near).Intersect(b.space.area)
	size := signs[0].Bounds.Size()
	p, ok := b.space.find(size, wish{within, part.Centre()}, breath, false)
	if !ok {
		if p, ok = b.space.find(size, wish{within, part.Centre()}, ground, true); !ok {
			return
		}
	}
	box := geometry.RectAt(p.at, size).Grow(ground)
	to := part.Centre()
	from := geometry.Pt(min(max(to.X, box.Min.X), box.Max.X), min(max(to.Y, box.Min.Y), box.Max.Y))
	b.drawing.Stroke(geometry.Line(from, to), Pen{Width: 0.25})
	b.set(signs[0], p.at)
}
