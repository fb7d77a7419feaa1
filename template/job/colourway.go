package job

import "slices"

// Colourway is the same item in other colours: so many of its pieces, or of one of its faces.
type Colourway struct {
	Name     string
	Quantity int
	Swap     map[string]string // what is printed, by the colour that a pass names
	Face     string            // "": every face
}

// Colouring is so many pieces of an item that are printed alike.
type Colouring struct {
	Colourway *Colourway // nil: in the colours that the passes name
	Face      string     // the one face that is printed so; "": every face
	Pieces    int
}

// Colourings lists how the pieces of an item are coloured: first those in the colours that its
// passes name, then its colourways. They come to the item's quantity on each face.
func (it *Item) Colourings() []Colouring {
	faces := it.Faces
	if len(faces) == 0 {
		faces = []string{""}
	}
	left := make([]int, len(faces))
	for i, f := range faces {
		left[i] = it.Quantity
		for _, c := range it.Colourways {
			if c.Face == "" || c.Face == f {
				left[i] -= c.Quantity
			}
		}
	}
	var all []Colouring
	add := func(face string, pieces int) {
		if pieces > 0 {
			all = append(all, Colouring{Face: face, Pieces: pieces * it.Pieces.Count()})
		}
	}
	if slices.Min(left) == slices.Max(left) {
		add("", left[0])
	} else {
		for i, f := range faces {
			add(f, left[i])
		}
	}
	for i, c := range it.Colourways {
		all = append(all, Colouring{&it.Colourways[i], c.Face, c.Quantity * it.Pieces.Count()})
	}
	return all
}

// On tells whether it is of a face.
func (c Colouring) On(face string) bool { return c.Face == "" || c.Face == face }

// Colour returns what is printed in place of a colour that a pass names.
func (c Colouring) Colour(name string) string {
	if c.Colourway != nil {
		if other, swapped := c.Colourway.Swap[name]; swapped {
			return other
		}
	}
	return name
}
