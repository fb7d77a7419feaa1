package job

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"underlay/geometry"
)

func rectFace(w, h geometry.Length) geometry.Outline {
	return geometry.RectOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: w, H: h}))
}

// lFace is 60 x 60 mm less its far right quarter: five corners jut out, one points in.
func lFace() geometry.Outline {
	return geometry.PolygonOutline(geometry.Polygon{{X: -30, Y: -30}, {X: 0, Y: -30}, {X: 0, Y: 0}, {X: 30, Y: 0}, {X: 30, Y: 30}, {X: -30, Y: 30}})
}

// segment is the area a chord cuts off a circle of radius r, at a distance d from its centre:
// r^2 acos(d/r) - d sqrt(r^2 - d^2), as any table of plane figures has it.
func segment(r, d float64) float64 {
	return r*r*math.Acos(d/r) - d*math.Sqrt(r*r-d*d)
}

// TestDabShares holds the areas of parts against closed formulas.
func TestDabShares(t *testing.T) {
	hexagon := geometry.HexagonOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: 60, H: geometry.Length(120 / math.Sqrt(3))}))
	hexagonArea := math.Sqrt(3) / 2 * 60 * 60
	d := func(p FacePart, size geometry.Length) Dab { return Dab{Part: p, Size: size} }
	rest := Dab{Part: TheRest}
	rect := rectFace(90, 60)
	// The L less 5 mm: its left arm, its right one, and what is between, less a quarter disc round the
	// corner that points in.
	innerL := 20*50 + 25*20 + 5*25 - math.Pi*25/4
	for name, c := range map[string]struct {
		dabs []Dab
		face geometry.Outline
		want []float64 // square millimetres
	}{
		"a disc":                      {[]Dab{d(TheMiddle, 30), rest}, rect, []float64{math.Pi * 225, 5400 - math.Pi*225}},
		"a disc beyond the long side": {[]Dab{d(TheMiddle, 70), rest}, rect, []float64{math.Pi*35*35 - 2*segment(35, 30), 5400 - math.Pi*35*35 + 2*segment(35, 30)}},
		"a ring round a disc":         {[]Dab{d(TheMiddle, 30), d(TheMiddle, 50)}, rect, []float64{math.Pi * 225, math.Pi * (625 - 225)}},
		"corners":                     {[]Dab{d(TheCorners, 20), rest}, rect, []float64{math.Pi * 400, 5400 - math.Pi*400}},
		"an edge":                     {[]Dab{d(TheEdge, 8), rest}, rect, []float64{5400 - 74*44, 74 * 44}},
		"corners, then an edge":       {[]Dab{d(TheCorners, 8), d(TheEdge, 8)}, rect, []float64{math.Pi * 64, 5400 - 74*44 - math.Pi*64}},
		"an edge, then corners":       {[]Dab{d(TheEdge, 8), d(TheCorners, 8)}, rect, []float64{5400 - 74*44, 0}},
		"the middle of a round face":  {[]Dab{d(TheMiddle, 20), rest}, geometry.CircleOutline(geometry.Point{}, 20), []float64{math.Pi * 100, math.Pi * 300}},
		"the edge of a round face":    {[]Dab{d(TheEdge, 5), rest}, geometry.CircleOutline(geometry.Point{}, 20), []float64{math.Pi * (400 - 225), math.Pi * 225}},
		"the edge of a hexagon":       {[]Dab{d(TheEdge, 6), rest}, hexagon, []float64{hexagonArea - math.Sqrt(3)/2*48*48, math.Sqrt(3) / 2 * 48 * 48}},
		"the corners of a hexagon":    {[]Dab{d(TheCorners, 9), rest}, hexagon, []float64{6 * math.Pi * 81 / 3, hexagonArea - 2*math.Pi*81}},
		"the edge of an L":            {[]Dab{d(TheEdge, 5), rest}, lFace(), []float64{2700 - innerL, innerL}},
		"the corners of an L":         {[]Dab{d(TheCorners, 10), rest}, lFace(), []float64{5 * math.Pi * 25, 2700 - 125*math.Pi}},
	} {
		got := DabShares(c.dabs, c.face)
		for i := range got {
			got[i] *= c.face.Area()
		}
		if diff := cmp.Diff(c.want, got, cmpopts.EquateApprox(3e-4, 0.05)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
}

// TestDabSpans asks for single points which dab has them, by the dabs in turn and by the level line
// through them, on faces turned any way.
func TestDabSpans(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	parts := []FacePart{TheMiddle, TheCorners, TheEdge}
	for _, face := range []geometry.Outline{rectFace(90, 60), lFace(), geometry.CircleOutline(geometry.Point{}, 30)} {
		for range 200 {
			var dabs []Dab
			for range 1 + r.IntN(4) {
				dabs = append(dabs, Dab{Part: parts[r.IntN(3)], Size: geometry.Length(r.Float64() * 40)})
			}
			if r.IntN(2) == 0 {
				dabs = append(dabs, Dab{Part: TheRest})
			}
			turn := geometry.Angle(r.Float64() * 360)
			for range 50 {
				at := geometry.Pt(geometry.Length(r.Float64()*90-45), geometry.Length(r.Float64()*60-30))
				want := -1
				if face.Contains(at) {
					want = DabAt(dabs, face, at)
				}
				seen := at.Turn(turn)
				got, near := -1, false
				for i, s := range DabSpans(dabs, face.Turn(turn), seen.Y) {
					for _, span := range s {
						if span.From <= seen.X && seen.X < span.To {
							got = i
						}
						near = near || (span.From-seen.X).Abs() < 1e-3 || (span.To-seen.X).Abs() < 1e-3
					}
				}
				if got != want && !near {
					t.Fatalf("%v on %v: %v has dab %d, by its line %d", dabs, face, at, want, got)
				}
			}
		}
	}
}

// TestUndabbed: less than a thousandth of a face is nothing.
func TestUndabbed(t *testing.T) {
	edge := func(size geometry.Length) Dab { return Dab{Part: TheEdge, Size: size} }
	for _, c := range []struct {
		dabs []Dab
		want bool
	}{
		{[]Dab{edge(8)}, true},
		{[]Dab{edge(8), {Part: TheRest}}, false},
		{[]Dab{edge(29.9)}, true},   // a strip 30.2 x 0.2 mm of 90 x 60 mm
		{[]Dab{edge(29.99)}, false}, // 30.02 x 0.02 mm
		{[]Dab{edge(26), {Part: TheMiddle, Size: 60}}, false},
	} {
		if got := Undabbed(c.dabs, rectFace(90, 60)); got != c.want {
			t.Errorf("%v leave some: %v", c.dabs, got)
		}
	}
}
