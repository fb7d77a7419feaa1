package geometry

import (
	"cmp"
	"math"
	"slices"
)

// Span is a stretch of a level line, from its left end to its right one.
type Span struct{ From, To Length }

// Spans are stretches of one level line from left to right, none of which touches another.
type Spans []Span

// Length returns how long all of them are together.
func (s Spans) Length() Length {
	var sum Length
	for _, a := range s {
		sum += a.To - a.From
	}
	return sum
}

// spansOf makes spans of stretches in any order: what touches becomes one, what has no length goes.
func spansOf(all []Span) Spans {
	all = slices.DeleteFunc(all, func(a Span) bool { return !(a.From < a.To) })
	slices.SortFunc(all, func(a, b Span) int { return cmp.Compare(a.From, b.From) })
	var s Spans
	for _, a := range all {
		if n := len(s); n > 0 && a.From <= s[n-1].To {
			s[n-1].To = max(s[n-1].To, a.To)
			continue
		}
		s = append(s, a)
	}
	return s
}

// And returns what lies in both.
func (s Spans) And(t Spans) Spans {
	var both []Span
	for i, j := 0, 0; i < len(s) && j < len(t); {
		both = append(both, Span{max(s[i].From, t[j].From), min(s[i].To, t[j].To)})
		if s[i].To < t[j].To {
			i++
		} else {
			j++
		}
	}
	return spansOf(both)
}

// Less returns what lies in s and not in t.
func (s Spans) Less(t Spans) Spans {
	outside, from := Spans{}, Length(math.Inf(-1))
	for _, a := range t {
		outside = append(outside, Span{from, a.From})
		from = a.To
	}
	return s.And(append(outside, Span{from, Length(math.Inf(1))}))
}

// Across returns what of the level line at y lies in o.
func (o Outline) Across(y Length) Spans {
	if o.radius > 0 {
		return discAcross(o.centre, o.radius, y)
	}
	var cuts []Length
	for i, a := range o.corners {
		b := o.corners[(i+1)%len(o.corners)]
		if (a.Y <= y) != (b.Y <= y) {
			cuts = append(cuts, a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y))
		}
	}
	slices.Sort(cuts)
	var all []Span
	for i := 0; i+1 < len(cuts); i += 2 {
		all = append(all, Span{cuts[i], cuts[i+1]})
	}
	return spansOf(all)
}

// discAcross returns what of the level line at y lies within r of a point.
func discAcross(centre Point, r, y Length) Spans {
	rise := y - centre.Y
	if !(rise.Abs() < r) {
		return nil
	}
	half := Length(math.Sqrt(float64(r*r - rise*rise)))
	return Spans{{centre.X - half, centre.X + half}}
}

// Near returns what of the level line at y lies within d of any of some points.
func (p Polygon) Near(d, y Length) Spans {
	var all []Span
	for _, c := range p {
		all = append(all, discAcross(c, d, y)...)
	}
	return spansOf(all)
}

// NearEdge returns what of the level line at y lies within d of the edge of o, inside or out.
func (o Outline) NearEdge(d, y Length) Spans {
	if o.radius > 0 {
		return discAcross(o.centre, o.radius+d, y).Less(discAcross(o.centre, o.radius-d, y))
	}
	// Within d of a side lies the rectangle along it, and a disc round each end.
	all := []Span(o.corners.Near(d, y))
	for i, a := range o.corners {
		b := o.corners[(i+1)%len(o.corners)]
		long := a.Distance(b)
		if long == 0 {
			continue
		}
		out := Point{(b.Y - a.Y) * d / long, (a.X - b.X) * d / long}
		all = append(all, PolygonOutline(Polygon{a.Add(out), b.Add(out), b.Sub(out), a.Sub(out)}).Across(y)...)
	}
	return spansOf(all)
}
