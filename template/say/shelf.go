package say

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/template/guide"
	"underlay/template/plan"
	"underlay/template/words"
)

// Shelf says for a person to read what every block gives on every item: a table for each item.
func Shelf(s *plan.Shelf) string {
	f := &fitText{u: s.Job.Units}
	f.say("", words.Shown(s.Job.Title))
	f.blank()
	var blocks []string
	for _, b := range s.Job.Blocks {
		named := *b
		named.Name = words.Shown(b.Name)
		blocks = append(blocks, guide.Words(&named, f.u))
	}
	f.say("", "Every block in a straight repeat on every item, first the one whose prints take up most of the cloth: "+strings.Join(blocks, "; ")+".")
	shades := false
	for _, si := range s.Items {
		f.blank()
		f.heading(si.ItemPlan)
		f.shelf(si)
		shades = shades || si.Item.Shape.Shade()
	}
	f.blank()
	f.say("", fmt.Sprintf("The prints stand %s apart.", f.u.Format(s.Gap)))
	if shades {
		f.say("", "Round a shade the gap is opened until the repeat closes.")
	}
	f.say("", "For more, and for a guide, choose: write [[item.pass]] with block and gap below an item.")
	return strings.Join(f.lines, "\n") + "\n"
}

// shelf adds what every block gives on an item: those that fit in a table, then the others.
func (f *fitText) shelf(si plan.ShelfItem) {
	shade := si.Item.Shape.Shade()
	beside := "left, right"
	if shade {
		beside = "gap"
	}
	rows := [][]string{{"block", "across", "down", "prints", beside, "top, bottom"}}
	var others []string
	for _, fit := range si.Fits {
		name := words.Shown(fit.Block.Name)
		if !fit.Fits() {
			text := name + " does not fit"
			if fit.Why != "" {
				text += ": " + fit.Why
			}
			others = append(others, text+".")
			continue
		}
		if fit.Turned {
			name += ", turned"
		}
		c := fit.Choice
		row := []string{name, orDash(string(c.Across)), orDash(string(c.Down)), strconv.Itoa(c.Count), f.both(c.Border.Left, c.Border.Right), f.both(c.Border.Top, c.Border.Bottom)}
		if full(c) {
			row[3] = fmt.Sprintf("%d × %d = %d", c.Columns, c.Rows, c.Count)
		}
		if shade {
			row[4] = f.halves(c.Gap.Across)
		}
		rows = append(rows, row)
	}
	if len(rows) > 1 {
		f.blank()
		what := "What sits on the centre lines, the prints, and the plain border that leaves"
		if shade {
			what = "What sits on the centre lines, the prints, the gap round the shade and the plain border"
		}
		f.say("    ", fmt.Sprintf("%s (%s):", what, f.u))
		shortenFirst(rows, fitWidth-len("    "))
		f.table("    ", rows, 3)
	}
	if len(others) > 0 {
		f.blank()
	}
	for _, text := range others {
		f.say("    ", text)
	}
}

// both writes two lengths, once where they read the same.
func (f *fitText) both(a, b geometry.Length) string {
	if f.halves(a) == f.halves(b) {
		return f.halves(a)
	}
	return f.halves(a) + ", " + f.halves(b)
}

// halves writes a length to half a millimetre, or to a sixteenth of an inch: near enough to
// choose by.
func (f *fitText) halves(l geometry.Length) string {
	if f.u != geometry.UnitInch {
		l = geometry.Length(math.Round(2*float64(l)) / 2)
	}
	return f.u.Number(l)
}

func orDash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

// shortenFirst cuts the first cell of every row so that a table of them is at most room wide,
// but never to fewer than 8 characters.
func shortenFirst(rows [][]string, room int) {
	for i := range rows[0] {
		if i == 0 {
			continue
		}
		widest := 0
		for _, row := range rows {
			widest = max(widest, len([]rune(row[i])))
		}
		room -= widest + 2
	}
	room = max(room, 8)
	for _, row := range rows {
		if name := []rune(row[0]); len(name) > room {
			row[0] = string(name[:room-1]) + "…"
		}
	}
}
