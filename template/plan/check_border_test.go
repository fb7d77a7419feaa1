package plan

import (
	"fmt"
	"testing"
	"underlay/geometry"
	"underlay/template/jobfile"
)

// TestBorderOfAnOutline checks figures whose deepest point is known: a rectangle is half its
// shorter side deep, a triangle as deep as its inscribed circle, of radius 2 area / perimeter
// (Euclid, Elements IV.4). A border as deep leaves nothing; one a little less deep leaves some.
func TestBorderOfAnOutline(t *testing.T) {
	for _, c := range []struct {
		name, corners string
		depth         geometry.Length
	}{
		{"slanted square", "'50 x 0 mm', '100 x 50 mm', '50 x 100 mm', '0 x 50 mm'", 35.3553},
		{"strip", "'0 x 0 mm', '500 x 0 mm', '500 x 20 mm', '0 x 20 mm'", 10},
		{"long slanted strip", "'0 x 0 m', '10 x 0 m', '10.01 x 0.05 m', '0.01 x 0.05 m'", 25},
		{"triangle 3 4 5", "'0 x 0 mm', '300 x 0 mm', '0 x 400 mm'", 100},
		{"a narrow L", "'0 x 0 mm', '1000 x 0 mm', '1000 x 100 mm', '100 x 100 mm', '100 x 1000 mm', '0 x 1000 mm'", 58.5786},
	} {
		for _, off := range []geometry.Length{-0.6, 0.001} {
			_, err := jobfile.Read("nook.toml", []byte(fmt.Sprintf("[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n"+
				"[[item]]\nname = 'pennant'\nshape = 'outline'\noutline = [%s]\nborder = '%.4f mm'\n", c.corners, (c.depth+off).Millimetres())))
			if (err == nil) != (off < 0) {
				t.Errorf("%s, border %v: %v", c.name, c.depth+off, err)
			}
		}
	}
}
