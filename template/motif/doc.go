// Package motif is what the carved face of a block leaves on cloth, as closed paths: traced from the
// picture of its print, or where there is none a plain stand-in that shows which way is up.
//
// Frame: that of a block's face, its middle at (0, 0), true size, the top of the block upwards.
// Paths are filled where they wind round a point at all (the non-zero rule): what is printed goes
// round clockwise as seen, what is left plain within it the other way.
package motif
