package look

import (
	"underlay/geometry"
	"underlay/template/plan"
)

// sides is where the pattern of a shade that is laid flat ends and begins again: its two edges at the
// seam. The zero value is of a cloth that has no such thing.
type sides struct {
	flat  *plan.Development // of a cone
	cloth geometry.Rect
}

func sidesOf(ip *plan.ItemPlan) sides { return sides{ip.Area.Flat, ip.Area.Cloth} }

// edge is a line, by a point on it and the direction square to it, of length 1, on the side kept.
type edge struct{ on, inwards geometry.Point }

// edges returns the lines that leave the middle part of the shade between them: share 1 is the whole
// way round, 1/2 what is seen from the front.
func (x sides) edges(share float64) [2]edge {
	if x.flat == nil {
		half := x.cloth.W() / 2 * geometry.Length(share)
		middle := x.cloth.Centre()
		return [2]edge{
			{middle.Sub(geometry.Pt(half, 0)), geometry.Pt(1, 0)},
			{middle.Add(geometry.Pt(half, 0)), geometry.Pt(-1, 0)},
		}
	}
	half := x.flat.Angle / 2 * geometry.Angle(share)
	return [2]edge{
		{x.flat.Apex, geometry.Pt(1, 0).Turn(half)},
		{x.flat.Apex, geometry.Pt(-1, 0).Turn(-half)},
	}
}

// shown is a site of a print that crosses an edge, and the edge that it crosses there.
type shown struct {
	plan.Site
	edge edge
}

// again lists a site of a print that crosses one of the edges where it shows: at that edge, and where
// it comes in at the other.
func (x sides) again(s plan.Site) [2]shown {
	edges := x.edges(1)
	own, other, way := edges[0], edges[1], 1.0
	if x.flat == nil && s.Origin.X > x.cloth.Centre().X || x.flat != nil && s.Origin.X > x.flat.Apex.X {
		own, other, way = other, own, -1
	}
	twin := s
	if x.flat == nil {
		twin.Origin.X += x.cloth.W() * geometry.Length(way)
	} else {
		round := -x.flat.Angle * geometry.Angle(way) // to the right is against the clock about the apex above
		twin.Origin = s.Origin.Sub(x.flat.Apex).Turn(round).Add(x.flat.Apex)
		twin.Turn = (s.Turn + round).Normal()
	}
	return [2]shown{{s, own}, {twin, other}}
}
