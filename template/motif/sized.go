package motif

import (
	"image"
	"math"

	"golang.org/x/image/vector"

	"underlay/geometry"
	"underlay/template/picture"
)

// sized returns a mask in so many pixels: each has the mean of what it covers where they are fewer,
// and where they are more what lies evenly between the middles of those there are.
func sized(m *picture.Mask, w, h int) *picture.Mask {
	if w == m.W && h == m.H {
		return m
	}
	across, down := shares(m.W, w), shares(m.H, h)
	rows := make([]float32, w*m.H)
	for y := range m.H {
		line := m.Paint[y*m.W : (y+1)*m.W]
		for x, s := range across {
			var sum float32
			for k, weight := range s.weights {
				sum += weight * float32(line[s.from+k])
			}
			rows[y*w+x] = sum
		}
	}
	out := &picture.Mask{W: w, H: h, Paint: make([]uint8, w*h)}
	sums := make([]float32, w)
	for y, s := range down {
		clear(sums)
		for k, weight := range s.weights {
			for x, v := range rows[(s.from+k)*w : (s.from+k+1)*w] {
				sums[x] += weight * v
			}
		}
		for x, v := range sums {
			out.Paint[y*w+x] = uint8(min(v+0.5, 255))
		}
	}
	return out
}

// share is what the pixels of one side from the given one on give to a new pixel, 1 in all.
type share struct {
	from    int
	weights []float32
}

// shares lists what n pixels side by side give to each of to new ones.
func shares(n, to int) []share {
	all := make([]share, to)
	size := float64(n) / float64(to)
	for i := range all {
		low, high := float64(i)*size, float64(i+1)*size
		if size < 1 {
			// Between the middles of two; at the ends the last alone.
			at := min(max((low+high)/2-0.5, 0), float64(n-1))
			from := min(int(at), max(0, n-2))
			part := float32(at - float64(from))
			all[i] = share{from, []float32{1 - part, part}[:min(2, n)]}
			continue
		}
		from, end := int(low), min(int(math.Ceil(high-1e-9)), n)
		s := share{from: from}
		for k := from; k < end; k++ {
			s.weights = append(s.weights, float32((math.Min(high, float64(k+1))-math.Max(low, float64(k)))/size))
		}
		all[i] = s
	}
	return all
}

// shaded returns the mask of a path of straight steps in a box, so many pixels a side.
func shaded(path geometry.Path, box geometry.Rect, w, h int) *picture.Mask {
	z := vector.NewRasterizer(w, h)
	at := func(p geometry.Point) (x, y float32) {
		p = p.Sub(box.Min)
		return float32(p.X / box.W() * geometry.Length(w)), float32(p.Y / box.H() * geometry.Length(h))
	}
	for _, piece := range path {
		z.MoveTo(at(piece.Start))
		for _, s := range piece.Steps {
			z.LineTo(at(s.To))
		}
		z.ClosePath()
	}
	out := image.NewAlpha(image.Rect(0, 0, w, h))
	z.Draw(out, out.Bounds(), image.Opaque, image.Point{})
	return &picture.Mask{W: w, H: h, Paint: out.Pix}
}
