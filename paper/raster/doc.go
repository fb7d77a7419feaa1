// Package raster draws a page as an image: for screens, where a drawing has more marks than a
// picture in lines can carry. It shows what paper/pdf prints of the same page, from the same walk
// over its marks, and adds nothing.
//
// Frame: pixels, x to the right, y down, from the page's top left corner.
package raster
