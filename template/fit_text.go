package template

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"underlay/geometry"
)

// fitWidth is the most characters in a line of FitText, so that it goes into any window.
const fitWidth = 78

// FitText says what fits, for a person to read: for each item and pass every way of centring,
// the one taken and why, what one more print would take, which cloth the guide serves, how
// errors would add up, the tape lines, and a picture of the numbered prints.
func (p *Plan) FitText() string {
	f := &fitText{u: p.Job.Units}
	f.say("", shown(p.Job.Title))
	for _, ip := range p.Items {
		f.blank()
		f.item(ip)
		for _, pp := range ip.Passes {
			f.blank()
			f.pass(ip, pp)
		}
	}
	return strings.Join(f.lines, "\n") + "\n"
}

// fitText is such a text under way.
type fitText struct {
	u     geometry.Unit
	lines []string
}

func (f *fitText) blank() { f.lines = append(f.lines, "") }

// together matches what stays on one line: a number with its fraction or its unit.
var together = regexp.MustCompile(`\d (?:\d+/\d+(?: in\b)?|mm\b|cm\b|in\b)`)

// say adds a text, broken into lines that all begin with indent.
func (f *fitText) say(indent, text string) {
	const tie = "\u00a0"
	text = together.ReplaceAllStringFunc(text, func(s string) string { return strings.ReplaceAll(s, " ", tie) })
	add := func(line string) { f.lines = append(f.lines, indent+strings.ReplaceAll(line, tie, " ")) }
	line := ""
	for word := range strings.SplitSeq(text, " ") {
		if line != "" && len([]rune(indent+line+" "+word)) > fitWidth {
			add(line)
			line = ""
		}
		line = strings.TrimPrefix(line+" "+word, " ")
	}
	add(line)
}

// table adds rows of cells below each other, the first row its heading. Cells stand to the
// right of their column but in the first few.
func (f *fitText) table(indent string, rows [][]string, left int) {
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], len([]rune(cell)))
		}
	}
	for _, row := range rows {
		var cells []string
		for i, cell := range row {
			room := strings.Repeat(" ", widths[i]-len([]rune(cell)))
			if i < left {
				cells = append(cells, cell+room)
			} else {
				cells = append(cells, room+cell)
			}
		}
		f.lines = append(f.lines, strings.TrimRight(indent+strings.Join(cells, "  "), " "))
	}
}

func (f *fitText) item(ip *ItemPlan) {
	it := ip.Item
	text := fmt.Sprintf("%s: %s", shown(it.Name), f.u.FormatSize(it.Size))
	if it.Shape != itemShapes[0] {
		text += ", " + it.Shape
	}
	text += ", " + borderWords(f.u, it.Border) + " or more"
	if it.Hem > 0 {
		text += ", hem " + f.u.Format(it.Hem)
	}
	if it.Quantity > 1 {
		text += fmt.Sprintf(", %d pieces", it.Quantity)
	}
	if names := shown(inWords(it.Faces)); names != "" {
		text += ", " + names
	}
	f.say("", text)
	if len(ip.Passes) == 0 {
		f.say("  ", "There is no pass, so nothing to fit; add [[item.pass]] with block and gap below this item.")
	}
}

func (f *fitText) pass(ip *ItemPlan, p *PassPlan) {
	c := p.Choice()
	name := shown(p.Pass.Name)
	if p.Pass.Face != "" {
		name += ", on the " + shown(p.Pass.Face)
	}
	if p.Pass.Name != p.Pass.Block.Name {
		name += ": block " + shown(p.Pass.Block.Name)
	}
	f.say("  ", fmt.Sprintf("%s, %s, %s", name, f.u.FormatSize(p.Pass.Block.Size), p.Pass.Repeat))
	if len(p.Choices) > 1 {
		f.blank()
		f.say("    ", fmt.Sprintf("What can sit on the centre lines, and the plain border that leaves (%s):", f.u))
		f.choices(p)
		f.blank()
		f.say("    ", "* is taken: "+p.why()+".")
	}
	f.blank()
	text := counted(len(p.Prints), "print", "prints")
	if c.full() {
		text += fmt.Sprintf(", %d across and %d down", c.Columns, c.Rows)
	}
	f.say("    ", fmt.Sprintf("%s; %s, %s.", text, gapWords(f.u, c.Gap), borderWords(f.u, c.Border)))
	for _, n := range p.Notes {
		f.say("    ", upperFirst(n)+".")
	}
	for _, m := range p.NearMisses {
		f.say("    ", f.nearMiss(m, p.Pass))
	}
	if a, d := p.ServesAcross, p.ServesDown; a != nil && d != nil {
		f.say("    ", fmt.Sprintf("This guide serves cloth %s wide, and %s high.", f.serves(*a), f.serves(*d)))
	}
	if d := p.Drift; d != nil && d.FromCentre > 1 {
		f.say("    ", f.drift(*d, c.Gap, p.Pass.Order))
	}
	if p.Tape != nil {
		f.blank()
		f.tape(ip, *p.Tape)
	}
	f.blank()
	f.picture(p)
}

// full tells whether every column has a print in every row.
func (c Choice) full() bool { return c.Count > 0 && c.Columns*c.Rows == c.Count }

// choices adds the table of the ways to centre a pass.
func (f *fitText) choices(p *PassPlan) {
	opens := false
	for _, c := range p.Choices {
		opens = opens || c.Gap != p.Choices[0].Gap
	}
	head := []string{" ", "across", "down", "prints"}
	if opens {
		head = append(head, "gap")
	}
	rows := [][]string{append(head, "left", "right", "top", "bottom")}
	for i, c := range p.Choices {
		row := []string{" ", string(c.Across), string(c.Down), strconv.Itoa(c.Count)}
		if i == p.Taken {
			row[0] = "*"
		}
		if c.full() {
			row[3] = fmt.Sprintf("%d × %d = %d", c.Columns, c.Rows, c.Count)
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
func (f *fitText) gaps(g Spacing) string {
	if absLength(g.Across-g.Down) <= geometry.Tolerance {
		return f.u.Number(g.Across)
	}
	return f.u.Number(g.Across) + ", " + f.u.Number(g.Down)
}

// nearMiss says what one more print across, or down, would take.
func (f *fitText) nearMiss(m NearMiss, pass *Pass) string {
	way := "across"
	if m.Down {
		way = "down"
	}
	var ways []string
	add := func(l *geometry.Length, format string) {
		if l != nil {
			ways = append(ways, fmt.Sprintf(format, f.change(*l)))
		}
	}
	add(m.Cloth, "%s more cloth")
	add(m.Border, "a border %s less on both sides")
	switch gap := pass.Gap.Across; {
	case pass.Gap.Down.Least < 0 || gap.Least < 0:
		add(m.Gap, "prints %s closer")
	case gap.Most > gap.Least || pass.Gap.Down.Most > pass.Gap.Down.Least:
		add(m.Gap, "a least gap %s less")
	default:
		add(m.Gap, "a gap %s less")
	}
	add(m.Block, "a block %s smaller")
	return fmt.Sprintf("%d %s needs %s.", m.Count, way, strings.Join(ways, ", or "))
}

// change writes the least change that will do, so it is never rounded down. A sixteenth of an
// inch is a coarse step for that: the millimetres are given too.
func (f *fitText) change(l geometry.Length) string {
	up := f.u.Format(roundedUp(l, f.u))
	if f.u == geometry.UnitInch {
		up += " (" + geometry.UnitMM.Format(roundedUp(l, geometry.UnitMM)) + ")"
	}
	return up
}

// step is the finest length that a unit's Format tells from the next.
func step(u geometry.Unit) geometry.Length {
	if u == geometry.UnitInch {
		return geometry.Inch / 16
	}
	return geometry.Millimetre / 100
}

func roundedUp(l geometry.Length, u geometry.Unit) geometry.Length {
	s := step(u)
	return s * geometry.Length(math.Ceil(float64((l-geometry.Tolerance)/s)))
}

func roundedDown(l geometry.Length, u geometry.Unit) geometry.Length { return -roundedUp(-l, u) }

// serves writes a range of cloth sizes, rounded so that every size it names is served.
func (f *fitText) serves(s Serves) string {
	return fmt.Sprintf("from %s up to, not including, %s", f.u.Format(roundedUp(s.Least, f.u)), f.u.Format(roundedDown(s.Below, f.u)))
}

// drift says how errors would add up.
func (f *fitText) drift(d Drift, gap Spacing, order Order) string {
	from := fmt.Sprintf("from the middle outwards the farthest print is %d placements away (from a corner %d)", d.FromCentre, d.FromCorner)
	if order == RowByRow {
		from = fmt.Sprintf("the farthest print is %d placements from the first", d.FromCentre)
	}
	text := "Without a guide errors add up: " + from
	if d.Harmless > 0 {
		what := "gap"
		if gap.Across < 0 && gap.Down < 0 {
			what = "lap"
		}
		text += fmt.Sprintf(", so that errors of more than %s add up to more than the %s", geometry.UnitMM.Format(roundedUp(d.Harmless, geometry.UnitMM)), what)
	}
	return text + ". With the guide's ticks each print keeps its own error only."
}

// tape adds the tape lines, from the cloth's edge and from the crease.
func (f *fitText) tape(ip *ItemPlan, t TapeLines) {
	cloth := ip.Area.cloth
	crease := cloth.Centre()
	rows := [][]string{{"tape line", "from the cloth's edge", "from the crease"}}
	line := func(name, edge string, l, crease geometry.Length, before, after string) {
		away := f.u.Format(absLength(l-crease)) + " " + after
		switch {
		case absLength(l-crease) <= geometry.Tolerance:
			away = "on it"
		case l < crease:
			away = f.u.Format(crease-l) + " " + before
		}
		rows = append(rows, []string{name, f.u.Format(l) + " from the " + edge, away})
	}
	for i, x := range t.Across {
		line([]string{"left edge", "right edge"}[min(i, 1)], "left", x-cloth.Min.X, crease.X-cloth.Min.X, "left", "right")
	}
	for i, y := range t.Down {
		name := "start line"
		switch i {
		case 0:
			name = "top edge"
		case len(t.Down) - 1:
			name = "bottom edge"
		}
		if name != "start line" && absLength(y-t.Start) <= geometry.Tolerance {
			name += ", start"
		}
		line(name, "top", y-cloth.Min.Y, crease.Y-cloth.Min.Y, "above", "below")
	}
	f.table("    ", rows, 3)
}
