package motifs

import (
	"math"
	"slices"
)

// nut and cap are the two parts of an acorn in a frame of its own: 1 wide, from 0 at the top of the cup
// to 1 at the tip of the nut.
func nut() loop {
	side := spline(point{0.44, 0.40}, point{0.455, 0.52}, point{0.41, 0.70}, point{0.27, 0.86}, point{0.09, 0.945}, point{0, 1})
	return mirrored(side)
}

func cup() loop {
	side := spline(point{0, 0}, point{0.26, 0.05}, point{0.44, 0.17}, point{0.5, 0.33}, point{0.47, 0.405}, point{0.26, 0.435}, point{0, 0.445})
	return mirrored(side)
}

// mirrored returns the loop that a way down its right side makes with its image on the left.
func mirrored(side []point) loop {
	l := append(loop{}, side...)
	for i := range side {
		p := side[len(side)-1-i]
		l = append(l, point{-p.x, p.y})
	}
	return l
}

// body says where a point of an acorn's frame lies on the face.
type body struct{ middle, top, width, height float64 }

func (a body) at(p point) point { return point{a.middle + p.x*a.width, a.top + p.y*a.height} }

func (a body) put(l []point) []point {
	out := make([]point, len(l))
	for i, p := range l {
		out[i] = a.at(p)
	}
	return out
}

// scales are the lines between the scales of a cup.
func (a body) scales(width float64) []loop {
	var out []loop
	for row, y := range []float64{0.10, 0.20, 0.30} {
		reach := 0.46 * math.Sqrt(1-math.Pow(1-(y+0.06)/0.40, 2))
		n := 3 + row
		for k := range n {
			x := (2*(float64(k)+0.5)/float64(n) - 1) * reach
			half := 0.86 * reach / float64(n)
			sag := 0.03 * math.Abs(x)
			out = append(out, groove(a.put(spline(point{x - half, y - 0.02 + sag}, point{x - 0.6*half, y + 0.045 + sag},
				point{x + 0.6*half, y + 0.045 + sag}, point{x + half, y - 0.02 + sag})), even(width)))
		}
	}
	return out
}

// shine are the gouges along a nut's left side.
func (a body) shine(width float64) []loop {
	return []loop{
		groove(a.put(spline(point{-0.32, 0.53}, point{-0.315, 0.66}, point{-0.22, 0.80})), even(width)),
		groove(a.put(spline(point{-0.19, 0.55}, point{-0.185, 0.66}, point{-0.13, 0.76})), even(0.8*width)),
		groove(a.put(spline(point{0.30, 0.62}, point{0.25, 0.74}, point{0.16, 0.83})), even(0.7*width)),
	}
}

// acorn is an acorn in its cup; on a wide face with two leaves over it.
func acorn(b *block) {
	w, h := b.w, b.h
	a := body{0, -0.40 * h, w, 0.90 * h}
	leaves := w/h > 0.85
	if leaves {
		a = body{0, -0.24 * h, 0.80 * math.Min(w, 0.74*h), 0.74 * h}
	}
	line := 0.045 * a.width
	b.ink(a.put(nut()))
	b.cut(a.shine(1.1 * line)...)
	rim := body{a.middle, a.top, a.width * 1.02, a.height + 1.1*line}
	b.cut(rim.put(cup()))
	b.ink(a.put(cup()))
	b.cut(a.scales(line)...)
	top := point{0.06 * a.width, -0.5 * h}
	b.ink(groove(spline(a.at(point{0, 0.05}), mix(a.at(point{-0.02, 0}), top, 0.4), top), func(t float64) float64 { return (0.13 - 0.03*t) * a.width }))
	if leaves {
		for _, side := range []float64{-1, 1} {
			oakLeaf(b, a.at(point{0.02 * side, -0.02}), point{0.49 * w * side, -0.30 * h}, 0.30*h, side)
		}
	}
	b.fit()
}

// oakLeaf is a leaf with round lobes and its rib cut.
func oakLeaf(b *block, foot, tip point, width, side float64) {
	way := tip.sub(foot)
	rib := fine(spline(foot, mix(foot, tip, 0.5).add(way.unit().left().times(0.12*side*way.length())), tip), 120)
	b.ink(groove(rib, func(t float64) float64 {
		body := math.Min(1, 0.25+2.4*t) * math.Pow(math.Max(0, 1-math.Pow(t, 4)), 0.6)
		return width * body * (0.62 + 0.38*math.Sqrt(math.Abs(math.Sin(math.Pi*(3*t+0.1)))))
	}))
	b.cut(groove(rib[10:100], pointed(0.10*width)))
}

// The two parts of an acorn that are printed on each other: lines, and what fills them. The fill's face
// is as large as the lines leave room for, and its middle 2 mm below theirs.
const (
	partsWidth, partsHeight = 60, 76 // of the lines without the stalk
	partsLine               = 3
)

func acornOutline(b *block) {
	a := body{0, 0.5*b.h - partsHeight, partsWidth, partsHeight}
	hollow := func(l loop) loop { return inner(a.put(l), partsLine) }
	b.ink(a.put(nut()))
	b.cut(hollow(nut()))
	b.ink(a.put(cup()))
	b.cut(hollow(cup()))
	b.ink(a.innerScales(1.5)...)
	b.ink(groove(spline(a.at(point{0, 0.03}), a.at(point{0.02, -0.02}), a.at(point{0.02, -4.0 / partsHeight})), func(float64) float64 { return 8 }))
}

func acornFill(b *block) {
	a := body{0, 0, partsWidth, partsHeight}
	b.ink(inner(a.put(nut()), partsLine), inner(a.put(cup()), partsLine))
	b.cut(a.innerScales(2.7)...)
	b.cut(a.shine(2.4)...)
	b.fit()
}

// innerScales are the lines between the scales of a cup that are clear of its own line: the fill, which is
// printed last, leaves room for them.
func (a body) innerScales(width float64) []loop {
	return body{a.middle, a.top + 1, 0.88 * a.width, a.height}.scales(width)
}

// inner returns a loop drawn in by so much on every side.
func inner(l loop, by float64) loop {
	n := len(l)
	var out loop
	for i, p := range l {
		d := l[(i+1)%n].sub(l[(i+n-1)%n])
		q := p.sub(d.unit().left().times(by))
		if d.length() > 1e-6 && !slices.ContainsFunc(l, func(r point) bool { return q.sub(r).length() < 0.99*by }) {
			out = append(out, q)
		}
	}
	return out
}
