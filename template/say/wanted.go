package say

import (
	"fmt"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// Wanted says, for every pass of every item, what exactly n prints across and down would take: the
// cloth, or the gaps on the cloth there is, or the largest block.
func Wanted(p *plan.Plan, n job.Counts) string {
	f := &fitText{u: p.Job.Units}
	f.say("", fmt.Sprintf("%s: exactly %d across and %d down", words.Shown(p.Job.Title), n.Across, n.Down))
	for _, ip := range p.Items {
		f.blank()
		f.heading(ip)
		for _, cloth := range ip.Cloths() {
			if cloth.Area.Turned {
				f.blank()
				f.turned(cloth)
			}
			for _, pp := range cloth.Passes {
				f.blank()
				f.wanted(cloth, pp, n)
			}
		}
	}
	return strings.Join(f.lines, "\n") + "\n"
}

// wanted says what one pass takes; each thing alone, the job otherwise as it is.
func (f *fitText) wanted(ip *plan.ItemPlan, p *plan.PassPlan, n job.Counts) {
	name := words.Shown(p.Pass.Name)
	w, ok := p.Wanted(n)
	if !ok {
		text := "no rows and columns to count"
		if p.Pass.Seated() {
			text = "its prints are set out by another pass"
		}
		f.say("  ", name+": "+text+".")
		return
	}
	f.say("  ", name+":")
	f.say("    ", "cloth: "+f.wantedCloth(ip, w)+".")
	f.say("    ", "gap: "+f.wantedGaps(p, w)+".")
	f.say("    ", "block: "+f.wantedBlock(p, w)+".")
}

func (f *fitText) wantedCloth(ip *plan.ItemPlan, w plan.Wanted) string {
	switch {
	case w.Cloth == nil && ip.Item.Shape == job.Cone:
		return "of a cone it is not worked out"
	case w.Cloth == nil:
		return "there is none with just so many"
	case ip.Item.Shape == job.Drum:
		return fmt.Sprintf("%s round and %s high, at the least", f.u.Format(f.u.Up(w.Cloth.W)), f.u.Format(f.u.Up(w.Cloth.H)))
	case ip.Item.Shape == job.Round:
		return f.u.Format(f.u.Up(w.Cloth.W)) + " in diameter, at the least"
	}
	return f.u.FormatSize(geometry.Size{W: f.u.Up(w.Cloth.W), H: f.u.Up(w.Cloth.H)}) + ", at the least"
}

func (f *fitText) wantedGaps(p *plan.PassPlan, w plan.Wanted) string {
	span := func(g *plan.GapSpan) string {
		switch {
		case g == nil:
			return "none"
		case g.Endless():
			return f.u.Format(f.u.Up(g.Least)) + " or more"
		case f.u.Down(g.Most) <= f.u.Up(g.Least):
			return f.u.Format(f.u.Down(g.Most))
		}
		return f.u.Number(f.u.Up(g.Least)) + " to " + f.u.Format(f.u.Down(g.Most))
	}
	across, down := span(w.GapAcross), span(w.GapDown)
	switch {
	case w.GapAcross == nil && w.GapDown == nil:
		return "on this cloth none does it"
	case across == down:
		return across
	case p.Pass.GapEven || p.Pass.Repeat.OneGap():
		return across
	}
	return fmt.Sprintf("across %s, down %s", across, down)
}

func (f *fitText) wantedBlock(p *plan.PassPlan, w plan.Wanted) string {
	switch {
	case w.Block == nil:
		return "none does it on this cloth"
	case p.Pass.Block.Shape.Regular():
		return f.u.Format(f.u.Down(w.Block.W)) + " wide, at the most"
	}
	return f.u.FormatSize(geometry.Size{W: f.u.Down(w.Block.W), H: f.u.Down(w.Block.H)}) + ", at the most"
}
