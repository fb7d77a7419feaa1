// Package pdf writes pages of drawings as a PDF file at true size ([Write]) and brings back the
// file that one carries inside ([Recover]).
//
// Lengths come in millimetres from a page's top left corner, y down; in the file they are units of
// 1/72 inch from the bottom left corner, y up (ISO 32000-1, 8.3.2.3). The skeleton of the file
// is made by fpdf; the pages' contents are written here, to a thousandth of a unit. Nothing here
// decides what is on a page or where.
package pdf
