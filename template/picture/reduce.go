package picture

import "image"

// reduce returns the paint in a part of a picture, with no more than mostSide pixels on a side:
// each is the mean of what it covers, parts of pixels counted by their area.
func reduce(m *image.Gray, part image.Rectangle, paint [256]uint8) *Mask {
	long := max(part.Dx(), part.Dy())
	cells := func(n int) spread {
		if long <= mostSide {
			return spread{n, n}
		}
		return spread{n, max(1, (n*mostSide+long/2)/long)}
	}
	across, down := cells(part.Dx()), cells(part.Dy())
	out := &Mask{W: across.cells, H: down.cells, Paint: make([]uint8, across.cells*down.cells)}
	area := float32(across.n) / float32(across.cells) * float32(down.n) / float32(down.cells)
	row, sums := make([]float32, out.W), make([]float32, out.W)
	corner := part.Min.Sub(m.Rect.Min)
	for y := range part.Dy() {
		clear(row)
		for x, g := range m.Pix[(corner.Y+y)*m.Stride+corner.X:][:part.Dx()] {
			cell, here, full := across.of(x)
			p := float32(paint[g])
			row[cell] += p * here
			if full && here < 1 {
				row[cell+1] += p * (1 - here)
			}
		}
		cell, here, full := down.of(y)
		for x, p := range row {
			sums[x] += p * here
		}
		if full {
			for x, p := range row {
				out.Paint[cell*out.W+x] = uint8(min(sums[x]/area+0.5, 255))
				sums[x] = p * (1 - here)
			}
		}
	}
	return out
}

// spread is n pixels in a row spread over as many cells, or fewer.
type spread struct{ n, cells int }

// of returns which cell a pixel begins in, and how much of the pixel lies in it; the rest lies in
// the next. Full tells that the cell ends with this pixel.
func (s spread) of(pixel int) (cell int, here float32, full bool) {
	cell = pixel * s.cells / s.n
	end := (cell + 1) * s.n // of the cell, in parts of a pixel, of which a pixel has s.cells
	over := (pixel+1)*s.cells - end
	if over < 0 {
		return cell, 1, false
	}
	return cell, float32(s.cells-over) / float32(s.cells), true
}

// trimmed returns the mask without rows and columns at its edges that have no paint.
func (m *Mask) trimmed() *Mask {
	var found image.Rectangle
	for y := range m.H {
		for x := range m.W {
			if m.Paint[y*m.W+x] > 0 {
				found = found.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	if found.Dx() == m.W && found.Dy() == m.H {
		return m
	}
	out := &Mask{W: found.Dx(), H: found.Dy(), Paint: make([]uint8, 0, found.Dx()*found.Dy())}
	for y := found.Min.Y; y < found.Max.Y; y++ {
		out.Paint = append(out.Paint, m.Paint[y*m.W:][found.Min.X:found.Max.X]...)
	}
	return out
}
