package look

import (
	"math"
	"slices"

	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// Ink returns what a colour is drawn in: as it looks where that is known; of those that are not, each
// of a job another grey; nearly black where a pass names no colour.
func Ink(j *job.Job, colour string) (ink paper.Ink, known bool) {
	ink, known = j.Looks(colour)
	if known || colour == "" {
		return ink, known
	}
	unknown := slices.DeleteFunc(j.Colours(), func(c string) bool { _, known := j.Looks(c); return known })
	greys := []uint8{110, 170, 70, 200, 140, 90, 185, 55}
	return paper.Grey(greys[max(0, slices.Index(unknown, colour))%len(greys)]), false
}

// First returns the way of colouring that a face is shown in where only one is: the first there is
// of it.
func First(face plan.FacePlan) job.Colouring {
	all := Colourings(face)
	if len(all) == 0 {
		return job.Colouring{}
	}
	return all[0]
}

// Colourings lists the ways in which pieces are coloured on a face.
func Colourings(face plan.FacePlan) []job.Colouring {
	return slices.DeleteFunc(face.Item.Asked().Colourings(), func(c job.Colouring) bool {
		return c.Face != "" && !slices.Contains(face.Names, c.Face)
	})
}

// colours are those that a pass prints in, one way of colouring; "" alone where it names none.
func colours(p *job.Pass, c job.Colouring) []string {
	if len(p.Colours) == 0 {
		return []string{""}
	}
	all := make([]string, len(p.Colours))
	for i, name := range p.Colours {
		all[i] = c.Colour(name)
	}
	return all
}

// Hatched tells whether the prints that a pass makes with a block are hatched footprints: neither
// the block's print is known nor how any of its colours looks.
func Hatched(j *job.Job, p *job.Pass, b *job.Block, c job.Colouring) bool {
	return b.Picture == nil && !slices.ContainsFunc(colours(p, c), func(name string) bool { _, known := Ink(j, name); return known })
}

// pale is the relative luminance from which a paint hardly shows on white (as WCAG 2.2 defines it).
const pale = 0.7

// Cloth returns what the cloth of a look is drawn in: white, or grey where some paint is so pale that
// it would not show.
func Cloth(j *job.Job, face plan.FacePlan, c job.Colouring) paper.Ink {
	if slices.ContainsFunc(Swatches(j, face, c), func(s Swatch) bool { return !s.Hatched() && luminance(s.Ink) > pale }) {
		return paper.Grey(165)
	}
	return paper.Grey(255)
}

// luminance is the relative luminance of an ink, 0 to 1.
func luminance(i paper.Ink) float64 {
	linear := func(v uint8) float64 {
		c := float64(v) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(i.R) + 0.7152*linear(i.G) + 0.0722*linear(i.B)
}
