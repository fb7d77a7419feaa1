package main

import (
	"fmt"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

const fitHelp = `underlay fit JOB [--item NAME] [--paper NAME] [...] [--json]
underlay fit JOB --count 5x5 [--json]
underlay fit --item SIZE --border LENGTH --block SIZE --gap LENGTH [...]

Works out what fits, and prints it: for every item and pass the ways to centre
the pattern, a print or a joint between two prints on each centre line, with the
prints and the borders each gives; the one taken, and why; what one more print
across or down would take; passes that lie on each other; which sizes of cloth
one guide serves; the tape lines; the prints by number; and how many sheets of
each paper a guide takes. A job of blocks and items without any pass, a maker's
shelf, gives a table of every block on every item, 1 mm apart or as --gap says.
With --count it says what exactly so many prints across and down take: the cloth,
or the gaps that give them on this cloth, or the largest block. It writes no file.

JOB is a job file, or - for standard input. Without one, the flags say what one
item and one block measure.

    underlay fit reading-nook.toml
    underlay fit reading-nook.toml --item "floor cushion" --paper A3
    underlay fit reading-nook.toml --count 5x5
    underlay fit shelf.toml --gap 2mm
    underlay fit --item 50x50cm --border 25mm --block 90x90mm --gap 1mm
    underlay fit --item 20x20in --border 1in --block 3x3in --gap 1/16in --units in
`

// fit prints what fits.
func (c *call) fit(args []string) error {
	var q jobfile.Quick
	fs := newFlags("fit")
	var count string
	textFlag(fs, &count, "count", "", "NxM", "what exactly so many across and down take: 5x5")
	asJSON := fs.Bool("json", false, "print the whole plan as JSON")
	overrides := overrideFlags(fs)
	quickFlags(fs, &q)
	itemOrSize(fs)
	if done, err := c.parse(fs, fitHelp, args); done || err != nil {
		return err
	}
	from, err := source("fit", fs.Args(), q, "item", "paper", "gap")
	if err != nil {
		return err
	}
	job, err := c.overridden(from, *overrides)
	if err != nil {
		return err
	}
	wanted, err := countWanted(count)
	if err != nil {
		return err
	}
	c.misfits(job)
	if plan.IsShelf(job) {
		if count != "" {
			return usage("--count goes with a job that has passes, and this is a shelf of blocks and items; add an [[item.pass]]")
		}
		return c.fitShelf(job, q.Gap, *asJSON)
	}
	if from.file != "" && q.Gap != "" {
		return bothGiven("gap", from.file)
	}
	plan, err := plan.New(job)
	if err != nil {
		return err
	}
	if *asJSON {
		return c.printJSON(planJSON(plan, wanted))
	}
	if count != "" {
		return c.say(say.Wanted(plan, wanted))
	}
	return c.say(say.Fit(plan))
}

// mostCounted is the most prints across, or down, that may be asked for.
const mostCounted = 10_000

// countWanted reads how many prints across and down are asked for, "5x5"; none where nothing is said.
func countWanted(text string) (job.Counts, error) {
	if text == "" {
		return job.Counts{}, nil
	}
	var n job.Counts
	across, down, both := strings.Cut(strings.NewReplacer("×", "x", "X", "x", " by ", "x").Replace(text), "x")
	for _, part := range []struct {
		text string
		to   *int
	}{{across, &n.Across}, {down, &n.Down}} {
		i, err := strconv.Atoi(strings.TrimSpace(part.text))
		if err != nil || i < 1 || i > mostCounted || !both {
			return job.Counts{}, job.Problems{{Key: "--count", Text: fmt.Sprintf(
				"%s is not two whole numbers from 1 to %s; write how many prints across and down, such as 5x5", words.Quote(text), words.PlainNumber(mostCounted))}}
		}
		*part.to = i
	}
	return n, nil
}

// fitShelf prints what every block gives on every item.
func (c *call) fitShelf(job *job.Job, apart string, asJSON bool) error {
	gap, err := shelfGap(apart)
	if err != nil {
		return err
	}
	shelf, err := plan.NewShelf(job, gap)
	if err != nil {
		return err
	}
	if asJSON {
		return c.printJSON(shelfJSON(shelf))
	}
	return c.say(say.Shelf(shelf))
}

// widestShelfGap is more than anyone leaves between prints that are to fill a cloth.
const widestShelfGap = 500 * geometry.Millimetre

// shelfGap reads how far apart the prints of a shelf are to stand; the usual gap where it is not
// given.
func shelfGap(text string) (geometry.Length, error) {
	if text == "" {
		return plan.ShelfGap, nil
	}
	gap, err := geometry.ParseLength(text)
	if err == nil && (gap < 0 || gap > widestShelfGap) {
		err = fmt.Errorf("%q is not from 0 mm to 500 mm; write the plain cloth between prints, such as 2mm", text)
	}
	if err != nil {
		return 0, job.Problems{{Key: "--gap", Text: err.Error()}}
	}
	return gap, nil
}
