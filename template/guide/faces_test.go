package guide

import (
	"fmt"
	"testing"
)

// TestNumbersByFace: where a pass is printed on one face only, those after it have other numbers on
// each face. What is written on each, and what the marks of prints and wood say, are the numbers of
// that face, each once.
func TestNumbersByFace(t *testing.T) {
	// By hand: 200 x 110 mm take 2 x 1 of 90 mm, 1 mm apart, and 5 x 3 of 30 mm, 10 mm apart.
	j := readJob(t, "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\nwood = '95 x 95 mm'\n[[block]]\nname = 'acorn'\nprint = '30 x 30 mm'\nwood = '34 x 34 mm'\n"+
		"[[item]]\nname = 'cover'\nsize = '240 x 150 mm'\nborder = '20 mm'\nfaces = ['front', 'back']\n"+
		"[[item.pass]]\nblock = 'fern'\nface = 'back'\ngap = '1 mm'\n[[item.pass]]\nblock = 'acorn'\ngap = '10 mm'\n")
	for _, g := range facesOf(t, j) {
		most := map[string]int{"front": 15, "back": 17}[g.Face.Name()]
		prints, wood, written := map[int]int{}, map[int]int{}, map[string]int{}
		for _, s := range g.Drawing.Strokes {
			switch s.Role.Kind {
			case RolePrint:
				prints[s.Role.Number]++
			case RoleWood:
				wood[s.Role.Number]++
			}
		}
		for _, l := range g.Drawing.Labels {
			if l.Role.Kind == RoleNumber {
				written[l.Text]++
			}
		}
		for n := range most {
			n++
			if prints[n] != 1 || wood[n] != 1 || written[fmt.Sprint(n)] != 1 {
				t.Errorf("%s: print %d is drawn %d times, its wood %d, its number %d", g.Face.Name(), n, prints[n], wood[n], written[fmt.Sprint(n)])
			}
		}
		if len(prints) != most || len(wood) != most || len(written) != most {
			t.Errorf("%s: %d prints, %d of wood, %d numbers, want %d", g.Face.Name(), len(prints), len(wood), len(written), most)
		}
	}
}
