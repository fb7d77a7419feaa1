// Package bench makes the papers that are read: the bench sheets, the page about the whole set,
// the overview of a guide with its legend, and the tags for the backs of blocks.
//
// Pages that are read are in millimetres of the page; pictures on them are drawn small, tags are
// at true size.
package bench
