package job

import (
	"slices"
)

// Repeat is a way of setting prints out, by its name in the job file.
type Repeat string

// The repeats.
const (
	Straight  Repeat = "straight"
	Brick     Repeat = "brick"
	HalfDrop  Repeat = "half-drop"
	Honeycomb Repeat = "honeycomb"
	Diagonal  Repeat = "diagonal"
	Frame     Repeat = "frame"
	Rings     Repeat = "rings"
	One       Repeat = "one"
	Corners   Repeat = "corners"
	Placed    Repeat = "placed"
	Tossed    Repeat = "tossed"
)

// repeatFacts is what holds of a repeat wherever it is asked for.
type repeatFacts struct {
	name  Repeat
	items []Shape     // that it can be set out on
	faces []FaceShape // of the blocks it takes; none: of any
	lattice, stepped, opens, slanted,
	oneGap, framed, ringed bool
	single, gapless bool
}

// repeats is the table of all repeats, the usual one first: a line each. How a repeat sets its
// prints out is said in the table of package plan.
func repeats() []repeatFacts {
	flat := []Shape{Rectangle, Round, Outline, FourSided}
	drum := append(slices.Clone(flat), Drum)
	all := append(slices.Clone(drum), Cone)
	return []repeatFacts{
		{name: Straight, items: all, lattice: true, opens: true},
		{name: Brick, items: all, lattice: true, stepped: true},
		{name: HalfDrop, items: all, lattice: true, stepped: true},
		{name: Honeycomb, items: drum, faces: []FaceShape{RoundFace, HexagonFace}, lattice: true, oneGap: true},
		{name: Diagonal, items: flat, lattice: true, slanted: true},
		{name: Frame, items: []Shape{Rectangle}, framed: true},
		{name: Rings, items: []Shape{Round}, ringed: true, oneGap: true},
		{name: One, items: all, single: true, gapless: true},
		{name: Corners, items: []Shape{Rectangle}, single: true, gapless: true},
		{name: Placed, items: all, single: true, gapless: true},
		{name: Tossed, items: flat, single: true, oneGap: true},
	}
}

// Repeats returns all repeats, the usual one first.
func Repeats() []Repeat {
	var names []Repeat
	for _, r := range repeats() {
		names = append(names, r.name)
	}
	return names
}

// RepeatsOn returns the repeats that can be set out on an item of a shape: a frame needs
// straight sides, rings a round edge, and on a shade the repeat must close.
func RepeatsOn(s Shape) []Repeat {
	var names []Repeat
	for _, r := range repeats() {
		if slices.Contains(r.items, s) {
			names = append(names, r.name)
		}
	}
	return names
}

// facts returns the line of a repeat; nothing holds of a name that is none.
func (r Repeat) facts() repeatFacts {
	for _, f := range repeats() {
		if f.name == r {
			return f
		}
	}
	return repeatFacts{}
}

// Faces returns the shapes of the faces that the repeat takes.
func (r Repeat) Faces() []FaceShape {
	if f := r.facts().faces; f != nil {
		return f
	}
	return FaceShapes()
}

// Lattice tells whether the repeat goes on and on both ways, in columns and rows.
func (r Repeat) Lattice() bool { return r.facts().lattice }

// Stepped tells whether each row, or column, is moved on from the last by the step of the pass.
func (r Repeat) Stepped() bool { return r.facts().stepped }

// Opens tells whether there are openings where four prints meet, to seat others in.
func (r Repeat) Opens() bool { return r.facts().opens }

// Slanted tells whether the whole is turned on the cloth, blocks and all.
func (r Repeat) Slanted() bool { return r.facts().slanted }

// OneGap tells whether one gap rules both ways.
func (r Repeat) OneGap() bool { return r.facts().oneGap }

// Framed tells whether prints go along the sides of the area, and leave its middle.
func (r Repeat) Framed() bool { return r.facts().framed }

// Single tells whether each print stands for itself, and no line of prints goes on from it.
func (r Repeat) Single() bool { return r.facts().single }

// Gapped tells whether the job says how far apart prints are; otherwise where they go says it.
func (r Repeat) Gapped() bool { return !r.facts().gapless }

// Ringed tells whether prints go round in rings.
func (r Repeat) Ringed() bool { return r.facts().ringed }
