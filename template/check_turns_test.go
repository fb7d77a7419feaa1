package template

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"underlay/geometry"
)

// TestCollide sets out a patch of prints and looks at every pair of them.
func TestCollide(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	pick := func(v ...float64) geometry.Length { return geometry.Length(v[random.IntN(len(v))]) }
	seen := map[bool]int{}
	for range 3000 {
		p := &Pass{
			Block:  &Block{Size: geometry.Size{W: pick(20, 30, 60), H: pick(10, 30, 45)}},
			Repeat: []string{"straight", "brick", "half-drop"}[random.IntN(3)],
			Step:   []float64{0.5, 0.25, 1.0 / 3}[random.IntN(3)],
		}
		across, down := pick(-1, 0, 5, 15, 30, 50), pick(-1, 0, 5, 15, 30, 50)
		p.Gap = Gaps{Gap{across, across}, Gap{down, down}}
		// Two turns a row and two rows, or one of each.
		n := 1 + random.IntN(2)
		for range n {
			var row []int
			for range n {
				row = append(row, 90*random.IntN(4))
			}
			p.Turns = append(p.Turns, row)
		}
		if allQuarterTurned(p.Turns) {
			continue
		}
		got, want := collide(p), collideByPairs(p)
		seen[want]++
		// Collide may name a collision that the step does not bring about: which rows and
		// columns come to lie beside each other is only known to the full period.
		if want && !got || got && !want && (p.Repeat == "straight" || p.Step == 0.5) {
			t.Fatalf("%s, face %v, gap %v, turns %v, step %v: collide = %v, pairs say %v",
				p.Repeat, p.Block.Size, p.Gap, p.Turns, p.Step, got, want)
		}
	}
	if seen[true] < 100 || seen[false] < 100 {
		t.Errorf("the patches say too little: %v", fmt.Sprint(seen))
	}
}

func collideByPairs(p *Pass) bool {
	type print struct {
		at   geometry.Point
		size geometry.Size
	}
	w, h := p.Block.Size.W, p.Block.Size.H
	px, py := w+p.Gap.Across.Least, h+p.Gap.Down.Least
	share := func(k int) geometry.Length {
		f := float64(k) * p.Step
		return geometry.Length(f - math.Floor(f+1e-9))
	}
	var prints []print
	for r := range 14 {
		for c := range 14 {
			q := print{geometry.Pt(px*geometry.Length(c), py*geometry.Length(r)), geometry.Size{W: w, H: h}}
			switch p.Repeat {
			case "brick":
				q.at.X += share(r) * px
			case "half-drop":
				q.at.Y += share(c) * py
			}
			row := p.Turns[r%len(p.Turns)]
			if row[c%len(row)]%180 != 0 {
				q.size = q.size.Swap()
			}
			prints = append(prints, q)
		}
	}
	for i, a := range prints {
		for _, b := range prints[:i] {
			o := geometry.RectAround(a.at, a.size).Intersect(geometry.RectAround(b.at, b.size))
			if o.W() > max(0, -p.Gap.Across.Least)+geometry.Tolerance && o.H() > max(0, -p.Gap.Down.Least)+geometry.Tolerance {
				return true
			}
		}
	}
	return false
}
