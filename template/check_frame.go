package template

import "slices"

// The sides of an item.
var sideWords = []string{"top", "right", "bottom", "left"}

// checkFrameAndRings reads what belongs to those two repeats.
func checkFrameAndRings(s section, raw *rawPass, pass *Pass) {
	list, _ := s.key("sides", raw.Sides).list(`["bottom"]`)
	for _, e := range list {
		side, ok := e.text("bottom")
		switch {
		case !ok || !e.knows(side, sideWords):
		case slices.Contains(pass.Sides, side):
			e.say("%s is there twice; take one of them out", quote(side))
		default:
			pass.Sides = append(pass.Sides, side)
		}
	}
	pass.Tops, _ = s.key("tops", raw.Tops).word([]string{"out", "in"}, "out")
	if n, ok := s.key("rings", raw.Rings).count("2", 1000); ok {
		pass.Rings = n
	}
}
