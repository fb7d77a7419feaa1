package say

import (
	"fmt"
	"math"

	"underlay/geometry"
	"underlay/template/plan"
	"underlay/template/words"
)

// Crooked says how far the corners of a cover are from square, and how large a field keeps every
// border; "" where the cover is not given by its sides.
func Crooked(u geometry.Unit, ip *plan.ItemPlan) string {
	c, ok := ip.Crooked()
	if !ok {
		return ""
	}
	var off []string
	for i, name := range []string{"far left", "far right", "near right", "near left"} {
		tenths := math.Round(float64(c.Corners[i]-90) * 10)
		switch {
		case tenths > 0:
			off = append(off, fmt.Sprintf("%s %v° more", name, tenths/10))
		case tenths < 0:
			off = append(off, fmt.Sprintf("%s %v° less", name, -tenths/10))
		}
	}
	text := "All four corners are square"
	if len(off) > 0 {
		text = "Of a right angle the corners are off: " + words.InWords(off)
	}
	return fmt.Sprintf("%s. The largest field that keeps every border is %s.", text, u.FormatSize(geometry.Size{W: u.Down(c.Field.W), H: u.Down(c.Field.H)}))
}
