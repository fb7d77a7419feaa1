package side

import (
	"fmt"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile/edit"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

// overlap says of passes that lie on each other what would avoid it, each way with its edits.
func (v view) overlap(o plan.Overlap) {
	path, on := v.passPath(o.Pass.Pass), v.passPath(o.On.Pass)
	name, other := words.Shown(o.Pass.Pass.Name), words.Shown(o.On.Pass.Name)
	r := o.Remedy()
	more := More{Path: path, Text: say.Overlap(v.plan.Job.Units, o), Ways: []Way{
		{name + " is meant to lie there", []Edit{{path + ".over", "true"}}},
	}}
	var seat []Edit
	also := ""
	if r.Between {
		seat = v.seated(path, o.On.Pass.Name)
		also = "seat " + name + " in the openings of " + other
	}
	and := func(text string) string {
		if also == "" {
			return text
		}
		return also + ", and " + text
	}
	if r.Between && r.Gap == nil && r.Block == nil {
		more.Ways = append(more.Ways, Way{also, seat})
	}
	if r.Gap != nil {
		edits := append(slices.Clone(seat), Edit{on + ".lap", ""}, Edit{on + ".gap-across", ""}, Edit{on + ".gap-down", ""}, Edit{on + ".gap", v.write(*r.Gap, on+".gap")})
		more.Ways = append(more.Ways, Way{and("a gap of " + v.plan.Job.Units.Format(*r.Gap) + " for " + other), edits})
	}
	if edits := v.faceOf(o.Pass.Pass.Block, r.Block); edits != nil {
		more.Ways = append(more.Ways, Way{and(fmt.Sprintf("a block %s of %s", words.Shown(o.Pass.Pass.Block.Name), v.plan.Job.Units.FormatSize(*r.Block))), append(slices.Clone(seat), edits...)})
	}
	v.Overlaps = append(v.Overlaps, more)
}

// seated are the edits that have the prints of another pass say where those of one go.
func (v view) seated(path, on string) []Edit {
	p, err := edit.ParsePath(path)
	if err != nil {
		return nil
	}
	var edits []Edit
	tree := edit.Tree(v.keys, p)
	for _, name := range tree.Order {
		if at := p.Sub(name); !tree.Keys[name].SuitsPass("", "between") && edit.Find(v.root, at) != nil {
			edits = append(edits, Edit{at.String(), ""})
		}
	}
	return append(edits, Edit{path + ".between", on})
}

// faceOf are the edits that give a block a face of a size; none where it has an outline, or there is no
// size.
func (v view) faceOf(b *job.Block, size *geometry.Size) []Edit {
	i := slices.Index(v.plan.Job.Blocks, b)
	if size == nil || i < 0 || b.Shape == job.OutlineFace {
		return nil
	}
	path := fmt.Sprintf("block.%d.print", i)
	if b.Shape.Regular() {
		return []Edit{{path, v.write(size.W, path)}}
	}
	return []Edit{{path, v.writeSize(*size, path)}}
}
