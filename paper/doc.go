// Package paper puts drawings on sheets of paper at true size. It has never heard of a block.
//
// A [Drawing] is strokes, fills and labels, in millimetres in a frame of its maker's, x to the
// right, y down. [Tile] spreads a layout over the sheets of a [Stock]; [Sheets] makes a [Page] of
// each, with its name, check bars, and what joins it to its neighbours; [Flow] sets pages of
// text. A [Document] of pages is written by [WritePDF], or a drawing by [WriteSVG], and [Recover]
// brings back the file that a PDF carries inside.
//
// [Correction] is what a printer that is a little off needs drawn larger or smaller; nothing else
// here scales anything.
package paper
