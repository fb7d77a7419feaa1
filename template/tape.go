package template

import "underlay/geometry"

// TapeLines are where masking tape is stretched, in the item's frame: x of the lines that run
// up and down, y of those that run across, each from the least. The outer ones mask the
// border; Start is the edge to begin against. Round a drum no line runs up and down.
type TapeLines struct {
	Across []geometry.Length // x
	Down   []geometry.Length // y
	Start  geometry.Length   // one of Down
}

// tapeLines returns the four outer edges of the printed field and the start line: the edge of
// the first row that faces the centre. Where the first row lies on the centre line it is the
// row's near edge, which the first corners down touch.
func (l layout) tapeLines(sites []Site, first Site) TapeLines {
	field := fieldOf(l.pass.Block, sites)
	face := l.pass.Block.Face.Turn(first.Turn).Bounds().Move(first.Origin)
	start := face.Max.Y
	if l.pass.Order == RowByRow || first.Origin.Y > l.area.Centre().Y+geometry.Tolerance {
		start = face.Min.Y
	}
	t := TapeLines{Down: []geometry.Length{field.Min.Y, start, field.Max.Y}, Start: start}
	if l.area.around == 0 {
		t.Across = []geometry.Length{field.Min.X, field.Max.X}
	}
	for _, edge := range []geometry.Length{field.Min.Y, field.Max.Y} {
		if absLength(start-edge) <= geometry.Tolerance {
			t.Down, t.Start = []geometry.Length{field.Min.Y, field.Max.Y}, edge
		}
	}
	return t
}
