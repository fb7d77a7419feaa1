package motif

import (
	"cmp"
	"slices"

	"underlay/template/job"
)

// looked is how many pixels a side a face is looked at in, to share it between dabs.
const looked = 300

// Shares returns how much of a block's whole face carries each dab's paint: by the picture of its
// print, or without one as if the paint lay evenly on the face. They come to the share that is inked
// where the block gives it, else to that of the picture, else to 1; less what no dab has.
func Shares(b *job.Block, dabs []job.Dab) []float64 {
	if b.Picture == nil {
		shares := job.DabShares(dabs, b.Face)
		for i := range shares {
			shares[i] *= cmp.Or(b.Inked, 1)
		}
		return shares
	}
	// What has paint and no dab comes last.
	masks := dabbed(sized(b.Picture.Mask, looked, looked), b, append(slices.Clone(dabs), job.Dab{Part: job.TheRest}))
	shares := make([]float64, len(masks))
	all := 0.0
	for i, m := range masks {
		shares[i] = m.Share()
		all += shares[i]
	}
	box := b.Face.Bounds()
	inked := cmp.Or(b.Inked, min(1, all*float64(box.W()*box.H())/b.Face.Area()))
	for i := range shares {
		shares[i] *= inked / max(all, 1e-9)
	}
	return shares[:len(dabs)]
}
