package plan

import (
	"fmt"

	"underlay/template/job"
	"underlay/template/words"
)

// tooMany refuses n prints.
func tooMany(n float64) error {
	return fmt.Errorf("this makes about %s prints, and a job may have %s; write a larger block, a smaller item or fewer passes", words.PlainNumber(n), words.PlainNumber(mostPrints))
}

// checkCorners refuses n corners of prints, those of the last pass with each so many.
func checkCorners(n, each int) error {
	if n <= mostCorners {
		return nil
	}
	return fmt.Errorf("with its prints of %s corners the job has %s corners to draw, and may have %s; write an outline of fewer corners, a larger block, a smaller item or fewer passes",
		words.PlainNumber(float64(each)), words.PlainNumber(float64(n)), words.PlainNumber(mostCorners))
}

// noneFits explains why no print of a pass fits, and what would make one fit.
func (l layout) noneFits(choices []Choice) error {
	free := *l.pass
	free.CentreAcross, free.CentreDown = job.OnBest, job.OnBest
	if i := take(choices, &free); i >= 0 && choices[i].Count > 0 {
		if l.pass.Exactly != (job.Counts{}) {
			return fmt.Errorf("%s cannot be had with the centre lines as asked; write centre-across = %q and centre-down = %q", countWords(l.pass.Exactly), choices[i].Across, choices[i].Down)
		}
		return fmt.Errorf("no print fits with the centre lines as asked; write centre-across = %q and centre-down = %q", choices[i].Across, choices[i].Down)
	}
	if l.pass.Seated() {
		return l.noSeat()
	}
	if l.pass.Exactly != (job.Counts{}) && l.free().counted() != (job.Counts{}) {
		return l.notSoMany()
	}
	return l.area.surface.noneFits(l)
}

// noSeat explains why no print fits where another pass says they go.
func (l layout) noSeat() error {
	name, target := words.Quote(l.pass.Block.Name), words.Quote(l.target.Pass.Name)
	switch {
	case l.pass.On != nil:
		return fmt.Errorf("no print of the block %s, set on those of %s, lies wholly on the area; write a smaller offset or a smaller block", name, target)
	case l.pass.OpenEdges:
		return fmt.Errorf("no opening of %s has room for the block %s; write a smaller block, or a smaller one for %s", target, name, target)
	}
	return fmt.Errorf("%s has no opening closed by four prints with room for the block %s; write open-edges = true, or a smaller block for %s", target, name, target)
}
