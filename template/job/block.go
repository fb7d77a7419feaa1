package job

import (
	"underlay/geometry"
	"underlay/template/picture"
)

// LeastFace is the least side a carved face may have.
const LeastFace = 1 * geometry.Millimetre

// Block is a carved stamp.
type Block struct {
	Name       string
	Shape      FaceShape
	Size       geometry.Size    // of the carved face
	Face       geometry.Outline // centre of its bounds at (0, 0), top of the block upwards
	Wood       geometry.Outline // in the face's frame; None where not given
	WoodOffset geometry.Point   // the wood's centre from the face's
	Inked      float64          // share of the face that carries paint; 0: not given
	// Picture is one of its print, fitted to the face; nil where the job gives none. It is shown, never
	// measured from.
	Picture *picture.Picture
}
