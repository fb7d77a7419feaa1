package plan

import (
	"underlay/geometry"
	"underlay/template/job"
)

// Site is where one print goes: its origin in the item's frame, the block's turn, and its
// place in the repeat.
type Site struct {
	Origin geometry.Point
	Turn   geometry.Angle
	// Column and Row count from 1 at the top left; 0 where the repeat has none. In rings Row
	// is the ring, the outermost first, and Column the place in it.
	Column, Row int
	Part        int // of what the pass prints with: an index in its parts
	// Block is what is printed there; until the prints are worked out nil where it is the pass's own.
	Block *job.Block
	round int           // in which it is printed, where every other one comes first
	key   geometry.Site // index in the repeat's lattice, or along its run
	// Stretch is the laying in which a print of a cloth that is moved along is printed, from 1, and
	// InStretch its place in the order of a stretch; 0 of any other.
	Stretch, InStretch int
}

// block returns what is printed at the site, in a pass of a block of its own.
func (s Site) block(own *job.Block) *job.Block {
	if s.Block != nil {
		return s.Block
	}
	return own
}

// way is a way of centring with the sites it gives.
type way struct {
	Choice
	sites []Site
}

// repeat is one way of setting prints out.
type repeat struct {
	// ways lists every way of centring, set out. The error is a plain sentence that says why the
	// repeat cannot be set out at all, and what to write instead.
	ways func(layout) ([]way, error)
	// pitch is the step from print to print for a gap, where one follows from the other.
	pitch func(layout, job.Spacing) job.Spacing
	// next lists the steps, in keys, from a print to those it stands next to; with each goes
	// its opposite.
	next []geometry.Site
	// middle returns the site in the middle of four prints that meet, named by the key of the
	// first of them; nil where no four meet.
	middle func(layout, Choice, geometry.Site) Site
	// order returns the order of printing where it follows from the repeat itself; nil: from
	// the centre outwards, or row by row, as the job says.
	order func([]Site, job.Hand) []int
	// columns and rows tell whether these have their edges in line, so that ticks can name them.
	columns, rows bool
	// taped tells whether the printed field has straight edges to stretch tape along.
	taped bool
	// lattice is what prints are set out on, where they are; nil: there is none.
	lattice *lattice
	// byHeight tells that a row is what lies at one height, and not what has one Row.
	byHeight bool
	// sizes works out what other cloths the guide serves, and what one more print would take;
	// nil where that means nothing.
	sizes func(layout, Choice, []Site) otherSizes
	// notes says what else the maker should know of a choice; nil: nothing.
	notes func(layout, Choice) []string
}

// repeats is the table of how each repeat is set out on a surface that takes it.
func repeats() map[job.Repeat]func(surface) repeat {
	return map[job.Repeat]func(surface) repeat{
		job.Straight:  straight,
		job.Brick:     brick,
		job.HalfDrop:  halfDrop,
		job.Honeycomb: honeycomb,
		job.Diagonal:  diagonal,
		job.Frame:     frame,
		job.Rings:     rings,
		job.One:       one,
		job.Corners:   corners,
		job.Placed:    placed,
		job.Tossed:    tossed,
	}
}

// repeatOf returns the repeat a layout asks for.
func repeatOf(l layout) repeat {
	switch {
	case l.pass.Between != nil:
		return between(l)
	case l.pass.On != nil:
		return on()
	}
	return repeats()[l.pass.Repeat](l.area.surface)
}
