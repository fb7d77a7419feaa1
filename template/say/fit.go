package say

import (
	"fmt"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// Fit says what fits, for a person to read: for each item and pass every way of centring,
// the one taken and why, what one more print would take, which cloth the guide serves, how
// errors would add up, the tape lines, a picture of the numbered prints, and of what papers the
// guide takes how many sheets.
func Fit(p *plan.Plan) string {
	f := &fitText{u: p.Job.Units}
	f.say("", words.Shown(p.Job.Title))
	for _, ip := range p.Items {
		f.blank()
		f.heading(ip)
		f.pieces(ip)
		f.crooked(ip)
		if len(ip.Item.Passes) == 0 {
			f.say("  ", "There is no pass, so nothing to fit; add [[item.pass]] with block and gap below this item.")
		}
		for _, cloth := range ip.Cloths() {
			if cloth.Area.Turned {
				f.blank()
				f.turned(cloth)
			}
			for _, pp := range cloth.Passes {
				f.blank()
				f.pass(cloth, pp, len(ip.Turned) > 0)
			}
		}
		f.blank()
		for _, text := range Whole(f.u, ip) {
			f.say("  ", text)
		}
		if len(ip.Item.Passes) > 0 {
			f.blank()
			for _, face := range guide.Shown(p.Job, ip) {
				f.papers(face, guide.SheetCounts(p, face))
				f.reach(p, face)
			}
		}
	}
	f.set(p)
	f.unnamed(p.Job)
	return strings.Join(f.lines, "\n") + "\n"
}

// heading says what an item is.
func (f *fitText) heading(ip *plan.ItemPlan) {
	it := ip.Item
	text := fmt.Sprintf("%s: %s", words.Shown(it.Name), f.u.FormatSize(ip.Area.Cloth.Size()))
	if it.Shape != job.Rectangle {
		text += ", " + string(it.Shape)
	}
	text += ", " + f.border(it, it.Border) + " or more"
	if it.Hem > 0 {
		text += ", hem " + f.u.Format(it.Hem)
	}
	if it.Quantity > 1 {
		what := "pieces"
		if it.Pieces.Several() {
			what = "cloths"
		}
		text += fmt.Sprintf(", %d %s", it.Quantity, what)
	}
	if names := words.Shown(words.InWords(it.Faces)); names != "" {
		text += ", " + names
	}
	f.say("", text)
}

// crooked says how far a cover is from square.
func (f *fitText) crooked(ip *plan.ItemPlan) {
	if text := Crooked(f.u, ip); text != "" {
		f.say("  ", text)
	}
}

// turned says of faces that show the cloth otherwise than the first how it lies there.
func (f *fitText) turned(cloth *plan.ItemPlan) {
	f.say("  ", fmt.Sprintf("The %s is seen turned over like a leaf, left and right changed over, and has a guide of its own: %s or more.",
		words.Shown(words.InWords(cloth.FaceNames)), f.border(cloth.Item, cloth.Item.Border)))
}

// pass leads with the answer; then the ways of centring, and what one print more would take. It
// names the face where there is one, or where faces differ.
func (f *fitText) pass(ip *plan.ItemPlan, p *plan.PassPlan, differ bool) {
	c := p.Choice()
	name := words.Shown(p.Pass.Name)
	if p.Pass.Face != "" || differ {
		name += ", on the " + words.Shown(words.InWords(ip.PrintedOn(p.Pass)))
	}
	f.say("  ", name+": "+f.answer(ip, p)+".")
	how := f.u.FormatSize(p.Pass.Block.Size) + ", " + words.Shown(guide.SetOut(p.Pass))
	if parts := p.Printed(); len(parts) > 1 {
		how = f.parts(parts) + ", " + words.Shown(guide.SetOut(p.Pass))
	} else if p.Pass.Name != p.Pass.Block.Name {
		how = "block " + words.Shown(p.Pass.Block.Name) + ", " + how
	}
	if !p.Pass.Seated() && p.Pass.Repeat.Gapped() {
		how += ", " + guide.GapWords(f.u, c.Gap)
	}
	f.say("    ", words.UpperFirst(how)+".")
	if len(p.Pass.Dabs) > 0 {
		f.say("    ", words.UpperFirst(Dabs(f.u, p.Pass))+".")
	}
	f.runs(c)
	for _, n := range p.Notes {
		f.say("    ", words.UpperFirst(n)+".")
	}
	for _, o := range ip.Overlaps {
		if o.Pass == p {
			f.say("    ", Overlap(f.u, o))
		}
	}
	if len(p.Choices) > 1 {
		f.blank()
		f.say("    ", fmt.Sprintf("What can sit on the centre lines, and the plain border that leaves (%s):", f.u))
		even := evener(p)
		f.choices(p, even)
		f.blank()
		f.say("    ", "* is taken: "+p.Why()+".")
		if even >= 0 {
			f.say("    ", evenerWords(p, even))
		}
	}
	f.blank()
	misses := len(f.lines)
	for _, m := range p.NearMisses() {
		if text := f.nearMiss(m, p.Pass); text != "" {
			f.say("    ", text)
		}
	}
	if len(f.lines) > misses {
		f.blank()
	}
	if p.Tape != nil {
		f.tape(ip, *p.Tape)
		f.blank()
	}
	f.picture(p)
}

// parts says how many prints there are of each part of a pass, in the order in which they are put
// down.
func (f *fitText) parts(parts []*plan.PassPlan) string {
	var texts []string
	for _, p := range parts {
		texts = append(texts, fmt.Sprintf("%d of %s, %s", len(p.Prints), words.Shown(p.Pass.Name), f.u.FormatSize(p.Pass.Block.Size)))
	}
	return strings.Join(texts, ", then ")
}

// answer is what the maker asked for: how many prints, how they lie, what stays plain.
func (f *fitText) answer(ip *plan.ItemPlan, p *plan.PassPlan) string {
	c := p.Choice()
	text := words.Counted(len(p.Prints), "print", "prints")
	if full(c) {
		text += fmt.Sprintf(", %d across and %d down", c.Columns, c.Rows)
	}
	if ip.Item.Shape.Shade() {
		return text + ", " + f.border(ip.Item, c.Border)
	}
	return text + ", " + guide.PlainWords(f.u, c.Border)
}

// border says how much plain cloth is left; a shade has none but at its two ends.
func (f *fitText) border(it *job.Item, b geometry.Edges) string {
	switch {
	case !it.Shape.Shade():
		return guide.BorderWords(f.u, b)
	case (b.Top - b.Bottom).Abs() <= geometry.Tolerance:
		return fmt.Sprintf("border %s top and bottom", f.u.Format(b.Top))
	}
	return fmt.Sprintf("border top %s, bottom %s", f.u.Number(b.Top), f.u.Format(b.Bottom))
}

// full tells whether every column has a print in every row.
func full(c plan.Choice) bool { return c.Count > 0 && c.Columns*c.Rows == c.Count }

// choices adds the table of the ways to centre a pass, of which even is marked too.
func (f *fitText) choices(p *plan.PassPlan, even int) {
	opens := false
	for _, c := range p.Choices {
		opens = opens || c.Gap != p.Choices[0].Gap
	}
	head := []string{" ", "across", "down", "prints"}
	mix := p.Pass.Mix
	if !mix.None() {
		head = append(head, "far left")
	}
	if opens {
		head = append(head, "gap")
	}
	rows := [][]string{append(head, "left", "right", "far", "near")}
	for i, c := range p.Choices {
		row := []string{" ", string(c.Across), string(c.Down), strconv.Itoa(c.Count)}
		switch i {
		case p.Taken:
			row[0] = "*"
		case even:
			row[0] = "="
		}
		if full(c) {
			row[3] = fmt.Sprintf("%d × %d = %d", c.Columns, c.Rows, c.Count)
		}
		if !mix.None() {
			row = append(row, words.Shown(p.PartName(mix.At(c.Begins.I, c.Begins.J))))
		}
		if opens {
			row = append(row, f.gaps(c.Gap))
		}
		for _, l := range []geometry.Length{c.Border.Left, c.Border.Right, c.Border.Top, c.Border.Bottom} {
			cell := f.u.Number(l)
			if c.Count == 0 {
				cell = "-"
			}
			row = append(row, cell)
		}
		rows = append(rows, row)
	}
	f.table("    ", rows, 3)
}

// gaps writes the gap across and down, once where they are the same.
func (f *fitText) gaps(g job.Spacing) string {
	if (g.Across - g.Down).Abs() <= geometry.Tolerance {
		return f.u.Number(g.Across)
	}
	return f.u.Number(g.Across) + ", " + f.u.Number(g.Down)
}

// runs says how the prints are shared out where columns and rows differ: over the sides of a
// frame, over rings, over rows or columns.
func (f *fitText) runs(c plan.Choice) {
	var parts []string
	counts, what := c.RowCounts, "Rows, from the far edge: "
	if len(counts) == 0 {
		counts, what = c.ColumnCounts, "Columns, from the left: "
	}
	switch {
	case len(c.Runs) > 0:
		what = "In each run: "
		for _, r := range c.Runs {
			parts = append(parts, fmt.Sprintf("%s: %d", r.Name, r.Count))
		}
	case len(counts) > 0 && !full(c):
		for _, n := range counts {
			parts = append(parts, strconv.Itoa(n))
		}
	default:
		return
	}
	const most = 30
	if more := len(parts) - most; more > 0 {
		parts = append(parts[:most], fmt.Sprintf("and %d more", more))
	}
	f.say("    ", what+strings.Join(parts, ", ")+".")
}

// tape adds the tape lines, from the cloth's edge and from the crease.
func (f *fitText) tape(ip *plan.ItemPlan, t plan.TapeLines) {
	rows := [][]string{{"tape line", "on the cloth", "from the crease"}}
	if ip.Item.Pieces.Several() {
		rows = [][]string{{"tape line", "on the piece", "from its middle"}}
	}
	for _, l := range t.Lines(ip.Area) {
		name := l.Name
		if l.Starts {
			name += ", start"
		}
		rows = append(rows, []string{name, f.u.Format(l.At) + " from the " + l.From, l.FromCrease(f.u.Format)})
	}
	f.table("    ", rows, 3)
}
