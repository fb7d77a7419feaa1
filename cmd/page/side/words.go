package side

import (
	"fmt"
	"slices"

	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

// inWords says what a picture of a face shows, for those who cannot see it.
func (v view) inWords(face plan.FacePlan, c job.Colouring) string {
	u := v.plan.Job.Units
	it := face.Item.Item
	text := fmt.Sprintf("%s, %s", words.UpperFirst(words.Shown(face.Label())), u.FormatSize(face.Item.Area.Cloth.Size()))
	if it.Shape != job.Rectangle {
		text += ", " + string(it.Shape)
	}
	text += "."
	for _, p := range face.Wholes() {
		text += " " + words.UpperFirst(words.Shown(p.Pass.Name)) + ": " + say.Answer(u, face.Item, p)
		var colours []string
		for _, part := range p.Pass.Parts() {
			for _, name := range part.Colours {
				if name = words.Shown(c.Colour(name)); !slices.Contains(colours, name) {
					colours = append(colours, name)
				}
			}
		}
		if len(colours) > 0 {
			text += " In " + words.InWords(colours) + "."
		}
	}
	for _, z := range it.Zones {
		text += fmt.Sprintf(" %s is kept clear: %s, its top left corner %s from the left and %s from the top.",
			words.UpperFirst(words.Shown(z.Name)), u.FormatSize(z.Rect.Size()), u.Format(z.Rect.Min.X), u.Format(z.Rect.Min.Y))
	}
	return text
}
