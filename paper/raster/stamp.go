package raster

import (
	"image"
	"image/draw"
	"math"

	"underlay/geometry"
	"underlay/paper"
)

// look is a shape as it lies on the pixels: what it covers of them is worked out once, for all places
// where it lies so.
type look struct {
	shape *paper.Shape
	turn  geometry.Angle
	scale paper.Scale
	phase image.Point // of its origin from the corner of a pixel, in shares of a pixel
}

// shares is how many places within a pixel, across and down, are told apart: a stamp lies within
// 1/8 pixel of its place.
const shares = 4

// leastStamps is how often a look must come for a stamp to be quicker.
const leastStamps = 3

// count counts the looks of the view.
func (c *canvas) count() {
	c.times = map[look]int{}
	c.view.Stamps(func(paper.Stroke) {}, func(f paper.Fill) { c.times[c.look(f)]++ })
}

// look returns how a fill looks, wherever on a pixel.
func (c *canvas) look(f paper.Fill) look {
	return look{shape: f.Shape, turn: f.Place.Turn, scale: c.view.Scale}
}

// stamp fills a shape made for many places; false: a stamp is of no use.
func (c *canvas) stamp(f paper.Fill) bool {
	l := c.look(f)
	if c.times[l] < leastStamps {
		return false
	}
	at := c.place(f.Place.At)
	x, y := math.Round(at.x*shares), math.Round(at.y*shares)
	corner := image.Pt(int(math.Floor(x/shares)), int(math.Floor(y/shares)))
	l.phase = image.Pt(int(x)-corner.X*shares, int(y)-corner.Y*shares)
	mask, ok := c.masks[l]
	if !ok {
		mask = c.cover(l)
		c.masks[l] = mask
	}
	if mask == nil {
		return false
	}
	box := mask.Rect.Add(corner).Intersect(c.clip)
	draw.DrawMask(c.image, box, c.paint(f.Ink), image.Point{}, mask, box.Min.Sub(corner), draw.Over)
	return true
}

// cover works out what a look covers, from the corner of the pixel its origin is in; nil where that
// is larger than the image.
func (c *canvas) cover(l look) *image.Alpha {
	c.area.reset()
	c.area.add(l.shape.Turned(l.turn), func(p geometry.Point) point {
		at := c.onPage(c.view.Scale.Of(p))
		return point{at.x + float64(l.phase.X)/shares, at.y + float64(l.phase.Y)/shares}
	})
	box := c.area.bounds()
	if box.Dx() > c.image.Rect.Dx() || box.Dy() > c.image.Rect.Dy() {
		return nil
	}
	mask := image.NewAlpha(box)
	if !box.Empty() {
		c.z.Reset(box.Dx(), box.Dy())
		c.area.draw(&c.z, box.Min)
		c.z.DrawOp = draw.Src
		c.z.Draw(mask, box, image.Opaque, image.Point{})
	}
	return mask
}
