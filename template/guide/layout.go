package guide

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/plan"
)

// Guides in one drawing: what lies between two, and the name above each.
const (
	guidesApart  = 20 * geometry.Millimetre
	guideHeading = 5 * geometry.Millimetre // ISO 3098
	headingClear = 5 * geometry.Millimetre // between a name's letters and the guide below
)

// Layout draws the guides of the plan at true size as one drawing: of every item, for each
// face that Shown returns. One guide alone is in the frame of its item. Several lie one below the
// other, 20 mm apart, the first in the frame of its item, each with its name above it.
//
// The error is of type Problems: an item without a pass.
func Layout(p *plan.Plan) (*paper.Drawing, error) {
	var guides []*paper.Drawing
	var names []string
	for _, ip := range p.Items {
		if len(ip.Item.Passes) == 0 {
			return nil, p.Job.NothingToDraw(ip.Item)
		}
		for _, face := range Shown(p.Job, ip) {
			guides, names = append(guides, Draw(p.Job, face)), append(names, face.Label())
		}
	}
	if len(guides) == 1 {
		return guides[0], nil
	}
	all := &paper.Drawing{}
	for i, g := range guides {
		var step geometry.Point // from the guide's frame to that of all
		if i == 0 {
			all.Bounds = g.Bounds
		} else {
			step = geometry.Pt(all.Bounds.Min.X-g.Bounds.Min.X, all.Bounds.Max.Y+guidesApart-g.Bounds.Min.Y)
		}
		all.Add(*g, step)
		bounds := g.Bounds.Move(step)
		name := paper.Label{
			Text: paper.Shorten(names[i], guideHeading, false, bounds.W()),
			At:   bounds.Min.Sub(geometry.Pt(0, headingClear)), Anchor: paper.AnchorBottomLeft, Height: guideHeading,
		}
		all.Write(name)
		all.Bounds = all.Bounds.Union(bounds).Union(name.Extent())
	}
	return all, nil
}
