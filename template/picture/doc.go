// Package picture is pictures of one print of a block: read from what cameras and scanners write,
// parted into paint and cloth, cropped to the print. It has never heard of a job.
//
// Frame: pixels, x to the right, y down, from the top left corner.
package picture
