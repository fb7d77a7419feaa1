package bench

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
)

// footRoom is kept free at the foot of a page that is read, for its foot line.
const footRoom = 6 * geometry.Millimetre

// reading is a page that is read, and the column on it.
type reading struct {
	size geometry.Size
	box  geometry.Rect
}

// newReading returns the page a job's words are read on.
func newReading(j *job.Job) reading {
	size, margin := guide.ReadingStock(j).Size, max(j.Paper.Margin, 14*geometry.Millimetre)
	box := geometry.Rect{Max: geometry.Pt(size.W, size.H)}.Grow(-margin)
	box.Max.Y -= footRoom
	return reading{size, box}
}

// newFlow begins pages that are read.
func newFlow(j *job.Job) *paper.Flow {
	r := newReading(j)
	return paper.NewFlowIn(r.size, r.box)
}

// Foot writes the line at the foot of a page that is read: what it belongs to on the left, which
// page it is on the right. The page is one of newFlow's size.
func Foot(j *job.Job, page *paper.Page, left, right string) {
	r := newReading(j)
	d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(page.Size.W, page.Size.H)}}
	y := page.Size.H - (r.size.H - r.box.Max.Y) + footRoom
	edge := r.box.Min.X
	room := page.Size.W - 2*edge - paper.TextWidth(right, 2.5, false) - 6
	d.Write(paper.Label{Text: paper.Shorten(left, 2.5, false, room), At: geometry.Pt(edge, y), Anchor: paper.AnchorBottomLeft, Height: 2.5, Ink: quiet})
	d.Write(paper.Label{Text: right, At: geometry.Pt(page.Size.W-edge, y), Anchor: paper.AnchorBottomRight, Height: 2.5, Ink: quiet})
	page.Views = append(page.Views, paper.View{Drawing: d, Area: d.Bounds})
}
