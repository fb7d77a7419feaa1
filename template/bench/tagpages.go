package bench

import (
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
)

// tagPages sets tags on sheets, in rows.
type tagPages struct {
	job   *job.Job
	room  geometry.Size
	head  geometry.Length // taken by the words at the top
	pages []*paper.Drawing
	at    geometry.Point
	row   geometry.Length // height of the row begun
}

func newTagPages(job *job.Job, room geometry.Size) *tagPages {
	p := &tagPages{job: job, room: room, head: 22}
	p.turn()
	return p
}

// turn begins a sheet.
func (p *tagPages) turn() {
	d := &paper.Drawing{Bounds: geometry.RectAt(geometry.Point{}, p.room)}
	p.pages = append(p.pages, d)
	d.Write(paper.Label{Text: "Tags", At: geometry.Pt(7, 6), Anchor: paper.AnchorTopLeft, Height: 5, Bold: true})
	text := "True size. Cut along the wide line, away from the hand, on a mat; stick on the block’s back, arrow to the top. Mark " + guide.SetMark(p.job) + "."
	for i, line := range paper.Wrap(text, 1.8, false, p.room.W-14-tagBars) {
		d.Write(paper.Label{Text: line, At: geometry.Pt(7, 13.5+geometry.Length(i)*3.2), Anchor: paper.AnchorTopLeft, Height: 1.8})
	}
	p.checkBars(d)
	p.at, p.row = geometry.Pt(7, p.head), 0
}

// tagBars is how wide the place of the check bars is, at the right of a sheet's head.
const tagBars = 76 * geometry.Millimetre

// checkBars draws a check bar each way in the head of a sheet, true as the tags are: 50 mm across
// and 15 mm down, or 2 in and 1/2 in.
func (p *tagPages) checkBars(d *paper.Drawing) {
	across, down := 50*geometry.Millimetre, 15*geometry.Millimetre
	names := []string{"50 mm", "15 mm"}
	if p.job.Units == geometry.UnitInch {
		across, down = 2*geometry.Inch, geometry.Inch/2
		names = []string{"2 in", "1/2 in"}
	}
	const half = 1.2 * geometry.Millimetre
	pen := paper.Pen{Width: 0.35}
	left, top := p.room.W-tagBars+4, 4*geometry.Millimetre
	bar := func(from, to, aside geometry.Point) {
		d.Stroke(geometry.Line(from, to), pen)
		for _, end := range []geometry.Point{from, to} {
			d.Stroke(geometry.Line(end.Sub(aside), end.Add(aside)), pen)
		}
	}
	bar(geometry.Pt(left, top+half), geometry.Pt(left+across, top+half), geometry.Pt(0, half))
	d.Write(paper.Label{Text: names[0], At: geometry.Pt(left+across/2, top+2*half+1), Anchor: paper.AnchorTop, Height: 2.5})
	x := left + across + 5
	bar(geometry.Pt(x, top), geometry.Pt(x, top+down), geometry.Pt(half, 0))
	d.Write(paper.Label{Text: names[1], At: geometry.Pt(x+half+1, top+down/2), Anchor: paper.AnchorLeft, Height: 2.5})
}

// set puts a tag down after the last one.
func (p *tagPages) set(t tag) {
	size := t.Bounds.Size()
	if p.at.X > 7 && p.at.X+size.W > p.room.W-1 {
		p.at, p.row = geometry.Pt(7, p.at.Y+p.row+tagSpace), 0
	}
	if p.at.Y > p.head && p.at.Y+size.H > p.room.H-1 {
		p.turn()
	}
	if p.at.X+size.W > p.room.W {
		p.at.X = max(0, p.room.W-size.W)
	}
	p.pages[len(p.pages)-1].Add(*t.Drawing, p.at)
	p.at.X += size.W + tagSpace
	p.row = max(p.row, size.H)
}
