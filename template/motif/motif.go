package motif

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/picture"
)

// Part is what a block prints with one of its dabs.
type Part struct {
	Dab  int // index in the dabs; 0 where there are none
	Path geometry.Path
}

// MostPoints is about the most that the paths of one print have: of a picture with more in it they
// show less.
const MostPoints = 20_000

// mostSide is the most pixels a side that a picture is traced at; with dabs, where each takes some
// working out, mostDabbed.
const (
	mostSide   = 2000
	mostDabbed = 600
)

// Of returns the print of a block, cut by its dabs where it has some: the parts lie side by side, in
// the order of the dabs, those left out on which there is no paint. Curves and the edges of a picture
// become straight steps that leave them by at most detail; what is smaller than that is left out.
// The same block, dabs and detail give the same paths.
func Of(b *job.Block, dabs []job.Dab, detail geometry.Length) []Part {
	if b.Picture == nil && len(dabs) == 0 {
		return []Part{{Path: standIn(b.Face, detail)}}
	}
	source := source(b, detail)
	for {
		parts, pixel, ok := traced(source, b, dabs, detail)
		if ok && points(parts) <= MostPoints {
			return parts
		}
		detail = max(detail, pixel) * 1.5
	}
}

// source is the mask of a block's print: that of its picture, or its stand-in as fine as detail asks.
func source(b *job.Block, detail geometry.Length) *picture.Mask {
	if b.Picture != nil {
		return b.Picture.Mask
	}
	w, h := fineness(b.Face.Bounds().Size(), detail, mostDabbed)
	return shaded(standIn(b.Face, detail), b.Face.Bounds(), w, h)
}

// fineness is how many pixels a side make them no larger than detail, at most so many.
func fineness(size geometry.Size, detail geometry.Length, most int) (w, h int) {
	side := func(l geometry.Length) int {
		if !(detail > 0) {
			return most
		}
		return max(1, int(min(math.Ceil(float64(l/detail)), float64(most))))
	}
	return side(size.W), side(size.H)
}

// traced draws round the paint of a mask that is fitted to a block's face; not ok where there is so
// much to draw round that it is not worth trying. Pixel is the longer side of what it was looked at in.
func traced(m *picture.Mask, b *job.Block, dabs []job.Dab, detail geometry.Length) (parts []Part, pixel geometry.Length, ok bool) {
	face := b.Face.Bounds()
	most := mostSide
	if len(dabs) > 0 {
		most = mostDabbed
	}
	w, h := fineness(face.Size(), detail, most)
	if len(dabs) == 0 { // else the line between two dabs is to be fine, however coarse the picture
		w, h = min(w, m.W), min(h, m.H)
	}
	m = sized(m, w, h)
	pixel = max(face.W()/geometry.Length(w), face.H()/geometry.Length(h))
	if crossings(m) > 10*MostPoints {
		return nil, pixel, false
	}
	masks := []*picture.Mask{m}
	if len(dabs) > 0 {
		masks = dabbed(m, b, dabs)
	}
	for i, m := range masks {
		if path := fitted(rings(m), m, face, detail/2); len(path) > 0 {
			parts = append(parts, Part{i, path})
		}
	}
	return parts, pixel, true
}

// dabLines is how many level lines through each row of pixels the dabs are looked at along.
const dabLines = 3

// dabbed parts the paint of a mask that is fitted to a block's face by what is on each dab.
func dabbed(m *picture.Mask, b *job.Block, dabs []job.Dab) []*picture.Mask {
	face := b.Face.Bounds()
	masks := make([]*picture.Mask, len(dabs))
	shares := make([][]float64, len(dabs)) // of each pixel of a row
	for i := range masks {
		masks[i] = &picture.Mask{W: m.W, H: m.H, Paint: make([]uint8, len(m.Paint))}
		shares[i] = make([]float64, m.W)
	}
	wide, high := face.W()/geometry.Length(m.W), face.H()/geometry.Length(m.H)
	for row := range m.H {
		for i := range shares {
			clear(shares[i])
		}
		for k := range dabLines {
			y := face.Min.Y + high*(geometry.Length(row)+(geometry.Length(k)+0.5)/dabLines)
			for i, spans := range job.DabSpans(dabs, b.Face, y) {
				for _, s := range spans {
					cover(shares[i], float64((s.From-face.Min.X)/wide), float64((s.To-face.Min.X)/wide))
				}
			}
		}
		for i, share := range shares {
			for x, s := range share {
				at := row*m.W + x
				masks[i].Paint[at] = uint8(float64(m.Paint[at])*min(s/dabLines, 1) + 0.5)
			}
		}
	}
	return masks
}

// cover adds to each pixel of a row how much of it lies between two places along it.
func cover(row []float64, from, to float64) {
	from, to = max(from, 0), min(to, float64(len(row)))
	for x := int(from); float64(x) < to; x++ {
		row[x] += min(to, float64(x+1)) - max(from, float64(x))
	}
}

// fitted lays rings that are in pixels onto the face, with no more corners than it takes to stay
// within slack of them.
func fitted(rings [][]geometry.Point, m *picture.Mask, face geometry.Rect, slack geometry.Length) geometry.Path {
	kx, ky := face.W()/geometry.Length(m.W), face.H()/geometry.Length(m.H)
	var path geometry.Path
	for _, r := range rings {
		for i, p := range r {
			r[i] = geometry.Pt(face.Min.X+p.X*kx, face.Min.Y+p.Y*ky)
		}
		if r = simplified(r, slack); len(r) > 2 {
			path = append(path, geometry.Polygon(r).Path()...)
		}
	}
	return path
}

// points counts the corners of parts.
func points(parts []Part) int {
	n := 0
	for _, p := range parts {
		for _, piece := range p.Path {
			n += 1 + len(piece.Steps)
		}
	}
	return n
}
