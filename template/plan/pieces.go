package plan

import (
	"fmt"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// Piece is one of the pieces of a cloth that is to be cut apart, where it lies on the cloth.
type Piece struct {
	Number int // in the order they are printed in: row by row from the far edge
	Rect   geometry.Rect
}

// Pieces returns the pieces of a cloth in their order: of each row from the left, for the left hand
// from the right. None of an item that is a cloth of its own.
func (ip *ItemPlan) Pieces() []Piece {
	p, size := ip.Item.Pieces, ip.Item.Size
	if !p.Several() {
		return nil
	}
	pieces := make([]Piece, 0, p.Count())
	for row := range p.Rows {
		for column := range p.Columns {
			if ip.hand == job.LeftHand {
				column = p.Columns - 1 - column
			}
			at := geometry.Pt(geometry.Length(column)*(size.W+p.Apart), geometry.Length(row)*(size.H+p.Apart))
			pieces = append(pieces, Piece{len(pieces) + 1, geometry.RectAt(at, size)})
		}
	}
	return pieces
}

// Cuts returns where the pieces of a cloth are cut apart, down the middle of the cloth between them:
// x of the cuts that run up and down, and y of those that run across, each from the least.
func (ip *ItemPlan) Cuts() (across, down []geometry.Length) {
	p, size := ip.Item.Pieces, ip.Item.Size
	for i := 1; i < p.Columns; i++ {
		across = append(across, geometry.Length(i)*(size.W+p.Apart)-p.Apart/2)
	}
	for i := 1; i < p.Rows; i++ {
		down = append(down, geometry.Length(i)*(size.H+p.Apart)-p.Apart/2)
	}
	return across, down
}

// WholeCloth returns the bounds of the cloth as it lies on the bench: of all its pieces, or of the
// item.
func (ip *ItemPlan) WholeCloth() geometry.Rect {
	if !ip.Item.Pieces.Several() {
		return ip.Area.Cloth
	}
	return geometry.RectAt(geometry.Point{}, ip.Item.Pieces.Cloth(ip.Item.Size))
}

// OnCloth returns the item as it lies on the bench: itself, or of several pieces on one cloth the
// whole cloth, in its frame. The prints of a pass come piece by piece, each with its number within
// its piece.
func (ip *ItemPlan) OnCloth() *ItemPlan {
	pieces := ip.Pieces()
	if pieces == nil {
		return ip
	}
	item, area := *ip.Item, ip.Area
	area.Cloth = ip.WholeCloth()
	area.whole = area.Cloth.Polygon().Path()
	area.Rect.Max = area.Rect.Max.Add(area.Cloth.Max.Sub(ip.Area.Cloth.Max))
	area.edge = nil
	item.Zones = nil
	for _, p := range pieces {
		area.edge = append(area.edge, ip.Area.Rect.Move(p.Rect.Min).Polygon().Path()...)
		for _, z := range ip.Item.Zones {
			z.Rect = z.Rect.Move(p.Rect.Min)
			item.Zones = append(item.Zones, z)
		}
	}
	area.zones = item.Zones
	item.Outline = geometry.RectOutline(area.Cloth)
	all := &ItemPlan{Item: &item, FaceNames: ip.FaceNames, Area: area, hand: ip.hand, asked: ip.Item}
	for _, p := range ip.Passes {
		all.Passes = append(all.Passes, p.onPieces(pieces))
	}
	return all
}

// onPieces repeats the prints and the tape lines of a pass on every piece.
func (p *PassPlan) onPieces(pieces []Piece) *PassPlan {
	q := *p
	q.each, q.serves = len(p.Prints), nil
	q.Prints = make([]Print, 0, len(pieces)*len(p.Prints))
	for _, piece := range pieces {
		by := piece.Rect.Min
		for _, print := range p.Prints {
			print.Piece = piece.Number
			print.Origin, print.TouchDown = print.Origin.Add(by), print.TouchDown.Add(by)
			print.Outline = print.Outline.Move(by)
			q.Prints = append(q.Prints, print)
		}
	}
	if p.Tape != nil {
		q.Tape = p.Tape.onPieces(pieces)
	}
	q.parts = nil
	for _, part := range p.parts {
		part = part.onPieces(pieces)
		part.whole = &q
		q.parts = append(q.parts, part)
	}
	return &q
}

// onPieces repeats tape lines on every piece: those that fall on one line are one.
func (t TapeLines) onPieces(pieces []Piece) *TapeLines {
	all := &TapeLines{}
	for _, piece := range pieces {
		for _, x := range t.Across {
			all.Across = append(all.Across, x+piece.Rect.Min.X)
		}
		for _, y := range t.Down {
			all.Down = append(all.Down, y+piece.Rect.Min.Y)
		}
		all.Starts = append(all.Starts, t.Start+piece.Rect.Min.Y)
	}
	for _, lines := range []*[]geometry.Length{&all.Across, &all.Down, &all.Starts} {
		slices.Sort(*lines)
		*lines = slices.CompactFunc(*lines, func(a, b geometry.Length) bool { return (a - b).Abs() <= geometry.Tolerance })
	}
	all.Start = all.Starts[0]
	return all
}

// StartsAt tells whether a line that runs across is one to begin a piece against.
func (t TapeLines) StartsAt(y geometry.Length) bool {
	near := func(start geometry.Length) bool { return (y - start).Abs() <= geometry.Tolerance }
	return near(t.Start) || slices.ContainsFunc(t.Starts, near)
}

// NumberOf returns the number that the i-th print of the face's plan has on its papers: on a cloth
// of several pieces every piece has the same.
func (p FacePass) NumberOf(i int) int {
	if p.each > 0 {
		i %= p.each
	}
	return p.First + i
}

// Last returns the greatest number that a print of the pass has on the papers.
func (p FacePass) Last() int {
	if p.each > 0 {
		return p.First + p.each - 1
	}
	return p.First + len(p.Prints) - 1
}

// NumberInAll returns the number of the i-th print of a pass, counted over all pieces of a cloth: pass
// by pass, and of each pass piece by piece.
func (p *PassPlan) NumberInAll(i int, pieces job.Pieces) int {
	return (p.First-1)*pieces.Count() + 1 + i
}

// pieced returns a face of a cloth of several pieces as its guide shows it.
func (f FacePlan) pieced() FacePlan {
	all := FacePlan{Item: f.Item.OnCloth(), Names: f.Names, Alone: f.Alone}
	one, whole := f.Item.Printed(), all.Item.Printed()
	for _, p := range f.Passes {
		i := slices.Index(one, p.PassPlan)
		all.Passes = append(all.Passes, FacePass{whole[i], p.First})
	}
	return all
}

// checkPieces refuses so many prints on all the pieces of a cloth, where so many come before them.
func checkPieces(pieces job.Pieces, prints, before int) error {
	if n := before + prints*pieces.Count(); n > mostPrints && pieces.Several() {
		return fmt.Errorf("its %d pieces have %s prints together, and a job may have %s; write fewer pieces and a larger quantity, a larger block or fewer passes",
			pieces.Count(), words.PlainNumber(float64(n-before)), words.PlainNumber(mostPrints))
	}
	return nil
}
