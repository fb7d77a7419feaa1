package job

import "underlay/geometry"

// Dab is a colour put on a part of a block's face: where several would lie, the first has it.
type Dab struct {
	Colour string
	Part   FacePart
	// Size is how far across the middle is, how far a corner reaches from its point, or how wide
	// the edge is; 0 of the rest.
	Size geometry.Length
}

// FacePart is a part of a block's face that is dabbed on its own.
type FacePart string

// The parts. TheRest is what no dab before it takes.
const (
	TheMiddle  FacePart = "middle"  // a disc round the face's centre
	TheCorners FacePart = "corners" // within a distance of any corner of the face
	TheEdge    FacePart = "edge"    // within a distance of the face's edge
	TheRest    FacePart = "rest"
)
