package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// drumShade is the surface of a drum laid flat: x closes after its width.
type drumShade struct{ flatCloth }

// newDrumArea draws a drum laid flat in by its borders at both ends; the seam is no border.
func newDrumArea(item *job.Item) Area {
	a := newClothArea(item)
	r := a.Rect
	a.surface, a.around = drumShade{}, item.Size.W
	a.edge = append(geometry.Line(r.Min, geometry.Pt(r.Max.X, r.Min.Y)), geometry.Line(geometry.Pt(r.Min.X, r.Max.Y), r.Max)...)
	return a
}

func (drumShade) lattice(t lattice) repeat { return onDrum(t) }

func (drumShade) closes() bool { return true }

// holds takes what leaves the flat shade on one side to come in on the other.
func (drumShade) holds(a Area, f geometry.Outline) bool {
	if b := f.Bounds(); b.Min.Y < a.Rect.Min.Y-geometry.Tolerance || b.Max.Y > a.Rect.Max.Y+geometry.Tolerance {
		return false
	}
	for _, x := range []geometry.Length{-a.around, 0, a.around} {
		if len(a.zones) > 0 && !a.clearOfZones(f.Move(geometry.Pt(x, 0))) {
			return false
		}
	}
	return true
}

func (drumShade) wrapped(a Area, s Site, _ geometry.Point) Site {
	x := geometry.Length(math.Mod(float64(s.Origin.X), float64(a.around)))
	if x < -geometry.Tolerance {
		x += a.around
	}
	if x >= a.around-geometry.Tolerance {
		x = 0
	}
	s.Origin.X = max(0, x)
	return s
}

func (drumShade) crossesSeam(a Area, b *job.Block, s Site) bool {
	half := b.Face.Turn(s.Turn).Bounds().W() / 2
	return s.Origin.X-half < -geometry.Tolerance || s.Origin.X+half > a.around+geometry.Tolerance
}

func (drumShade) again(a Area, o geometry.Outline) []geometry.Outline {
	return []geometry.Outline{o.Move(geometry.Pt(-a.around, 0)), o.Move(geometry.Pt(a.around, 0))}
}

func (d drumShade) borders(a Area, b *job.Block, sites []Site) geometry.Edges {
	e := d.flatCloth.borders(a, b, sites)
	e.Left, e.Right = 0, 0
	return e
}

func (drumShade) room(l layout) geometry.Size {
	return geometry.Size{W: l.area.around - l.leastGap().Across, H: l.area.Rect.H()}
}

// onDrum sets a lattice out round a drum laid flat. A whole number goes round C, the width of
// the flat shade: n = floor(C / (w + g)) with the least gap g, and the gap is then C/n - w.
// Rows are as on any cloth. The prints that lie across the seam are named at the left edge.
func onDrum(t lattice) repeat {
	r := t.repeat()
	r.ways = func(l layout) ([]way, error) {
		n, _, err := t.closing(l, l.mostRoundDrum())
		if err != nil {
			return nil, err
		}
		if n == 0 {
			return nil, errNoneRound
		}
		gap := job.Spacing{Across: l.area.around/geometry.Length(n) - l.cell.W, Down: l.pass.Gap.Down.Least}
		if t.oneGap || l.pass.GapEven {
			gap.Down = gap.Across
		}
		ways := t.waysFrom(l, gap)
		for i := range ways {
			ways[i].Columns = n
		}
		return ways, nil
	}
	r.notes = func(l layout, c Choice) []string { return t.closingNotes(l, c, l.mostRoundDrum()) }
	r.sizes = t.drumSizes
	return r
}

// mostRoundDrum is how many prints go round with the least gap.
func (l layout) mostRoundDrum() int {
	pitch := l.cell.W + l.pass.Gap.Across.Least
	return int(math.Floor(float64((l.area.around + geometry.Tolerance) / pitch)))
}
