// Package sheets furnishes the sheets of a spread layout, a page each: the part of the drawing it
// shows, its panel with the map of all, its joins and neighbours, the bars to check it by; and the
// overview of them all. What is laid on a sheet keeps off what is drawn there, as far as there is
// room. It knows nothing of what the drawing is of.
package sheets
