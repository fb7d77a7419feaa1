package guide

import (
	"math"
	"strings"
	"testing"
	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/internal/sample"
	"underlay/template/jobfile"
	"underlay/template/plan"
)

// TestTurnsAreDrawn draws rows of turns on every kind of block, item and repeat.
func TestTurnsAreDrawn(t *testing.T) {
	tried := 0
	for _, turns := range []string{"0", "180", "0 90\n270 180", "90 270 90\n0 180 0"} {
		for choice := 0; choice < 6*6*5*3*3; choice += 7 {
			j, err := jobfile.Read("nook.toml", []byte(sample.Turned(strings.Split(turns, "\n"), choice)))
			if err != nil {
				continue
			}
			if p, err := plan.New(j); err == nil {
				tried++
				checkDrawnTurns(t, p)
			}
		}
	}
	if tried < 100 {
		t.Errorf("only %d jobs", tried)
	}
}

// checkDrawnTurns looks at the guide: one arrow on every print, and it points where the top of
// the block is; and a face with corners drawn as it was cut, turned and not mirrored.
func checkDrawnTurns(t *testing.T, plan *plan.Plan) {
	t.Helper()
	ip := plan.Items[0]
	drawing := Draw(plan.Job, ip.Faces()[0])
	type arrow struct{ from, to geometry.Point }
	var arrows []arrow
	faces := map[[2]int][][]geometry.Point{}
	cellAt := func(p geometry.Point) [2]int {
		return [2]int{int(math.Round(float64(p.X))), int(math.Round(float64(p.Y)))}
	}
	for _, f := range drawing.Fills {
		// An arrow is a wedge of four corners: its tip, a barb, the notch between the barbs, a barb.
		if path := f.Path(); f.Role.Kind == RoleArrow && len(path) == 1 && len(path[0].Steps) == 3 {
			steps := path[0].Steps
			arrows = append(arrows, arrow{steps[0].To.Add(steps[2].To).Mul(0.5), path[0].Start})
		}
	}
	for _, s := range drawing.Strokes {
		for _, piece := range s.Path() {
			if piece.Closed && len(piece.Steps) > 0 && !piece.Steps[0].Curved {
				points := []geometry.Point{piece.Start}
				for _, step := range piece.Steps {
					points = append(points, step.To)
				}
				faces[cellAt(points[0])] = append(faces[cellAt(points[0])], points)
			}
		}
	}
	for _, print := range ip.Passes[0].Prints {
		s := oracle.OutlineAt(ip.Passes[0].Pass.Block, print.Origin, print.Turn)
		low, high := s.Bounds()
		sin, cos := math.Sincos(float64(print.Turn) * math.Pi / 180)
		found := 0
		for _, a := range arrows {
			mid := a.from.Add(a.to).Mul(0.5)
			x, y := float64(mid.X), float64(mid.Y)
			if x < low[0] || x > high[0] || y < low[1] || y > high[1] || !s.Covers(x, y) {
				continue
			}
			found++
			d := a.to.Sub(a.from)
			if n := float64(d.Norm()); math.Abs(float64(d.X)/n-sin) > 1e-6 || math.Abs(float64(d.Y)/n+cos) > 1e-6 {
				t.Fatalf("print %d is turned by %v, and its arrow points %v", print.Number, print.Turn, d)
			}
		}
		if found != 1 && !print.Seam {
			t.Fatalf("print %d has %d arrows", print.Number, found)
		}
		if s.Ring == nil {
			continue
		}
		first := geometry.Pt(geometry.Length(s.Ring[0][0]), geometry.Length(s.Ring[0][1]))
		if !drawnAs(s, faces, cellAt(first)) {
			t.Fatalf("print %d is not drawn with its corners at %v", print.Number, s.Ring)
		}
	}
}

// drawnAs tells whether one of the drawn outlines has the corners of s, in their order.
func drawnAs(s oracle.Shape, faces map[[2]int][][]geometry.Point, at [2]int) bool {
	for x := at[0] - 1; x <= at[0]+1; x++ {
		for y := at[1] - 1; y <= at[1]+1; y++ {
			for _, points := range faces[[2]int{x, y}] {
				same := len(points) == len(s.Ring)-1
				for i := 0; same && i < len(points); i++ {
					same = math.Hypot(float64(points[i].X)-s.Ring[i][0], float64(points[i].Y)-s.Ring[i][1]) < 1e-4
				}
				if same {
					return true
				}
			}
		}
	}
	return false
}
