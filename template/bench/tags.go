package bench

import (
	"fmt"
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// tag is a label for a block's back, or a strip of card, to cut out: drawn at true size with
// the top left corner of its bounds at (0, 0).
type tag struct {
	*paper.Drawing
}

const (
	tagSpace = 6 * geometry.Millimetre // between tags on a sheet
	tagTick  = 5 * geometry.Millimetre
	// leastStrip is the least gap worth a spacer of card.
	leastStrip = 4 * geometry.Millimetre
)

// Tags draws the tags of all blocks the job prints with, and its gap strips.
func Tags(plan *plan.Plan) guide.Papers {
	job := plan.Job
	stock := guide.ReadingStock(job)
	scale := job.Printer.Scale().OnPage(false)
	usable := geometry.Rect{
		Min: geometry.Pt(job.Paper.Margin, job.Paper.Margin),
		Max: geometry.Pt(stock.Size.W-job.Paper.Margin, stock.Size.H-job.Paper.Margin-footRoom),
	}
	// In true millimetres, as they come out of the printer.
	room := geometry.Size{W: usable.W() / geometry.Length(scale.Across), H: usable.H() / geometry.Length(scale.Down)}
	p := newTagPages(job, room)
	for _, b := range job.Blocks {
		uses := uses(plan, b)
		if len(uses) == 0 {
			continue
		}
		t := newTag(job, b, uses)
		if t.Bounds.W() > room.W || t.Bounds.H() > room.H-p.head {
			t = newCrossTag(job, b, uses)
		}
		p.set(t)
	}
	for _, s := range strips(plan) {
		p.set(newStrip(job, s, room.W))
	}
	var pages []paper.Page
	for _, drawing := range p.pages {
		pages = append(pages, paper.Page{Size: stock.Size, Views: []paper.View{{
			Drawing: drawing, Area: drawing.Bounds, At: usable.Min, Scale: scale,
		}}})
	}
	return guide.Papers{Name: "tags", Mark: guide.SetMark(plan.Job), Pages: pages}
}

// use is a pass that prints with a block, and the item it is on.
type use struct {
	item *job.Item
	pass *job.Pass
}

// uses returns the passes that print with a block.
func uses(p *plan.Plan, b *job.Block) []use {
	var uses []use
	for _, ip := range p.Items {
		for _, cloth := range ip.Cloths() {
			for _, pp := range cloth.Printed() {
				known := slices.ContainsFunc(uses, func(u use) bool { return u.pass == pp.Pass })
				if !known && slices.Contains(pp.Blocks(), b) {
					uses = append(uses, use{ip.Item, pp.Pass})
				}
			}
		}
	}
	return uses
}

// strip is a spacer: as wide as a gap, as long as the block's side along it.
type strip struct {
	gap, length geometry.Length
	block       string
}

// strips returns a spacer for each gap wide enough for card.
func strips(p *plan.Plan) []strip {
	var strips []strip
	add := func(pp *plan.PassPlan) {
		size := pp.Pass.Block.Size
		for _, s := range []strip{
			{pp.Choice().Gap.Across, size.H, pp.Pass.Block.Name},
			{pp.Choice().Gap.Down, size.W, pp.Pass.Block.Name},
		} {
			same := func(q strip) bool { return (q.gap-s.gap).Abs() <= geometry.Tolerance && q.block == s.block }
			if s.gap >= leastStrip-geometry.Tolerance && !slices.ContainsFunc(strips, same) {
				strips = append(strips, s)
			}
		}
	}
	for _, ip := range p.Items {
		for _, cloth := range ip.Cloths() {
			for _, pp := range cloth.Printed() {
				if !pp.Pass.Seated() && !pp.Pass.Repeat.Single() {
					add(pp)
				}
			}
		}
	}
	return strips
}

// newTag draws the label of a block as seen from above, the way the printer holds it: cut out
// along the wood's edge and stuck on its back.
func newTag(j *job.Job, b *job.Block, uses []use) tag {
	pens := guide.NewPens(job.FineLines)
	edge := b.Wood
	if edge.None() {
		edge = b.Face
	}
	bounds := edge.Bounds()
	move := geometry.Point{}.Sub(bounds.Min)
	t := tag{&paper.Drawing{Bounds: bounds.Move(move).Grow(0)}}
	t.Stroke(edge.Move(move).Path(), pens.Cloth)
	if !b.Wood.None() {
		t.Stroke(b.Face.Move(move).Path(), pens.Wood)
	}
	edge = edge.Move(move)
	c := b.Face.Bounds().Centre().Add(move)
	tick := min(tagTick, bounds.W()/6, bounds.H()/6)
	for _, l := range centreTicks(edge, c, tick) {
		t.Stroke(l, pens.Arrow)
	}
	// Arrow and words go where the face is widest: the middle of one cut like an L is off it.
	middle, depth := guide.Deepest(b)
	middle = middle.Add(move)
	s, wide := 2*depth, 2*depth
	switch b.Shape {
	case job.RectangleFace:
		wide = b.Size.W
	default:
		s *= 0.9 // the corners of the words' box keep inside
	}
	t.Fill(geometry.UpArrow(middle.Sub(geometry.Pt(0, s*0.12)), s*0.4, 0), paper.Ink{})
	if !t.words(j, b, uses, middle.Add(geometry.Pt(0, s*0.14)), min(s*0.72, wide-2*tick), middle.Y+s*0.36) {
		t.nameBeside(b)
	}
	return t
}

// nameBeside names a tag too small for its block's name, to its right.
func (t tag) nameBeside(b *job.Block) {
	name := paper.Label{
		Text: paper.Shorten(b.Name, 2.5, false, 60), Anchor: paper.AnchorLeft, Height: 2.5,
		At: geometry.Pt(t.Bounds.Max.X+2, t.Bounds.Centre().Y),
	}
	t.Write(name)
	t.Bounds = t.Bounds.Union(name.Extent())
}

// centreTicks returns ticks on the centre lines of a face, each from the edge of its tag inwards:
// they meet the ticks of the guide. A line that the tag has no part of has none.
func centreTicks(edge geometry.Outline, c geometry.Point, long geometry.Length) []geometry.Path {
	const step = 0.05 * geometry.Millimetre
	b := edge.Bounds()
	var ticks []geometry.Path
	for _, from := range []geometry.Point{{X: c.X, Y: b.Min.Y}, {X: c.X, Y: b.Max.Y}, {X: b.Min.X, Y: c.Y}, {X: b.Max.X, Y: c.Y}} {
		way := c.Sub(from)
		far := way.Norm()
		if far <= geometry.Tolerance {
			continue
		}
		way = way.Mul(1 / float64(far))
		at := func(l geometry.Length) geometry.Point { return from.Add(way.Mul(float64(l))) }
		start := geometry.Length(0)
		for start < far && !edge.Contains(at(start)) {
			start += step
		}
		end := start
		for end < min(far, start+long) && edge.Contains(at(min(far, start+long, end+step))) {
			end = min(far, start+long, end+step)
		}
		if end > start {
			ticks = append(ticks, geometry.Line(at(start), at(end)))
		}
	}
	return ticks
}

// newCrossTag draws the label of a block too large for a sheet: a cross to lay on the block's
// own centre lines.
func newCrossTag(j *job.Job, b *job.Block, uses []use) tag {
	const w, h = 90 * geometry.Millimetre, 90 * geometry.Millimetre
	pens := guide.NewPens(job.FineLines)
	t := tag{&paper.Drawing{Bounds: geometry.RectAt(geometry.Point{}, geometry.Size{W: w, H: h})}}
	t.Stroke(t.Bounds.Polygon().Path(), pens.Cloth)
	c := t.Bounds.Centre()
	for _, l := range [][2]geometry.Point{
		{geometry.Pt(c.X, 0), geometry.Pt(c.X, 12)}, {geometry.Pt(c.X, h), geometry.Pt(c.X, h-12)},
		{geometry.Pt(0, c.Y), geometry.Pt(12, c.Y)}, {geometry.Pt(w, c.Y), geometry.Pt(w-12, c.Y)},
	} {
		t.Stroke(geometry.Line(l[0], l[1]), pens.Arrow)
	}
	t.Fill(geometry.UpArrow(geometry.Pt(c.X, c.Y-14), 36, 0), paper.Ink{})
	t.words(j, b, uses, geometry.Pt(c.X, c.Y+10), w-30, h-16)
	t.Write(paper.Label{Text: "lay on the block’s own centre lines", At: geometry.Pt(c.X, h-14), Anchor: paper.AnchorBottom, Height: 1.8})
	return t
}

// words writes what the block is and where it is used, centred, from the top down as far as
// there is room. It tells whether there was room for the name.
func (t tag) words(job *job.Job, b *job.Block, uses []use, top geometry.Point, width, bottom geometry.Length) bool {
	lines := []string{b.Name, job.Units.FormatSize(b.Size)}
	for _, u := range uses {
		line := u.item.Name
		if u.pass.Name != b.Name {
			line += ": " + u.pass.Name
		}
		if len(u.pass.Colours) > 0 {
			line += ", " + words.InWords(u.pass.Colours)
		}
		if !slices.Contains(lines, line) {
			lines = append(lines, line)
		}
	}
	y := top.Y
	for i, line := range lines {
		h, bold := geometry.Length(1.8), false
		if i == 0 {
			h, bold = max(1.8, min(5, (bottom-top.Y)*0.22)), true
		}
		text := paper.Shorten(line, h, bold, width)
		if text == "" || y+h > bottom {
			return i > 0
		}
		t.Write(paper.Label{Text: text, At: geometry.Pt(top.X, y), Anchor: paper.AnchorTop, Height: h, Bold: bold})
		y += h * 1.7
	}
	return true
}

// newStrip draws a spacer to cut from card, exactly as wide as the gap.
func newStrip(j *job.Job, s strip, longest geometry.Length) tag {
	length := min(max(s.length, 60), longest)
	const words = 5 * geometry.Millimetre
	t := tag{&paper.Drawing{Bounds: geometry.RectAt(geometry.Point{}, geometry.Size{W: length, H: s.gap + words})}}
	t.Stroke(geometry.RectAt(geometry.Point{}, geometry.Size{W: length, H: s.gap}).Polygon().Path(), guide.NewPens(job.FineLines).Arrow)
	text := paper.Shorten(fmt.Sprintf("gap strip %s, %s", j.Units.Format(s.gap), s.block), 1.8, false, length)
	t.Write(paper.Label{Text: text, At: geometry.Pt(0, s.gap+1.4), Anchor: paper.AnchorTopLeft, Height: 1.8})
	return t
}
