// Package trace measures a block from a photograph of one print made inside the window that the
// window page shows: it finds the window's four marks, takes the view and the lens out, evens the
// light, and parts the print from what it is printed on.
//
// Frames: the window's, in millimetres from the top left corner of its opening, x to the right, y
// down; and the photograph's, in pixels from its top left corner, the middle of the first pixel at
// (0.5, 0.5). Brightness is light as it falls on the sensor, 0 to 1, the camera's curve taken out.
package trace
