package paper

import (
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"underlay/geometry"
)

func randomDrawing(r *rand.Rand, marks int) *Drawing {
	d := &Drawing{}
	for range marks {
		p := randomPoint(r, 1000)
		d.Stroke(geometry.Line(p, p.Add(randomPoint(r, 120))), Pen{Width: 0.25})
		d.Fill(geometry.CircleOutline(randomPoint(r, 1000), 5).Path(), Grey(200))
		d.Write(Label{Text: "fern 12", At: randomPoint(r, 1000), Height: 5})
	}
	return d
}

// sheetAreas are the areas of sheets that overlap, some of them left out.
func sheetAreas(r *rand.Rand) []geometry.Rect {
	var areas []geometry.Rect
	for y := range 5 {
		for x := range 6 {
			if r.IntN(5) > 0 {
				areas = append(areas, geometry.RectAt(
					geometry.Pt(184*geometry.Length(x)-50, 271*geometry.Length(y)-100), geometry.Size{W: 196, H: 283}))
			}
		}
	}
	return areas
}

// anyAreas are rectangles in no order at all, some of them the same.
func anyAreas(r *rand.Rand) []geometry.Rect {
	var areas []geometry.Rect
	for range 30 {
		a := randomPoint(r, 1000)
		areas = append(areas, geometry.Rect{Min: a, Max: a.Add(randomPoint(r, 300))})
	}
	return append(areas, areas[3], areas[7])
}

func TestSplitAgainstLookingAtEveryMark(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 20 {
		d := randomDrawing(r, 60)
		for _, areas := range [][]geometry.Rect{sheetAreas(r), anyAreas(r), nil} {
			var want []*Subset
			shown := map[int]bool{}
			for _, a := range areas {
				s := &Subset{}
				for i, f := range d.Fills {
					if f.Bounds().Touches(a) {
						s.Fills = append(s.Fills, int32(i))
					}
				}
				for i, f := range d.Strokes {
					if f.Bounds().Touches(a) {
						s.Strokes = append(s.Strokes, int32(i))
					}
				}
				for i, l := range d.Labels {
					if a.Holds(l.Extent()) {
						s.Labels = append(s.Labels, int32(i))
						shown[i] = true
					}
				}
				want = append(want, s)
			}
			got := Split(d, areas)
			if diff := cmp.Diff(want, got, cmpopts.EquateEmpty()); diff != "" {
				t.Fatal(diff)
			}
			var lost []int
			for i := range d.Labels {
				if !shown[i] {
					lost = append(lost, i)
				}
			}
			if diff := cmp.Diff(lost, Lost(d, got)); diff != "" {
				t.Fatal(diff)
			}
		}
	}
}
