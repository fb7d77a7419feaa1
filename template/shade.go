package template

import (
	"errors"
	"fmt"
	"math"

	"underlay/geometry"
)

// closing returns the largest number of columns, most at the most, with which a repeat closes
// round a shade, and the number it must be a multiple of. Moved rows close with any number;
// moved columns with one after which the steps come to whole pitches; a matrix of turns with a
// multiple of its width.
func (t lattice) closing(l layout, most int) (n, multiple int, err error) {
	turns := len(l.pass.Turns[0])
	multiple = turns
	if t.columns {
		share := t.share(l.pass)
		for multiple <= mostPrints && math.Abs(float64(multiple)*share-math.Round(float64(multiple)*share)) > 1e-9*float64(multiple) {
			multiple += turns
		}
	}
	n = most / multiple * multiple
	switch {
	case n > 0:
		return n, multiple, nil
	case most <= 0:
		return 0, multiple, nil
	case multiple > turns && turns > 1:
		err = fmt.Errorf("%s round, but this %s with its turns closes only with a multiple of %d; write a smaller block, fewer turns or repeat = \"brick\"",
			counted(most, "print goes", "prints go"), l.pass.Repeat, multiple)
	case multiple > turns:
		err = fmt.Errorf("%s round, but this %s closes only with a multiple of %d; write a smaller block or repeat = \"brick\"",
			counted(most, "print goes", "prints go"), l.pass.Repeat, multiple)
	default:
		err = fmt.Errorf("%s round, but a repeat with %d turns in a row closes only with a multiple of %d; write a smaller block or fewer turns",
			counted(most, "print goes", "prints go"), turns, multiple)
	}
	return 0, multiple, err
}

// closingNotes says what closing round a shade made of the gap and of the number that fits,
// and how prints across the seam are printed.
func (t lattice) closingNotes(l layout, c Choice, most int) []string {
	var notes []string
	gap := "gap " + l.units.Format(c.Gap.Across)
	if c.Gap.Across < 0 {
		gap = "lap " + l.units.Format(-c.Gap.Across)
	}
	_, multiple, _ := t.closing(l, most)
	asked := l.pass.Gap.Across
	switch {
	case c.Columns < most:
		with := fmt.Sprintf("with a multiple of %d", multiple)
		if multiple == 2 {
			with = "with an even number"
		}
		what := "a " + l.pass.Repeat
		if !t.columns {
			what = "a repeat with these turns"
		}
		notes = append(notes, fmt.Sprintf("%d would go round, but %s closes only %s: %d are taken, %s", most, what, with, c.Columns, gap))
	case c.Gap.Across > asked.Most+geometry.Tolerance:
		notes = append(notes, fmt.Sprintf("%s round; for the repeat to close, the %s is taken", counted(c.Columns, "print goes", "prints go"), gap))
	}
	if asked.Most < 0 && c.Gap.Across > geometry.Tolerance {
		notes = append(notes, "the block is to lap, but to close the repeat it leaves plain cloth between prints; a block a little wider would join")
	}
	if c.Seam > 0 {
		notes = append(notes, fmt.Sprintf("%s across the seam: print each in two goes, one part at either edge of the flat shade",
			counted(c.Seam, "print lies", "prints lie")))
	}
	return notes
}

// errNoneRound is for a block that does not go round even once.
var errNoneRound = errors.New("no print fits round the shade; write a smaller block")
