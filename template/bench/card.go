package bench

import (
	"fmt"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/look"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

// Measures of the card.
const (
	cardGap    = 6 * geometry.Millimetre // between its parts
	captionRow = 5 * geometry.Millimetre // a caption over a picture
	tapeHeight = 5 * geometry.Millimetre // of the tape's figures (ISO 3098), to be read standing
	boxSide    = 6 * geometry.Millimetre // of a box to tick
	tapeRow    = 3.5*2.5*geometry.Millimetre + tapeHeight + 4*geometry.Millimetre
	stepsShare = 0.66 // of the width of the page that is for the steps

	leastPicture = 20 * geometry.Millimetre
)

// card is the first page of a bench sheet, to be pinned up: how the item will look, the order of
// printing, where the tape goes, what to do, and a box to tick for each piece.
type card struct {
	bench
	page *paper.Drawing
	out  paper.Page
	box  geometry.Rect // what is still free of the page
	left bool          // the picture of the order leaves numbers out
}

// newCard makes the card of a face; false: the page has no room for what to do.
func newCard(b bench) (paper.Page, bool) {
	read := newReading(b.job)
	size, box := read.size, read.box
	c := &card{bench: b, page: &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(size.W, size.H)}}, box: box}
	c.out = paper.Page{Size: size, Views: []paper.View{{Drawing: c.page, Area: c.page.Bounds}}}
	c.heading()
	cloth := b.face.Item.Area.Cloth
	switch shape := cloth.W() / cloth.H(); {
	case shape < 0.5: // a runner: the pictures stand beside the text
		left := c.box
		left.Max.X = left.Min.X + c.box.W()*0.46
		c.pictures(left, 2)
		c.box.Min.X = left.Max.X + cardGap
	case shape > 1.8:
		each := min(c.box.W()/shape, c.box.H()*0.24, c.spare()/2-captionRow-cardGap)
		c.pictures(c.take(2*(max(each, leastPicture)+captionRow)+cardGap), 1)
	default:
		each := min((c.box.W()-cardGap)/2/shape, c.box.H()*0.42, c.spare()-captionRow-cardGap)
		c.pictures(c.take(max(each, leastPicture)+captionRow), 2)
	}
	c.tape()
	return c.out, c.steps()
}

// spare is the height of the page that tape and steps, in their smallest letters, leave to the
// pictures.
func (c *card) spare() geometry.Length {
	h := c.box.H() - stepsHeight(c.bench.steps(true), 2.5, c.box.W()*stepsShare)
	if rows := len(c.taped()); rows > 0 {
		h -= 2.5*3 + geometry.Length(rows)*tapeRow
	}
	return h
}

// take cuts a strip of a height off the top of what is free.
func (c *card) take(h geometry.Length) geometry.Rect {
	strip := c.box
	strip.Max.Y = strip.Min.Y + h
	c.box.Min.Y = min(strip.Max.Y+cardGap, c.box.Max.Y)
	return strip
}

// write sets lines of text, top left in the free part, and returns how high they are.
func (c *card) write(box geometry.Rect, lines []string, h geometry.Length, bold bool, ink paper.Ink) geometry.Length {
	y := box.Min.Y
	for _, l := range lines {
		c.page.Write(paper.Label{Text: l, At: geometry.Pt(box.Min.X, y+h), Anchor: paper.AnchorBottomLeft, Height: h, Bold: bold, Ink: ink})
		y += 1.75 * h
	}
	return y - box.Min.Y
}

// heading sets the item's name, wrapped where it is long, and what there is to print.
func (c *card) heading() {
	const h = 7 * geometry.Millimetre
	y := c.write(c.box, paper.TitleLines(words.UpperFirst(c.face.Label()), h, c.box.W()), h, true, paper.Ink{})
	c.box.Min.Y += y - 0.25*h
	y = c.write(c.box, paper.Wrap(c.summary(), 3.5, false, c.box.W()), 3.5, false, quiet)
	c.box.Min.Y += y + 2
}

// quiet is for what is read second.
var quiet = paper.Grey(90)

// summary says in a line what there is to print on what.
func (c *card) summary() string {
	item, u := c.face.Item.Item, c.job.Units
	cloth := c.face.Item.Area.Cloth.Size()
	size := u.FormatSize(geometry.Size{W: u.OnRuler(cloth.W), H: u.OnRuler(cloth.H)})
	if item.Shade != (job.Shade{}) {
		size += " laid flat"
	}
	if p := item.Pieces; p.Several() {
		text := say.Pieces(u, c.face.Item)
		if item.Quantity > 1 {
			text = fmt.Sprintf("%d cloths: each %s", item.Quantity, text)
		}
		return fmt.Sprintf("%s; a piece is %s and has %s", text, size, words.Counted(c.face.Count(), "print", "prints"))
	}
	each := "on each"
	if len(c.face.Names) > 1 {
		each = "on each face"
	}
	return fmt.Sprintf("%s of %s, %s %s", words.Counted(item.Quantity, "piece", "pieces"), size, words.Counted(c.face.Count(), "print", "prints"), each)
}

// pictures sets the look and the order into a box, in one column or two.
func (c *card) pictures(box geometry.Rect, columns int) {
	first, second := box, box
	if columns == 2 {
		w := (box.W() - cardGap) / 2
		first.Max.X, second.Min.X = box.Min.X+w, box.Max.X-w
	} else {
		h := (box.H() - cardGap) / 2
		first.Max.Y, second.Min.Y = box.Min.Y+h, box.Max.Y-h
	}
	under := func(r geometry.Rect) geometry.Rect { r.Min.Y += captionRow; return r }
	order, all := orderPicture(c.face, under(second))
	c.out.Views = append(c.out.Views, look.Hero(c.job, c.face, under(first)), order)
	c.left = !all
	c.write(first, []string{"As it will look"}, 2.5, true, paper.Ink{})
	c.write(second, []string{"The order"}, 2.5, true, paper.Ink{})
}

// taped returns the passes of the face that have tape lines, as many as the card shows.
func (c *card) taped() []plan.FacePass {
	const most = 3
	var passes []plan.FacePass
	for _, p := range c.face.Passes {
		if p.Tape != nil && len(passes) < most {
			passes = append(passes, p)
		}
	}
	return passes
}

// tape sets the figures for the tape, large, a row for each pass that has some.
func (c *card) tape() {
	passes := c.taped()
	if len(passes) == 0 {
		return
	}
	edges := "the cloth’s left and far " + c.face.Item.Area.Outermost() + "s"
	switch {
	case passes[0].Tape.FromNear:
		edges = "the cloth’s left and near edges"
	case c.face.Item.Item.Pieces.Several():
		edges = "each piece’s left and far edges"
	}
	title := paper.Wrap("Tape lines, in "+c.job.Units.String()+" from "+edges, 2.5, true, c.box.W())
	c.box.Min.Y += c.write(c.box, title, 2.5, true, paper.Ink{}) + 1
	for _, p := range passes {
		if len(c.face.Passes) > 1 {
			name := paper.Shorten(words.UpperFirst(p.Pass.Name), 2.5, true, c.box.W())
			c.box.Min.Y += c.write(c.box, []string{name}, 2.5, true, quiet)
		}
		row := c.box
		lines := p.Tape.Lines(c.face.Item.Area)
		wide := geometry.Length(0) // of all figures, one beside the other
		for _, l := range lines {
			wide += c.figureWidth(l.At)
		}
		space := min((row.W()-wide)/geometry.Length(max(1, len(lines)-1)), 20)
		for _, l := range lines {
			c.write(row, []string{tapeName(l.Name)}, 2.5, false, quiet)
			figure := row
			figure.Min.Y += 1.75 * 2.5
			c.write(figure, []string{c.job.Units.Ruled(l.At)}, tapeHeight, true, paper.Ink{})
			row.Min.X += c.figureWidth(l.At) + space
		}
		c.box.Min.Y += 1.75*2.5 + tapeHeight + 4
	}
	c.box.Min.Y += 2
}

// figureWidth is how much room a tape line's figure and name take.
func (c *card) figureWidth(at geometry.Length) geometry.Length {
	return max(paper.TextWidth(c.job.Units.Ruled(at), tapeHeight, true), paper.TextWidth("right", 2.5, false))
}

// tapeName is what a tape line is called on the card: "far", "start".
func tapeName(name string) string {
	word, _, _ := strings.Cut(name, " ")
	return word
}

// steps sets what to do, and beside it the boxes to tick; false where there is no room for it, and
// the boxes stand alone.
func (c *card) steps() bool {
	text, boxes := c.box, c.box
	tall := c.box.W() < 110
	if !tall {
		text.Max.X = c.box.Min.X + c.box.W()*stepsShare
		boxes.Min.X = text.Max.X + cardGap
	}
	steps := c.bench.steps(c.left)
	set := false
	for _, h := range []geometry.Length{3.5, 2.5} {
		room := text.H()
		if tall {
			room -= boxSide + cardGap + captionRow
		}
		if set = stepsHeight(steps, h, text.W()) <= room; !set {
			continue
		}
		c.write(text, []string{"What to do"}, h, true, paper.Ink{})
		text.Min.Y += 2 * h
		for i, s := range steps {
			c.write(text, []string{strconv.Itoa(i+1) + "."}, h, false, quiet)
			in := text
			in.Min.X += 2.2 * h
			text.Min.Y += c.write(in, paper.Wrap(s, h, false, in.W()), h, false, paper.Ink{}) + 0.5*h
		}
		break
	}
	if tall {
		boxes.Min.Y = text.Min.Y + 2
	}
	if boxes.H() >= boxSide+captionRow {
		c.tickBoxes(boxes)
	}
	return set
}

// stepsHeight is how high steps come out.
func stepsHeight(steps []string, h, width geometry.Length) geometry.Length {
	high := 2 * h
	for _, s := range steps {
		high += geometry.Length(len(paper.Wrap(s, h, false, width-2.2*h)))*1.75*h + 0.5*h
	}
	return high
}
