package side

import (
	"errors"

	"underlay/template/picture"
)

// given is a picture as the page has it, read once.
type given struct {
	picture *picture.Picture
	err     error
}

// Picture takes a picture of a block's print, a PNG or JPEG, that jobs may name. The error says in a
// plain sentence what is wrong with its name or with the picture.
func (s *Side) Picture(name string, file []byte) error {
	if err := picture.CheckName(name); err != nil {
		return err
	}
	p, err := picture.Read(name, file)
	if s.pictures == nil {
		s.pictures = map[string]given{}
	}
	s.pictures[name] = given{p, err}
	s.last, s.drawn = worked{}, nil
	return err
}

// Forget takes a picture back; none of the name is none.
func (s *Side) Forget(name string) {
	delete(s.pictures, name)
	s.last, s.drawn = worked{}, nil
}

// find returns the picture of a name that was given.
func (s *Side) find(name string) (*picture.Picture, error) {
	g, ok := s.pictures[name]
	if !ok {
		return nil, errors.New("there is no picture of this name here; choose its file, or take this line out")
	}
	return g.picture, g.err
}
