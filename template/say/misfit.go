package say

import (
	"fmt"
	"math"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// Misfits says of the blocks of a job whose picture has not the shape of the face that it has not, and
// what to do: a sentence each.
func Misfits(j *job.Job) []string {
	var all []string
	for _, b := range j.Blocks {
		if !b.PictureFits() {
			all = append(all, Misfit(j.Units, b))
		}
	}
	return all
}

// Misfit says how far the print in a block's picture is from the shape of the face.
func Misfit(u geometry.Unit, b *job.Block) string {
	off := b.PictureOff()
	way := "wide"
	if off < 1 {
		way = "narrow"
	}
	text := fmt.Sprintf("The print in the picture %s is %.0f %% too %s for the face of %s, %s, and is drawn out to it; ",
		words.Shown(b.Picture.Name), math.Abs(off-1)*100, way, words.Shown(b.Name), u.FormatSize(b.Size))
	again := "measure the print again"
	if b.Shape == job.RectangleFace {
		tenth := func(l geometry.Length) geometry.Length { return geometry.Length(math.Round(float64(l)*10) / 10) }
		as := geometry.Length(off)
		again += fmt.Sprintf(", which by its picture is %s or %s",
			u.FormatSize(geometry.Size{W: tenth(b.Size.W * as), H: b.Size.H}), u.FormatSize(geometry.Size{W: b.Size.W, H: tenth(b.Size.H / as)}))
	}
	return text + again + ", or crop the picture to the print alone."
}
