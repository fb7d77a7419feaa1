package job

import (
	"maps"
	"slices"

	"underlay/paper"
)

// Paint is how a colour that passes name looks on paper and screen.
type Paint struct {
	Name  string
	Looks paper.Ink
	Line  int // of its heading in the job file; 0: none
}

// Looks returns how a colour looks: as the job's paint of that name does, else as CSS has it, where
// that is one of its names. Of any other the ink is a mid grey, of "", the colour of a pass that
// names none, nearly black; known is false then.
func (j *Job) Looks(colour string) (ink paper.Ink, known bool) {
	if i := slices.IndexFunc(j.Paints, func(p Paint) bool { return p.Name == colour }); i >= 0 {
		return j.Paints[i].Looks, true
	}
	if colour == "" {
		return paper.Grey(40), false
	}
	if ink, ok := paper.NamedInk(colour); ok {
		return ink, true
	}
	return paper.Grey(128), false
}

// Colours lists the colours that are printed or swapped, each once: those that passes name, as they
// come in the job, and those that colourways put in their place, with those they take.
func (j *Job) Colours() []string {
	var all []string
	add := func(names ...string) {
		for _, n := range names {
			if !slices.Contains(all, n) {
				all = append(all, n)
			}
		}
	}
	for _, it := range j.Items {
		for _, p := range it.Passes {
			for _, part := range p.Parts() {
				add(part.Colours...)
			}
		}
		for _, c := range it.Colourways {
			for _, from := range slices.Sorted(maps.Keys(c.Swap)) {
				add(from, c.Swap[from])
			}
		}
	}
	return all
}
