// Package plan works a job out: what fits, which way of centring wins, where each print goes, in
// what order, with which corner down first, where the tape goes, and what one print more would
// take. One file a repeat, one a shape.
//
// Everything lies in the frame of the item, in millimetres from the top left corner of its bounds
// as it lies face up: x to the right, y down, turns clockwise as seen. A shade lies flat. The
// package reads no file, knows no paper and draws nothing.
package plan
