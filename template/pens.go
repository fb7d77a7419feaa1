package template

import (
	"underlay/geometry"
	"underlay/paper"
)

// pens are the lines of a guide. Wide to narrow is 2 to 1, in the widths of ISO 128-2.
type pens struct {
	cloth, hem, border, crease, wood, zone, tick, tape, arrow paper.Pen
	passes                                                    []paper.Pen
}

// newPens returns the pens for fine lines, or for strong ones that show through cloth.
func newPens(lines Lines) pens {
	wide, narrow, thin := 0.5*geometry.Millimetre, 0.25*geometry.Millimetre, 0.13*geometry.Millimetre
	tick, tape := narrow, wide // on bare paper, and often 1 mm apart: never wider
	if lines == StrongLines {
		wide, narrow, thin = 1.4, 0.7, 0.35
	}
	p := pens{
		cloth:  paper.Pen{Type: paper.Continuous, Width: wide},
		hem:    paper.Pen{Type: paper.Continuous, Width: thin},
		border: paper.Pen{Type: paper.Dotted, Width: narrow},
		crease: paper.Pen{Type: paper.Chain, Width: narrow},
		wood:   paper.Pen{Type: paper.Dashed, Width: narrow},
		zone:   paper.Pen{Type: paper.Continuous, Width: narrow},
		tick:   paper.Pen{Type: paper.Continuous, Width: tick},
		tape:   paper.Pen{Type: paper.Continuous, Width: tape},
		arrow:  paper.Pen{Type: paper.Continuous, Width: narrow},
	}
	// Passes differ by line type first; the sixth begins again, wide.
	for _, w := range []geometry.Length{narrow, wide} {
		for _, t := range []paper.LineType{paper.Continuous, paper.DoubleChain, paper.Dashed, paper.Chain, paper.Dotted} {
			p.passes = append(p.passes, paper.Pen{Type: t, Width: w})
		}
	}
	return p
}

// pass returns the pen for the footprints of the i-th pass of a face.
func (p pens) pass(i int) paper.Pen { return p.passes[i%len(p.passes)] }
