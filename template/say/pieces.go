package say

import (
	"fmt"

	"underlay/geometry"
	"underlay/template/plan"
	"underlay/template/words"
)

// Pieces says how many pieces of an item lie on one cloth, and how: "12 pieces on one cloth of 640 ×
// 860 mm, 3 across and 4 down, 20 mm apart"; "" of an item that is a cloth of its own.
func Pieces(u geometry.Unit, ip *plan.ItemPlan) string {
	p := ip.Item.Pieces
	if !p.Several() {
		return ""
	}
	apart := "side by side"
	if p.Apart > 0 {
		apart = u.Format(p.Apart) + " apart"
	}
	return fmt.Sprintf("%d pieces on one cloth of %s, %d across and %d down, %s", p.Count(), u.FormatSize(ip.WholeCloth().Size()), p.Columns, p.Rows, apart)
}

// PrintsOnPieces says how many prints each piece of a cloth has, and all of them.
func PrintsOnPieces(ip *plan.ItemPlan) string {
	n := 0
	for _, cloth := range ip.Cloths() {
		for _, p := range cloth.Passes {
			n += len(p.Prints) * len(cloth.PrintedOn(p.Pass))
		}
	}
	return fmt.Sprintf("%s on each, %d in all", words.Counted(n, "print", "prints"), n*ip.Item.Pieces.Count())
}

// pieces says below an item's heading that it lies on its cloth several times.
func (f *fitText) pieces(ip *plan.ItemPlan) {
	text := Pieces(f.u, ip)
	if text == "" {
		return
	}
	if len(ip.Passes) > 0 {
		text += ": " + PrintsOnPieces(ip)
	}
	f.say("  ", text+". What follows is of one piece, and the sheets are of the whole cloth.")
}
