package look

import (
	"math"
	"slices"

	"underlay/geometry"
	"underlay/paper"
)

// Lines of the small pictures.
const (
	clothLine = 0.35 * geometry.Millimetre
	thinLine  = 0.18 * geometry.Millimetre
	hatchStep = 1.1 * geometry.Millimetre
)

// hatchAngles are the ways the passes are hatched.
var hatchAngles = [...]geometry.Angle{45, -45, 0, 90}

// hatched returns the layers of a footprint, which hide what is under them: white, its edge and lines
// across it in the n-th of the ways to hatch. They are as wide and as far apart as on any page, drawn
// so small.
func hatched(face geometry.Outline, n int, k geometry.Length) []layer {
	outline := face.Path()
	if centre, r, round := face.Round(); round {
		outline = regular(centre, r).Path()
	}
	lines := hatch(face, hatchAngles[n%len(hatchAngles)], hatchStep/k, thinLine/k)
	return []layer{
		{outline, paper.Grey(255)},
		{append(lines, strip(outline, thinLine/k)...), paper.Ink{}},
	}
}

// regular returns the corners that stand for a circle.
func regular(centre geometry.Point, r geometry.Length) geometry.Polygon {
	p := make(geometry.Polygon, 60)
	for i := range p {
		p[i] = centre.Add(geometry.Pt(0, -r).Turn(geometry.Angle(i * 6)))
	}
	return p
}

// hatch returns lines across a block's face in the direction of an angle, so far apart and so wide,
// as closed paths.
func hatch(face geometry.Outline, angle geometry.Angle, step, width geometry.Length) geometry.Path {
	corners := slices.Clone(face.Corners())
	if centre, r, round := face.Round(); round {
		corners = regular(centre, r)
	}
	low, high := math.Inf(1), math.Inf(-1)
	for i, c := range corners {
		corners[i] = c.Turn(-angle) // lines lie level now
		low, high = math.Min(low, float64(corners[i].Y)), math.Max(high, float64(corners[i].Y))
	}
	var path geometry.Path
	for y := geometry.Length(low) + step/2; float64(y) < high; y += step {
		var cuts []geometry.Length
		for i, a := range corners {
			b := corners[(i+1)%len(corners)]
			if (a.Y <= y) != (b.Y <= y) {
				cuts = append(cuts, a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y))
			}
		}
		slices.Sort(cuts)
		for i := 0; i+1 < len(cuts); i += 2 {
			bar := geometry.Rect{Min: geometry.Pt(cuts[i], y-width/2), Max: geometry.Pt(cuts[i+1], y+width/2)}
			path = append(path, bar.Polygon().Turn(angle).Path()...)
		}
	}
	return path
}

// strip returns a line along closed pieces of straight steps, so wide, as closed paths: a bar along
// each step.
func strip(path geometry.Path, width geometry.Length) geometry.Path {
	var out geometry.Path
	for _, piece := range path {
		points := cornersOf(piece)
		for i, a := range points {
			b := points[(i+1)%len(points)]
			along := b.Sub(a)
			if along.Norm() == 0 {
				continue
			}
			along = along.Mul(float64(width / 2 / along.Norm()))
			across := geometry.Pt(-along.Y, along.X)
			a, b := a.Sub(along), b.Add(along)
			out = append(out, geometry.Polygon{a.Sub(across), b.Sub(across), b.Add(across), a.Add(across)}.Path()...)
		}
	}
	return out
}
