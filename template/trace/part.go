package trace

import (
	"errors"
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/picture"
)

// tones are how the print differs from the ground it is on, in shares of the ground's light.
type tones struct {
	ground, print float64 // in the middle of either
	spread        float64 // of the ground: a standard deviation
}

// half is where an edge is: half way between the two, in light. There, what a blurred edge has lost
// on one side it has won on the other.
func (t tones) half() float64 { return (t.ground + t.print) / 2 }

// inked tells whether a share of the ground's light is print.
func (t tones) inked(share float64) bool {
	if t.print > t.ground {
		return share > t.half()
	}
	return share < t.half()
}

// Marks of the window's own edge: what is within edge of it, in millimetres, is not looked at, and
// what keeps within sliver of it is the line of the window, or the shadow of where it was cut out.
const (
	edge   = 1.0
	sliver = 3.0
)

var (
	errEmpty = errors.New("nothing is printed inside the window, or too pale to be told from what it is on; press the block once inside it, with dark paint, and take a picture of that")
	errEdge  = errors.New("the print touches the edge of the window; leave a strip of cloth or paper clear all round it, 5 mm or more")
)

// inside evens the light in the opening and tells the print from the ground, roughly.
func (o *opening) inside() (l *lamp, e *opening, t tones, err error) {
	near := func(x, y int) float64 { // the edge, in millimetres
		return (float64(min(x, y, o.w-1-x, o.h-1-y)) + 0.5) / coarse
	}
	// The print keeps clear of the edge: along it, there is ground.
	l, ok := o.lit(func(x, y int) bool { return near(x, y) > 2 && near(x, y) < 8 }, 2)
	for range 3 {
		if !ok {
			return nil, nil, t, errEmpty
		}
		e = o.evened(l)
		t = e.tones(func(x, y int) bool { return near(x, y) > 2 })
		// Blurred edges are neither.
		print := make([]float64, len(e.light))
		for i, share := range e.light {
			if t.inked(share) {
				print[i] = 1
			}
		}
		print = boxed(print, o.w, o.h, 2)
		l, ok = o.lit(func(x, y int) bool { return near(x, y) > 2 && print[y*o.w+x] == 0 }, 3)
	}
	if !ok {
		return nil, nil, t, errEmpty
	}
	return l, e, t, nil
}

// shareBins is how many steps a share of the ground's light is counted in, on share / (share + 1):
// the ground is in the middle of that, whatever is darker below, and whatever is lighter above it.
const shareBins = 4096

func shareBin(share float64) int { return int(shareBins * share / (share + 1)) }

// binShare returns the share in the middle of a bin.
func binShare(bin int) float64 {
	v := (float64(bin) + 0.5) / shareBins
	return v / (1 - v)
}

// tones parts the shares of a part of the opening in two by Otsu's threshold. The class of which the
// ground's light is more typical is the ground.
func (e *opening) tones(part func(x, y int) bool) tones {
	bins := make([]int, shareBins)
	var histogram [256]int
	for i, share := range e.light {
		if part(i%e.w, i/e.w) {
			bin := shareBin(max(share, 0))
			bins[bin]++
			histogram[bin*256/shareBins]++
		}
	}
	cut := (int(picture.Otsu(histogram)) + 1) * shareBins / 256
	// The share that so many of a class do not exceed.
	quantile := func(from, to int, of float64) float64 {
		all := 0
		for _, n := range bins[from:to] {
			all += n
		}
		left := int(of * float64(all))
		for i, n := range bins[from:to] {
			if left -= n; left < 0 {
				return binShare(from + i)
			}
		}
		return 1
	}
	// Edges, which are neither, lie between: beyond the middle of each class there are few.
	dark, light := quantile(0, cut, 0.5), quantile(cut, shareBins, 0.5)
	t := tones{ground: light, print: quantile(0, cut, 0.4)}
	from, to := cut, shareBins
	if math.Abs(math.Log(max(dark, faint))) < math.Abs(math.Log(max(light, faint))) {
		t = tones{ground: dark, print: quantile(cut, shareBins, 0.6)}
		from, to = 0, cut
	}
	// By the law of errors two thirds of the ground lie within the deviation.
	t.spread = (quantile(from, to, 0.84) - quantile(from, to, 0.16)) / 2
	return t
}

// clear tells whether print and ground can be told apart for sure.
func (t tones) clear() bool {
	apart := math.Abs(t.print - t.ground)
	return apart >= 0.2*max(t.print, t.ground) && apart >= 5*t.spread
}

// rough returns where the print is, at the coarse scale, in millimetres, and all that may be part of
// it.
func (e *opening) rough(t tones) (geometry.Rect, error) {
	inked := make([]bool, len(e.light))
	for i, share := range e.light {
		x, y := i%e.w, i/e.w
		inked[i] = min(x, y, e.w-1-x, e.h-1-y) >= edge*coarse && t.inked(share)
	}
	all, _ := blobs(inked, e.w)
	var bounds geometry.Rect
	for _, b := range all {
		deep := min(b.right, b.foot, e.w-b.left, e.h-b.top)
		if !b.dark || b.n < coarse*coarse/4 || deep <= sliver*coarse {
			continue
		}
		if min(b.left, b.top, e.w-b.right, e.h-b.foot) <= (edge+0.5)*coarse {
			return bounds, errEdge
		}
		box := geometry.Rect{Min: geometry.Pt(geometry.Length(b.left), geometry.Length(b.top)), Max: geometry.Pt(geometry.Length(b.right), geometry.Length(b.foot))}
		if bounds.Empty() {
			bounds = box
		} else {
			bounds = bounds.Union(box)
		}
	}
	if bounds.Empty() {
		return bounds, errEmpty
	}
	bounds.Min, bounds.Max = bounds.Min.Mul(1.0/coarse), bounds.Max.Mul(1.0/coarse)
	return bounds, nil
}

// pale returns how many square millimetres inside the window are neither like the print nor like the
// ground, edges aside: paler paint, perhaps, that was taken for ground.
func (e *opening) pale(t tones) float64 {
	between := make([]float64, len(e.light))
	for i, share := range e.light {
		if off := (share - t.ground) / (t.print - t.ground); off > paleFrom && off < 0.5 {
			between[i] = 1
		}
	}
	// All of a square of 5, 1.25 mm: an edge is narrower.
	n := 0
	for i, all := range boxed(between, e.w, e.h, 2) {
		x, y := i%e.w, i/e.w
		if all > 0.99 && min(x, y, e.w-1-x, e.h-1-y) >= sliver*coarse {
			n++
		}
	}
	return float64(n) / coarse / coarse
}

// paleFrom is how much of the way from ground to print is no more the ground's own unevenness.
const paleFrom = 0.2

// PixelsPerMM is the scale of a mask that Photo returns.
const PixelsPerMM = 20

// fine tells print from ground at the scale of the mask, in a part of the opening, and returns it
// without specks, cropped; specks is how many there were.
func (g *grey) fine(v view, l *lamp, t tones, smear geometry.Length, part geometry.Rect) (m *picture.Mask, specks int) {
	left, top := int(part.Min.X*PixelsPerMM), int(part.Min.Y*PixelsPerMM)
	w, h := int(part.Max.X*PixelsPerMM)-left, int(part.Max.Y*PixelsPerMM)-top
	shares := make([]float32, w*h)
	for i := range shares {
		p := point{(float64(left+i%w) + 0.5) / PixelsPerMM, (float64(top+i/w) + 0.5) / PixelsPerMM}
		shares[i] = float32(g.at(v.at(p)) / l.of(p))
	}
	inked := make([]bool, w*h)
	for i, share := range sharpened(shares, w, float64(smear)*PixelsPerMM) {
		inked[i] = t.inked(float64(share))
	}
	all, labels := blobs(inked, w)
	kept, specks := keptOf(all)
	r := blob{left: w, top: h}
	for i, b := range all {
		if kept[i] && b.dark {
			r.add(b)
		}
	}
	m = &picture.Mask{W: max(r.right-r.left, 0), H: max(r.foot-r.top, 0)}
	for y := r.top; y < r.foot; y++ {
		for x := r.left; x < r.right; x++ {
			// A pinhole of noise belongs to the print round it.
			paint := uint8(0)
			if kept[labels[y*w+x]] {
				paint = 255
			}
			m.Paint = append(m.Paint, paint)
		}
	}
	return m, specks
}

// What is noise and no print, and the most a speck may have, in pixels of the mask.
const (
	noise     = PixelsPerMM * PixelsPerMM / 10
	mostSpeck = 4 * PixelsPerMM * PixelsPerMM
)

// keptOf tells which blobs are print. A piece is a speck where it is smaller than a thousandth of all
// print, and than a twentieth of the usual piece: of those that, the largest first, hold half of the
// print, the smallest. Where pieces so small are a two hundredth of the print or more together, they
// are meant: a border of dots.
func keptOf(all []blob) (kept []bool, specks int) {
	var sizes []int
	sum := 0
	for _, b := range all {
		if b.dark && b.n >= noise {
			sizes = append(sizes, b.n)
			sum += b.n
		}
	}
	slices.Sort(sizes)
	usual, most := 0, sum
	for i := len(sizes) - 1; i >= 0 && most > sum/2; i-- {
		usual = sizes[i]
		most -= usual
	}
	least, small := min(sum/1000, usual/20, mostSpeck), 0
	for _, n := range sizes {
		if n < least {
			small += n
		}
	}
	if small*200 > sum {
		least = 0
	}
	kept = make([]bool, len(all))
	for i, b := range all {
		switch {
		case b.dark && b.n >= max(least, noise):
			kept[i] = true
		case b.dark && b.n >= noise:
			specks++
		}
	}
	for i, b := range all {
		if !b.dark && b.in >= 0 && b.n < noise/4 {
			kept[i] = kept[b.in]
		}
	}
	return kept, specks
}
