package picture

import "image"

// turn is how a picture is to be shown, by its Exif orientation, 1 to 8: where the stored first row
// and first column are to be seen (CIPA DC-008, Exif 2.3, tag 0x0112, from memory). 0 is as stored.
type turn uint8

// size returns how large a picture of w x h stored pixels is once turned.
func (t turn) size(w, h int) image.Point {
	if t >= 5 {
		return image.Pt(h, w)
	}
	return image.Pt(w, h)
}

// row returns where in a turned picture's pixels stored row y begins, and how far apart its pixels
// are, for w x h stored pixels.
func (t turn) row(m *image.Gray, w, h, y int) (at, step int) {
	right, down := 1, m.Stride
	switch t {
	case 2: // first row at the top, first column at the right
		return y*down + w - 1, -right
	case 3: // bottom, right
		return (h-1-y)*down + w - 1, -right
	case 4: // bottom, left
		return (h - 1 - y) * down, right
	case 5: // left, top
		return y, down
	case 6: // right, top
		return h - 1 - y, down
	case 7: // right, bottom
		return (w-1)*down + h - 1 - y, -down
	case 8: // left, bottom
		return (w-1)*down + y, -down
	}
	return y * down, right
}
