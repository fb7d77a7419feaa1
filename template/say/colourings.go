package say

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// Colouring names the colours of some pieces of an item: "evening (teal for moss)", with the face
// where it is of one.
func Colouring(c job.Colouring) string {
	name := "colours as the passes name them"
	if c.Colourway != nil {
		var swaps []string
		for _, from := range slices.Sorted(maps.Keys(c.Colourway.Swap)) {
			swaps = append(swaps, words.Shown(c.Colourway.Swap[from])+" for "+words.Shown(from))
		}
		name = words.Shown(c.Colourway.Name) + " (" + strings.Join(swaps, ", ") + ")"
	}
	if c.Face != "" {
		name = words.Shown(c.Face) + " in " + name
	}
	return name
}

// ColouringTotal says what the pieces in some colours take.
func ColouringTotal(t plan.ColouringTotal) string {
	text := fmt.Sprintf("%s, %s: %s", words.Counted(t.Pieces, "piece", "pieces"), Colouring(t.Colouring), words.Counted(t.Prints, "print", "prints"))
	if paint := paints(t.Rows); len(paint) > 0 {
		text += "; paint: " + strings.Join(paint, ", ")
	}
	return text
}

// paints lists how much of which colour goes onto which block.
func paints(rows []plan.Total) []string {
	var paint []string
	for _, r := range rows {
		if r.Paint > 0 {
			paint = append(paint, fmt.Sprintf("%s of %s for %s", Paint(r.Paint), words.Shown(r.Colour), words.Shown(r.Block)))
		}
	}
	return paint
}
