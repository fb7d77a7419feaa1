package trace

import (
	"math"

	"underlay/geometry"
)

// view is how the window's frame lies in the photograph: a projection, and what the lens does to it.
// The lens moves a point away from the picture's middle, or towards it, by bend times the square of
// its distance from there (one radial term: Hartley and Zisserman, 7.4), which leaves a photograph
// as telephones take it within a tenth of a millimetre of the window.
type view struct {
	h     projection
	sheet scaling // of the window's frame
	photo scaling // of the picture: its middle, and half its diagonal
	bend  float64
}

func newView(g *grey) view {
	w, h := float64(g.w), float64(g.h)
	return view{
		sheet: scaling{point{float64(openingWidth) / 2, float64(openingHeight) / 2}, 100},
		photo: scaling{point{w / 2, h / 2}, math.Hypot(w, h) / 2},
	}
}

func (v view) lens(p point) point {
	return v.photo.unapply(p.mul(1 + v.bend*(p.x*p.x+p.y*p.y)))
}

// at returns where a point of the window's frame is in the picture.
func (v view) at(p point) point { return v.lens(v.h.apply(v.sheet.apply(p))) }

// disc returns where the middle of a disc's picture is.
func (v view) disc(centre point, radius float64) point {
	return v.lens(v.h.disc(v.sheet.apply(centre), radius/v.sheet.scale))
}

// stretch is what a view does to the plane near a point: a millimetre across becomes the pixels
// across, one down those down.
type stretch struct{ across, down point }

func (v view) stretch(p point) stretch {
	const d = 0.01
	step := func(by point) point { return v.at(p.add(by)).sub(v.at(p.sub(by))).mul(1 / (2 * d)) }
	return stretch{step(point{d, 0}), step(point{0, d})}
}

// scales returns how many pixels a millimetre has where it is drawn shortest and longest: the
// singular values of the matrix.
func (s stretch) scales() (least, most float64) {
	a, b := s.across, s.down
	sum, det := (a.x*a.x+a.y*a.y+b.x*b.x+b.y*b.y)/2, cross(a, b)
	root := math.Sqrt(max(sum*sum-det*det, 0))
	return math.Sqrt(max(sum-root, 0)), math.Sqrt(sum + root)
}

// undo returns the way in millimetres that a way in pixels is.
func (s stretch) undo(p point) point {
	det := cross(s.across, s.down)
	return point{cross(p, s.down) / det, cross(s.across, p) / det}
}

// ellipse returns what a disc looks like.
func (v view) ellipse(centre point, radius float64) ellipse {
	s := v.stretch(centre)
	k := radius * radius / 4
	return ellipse{v.disc(centre, radius),
		k * (s.across.x*s.across.x + s.down.x*s.down.x),
		k * (s.across.x*s.across.y + s.down.x*s.down.y),
		k * (s.across.y*s.across.y + s.down.y*s.down.y)}
}

// sight is a disc of the window page and where the middle of its picture was seen.
type sight struct {
	centre point // in the window's frame
	radius float64
	seen   point
}

// off returns how far what is seen is from where the view has it, on the sheet, in millimetres.
func (v view) off(s sight) float64 {
	return v.stretch(s.centre).undo(v.disc(s.centre, s.radius).sub(s.seen)).norm()
}

// fitted returns the view that comes nearest to all sights: least squares of the distances in the
// picture, by the Gauss-Newton method from the linear answer (Hartley and Zisserman, 4.5 and A6.1).
func (v view) fitted(sights []sight) (view, bool) {
	var from, to []point
	for _, s := range sights {
		from, to = append(from, v.sheet.apply(s.centre)), append(to, v.photo.apply(s.seen))
	}
	h, ok := fitted(from, to)
	if !ok {
		return v, false
	}
	v.h, v.bend = h, 0
	for range 8 {
		equations := newNormal(9)
		for _, s := range sights {
			var across, down [9]float64
			const d = 1e-6
			here := v.disc(s.centre, s.radius)
			for i := range 9 {
				moved := v.moved(i, d).disc(s.centre, s.radius)
				across[i], down[i] = (moved.x-here.x)/d, (moved.y-here.y)/d
			}
			equations.add(across[:], s.seen.x-here.x, 1)
			equations.add(down[:], s.seen.y-here.y, 1)
		}
		step, ok := equations.solve()
		if !ok {
			return v, false
		}
		for i, d := range step {
			v = v.moved(i, d)
		}
	}
	return v, !math.IsNaN(v.at(point{}).x)
}

// moved returns the view with one of its nine numbers larger by d.
func (v view) moved(i int, d float64) view {
	if i == 8 {
		v.bend += d
	} else {
		v.h[i] += d
	}
	return v
}

func pt(p geometry.Point) point { return point{float64(p.X), float64(p.Y)} }
