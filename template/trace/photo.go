package trace

import (
	"errors"
	"fmt"
	"image"
	"math"

	"underlay/geometry"
	"underlay/template/picture"
)

// Print is one print of a block, measured.
type Print struct {
	Mask   *picture.Mask // PixelsPerMM to the millimetre, all or no paint on each
	Size   geometry.Size
	Inked  float64         // share of its bounds that carries paint
	Light  bool            // it is lighter than what it is on
	Fit    geometry.Length // how far marks and stitches are from where they should be, in the mean (root of the mean square)
	Worst  geometry.Length // and at the most
	Aslant geometry.Angle  // how far from straight above the picture was taken
	Scale  float64         // pixels of the photograph to the millimetre, where it has the fewest
	Blur   geometry.Length // smear of edges, a standard deviation
	Specks int             // pieces left out
	Pale   float64         // square millimetres that are neither print nor ground for sure, and were left out
}

// What a photograph has to be.
const (
	leastScale  = 4.0                        // pixels to the millimetre
	mostAslant  = 47 * geometry.Angle(1)     // degrees
	mostBlur    = 0.27 * geometry.Millimetre // as Print.Blur
	leastPaper  = 0.04                       // of the light that a camera can take, on white paper
	leastPixels = 400                        // of either side
	around      = 2.5 * geometry.Millimetre  // looked at round what is found roughly
)

var (
	errDark  = errors.New("this picture is too dark; take it in good, even light, by a window or outdoors in the shade")
	errBlur  = errors.New("this picture is blurred; hold the camera still, tap on the page to make it sharp there, and take it again")
	errSmall = errors.New("this picture is too small; take it again from nearer, so that the window page fills it, or do not let it be made smaller when it is sent")
)

// Photo measures the print in a photograph, or a scan, of the window page. The error is a plain
// sentence: why it cannot be measured, and what to do. It never guesses.
func Photo(img image.Image) (Print, error) {
	if b := img.Bounds(); min(b.Dx(), b.Dy()) < leastPixels {
		return Print{}, errSmall
	}
	g, f := newGrey(img), Window()
	v, smear, p, err := g.look(f)
	if err != nil {
		return Print{}, err
	}
	l, e, t, err := g.flat(v).inside()
	if err != nil {
		return Print{}, err
	}
	if !t.clear() {
		return Print{}, errEmpty
	}
	bounds, err := e.rough(t)
	if err != nil {
		return Print{}, err
	}
	// Seen alone, with a strip of ground, print and ground are both a good part of what is seen.
	near := bounds.Grow(around).Intersect(f.Opening.Grow(-edge))
	if own := e.tones(func(x, y int) bool {
		return near.Contains(geometry.Pt(geometry.Length(x)/coarse, geometry.Length(y)/coarse))
	}); own.clear() && (own.print > own.ground) == (t.print > t.ground) {
		t = own
	}
	p.Light, p.Pale = t.print > t.ground, e.pale(t)
	p.Mask, p.Specks = g.fine(v, l, t, smear, near)
	if p.Mask.W == 0 {
		return Print{}, errEmpty
	}
	p.Size = geometry.Size{W: geometry.Length(p.Mask.W) / PixelsPerMM, H: geometry.Length(p.Mask.H) / PixelsPerMM}
	p.Inked = p.Mask.Share()
	return p, nil
}

// look finds the window and says how it is seen.
func (g *grey) look(f Frame) (v view, smear geometry.Length, p Print, err error) {
	var seen []found
	candidates := g.candidates()
	for _, e := range candidates {
		if m, ok := g.mark(e); ok {
			seen = append(seen, m)
		}
	}
	sights, err := matched(f, newView(g), seen)
	if err != nil {
		if g.percentile(95) < 60 {
			err = errDark
		}
		return v, smear, p, err
	}
	v, p.Fit, p.Worst, err = g.placed(f, sights)
	if err != nil {
		return v, smear, p, err
	}
	p.Scale = math.Inf(1)
	for _, corner := range f.Opening.Polygon() {
		least, _ := v.stretch(pt(corner)).scales()
		p.Scale = min(p.Scale, least)
	}
	// Seen at an angle, a disc is as much shorter one way as the cosine of the angle.
	least, most := v.stretch(pt(f.Opening.Centre())).scales()
	p.Aslant = geometry.Degrees(math.Acos(min(least/most, 1)))
	smear, p.Blur = g.blur(f, v)
	paper := 0.0
	for _, m := range f.Marks {
		for _, way := range []point{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
			paper += g.at(v.at(pt(m.Centre).add(way.mul(1.15*float64(f.MarkRadius))))) / 16
		}
	}
	switch {
	case p.Aslant > mostAslant:
		err = fmt.Errorf("this picture is taken too much aslant, %.0f degrees; hold the camera straight above the window, and take it again", p.Aslant)
	case p.Scale < leastScale:
		err = fmt.Errorf("this picture has %.1f pixels to the millimetre, and %.0f are needed; take it again from nearer, so that the window page fills it, or do not let it be made smaller when it is sent", p.Scale, leastScale)
	case paper < leastPaper:
		err = errDark
	case p.Blur > mostBlur:
		err = errBlur
	}
	return v, smear, p, err
}

// Scaled returns the print as it is where a page came out of the printer so many times as large as it was
// drawn, across and down.
func (p Print) Scaled(across, down float64) Print {
	if across == 1 && down == 1 {
		return p
	}
	p.Size = geometry.Size{W: p.Size.W * geometry.Length(across), H: p.Size.H * geometry.Length(down)}
	from := p.Mask
	to := &picture.Mask{W: max(int(math.Round(float64(from.W)*across)), 1), H: max(int(math.Round(float64(from.H)*down)), 1)}
	for y := range to.H {
		for x := range to.W {
			to.Paint = append(to.Paint, from.At((2*x+1)*from.W/(2*to.W), (2*y+1)*from.H/(2*to.H)))
		}
	}
	p.Mask = to
	return p
}

// Sure returns how far off the size may be, about: what edges are smeared by, and twice what marks
// and stitches are off, but no less than a fifth of a millimetre.
func (p Print) Sure() geometry.Length { return max(0.2, p.Blur+2*p.Fit) }
