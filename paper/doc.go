// Package paper puts drawings on sheets of paper at true size. It has never heard of a block, and
// writes no files: its rooms paper/pdf and paper/svg do, from what [View.Draw] hands them.
//
// A [Drawing] is strokes, fills and labels, in millimetres in a frame of its maker's, x to the
// right, y down. [Tile] spreads a layout over the sheets of a [Stock]; [Sheets] makes a [Page] of
// each, with its name, check bars, and what joins it to its neighbours; [Flow] sets pages of
// text. A page's frame begins at its top left corner.
//
// [Correction] is what a printer that is a little off needs drawn larger or smaller; nothing else
// here scales anything.
package paper
