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

// PictureOff says how many times as wide for its height the print in the block's picture is as the
// face: 1.05 is five in a hundred too wide; 1 without a picture.
func (b *Block) PictureOff() float64 {
	if b.Picture == nil || b.Picture.Mask == nil || b.Picture.Mask.H == 0 {
		return 1
	}
	m := b.Picture.Mask
	return float64(m.W) / float64(m.H) * float64(b.Size.H/b.Size.W)
}

// PictureFits tells whether a block's picture has the shape of its face, to three in a hundred.
func (b *Block) PictureFits() bool {
	const most = 1.03
	off := b.PictureOff()
	return off <= most && 1/off <= most
}

// InkedInPicture returns the share of the face that carries paint in the block's picture, which is
// fitted to the bounds of the face: what paint there is lies on the face.
func (b *Block) InkedInPicture() float64 {
	bounds := float64(b.Size.W * b.Size.H)
	return min(b.Picture.Mask.Share()*bounds/b.Face.Area(), 1)
}
