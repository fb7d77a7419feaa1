package job

import (
	"math"
	"slices"

	"underlay/geometry"
)

// Dab is a colour put on a part of a block's face: where several would lie, the first has it. What
// none has carries no paint.
type Dab struct {
	Colour string
	Part   FacePart
	// Size is how far across the middle is, how far a corner reaches from its point, or how wide
	// the edge is; 0 of the rest.
	Size geometry.Length
}

// FacePart is a part of a block's face that is dabbed on its own.
type FacePart string

// The parts. TheRest is what no dab before it takes.
const (
	TheMiddle  FacePart = "middle"  // a disc round the middle of the face's bounds
	TheCorners FacePart = "corners" // within a distance of any corner of the face that juts out
	TheEdge    FacePart = "edge"    // within a distance of the face's edge
	TheRest    FacePart = "rest"
)

// DabAt returns which of the dabs a point of a face has its colour from: the first whose part holds
// it; -1 where none does. The middle of the face's bounds is at (0, 0).
func DabAt(dabs []Dab, face geometry.Outline, at geometry.Point) int {
	return slices.IndexFunc(dabs, func(d Dab) bool {
		switch d.Part {
		case TheMiddle:
			return at.Norm() <= d.Size/2
		case TheCorners:
			return slices.ContainsFunc(face.Corners().Jutting(), func(c geometry.Point) bool { return at.Distance(c) <= d.Size })
		case TheEdge:
			if centre, r, round := face.Round(); round {
				return (r - at.Distance(centre)).Abs() <= d.Size
			}
			return face.Corners().EdgeDistance(at) <= d.Size
		}
		return true
	})
}

// DabSpans returns what each dab has of the level line at y across a face, which may be turned about
// (0, 0), the middle of its bounds when it is not.
func DabSpans(dabs []Dab, face geometry.Outline, y geometry.Length) []geometry.Spans {
	left := face.Across(y)
	all := make([]geometry.Spans, len(dabs))
	for i, d := range dabs {
		switch d.Part {
		case TheMiddle:
			all[i] = left.And(geometry.CircleOutline(geometry.Point{}, d.Size/2).Across(y))
		case TheCorners:
			all[i] = left.And(face.Corners().Jutting().Near(d.Size, y))
		case TheEdge:
			all[i] = left.And(face.NearEdge(d.Size, y))
		default:
			all[i] = left
		}
		left = left.Less(all[i])
	}
	return all
}

// dabLines is about how many level lines the area of a part is added up from: enough for a 10,000th
// of the face.
const dabLines = 1000

// DabShares returns how much of the area of a face each dab has, 0 to 1.
func DabShares(dabs []Dab, face geometry.Outline) []float64 {
	shares := make([]float64, len(dabs))
	all := 0.0
	levels := dabLevels(dabs, face)
	high := levels[len(levels)-1] - levels[0]
	for i, from := range levels[:len(levels)-1] {
		deep := levels[i+1] - from
		lines := math.Ceil(float64(deep/high) * dabLines)
		step := deep / geometry.Length(lines)
		for k := range int(lines) {
			y := from + step*(geometry.Length(k)+0.5)
			all += float64(face.Across(y).Length() * step)
			for k, s := range DabSpans(dabs, face, y) {
				shares[k] += float64(s.Length() * step)
			}
		}
	}
	for k := range shares {
		shares[k] /= all
	}
	return shares
}

// LeastDab is the least share of a face that can be dabbed.
const LeastDab = 0.001

// Undabbed tells whether dabs leave some of a face without paint.
func Undabbed(dabs []Dab, face geometry.Outline) bool {
	left := 1.0
	for _, share := range DabShares(dabs, face) {
		left -= share
	}
	return left >= LeastDab
}

// dabLevels returns the top and the bottom of a face, and between them where what a dab has of a level
// line may leap: along level sides, and as far from them as an edge is wide.
func dabLevels(dabs []Dab, face geometry.Outline) []geometry.Length {
	bounds := face.Bounds()
	levels := []geometry.Length{bounds.Min.Y, bounds.Max.Y}
	add := func(y geometry.Length) {
		if bounds.Min.Y < y && y < bounds.Max.Y {
			levels = append(levels, y)
		}
	}
	corners := face.Corners()
	for i, a := range corners {
		if a.Y != corners[(i+1)%len(corners)].Y {
			continue
		}
		add(a.Y)
		for _, d := range dabs {
			if d.Part == TheEdge {
				add(a.Y - d.Size)
				add(a.Y + d.Size)
			}
		}
	}
	slices.Sort(levels)
	return slices.Compact(levels)
}
