package say

import (
	"fmt"
	"strings"

	"underlay/geometry"
	"underlay/template/plan"
	"underlay/template/words"
)

// Overlap says how many prints of a pass lie on those of an earlier one, and what would avoid it.
func Overlap(u geometry.Unit, o plan.Overlap) string {
	name, on := words.Shown(o.Pass.Pass.Name), words.Shown(o.On.Pass.Name)
	text := fmt.Sprintf("%d of %s of %s lie on prints of %s.", o.Prints, words.Counted(len(o.Pass.Prints), "print", "prints"), name, on)
	if o.Prints == 1 {
		text = strings.Replace(text, " lie on ", " lies on ", 1)
	}
	return fmt.Sprintf("%s %s; if they are meant to lie there, write over = true for %s.", text, words.UpperFirst(keepClear(u, o)), name)
}

// keepClear says what would keep the prints of two passes clear of each other.
func keepClear(u geometry.Unit, o plan.Overlap) string {
	name, on, r := words.Shown(o.Pass.Pass.Name), words.Shown(o.On.Pass.Name), o.Remedy()
	var ways []string
	if r.First {
		ways = append(ways, fmt.Sprintf("move %s above %s in the job, so that %[2]s keeps inside it", name, on))
	}
	var sizes []string
	if r.Gap != nil {
		sizes = append(sizes, fmt.Sprintf("gap = %s for %s", words.Quote(u.Format(*r.Gap)), on))
	}
	if r.Block != nil {
		size := u.FormatSize(*r.Block)
		if o.Pass.Pass.Block.Shape.Regular() {
			size = u.Format(r.Block.W)
		}
		sizes = append(sizes, fmt.Sprintf("print = %s for the block %s", words.Quote(size), words.Shown(o.Pass.Pass.Block.Name)))
	}
	seat := fmt.Sprintf("write between = %s for %s in place of how it is set out", words.Quote(o.On.Pass.Name), name)
	switch all := strings.Join(sizes, ", or "); {
	case r.Between && all != "":
		ways = append(ways, seat+", and "+all)
	case r.Between:
		ways = append(ways, seat)
	case all != "":
		ways = append(ways, "write "+all)
	}
	if len(ways) == 0 {
		return "to keep them clear, leave one of the two passes out"
	}
	return "to keep them clear, " + strings.Join(ways, "; or ")
}
