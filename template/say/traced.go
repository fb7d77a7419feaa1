package say

import (
	"fmt"

	"underlay/geometry"
	"underlay/template/trace"
	"underlay/template/words"
)

// TracedBlock is what a job says of a block that was measured from a photograph, with its picture in a
// file: [[block]] and its keys.
func TracedBlock(name, file string, p trace.Print) string {
	return fmt.Sprintf("[[block]]\nname = %s\nprint = %s\ninked = %s\npicture = %s\n",
		words.TOML(name), words.TOML(TracedSize(p)), TracedInked(p), words.TOML(file))
}

// TracedSize is the size of a print as it was measured, to a tenth of a millimetre.
func TracedSize(p trace.Print) string {
	tenth := func(l geometry.Length) string { return geometry.Decimals(l.Millimetres(), 1) }
	return tenth(p.Size.W) + " x " + tenth(p.Size.H) + " mm"
}

// TracedInked is the share of it that carries paint, to a hundredth.
func TracedInked(p trace.Print) string { return geometry.Decimals(max(p.Inked, 0.01), 2) }

// Traced says how sure the measures of a print are, in lines.
func Traced(p trace.Print) string {
	mm := func(l geometry.Length, places int) string { return geometry.Decimals(l.Millimetres(), places) + " mm" }
	text := fmt.Sprintf("sure to about %s: buttons and dots of the window lie within %s of their places (%s in the mean); the picture has %s pixels to the millimetre, is taken %.0f degrees aslant and sharp to %s",
		mm(p.Sure(), 1), mm(p.Worst, 2), mm(p.Fit, 3), geometry.Decimals(p.Scale, 1), p.Aslant, mm(p.Blur, 2))
	if p.Light {
		text += "\nthe print is lighter than what it is on, and was taken for paint all the same"
	}
	if p.Specks > 0 {
		text += "\nleft out: " + words.Counted(p.Specks, "speck", "specks") + " beside the print or in it"
	}
	if p.Pale >= 1 {
		text += fmt.Sprintf("\nleft out: %.0f square millimetres that are neither clearly print nor clearly plain; where they are paint, press the block again with one dark paint", p.Pale)
	}
	return text
}
