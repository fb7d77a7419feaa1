package motif_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/motif"
	"underlay/template/picture"
)

// mask makes a mask of a function of the middles of its pixels.
func mask(w, h int, paint func(x, y float64) float64) *picture.Mask {
	m := &picture.Mask{W: w, H: h, Paint: make([]uint8, w*h)}
	for i := range m.Paint {
		p := paint(float64(i%w)+0.5, float64(i/w)+0.5)
		m.Paint[i] = uint8(math.Round(255 * min(max(p, 0), 1)))
	}
	return m
}

// pictured is a block whose face has a millimetre for each pixel of a mask.
func pictured(m *picture.Mask) *job.Block {
	size := geometry.Size{W: geometry.Length(m.W), H: geometry.Length(m.H)}
	return &job.Block{
		Size: size, Face: geometry.RectOutline(geometry.RectAround(geometry.Point{}, size)),
		Picture: &picture.Picture{Mask: m},
	}
}

// blots are smooth lumps of paint and holes in them, as a photograph has them.
func blots(r *rand.Rand, w, h int) *picture.Mask {
	type blot struct{ x, y, r, paint float64 }
	all := make([]blot, 12)
	for i := range all {
		all[i] = blot{r.Float64() * float64(w), r.Float64() * float64(h), 2 + r.Float64()*float64(w)/5, r.Float64()*3 - 1}
	}
	return mask(w, h, func(x, y float64) float64 {
		sum := 0.0
		for _, b := range all {
			sum += b.paint * math.Exp(-((x-b.x)*(x-b.x)+(y-b.y)*(y-b.y))/b.r/b.r)
		}
		return sum
	})
}

// noise has nothing to do with its neighbours in any pixel.
func noise(r *rand.Rand, w, h int) *picture.Mask {
	return mask(w, h, func(x, y float64) float64 { return r.Float64() })
}

// ringsOf returns the rings of a path as another library has them.
func ringsOf(path geometry.Path) []orb.Ring {
	var rings []orb.Ring
	for _, piece := range path {
		ring := orb.Ring{{float64(piece.Start.X), float64(piece.Start.Y)}}
		for _, s := range piece.Steps {
			ring = append(ring, orb.Point{float64(s.To.X), float64(s.To.Y)})
		}
		rings = append(rings, append(ring, ring[0]))
	}
	return rings
}

// round returns the area that a ring goes round, clockwise as seen where positive (the shoelace
// formula).
func round(r orb.Ring) float64 {
	var twice float64
	for i, p := range r[1:] {
		twice += r[i][0]*p[1] - p[0]*r[i][1]
	}
	return twice / 2
}

// winding adds up how often rings go round a point, clockwise as seen.
func winding(rings []orb.Ring, at orb.Point) int {
	n := 0
	for _, r := range rings {
		if r.Bound().Contains(at) && planar.RingContains(r, at) {
			n += int(math.Copysign(1, round(r)))
		}
	}
	return n
}

// area adds up the areas that rings go round, those of holes taken off.
func area(rings []orb.Ring) float64 {
	sum := 0.0
	for _, r := range rings {
		sum += round(r)
	}
	return sum
}

func whole(t *testing.T, b *job.Block, detail geometry.Length) geometry.Path {
	t.Helper()
	parts := motif.Of(b, nil, detail)
	if len(parts) != 1 || parts[0].Dab != 0 {
		t.Fatalf("%d parts", len(parts))
	}
	return parts[0].Path
}

// TestPathIsMask: the middle of each pixel is within the print exactly where it has half of all
// paint, once round paint, and not at all in a hole; in smooth pictures and in mere noise.
func TestPathIsMask(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for i := range 12 {
		m := blots(r, 40+i*3, 30+i)
		if i%3 == 0 {
			m = noise(r, 17+i, 12)
		}
		rings := ringsOf(whole(t, pictured(m), 0))
		for y := -1; y <= m.H; y++ {
			for x := -1; x <= m.W; x++ {
				at := orb.Point{float64(x) + 0.5 - float64(m.W)/2, float64(y) + 0.5 - float64(m.H)/2}
				want := 0
				if m.At(x, y) >= 128 {
					want = 1
				}
				if got := winding(rings, at); got != want {
					t.Fatalf("picture %d, pixel %d, %d with %d of 255: wound round %d times", i, x, y, m.At(x, y), got)
				}
			}
		}
	}
}

// TestDisc: the edge of a disc is its circle, to a twentieth of a pixel where it is as soft as a
// camera makes it, to a tenth where each pixel is mere coverage; its area, the circle's, is pi r^2.
func TestDisc(t *testing.T) {
	const r = 30.0
	for soft, near := range map[float64]float64{2: 0.05, 1: 0.1} {
		for _, off := range []float64{0, 0.3, 0.77} {
			cx, cy := 40+off, 38-off
			m := mask(80, 76, func(x, y float64) float64 { return (r-math.Hypot(x-cx, y-cy))/soft + 0.5 })
			path := whole(t, pictured(m), 0)
			if len(path) != 1 {
				t.Fatalf("%d rings", len(path))
			}
			for _, p := range ringsOf(path)[0] {
				if d := math.Hypot(p[0]-(cx-40), p[1]-(cy-38)); math.Abs(d-r) > near {
					t.Errorf("soft by %g, off by %.2f: %.3f px from the middle", soft, off, d)
				}
			}
			if got := area(ringsOf(path)); math.Abs(got-math.Pi*r*r) > 3 {
				t.Errorf("area %.1f of %.1f", got, math.Pi*r*r)
			}
		}
	}
}

// TestEdgeOfPicture: paint that fills a picture comes to the edge of the face, less its very corners.
func TestEdgeOfPicture(t *testing.T) {
	m := mask(20, 10, func(x, y float64) float64 { return 1 })
	path := whole(t, pictured(m), 0)
	if diff := cmp.Diff(geometry.Rect{Min: geometry.Pt(-10, -5), Max: geometry.Pt(10, 5)}, path.Bounds(), cmp.Comparer(func(a, b geometry.Length) bool { return (a - b).Abs() < 0.01 })); diff != "" {
		t.Error(diff)
	}
	if a := area(ringsOf(path)); a < 199 || a > 200 {
		t.Errorf("area %.2f of 200", a)
	}
}

// TestAreaIsShare: the paths take up as much of the face as the mask says, whichever detail they are
// drawn with.
func TestAreaIsShare(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 6 {
		m := blots(r, 300, 240)
		for i, p := range m.Paint { // as a print is: paint or none
			m.Paint[i] = map[bool]uint8{true: 255}[p > 127]
		}
		for _, detail := range []geometry.Length{0, 1, 3} {
			got := area(ringsOf(whole(t, pictured(m), detail))) / (300 * 240)
			if math.Abs(got-m.Share()) > 0.004*(1+float64(detail)) {
				t.Errorf("detail %g: area %.4f, share %.4f", float64(detail), got, m.Share())
			}
		}
	}
}

// TestDetail: with fewer corners, whatever is further than the detail from an edge of the print is in
// it or not as before.
func TestDetail(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 4 {
		m := blots(r, 200, 160)
		b := pictured(m)
		exact := ringsOf(whole(t, b, 0))
		last := math.MaxInt
		for _, detail := range []geometry.Length{0.5, 1, 2} {
			path := whole(t, b, detail)
			coarse := ringsOf(path)
			n := 0
			for _, ring := range coarse {
				n += len(ring)
			}
			if n >= last {
				t.Errorf("detail %g: %d corners, with less detail %d", float64(detail), n, last)
			}
			last = n
			for range 600 {
				at := orb.Point{(r.Float64() - 0.5) * 200, (r.Float64() - 0.5) * 160}
				near := slices.ContainsFunc(exact, func(ring orb.Ring) bool { return planar.DistanceFrom(orb.LineString(ring), at) <= float64(detail) })
				if !near && (winding(coarse, at) != 0) != (winding(exact, at) != 0) {
					t.Fatalf("detail %g: %v is otherwise than without", float64(detail), at)
				}
			}
		}
	}
}

// TestBounded: the noisiest picture comes to so many points and no more, the same ones every time,
// whatever detail is asked for.
func TestBounded(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	b := pictured(noise(r, 1500, 1200))
	for _, detail := range []geometry.Length{0, 0.01, 2} {
		parts := motif.Of(b, nil, detail)
		n := 0
		for _, p := range parts {
			for _, piece := range p.Path {
				n += 1 + len(piece.Steps)
			}
		}
		if n > motif.MostPoints || n < motif.MostPoints/50 {
			t.Errorf("detail %g: %d points", float64(detail), n)
		}
		if again := motif.Of(b, nil, detail); !cmp.Equal(parts, again) {
			t.Errorf("detail %g: other paths the second time", float64(detail))
		}
	}
}

// TestFit: a picture of any shape is drawn out to the bounds of the face, whichever shape that has,
// its top upwards.
func TestFit(t *testing.T) {
	// A quarter of paint: the upper left.
	m := mask(50, 50, func(x, y float64) float64 { return map[bool]float64{true: 1}[x < 25 && y < 25 || x > 49 && y > 49] })
	for _, face := range []geometry.Outline{
		geometry.RectOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: 60, H: 40})),
		geometry.CircleOutline(geometry.Point{}, 20),
		geometry.HexagonOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: 30, H: 34})),
	} {
		box := face.Bounds()
		b := &job.Block{Size: box.Size(), Face: face, Picture: &picture.Picture{Mask: m}}
		rings := ringsOf(whole(t, b, 0))
		for _, c := range []struct {
			x, y float64
			in   bool
		}{{-0.4, -0.4, true}, {-0.05, -0.05, true}, {0.4, -0.4, false}, {-0.4, 0.4, false}, {0.05, 0.05, false}, {-0.05, 0.05, false}} {
			at := orb.Point{c.x * float64(box.W()), c.y * float64(box.H())}
			if got := winding(rings, at) != 0; got != c.in {
				t.Errorf("%v: paint at %v: %v", box, at, got)
			}
		}
	}
}

// TestDabs: the parts of a print lie side by side, each where its dab is on the face, and together
// are the print.
func TestDabs(t *testing.T) {
	dabs := []job.Dab{
		{Colour: "ochre", Part: job.TheMiddle, Size: 30},
		{Colour: "slate", Part: job.TheCorners, Size: 15},
		{Colour: "moss", Part: job.TheRest},
	}
	r := rand.New(rand.NewPCG(9, 10))
	plain := &job.Block{Size: geometry.Size{W: 60, H: 60}, Face: geometry.RectOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: 60, H: 60}))}
	for name, b := range map[string]*job.Block{"stand-in": plain, "picture": pictured(mask(60, 60, func(x, y float64) float64 { return 1.4 - math.Hypot(x-30, y-30)/30 }))} {
		const detail = 0.2
		whole := ringsOf(whole(t, b, detail))
		var parts [3][]orb.Ring
		for _, p := range motif.Of(b, dabs, detail) {
			parts[p.Dab] = ringsOf(p.Path)
		}
		for range 1500 {
			at := orb.Point{(r.Float64() - 0.5) * 60, (r.Float64() - 0.5) * 60}
			if nearLine(at, whole, parts[:]) {
				continue
			}
			want := -1
			if winding(whole, at) != 0 {
				want = 2
				if math.Hypot(at[0], at[1]) < 15 {
					want = 0
				} else if math.Hypot(30-math.Abs(at[0]), 30-math.Abs(at[1])) < 15 {
					want = 1
				}
			}
			for i, p := range parts {
				if got := winding(p, at) != 0; got != (i == want) {
					t.Fatalf("%s: %v is in part %d: %v; it is in %d", name, at, i, got, want)
				}
			}
		}
	}
}

// nearLine tells whether a point is so near the edge of a part that it may be on either side.
func nearLine(at orb.Point, whole []orb.Ring, parts [][]orb.Ring) bool {
	for _, rings := range append(parts, whole) {
		for _, r := range rings {
			if planar.DistanceFrom(orb.LineString(r), at) < 0.3 {
				return true
			}
		}
	}
	return false
}

// TestShares: how much of a face has which paint, by hand. A disc of 30 mm on a face of 60 x 60 mm is
// 225 pi/3600 of it; the rest is the rest.
func TestShares(t *testing.T) {
	face := geometry.RectOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: 60, H: 60}))
	middle, rest := job.Dab{Part: job.TheMiddle, Size: 30}, job.Dab{Part: job.TheRest}
	disc := 225 * math.Pi / 3600
	left := mask(60, 60, func(x, y float64) float64 { return map[bool]float64{true: 1}[x < 30] })
	disk := geometry.CircleOutline(geometry.Point{}, 30)
	for name, c := range map[string]struct {
		block *job.Block
		dabs  []job.Dab
		want  []float64
	}{
		"nothing known":      {&job.Block{Face: face}, []job.Dab{middle, rest}, []float64{disc, 1 - disc}},
		"inked":              {&job.Block{Face: face, Inked: 0.5}, []job.Dab{middle, rest}, []float64{disc / 2, (1 - disc) / 2}},
		"no rest":            {&job.Block{Face: face}, []job.Dab{middle}, []float64{disc}},
		"picture":            {&job.Block{Face: face, Picture: &picture.Picture{Mask: left}}, []job.Dab{middle, rest}, []float64{disc / 2, (1 - disc) / 2}},
		"picture, inked":     {&job.Block{Face: face, Inked: 0.25, Picture: &picture.Picture{Mask: left}}, []job.Dab{middle, rest}, []float64{disc / 4, (1 - disc) / 4}},
		"round":              {&job.Block{Face: disk}, []job.Dab{{Part: job.TheEdge, Size: 10}, rest}, []float64{5.0 / 9, 4.0 / 9}},
		"round with picture": {&job.Block{Face: disk, Picture: &picture.Picture{Mask: left}}, []job.Dab{{Part: job.TheMiddle, Size: 30}, rest}, []float64{1.0 / 8, 3.0 / 8}},
	} {
		got := motif.Shares(c.block, c.dabs)
		if !slices.EqualFunc(got, c.want, func(a, b float64) bool { return math.Abs(a-b) < 0.002 }) {
			t.Errorf("%s: %.4f, by hand %.4f", name, got, c.want)
		}
	}
}

// TestCrosswise: of two pixels with paint that meet only at a corner, the paint is one where the four
// pixels there have half together, and two where they have less.
func TestCrosswise(t *testing.T) {
	for _, c := range []struct {
		paint, plain uint8
		rings        int
	}{{255, 60, 1}, {200, 0, 2}, {255, 10, 1}, {240, 10, 2}} {
		for _, mirrored := range []bool{false, true} {
			m := &picture.Mask{W: 2, H: 2, Paint: []uint8{c.paint, c.plain, c.plain, c.paint}}
			if mirrored {
				slices.Reverse(m.Paint[:2])
				slices.Reverse(m.Paint[2:])
			}
			if got := len(whole(t, pictured(m), 0)); got != c.rings {
				t.Errorf("%v: %d rings, want %d", m.Paint, got, c.rings)
			}
		}
	}
}
