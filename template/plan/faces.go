package plan

import (
	"slices"

	"underlay/template/words"
)

// FacePlan is what is printed on one face of an item, or on several that are alike: one guide
// serves them.
type FacePlan struct {
	Item   *ItemPlan // as the face shows it
	Names  []string  // none where the job names no faces
	Passes []FacePass
	// Alone tells that Passes has one of the passes of the face and the others are left out.
	Alone bool
}

// FacePass is a pass as it falls on a face: numbers run on through the passes of a face.
type FacePass struct {
	*PassPlan
	First int // number of its first print on this face
}

// Name returns the names of the faces in words, "front and back", and of a pass shown alone its
// name, "front, ferns"; "" where there are none.
func (f FacePlan) Name() string {
	name := words.InWords(f.Names)
	switch {
	case !f.Alone:
		return name
	case name == "":
		return f.Pass()
	}
	return name + ", " + f.Pass()
}

// Pass returns the name of a pass that is shown alone; "" where all passes are.
func (f FacePlan) Pass() string {
	if !f.Alone {
		return ""
	}
	return f.Passes[0].Pass.Name
}

// Apart returns a plan for each pass of the face, with the others left out; prints keep their
// numbers. A face of one pass is returned as it is. Of a cloth that is moved along it is what Laid
// returns that is to be taken apart.
func (f FacePlan) Apart() []FacePlan {
	if len(f.Passes) < 2 {
		return []FacePlan{f}
	}
	var alone []FacePlan
	for _, p := range f.Passes {
		alone = append(alone, FacePlan{Item: f.Item, Names: f.Names, Passes: []FacePass{p}, Alone: true})
	}
	return alone
}

// Label returns the item's name with the faces', where it has some.
func (f FacePlan) Label() string {
	if f.Name() == "" {
		return f.Item.Item.Name
	}
	return f.Item.Item.Name + ", " + f.Name()
}

// Titled returns a name for papers of this face: "guide, front".
func (f FacePlan) Titled(papers string) string {
	if f.Name() == "" {
		return papers
	}
	return papers + ", " + f.Name()
}

// Wholes lists the passes of the face as the job has them, each once.
func (f FacePlan) Wholes() []*PassPlan {
	var all []*PassPlan
	for _, p := range f.Passes {
		if whole := p.Whole(); !slices.Contains(all, whole) {
			all = append(all, whole)
		}
	}
	return all
}

// Count returns the number of prints on one such face.
func (f FacePlan) Count() int {
	n := 0
	for _, p := range f.Passes {
		n += len(p.Prints)
	}
	return n
}

// Faces returns a plan for each face that differs. Faces without a pass are left out.
func (ip *ItemPlan) Faces() []FacePlan {
	var faces []FacePlan
	for _, name := range faceNames(ip.Item) {
		f := FacePlan{Item: ip.clothOf(name)}
		first := 1
		for _, p := range f.Item.Printed() {
			if p.Pass.Face == "" || p.Pass.Face == name {
				f.Passes = append(f.Passes, FacePass{p, first})
				first += len(p.Prints)
			}
		}
		if len(f.Passes) == 0 {
			continue
		}
		same := slices.IndexFunc(faces, func(g FacePlan) bool { return slices.Equal(f.Passes, g.Passes) })
		if same < 0 {
			faces = append(faces, f)
			same = len(faces) - 1
		}
		if name != "" {
			faces[same].Names = append(faces[same].Names, name)
		}
	}
	return faces
}
