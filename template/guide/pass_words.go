package guide

import (
	"fmt"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/plan"
)

// OnRuler returns edges as they are read off a ruler.
func OnRuler(u geometry.Unit, e geometry.Edges) geometry.Edges {
	return geometry.Edges{Top: u.OnRuler(e.Top), Right: u.OnRuler(e.Right), Bottom: u.OnRuler(e.Bottom), Left: u.OnRuler(e.Left)}
}

// gapOnRuler returns gaps as they are read off a ruler, but a hair as it is: it is not none.
func gapOnRuler(u geometry.Unit, g job.Spacing) job.Spacing {
	for _, l := range []*geometry.Length{&g.Across, &g.Down} {
		if r := u.OnRuler(*l); r != 0 {
			*l = r
		}
	}
	return g
}

// printWords is a pass in a few words, for papers: block and gap.
func printWords(p *plan.PassPlan, u geometry.Unit) string {
	var all []string
	for _, b := range p.Blocks() {
		all = append(all, Words(b, u))
	}
	words := strings.Join(all, " and ")
	apart := ApartWords(p, u)
	if !p.Pass.Seated() && p.Pass.Repeat.Gapped() {
		apart = GapWords(u, gapOnRuler(u, p.Choice().Gap))
	}
	if apart != "" {
		words += ", " + apart
	}
	return words
}

// Words is a block's name and size.
func Words(b *job.Block, u geometry.Unit) string {
	if b.Shape == job.RoundFace {
		return b.Name + " " + u.Format(b.Size.W) + " across"
	}
	return b.Name + " " + u.FormatSize(b.Size)
}

// SetOut says how a pass is set out: by its repeat, or by the pass it is seated by.
func SetOut(p *job.Pass) string {
	switch {
	case p.Between != nil:
		return "in the openings of " + p.Between.Name
	case p.On != nil:
		return "on the prints of " + p.On.Name
	}
	switch p.Repeat {
	case job.One:
		return "one in the middle"
	case job.Corners:
		return "one in each corner"
	case job.Placed:
		return "each at its own place"
	}
	if p.Corner != nil {
		return string(p.Repeat) + " with " + p.Corner.Name + " in the corners"
	}
	return string(p.Repeat)
}

// ApartWords says how far apart the prints stand; of a pass that is seated by another, by
// which; of single prints, where they go.
func ApartWords(p *plan.PassPlan, u geometry.Unit) string {
	if p.Pass.Seated() || !p.Pass.Repeat.Gapped() {
		return SetOut(p.Pass)
	}
	return GapWords(u, p.Choice().Gap)
}

// Summary is a pass in one line: block, gap, border.
func Summary(p *plan.PassPlan, u geometry.Unit) string {
	return printWords(p, u) + ", " + BorderWords(u, OnRuler(u, p.Choice().Border))
}

// GapWords says how far apart the prints stand.
func GapWords(u geometry.Unit, g job.Spacing) string {
	one := func(l geometry.Length) string {
		if l < 0 {
			return "lap " + fine(u, -l)
		}
		return "gap " + fine(u, l)
	}
	if (g.Across - g.Down).Abs() <= geometry.Tolerance {
		return one(g.Across)
	}
	return one(g.Across) + " across, " + one(g.Down) + " down"
}

// BorderWords says how much plain cloth is left.
func BorderWords(u geometry.Unit, b geometry.Edges) string {
	switch near := func(a, b geometry.Length) bool { return (a - b).Abs() <= geometry.Tolerance }; {
	case b.Even():
		return "border " + u.Format(b.Top)
	case near(b.Top, b.Bottom) && near(b.Left, b.Right):
		return fmt.Sprintf("border %s left and right, %s top and bottom", u.Format(b.Left), u.Format(b.Top))
	}
	return fmt.Sprintf("border top %s, right %s, bottom %s, left %s", u.Number(b.Top), u.Number(b.Right), u.Number(b.Bottom), u.Format(b.Left))
}

// PlainWords says how much cloth stays plain round the prints, as the printer stands: the far
// edge is the top one.
func PlainWords(u geometry.Unit, b geometry.Edges) string {
	switch near := func(a, b geometry.Length) bool { return (a - b).Abs() <= geometry.Tolerance }; {
	case b.Even():
		return u.Format(b.Top) + " plain all round"
	case near(b.Top, b.Bottom) && near(b.Left, b.Right):
		return fmt.Sprintf("%s plain left and right, %s far and near", u.Format(b.Left), u.Format(b.Top))
	}
	return fmt.Sprintf("plain %s left, %s right, %s far, %s near", u.Number(b.Left), u.Number(b.Right), u.Number(b.Top), u.Format(b.Bottom))
}

// fine writes a gap or a lap: in inches to the nearest thirty-second, as laps are often that small.
func fine(u geometry.Unit, l geometry.Length) string {
	if u == geometry.UnitInch {
		return u.Ruled(l) + " " + u.String()
	}
	return u.Format(l)
}
