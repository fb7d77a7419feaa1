package main

import (
	"underlay/template/job"
	"underlay/template/jobfile"

	"github.com/spf13/pflag"
)

// overrideFlags adds the flags that say something in place of a job and do not stand in for one.
func overrideFlags(fs *pflag.FlagSet) *jobfile.Overrides {
	var o jobfile.Overrides
	textFlag(fs, &o.Extent, "extent", "", "WORD", "how much of the guide: full, or edges for nothing but the\nmarks outside the cloth")
	textFlag(fs, &o.Lines, "lines", "", "WORD", "fine, or strong to be seen through cloth")
	return &o
}

// itemOrSize says what --item is with a job file.
func itemOrSize(fs *pflag.FlagSet) {
	item := fs.Lookup("item")
	item.Usage = "with a JOB, the NAME of the one item to take;\nwithout, " + item.Usage
}

// overridden reads a job and changes it to what flags say. With a job file the flags for the item
// and the paper, which else stand in for one, are such flags too.
func (c *call) overridden(from jobFrom, o jobfile.Overrides) (*job.Job, error) {
	j, err := c.job(from)
	if err != nil {
		return nil, err
	}
	if from.file != "" {
		o.Item, o.Paper = from.quick.Item, from.quick.Paper
	}
	return j, jobfile.Override(j, o)
}
