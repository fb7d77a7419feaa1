package bench

import (
	"fmt"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/say"
	"underlay/template/words"
)

// ticked are pieces to tick off under a caption of their own.
type ticked struct {
	caption string
	pieces  int
}

// toTick lists the pieces of the face's item: all together, or where it has colourways those of
// each that are on this face.
func (c *card) toTick() []ticked {
	item := c.face.Item.Item
	if len(item.Colourways) == 0 {
		return []ticked{{"", item.Quantity * item.Pieces.Count()}}
	}
	var all []ticked
	for _, colouring := range item.Colourings() {
		on := len(c.face.Names) == 0
		for _, f := range c.face.Names {
			on = on || colouring.On(f)
		}
		if on {
			all = append(all, ticked{say.Colouring(colouring), colouring.Pieces})
		}
	}
	return all
}

// tickBoxes draws a box for each piece, or for each so many where there are more than go in.
func (c *card) tickBoxes(box geometry.Rect) {
	const apart = boxSide + 2
	all := c.toTick()
	columns := max(1, int((box.W()+2)/apart))
	captions := func(each int) (lines [][]string, rows, high int) {
		for _, t := range all {
			text := "tick each piece"
			if each > 1 {
				text = fmt.Sprintf("tick every %d pieces", each)
			}
			if t.caption != "" {
				text = t.caption + ": " + text
			}
			wrapped := paper.Wrap(words.UpperFirst(text), 2.5, true, box.W())
			lines = append(lines, wrapped)
			rows, high = rows+(((t.pieces+each-1)/each)+columns-1)/columns, high+len(wrapped)
		}
		return lines, rows, high
	}
	each := 1
	var lines [][]string
	for _, e := range []int{1, 2, 5, 10, 20, 50, 100, 1000, 10_000, 100_000, 1_000_000} {
		var rows, high int
		each = e
		if lines, rows, high = captions(e); geometry.Length(high)*captionRow+geometry.Length(rows)*apart+geometry.Length(len(all)-1)*2-2 <= box.H() {
			break
		}
	}
	square := paper.NewShape(geometry.RectAt(geometry.Point{}, geometry.Size{W: boxSide, H: boxSide}).Polygon().Path())
	number := 0
	for k, t := range all {
		high := geometry.Length(len(lines[k])) * captionRow
		if box.H() < high+boxSide {
			return
		}
		c.write(box, lines[k], 2.5, true, paper.Ink{})
		box.Min.Y += high
		rows := max(1, int((box.H()+2)/apart))
		n := min((t.pieces+each-1)/each, columns*rows)
		for i := range n {
			number++
			at := box.Min.Add(geometry.Pt(geometry.Length(i%columns)*apart, geometry.Length(i/columns)*apart))
			c.page.Stamp(square, paper.Place{At: at}, paper.Pen{Width: 0.25}, paper.Role{Kind: "box", Number: number})
		}
		box.Min.Y += geometry.Length((n+columns-1)/columns)*apart + 2
	}
}
