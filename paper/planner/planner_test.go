package planner

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/paper"
)

// scatter makes a layout of prints as they come: rows that may be moved, some left out, some
// sides of the cloth round, a little text in each print, an upright and a level line.
func scatter(r *rand.Rand) Layout {
	const reach = 25
	w, h := 60+r.Float64()*500, 60+r.Float64()*500
	cloth := geometry.RectAt(geometry.Point{}, geometry.Size{W: geometry.Length(w), H: geometry.Length(h)})
	l := Layout{Bounds: cloth.Grow(reach), Marks: []geometry.Rect{}}
	pw, ph := 15+r.Float64()*80, 15+r.Float64()*80
	gap, moved, left, round := r.Float64()*8, float64(r.IntN(3))/2, r.Float64()*0.7, r.IntN(3) == 0
	if r.IntN(2) == 0 {
		pw, ph, gap, w, h = math.Round(pw), math.Round(ph), math.Round(gap), math.Round(w), math.Round(h)
	}
	number := 0
	for row := 0; 10+float64(row)*(ph+gap)+ph < h; row++ {
		shift := math.Mod(float64(row)*moved, 1) * (pw + gap)
		for x := 10 + shift; x+pw < w; x += pw + gap {
			y := 10 + float64(row)*(ph+gap)
			box := geometry.RectAt(geometry.Pt(geometry.Length(x), geometry.Length(y)), geometry.Size{W: geometry.Length(pw), H: geometry.Length(ph)})
			off := box.Centre().Sub(cloth.Centre())
			if number++; round && math.Hypot(float64(off.X)/w, float64(off.Y)/h) > 0.5 || !round && r.Float64() < left {
				continue
			}
			l.Marks = append(l.Marks, box)
			l.Whole = append(l.Whole, Box{box, 1000},
				Box{geometry.RectAround(box.Centre().Add(geometry.Pt(4, 0)), geometry.Size{W: 6, H: 4}), 1})
			l.Upright, l.Level = append(l.Upright, Rule{At: box.Min.X}, Rule{At: box.Max.X}), append(l.Level, Rule{At: box.Min.Y}, Rule{At: box.Max.Y})
		}
	}
	weight := []int{0, 1, 1_000_000}[r.IntN(3)]
	l.Upright = append(l.Upright, Rule{cloth.Centre().X, weight})
	l.Level = append(l.Level, Rule{cloth.Centre().Y, weight})
	return l
}

// shifted is what a spread comes to whose sheets all share the overlap, worked out as plainly
// as can be.
type shifted struct{ sheets, cut int }

// bruteForce moves the grid of sheets by whole millimetres, both ways up, and returns the
// fewest sheets that hold something, and the least weight that so many sheets cut.
func bruteForce(l Layout, s paper.Setup) shifted {
	best := shifted{math.MaxInt, math.MaxInt}
	for _, lying := range []bool{false, true} {
		page := s.Stock.Size
		if lying {
			page = page.Swap()
		}
		scale := s.Scale.OnPage(lying)
		a := [2]float64{float64(page.W-2*s.Margin) / scale.Across, float64(page.H-2*s.Margin) / scale.Down}
		from, size := [2]float64{float64(l.Bounds.Min.X), float64(l.Bounds.Min.Y)}, [2]float64{float64(l.Bounds.W()), float64(l.Bounds.H())}
		v := float64(s.Overlap)
		// Of each way, for each shift: on which sheets each mark is, as bits, and which boxes are cut.
		type way struct {
			on     []uint64
			cut    []bool
			beside int
		}
		var ways [2][]way
		for d := range ways {
			n := layOut(size[d], a[d], v)
			for shift := 0.0; shift <= float64(n)*(a[d]-v)+v-size[d]; shift++ {
				join := func(i int) float64 { return from[d] - shift + float64(i)*(a[d]-v) + v/2 }
				ends := func(r geometry.Rect) (float64, float64) {
					if d == 0 {
						return float64(r.Min.X), float64(r.Max.X)
					}
					return float64(r.Min.Y), float64(r.Max.Y)
				}
				w := way{on: make([]uint64, len(l.Marks)), cut: make([]bool, len(l.Whole))}
				for i := 1; i < n; i++ {
					w.beside += tooNear([][]Rule{l.Upright, l.Level}[d], join(i))
				}
				for k, m := range l.Marks {
					lo, hi := ends(m)
					for i := range n {
						if (i == 0 || hi-sliver > join(i)) && (i == n-1 || lo+sliver < join(i+1)) {
							w.on[k] |= 1 << i
						}
					}
				}
				for k, b := range l.Whole {
					lo, hi := ends(b.Rect)
					for i := 1; i < n; i++ {
						w.cut[k] = w.cut[k] || lo+hair < join(i) && join(i) < hi-hair
					}
				}
				ways[d] = append(ways[d], w)
			}
		}
		for _, across := range ways[0] {
			for _, down := range ways[1] {
				var held [64]uint64
				for k, on := range down.on {
					for i := 0; on>>i > 0; i++ {
						if on>>i&1 == 1 {
							held[i] |= across.on[k]
						}
					}
				}
				got := shifted{}
				for _, row := range held {
					for ; row > 0; row &= row - 1 {
						got.sheets++
					}
				}
				if got.sheets > best.sheets {
					continue
				}
				got.cut = across.beside + down.beside
				for k, b := range l.Whole {
					if across.cut[k] || down.cut[k] {
						got.cut += b.Weight
					}
				}
				if got.sheets < best.sheets || got.cut < best.cut {
					best = got
				}
			}
		}
	}
	return best
}

// tooNear returns the weight of the lines less than 5 mm from a join.
func tooNear(lines []Rule, join float64) int {
	sum := 0
	for _, line := range lines {
		if math.Abs(float64(line.At)-join) < 5-hair {
			sum += line.Weight
		}
	}
	return sum
}

// joinsOf returns the x of the joins between columns and the y of those between rows.
func joinsOf(t paper.Tiling) (x, y []float64) {
	across, down := map[int]float64{}, map[int]float64{}
	for _, s := range t.Sheets {
		for _, e := range []struct {
			in   map[int]float64
			i    int
			at   geometry.Length
			edge geometry.Length
		}{
			{across, s.Column - 1, s.Cell.Min.X, s.Area.Min.X}, {across, s.Column, s.Cell.Max.X, s.Area.Max.X},
			{down, s.Row - 1, s.Cell.Min.Y, s.Area.Min.Y}, {down, s.Row, s.Cell.Max.Y, s.Area.Max.Y},
		} {
			if e.at != e.edge {
				e.in[e.i] = float64(e.at)
			}
		}
	}
	for _, at := range across {
		x = append(x, at)
	}
	for _, at := range down {
		y = append(y, at)
	}
	return x, y
}

// cutWeight returns the weight of the boxes that the joins of a tiling cut.
func cutWeight(l Layout, t paper.Tiling) int {
	x, y := joinsOf(t)
	sum := 0
	for _, at := range x {
		sum += tooNear(l.Upright, at)
	}
	for _, at := range y {
		sum += tooNear(l.Level, at)
	}
	for _, b := range l.Whole {
		cut := false
		for _, at := range x {
			cut = cut || float64(b.Min.X)+hair < at && at < float64(b.Max.X)-hair
		}
		for _, at := range y {
			cut = cut || float64(b.Min.Y)+hair < at && at < float64(b.Max.Y)-hair
		}
		if cut {
			sum += b.Weight
		}
	}
	return sum
}

func TestPlanIsNoWorseThanMovingTheGrid(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 3))
	stocks := []string{"A4", "A5", "A6", "Letter", "A3"}
	better := 0
	for i := range 200 {
		l := scatter(r)
		s := paper.Setup{Stock: stock(t, stocks[r.IntN(len(stocks))]), Margin: geometry.Length(r.IntN(10)), Overlap: geometry.Length(r.IntN(16)), Scale: paper.Scale{Across: 0.98 + 0.04*r.Float64(), Down: 1}}
		if len(l.Marks) == 0 {
			continue
		}
		want := bruteForce(l, s)
		got, err := Plan(l, s)
		if err != nil {
			t.Fatal(err)
		}
		cut := cutWeight(l, got)
		if len(got.Sheets) > want.sheets || len(got.Sheets) == want.sheets && cut > want.cut {
			t.Errorf("job %d, %v on %s: %d sheets, cutting %d; moving the grid gives %d, cutting %d",
				i, l.Bounds.Size(), s.Stock.Name, len(got.Sheets), cut, want.sheets, want.cut)
		}
		if len(got.Sheets) < want.sheets || cut < want.cut {
			better++
		}
		checkShown(t, l, s, got)
	}
	t.Log("better:", better)
}

// checkShown checks that every mark is on the sheets up to their joins, that the sheets share
// what they are to share, and that each join has half of it, or room for a cross, on each side.
func checkShown(t *testing.T, l Layout, s paper.Setup, g paper.Tiling) {
	t.Helper()
	for _, m := range l.Marks {
		shown := geometry.Length(0)
		for _, sheet := range g.Sheets {
			if p := sheet.Kept.Intersect(m); !p.Empty() {
				shown += p.W() * p.H()
			}
		}
		// Slivers may be beyond a join with a sheet that has nothing else, which Kept then reaches over.
		if whole := m.W() * m.H(); shown < whole*0.999999 {
			t.Errorf("%v of the mark %v are shown", shown/whole, m)
		}
	}
	least := min(s.Overlap/2, paper.CrossArm) - 1e-6
	byName := map[string]paper.Sheet{}
	for _, a := range g.Sheets {
		byName[a.Name] = a
	}
	for _, a := range g.Sheets {
		if b, ok := byName[a.Right]; ok {
			if a.Area.Max.X-b.Area.Min.X < s.Overlap-1e-6 || math.Abs(float64(a.Kept.Max.X-b.Kept.Min.X)) > 1e-6 ||
				a.Area.Max.X-a.Kept.Max.X < least || b.Kept.Min.X-b.Area.Min.X < least {
				t.Errorf("%s %v and %s %v join at %v", a.Name, a.Area, b.Name, b.Area, a.Kept.Max.X)
			}
		}
		if b, ok := byName[a.Below]; ok {
			if a.Area.Max.Y-b.Area.Min.Y < s.Overlap-1e-6 || math.Abs(float64(a.Kept.Max.Y-b.Kept.Min.Y)) > 1e-6 ||
				a.Area.Max.Y-a.Kept.Max.Y < least || b.Kept.Min.Y-b.Area.Min.Y < least {
				t.Errorf("%s %v and %s %v join at %v", a.Name, a.Area, b.Name, b.Area, a.Kept.Max.Y)
			}
		}
	}
}

// The distance is the widest there is: found again by trying every place of one join.
func TestPlanKeepsJoinsClear(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 8))
	for range 200 {
		w := 200 + r.Float64()*160 // two sheets of A4, 196 mm usable
		l := Layout{Bounds: layout(geometry.Length(w), 200)}
		for range 1 + r.IntN(12) {
			l.Upright = append(l.Upright, Rule{At: l.Bounds.Min.X + geometry.Length(r.Float64()*w)})
		}
		g, err := Plan(l, paper.Setup{Stock: stock(t, "A4"), Margin: 7, Overlap: 12, Scale: paper.Scale{}})
		if err != nil || g.Columns != 2 || g.Lying {
			continue // the lying A4 may do better
		}
		x, _ := joinsOf(g)
		far := func(at float64) float64 {
			least := math.Inf(1)
			for _, line := range l.Upright {
				least = min(least, math.Abs(float64(line.At)-at))
			}
			return least
		}
		best := 0.0
		for at := float64(l.Bounds.Max.X) - 196 + 3; at <= float64(l.Bounds.Min.X)+196-3; at += 0.05 {
			best = max(best, far(at))
		}
		if got := far(x[0]); got < best-joinGrid {
			t.Errorf("%g mm wide: joined %g mm from a line, %g can be", w, got, best)
		}
	}
}

func TestPlanShortensTheReach(t *testing.T) {
	cloth := geometry.RectAt(geometry.Point{}, geometry.Size{W: 500, H: 500})
	for _, c := range []struct {
		reach, least geometry.Length
		sheets       int
		lying        bool
	}{
		{25, 25, 6, false}, // 3 x 2 of 564 x 554
		{60, 60, 12, false},
		{60, 15, 6, false},
		{25, 15, 6, false},
	} {
		l := Layout{Bounds: cloth.Grow(c.reach), Least: cloth.Grow(c.least)}
		g, err := Plan(l, paper.Setup{Stock: stock(t, "A4"), Margin: 7, Overlap: 12, Scale: paper.Scale{}})
		if err != nil || len(g.Sheets) != c.sheets {
			t.Errorf("reach %v, at least %v: %d sheets, %v", c.reach, c.least, len(g.Sheets), err)
		}
		if !g.Layout.Grow(1e-6).Holds(l.Least) || !l.Bounds.Holds(g.Layout) {
			t.Errorf("%v is shown of %v, at least %v", g.Layout, l.Bounds, l.Least)
		}
	}
}

func TestPlanLaysARollAlong(t *testing.T) {
	for _, c := range []struct {
		w, h    geometry.Length
		sheets  int
		lying   bool
		page    geometry.Size
		comment string
	}{
		{1400, 500, 1, true, geometry.Size{W: 1414, H: 609.6}, "along the roll"},
		{500, 1400, 1, false, geometry.Size{W: 609.6, H: 1414}, "along the roll"},
		{500, 400, 1, false, geometry.Size{W: 609.6, H: 414}, "the shorter way"},
		{400, 500, 1, true, geometry.Size{W: 414, H: 609.6}, "the shorter way"},
	} {
		s := paper.Setup{Stock: stock(t, "roll 24 in"), Margin: 7, Overlap: 12}
		g, err := Plan(Layout{Bounds: layout(c.w, c.h)}, s)
		if err != nil || len(g.Sheets) != c.sheets || g.Lying != c.lying {
			t.Fatalf("%v x %v: %d lengths, lying %v, %v", c.w, c.h, len(g.Sheets), g.Lying, err)
		}
		if p := g.Sheets[0].Page; math.Abs(float64(p.W-c.page.W)) > 1e-6 || math.Abs(float64(p.H-c.page.H)) > 1e-6 {
			t.Errorf("%v x %v: a page of %v, want %v, %s", c.w, c.h, p, c.page, c.comment)
		}
	}
}

// A printer's correction goes with the paper through the printer: across is its short way, or
// the width of a roll, however the page lies.
func TestPlanCorrectsTheWayThePaperGoes(t *testing.T) {
	scale := paper.Scale{Across: 1.02, Down: 0.99}
	for _, c := range []struct {
		stock string
		w, h  geometry.Length
		x, y  float64
	}{
		{"A4", 150, 250, 1.02, 0.99}, {"A4", 250, 150, 0.99, 1.02},
		{"roll 24 in", 500, 300, 1.02, 0.99}, {"roll 24 in", 300, 500, 0.99, 1.02},
		{"one sheet", 300, 500, 1.02, 0.99}, {"one sheet", 500, 300, 0.99, 1.02},
	} {
		g, err := Plan(Layout{Bounds: layout(c.w, c.h)}, paper.Setup{Stock: stock(t, c.stock), Margin: 7, Overlap: 12, Scale: scale})
		if err != nil || len(g.Sheets) != 1 || g.Sheets[0].Scale != (paper.Scale{Across: c.x, Down: c.y}) {
			t.Errorf("%s, %v x %v: %+v, %v", c.stock, c.w, c.h, g.Sheets, err)
		}
	}
}

func BenchmarkPlan(b *testing.B) {
	for _, n := range []int{1_000, 100_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			side := int(math.Sqrt(float64(n)))
			l := Layout{Bounds: geometry.RectAt(geometry.Point{}, geometry.Size{W: geometry.Length(30 * side), H: geometry.Length(35 * side)})}
			for i := range side {
				for k := range side {
					box := geometry.RectAt(geometry.Pt(geometry.Length(30*i), geometry.Length(35*k)), geometry.Size{W: 28, H: 33})
					l.Marks, l.Whole = append(l.Marks, box), append(l.Whole, Box{box, 1})
					l.Upright, l.Level = append(l.Upright, Rule{At: box.Min.X}), append(l.Level, Rule{At: box.Min.Y})
				}
			}
			s := paper.Setup{Stock: paper.Stock{Name: "A4", Size: geometry.Size{W: 210, H: 297}}, Margin: 7, Overlap: 12}
			for b.Loop() {
				if _, err := Plan(l, s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
