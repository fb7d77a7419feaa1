package bench

import (
	"fmt"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/plan"
	"underlay/template/words"
)

// Measures of the cutting plan.
const (
	cuttingPicture = 78 * geometry.Millimetre // its height, at the most
	leastCutting   = 55 * geometry.Millimetre // and at the least: else on a new page
	cutRoom        = 12 * geometry.Millimetre // beside the cloth, for the names of the cuts
	cutFigures     = 11 * geometry.Millimetre // from cut to cut, with room for how far it is
)

// cut is one of the cuts of a cloth, in the order they are made: first those that run the whole way
// from the far edge to the near one, then those across the strips.
type cut struct {
	number int
	level  bool            // it runs across
	at     geometry.Length // from the cloth's left edge, or its far one
}

func cutsOf(ip *plan.ItemPlan) []cut {
	var cuts []cut
	across, down := ip.Cuts()
	for _, x := range across {
		cuts = append(cuts, cut{len(cuts) + 1, false, x})
	}
	for _, y := range down {
		cuts = append(cuts, cut{len(cuts) + 1, true, y})
	}
	return cuts
}

// cutting says how the pieces of a cloth are cut apart, with a small picture.
func (b bench) cutting() {
	ip := b.face.Item
	cuts := cutsOf(ip)
	if len(cuts) == 0 {
		return
	}
	u, p := b.job.Units, ip.Item.Pieces
	b.Heading("Cutting the pieces apart")
	text := "When the paint is dry and heat set. Measure from the cloth’s edges; "
	switch {
	case p.Columns > 1 && p.Rows > 1:
		text += fmt.Sprintf("first %s, from the far edge to the near one, then across the strips.", cutNumbers(1, p.Columns-1))
	case p.Columns > 1:
		text += "cut from the far edge to the near one."
	default:
		text += "cut from the left edge to the right one."
	}
	text += " Cut away from the hand, on a mat."
	b.Text(text)
	if p.Apart > 0 {
		b.Text(fmt.Sprintf("Each piece keeps %s beyond its size where it was cut, and nothing where it lay at the cloth’s own edge.", u.Format(p.Apart/2)))
	} else {
		b.Text(fmt.Sprintf("The pieces come out as large as they are, %s: nothing is added for a hem.", u.FormatSize(ip.Item.Size)))
	}
	b.Space(1)
	cloth := ip.WholeCloth()
	high := min(cuttingPicture, (b.Width()-cutRoom)*cloth.H()/cloth.W()+cutRoom, max(leastCutting, b.Room()))
	b.Figure(high, func(box geometry.Rect) []paper.View { return []paper.View{b.cuttingPlan(cuts, box)} })
	var rows [][]string
	rounded := false
	for _, c := range cuts {
		edge, way := "left edge", "from far to near"
		if c.level {
			edge, way = "far edge", "from left to right"
		}
		rows = append(rows, []string{strconv.Itoa(c.number), way, edge, u.Ruled(c.at)})
		rounded = rounded || !u.Exact(c.at)
	}
	b.Table([]string{"cut", "runs", "measured from the cloth’s", "to the cut, " + u.String()}, rows, 3)
	if rounded {
		b.Quiet("Figures are to the nearest " + ruledTo(u) + "; the lines of the guide are where they belong.")
	}
}

// cutNumbers names a run of cuts.
func cutNumbers(from, to int) string {
	switch to {
	case from:
		return "cut " + strconv.Itoa(from)
	case from + 1:
		return fmt.Sprintf("cuts %d and %d", from, to)
	}
	return "cuts " + numbers(from, to)
}

// cuttingPlan draws the cloth with its pieces and, beyond its edges, the number of each cut and how
// far it is from the cloth's edge.
func (b bench) cuttingPlan(cuts []cut, box geometry.Rect) paper.View {
	d := &paper.Drawing{Bounds: box}
	ip, u := b.face.Item, b.job.Units
	room := box
	room.Min = room.Min.Add(geometry.Pt(cutRoom, cutRoom))
	cloth := ip.WholeCloth()
	s := fitted(cloth, room.Grow(-1))
	taken := guide.NewCrowd(box)
	write := func(l paper.Label) {
		if e := l.Extent(); d.Bounds.Holds(e) && taken.Free(e) {
			taken.Take(e.Grow(0.4))
			d.Write(l)
		}
	}
	for _, p := range ip.Pieces() {
		r := geometry.Rect{Min: s.At(p.Rect.Min), Max: s.At(p.Rect.Max)}
		d.Fill(r.Polygon().Path(), paper.Grey(240))
		if min(r.W(), r.H()) >= 5 {
			write(paper.Label{Text: strconv.Itoa(p.Number), At: r.Centre(), Anchor: paper.AnchorMiddle, Height: 2.5, Ink: quiet})
		}
	}
	d.Stroke(cloth.Polygon().Path().Map(s.At), paper.Pen{Width: clothLine})
	across, down := ip.Item.Size.W+ip.Item.Pieces.Apart, ip.Item.Size.H+ip.Item.Pieces.Apart
	const over = 2.5 * geometry.Millimetre // the lines run beyond the cloth
	for _, c := range cuts {
		pen := paper.Pen{Type: paper.LongShort, Width: 0.25 * geometry.Millimetre}
		text := strconv.Itoa(c.number)
		if c.level {
			from, to := s.At(geometry.Pt(cloth.Min.X, c.at)), s.At(geometry.Pt(cloth.Max.X, c.at))
			from.X -= over
			d.Stroke(geometry.Line(from, to), pen)
			l := paper.Label{Text: text, At: from.Sub(geometry.Pt(1, 1.4)), Anchor: paper.AnchorRight, Height: 2.5, Bold: true}
			if down*s.K < 7 {
				l.At.Y = from.Y
			}
			write(l)
			if down*s.K >= 7 {
				write(paper.Label{Text: u.Ruled(c.at), At: from.Add(geometry.Pt(-1, 2.4)), Anchor: paper.AnchorRight, Height: 2.5, Ink: quiet})
			}
			continue
		}
		from, to := s.At(geometry.Pt(c.at, cloth.Min.Y)), s.At(geometry.Pt(c.at, cloth.Max.Y))
		from.Y -= over
		d.Stroke(geometry.Line(from, to), pen)
		if across*s.K < cutFigures {
			write(paper.Label{Text: text, At: from.Sub(geometry.Pt(0, 1)), Anchor: paper.AnchorBottom, Height: 2.5, Bold: true})
			continue
		}
		write(paper.Label{Text: text, At: from.Sub(geometry.Pt(0, 4.8)), Anchor: paper.AnchorBottom, Height: 2.5, Bold: true})
		write(paper.Label{Text: u.Ruled(c.at), At: from.Sub(geometry.Pt(0, 1)), Anchor: paper.AnchorBottom, Height: 2.5, Ink: quiet})
	}
	return paper.View{Drawing: d, Area: box, At: box.Min}
}

// clothsOf says how many cloths there are and what lies on each: "2 cloths of 640 × 860 mm, 12 ×
// napkin on each".
func clothsOf(u geometry.Unit, ip *plan.ItemPlan) string {
	item := ip.Item
	return fmt.Sprintf("%s of %s, %d × %s on each", words.Counted(item.Quantity, "cloth", "cloths"), u.FormatSize(ip.WholeCloth().Size()), item.Pieces.Count(), item.Name)
}
