package template

import (
	"fmt"

	"underlay/geometry"
)

// printWords is a pass in a few words: block and gap.
func (p *PassPlan) printWords(u geometry.Unit) string {
	words := p.Pass.Block.words(u)
	if apart := p.apartWords(u); apart != "" {
		words += ", " + apart
	}
	return words
}

// words is a block's name and size.
func (b *Block) words(u geometry.Unit) string {
	if b.Shape == "round" {
		return b.Name + " " + u.Format(b.Size.W) + " across"
	}
	return b.Name + " " + u.FormatSize(b.Size)
}

// setOut says how a pass is set out: by its repeat, or by the pass it is seated by.
func (p *Pass) setOut() string {
	switch {
	case p.Between != nil:
		return "in the openings of " + p.Between.Name
	case p.On != nil:
		return "on the prints of " + p.On.Name
	}
	return p.Repeat
}

// apartWords says how far apart the prints stand; of a pass that is seated by another, by
// which.
func (p *PassPlan) apartWords(u geometry.Unit) string {
	if p.Pass.seated() {
		return p.Pass.setOut()
	}
	return gapWords(u, p.Choice().Gap)
}

// summary is a pass in one line: block, gap, border.
func (p *PassPlan) summary(u geometry.Unit) string {
	return p.printWords(u) + ", " + borderWords(u, p.Choice().Border)
}

// gapWords says how far apart the prints stand.
func gapWords(u geometry.Unit, g Spacing) string {
	one := func(l geometry.Length) string {
		if l < 0 {
			return "lap " + u.Format(-l)
		}
		return "gap " + u.Format(l)
	}
	if absLength(g.Across-g.Down) <= geometry.Tolerance {
		return one(g.Across)
	}
	return one(g.Across) + " across, " + one(g.Down) + " down"
}

// borderWords says how much plain cloth is left.
func borderWords(u geometry.Unit, b geometry.Edges) string {
	switch near := func(a, b geometry.Length) bool { return absLength(a-b) <= geometry.Tolerance }; {
	case b.Even():
		return "border " + u.Format(b.Top)
	case near(b.Top, b.Bottom) && near(b.Left, b.Right):
		return fmt.Sprintf("border %s left and right, %s top and bottom", u.Format(b.Left), u.Format(b.Top))
	}
	return fmt.Sprintf("border top %s, right %s, bottom %s, left %s", u.Number(b.Top), u.Number(b.Right), u.Number(b.Bottom), u.Format(b.Left))
}
