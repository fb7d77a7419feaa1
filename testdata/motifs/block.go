package motifs

import (
	"image"
	"image/draw"
	"math"

	"golang.org/x/image/vector"

	"underlay/template/picture"
)

// dotsPerMM is the size of the pictures; margin is the plain cloth round the print, in millimetres.
const (
	dotsPerMM = 8
	margin    = 2
)

// point is a place on the face, in millimetres.
type point struct{ x, y float64 }

func (p point) add(q point) point     { return point{p.x + q.x, p.y + q.y} }
func (p point) sub(q point) point     { return point{p.x - q.x, p.y - q.y} }
func (p point) times(k float64) point { return point{p.x * k, p.y * k} }
func (p point) left() point           { return point{p.y, -p.x} }
func (p point) length() float64       { return math.Hypot(p.x, p.y) }
func (p point) unit() point           { return p.times(1 / max(p.length(), 1e-9)) }
func (p point) turned(degrees float64) point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return point{p.x*cos - p.y*sin, p.x*sin + p.y*cos}
}

// mix returns the point a share t of the way from p to q.
func mix(p, q point, t float64) point { return p.add(q.sub(p).times(t)) }

// loop is a closed way through points, close enough together to look round.
type loop []point

// block is a face being carved: what is inked, and what is cut away from it, one over the other.
type block struct {
	w, h   float64
	layers []layer
}

type layer struct {
	loop loop
	cut  bool
}

// ink leaves what is in the loops standing.
func (b *block) ink(loops ...loop) {
	for _, l := range loops {
		b.layers = append(b.layers, layer{l, false})
	}
}

// cut takes what is in the loops away.
func (b *block) cut(loops ...loop) {
	for _, l := range loops {
		b.layers = append(b.layers, layer{l, true})
	}
}

// fit stretches all that has been carved so that what is inked reaches every edge of the face.
func (b *block) fit() {
	low, high := point{math.Inf(1), math.Inf(1)}, point{math.Inf(-1), math.Inf(-1)}
	for _, l := range b.layers {
		for _, p := range l.loop {
			if !l.cut {
				low.x, low.y = min(low.x, p.x), min(low.y, p.y)
				high.x, high.y = max(high.x, p.x), max(high.y, p.y)
			}
		}
	}
	for _, l := range b.layers {
		for i, p := range l.loop {
			l.loop[i] = point{((p.x-low.x)/(high.x-low.x) - 0.5) * b.w, ((p.y-low.y)/(high.y-low.y) - 0.5) * b.h}
		}
	}
}

// print returns the block's print with a margin round it.
func (b *block) print() *picture.Mask {
	w, h := int(math.Round((b.w+2*margin)*dotsPerMM)), int(math.Round((b.h+2*margin)*dotsPerMM))
	paint := image.NewAlpha(image.Rect(0, 0, w, h))
	for _, l := range b.layers {
		z := vector.NewRasterizer(w, h)
		for i, p := range l.loop {
			if x, y := dot(p.x+b.w/2), dot(p.y+b.h/2); i == 0 {
				z.MoveTo(x, y)
			} else {
				z.LineTo(x, y)
			}
		}
		z.ClosePath()
		mask := image.NewAlpha(paint.Rect)
		z.DrawOp = draw.Src
		z.Draw(mask, mask.Rect, image.Opaque, image.Point{})
		for i, m := range mask.Pix {
			if l.cut {
				paint.Pix[i] = min(paint.Pix[i], 255-m)
			} else {
				paint.Pix[i] = max(paint.Pix[i], m)
			}
		}
	}
	return &picture.Mask{W: w, H: h, Paint: paint.Pix}
}

// dot returns where a coordinate from the face's edge lies, in pixels, to a 64th: sines and square roots
// differ from machine to machine in their last bits.
func dot(mm float64) float32 { return float32(math.Round((mm+margin)*dotsPerMM*64) / 64) }
