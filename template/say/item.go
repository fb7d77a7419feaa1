package say

import (
	"fmt"
	"slices"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// Whole says what is true of all passes of an item together: which cloth its guide serves, and how
// far slips could add up without it.
func Whole(u geometry.Unit, ip *plan.ItemPlan) []string {
	var texts []string
	said := map[string]bool{}
	for _, cloth := range ip.Cloths() {
		for _, text := range append(Serves(u, cloth), Slips(cloth)) {
			if text == "" || said[text] {
				continue
			}
			said[text] = true
			if len(ip.Turned) > 0 {
				text = words.UpperFirst(words.Shown(words.InWords(cloth.FaceNames))) + ": " + text
			}
			texts = append(texts, text)
		}
	}
	return texts
}

// Serves says which cloth the guide of an item serves, in a sentence for all its passes; where one
// of them has no range, in one for each that has.
func Serves(u geometry.Unit, ip *plan.ItemPlan) []string {
	if ip.Item.Pieces.Several() {
		return nil // the pieces beside one would lie elsewhere
	}
	if across, down, ok := ServedByAll(ip); ok {
		return []string{servesWords(u, across, down)}
	}
	var texts []string
	for _, p := range ip.Passes {
		if a, d := p.Serves(); a != nil && d != nil {
			texts = append(texts, words.UpperFirst(words.Shown(p.Pass.Name))+": "+servesWords(u, *a, *d))
		}
	}
	return texts
}

// ServedByAll returns the sizes of cloth that one guide serves, width and height, with every pass
// of the item as it is: what the ranges of all passes share. False where a pass has no range.
func ServedByAll(ip *plan.ItemPlan) (across, down plan.Serves, ok bool) {
	for i, p := range ip.Passes {
		a, d := p.Serves()
		if a == nil || d == nil {
			return across, down, false
		}
		if i == 0 {
			across, down = *a, *d
			continue
		}
		across = plan.Serves{Least: max(across.Least, a.Least), Below: min(across.Below, a.Below)}
		down = plan.Serves{Least: max(down.Least, d.Least), Below: min(down.Below, d.Below)}
	}
	return across, down, len(ip.Passes) > 0
}

// servesWords says which cloth a guide serves; one range where both ways have the same.
func servesWords(u geometry.Unit, across, down plan.Serves) string {
	if across.Endless() && down.Endless() {
		return fmt.Sprintf("The same guide serves cloth %s wide and %s high, as there are to be so many prints and no more.", sizes(u, across), sizes(u, down))
	}
	if a, d := sizes(u, across), sizes(u, down); a != d {
		return fmt.Sprintf("The same guide serves cloth %s wide and %s high; larger, and one more print would fit.", a, d)
	}
	return fmt.Sprintf("The same guide serves cloth %s, both ways; larger, and one more print would fit.", sizes(u, across))
}

// sizes writes a range of cloth sizes, rounded so that every size it names is served.
func sizes(u geometry.Unit, s plan.Serves) string {
	if s.Endless() {
		return u.Format(u.Up(s.Least)) + " or more"
	}
	return fmt.Sprintf("%s to just under %s", u.Format(u.Up(s.Least)), u.Format(u.Down(s.Below)))
}

// mostDrift returns the pass of an item whose slips add up farthest; nil where none does.
func mostDrift(ip *plan.ItemPlan) *plan.PassPlan {
	var most *plan.PassPlan
	for _, p := range ip.Passes {
		if p.Drift != nil && p.Drift.FromCentre > 1 && (most == nil || p.Drift.FromCentre > most.Drift.FromCentre) {
			most = p
		}
	}
	return most
}

// Slips says how far slips add up on an item where each print is set against the last by eye; ""
// where they cannot.
func Slips(ip *plan.ItemPlan) string {
	p := mostDrift(ip)
	if p == nil {
		return ""
	}
	d := p.Drift
	from := fmt.Sprintf("the farthest print is the %s from the middle", ordinal(d.FromCentre))
	if p.Pass.Order != job.CentreOut || p.Pass.EveryOther || len(p.Choice().Runs) > 0 {
		from = fmt.Sprintf("the farthest print is the %s after the first", ordinal(d.FromCentre))
	} else if d.FromCorner > d.FromCentre {
		from += fmt.Sprintf(" (begun in a corner it would be the %s)", ordinal(d.FromCorner))
	}
	text := "Set by eye, each print against the last, slips add up: " + from
	if d.Harmless > 0 && p.Pass.Between == nil {
		text += fmt.Sprintf(", and slips of %s each could make up the whole %s", geometry.UnitMM.Format(geometry.UnitMM.Up(d.Harmless)), between(p.Choice().Gap))
	}
	return text + ". Set by the ticks, a print keeps its own slip and hands none on."
}

// between names what is between prints that are so far apart.
func between(g job.Spacing) string {
	switch {
	case g.Across < 0 && g.Down < 0:
		return "lap"
	case g.Across < 0 || g.Down < 0:
		return "gap or lap"
	}
	return "gap"
}

// ordinal writes a number as a place in a row: 1st, 2nd, 3rd, 11th.
func ordinal(n int) string {
	end := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			end = "st"
		case 2:
			end = "nd"
		case 3:
			end = "rd"
		}
	}
	return fmt.Sprintf("%d%s", n, end)
}

// evener returns the way of centring that is even on opposite sides and gives just one print less
// than a lopsided one that is taken; -1: there is none.
func evener(p *plan.PassPlan) int {
	even := func(c plan.Choice) bool {
		b := c.Border
		return (b.Left-b.Right).Abs() <= geometry.Tolerance && (b.Top-b.Bottom).Abs() <= geometry.Tolerance
	}
	taken := p.Choice()
	if even(taken) {
		return -1
	}
	for i, c := range p.Choices {
		if c.Count == taken.Count-1 && c.Count > 0 && even(c) {
			return i
		}
	}
	return -1
}

// evenerWords says what the even way of centring would take.
func evenerWords(p *plan.PassPlan, even int) string {
	c, taken := p.Choices[even], p.Choice()
	var write []string
	if c.Across != taken.Across {
		write = append(write, fmt.Sprintf("centre-across = %q", c.Across))
	}
	if c.Down != taken.Down {
		write = append(write, fmt.Sprintf("centre-down = %q", c.Down))
	}
	return "= has one print less, and a border that is even on opposite sides; to have it, write " + strings.Join(write, " and ") + "."
}

// set says what the whole job takes, where it is more than one piece on one face.
func (f *fitText) set(p *plan.Plan) {
	t := plan.NewTotals(p)
	text := setText(p, t)
	if text == "" {
		return
	}
	f.blank()
	f.say("", text)
	for _, c := range t.Colourings {
		f.say("  ", words.UpperFirst(words.Shown(c.Item.Name))+", "+ColouringTotal(c)+".")
	}
}

// setText says in a sentence what the whole job takes; "" where it is one piece on one face.
func setText(p *plan.Plan, t plan.Totals) string {
	if t.Prints == 0 || len(t.Colourings) == 0 && t.Pieces == 1 && t.Bench == 0 && !p.Job.Printing.HasPaintCover {
		return ""
	}
	text := fmt.Sprintf("The whole set: %s on %s", words.Counted(t.Prints, "print", "prints"), words.Counted(t.Pieces, "piece", "pieces"))
	if paint := paints(t.Rows); len(paint) > 0 {
		text += "; paint: " + strings.Join(paint, ", ")
	}
	if t.Bench > 0 {
		text += "; " + Time(t.Bench) + " at the bench"
	}
	return text + "."
}

// unnamed says which paints nothing is printed in, where anything is.
func (f *fitText) unnamed(j *job.Job) {
	named := j.Colours()
	var idle []string
	for _, p := range j.Paints {
		if !slices.Contains(named, p.Name) {
			idle = append(idle, words.Quote(p.Name))
		}
	}
	if len(idle) == 0 || !slices.ContainsFunc(j.Items, func(it *job.Item) bool { return len(it.Passes) > 0 }) {
		return
	}
	what := "a paint that no pass or colourway here names"
	if len(idle) > 1 {
		what = "paints that no pass or colourway here names"
	}
	f.blank()
	f.say("", words.UpperFirst(words.InWords(idle))+": "+what+".")
}
