package job

import (
	"slices"

	"underlay/geometry"
)

// Part is what is picked up for some of the prints of a pass: a block, and the colours on it.
type Part struct {
	Block   *Block
	Colours []string
}

// Mix is a matrix of parts, row by row, laid over the columns and rows of a repeat again and again:
// each place is an index in Parts. Parts stand in the order in which they first come in the matrix.
// The zero Mix is none.
type Mix struct {
	Parts []Part
	Rows  [][]int
}

// None tells whether a pass has one block and one set of colours for all its prints.
func (m Mix) None() bool { return len(m.Rows) == 0 }

// Columns returns after how many columns the parts come again; 1 of none.
func (m Mix) Columns() int {
	if m.None() {
		return 1
	}
	return len(m.Rows[0])
}

// Height returns after how many rows the parts come again; 1 of none.
func (m Mix) Height() int { return max(1, len(m.Rows)) }

// At returns the part of the place in a column and a row, counted from 0; any may be asked.
func (m Mix) At(column, row int) int {
	if m.None() {
		return 0
	}
	return m.Rows[mod(row, m.Height())][mod(column, m.Columns())]
}

// Starts lists the columns and rows with which the matrix may begin, counted from 0, that give
// another order of parts each.
func (m Mix) Starts() []geometry.Site {
	var starts []geometry.Site
	for j := range m.Height() {
		for i := range m.Columns() {
			same := func(s geometry.Site) bool {
				for row := range m.Height() {
					for column := range m.Columns() {
						if m.At(column+i, row+j) != m.At(column+s.I, row+s.J) {
							return false
						}
					}
				}
				return true
			}
			if !slices.ContainsFunc(starts, same) {
				starts = append(starts, geometry.Site{I: i, J: j})
			}
		}
	}
	return starts
}

// Parts are what the pass prints with, in the order in which it is picked up.
func (p *Pass) Parts() []Part {
	if p.Mix.None() {
		return []Part{{p.Block, p.Colours}}
	}
	return p.Mix.Parts
}

// placeOf returns how large a place for one block is: see Place.
func (p *Pass) placeOf(b *Block) geometry.Size {
	size := b.Size
	switch {
	case p.Turns.AllAside():
		return size.Swap()
	case p.Turns.AnyAside():
		most := max(size.W, size.H)
		return geometry.Size{W: most, H: most}
	}
	return size
}

// Place returns how large a place of the pass is: the bounds of the face as it is turned, and
// where prints lie both ways round, of the largest turned face both ways, so that no two come
// nearer than the gap. Of several blocks it is as wide as the widest and as high as the highest.
func (p *Pass) Place() geometry.Size {
	var place geometry.Size
	for _, part := range p.Parts() {
		size := p.placeOf(part.Block)
		place = geometry.Size{W: max(place.W, size.W), H: max(place.H, size.H)}
	}
	return place
}

// ColumnWidth and RowHeight return the largest of the places in a column, and in a row, of the matrix
// of parts, counted from 0.
func (p *Pass) ColumnWidth(column int) geometry.Length {
	var most geometry.Length
	for row := range p.Mix.Height() {
		most = max(most, p.placeOf(p.Parts()[p.Mix.At(column, row)].Block).W)
	}
	return most
}

// RowHeight is to rows what ColumnWidth is to columns.
func (p *Pass) RowHeight(row int) geometry.Length {
	var most geometry.Length
	for column := range p.Mix.Columns() {
		most = max(most, p.placeOf(p.Parts()[p.Mix.At(column, row)].Block).H)
	}
	return most
}
