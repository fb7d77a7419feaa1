package look

import (
	"math"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/motif"
	"underlay/template/plan"
)

// layer is what a print has of one ink: closed paths in the face's frame, at true size.
type layer struct {
	path geometry.Path
	ink  paper.Ink
}

// A look shows what is larger than fine on paper, and no more than mostPoints corners of all its
// prints together, so that any reader draws it in a moment.
const (
	fine       = 0.04 * geometry.Millimetre
	mostPoints = 2_000_000
)

// layersOf returns what a print of a pass with a block looks like, the lowest layer first, drawn so
// small, where so many are drawn that are to have no more corners than most together.
func layersOf(j *job.Job, p plan.FacePass, b *job.Block, c job.Colouring, hatch int, k geometry.Length, prints, most int) []layer {
	if Hatched(j, p.Pass, b, c) {
		return hatched(b.Face, hatch, k)
	}
	coarsest := min(b.Size.W, b.Size.H) / 4
	for detail := fine / k; ; {
		layers := inked(j, p.Pass, b, c, detail)
		over := float64(corners(layers)*prints) / float64(most)
		if over <= 1 || detail > coarsest {
			return layers
		}
		detail *= geometry.Length(min(max(1.5, math.Sqrt(over)), 4))
	}
}

// inked returns the layers of a print in its colours.
func inked(j *job.Job, p *job.Pass, b *job.Block, c job.Colouring, detail geometry.Length) []layer {
	names := colours(p, c)
	if len(p.Dabs) > 0 {
		return dabbed(j, p.Dabs, b, c, detail)
	}
	whole := motif.Of(b, nil, detail)
	if len(whole) == 0 {
		return nil
	}
	layers := make([]layer, len(names))
	for i, name := range names {
		ink, _ := Ink(j, name)
		layers[i] = layer{band(whole[0].Path, b.Face.Bounds(), i, len(names)), ink}
	}
	return layers
}

// dabbed returns the layers of a print with its colours part by part. Where the last dab has all the
// rest, all of the print is laid in its colour first and the others over it, so that no light shows
// along the lines where two meet.
func dabbed(j *job.Job, dabs []job.Dab, b *job.Block, c job.Colouring, detail geometry.Length) []layer {
	var layers []layer
	last := len(dabs) - 1
	under := dabs[last].Part == job.TheRest
	if under {
		for _, part := range motif.Of(b, nil, detail) {
			ink, _ := Ink(j, c.Colour(dabs[last].Colour))
			layers = append(layers, layer{part.Path, ink})
		}
	}
	for _, part := range motif.Of(b, dabs, detail) {
		if part.Dab == last && under {
			continue
		}
		ink, _ := Ink(j, c.Colour(dabs[part.Dab].Colour))
		layers = append(layers, layer{part.Path, ink})
	}
	return layers
}

// band returns the i-th of n level bands of a print, from its top: the colours of a block that does
// not say where each goes.
func band(path geometry.Path, face geometry.Rect, i, n int) geometry.Path {
	if n == 1 {
		return path
	}
	at := func(i int) geometry.Point {
		return geometry.Pt(0, face.Min.Y+face.H()*geometry.Length(i)/geometry.Length(n))
	}
	if i > 0 {
		path = kept(path, at(i), geometry.Pt(0, 1))
	}
	if i < n-1 {
		path = kept(path, at(i+1), geometry.Pt(0, -1))
	}
	return path
}

// kept returns what of closed paths of straight steps lies on the inner side of a line through a
// point (Sutherland and Hodgman's way).
func kept(path geometry.Path, on, inwards geometry.Point) geometry.Path {
	depth := func(p geometry.Point) geometry.Length {
		p = p.Sub(on)
		return p.X*inwards.X + p.Y*inwards.Y
	}
	var out geometry.Path
	for _, piece := range path {
		points := cornersOf(piece)
		cut := make(geometry.Polygon, 0, len(points)+2)
		for i, b := range points {
			a := points[(i+len(points)-1)%len(points)]
			da, db := depth(a), depth(b)
			if (da < 0) != (db < 0) {
				cut = append(cut, a.Add(b.Sub(a).Mul(float64(da/(da-db)))))
			}
			if db >= 0 {
				cut = append(cut, b)
			}
		}
		if len(cut) > 2 {
			out = append(out, cut.Path()...)
		}
	}
	return out
}

// cornersOf returns the corners of a piece of straight steps.
func cornersOf(piece geometry.Piece) geometry.Polygon {
	points := make(geometry.Polygon, 0, len(piece.Steps)+1)
	points = append(points, piece.Start)
	for _, s := range piece.Steps {
		points = append(points, s.To)
	}
	return points
}

// corners counts those of layers.
func corners(layers []layer) int {
	n := 0
	for _, l := range layers {
		for _, piece := range l.path {
			n += 1 + len(piece.Steps)
		}
	}
	return n
}
