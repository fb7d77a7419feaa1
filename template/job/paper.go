package job

import (
	"underlay/geometry"
	"underlay/paper"
)

// UsualReach is the reach of a job that says nothing of it: room for ticks and their names.
const UsualReach = 25 * geometry.Millimetre

// ShortReach is how short the reach of such a job may be where that saves sheets: ticks and their
// figures still have room.
const ShortReach = 15 * geometry.Millimetre

// Paper says on what, and how, the guide is printed.
type Paper struct {
	Stock   paper.Stock
	Margin  geometry.Length // what the printer cannot reach, every edge
	Overlap geometry.Length // what neighbouring sheets share
	Reach   geometry.Length // how far the guide runs past the cloth
	// LeastReach is how far it does at the least: it may fall back to that where it saves sheets.
	LeastReach geometry.Length
	Extent     Extent
	Passes     Passes
	Lines      Lines
}

// Extent is how much of the guide is printed.
type Extent string

// The extents.
const (
	FullExtent  Extent = "full"
	EdgesExtent Extent = "edges"
)

// Passes is how the passes of a face share its guide.
type Passes string

// The ways: all passes on one guide, or a guide for each.
const (
	PassesTogether Passes = "together"
	PassesApart    Passes = "apart"
)

// Lines is how wide the lines are drawn.
type Lines string

// The line weights.
const (
	FineLines   Lines = "fine"
	StrongLines Lines = "strong"
)
