package say

import (
	"underlay/geometry"
	"underlay/template/plan"
)

// Answer says of a pass what the maker asked for, in a line: how many prints, how they lie, what stays
// plain.
func Answer(u geometry.Unit, ip *plan.ItemPlan, p *plan.PassPlan) string {
	f := &fitText{u: u}
	return f.answer(ip, p) + "."
}

// Change is a kind of change that gives one more print.
type Change string

// The kinds.
const (
	MoreCloth    Change = "cloth"
	LessBorder   Change = "border"
	LessGap      Change = "gap"
	SmallerBlock Change = "block"
)

// Way is one change that gives one more print, by itself.
type Way struct {
	Change Change
	By     geometry.Length // the least that the unit can write that does it
	Text   string          // "20 mm more cloth"
}

// More is what one more print across, or down, takes.
type More struct {
	Down bool
	What string // "5 across needs"
	Ways []Way  // none where nothing would do
}

// MoreOf says what one more print takes, as Fit does.
func MoreOf(u geometry.Unit, p *plan.PassPlan) []More {
	f := &fitText{u: u}
	var all []More
	for _, m := range p.NearMisses() {
		if more := f.more(m, p.Pass); len(more.Ways) > 0 {
			all = append(all, more)
		}
	}
	return all
}

// Set says what the whole job takes, in a sentence; "" where it is one piece on one face.
func Set(p *plan.Plan) string { return setText(p, plan.NewTotals(p)) }
