// Package guide draws a plan at true size: the guide of each face with its prints, signs, names
// and ticks, spread over sheets of paper; the practice piece; the ruler page.
//
// Drawings are in the frame of the item, in true millimetres, x to the right, y down. Nothing is
// worked out here that the plan has worked out.
package guide
