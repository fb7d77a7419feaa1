package motif

import (
	"math"
	"slices"

	"underlay/geometry"
)

// The stand-in of a block without a picture: the whole face, with gouge cuts left plain in it that
// rise to points, the longest in the middle. All as shares of the face's mean side, or of the step
// from cut to cut.
const (
	cutsASide  = 5    // on a face as wide as high
	mostCuts   = 11   //
	cutWidth   = 0.44 // of the step
	mostWide   = 0.15 // of the height of the face
	cutMargin  = 0.11 // of the mean side, from the edge of the face
	leastCut   = 0.5  // the outermost cut, as a share of the longest there
	shortest   = 2    // a cut is so many times as high as it is wide, at the least
	cutCorners = 12   // most straight steps up one side of a cut
)

// standIn returns the stand-in for a face.
func standIn(face geometry.Outline, detail geometry.Length) geometry.Path {
	box := face.Bounds()
	side := geometry.Length(math.Sqrt(float64(box.W() * box.H())))
	path := clockwise(edge(face, detail)).Path()
	n := 2*int(cutsASide/2.0*math.Sqrt(float64(box.W()/box.H()))) + 1
	n = min(n, mostCuts)
	margin := cutMargin * min(side, box.W(), box.H())
	step := (box.W() - 2*margin) / (geometry.Length(n) - 1 + cutWidth)
	for k := range n {
		off := geometry.Length(k) - geometry.Length(n-1)/2
		share := 1.0
		if n > 1 {
			share -= (1 - leastCut) * math.Abs(float64(off)) / (float64(n-1) / 2)
		}
		if c := cut(face, box.Centre().X+off*step, min(step*cutWidth, box.H()*mostWide)/2, margin, share, detail); c != nil {
			slices.Reverse(c)
			path = append(path, c.Path()...)
		}
	}
	return path
}

// edge returns the corners of an outline; of a circle as many as it takes for their sides to leave
// it by at most detail.
func edge(face geometry.Outline, detail geometry.Length) geometry.Polygon {
	centre, r, round := face.Round()
	if !round {
		return slices.Clone(face.Corners())
	}
	n := 96.0
	if detail > 0 {
		n = min(max(math.Ceil(math.Pi/math.Acos(max(0, 1-float64(detail/r)))), 12), n)
	}
	p := make(geometry.Polygon, int(n))
	for i := range p {
		p[i] = centre.Add(geometry.Pt(0, -r).Turn(geometry.Angle(360 * float64(i) / n)))
	}
	return p
}

// clockwise returns a polygon whose corners run clockwise as seen.
func clockwise(p geometry.Polygon) geometry.Polygon {
	var twice float64
	for i, a := range p {
		b := p[(i+1)%len(p)]
		twice += float64(a.X*b.Y - b.X*a.Y)
	}
	if twice < 0 {
		slices.Reverse(p)
	}
	return p
}

// cut returns a cut about an upright line of the face, clockwise: from a margin above where the line
// leaves the face at the bottom, up to a share of the way to its top. Nil where it finds no room.
func cut(face geometry.Outline, x, half, margin geometry.Length, share float64, detail geometry.Length) geometry.Polygon {
	top, bottom, ok := run(face, x)
	for _, beside := range []geometry.Length{x - half, x + half} {
		t, b, inside := run(face, beside)
		top, bottom, ok = max(top, t), min(bottom, b), ok && inside
	}
	top, bottom = top+margin, bottom-margin
	top = bottom - (bottom-top)*geometry.Length(share)
	for range 12 {
		if !ok || bottom-top < shortest*2*half {
			return nil
		}
		if c := gouge(x, top, bottom, half, detail); face.HoldsClear(geometry.PolygonOutline(c), margin/2) {
			return c
		}
		least := (bottom - top) * 0.08
		top, bottom = top+least, bottom-least
	}
	return nil
}

// run returns the longest way along an upright line within a face, looked at in a hundred places.
func run(face geometry.Outline, x geometry.Length) (top, bottom geometry.Length, ok bool) {
	const places = 100
	box := face.Bounds()
	start := -1
	for i := range places + 2 {
		y := box.Min.Y + box.H()*geometry.Length(i)/places
		if i <= places && face.Contains(geometry.Pt(x, y)) {
			if start < 0 {
				start = i
			}
			continue
		}
		if start >= 0 {
			from, to := box.Min.Y+box.H()*geometry.Length(start)/places, box.Min.Y+box.H()*geometry.Length(i-1)/places
			if !ok || to-from > bottom-top {
				top, bottom, ok = from, to, true
			}
		}
		start = -1
	}
	return top, bottom, ok
}

// gouge is one cut: round at its foot, drawn out to a point at its top.
func gouge(x, top, bottom, half, detail geometry.Length) geometry.Polygon {
	n := float64(cutCorners)
	if detail > 0 {
		n = min(max(math.Ceil(1.5*math.Sqrt(float64(half/detail))), 3), n)
	}
	belly := bottom - half // where it is widest
	right := geometry.Polygon{{X: x, Y: top}}
	for i := 1.0; i <= n; i++ {
		s := 1 - i/n
		right = append(right, geometry.Pt(x+half*geometry.Length(1-math.Pow(s, 1.7)), belly+(top-belly)*geometry.Length(s)))
	}
	for i := 1.0; i < n; i++ {
		sin, cos := math.Sincos(i / n * math.Pi / 2)
		right = append(right, geometry.Pt(x+half*geometry.Length(cos), belly+half*geometry.Length(sin)))
	}
	all := append(right, geometry.Pt(x, bottom))
	for i := len(right) - 1; i > 0; i-- {
		all = append(all, geometry.Pt(2*x-right[i].X, right[i].Y))
	}
	return all
}
