package plan

import (
	"underlay/geometry"
	"underlay/template/job"
)

// TapeLines are where masking tape is stretched, in the item's frame: x of the lines that run
// up and down, y of those that run across, each from the least. The outer ones mask the
// border; Start is the edge to begin against. Round a drum no line runs up and down.
type TapeLines struct {
	Across   []geometry.Length // x
	Down     []geometry.Length // y
	Start    geometry.Length   // one of Down
	Starts   []geometry.Length // of a cloth of several pieces: those of all
	FromNear bool              // told from the near edge: the cloth is moved along, from there
}

// tapeLines returns the four outer edges of the printed field and the start line: the edge of
// the first row that faces the centre. Where the first row lies on the centre line it is the
// row's near edge, which the first corners down touch.
func (l layout) tapeLines(sites []Site, first Site) TapeLines {
	field := fieldOf(l.pass.Block, sites)
	face := first.block(l.pass.Block).Face.Turn(first.Turn).Bounds().Move(first.Origin)
	start := face.Max.Y
	if l.pass.Order != job.CentreOut || first.Origin.Y > l.area.Centre().Y+geometry.Tolerance {
		start = face.Min.Y
	}
	t := TapeLines{Down: []geometry.Length{field.Min.Y, start, field.Max.Y}, Start: start, FromNear: l.moves != nil && l.moves.Down}
	if l.area.around == 0 {
		t.Across = []geometry.Length{field.Min.X, field.Max.X}
	}
	for _, edge := range []geometry.Length{field.Min.Y, field.Max.Y} {
		if (start - edge).Abs() <= geometry.Tolerance {
			t.Down, t.Start = []geometry.Length{field.Min.Y, field.Max.Y}, edge
		}
	}
	return t
}

// tapeLine is one of the lines, in words.
type tapeLine struct {
	Name   string // "left edge", of the prints; "start line"
	Edge   string // of the cloth, that it is measured from: "left", "far" or "near"
	From   string // that, in words: "left edge"
	At     geometry.Length
	crease geometry.Length // from the same edge
	Starts bool            // it is an edge of the prints and the start line too
}

// Lines names the lines, those that run up and down first. The cloth's top left corner is
// (0, 0).
func (t TapeLines) Lines(a Area) []tapeLine {
	cloth, crease := a.Cloth, a.Cloth.Centre()
	if level, _, ok := a.Creases(); ok {
		crease = level.Middle()
	}
	var lines []tapeLine
	for i, x := range t.Across {
		lines = append(lines, tapeLine{Name: []string{"left edge", "right edge"}[min(i, 1)], Edge: "left", At: x, crease: crease.X})
	}
	for i, y := range t.Down {
		l := tapeLine{Name: "start line", Edge: "far", At: y, crease: crease.Y}
		if t.FromNear {
			l.Edge, l.At = "near", cloth.Max.Y-y
		}
		switch i {
		case 0:
			l.Name = "far edge"
		case len(t.Down) - 1:
			l.Name = "near edge"
		}
		l.Starts = l.Name != "start line" && (y-t.Start).Abs() <= geometry.Tolerance
		lines = append(lines, l)
	}
	for i := range lines {
		lines[i].From = lines[i].Edge + " " + a.Outermost()
	}
	return lines
}

// Outermost names what lies farthest out on each side of the cloth, to be measured from: its edge, or
// of a four-sided cover that is not square a corner.
func (a Area) Outermost() string {
	if a.corners != ([4]geometry.Point{}) {
		return "corner"
	}
	return "edge"
}

// FromCrease says how far the line lies from the crease beside it, as write writes it, and on which
// side; "–" where the cloth is moved along and has no crease there.
func (l tapeLine) FromCrease(write func(geometry.Length) string) string {
	if l.Edge == "near" {
		return "–"
	}
	sides := map[string][2]string{"left": {"left", "right"}, "far": {"farther", "nearer"}}[l.Edge]
	switch off := l.At - l.crease; {
	case off.Abs() <= geometry.Tolerance:
		return "on it"
	case off < 0:
		return write(-off) + " " + sides[0]
	default:
		return write(off) + " " + sides[1]
	}
}
