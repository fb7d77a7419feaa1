package plan

import (
	"fmt"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// tooMany refuses n prints.
func tooMany(n float64) error {
	return fmt.Errorf("this makes about %s prints, and a job may have %s; write a larger block, a smaller item or fewer passes", words.PlainNumber(n), words.PlainNumber(mostPrints))
}

// noneFits explains why no print of a pass fits, and what would make one fit.
func (l layout) noneFits(choices []Choice) error {
	u := l.units
	free := *l.pass
	free.CentreAcross, free.CentreDown = job.OnBest, job.OnBest
	if i := take(choices, &free); i >= 0 && choices[i].Count > 0 {
		return fmt.Errorf("no print fits with the centre lines as asked; write centre-across = %q and centre-down = %q", choices[i].Across, choices[i].Down)
	}
	if l.pass.Seated() {
		return l.noSeat()
	}
	name := words.Quote(l.pass.Block.Name)
	if l.area.Flat != nil {
		slope := l.area.slant[1] - l.area.slant[0]
		return fmt.Errorf("no print fits: the block %s is %s high and the printable slope of the shade %s, less what the arcs take; write a smaller block or a smaller border",
			name, u.Format(l.cell.H), u.Format(slope))
	}
	room := l.area.Rect.Size()
	over := geometry.Size{W: l.cell.W - room.W, H: l.cell.H - room.H}
	if over.W <= geometry.Tolerance && over.H <= geometry.Tolerance {
		return fmt.Errorf("no whole print of the block %s fits; write a smaller border, another repeat or a smaller block", name)
	}
	var by string
	switch {
	case over.W > geometry.Tolerance && over.H > geometry.Tolerance:
		by = fmt.Sprintf("%s too wide and %s too high", u.Format(u.Up(over.W)), u.Format(u.Up(over.H)))
	case over.W > geometry.Tolerance:
		by = u.Format(u.Up(over.W)) + " too wide"
	default:
		by = u.Format(u.Up(over.H)) + " too high"
	}
	return fmt.Errorf("no print fits: the block %s, %s, is %s for the printable area, %s; make the item that much larger, the border less, or write a block of at most %s",
		name, u.FormatSize(l.cell), by, u.FormatSize(room),
		u.FormatSize(geometry.Size{W: u.Down(min(l.cell.W, room.W)), H: u.Down(min(l.cell.H, room.H))}))
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
