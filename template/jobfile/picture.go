package jobfile

import (
	"errors"
	"slices"

	"underlay/template/job"
	"underlay/template/jobfile/toml"
	"underlay/template/picture"
)

// Pictures reads the picture of a name beside the job file. The error is a plain sentence: what is
// wrong, and what to do. A picture without a mask is kept as it is, and nothing is worked out from
// it.
type Pictures = func(name string) (*picture.Picture, error)

// mostCarried is how many bytes all pictures of a job may have: they go into its PDF.
const mostCarried = 128 << 20

// found is what came of reading a picture.
type found struct {
	picture *picture.Picture
	err     error
}

// checkPicture reads the picture of a block with a good face, and works out from it how much of
// that carries paint, where the job does not say.
func checkPicture(s section, b *job.Block) {
	e := s.key("picture")
	name, ok := e.text("fern.png")
	if !ok {
		return
	}
	if err := picture.CheckName(name); err != nil {
		e.say("%s", err)
		return
	}
	if s.r.pictures == nil {
		e.say("there are no pictures beside this job; take this line out")
		return
	}
	f := s.r.seen[name]
	if f == nil {
		f = &found{}
		if f.picture, f.err = s.r.pictures(name); f.err == nil {
			s.r.carried += len(f.picture.File)
		}
		if s.r.seen[name] = f; s.r.carried > mostCarried {
			f.err = errors.New("the pictures of this job come to more than 128 MB with this one; save them smaller, such as 4000 pixels on the longer side")
		}
	}
	if f.err != nil {
		e.say("%s", f.err)
		return
	}
	b.Picture = f.picture
	if !s.has("inked") && b.Picture.Mask != nil && !b.Face.None() {
		b.Inked = b.InkedInPicture()
	}
}

// PictureNames returns the plain names of the pictures that a job names, in order, each once; none
// of one that cannot be read.
func PictureNames(data []byte) []string {
	text, err := toml.DecodeText(data)
	if err != nil {
		return nil
	}
	root, problems := toml.Parse(text)
	if len(problems) > 0 || root.Keys["block"] == nil {
		return nil
	}
	var names []string
	for _, b := range root.Keys["block"].Items {
		p := b.Keys["picture"]
		if p == nil {
			continue
		}
		if name, ok := p.Value.(string); ok && picture.CheckName(name) == nil && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}
