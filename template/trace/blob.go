package trace

import "math"

// blob is a patch of pixels of one kind, dark or light, that hang together: dark ones by sides and
// corners, light ones by sides. Its sums are over the middles of its pixels.
type blob struct {
	dark                   bool
	n                      int
	sx, sy, sxx, syy, sxy  float64
	left, top, right, foot int // the last ones outside
	in                     int // the dark blob round a light one; -1 where it reaches the edge, and for dark ones
}

// blobs finds all blobs of a picture w wide. The label of each pixel is the index of its blob.
func blobs(dark []bool, w int) (all []blob, labels []int32) {
	labels = make([]int32, len(dark))
	var parent []int32
	root := func(i int32) int32 {
		for parent[i] != i {
			parent[i] = parent[parent[i]]
			i = parent[i]
		}
		return i
	}
	for i := range dark {
		x := i % w
		label := int32(-1)
		join := func(k int) {
			if dark[k] != dark[i] {
				return
			}
			r := root(labels[k])
			if label < 0 {
				label = r
			} else if r != label {
				// The older one is the root, so that roots come before what hangs on them.
				older, newer := min(r, label), max(r, label)
				parent[newer], label = older, older
			}
		}
		if x > 0 {
			join(i - 1)
		}
		if i >= w {
			join(i - w)
			if dark[i] && x > 0 {
				join(i - w - 1)
			}
			if dark[i] && x < w-1 {
				join(i - w + 1)
			}
		}
		if label < 0 {
			label = int32(len(parent))
			parent = append(parent, label)
		}
		labels[i] = label
	}

	index := make([]int32, len(parent))
	for i := range parent {
		if parent[i] == int32(i) {
			index[i] = int32(len(all))
			all = append(all, blob{left: math.MaxInt, top: math.MaxInt, in: -1})
		} else {
			index[i] = index[root(int32(i))]
		}
	}
	h := 0
	if w > 0 {
		h = len(dark) / w
	}
	for i := range labels {
		labels[i] = index[labels[i]]
		b := &all[labels[i]]
		x, y := i%w, i/w
		if b.n == 0 {
			b.dark = dark[i]
			// What stands above the first pixel of a light blob is part of the dark one round it.
			if !dark[i] && y > 0 {
				b.in = int(labels[i-w])
			}
		}
		fx, fy := float64(x)+0.5, float64(y)+0.5
		b.n++
		b.sx, b.sy, b.sxx, b.syy, b.sxy = b.sx+fx, b.sy+fy, b.sxx+fx*fx, b.syy+fy*fy, b.sxy+fx*fy
		b.left, b.top, b.right, b.foot = min(b.left, x), min(b.top, y), max(b.right, x+1), max(b.foot, y+1)
	}
	for i := range all {
		if b := &all[i]; b.left == 0 || b.top == 0 || b.right == w || b.foot == h {
			b.in = -1
		}
	}
	return all, labels
}

// add puts another blob into b.
func (b *blob) add(c blob) {
	b.n += c.n
	b.sx, b.sy, b.sxx, b.syy, b.sxy = b.sx+c.sx, b.sy+c.sy, b.sxx+c.sxx, b.syy+c.syy, b.sxy+c.sxy
	b.left, b.top, b.right, b.foot = min(b.left, c.left), min(b.top, c.top), max(b.right, c.right), max(b.foot, c.foot)
}

// ellipse is one in the picture: all p with (p - at) S⁻¹ (p - at) <= 4, where S, the matrix of the
// second moments, is xx, xy, yy.
type ellipse struct {
	at         point
	xx, xy, yy float64
}

// ellipse returns the one with the blob's moments, and how much of its area the blob takes: 1 where
// the blob is an ellipse, 0.955 for a square.
func (b *blob) ellipse() (e ellipse, filled float64) {
	n := float64(b.n)
	e.at = point{b.sx / n, b.sy / n}
	// A pixel is a square, with moments of its own.
	e.xx = b.sxx/n - e.at.x*e.at.x + 1.0/12
	e.yy = b.syy/n - e.at.y*e.at.y + 1.0/12
	e.xy = b.sxy/n - e.at.x*e.at.y
	long, short := e.axes()
	return e, n / (math.Pi * long * short)
}

// axes returns half the long and half the short axis.
func (e ellipse) axes() (long, short float64) {
	mean, half := (e.xx+e.yy)/2, math.Hypot((e.xx-e.yy)/2, e.xy)
	return 2 * math.Sqrt(mean+half), 2 * math.Sqrt(max(mean-half, 0))
}

// away returns how far a point is from the middle: 1 on the ellipse.
func (e ellipse) away(p point) float64 {
	x, y := p.x-e.at.x, p.y-e.at.y
	det := e.xx*e.yy - e.xy*e.xy
	return math.Sqrt(max(e.yy*x*x-2*e.xy*x*y+e.xx*y*y, 0)/det) / 2
}
