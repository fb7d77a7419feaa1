package picture

import "image"

// Otsu returns the threshold that parts greys best into two classes, dark up to it and light above:
// the one with the largest variance between them. Where several part them equally well, it is the
// middle of the first of their runs; 0 where there is one grey alone.
//
// N. Otsu, "A threshold selection method from gray-level histograms", IEEE Transactions on Systems,
// Man, and Cybernetics 9 (1979), 62-66.
func Otsu(histogram [256]int) uint8 {
	var count, sum float64
	for g, n := range histogram {
		count += float64(n)
		sum += float64(g) * float64(n)
	}
	var below, belowSum, best float64
	first, last := 0, 0
	for t, n := range histogram {
		below += float64(n)
		belowSum += float64(t) * float64(n)
		above := count - below
		if below == 0 || above == 0 {
			continue
		}
		apart := belowSum/below - (sum-belowSum)/above
		switch between := below * above * apart * apart; {
		case between > best:
			best, first, last = between, t, t
		case between == best && t == last+1:
			last = t
		}
	}
	return uint8((first + last) / 2)
}

// histogramOf counts a picture's pixels by their grey.
func histogramOf(m *image.Gray) (histogram [256]int) {
	for y := range m.Rect.Dy() {
		for _, g := range m.Pix[y*m.Stride:][:m.Rect.Dx()] {
			histogram[g]++
		}
	}
	return histogram
}

// means returns the mean greys of the two classes; both are that of all where one is empty.
func means(histogram [256]int, threshold uint8) (dark, light float64) {
	mean := func(from, to int) float64 {
		var count, sum float64
		for g := from; g < to; g++ {
			count += float64(histogram[g])
			sum += float64(g) * float64(histogram[g])
		}
		if count == 0 {
			return -1
		}
		return sum / count
	}
	dark, light = mean(0, int(threshold)+1), mean(int(threshold)+1, 256)
	switch {
	case dark < 0:
		dark = light
	case light < 0:
		light = dark
	}
	return dark, light
}
