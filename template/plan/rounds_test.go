package plan

import (
	"fmt"
	"testing"

	"underlay/template/internal/oracle"
)

// roundsJob is a pass of 40 mm blocks, 2 mm apart.
func roundsJob(repeat, more string) string {
	shape := ""
	if repeat == "honeycomb" {
		shape = "shape = 'round'\n"
	}
	return "[[block]]\nname = 'fern'\n" + shape + "print = '40 x 40 mm'\n[[item]]\nname = 'cushion'\nsize = '330 x 290 mm'\nborder = '10 mm'\n" +
		fmt.Sprintf("[[item.pass]]\nblock = 'fern'\nrepeat = '%s'\ngap = '2 mm'\n%s\n", repeat, more)
}

// TestEveryOther: no two prints of one round stand side by side, by orb, on any lattice; every print is
// made once; in straight rows there are two rounds, where rows are moved three. In straight rows no
// print comes sooner after one beside it than in the order from the middle with the others left for
// later.
func TestEveryOther(t *testing.T) {
	for repeat, want := range map[string]int{"straight": 2, "brick": 3, "half-drop": 3, "honeycomb": 3} {
		for _, order := range []string{"centre-out", "rows", "columns"} {
			text := roundsJob(repeat, "every-other = true\norder = '"+order+"'")
			p := planOf(t, text).Items[0].Passes[0]
			plain := planOf(t, roundsJob(repeat, "")).Items[0].Passes[0]
			rounds := p.Rounds()
			if len(rounds) != want || len(p.Prints) != len(plain.Prints) || len(p.Notes) == 0 {
				t.Errorf("%s, %s: rounds of %v, %d prints for %d", repeat, order, rounds, len(p.Prints), len(plain.Prints))
			}
			from := 0
			for _, n := range rounds {
				for i := from; i < from+n; i++ {
					for j := from; j < i; j++ {
						a, b := p.Prints[i], p.Prints[j]
						s, u := oracle.OutlineAt(a.Block, a.Origin, a.Turn), oracle.OutlineAt(b.Block, b.Origin, b.Turn)
						// Corner to corner over two gaps they are 2.8 mm apart, in moved rows as far as a block.
						if d := s.Apart(u); d < 2.5 {
							t.Errorf("%s, %s: prints %d and %d of one round are %v apart", repeat, order, a.Number, b.Number, d)
						}
					}
				}
				from += n
			}
			for i := 1; i < rounds[0]; i++ {
				a, b := p.Prints[i-1], p.Prints[i]
				if order == "rows" && a.Row < b.Row || order == "columns" && a.Column > b.Column {
					t.Errorf("%s, %s: print %d comes before %d", repeat, order, a.Number, b.Number)
				}
			}
		}
	}
}

// TestColumns prints column by column: from the left, each from the near edge, and for the left hand
// from the right; the first corner is the near one on that side.
func TestColumns(t *testing.T) {
	for hand, side := range map[string]int{"right": 1, "left": -1} {
		for _, repeat := range []string{"straight", "brick", "half-drop", "diagonal"} {
			p := planOf(t, "[printing]\nhand = '"+hand+"'\n"+roundsJob(repeat, "order = 'columns'")).Items[0].Passes[0]
			for i, b := range p.Prints {
				box := b.Outline.Bounds()
				corner := box.Min.X
				if side < 0 {
					corner = box.Max.X
				}
				if repeat != "diagonal" && (!near(b.TouchDown.X, corner) || !near(b.TouchDown.Y, box.Max.Y)) {
					t.Errorf("%s, %s: print %d at %v goes down at %v first", hand, repeat, b.Number, b.Origin, b.TouchDown)
				}
				if i == 0 {
					continue
				}
				a := p.Prints[i-1]
				along := side * (b.Column - a.Column)
				if repeat == "diagonal" {
					along = 0
					if d := b.Origin.X - a.Origin.X; d.Abs() > 1e-6 {
						along = 1
						if d < 0 {
							along = -1
						}
						along *= side
					}
				}
				if along < 0 || along == 0 && b.Origin.Y >= a.Origin.Y {
					t.Errorf("%s, %s: print %d at %v comes after %v", hand, repeat, b.Number, b.Origin, a.Origin)
				}
			}
		}
	}
}
