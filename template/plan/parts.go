package plan

import (
	"slices"

	"underlay/template/job"
	"underlay/template/words"
)

// byPart brings an order of printing to one part after the other, each in that order: a block, or a
// set of colours, is put down everywhere before the next is picked up.
func byPart(order []int, sites []Site) {
	slices.SortStableFunc(order, func(a, b int) int { return sites[a].Part - sites[b].Part })
}

// split works out what each part of a pass of several is by itself.
func (p *PassPlan) split() {
	if p.Pass.Mix.None() {
		return
	}
	for i := range p.Pass.Mix.Parts {
		from := slices.IndexFunc(p.Prints, func(q Print) bool { return q.Part == i })
		if from < 0 {
			continue // fewer places than parts
		}
		to := from
		for to < len(p.Prints) && p.Prints[to].Part == i {
			to++
		}
		p.parts = append(p.parts, p.partOf(i, p.Prints[from:to:to]))
	}
}

// partOf is the plan of the prints of one part, which is drawn and told as a pass of its own. What is
// true of all of them together stays with the whole.
func (p *PassPlan) partOf(i int, prints []Print) *PassPlan {
	part := p.Pass.Mix.Parts[i]
	pass := *p.Pass
	pass.Block, pass.Colours, pass.Mix = part.Block, part.Colours, job.Mix{}
	pass.Name = p.PartName(i)
	q := &PassPlan{Pass: &pass, Prints: prints, ColumnsInLine: p.ColumnsInLine, RowsInLine: p.RowsInLine, Drift: p.Drift, layout: p.layout}
	q.layout.pass, q.layout.cell = &pass, pass.Place()
	q.whole = p
	c := p.Choice()
	c.Count, c.Columns, c.Rows = len(prints), 0, 0
	rows, columns := tally{}, tally{}
	sites := make([]Site, len(prints))
	for i, print := range prints {
		sites[i] = print.Site
		rows.add(print.Row)
		columns.add(print.Column)
	}
	if c.RowCounts != nil {
		c.RowCounts = rows.counts()
	}
	if c.ColumnCounts != nil {
		c.ColumnCounts = columns.counts()
	}
	c.Border = p.layout.area.surface.borders(p.layout.area, part.Block, sites)
	q.Choices = []Choice{c}
	if p.Tape != nil {
		tape := p.layout.tapeLines(sites, sites[0])
		q.Tape = &tape
	}
	return q
}

// PartName is what a part of a pass of several is called: by what tells it from the others.
func (p *PassPlan) PartName(i int) string {
	part := p.Pass.Mix.Parts[i]
	name := part.Block.Name
	for _, other := range p.Pass.Mix.Parts {
		if other.Block == part.Block && !slices.Equal(other.Colours, part.Colours) {
			return name + ", " + words.InWords(part.Colours)
		}
	}
	return name
}

// Printed lists what is picked up and put down, one after the other: the pass itself, or where it has
// several blocks or colours in turn, each of these as a pass of its own.
func (p *PassPlan) Printed() []*PassPlan {
	if len(p.parts) == 0 {
		return []*PassPlan{p}
	}
	return p.parts
}

// Whole returns the pass that this is a part of, or the pass itself.
func (p *PassPlan) Whole() *PassPlan {
	if p.whole != nil {
		return p.whole
	}
	return p
}

// Printed lists what is printed on the item, one after the other.
func (ip *ItemPlan) Printed() []*PassPlan {
	var all []*PassPlan
	for _, p := range ip.Passes {
		all = append(all, p.Printed()...)
	}
	return all
}
