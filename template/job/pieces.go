package job

import "underlay/geometry"

// Pieces are the equal pieces that lie side by side on one cloth, to be cut apart. The zero Pieces
// is of an item that is a cloth of its own.
type Pieces struct {
	Columns, Rows int
	Apart         geometry.Length // plain cloth between two of them
}

// Several tells whether a cloth has pieces to be cut apart.
func (p Pieces) Several() bool { return p.Columns*p.Rows > 1 }

// Count returns how many pieces a cloth has, 1 at the least.
func (p Pieces) Count() int { return max(1, p.Columns*p.Rows) }

// Cloth returns the size of the whole cloth, by that of one piece.
func (p Pieces) Cloth(piece geometry.Size) geometry.Size {
	if !p.Several() {
		return piece
	}
	return geometry.Size{
		W: geometry.Length(p.Columns)*(piece.W+p.Apart) - p.Apart,
		H: geometry.Length(p.Rows)*(piece.H+p.Apart) - p.Apart,
	}
}
