package trace

import (
	"math"
	"slices"
)

// coarse is how many pixels the opening has to the millimetre where light and print are told apart
// roughly, and cell how many of them a cell of the light is wide and high.
const (
	coarse = 4
	cell   = 8
)

// opening is the inside of the window, flat, w x h pixels, so many to the millimetre.
type opening struct {
	w, h  int
	light []float64 // as it is in the picture, 0 to 1; then, evened, in shares of the ground's
}

// flat returns the inside of the window at the coarse scale.
func (g *grey) flat(v view) *opening {
	o := &opening{w: int(openingWidth) * coarse, h: int(openingHeight) * coarse}
	o.light = make([]float64, 0, o.w*o.h)
	for y := range o.h {
		for x := range o.w {
			o.light = append(o.light, g.at(v.at(point{(float64(x) + 0.5) / coarse, (float64(y) + 0.5) / coarse})))
		}
	}
	return o
}

// lamp is how brightly the ground is lit in each cell of the opening, were there nothing on it.
type lamp struct {
	w, h int
	at   []float64
}

// of returns the light at a point of the window's frame, between the middles of cells in
// proportion.
func (l *lamp) of(p point) float64 {
	const size = float64(cell) / coarse
	x, y := min(max(p.x/size-0.5, 0), float64(l.w-1)-1e-9), min(max(p.y/size-0.5, 0), float64(l.h-1)-1e-9)
	o := int(y)*l.w + int(x)
	fx, fy := x-math.Floor(x), y-math.Floor(y)
	return (l.at[o]*(1-fx)+l.at[o+1]*fx)*(1-fy) + (l.at[o+l.w]*(1-fx)+l.at[o+l.w+1]*fx)*fy
}

// faint keeps logarithms from the darkest pixels, of which a camera says nothing.
const faint = 1.0 / 4096

// lit works out the light on the ground from the cells that show ground alone: a smooth surface of
// the given degree through the logarithms of their light, by least squares, and what is left of
// them, spread over what they surround. Cells far off the surface are left out. ok is false where
// there are too few.
func (o *opening) lit(ground func(x, y int) bool, degree int) (l *lamp, ok bool) {
	l = &lamp{w: o.w / cell, h: o.h / cell}
	l.at = make([]float64, l.w*l.h)
	used := make([]bool, l.w*l.h)
	logs := make([]float64, l.w*l.h)
	for i := range logs {
		cx, cy := i%l.w, i/l.w
		sum, all := 0.0, true
		for y := cy * cell; y < (cy+1)*cell; y++ {
			for x := cx * cell; x < (cx+1)*cell; x++ {
				sum += o.light[y*o.w+x]
				all = all && ground(x, y)
			}
		}
		used[i] = all
		logs[i] = math.Log(max(sum/(cell*cell), faint))
	}
	row := func(i int) []float64 {
		x, y := 2*(float64(i%l.w)+0.5)/float64(l.w)-1, 2*(float64(i/l.w)+0.5)/float64(l.h)-1
		var terms []float64
		for a, px := 0, 1.0; a <= degree; a, px = a+1, px*x {
			for b, py := 0, 1.0; a+b <= degree; b, py = b+1, py*y {
				terms = append(terms, px*py)
			}
		}
		return terms
	}
	terms := len(row(0))
	surface := make([]float64, len(logs))
	for range 4 {
		m := newNormal(terms)
		n := 0
		for i, u := range used {
			if u {
				m.add(row(i), logs[i], 1)
				n++
			}
		}
		if n < 4*terms {
			return nil, false
		}
		x, solved := m.solve()
		if !solved {
			return nil, false
		}
		var off []float64
		for i := range surface {
			surface[i] = 0
			for k, t := range row(i) {
				surface[i] += x[k] * t
			}
			if used[i] {
				off = append(off, math.Abs(logs[i]-surface[i]))
			}
		}
		slices.Sort(off)
		limit := max(4*off[len(off)/2], 0.1)
		for i := range used {
			used[i] = used[i] && math.Abs(logs[i]-surface[i]) <= limit
		}
	}
	left := make([]float64, len(logs))
	weight := make([]float64, len(logs))
	for i, u := range used {
		if u {
			left[i], weight[i] = logs[i]-surface[i], 1
		}
	}
	// Twice over squares of 5 cells: some 10 mm.
	for range 2 {
		left, weight = boxed(left, l.w, l.h, 2), boxed(weight, l.w, l.h, 2)
	}
	for i := range l.at {
		// A little of nothing, so that what is far from any ground has the surface alone.
		l.at[i] = math.Exp(surface[i] + left[i]/(weight[i]+0.05))
	}
	return l, true
}

// boxed returns the mean over squares of 2 n + 1; beyond the edges is 0.
func boxed(of []float64, w, h, n int) []float64 {
	along := func(of []float64, count, step, line, lines int) []float64 {
		out := make([]float64, len(of))
		for l := range lines {
			for i := range count {
				for k := max(i-n, 0); k <= min(i+n, count-1); k++ {
					out[l*line+i*step] += of[l*line+k*step] / float64(2*n+1)
				}
			}
		}
		return out
	}
	return along(along(of, w, 1, w, h), h, w, 1, w)
}

// evened returns the opening in shares of the light on the ground.
func (o *opening) evened(l *lamp) *opening {
	e := &opening{w: o.w, h: o.h, light: make([]float64, len(o.light))}
	for i, v := range o.light {
		e.light[i] = v / l.of(point{(float64(i%o.w) + 0.5) / coarse, (float64(i/o.w) + 0.5) / coarse})
	}
	return e
}
