package look

import (
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// Swatch is one of the paints of a look, with its name; or where prints are hatched footprints, what
// makes them.
type Swatch struct {
	Name  string
	Ink   paper.Ink
	Known bool // how it looks; otherwise Ink is a grey that stands for it
	hatch int  // the way to hatch, from 1; 0: it is a paint
}

// Hatched tells whether the swatch is of hatched footprints.
func (s Swatch) Hatched() bool { return s.hatch > 0 }

// Swatches lists the paints of a face in one way of colouring, each once, in the order they are
// printed. A pass that names no colour goes by its own name.
func Swatches(j *job.Job, face plan.FacePlan, c job.Colouring) []Swatch {
	var all []Swatch
	add := func(s Swatch) {
		if !slices.ContainsFunc(all, func(t Swatch) bool { return t.Name == s.Name && t.Hatched() == s.Hatched() }) {
			all = append(all, s)
		}
	}
	for i, p := range face.Passes {
		for k, b := range p.Blocks() {
			if Hatched(j, p.Pass, b, c) {
				add(Swatch{Name: p.Pass.Name, hatch: 1 + (i+k)%len(hatchAngles)})
				continue
			}
			for _, colour := range colours(p.Pass, c) {
				ink, known := Ink(j, colour)
				if colour == "" {
					colour, known = p.Pass.Name, true
				}
				add(Swatch{Name: colour, Ink: ink, Known: known})
			}
		}
	}
	return all
}

// Draw draws the swatch into a box.
func (s Swatch) Draw(d *paper.Drawing, box geometry.Rect) {
	role := paper.Role{Kind: "swatch"}
	edge := geometry.RectOutline(box)
	layers := []layer{{edge.Path(), s.Ink}}
	if s.Hatched() {
		layers = hatched(edge, s.hatch-1, 1)
	}
	for _, l := range layers {
		d.Fills = append(d.Fills, paper.Fill{Shape: paper.Once(l.path), Ink: l.ink, Role: role})
	}
	d.Stroke(edge.Path(), paper.Pen{Width: thinLine})
}

// Banded tells whether some print of a face is drawn in several colours one above the other, as the
// job does not say where on the block each goes.
func Banded(j *job.Job, face plan.FacePlan, c job.Colouring) bool {
	return anyPrint(face, func(p *job.Pass, b *job.Block) bool {
		return len(p.Colours) > 1 && len(p.Dabs) == 0 && !Hatched(j, p, b, c)
	})
}

// StoodFor tells whether some print of a face is drawn as the stand-in of its block.
func StoodFor(j *job.Job, face plan.FacePlan, c job.Colouring) bool {
	return anyPrint(face, func(p *job.Pass, b *job.Block) bool { return b.Picture == nil && !Hatched(j, p, b, c) })
}

func anyPrint(face plan.FacePlan, is func(*job.Pass, *job.Block) bool) bool {
	for _, p := range face.Passes {
		if slices.ContainsFunc(p.Blocks(), func(b *job.Block) bool { return is(p.Pass, b) }) {
			return true
		}
	}
	return false
}
