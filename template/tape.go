package template

import "underlay/geometry"

// TapeLines are where masking tape is stretched, in the item's frame: x of the lines that run
// up and down, y of those that run across, each from the least. The outer ones mask the
// border; Start is the edge to begin against.
type TapeLines struct {
	Across []geometry.Length // x
	Down   []geometry.Length // y
	Start  geometry.Length   // one of Down
}

// tapeLines returns the four outer edges of the printed field and the start line: the edge of
// the first row that faces the centre. Where the first row lies on the centre line it is the
// row's near edge, which the first corners down touch.
func tapeLines(b *Block, sites []Site, first Site, order Order) TapeLines {
	field := fieldOf(b, sites)
	face := b.Face.Turn(first.Turn).Bounds().Move(first.Origin)
	start := face.Max.Y
	if order == RowByRow {
		start = face.Min.Y
	}
	t := TapeLines{
		Across: []geometry.Length{field.Min.X, field.Max.X},
		Down:   []geometry.Length{field.Min.Y, start, field.Max.Y},
		Start:  start,
	}
	if start <= field.Min.Y+geometry.Tolerance || start >= field.Max.Y-geometry.Tolerance {
		t.Down = []geometry.Length{field.Min.Y, field.Max.Y}
	}
	return t
}
