package job

import (
	"underlay/geometry"
)

// Job is a checked job: what to print on what. One made by ReadJob or by QuickJob is known
// good: every name is resolved, every length is in range.
type Job struct {
	Title    string
	Units    geometry.Unit
	Paper    Paper
	Printer  Printer
	Printing Printing
	Paints   []Paint
	Blocks   []*Block
	Items    []*Item
	// Source is the job file as it was read, byte for byte; for a job given by flags, a job
	// file that says the same.
	Source []byte
	// File is the job file's name as shown to the maker; "" for a job given by flags.
	File string
}
