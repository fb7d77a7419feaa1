package template

import "slices"

// The sides of an item.
var sideWords = []string{"top", "right", "bottom", "left"}

// checkFrameAndRings reads what belongs to those two repeats.
func checkFrameAndRings(s section, pass *Pass) {
	list, _ := s.key("sides").list(`["bottom"]`)
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
	pass.Tops, _ = s.word("tops")
	if n, ok := s.key("rings").count("2", 1000); ok {
		pass.Rings = n
	}
}
