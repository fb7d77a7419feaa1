package say

import (
	"fmt"
	"time"

	"underlay/template/words"
)

// Paint writes an amount of paint, given in millilitres, as finely as it can be measured out.
func Paint(ml float64) string {
	if ml >= 100 {
		return fmt.Sprintf("%.0f ml", ml)
	}
	return fmt.Sprintf("%.1f ml", ml)
}

// Time writes a time at the bench, to the minute.
func Time(d time.Duration) string {
	minutes := int(d.Round(time.Minute).Minutes())
	switch h := minutes / 60; {
	case h == 0:
		return words.Counted(minutes, "minute", "minutes")
	case minutes%60 == 0:
		return words.Counted(h, "hour", "hours")
	default:
		return words.Counted(h, "hour", "hours") + " " + words.Counted(minutes%60, "minute", "minutes")
	}
}
