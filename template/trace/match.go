package trace

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/words"
)

// mostOfEach is how many candidates with as many holes are tried for each mark, the largest first:
// of what looks like a button and is none, there is little.
const mostOfEach = 8

// astray is how far a hole may be from where four marks' middles put it, in shares of a mark's
// radius: 1 mm. The lens, and a disc's middle that is not the middle of its picture, take a part.
const astray = 0.125

// matched finds the four marks among what was found, and returns what was seen of them: each disc,
// and each hole. The error says which mark is missing, and what to do.
func matched(f Frame, v view, all []found) ([]sight, error) {
	byHoles := map[int][]found{}
	slices.SortFunc(all, func(a, b found) int { return cmp.Compare(b.e.xx+b.e.yy, a.e.xx+a.e.yy) })
	for _, m := range all {
		if n := len(m.holes); len(byHoles[n]) < mostOfEach {
			byHoles[n] = append(byHoles[n], m)
		}
	}
	var missing []string
	for _, m := range f.Marks {
		if len(byHoles[len(m.Holes)]) == 0 {
			missing = append(missing, fmt.Sprintf("the one with %s holes, at the %s", []string{"two", "three", "four", "five"}[len(m.Holes)-fewestHoles], m.Corner))
		}
	}
	switch {
	case len(missing) == len(f.Marks):
		return nil, errNoMarks
	case len(missing) > 0:
		return nil, fmt.Errorf("of the window page's four buttons, %s %s not to be seen whole; %s", words.InWords(missing), isAre(len(missing)), seeAll)
	}

	best, least, mirrored := []sight(nil), math.Inf(1), false
	for _, a := range byHoles[len(f.Marks[0].Holes)] {
		for _, b := range byHoles[len(f.Marks[1].Holes)] {
			for _, c := range byHoles[len(f.Marks[2].Holes)] {
				for _, d := range byHoles[len(f.Marks[3].Holes)] {
					four := [4]found{a, b, c, d}
					sights, off := agreed(f, v, four)
					if off >= min(least, astray) {
						continue
					}
					best, least = sights, off
					mirrored = cross(b.e.at.sub(a.e.at), c.e.at.sub(b.e.at)) < 0
				}
			}
		}
	}
	switch {
	case best == nil:
		return nil, errOtherMarks
	case mirrored:
		return nil, errMirrored
	}
	return best, nil
}

// agreed maps the sheet by the middles of four marks, and returns what was seen of each, with the
// largest distance of a hole from where it is to be, in shares of a mark's radius.
func agreed(f Frame, v view, four [4]found) (sights []sight, off float64) {
	var from, to []point
	for i, m := range f.Marks {
		from, to = append(from, v.sheet.apply(pt(m.Centre))), append(to, v.photo.apply(four[i].e.at))
	}
	h, ok := fitted(from, to)
	if !ok {
		return nil, math.Inf(1)
	}
	v.h = h
	for i, m := range f.Marks {
		seen := four[i]
		sights = append(sights, sight{pt(m.Centre), float64(f.MarkRadius), seen.e.at})
		s := v.stretch(pt(m.Centre))
		for _, hole := range m.Holes {
			// The hole as it lies in its mark, put to the mark that was seen.
			at := seen.e.at.add(v.at(pt(hole)).sub(v.at(pt(m.Centre))))
			near := slices.MinFunc(seen.holes, func(a, b point) int { return cmp.Compare(a.distance(at), b.distance(at)) })
			off = max(off, s.undo(near.sub(at)).norm()/float64(f.MarkRadius))
			sights = append(sights, sight{pt(hole), float64(f.HoleRadius), near})
		}
	}
	if math.IsNaN(off) {
		off = math.Inf(1)
	}
	return sights, off
}

// seeAll is what to do where a mark is not seen.
const seeAll = "take the picture again with all four in it, none covered, none in shade or glare, and sharp"

var (
	errNoMarks    = errors.New("the window page's four buttons are not to be seen in this picture; print the page that underlay ruler --window makes, and " + seeAll)
	errOtherMarks = errors.New("what looks like buttons in this picture does not stand as those of the window page do; lay the page flat, and " + seeAll)
	errStitches   = errors.New("too few of the dots round the window are to be seen where they should be; lay the page quite flat, nothing on its dots, and take the picture again")
	errMirrored   = errors.New("this picture is mirrored: left and right are changed over; take it with the camera at the phone's back, or turn it round (mirror it) and save it")
)

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

// withStitches looks for the stitches where the view has them, and returns the sights with those
// found.
func (g *grey) withStitches(f Frame, v view, sights []sight) []sight {
	all := slices.Clone(sights)
	for _, s := range f.Stitches {
		if seen, ok := g.stitch(v.ellipse(pt(s), float64(f.StitchRadius))); ok {
			all = append(all, sight{pt(s), float64(f.StitchRadius), seen})
		}
	}
	return all
}

// stitch returns the middle of a stitch that is to be near an ellipse. ok is false where none is,
// or something else with it.
func (g *grey) stitch(e ellipse) (point, bool) {
	const reach = 2.1 // times its radius: the window's line and the bars stay outside
	start := e.at
	for range 3 {
		p, ok := g.patch(e, 1.6, reach)
		if !ok {
			return point{}, false
		}
		var sum, sx, sy float64
		p.each(func(at point, paper float64) {
			if e.away(at) < 1.6 {
				sum, sx, sy = sum+1-paper, sx+(1-paper)*at.x, sy+(1-paper)*at.y
			}
		})
		long, short := e.axes()
		if area := sum / (math.Pi * long * short); !(area > 0.6 && area < 1.5) {
			return point{}, false
		}
		e.at = point{sx / sum, sy / sum}
		if start.distance(e.at) > long*1.6 {
			return point{}, false
		}
	}
	return e.at, true
}

// The most that marks and stitches may be off, in millimetres: a sheet that is not flat, or not the
// window page.
const (
	mostRMS   = 0.25
	mostWorst = 0.8
)

// placed returns the view in which what was seen of marks and stitches lies where it should, and how
// far from that it does, on the sheet: in the mean (root of the mean square), and at the worst.
func (g *grey) placed(f Frame, sights []sight) (v view, mean, worst geometry.Length, err error) {
	v, ok := newView(g).fitted(sights)
	if !ok {
		return v, 0, 0, errOtherMarks
	}
	marks := len(sights)
	for range 2 {
		all := g.withStitches(f, v, sights)
		if v, ok = v.fitted(all); !ok {
			return v, 0, 0, errOtherMarks
		}
		if 2*(len(all)-marks) < len(f.Stitches) {
			return v, 0, 0, errStitches
		}
		sights = all[:marks]
		var square float64
		worst = 0
		for _, s := range all {
			off := v.off(s)
			square += off * off
			worst = max(worst, geometry.Length(off))
		}
		mean = geometry.Length(math.Sqrt(square / float64(len(all))))
	}
	if !(mean <= mostRMS) || !(worst <= mostWorst) {
		return v, mean, worst, fmt.Errorf("the buttons and dots of the window page are up to %s out of place in this picture; lay the page quite flat, hold the camera further away, and take the picture again",
			geometry.UnitMM.Format(geometry.Length(math.Ceil(float64(worst)*10)/10)))
	}
	return v, mean, worst, nil
}
