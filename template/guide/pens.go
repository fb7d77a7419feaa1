package guide

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
)

// pens are the lines of a guide. Wide to narrow is 2 to 1, in the widths of ISO 128-2; none is
// narrower than 0.25 mm, which poor printers lose.
type pens struct {
	Cloth, Hem, Border, Crease, Wood, Zone, Tick, Tape, Arrow, LaidOn, FarEnd, Piece, Cut paper.Pen
	passes                                                                                []paper.Pen
}

// NewPens returns the pens for fine lines, or for strong ones that show through cloth.
func NewPens(lines job.Lines) pens {
	wide, narrow := 0.5*geometry.Millimetre, 0.25*geometry.Millimetre
	tick, tape := narrow, wide // on bare paper, and often 1 mm apart: never wider
	if lines == job.StrongLines {
		wide, narrow = 1.4, 0.7
	}
	p := pens{
		Cloth:  paper.Pen{Type: paper.Continuous, Width: wide},
		Hem:    paper.Pen{Type: paper.Dashed, Width: narrow}, // as it is stitched
		Border: paper.Pen{Type: paper.Dotted, Width: narrow},
		Crease: paper.Pen{Type: paper.Chain, Width: narrow},
		Wood:   paper.Pen{Type: paper.Dashed, Width: narrow},
		Zone:   paper.Pen{Type: paper.Continuous, Width: narrow},
		Tick:   paper.Pen{Type: paper.Continuous, Width: tick},
		Tape:   paper.Pen{Type: paper.Continuous, Width: tape},
		Arrow:  paper.Pen{Type: paper.Continuous, Width: narrow},
		LaidOn: paper.Pen{Type: paper.Dashed, Width: narrow},
		FarEnd: paper.Pen{Type: paper.DoubleChain, Width: narrow},
		Piece:  paper.Pen{Type: paper.Continuous, Width: narrow},
		Cut:    paper.Pen{Type: paper.LongShort, Width: wide},
	}
	// Passes differ by line type first; the sixth begins again, wide.
	for _, w := range []geometry.Length{narrow, wide} {
		for _, t := range []paper.LineType{paper.Continuous, paper.DoubleChain, paper.Dashed, paper.Chain, paper.Dotted} {
			p.passes = append(p.passes, paper.Pen{Type: t, Width: w})
		}
	}
	return p
}

// Pass returns the pen for the footprints of the i-th pass of a face.
func (p pens) Pass(i int) paper.Pen { return p.passes[i%len(p.passes)] }
