package plan

import (
	"errors"
	"fmt"
	"math"

	"underlay/geometry"
	"underlay/template/words"
)

// closing returns the largest number of columns, most at the most, with which a repeat closes
// round a shade, and the number it must be a multiple of. Moved rows close with any number;
// moved columns with one after which the steps come to whole pitches; a matrix of turns with a
// multiple of its width. Where the job asks for a number, it is that one.
func (t lattice) closing(l layout, most int) (n, multiple int, err error) {
	turns := lcm(l.pass.Turns.Columns(), l.pass.Mix.Columns())
	multiple = turns
	if t.columns {
		share := t.share(l.pass)
		for multiple <= mostPrints && math.Abs(float64(multiple)*share-math.Round(float64(multiple)*share)) > 1e-9*float64(multiple) {
			multiple += turns
		}
	}
	asked := l.pass.Exactly.Across
	if asked > 0 {
		if write := max(multiple, min(asked, most)/multiple*multiple); asked%multiple != 0 && write <= most {
			return 0, multiple, fmt.Errorf("%d across do not close round the shade, as %s takes a multiple of %d; write across = %d", asked, words.Article(l.pass.Repeat), multiple, write)
		}
		most = min(most, asked)
	}
	n = most / multiple * multiple
	if n > 0 || most <= 0 {
		return n, multiple, nil
	}
	what, write := fmt.Sprintf("a repeat with %d turns in a row", turns), " or fewer turns"
	if !l.pass.Mix.None() {
		what, write = fmt.Sprintf("a repeat that comes again after %d columns", turns), " or fewer columns of blocks"
	}
	if multiple > turns {
		what, write = "this "+string(l.pass.Repeat), ` or repeat = "brick"`
		if turns > 1 {
			what, write = what+" with its turns", `, fewer turns or repeat = "brick"`
		} else if multiple > 2 {
			write = `, step = "1/2" or repeat = "brick"`
		}
	}
	err = fmt.Errorf("%s round, but %s closes only with a multiple of %d; write a smaller block%s",
		words.Counted(most, "print goes", "prints go"), what, multiple, write)
	return 0, multiple, err
}

// lcm is the least number that both go into.
func lcm(a, b int) int {
	n := a
	for n%b != 0 {
		n += a
	}
	return n
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
	case l.pass.Exactly.Across == 0 && c.Columns < most:
		with := fmt.Sprintf("with a multiple of %d", multiple)
		if multiple == 2 {
			with = "with an even number"
		}
		what := "a " + string(l.pass.Repeat)
		if !t.columns {
			what = "a repeat with these turns"
		}
		notes = append(notes, fmt.Sprintf("%d would go round, but %s closes only %s: %d are taken, %s", most, what, with, c.Columns, gap))
	case c.Gap.Across > asked.Most+geometry.Tolerance:
		notes = append(notes, fmt.Sprintf("%s round; for the repeat to close, the %s is taken", words.Counted(c.Columns, "print goes", "prints go"), gap))
	}
	if asked.Most < 0 && c.Gap.Across > geometry.Tolerance {
		notes = append(notes, l.joiningNote(c, multiple))
	}
	if c.Seam > 0 {
		notes = append(notes, fmt.Sprintf("%s across the seam: print each in two goes, one part at either edge of the flat shade",
			words.Counted(c.Seam, "print lies", "prints lie")))
	}
	return notes
}

// joiningNote says which blocks would lap round the shade, where this one is to lap and cannot.
func (l layout) joiningNote(c Choice, multiple int) string {
	text := "the block is to lap, but to close the repeat it leaves plain cloth between prints"
	if l.area.around == 0 {
		return text
	}
	wide := func(n int) string {
		return l.units.Format(l.area.around/geometry.Length(n) - l.pass.Gap.Across.Least)
	}
	return fmt.Sprintf("%s; a block %s wide would join with %d round, one %s wide with %d", text,
		wide(c.Columns), c.Columns, wide(c.Columns+multiple), c.Columns+multiple)
}

// errNoneRound is for a block that does not go round even once.
var errNoneRound = errors.New("no print fits round the shade; write a smaller block")
