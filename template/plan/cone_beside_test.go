package plan

import (
	"math"
	"testing"

	"underlay/template/internal/oracle"
)

// TestMovedColumnsOnAConeKeepTheGap measures the cloth between all prints of a half-drop on a
// cone: columns that are moved down stand beside other parts of each other than in one row.
func TestMovedColumnsOnAConeKeepTheGap(t *testing.T) {
	blocks := map[string]string{
		"a leaning quadrilateral": "shape = 'outline'\noutline = ['0 x 0 mm', '24 x 6 mm', '20 x 36 mm', '7 x 20 mm']",
		"a slanted bar":           "shape = 'outline'\noutline = ['0 x 0 mm', '10 x 0 mm', '40 x 30 mm', '30 x 30 mm']",
		"a rectangle":             "print = '30 x 24 mm'",
		"a hexagon":               "shape = 'hexagon'\nprint = '30 mm'",
		"a round":                 "shape = 'round'\nprint = '30 mm'",
	}
	for name, block := range blocks {
		for _, gap := range []string{"0", "1", "13.5", "60"} {
			for _, step := range []string{"1/2", "1/3", "0.1"} {
				plan, err := tryText("[[block]]\nname = 'leaf'\n" + block + "\n[[item]]\nname = 'shade'\nshape = 'cone'\n" +
					"top = '130 mm'\nbottom = '240 mm'\nheight = '160 mm'\nborder = '12 mm'\n" +
					"[[item.pass]]\nblock = 'leaf'\nrepeat = 'half-drop'\nturns = ['90']\ngap = '" + gap + " mm'\nstep = '" + step + "'\n")
				if err != nil {
					if gap == "0" && step == "1/2" {
						t.Errorf("%s: %v", name, err)
					}
					continue
				}
				p := plan.Items[0].Passes[0]
				least, _ := oracle.LeastApart(p.Pass)
				if d := p.nearestTwo(); d < least-oracle.Slack {
					t.Errorf("%s, gap %s mm, step %s: two prints are %v mm apart", name, gap, step, d)
				}
			}
		}
	}
}

// nearestTwo is the plain cloth between the two prints of a pass that are nearest to each other.
func (p *PassPlan) nearestTwo() float64 {
	least := math.Inf(1)
	for i, a := range p.Prints {
		for _, b := range p.Prints[:i] {
			s, u := oracle.OutlineAt(p.Pass.Block, a.Origin, a.Turn), oracle.OutlineAt(p.Pass.Block, b.Origin, b.Turn)
			least = math.Min(least, s.Plain(u))
		}
	}
	return least
}
