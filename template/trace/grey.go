package trace

import (
	"image"
	"image/draw"
	"math"
)

// grey is a picture's brightness as a camera writes it, 0 to 255, row by row.
type grey struct {
	w, h int
	pix  []uint8
	// light is what fell on the sensor, 0 to 1, for each value.
	light [256]float32
}

// newGrey returns the brightness of a picture, what is see-through on white.
func newGrey(img image.Image) *grey {
	b := img.Bounds()
	g := &grey{w: b.Dx(), h: b.Dy(), light: cameraCurve()}
	src, ok := img.(*image.Gray)
	if !ok {
		src = image.NewGray(b)
		draw.Draw(src, b, image.White, image.Point{}, draw.Src)
		draw.Draw(src, b, img, b.Min, draw.Over)
	}
	g.pix = make([]uint8, 0, g.w*g.h)
	for y := range g.h {
		g.pix = append(g.pix, src.Pix[y*src.Stride:][:g.w]...)
	}
	return g
}

// cameraCurve returns the light that each value stands for (IEC 61966-2-1, sRGB). Only in light
// does a blurred edge stay where it was, at half way.
func cameraCurve() (light [256]float32) {
	for i := range light {
		v := float64(i) / 255
		if v <= 0.04045 {
			light[i] = float32(v / 12.92)
		} else {
			light[i] = float32(math.Pow((v+0.055)/1.055, 2.4))
		}
	}
	return light
}

// shrink averages n x n pixels to one; what does not fill one at the right and the foot is left out.
func (g *grey) shrink(n int) *grey {
	s := &grey{w: g.w / n, h: g.h / n, light: g.light}
	s.pix = make([]uint8, s.w*s.h)
	sums := make([]int, s.w)
	for y := range s.h {
		clear(sums)
		for k := range n {
			row := g.pix[(y*n+k)*g.w:]
			for x := range sums {
				for _, p := range row[x*n : (x+1)*n] {
					sums[x] += int(p)
				}
			}
		}
		for x, sum := range sums {
			s.pix[y*s.w+x] = uint8((sum + n*n/2) / (n * n))
		}
	}
	return s
}

// at returns the light at a point, between pixels in proportion; beyond the edge that at the edge.
func (g *grey) at(p point) float64 {
	x, y := min(max(p.x-0.5, 0), float64(g.w-1)), min(max(p.y-0.5, 0), float64(g.h-1))
	i, k := min(int(x), max(g.w-2, 0)), min(int(y), max(g.h-2, 0))
	fx, fy := x-float64(i), y-float64(k)
	right, below := min(1, g.w-1), 0
	if g.h > 1 {
		below = g.w
	}
	o := k*g.w + i
	top := float64(g.light[g.pix[o]])*(1-fx) + float64(g.light[g.pix[o+right]])*fx
	foot := float64(g.light[g.pix[o+below]])*(1-fx) + float64(g.light[g.pix[o+below+right]])*fx
	return top*(1-fy) + foot*fy
}

// holds tells whether a point lies in the picture.
func (g *grey) holds(p point) bool {
	return p.x >= 0 && p.y >= 0 && p.x <= float64(g.w) && p.y <= float64(g.h)
}

// percentile returns the value that so many hundredths of the pixels do not exceed.
func (g *grey) percentile(hundredths int) uint8 {
	var histogram [256]int
	for _, p := range g.pix {
		histogram[p]++
	}
	left := len(g.pix) * hundredths / 100
	for v, n := range histogram {
		if left -= n; left < 0 {
			return uint8(v)
		}
	}
	return 255
}
