package motif

import (
	"underlay/template/job"
	"underlay/template/picture"
)

// looked is how many pixels a side a face is looked at in, to share it between dabs.
const looked = 300

// Shares returns how much of a block's whole face carries each dab's paint: by the picture of its
// print, or without one as if the paint lay evenly on the face. They come to the share that is inked
// where the block gives it, else to that of the picture, else to 1; less what no dab has.
func Shares(b *job.Block, dabs []job.Dab) []float64 {
	face := b.Face.Bounds()
	m := &picture.Mask{W: looked, H: looked}
	if b.Picture != nil {
		m = sized(b.Picture.Mask, looked, looked)
	}
	sums := make([]float64, len(dabs))
	all := 0.0
	for i := range looked * looked {
		paint := 255.0
		if b.Picture != nil {
			paint = float64(m.Paint[i])
		}
		at := pixelAt(m, face, i)
		if paint == 0 || !b.Face.Contains(at) {
			continue
		}
		all += paint
		if d := job.DabAt(dabs, b.Face, at); d >= 0 {
			sums[d] += paint
		}
	}
	inked := b.Inked
	if inked == 0 {
		inked = 1
		if b.Picture != nil {
			inked = all / 255 * float64(face.W()*face.H()) / (looked * looked) / b.Face.Area()
		}
	}
	for i := range sums {
		if all > 0 {
			sums[i] *= min(inked, 1) / all
		}
	}
	return sums
}
