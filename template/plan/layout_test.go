package plan

import (
	"testing"
)

// TestTurnsGoWithTheNumbers plans prints that fit one way up and not the other, so that no
// column or row stays the first: turns and numbers still go together.
func TestTurnsGoWithTheNumbers(t *testing.T) {
	for name, text := range map[string]string{
		"straight on a pennant": "[[block]]\nname = 'fern'\nshape = 'outline'\noutline = ['9.42 x 1.24 mm', '-17.09 x 7.08 mm', '-4.24 x -32.22 mm']\n" +
			"[[item]]\nname = 'pennant'\nshape = 'outline'\noutline = ['76.01 x 76.01 mm', '-71.60 x 29.66 mm', '44.65 x -166.62 mm']\nborder = '0 mm'\n" +
			"[[item.pass]]\nblock = 'fern'\ngap-across = '2 mm'\ngap-down = '30 mm'\ncentre-across = 'print'\nturns = ['0 180']\n",
		"straight beside a pocket": "[[block]]\nname = 'fern'\nshape = 'outline'\noutline = ['18.50 x 0.00 mm', '-1.84 x 23.43 mm', '-19.18 x 11.76 mm', '-17.05 x -23.46 mm', '5.49 x -8.95 mm']\n" +
			"[[item]]\nname = 'bag'\nsize = '328.5 x 173.003 mm'\nborder = '7.77 mm'\n[[item.keep-clear]]\nname = 'pocket'\nat = '9 x 45 mm'\nsize = '12 x 25 mm'\n" +
			"[[item.pass]]\nblock = 'fern'\ngap = '17.3 mm'\ncentre-across = 'joint'\ncentre-down = 'print'\nturns = ['0 180', '180 0', '0 0']\n",
	} {
		plan := planOf(t, text)
		p := plan.Items[0].Passes[0]
		turns, firstColumn, firstRow := p.Pass.Turns, p.Prints[0].Column, p.Prints[0].Row
		for _, print := range p.Prints {
			firstColumn, firstRow = min(firstColumn, print.Column), min(firstRow, print.Row)
			want := turns[(print.Row-1)%len(turns)][(print.Column-1)%len(turns[0])]
			if int(print.Turn) != want {
				t.Errorf("%s: the print in column %d, row %d is turned by %v, want %d", name, print.Column, print.Row, print.Turn, want)
			}
		}
		if firstColumn < 1 || firstColumn > len(turns[0]) || firstRow < 1 || firstRow > len(turns) {
			t.Errorf("%s: the first column is called %d, the first row %d", name, firstColumn, firstRow)
		}
	}
}
