package template

import (
	"strconv"
	"testing"
)

// checkNumbersRunOn holds the numbers of each face against the plan: they run on from pass to
// pass, and none on the cloth is larger than the number of its prints.
func checkNumbersRunOn(t *testing.T, p *papers) {
	for _, g := range p.guides {
		next := 1
		for _, pass := range g.face.Passes {
			if pass.First != next {
				t.Errorf("%s: %s begins at %d, want %d", g.face.Label(), pass.Pass.Name, pass.First, next)
			}
			next += len(pass.Prints)
		}
		for _, s := range g.sheets {
			for _, w := range s.page.texts {
				if n, err := strconv.Atoi(w.Text); err == nil && g.cloth.Holds(s.layoutRect(w.Box)) && (n < 1 || n >= next) {
					t.Errorf("%s: a number %d, and %d prints", g.face.Label(), n, next-1)
				}
			}
		}
	}
}
