package raster

import (
	"image"
	"math"

	"golang.org/x/image/vector"

	"underlay/geometry"
)

// outline is closed ways round what is to be filled, in pixels. What they go round in both
// directions as often is not filled.
type outline struct {
	verbs  []verb
	points []point
}

// verb is a step of an outline, and how many points it takes.
type verb uint8

const (
	move  verb = iota // 1
	line              // 1
	quad              // 2
	cubic             // 3
)

func (o *outline) reset() { o.verbs, o.points = o.verbs[:0], o.points[:0] }

func (o *outline) step(v verb, p ...point) {
	o.verbs = append(o.verbs, v)
	o.points = append(o.points, p...)
}

// add adds a path, its pieces closed, each point put where place says.
func (o *outline) add(path geometry.Path, place func(geometry.Point) point) {
	for _, p := range path {
		if len(p.Steps) == 0 {
			continue
		}
		o.step(move, place(p.Start))
		for _, s := range p.Steps {
			if s.Curved {
				o.step(cubic, place(s.C1), place(s.C2), place(s.To))
			} else {
				o.step(line, place(s.To))
			}
		}
	}
}

// bounds returns the pixels that may have ink.
func (o *outline) bounds() image.Rectangle {
	if len(o.points) == 0 {
		return image.Rectangle{}
	}
	low, high := o.points[0], o.points[0]
	for _, p := range o.points {
		low.x, low.y = min(low.x, p.x), min(low.y, p.y)
		high.x, high.y = max(high.x, p.x), max(high.y, p.y)
	}
	return image.Rect(pixel(math.Floor(low.x)), pixel(math.Floor(low.y)), pixel(math.Ceil(high.x)), pixel(math.Ceil(high.y)))
}

// draw gives the outline to a rasteriser whose first pixel is at from.
func (o *outline) draw(z *vector.Rasterizer, from image.Point) {
	at := func(p point) (x, y float32) {
		return float32(p.x - float64(from.X)), float32(p.y - float64(from.Y))
	}
	p := o.points
	for i, v := range o.verbs {
		switch v {
		case move:
			if i > 0 {
				z.ClosePath()
			}
			z.MoveTo(at(p[0]))
			p = p[1:]
		case line:
			z.LineTo(at(p[0]))
			p = p[1:]
		case quad:
			bx, by := at(p[0])
			cx, cy := at(p[1])
			z.QuadTo(bx, by, cx, cy)
			p = p[2:]
		case cubic:
			bx, by := at(p[0])
			cx, cy := at(p[1])
			dx, dy := at(p[2])
			z.CubeTo(bx, by, cx, cy, dx, dy)
			p = p[3:]
		}
	}
	if len(o.verbs) > 0 {
		z.ClosePath()
	}
}
