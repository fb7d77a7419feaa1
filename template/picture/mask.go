package picture

// Mask says how much paint lies on each pixel of a print: W x H of them, row by row, from 0, plain
// cloth, to 255, all paint. It is cropped: each of its four edges has paint on it.
type Mask struct {
	W, H  int
	Paint []uint8
}

// At returns the paint on a pixel; 0 outside the mask.
func (m *Mask) At(x, y int) uint8 {
	if x < 0 || y < 0 || x >= m.W || y >= m.H {
		return 0
	}
	return m.Paint[y*m.W+x]
}

// Share returns how much of the mask carries paint, 0 to 1.
func (m *Mask) Share() float64 {
	if len(m.Paint) == 0 {
		return 0
	}
	sum := 0
	for _, p := range m.Paint {
		sum += int(p)
	}
	return float64(sum) / 255 / float64(len(m.Paint))
}
