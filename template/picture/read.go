package picture

import (
	"errors"
	"image"
)

// The most a picture may have.
const (
	MostBytes  = 32 << 20   // of its file
	MostPixels = 40_000_000 // 40 megapixels
)

// Read reads a picture of one print, dark on light, from the bytes of a PNG or JPEG file, and keeps
// the print in it. The name is that of the file, without folders. The error is a plain sentence,
// without the name: what is wrong with the picture, and what to do.
func Read(name string, file []byte) (*Picture, error) {
	grey, err := Gray(file)
	if err != nil {
		return nil, err
	}
	mask, err := Part(grey)
	if err != nil {
		return nil, err
	}
	return &Picture{Name: name, File: file, Mask: mask}, nil
}

// mostSide is how many pixels the longer side of a mask has at the most: some 16 to the millimetre
// of a usual block, finer than any printer draws.
const mostSide = 1600

// leastContrast is how far apart the greys of paint and cloth are at the least, in the mean: paper
// and cloth without a print differ by less from place to place.
const leastContrast = 24

// leastSide is how many pixels the longer side of a print has at the least.
const leastSide = 16

var (
	errBlank = errors.New("nothing stands out in this picture: it is all light; print the block once with dark paint on plain light cloth, and take a picture of that")
	errDark  = errors.New("this picture is dark all over; take one of a dark print on light cloth, with some cloth round it")
	errEdges = errors.New("the edges of this picture are dark: it is light on dark, or cut too close; let it show a dark print on light cloth, with a strip of cloth round it, or turn its colours round (invert)")
	errTiny  = errors.New("the print in this picture is smaller than 16 pixels; take a picture from nearer, or save it larger")
)

// Part parts a picture into paint, dark, and cloth, light, by Otsu's threshold, and returns the
// print, cropped. Specks round it are left out. Where the picture has greys between the two, at the
// edges of paint, so has the mask. The error is a plain sentence.
func Part(m *image.Gray) (*Mask, error) {
	histogram := histogramOf(m)
	threshold := Otsu(histogram)
	dark, light := means(histogram, threshold)
	switch {
	case light-dark < leastContrast && (light+dark)/2 < 128:
		return nil, errDark
	case light-dark < leastContrast:
		return nil, errBlank
	case darkEdges(m, threshold) > 0.5:
		return nil, errEdges
	}
	paint := paintOf(threshold, light-dark)
	print := bounds(m, paint)
	if max(print.Dx(), print.Dy()) < leastSide {
		return nil, errTiny
	}
	return reduce(m, print, paint).trimmed(), nil
}

// paintOf says how much paint each grey stands for: half at the threshold, all and none a quarter
// of the contrast away from it, so that what is uneven in paint and cloth does not show, and what
// lies between them does.
func paintOf(threshold uint8, contrast float64) (paint [256]uint8) {
	for g := range paint {
		share := 0.5 + (float64(threshold)+0.5-float64(g))/(contrast/2)
		paint[g] = uint8(min(max(share, 0), 1)*255 + 0.5)
	}
	return paint
}

// darkEdges returns how much of a picture's four edges is dark, 0 to 1.
func darkEdges(m *image.Gray, threshold uint8) float64 {
	dark, all := 0, 0
	count := func(x, y int) {
		all++
		if m.GrayAt(x, y).Y <= threshold {
			dark++
		}
	}
	r := m.Rect
	for x := r.Min.X; x < r.Max.X; x++ {
		count(x, r.Min.Y)
		count(x, r.Max.Y-1)
	}
	for y := r.Min.Y; y < r.Max.Y; y++ {
		count(r.Min.X, y)
		count(r.Max.X-1, y)
	}
	return float64(dark) / float64(all)
}
