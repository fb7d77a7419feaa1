// Package job is what a maker asks for: blocks, items and passes, the paper, the printer and the
// way of working. A [Job] made by package jobfile is checked and known good: names are resolved,
// lengths are in range.
//
// Lengths are true ones, in the frame of the item: from the top left corner of its bounds as it
// lies face up, x to the right, y down, turns clockwise as seen. The package plans nothing and reads
// nothing.
package job
