package plan

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// one sets a single print out in the middle of the printable area.
func one(surface) repeat {
	return repeat{
		ways: func(l layout) ([]way, error) {
			var sites []Site
			s := Site{Origin: l.area.Centre(), Turn: l.pass.Turns.At(1, 1)}
			if l.holds(s) {
				sites = append(sites, s)
			} else if zone, ok := l.onZone(s); ok {
				return nil, fmt.Errorf("the print in the middle lies on %s, which is kept clear; write a smaller block, or repeat = \"placed\" and a place off it", words.Quote(zone.Name))
			}
			return []way{l.describeSingle(Choice{}, sites)}, nil
		},
		order: asListed,
		notes: func(layout, Choice) []string {
			return []string{"a print in the middle: on a cloth of another size lay the creases on the centre lines of this guide"}
		},
	}
}

// corners sets a print out in each corner of the printable area, each turned a quarter from the
// last, clockwise from the top left one; their tops out, in, or all up.
func corners(surface) repeat {
	return repeat{
		ways: func(l layout) ([]way, error) {
			sites, err := l.cornerSites()
			if err != nil {
				return nil, err
			}
			var kept []Site
			for _, s := range sites {
				if l.holds(s) {
					kept = append(kept, s)
				}
			}
			return []way{l.describeSingle(Choice{dropped: len(sites) - len(kept)}, kept)}, nil
		},
		order: byQuarter,
		notes: func(l layout, c Choice) []string {
			return append(l.droppedNote(c), "the prints go into the corners, so this guide serves this size of cloth alone")
		},
	}
}

// cornerSites returns the four places clockwise from the top left one. The error says that two of
// them lie on each other.
func (l layout) cornerSites() ([]Site, error) {
	area := l.area.Rect
	first, step := geometry.Angle(0), geometry.Angle(90)
	switch l.pass.Tops {
	case job.TopsIn:
		first = 180
	case job.TopsUp:
		step = 0
	}
	var sites []Site
	var boxes []geometry.Rect
	for i := range 4 {
		turn := (first + geometry.Angle(i)*step).Normal()
		box := l.pass.Block.Face.Turn(turn).Bounds()
		at := geometry.Pt(area.Min.X-box.Min.X, area.Min.Y-box.Min.Y)
		if i == 1 || i == 2 {
			at.X = area.Max.X - box.Max.X
		}
		if i == 2 || i == 3 {
			at.Y = area.Max.Y - box.Max.Y
		}
		sites, boxes = append(sites, Site{Origin: at, Turn: turn}), append(boxes, box.Move(at))
	}
	for i := range boxes {
		for _, other := range boxes[:i] {
			if over := boxes[i].Intersect(other); over.W() > geometry.Tolerance && over.H() > geometry.Tolerance && area.Grow(geometry.Tolerance).Holds(boxes[i]) {
				return nil, errors.New("the prints in two corners would lie on each other; write a smaller block, or a smaller border")
			}
		}
	}
	return sites, nil
}

// describeSingle says what prints give that have neither rows nor columns.
func (l layout) describeSingle(c Choice, sites []Site) way {
	w := l.describe(c, sites)
	w.RowCounts, w.ColumnCounts = nil, nil
	return w
}

// asListed prints in the order in which the places are listed.
func asListed(sites []Site, _ job.Hand) []int {
	order := make([]int, len(sites))
	for i := range order {
		order[i] = i
	}
	return order
}

// byQuarter prints one quarter after the other, in the order in which the hand keeps clear of wet
// paint; in each those nearest to the middle of all prints first.
func byQuarter(sites []Site, hand job.Hand) []int {
	var bounds geometry.Rect
	for i, s := range sites {
		at := geometry.Rect{Min: s.Origin, Max: s.Origin}
		if i == 0 {
			bounds = at
		}
		bounds = bounds.Union(at)
	}
	middle, turn := bounds.Centre(), quarters(hand)
	rank := func(i int) int { return slices.Index(turn, quarterOf(sites[i].Origin, middle, hand)) }
	order := asListed(sites, hand)
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(sites[a].Origin.Distance(middle), sites[b].Origin.Distance(middle)))
	})
	return order
}

// atLine is what is wrong in one line of the job file.
type atLine struct {
	line int
	text string
}

// linesError is several things wrong with a pass, each in its line.
type linesError []atLine

func (e linesError) Error() string {
	texts := make([]string, len(e))
	for i, l := range e {
		texts[i] = l.text
	}
	return words.InWords(texts)
}

// linesOf takes an error apart into what is wrong in which line; what has none is in line otherwise.
func linesOf(err error, otherwise int) linesError {
	var lines linesError
	if errors.As(err, &lines) {
		return lines
	}
	return linesError{{otherwise, err.Error()}}
}
