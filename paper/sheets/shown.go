package sheets

import (
	"underlay/paper"
)

// shows tells whether any of the marks named comes out on the sheet, up to its joins: a line may
// touch its bounds and yet pass it by, and what lies beyond a join its neighbour shows.
func shows(s paper.Sheet, d *paper.Drawing, marks *paper.Subset) bool {
	for _, i := range marks.Labels {
		if d.Labels[i].Extent().Touches(s.Cell) {
			return true
		}
	}
	for _, i := range marks.Fills {
		if d.Fills[i].Bounds().Touches(s.Cell) {
			return true
		}
	}
	for _, i := range marks.Strokes {
		for _, piece := range d.Strokes[i].Path() {
			points := paper.Flatten(piece)
			if piece.Closed {
				points = append(points, piece.Start)
			}
			for k, b := range points[1:] {
				if _, _, ok := paper.ClipLine(points[k], b, s.Cell); ok {
					return true
				}
			}
		}
	}
	return false
}
