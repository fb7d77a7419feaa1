package bench

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

// Sheets writes the bench sheet of an item, for each face that differs: a card to pin up, and
// behind it the details.
func Sheets(p *plan.Plan, ip *plan.ItemPlan) []guide.Papers {
	var all []guide.Papers
	for _, face := range ip.Faces() {
		b := bench{p.Job, face, newFlow(p.Job)}
		card, whole := newCard(b)
		b.behind(p, whole)
		if n := len(b.Pages()); n > 1 { // a page less is a sheet of paper less to print
			close := bench{p.Job, face, newFlow(p.Job).Close()}
			if close.behind(p, whole); len(close.Pages()) < n {
				b = close
			}
		}
		all = append(all, guide.Papers{Name: face.Titled("bench sheet"), Mark: guide.Mark(p.Job, face), Pages: append([]paper.Page{card}, b.Pages()...)})
	}
	return all
}

// bench writes the bench sheet of one face.
type bench struct {
	job  *job.Job
	face plan.FacePlan
	*paper.Flow
}

// behind writes what stands behind the card.
func (b bench) behind(p *plan.Plan, whole bool) {
	b.details(whole)
	if len(p.Items) == 1 {
		bring(b.Flow, p, plan.NewTotals(p), 0)
	}
	b.care()
}

// details writes how the item is printed; with what to do, where that had no room on it.
func (b bench) details(whole bool) {
	b.Title(words.UpperFirst(b.face.Label())+": details", "")
	if !whole {
		b.Heading("What to do")
		b.Points(func(i int) string { return strconv.Itoa(i+1) + "." }, b.steps(false))
	}
	b.passes()
	b.dabs()
	b.where()
	b.tape()
	b.order()
	b.cutting()
}

// passes lists the passes of the face.
func (b bench) passes() {
	u := b.job.Units
	var rows [][]string
	for _, p := range b.face.Passes {
		repeat := string(p.Pass.Repeat)
		if p.Pass.Seated() {
			repeat = "seated"
		}
		rows = append(rows, []string{
			p.Pass.Name, blockWords(p.PassPlan, u), repeat,
			guide.ApartWords(p.PassPlan, u), strings.Join(p.Pass.Colours, ", "),
			numbers(p.First, p.First+len(p.Prints)-1),
		})
	}
	head := []string{"pass", "block", "repeat", "between prints", "colours", "prints"}
	const colours = 4
	if !slices.ContainsFunc(rows, func(row []string) bool { return row[colours] != "" }) {
		head = slices.Delete(head, colours, colours+1)
		for i, row := range rows {
			rows[i] = slices.Delete(row, colours, colours+1)
		}
	}
	b.Space(2)
	b.Table(head, rows)
}

// blockWords names the blocks of a pass with their sizes.
func blockWords(p *plan.PassPlan, u geometry.Unit) string {
	var all []string
	for _, b := range p.Blocks() {
		all = append(all, guide.Words(b, u))
	}
	return strings.Join(all, ", ")
}

// numbers writes a run of numbers.
func numbers(from, to int) string {
	if from == to {
		return strconv.Itoa(from)
	}
	return fmt.Sprintf("%d to %d", from, to)
}

// where says how the prints lie on the cloth.
func (b bench) where() {
	u := b.job.Units
	b.Heading("Where the prints lie")
	if text := say.Crooked(u, b.face.Item); text != "" {
		b.Text(text)
	}
	for _, p := range b.face.Passes {
		c := p.Choice()
		var says []string
		if c.Columns > 0 && c.Rows > 0 {
			says = append(says, words.Counted(c.Columns, "print", "prints")+" across and "+strconv.Itoa(c.Rows)+" down")
		} else if c.Rows > 0 {
			says = append(says, words.Counted(c.Rows, "row", "rows"))
		}
		for _, on := range []struct {
			what job.Centring
			line string
		}{{c.Across, "across"}, {c.Down, "down"}} {
			switch on.what {
			case job.OnPrint:
				says = append(says, "counted "+on.line+", a print sits on the centre line")
			case job.OnJoint:
				says = append(says, "counted "+on.line+", the joint between two prints sits on the centre line")
			}
		}
		says = append(says, guide.PlainWords(u, guide.OnRuler(u, c.Border)))
		text := strings.Join(says, "; ") + "."
		if len(b.face.Passes) > 1 {
			text = p.Pass.Name + ": " + text
		}
		b.Text(words.UpperFirst(text))
		for _, n := range p.Notes {
			b.Text(words.UpperFirst(n) + ".")
		}
		for _, o := range b.face.Item.Overlaps {
			if o.Pass == p.PassPlan {
				b.Text(say.Overlap(u, o))
			}
		}
	}
	b.misfits()
	for _, text := range append(say.Serves(u, b.face.Item), say.Slips(b.face.Item)) {
		if text != "" {
			b.Text(text)
		}
	}
}

// misfits says which pictures have not the shape of the faces printed here.
func (b bench) misfits() {
	var said []*job.Block
	for _, p := range b.face.Passes {
		for _, block := range p.Blocks() {
			if !block.PictureFits() && !slices.Contains(said, block) {
				said = append(said, block)
				b.Text(say.Misfit(b.job.Units, block))
			}
		}
	}
}

func dash(int) string { return "–" }

// tape gives every tape line, for a ruler alone.
func (b bench) tape() {
	u := b.job.Units
	ruled := func(l geometry.Length) string { return u.Ruled(l) + " " + u.String() }
	var rows [][]string
	rounded := false
	for _, p := range b.face.Passes {
		if p.Tape == nil {
			continue
		}
		for _, l := range p.Tape.Lines(b.face.Item.Area) {
			name := l.Name
			if name != "start line" {
				name += " of the prints"
			}
			if len(b.face.Passes) > 1 {
				name += ", " + p.Pass.Name
			}
			rows = append(rows, []string{name, l.From, u.Ruled(l.At), l.FromCrease(ruled)})
			rounded = rounded || !u.Exact(l.At)
		}
	}
	if len(rows) == 0 {
		return
	}
	b.Heading("The tape")
	if guide.Taped(b.face) {
		b.Text("Where the cloth hides the drawing, work from the ticks: stretch masking tape from a tick to its twin on the far side. The tape lies outside the line and keeps the border clean.")
	}
	b.Space(1)
	head := []string{"tape line", "measured from the cloth’s", "to the line, " + u.String(), "from the crease"}
	if b.face.Item.Item.Pieces.Several() {
		head[1], head[3] = "measured from the piece’s", "from its middle"
	}
	b.Table(head, rows, 2)
	if rounded {
		b.Quiet("Figures are to the nearest " + ruledTo(u) + "; the ticks of the guide are where they belong.")
	}
}

// ruledTo is what figures for a ruler are rounded to.
func ruledTo(u geometry.Unit) string {
	if u == geometry.UnitInch {
		return "thirty-second of an inch"
	}
	return "half millimetre"
}

// laying says how the cloth is laid on the guide.
func (b bench) laying() string {
	item := b.face.Item.Item
	if item.Shade != (job.Shade{}) {
		return "shade on it, rolled out: its edges on the wide line, its middle on the centre ticks."
	}
	return "cloth on it: its edges on the wide line, its creases on the centre ticks."
}

// care says what to do afterwards, and the cautions.
func (b bench) care() {
	b.Heading("Afterwards")
	b.Points(dash, []string{
		"Touch in small gaps with a fine brush. Let the paint dry through before anything touches it.",
		"Heat set by the paint maker’s label.",
	})
	b.Heading("Take care")
	texts := []string{
		"Paint, dye and heat setting: follow the maker’s label, air the room, keep them from children. Cut away from the hand, on a mat. An iron is hot: let paint dry before ironing.",
	}
	if b.face.Item.Item.Shade != (job.Shade{}) {
		texts = append(texts, "Lampshades: only shade materials and lamps rated for it, the lamp maker’s clearance and wattage, and local fire-safety rules. Printing does not make a shade safe.")
	}
	b.Points(dash, append(texts, "Anything for babies or for sale: local product-safety rules. In doubt ask a qualified person."))
}
