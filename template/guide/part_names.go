package guide

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/plan"
	"underlay/template/words"
)

// Heights of the name of its block on a print, as a share of that of its number, and at the least.
const (
	partNameShare = 0.6
	leastPartName = 2 * geometry.Millimetre
)

// namePart writes on a print of a pass of several blocks which it is, where there is room: below or
// above its middle.
func (n numbering) namePart(f field, p plan.FacePass) {
	if p.Whole() == p.PassPlan {
		return
	}
	height := max(leastPartName, n.height*partNameShare)
	step := n.off + max(n.height, n.arrow)
	for _, y := range []geometry.Length{step + n.off + height/2, -step - n.off - height/2, n.off + height/2, -n.off - height/2} {
		label := paper.Label{
			Text: words.Shown(p.Pass.Name), At: f.centre.Add(geometry.Pt(0, y)), Anchor: paper.AnchorMiddle, Height: height,
			Ground: true, Role: paper.Role{Kind: RolePart},
		}
		box := label.GroundBox()
		if wrong := n.faults(box); n.holds(f, box, easyMargin) && wrong >= 0 && wrong < onLine {
			n.Write(label)
			n.crowd.Take(box)
			return
		}
	}
}
