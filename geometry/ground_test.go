package geometry

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// TestGroundLikeTheOutline holds a ground, at random, to what its outline says of every side.
// Many corners lie on whole millimetres, so that sides touch and run along each other.
func TestGroundLikeTheOutline(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	answers := map[bool]int{}
	for range 400 {
		outline := PolygonOutline(randomGround(r))
		clear := []Length{0, 0, -3, 0.005, 5, 12.5}[r.IntN(6)]
		g := NewGround(outline, clear)
		box := outline.Bounds().Grow(20)
		for range 60 {
			at := Pt(box.Min.X+Length(r.Float64())*box.W(), box.Min.Y+Length(r.Float64())*box.H())
			if r.IntN(2) == 0 {
				at = Pt(Length(math.Round(float64(at.X))), Length(math.Round(float64(at.Y))))
			}
			inner := randomFace(r).Move(at)
			want := outline.HoldsClear(inner, clear)
			answers[want]++
			if got := g.Holds(inner); got != want {
				t.Fatalf("%v clear of %v holds %v: %v, want %v", outline.Corners(), clear, inner, got, want)
			}
			if got, known := g.HoldsBox(inner.Bounds()); known && got != want {
				t.Fatalf("%v clear of %v holds the box of %v: %v, want %v", outline.Corners(), clear, inner, got, want)
			}
		}
	}
	if min(answers[true], answers[false]) < 2000 {
		t.Errorf("too easy: %v", answers)
	}
}

// randomGround is an L, a comb on whole millimetres, or a star of many corners; either way
// round.
func randomGround(r *rand.Rand) Polygon {
	var p Polygon
	switch r.IntN(3) {
	case 0:
		w, h := Length(40+r.IntN(100)), Length(40+r.IntN(100))
		x, y := Length(5+r.IntN(int(w)-10)), Length(5+r.IntN(int(h)-10))
		p = Polygon{{0, 0}, {w, 0}, {w, y}, {x, y}, {x, h}, {0, h}}
	case 1:
		p = Polygon{{0, 0}}
		for i := range 3 + r.IntN(8) {
			x, deep := Length(20*i), Length(20+r.IntN(60))
			p = append(p, Pt(x+10, 0), Pt(x+10, deep), Pt(x+20, deep), Pt(x+20, 0))
		}
		p = append(p, Pt(p[len(p)-1].X, 120), Pt(0, 120))
	default:
		n := 3 + r.IntN(200)
		for i := range n {
			a := 2 * math.Pi * float64(i) / float64(n)
			d := 80 * (0.5 + 0.5*r.Float64())
			p = append(p, Pt(Length(d*math.Cos(a)), Length(3*d*math.Sin(a))))
		}
	}
	if r.IntN(2) == 0 {
		for i, j := 0, len(p)-1; i < j; i, j = i+1, j-1 {
			p[i], p[j] = p[j], p[i]
		}
	}
	return p
}

func randomFace(r *rand.Rand) Outline {
	w, h := Length(1+r.IntN(30)), Length(1+r.IntN(30))
	switch r.IntN(4) {
	case 0:
		return CircleOutline(Point{}, w/2)
	case 1:
		return RectOutline(RectAround(Point{}, Size{w, h})).Turn(Angle(r.IntN(360)))
	case 2:
		return PolygonOutline(Polygon{{0, 0}, {w, 0}, {w / 2, h}})
	}
	return RectOutline(RectAround(Point{}, Size{w, h}))
}

// toothed is the edge of a large cloth with many corners, its long side across or down.
func toothed(corners int, size Size) Polygon {
	p := make(Polygon, corners)
	for i := range p {
		a := 2 * math.Pi * float64(i) / float64(corners)
		d := 0.5 - 0.015*float64(i%2)
		p[i] = Pt(size.W*Length(0.5+d*math.Cos(a)), size.H*Length(0.5+d*math.Sin(a)))
	}
	return p
}

// TestGroundWork counts what a ground looks at: of 500 corners a handful for a print near the
// edge, and none for most.
func TestGroundWork(t *testing.T) {
	for _, size := range []Size{{1500, 2000}, {2000, 35000}, {35000, 2000}} {
		g := NewGround(PolygonOutline(toothed(500, size)), 20)
		asked, open, looked := 0, 0, 0
		for x := Length(0); x < size.W; x += 61 {
			for y := Length(0); y < size.H; y += 61 {
				asked++
				box := RectAround(Pt(x, y), Size{60, 60})
				if _, known := g.HoldsBox(box); known {
					continue
				}
				open++
				looked += len(g.index.near(box.Grow(g.clear)))
			}
		}
		if float64(open) > 0.35*float64(asked) || float64(looked) > 25*float64(open) {
			t.Errorf("%v: %d of %d places are near the edge, %d sides are looked at", size, open, asked, looked)
		}
	}
}

// BenchmarkGround asks of every place of a large cloth whether it holds a print there.
func BenchmarkGround(b *testing.B) {
	size := Size{2000, 35000}
	g := NewGround(PolygonOutline(toothed(500, size)), 20)
	face := RectOutline(RectAround(Point{}, Size{60, 60}))
	places := 0
	for b.Loop() {
		for x := Length(0); x < size.W; x += 61 {
			for y := Length(0); y < size.H; y += 61 {
				places++
				if _, known := g.HoldsBox(face.Bounds().Move(Pt(x, y))); !known {
					g.Holds(face.Move(Pt(x, y)))
				}
			}
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(places), "ns/place")
}

func ExampleGround() {
	cover := NewGround(PolygonOutline(Polygon{{0, 0}, {500, 0}, {500, 300}, {0, 300}}), 25)
	print := RectOutline(RectAround(Pt(70, 70), Size{90, 90}))
	fmt.Println(cover.Holds(print), cover.Holds(print.Move(Pt(-1, 0))))
	// Output: true false
}
