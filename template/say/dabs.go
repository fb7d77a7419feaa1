package say

import (
	"fmt"
	"slices"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// Dabs says which colour goes where on the block of a pass, or on each of several: "dab ochre on the
// middle, 30 mm across, then moss on the rest".
func Dabs(u geometry.Unit, p *job.Pass) string {
	var texts []string
	for i, d := range p.Dabs {
		texts = append(texts, words.Shown(d.Colour)+" "+DabPart(u, p.Dabs, i))
	}
	text := "dab " + strings.Join(texts, ", then ")
	if slices.ContainsFunc(p.Parts(), func(part job.Part) bool { return job.Undabbed(p.Dabs, part.Block.Face) }) {
		text += "; the rest of the face stays without paint"
	}
	return text
}

// DabPart says where one of a block's dabs goes: "on the middle, 30 mm across". One on a part that
// an earlier one has the inner or the outer of goes on beyond that.
func DabPart(u geometry.Unit, dabs []job.Dab, i int) string {
	d := dabs[i]
	size := u.Format(d.Size)
	again := slices.ContainsFunc(dabs[:i], func(e job.Dab) bool { return e.Part == d.Part })
	switch {
	case d.Part == job.TheMiddle && again:
		return fmt.Sprintf("round that middle, out to %s across", size)
	case d.Part == job.TheMiddle:
		return fmt.Sprintf("on the middle, %s across", size)
	case d.Part == job.TheCorners && again:
		return fmt.Sprintf("next to those corners, out to %s from each point", size)
	case d.Part == job.TheCorners:
		return fmt.Sprintf("on the corners, %s from each point", size)
	case d.Part == job.TheEdge && again:
		return fmt.Sprintf("next to that edge, in to %s", size)
	case d.Part == job.TheEdge:
		return fmt.Sprintf("along the edge, %s wide", size)
	}
	return "on the rest"
}
