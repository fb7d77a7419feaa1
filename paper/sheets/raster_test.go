package sheets

import (
	"math/rand/v2"
	"testing"

	"underlay/geometry"
)

// The bits worked on by words are those that looking at one after the other finds.
func TestBitmapAgainstOneBitAfterTheOther(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		w, h := 1+r.IntN(200), 1+r.IntN(20)
		m := newBitmap(w, h)
		set := make([][]bool, h)
		for y := range set {
			set[y] = make([]bool, w)
		}
		for range r.IntN(60) {
			y, x0 := r.IntN(h), r.IntN(w)
			x1 := x0 + 1 + r.IntN(w-x0)
			m.setRun(y, x0, x1)
			for x := x0; x < x1; x++ {
				set[y][x] = true
			}
		}
		any := func(c cells) (n int) {
			for y := c.y0; y < min(c.y1, h); y++ {
				for x := c.x0; x < min(c.x1, w); x++ {
					if set[y][x] {
						n++
					}
				}
			}
			return n
		}
		c := cells{x0: r.IntN(w), y0: r.IntN(h)}
		c.x1, c.y1 = c.x0+1+r.IntN(w-c.x0), c.y0+1+r.IntN(h-c.y0)
		if got, want := m.count(c), any(c); got != want {
			t.Fatalf("%d of %v are set, want %d", got, c, want)
		}
		wide, high := 1+r.IntN(1+r.IntN(w)), 1+r.IntN(1+r.IntN(h))
		m.narrowDown(high)
		for y := range h {
			found := false
			got := narrowAcross(m.row(y), wide)
			for x := range w {
				c := cells{x, y, x + wide, y + high}
				want := any(c) == wide*(min(y+high, h)-y)
				if is := m.row(y)[x/64]>>(x%64)&1 == 1; is != want {
					t.Fatalf("of %d x %d bits from (%d, %d) on in %d x %d all are set: %v, want %v", wide, high, x, y, w, h, is, want)
				}
				found = found || want
			}
			if got != found {
				t.Fatalf("in row %d there are any: %v, want %v", y, got, found)
			}
		}
	}
}

// A line is marked along all its length, and a cell to the side of it is not.
func TestMarkLineGoesWhereTheLineGoes(t *testing.T) {
	area := geometry.RectAt(geometry.Pt(7, 7), geometry.Size{W: 80, H: 60})
	for name, ends := range map[string][2]geometry.Point{
		"level":                 {geometry.Pt(10.5, 20.5), geometry.Pt(70.5, 20.5)},
		"level, from the right": {geometry.Pt(70.5, 20.5), geometry.Pt(10.5, 20.5)},
		"upright":               {geometry.Pt(30.5, 60), geometry.Pt(30.5, 10)},
		"slanted":               {geometry.Pt(10, 10), geometry.Pt(60, 40)},
		"from beyond the page":  {geometry.Pt(-50, 30.5), geometry.Pt(200, 30.5)},
	} {
		r := newRaster(area)
		a, b := ends[0], ends[1]
		r.markLine(a, b)
		const steps = 500
		for i := range steps + 1 {
			p := a.Add(b.Sub(a).Mul(float64(i) / steps))
			if !area.Contains(p) {
				continue
			}
			around := geometry.RectAround(p, geometry.Size{W: 1, H: 1})
			if r.lines.count(r.reach(around)) == 0 {
				t.Errorf("%s: nothing is marked at %v", name, p)
			}
			off := geometry.Pt(b.Y-a.Y, a.X-b.X)
			beside := geometry.RectAround(p.Add(off.Mul(4/float64(off.Norm()))), geometry.Size{W: 1, H: 1})
			if area.Holds(beside) && r.lines.count(r.reach(beside)) > 0 {
				t.Errorf("%s: something is marked beside %v", name, p)
			}
		}
	}
}
