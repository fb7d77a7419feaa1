// Package template is the trade: it reads the job file that says which carved blocks to print on
// what cloth, works out what fits, where each print goes and in what order, and says and draws
// the outcome.
//
// A value goes one way. [ReadJob], or [QuickJob] from flags, makes a [Job] that is known good;
// [NewPlan] works it out; [Plan.FitText] says what fits, [Plan.Document] and [Plan.Layout] draw
// it for package paper to write. A job without passes is a [Shelf].
//
// Everything lies in the frame of the item, in millimetres from the top left corner of its bounds
// as it lies face up: x to the right, y down, turns clockwise as seen. A shade lies flat.
package template
