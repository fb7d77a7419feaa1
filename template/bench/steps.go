package bench

import (
	"fmt"
	"slices"

	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// steps says what to do at the bench, in a few sentences that fit the item; left: the picture of
// the order leaves numbers out.
func (b bench) steps(left bool) []string {
	item := b.face.Item.Item
	shade := item.Shade != (job.Shade{})
	join := "Print the guide’s sheets at 100 %, measure a check bar, join them and tape them flat to the mat."
	prepare := "Wash and press the cloth. Fold it in half both ways and press the creases."
	if shade {
		prepare = "Dust the shade and do not fold it. Mark the middle, opposite the seam, lightly at both edges."
	}
	if len(item.Faces) > 1 {
		prepare += " Lay paper inside, so that paint does not come through."
	}
	lay := "Lay the " + b.laying()
	if b.face.Item.Area.Turned {
		lay += " Turn it over like a leaf for that: what was at the left comes to lie at the right."
	}
	steps := []string{join, prepare, lay}
	if alone := b.face.Laid().Apart(); b.job.Paper.Passes == job.PassesApart && len(alone) > 1 {
		var guides []string
		for _, f := range alone {
			guides = append(guides, f.Pass()+" "+guide.Mark(b.job, f))
		}
		steps[0] = "Print the guides’ sheets at 100 %, measure a check bar, join each guide and tape the first flat to the mat."
		steps[2] += " Each pass has a guide of its own, by its mark: " + words.InWords(guides) + ". Change guides when a pass is dry; the cloth lies the same on each."
	}
	if guide.Taped(b.face) {
		steps = append(steps, "Stretch masking tape from tick to tick: the start tape first, then along the outer edges of the prints.")
	}
	order := "in the order of the numbers"
	if left {
		order += " (the picture has not room for all of them, the guide has)"
	}
	several := item.Pieces.Several()
	if several {
		order = "piece after piece, each " + order
	}
	steps = append(steps, b.dabSteps()...)
	steps = append(steps,
		"Print the repeat on scrap until it comes even. Then print "+order+", the marked corner down first: touch, swing, lower, press, rock, lift.",
		"Stop and clean the block when the carving fills or an edge prints thick.",
	)
	if slices.ContainsFunc(b.face.Passes, func(p plan.FacePass) bool { return p.Rounds() != nil }) {
		steps = append(steps, "Where prints come in goes, let each go dry before the next, and lean on none that is wet.")
	}
	if m := b.face.Item.Moves; m != nil && m.Times > 1 {
		what := "rows"
		if !m.Down {
			what = "columns"
		}
		steps = append(steps, fmt.Sprintf("When these %d %s are dry, move the cloth along: the last of them onto the dashed outlines. Lay it %d times; the last time print %d %s.",
			m.Lines, what, m.Times, m.Last, what))
	}
	steps = append(steps, "Let the paint dry through. Heat set by the paint maker’s label; an iron is hot.")
	if several {
		steps = append(steps, "Cut the pieces apart last, when all is dry, by the cutting plan: away from the hand, on a mat.")
	}
	return steps
}
