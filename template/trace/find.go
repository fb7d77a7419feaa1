package trace

import (
	"image"
	"math"
	"slices"
)

// searched is how many pixels the longer side of the picture has, about, in which marks are looked
// for: a mark is then some ten pixels wide where it is as small as it may be.
const searched = 1600

// How much of an ellipse's area a blob takes that may be a mark: a square takes 0.955 of its own.
const (
	leastFilled = 0.93
	mostFilled  = 1.05
)

// leastShort is the least short axis of a mark, as a share of the long one: it is to be found further
// aslant than it can be measured, so that this is what is said.
const leastShort = 0.35

// candidates returns the ellipses that may be marks: blobs darker than what is round them.
func (g *grey) candidates() []ellipse {
	n := max(1, (max(g.w, g.h)+searched/2)/searched)
	small := g.shrink(n)
	all, _ := blobs(small.darkHere(), small.w)
	whole := slices.Clone(all)
	for _, b := range all {
		if b.in >= 0 {
			whole[b.in].add(b)
		}
	}
	var found []ellipse
	for i, b := range whole {
		if !b.dark || b.left == 0 || b.top == 0 || b.right == small.w || b.foot == small.h || all[i].n < leastBlob {
			continue
		}
		e, filled := b.ellipse()
		if long, short := e.axes(); filled < leastFilled || filled > mostFilled || short < leastShort*long {
			continue
		}
		k := float64(n)
		found = append(found, ellipse{e.at.mul(k), e.xx * k * k, e.xy * k * k, e.yy * k * k})
	}
	return found
}

// leastBlob is how many pixels a mark has at the least in the picture searched.
const leastBlob = 30

// darkHere tells which pixels are dark beside what is round them: darker than the mean of a square
// as wide as an eighth of the picture, by more than a tenth. Light that changes across the picture
// does not matter then.
func (g *grey) darkHere() []bool {
	sums := make([]int, (g.w+1)*(g.h+1))
	for y := range g.h {
		row := 0
		for x := range g.w {
			row += int(g.pix[y*g.w+x])
			sums[(y+1)*(g.w+1)+x+1] = sums[y*(g.w+1)+x+1] + row
		}
	}
	half := max(g.w, g.h) / 16
	dark := make([]bool, g.w*g.h)
	for y := range g.h {
		top, foot := max(y-half, 0), min(y+half+1, g.h)
		for x := range g.w {
			left, right := max(x-half, 0), min(x+half+1, g.w)
			sum := sums[foot*(g.w+1)+right] - sums[foot*(g.w+1)+left] - sums[top*(g.w+1)+right] + sums[top*(g.w+1)+left]
			dark[y*g.w+x] = int(g.pix[y*g.w+x])*(foot-top)*(right-left)*10 < sum*8
		}
	}
	return dark
}

// found is a mark in the picture.
type found struct {
	e     ellipse
	holes []point
}

// patch is a part of the picture, with ink and paper told apart: 0 is ink, 1 the paper beside it,
// whatever the light there.
type patch struct {
	r  image.Rectangle
	of []float64
}

// each calls f for every pixel with its middle.
func (p *patch) each(f func(at point, paper float64)) {
	for i, v := range p.of {
		f(point{float64(p.r.Min.X+i%p.r.Dx()) + 0.5, float64(p.r.Min.Y+i/p.r.Dx()) + 0.5}, v)
	}
}

// leastContrast is how much darker ink is at the least than the paper beside it.
const leastContrast = 0.3

// patch looks at a dark ellipse and what is round it, as far as reach times its half axes. The paper
// is measured between from and reach: what it is like there is a plane, as the light may fall off;
// the ink where the ellipse is darkest. ok is false where the two hardly differ, or where the
// picture ends.
func (g *grey) patch(e ellipse, from, reach float64) (p *patch, ok bool) {
	wide, high := 2*reach*math.Sqrt(e.xx), 2*reach*math.Sqrt(e.yy)
	if !(wide < float64(g.w)) || !(high < float64(g.h)) || !g.holds(e.at.sub(point{wide, high})) || !g.holds(e.at.add(point{wide, high})) {
		return nil, false
	}
	p = &patch{r: image.Rect(int(e.at.x-wide), int(e.at.y-high), int(math.Ceil(e.at.x+wide)), int(math.Ceil(e.at.y+high)))}
	for y := p.r.Min.Y; y < p.r.Max.Y; y++ {
		for _, v := range g.pix[y*g.w+p.r.Min.X : y*g.w+p.r.Max.X] {
			p.of = append(p.of, float64(g.light[v]))
		}
	}
	paper := newNormal(3)
	var inside []float64
	p.each(func(at point, light float64) {
		switch away := e.away(at); {
		case away < 0.9:
			inside = append(inside, light)
		case away >= from && away <= reach:
			paper.add([]float64{1, at.x - e.at.x, at.y - e.at.y}, light, 1)
		}
	})
	plane, ok := paper.solve()
	if !ok || len(inside) == 0 {
		return nil, false
	}
	slices.Sort(inside)
	ink := inside[len(inside)/4]
	if plane[0]-ink < leastContrast*plane[0] || plane[0] <= 0 {
		return nil, false
	}
	for i, light := range p.of {
		x, y := float64(p.r.Min.X+i%p.r.Dx())+0.5-e.at.x, float64(p.r.Min.Y+i/p.r.Dx())+0.5-e.at.y
		here := max(plane[0]+plane[1]*x+plane[2]*y, plane[0]/2)
		p.of[i] = (light - ink) / (here - ink)
	}
	return p, true
}

// smoothed returns a patch averaged over squares of 2 n + 1 pixels, twice.
func (p *patch) smoothed(n int) *patch {
	w, h := p.r.Dx(), p.r.Dy()
	along := func(of []float64, count, step, line, lines int) []float64 {
		out := make([]float64, len(of))
		for l := range lines {
			o := l * line
			for i := range count {
				sum, weight := 0.0, 0.0
				for k := max(i-n, 0); k <= min(i+n, count-1); k++ {
					sum, weight = sum+of[o+k*step], weight+1
				}
				out[o+i*step] = sum / weight
			}
		}
		return out
	}
	of := p.of
	for range 2 {
		of = along(along(of, w, 1, w, h), h, w, 1, w)
	}
	return &patch{p.r, of}
}

// The holes of a mark, as shares of its own size.
const (
	holeShare    = float64(holeRadius/markRadius) * float64(holeRadius/markRadius)
	fewestMarked = fewestHoles
	mostMarked   = fewestHoles + 3
)

// mark looks at a candidate closely: at the picture as it is, for its outline, its holes and
// where their middles are. ok is false where it is no mark.
func (g *grey) mark(e ellipse) (m found, ok bool) {
	for range 2 {
		p, ok := g.patch(e, 1.1, 1.22)
		if !ok {
			return m, false
		}
		if m, ok = p.mark(e); !ok {
			return m, false
		}
		e = m.e
	}
	return m, true
}

func (p *patch) mark(e ellipse) (m found, ok bool) {
	long, _ := e.axes()
	smooth := p.smoothed(int(long / 30))
	dark := make([]bool, len(smooth.of))
	for i, v := range smooth.of {
		dark[i] = v < 0.5
	}
	all, _ := blobs(dark, p.r.Dx())
	disc := -1
	for i, b := range all {
		if b.dark && (disc < 0 || b.n > all[disc].n) {
			disc = i
		}
	}
	if disc < 0 {
		return m, false
	}
	whole := all[disc]
	for _, b := range all {
		if b.in == disc {
			whole.add(b)
		}
	}
	origin := point{float64(p.r.Min.X), float64(p.r.Min.Y)}
	outline, filled := whole.ellipse()
	outline.at = outline.at.add(origin)
	if l, s := outline.axes(); filled < 0.97 || filled > 1.02 || s < leastShort*l {
		return m, false
	}
	for _, b := range all {
		share := float64(b.n) / float64(whole.n)
		if b.in != disc || share < 0.4*holeShare || share > 2*holeShare {
			continue
		}
		rough, _ := b.ellipse()
		m.holes = append(m.holes, p.hole(outline, rough.at.add(origin)))
	}
	m.e = p.disc(outline)
	return m, len(m.holes) >= fewestMarked && len(m.holes) <= mostMarked
}

// disc returns the ellipse with its middle as exactly as can be told: that of the ink within it,
// each pixel counted by how much of it is ink, holes as ink.
func (p *patch) disc(e ellipse) ellipse {
	for range 3 {
		var sum, sx, sy float64
		p.each(func(at point, paper float64) {
			ink := 1 - paper
			switch away := e.away(at); {
			case away > 1.2:
				return
			case away < 0.83:
				ink = 1
			}
			sum, sx, sy = sum+ink, sx+ink*at.x, sy+ink*at.y
		})
		e.at = point{sx / sum, sy / sum}
	}
	return e
}

// hole returns the middle of a hole: of the paper within its part of the mark, by how much of each
// pixel is paper.
func (p *patch) hole(mark ellipse, at point) point {
	const reach = 1.75 * float64(holeRadius/markRadius)
	for range 3 {
		around := mark
		around.at = at
		var sum, sx, sy float64
		p.each(func(q point, paper float64) {
			if around.away(q) < reach {
				sum, sx, sy = sum+paper, sx+paper*q.x, sy+paper*q.y
			}
		})
		if sum <= 0 {
			return at
		}
		at = point{sx / sum, sy / sum}
	}
	return at
}
