package paper

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/paulmach/orb"
	orbclip "github.com/paulmach/orb/clip"
	"github.com/paulmach/orb/planar"

	"underlay/geometry"
)

func orbPoint(p geometry.Point) orb.Point { return orb.Point{float64(p.X), float64(p.Y)} }

func orbBound(r geometry.Rect) orb.Bound {
	return orb.Bound{Min: orbPoint(r.Min), Max: orbPoint(r.Max)}
}

var clipArea = geometry.Rect{Min: geometry.Pt(20, 30), Max: geometry.Pt(70, 60)}

func TestClipLeavesAloneWhatIsInside(t *testing.T) {
	path := geometry.CircleOutline(geometry.Pt(40, 45), 10).Path()
	runs := clip(path, clipArea, Scale{1, 1}, true)
	if len(runs) != 1 || runs[0].Along != 0 || !cmp.Equal(runs[0].Piece, path[0]) {
		t.Errorf("a circle inside became %v", runs)
	}
	if got := clipFill(path, clipArea); !cmp.Equal(got, path) {
		t.Errorf("a filled circle inside became %v", got)
	}
	outside := geometry.CircleOutline(geometry.Pt(100, 45), 10).Path()
	if runs := clip(outside, clipArea, Scale{1, 1}, true); runs != nil {
		t.Errorf("a circle outside became %v", runs)
	}
	if got := clipFill(outside, clipArea); got != nil {
		t.Errorf("a filled circle outside became %v", got)
	}
}

// A random chain, clipped, is what the orb library leaves of it.
func TestClipLinesAgainstOrb(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		points := make([]geometry.Point, 2+r.IntN(8))
		line := make(orb.LineString, len(points))
		for i := range points {
			points[i] = randomPoint(r, 100)
			line[i] = orbPoint(points[i])
		}
		runs := clip(geometry.Chain(points...), clipArea, Scale{1, 1}, false)
		var got orb.MultiLineString
		for _, c := range runs {
			var l orb.LineString
			for _, p := range Flatten(c.Piece) {
				if !clipArea.Contains(p) {
					t.Fatalf("%v is outside", p)
				}
				l = append(l, orbPoint(p))
			}
			got = append(got, l)
		}
		want := orbclip.LineString(orbBound(clipArea), line)
		if len(got) != len(want) {
			t.Fatalf("%d runs, orb has %d", len(got), len(want))
		}
		if d := planar.Length(got) - planar.Length(want); math.Abs(d) > 1e-9 {
			t.Fatalf("%g mm longer than orb's", d)
		}
	}
}

// Each run begins where its distance along the whole piece says.
func TestClipKeepsCountOfTheWay(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	s := Scale{1.02, 0.99}
	for range 500 {
		piece := geometry.Piece{Start: randomPoint(r, 100), Closed: r.IntN(2) == 0}
		for range 1 + r.IntN(6) {
			piece.Steps = append(piece.Steps, geometry.Step{
				To: randomPoint(r, 100), C1: randomPoint(r, 100), C2: randomPoint(r, 100), Curved: r.IntN(2) == 0,
			})
		}
		way := Flatten(piece)
		if piece.Closed {
			way = append(way, piece.Start)
		}
		for _, c := range clip(geometry.Path{piece}, clipArea, s, false) {
			left := c.Along
			at := way[0]
			for i := 1; i < len(way); i++ {
				l := s.distance(way[i-1], way[i])
				if left <= l {
					at = way[i-1].Add(way[i].Sub(way[i-1]).Mul(left / l))
					break
				}
				left -= l
			}
			if at.Distance(c.Piece.Start) > 1e-6 {
				t.Fatalf("a run begins at %v, but %v mm along is %v", c.Piece.Start, c.Along, at)
			}
		}
	}
}

func TestClipJoinsARunAcrossTheStart(t *testing.T) {
	square := geometry.Rect{Min: geometry.Pt(40, 40), Max: geometry.Pt(100, 100)}.Polygon().Path()
	got := clip(square, clipArea, Scale{1, 1}, true)
	want := []Run{{
		Piece: geometry.Chain(geometry.Pt(40, 60), geometry.Pt(40, 40), geometry.Pt(70, 40))[0],
		Along: 220,
	}}
	if d := cmp.Diff(want, got, cmp.AllowUnexported(Run{})); d != "" {
		t.Error(d)
	}
	if got := clip(square, clipArea, Scale{1, 1}, false); len(got) != 2 || got[0].Along != 0 || got[1].Along != 220 {
		t.Errorf("a dashed square became %v", got)
	}
	// A loop that stays inside, though the control points of its curves do not.
	bulge := geometry.Path{{Start: geometry.Pt(45, 31), Closed: true, Steps: []geometry.Step{{
		To: geometry.Pt(45, 31), C1: geometry.Pt(15, 55), C2: geometry.Pt(75, 55), Curved: true,
	}}}}
	if got := clip(bulge, clipArea, Scale{1, 1}, true); len(got) != 1 || !got[0].Piece.Closed {
		t.Errorf("a loop inside became %v", got)
	}
}

// Random stars, clipped, have the area that the orb library leaves of them.
func TestClipFillsAgainstOrb(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 1000 {
		var star geometry.Polygon
		var ring orb.Ring
		centre := randomPoint(r, 100)
		n := 3 + r.IntN(9)
		for i := range n {
			p := centre.Add(geometry.Pt(5+50*geometry.Length(r.Float64()), 0).Turn(geometry.Angle(360 * i / n)))
			star = append(star, p)
			ring = append(ring, orbPoint(p))
		}
		ring = append(ring, ring[0])
		var got float64
		for _, piece := range clipFill(star.Path(), clipArea) {
			points := Flatten(piece)
			for _, p := range points {
				if !clipArea.Contains(p) {
					t.Fatalf("%v is outside", p)
				}
			}
			got += geometry.Polygon(points).Area()
		}
		want := math.Abs(planar.Area(orbclip.Ring(orbBound(clipArea), ring)))
		if math.Abs(got-want) > 1e-6 {
			t.Fatalf("%v leaves %g mm2, orb %g", star, got, want)
		}
	}
}

// Half a disc has half its area, and flattened curves stay as near as they are said to.
func TestClippedDisc(t *testing.T) {
	const radius = 400
	disc := geometry.CircleOutline(geometry.Pt(0, 0), radius).Path()
	half := clipFill(disc, geometry.Rect{Min: geometry.Pt(0, -500), Max: geometry.Pt(500, 500)})
	points := Flatten(half[0])
	got, want := geometry.Polygon(points).Area(), math.Pi*radius*radius/2
	// No more is lost than a strip as wide as the flatness along half the way round.
	if math.Abs(got-want) > flatness*math.Pi*radius+1 {
		t.Errorf("half a disc has %g mm2, want %g", got, want)
	}
	for i, p := range points[1:] {
		middle := p.Add(points[i]).Mul(0.5)
		if p.X > 0 && points[i].X > 0 && math.Abs(float64(middle.Norm())-radius) > 0.004 {
			t.Fatalf("%v is %v from the middle", middle, middle.Norm())
		}
	}
}
