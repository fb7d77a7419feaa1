// Package geometry holds the plane figures everything else is built on: lengths, points,
// rectangles, polygons, transforms, lattices, and the footprint a carved block leaves.
//
// The frame is the same everywhere: x runs to the right, y runs down, lengths are millimetres.
// A turn is clockwise as seen. Nothing here has heard of paper, cloth or paint.
package geometry
