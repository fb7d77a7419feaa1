package picture

import (
	"image"
	"slices"
)

// half is the least paint of a pixel that belongs to the print.
const half = 128

// bounds returns where the print in a picture is: the bounds of what has any paint, specks left out.
// To find those, the picture is looked at smaller.
func bounds(m *image.Gray, paint [256]uint8) image.Rectangle {
	small := reduce(m, m.Rect, paint)
	kept := small.withoutSpecks()
	w, h := m.Rect.Dx(), m.Rect.Dy()
	var found image.Rectangle
	for y := range h {
		row := m.Pix[y*m.Stride:][:w]
		kept := kept[y*small.H/h*small.W:][:small.W]
		painted := func(x int) bool { return paint[row[x]] > 0 && kept[x*small.W/w] }
		left := 0
		for left < w && !painted(left) {
			left++
		}
		if left == w {
			continue
		}
		right := w - 1
		for !painted(right) {
			right--
		}
		found = found.Union(image.Rect(left, y, right+1, y+1))
	}
	return found
}

// withoutSpecks tells of each pixel of a mask whether it belongs to the print or lies beside what
// does. What hangs together, corners too, is a piece; a piece is a speck where it is smaller than a
// thousandth of all paint, and than an eighth of the usual piece: of those that, the largest
// first, hold half of the paint, the smallest. So a print of a thousand dots has no specks.
func (m *Mask) withoutSpecks() []bool {
	of, sizes := m.pieces()
	bySize := slices.Clone(sizes)
	slices.SortFunc(bySize, func(a, b int) int { return b - a })
	all := 0
	for _, n := range sizes {
		all += n
	}
	usual, sum := 0, 0
	for _, n := range bySize {
		if usual = n; sum+n >= all-sum-n {
			break
		}
		sum += n
	}
	least := min(float64(all)/1000, float64(usual)/8)
	kept := make([]bool, len(of))
	for i, piece := range of {
		if piece > 0 && float64(sizes[piece-1]) >= least {
			m.around(i, func(j int) { kept[j] = true })
		}
	}
	return kept
}

// pieces numbers the pieces of a mask's print from 1: of says which each pixel belongs to, 0 none;
// sizes is how many pixels each has.
func (m *Mask) pieces() (of []int32, sizes []int) {
	of = make([]int32, len(m.Paint))
	var next []int32
	for i := range of {
		if of[i] > 0 || m.Paint[i] < half {
			continue
		}
		sizes = append(sizes, 0)
		piece := int32(len(sizes))
		of[i], next = piece, append(next[:0], int32(i))
		for len(next) > 0 {
			at := int(next[len(next)-1])
			next = next[:len(next)-1]
			sizes[piece-1]++
			m.around(at, func(j int) {
				if of[j] == 0 && m.Paint[j] >= half {
					of[j], next = piece, append(next, int32(j))
				}
			})
		}
	}
	return of, sizes
}

// around calls f for a pixel and its neighbours, eight at the most.
func (m *Mask) around(i int, f func(j int)) {
	x, y := i%m.W, i/m.W
	for v := max(0, y-1); v <= min(m.H-1, y+1); v++ {
		for u := max(0, x-1); u <= min(m.W-1, x+1); u++ {
			f(v*m.W + u)
		}
	}
}
