// Package geometry holds the plane figures everything else is built on: lengths and how they are
// read and written, points, angles, rectangles, polygons, outlines and how they are drawn in,
// lattices, where the face of a block comes to lie, and paths for a pen.
//
// The frame is the same everywhere: x runs to the right, y runs down, lengths are millimetres.
// A turn is clockwise as seen. Nothing here has heard of paper, cloth or paint.
package geometry
