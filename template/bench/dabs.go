package bench

import (
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

// dabbed is a block's face with its dabs, and the passes that print it so.
type dabbed struct {
	block  *job.Block
	dabs   []job.Dab
	passes []string
}

// dabbedFaces lists the faces that are dabbed in parts, each once.
func dabbedFaces(face plan.FacePlan) []dabbed {
	var all []dabbed
	for _, p := range face.Wholes() {
		if len(p.Pass.Dabs) == 0 {
			continue
		}
		for _, b := range p.Blocks() {
			i := slices.IndexFunc(all, func(d dabbed) bool { return d.block == b && slices.Equal(d.dabs, p.Pass.Dabs) })
			if i < 0 {
				i = len(all)
				all = append(all, dabbed{block: b, dabs: p.Pass.Dabs})
			}
			all[i].passes = append(all[i].passes, p.Pass.Name)
		}
	}
	return all
}

// dabSteps says how the block of each pass is dabbed; passes are named where there are several.
func (b bench) dabSteps() []string {
	var steps []string
	wholes := b.face.Wholes()
	for _, p := range wholes {
		if len(p.Pass.Dabs) == 0 {
			continue
		}
		text := say.Dabs(b.job.Units, p.Pass)
		if len(wholes) > 1 {
			text = p.Pass.Name + ": " + text
		}
		steps = append(steps, words.UpperFirst(text)+".")
	}
	if n := len(steps); n > 0 {
		steps[n-1] += " “" + dabHeading + "” has a picture."
	}
	return steps
}

// dabHeading is over the pictures of dabbed faces.
const dabHeading = "Where the colours go"

// dabs pictures each face that is dabbed in parts, with its parts named: two beside each other where
// the names have room.
func (b bench) dabs() {
	all := dabbedFaces(b.face)
	if len(all) == 0 {
		return
	}
	b.Heading(dabHeading)
	columns := 1
	half := (b.Width() - cardGap) / 2
	if len(all) > 1 && !slices.ContainsFunc(all, func(d dabbed) bool { return d.width(b.job.Units) > half }) {
		columns = 2
	}
	for row := range slices.Chunk(all, columns) {
		var high geometry.Length
		for _, d := range row {
			high = max(high, d.height(b.job.Units))
		}
		b.Figure(high, func(box geometry.Rect) []paper.View {
			var views []paper.View
			for i, d := range row {
				in := box
				if i > 0 {
					in.Min.X += half + cardGap
				}
				views = append(views, d.picture(b.job, in)...)
			}
			return views
		})
	}
}

// dabName is what a part of a face is called.
type dabName struct{ colour, part string }

// names are those of the parts of the face, in the order they are dabbed; the last may be what stays
// without paint.
func (d dabbed) names(u geometry.Unit) []dabName {
	var names []dabName
	for i, dab := range d.dabs {
		names = append(names, dabName{words.Shown(dab.Colour), say.DabPart(u, d.dabs, i)})
	}
	if job.Undabbed(d.dabs, d.block.Face) {
		names = append(names, dabName{"no paint", "on the rest"})
	}
	return names
}

// dabbedAnywhere tells whether any pass of a job is dabbed in parts.
func dabbedAnywhere(p *plan.Plan) bool {
	return slices.ContainsFunc(p.Job.Items, func(it *job.Item) bool {
		return slices.ContainsFunc(it.Passes, func(pass *job.Pass) bool { return len(pass.Dabs) > 0 })
	})
}
