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

// NameSizes are the heights of names, from large to small (ISO 3098).
var NameSizes = []geometry.Length{3.5, 2.5, 1.8}

// namePitch is from row to row of a name, in heights of capitals.
const namePitch = 1.7

// Fit returns the name's rows for a place so large, and the height of their letters: whole where
// some height allows it, broken into rows; else at the smallest height the rows that there is
// room for, the last of them shortened. No rows: not even that.
func (n Name) Fit(room geometry.Size) ([]string, geometry.Length) {
	most := func(h geometry.Length) int {
		return max(0, int(float64((room.H-2*h+h*(namePitch-1))/(h*namePitch))+1e-6))
	}
	words := strings.Fields(n.Text)
	for _, h := range NameSizes {
		rows := Wrap(n.Text, h, false, room.W-h)
		if slices.Equal(strings.Fields(strings.Join(rows, " ")), words) && len(rows) <= most(h) {
			return rows, h
		}
	}
	h := NameSizes[len(NameSizes)-1]
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

// Labels sets rows round a point.
func (n Name) Labels(rows []string, h geometry.Length, middle geometry.Point) []Label {
	var all []Label
	top := middle.Y - h*namePitch*geometry.Length(len(rows)-1)/2
	for i, row := range rows {
		at := geometry.Pt(middle.X, top+h*namePitch*geometry.Length(i))
		all = append(all, Label{Text: row, At: at, Anchor: AnchorMiddle, Height: h, Role: n.Role, Ground: true})
	}
	return all
}

// Whole returns the name as a view of all it names shows it: in its middle, whole where it goes
// in, else in small letters on one row.
func (n Name) Whole() []Label {
	rows, h := n.Fit(n.Of.Size())
	if rows == nil {
		rows = []string{n.Text}
	}
	return n.Labels(rows, h, n.Of.Centre())
}
