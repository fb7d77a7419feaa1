package raster

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"math"
	"slices"

	"golang.org/x/image/vector"

	"underlay/geometry"
	"underlay/paper"
)

// mostPixels is the largest image that is drawn.
const mostPixels = 100_000_000

// Draw draws a page as an image so many pixels wide, as high as the page is in proportion, on white.
// Edges are smoothed: a pixel half covered has half the ink. No line is thinner than a pixel.
// The same page gives the same image. It fails where the page has no size, and where the image
// would have no pixels or more than 100 million.
func Draw(p paper.Page, width int) (*image.RGBA, error) {
	w, h := float64(p.Size.W), float64(p.Size.H)
	if !(w > 0 && h > 0) || math.IsInf(w+h, 0) {
		return nil, fmt.Errorf("the page is %g x %g mm; an image needs a width and a height above 0", w, h)
	}
	scale := float64(width) / w
	height := math.Max(1, math.Round(h*scale))
	if width < 1 || float64(width)*height > mostPixels {
		return nil, fmt.Errorf("an image of %d x %.0f pixels cannot be drawn; it has from 1 to 100 million pixels", width, height)
	}
	c := &canvas{image: image.NewRGBA(image.Rect(0, 0, width, int(height))), scale: scale, masks: map[look]*image.Alpha{}}
	draw.Draw(c.image, c.image.Bounds(), image.White, image.Point{}, draw.Src)
	for _, v := range p.Views {
		c.see(v.Picked())
		c.view.Draw(c)
		c.flush()
	}
	return c.image, nil
}

// canvas draws one view after another.
type canvas struct {
	image   *image.RGBA
	scale   float64 // pixels to a millimetre of the page
	view    paper.View
	clip    image.Rectangle // where the view's area lies
	z       vector.Rasterizer
	ink     image.Uniform
	lines   outline // strokes of one ink that wait to be filled at once
	pen     paper.Ink
	area    outline // used again for each fill and text
	corners []point // used again for each stroke
	masks   map[look]*image.Alpha
	times   map[look]int // how often the view has one, wherever on a pixel
	faces   [2]*face
}

// see goes on with another view.
func (c *canvas) see(v paper.View) {
	c.view = v
	c.count()
	a, b := c.place(v.Area.Min), c.place(v.Area.Max)
	c.clip = image.Rect(pixel(a.x), pixel(a.y), pixel(b.x), pixel(b.y)).Intersect(c.image.Bounds())
}

// pixel returns the edge of a pixel nearest to x, held to where images are.
func pixel(x float64) int { return int(math.Round(min(max(x, -mostPixels), mostPixels))) }

// point is a place in the image, in pixels.
type point struct{ x, y float64 }

// place returns where a point of the view's drawing lies.
func (c *canvas) place(p geometry.Point) point { return c.onPage(c.view.Place(p)) }

// onPage returns where a point of the page lies.
func (c *canvas) onPage(p geometry.Point) point {
	return point{float64(p.X) * c.scale, float64(p.Y) * c.scale}
}

// Patch fills an area.
func (c *canvas) Patch(p paper.Patch) {
	c.flush()
	if p.Whole && p.Shape.Often() && c.stamp(p.Fill) {
		return
	}
	path := p.Cut
	if p.Whole {
		path = p.Path()
	}
	c.area.reset()
	c.area.add(path, c.place)
	c.fill(&c.area, p.Ink)
}

// Line draws a line.
func (c *canvas) Line(l paper.Line) {
	if c.pen != l.Pen.Ink || len(c.lines.points) > mostWaiting {
		c.flush()
	}
	c.pen = l.Pen.Ink
	s := stroker{to: &c.lines, half: max(float64(l.Pen.Width)*c.scale, 1) / 2}
	for _, d := range l.Dashes {
		s.dashes = append(s.dashes, d*c.scale)
	}
	if !l.Whole {
		for _, r := range l.Cut {
			s.piece(c.chain(r.Piece), r.Piece.Closed, l.Phase(r)*c.scale)
		}
		return
	}
	for _, p := range l.Path() {
		s.piece(c.chain(p), p.Closed, 0)
	}
}

// mostWaiting is how many corners of strokes wait at most.
const mostWaiting = 1 << 18

// smooth is how far the straight lines that stand for a curve may leave it, in pixels.
const smooth = 0.05

// chain returns the corners of straight lines along a piece, good until the next one.
func (c *canvas) chain(p geometry.Piece) []point {
	c.corners = c.corners[:0]
	if len(p.Steps) == 0 {
		return nil
	}
	if slices.ContainsFunc(p.Steps, func(s geometry.Step) bool { return s.Curved }) {
		onPage := geometry.Path{p}.Map(c.view.Place)[0]
		for _, q := range paper.FlattenWithin(onPage, geometry.Length(smooth/c.scale)) {
			c.corners = append(c.corners, c.onPage(q))
		}
		return c.corners
	}
	c.corners = append(c.corners, c.place(p.Start))
	for _, s := range p.Steps {
		c.corners = append(c.corners, c.place(s.To))
	}
	return c.corners
}

// flush fills the strokes that wait.
func (c *canvas) flush() {
	if len(c.lines.points) > 0 {
		c.fill(&c.lines, c.pen)
		c.lines.reset()
	}
}

// fill fills an outline with ink, where the view shows.
func (c *canvas) fill(o *outline, ink paper.Ink) {
	box := o.bounds().Intersect(c.clip)
	if box.Empty() {
		return
	}
	c.z.Reset(box.Dx(), box.Dy())
	o.draw(&c.z, box.Min)
	c.z.Draw(c.image, box, c.paint(ink), image.Point{})
}

// paint returns an ink as an image of one colour.
func (c *canvas) paint(i paper.Ink) *image.Uniform {
	if now := (color.RGBA{i.R, i.G, i.B, 255}); c.ink.C != now {
		c.ink.C = now
	}
	return &c.ink
}
