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
	"underlay/template/words"
)

// Sheets writes the bench sheet of an item: what to print, where, in what order, and what
// to mind, for each face that differs.
func Sheets(p *plan.Plan, ip *plan.ItemPlan) []guide.Papers {
	var all []guide.Papers
	for _, face := range ip.Faces() {
		f := newFlow(p.Job)
		b := bench{p.Job, face, f}
		b.write()
		all = append(all, guide.Papers{Name: face.Titled("bench sheet"), Pages: f.Pages()})
	}
	return all
}

// bench writes the bench sheet of one face.
type bench struct {
	job  *job.Job
	face plan.FacePlan
	*paper.Flow
}

func (b bench) write() {
	item, u := b.face.Item.Item, b.job.Units
	size := u.FormatSize(b.face.Item.Area.Cloth.Size())
	if item.Shade != (job.Shade{}) {
		size += " laid flat"
	}
	each := "each"
	if len(item.Faces) > 1 {
		each = "each face"
	}
	under := fmt.Sprintf("%s of %s. %s on %s. Mark %s.",
		words.Counted(item.Quantity, "piece", "pieces"), size, words.Counted(b.face.Count(), "print", "prints"), each, guide.Mark(b.job, b.face))
	b.Title(b.face.Label(), under)
	b.Figure(max(70, min(108, b.Room()*0.42)), func(box geometry.Rect) []paper.View {
		return []paper.View{finished(b.face, box)}
	})
	b.passes()
	b.where()
	b.before()
	b.tape()
	b.order()
	b.care()
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
			p.Pass.Name, guide.Words(p.Pass.Block, u), repeat,
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
		says = append(says, "plain cloth: "+guide.BorderWords(u, c.Border))
		text := strings.Join(says, "; ") + "."
		if len(b.face.Passes) > 1 {
			text = p.Pass.Name + ": " + text
		}
		b.Text(words.UpperFirst(text))
		if a, d := p.Serves(); a != nil && d != nil {
			b.Text(fmt.Sprintf("The same guide serves cloth %s wide and %s high: at the larger sizes, one more print would fit.",
				servesWords(*a, u), servesWords(*d, u)))
		}
		for _, n := range p.Notes {
			b.Text(words.UpperFirst(n) + ".")
		}
	}
}

// servesWords writes a range of cloth sizes.
func servesWords(s plan.Serves, u geometry.Unit) string {
	return "from " + u.Format(u.Up(s.Least)) + " to just under " + u.Format(u.Down(s.Below))
}

func dash(int) string { return "–" }

// before says what to do before the first print.
func (b bench) before() {
	b.Heading("Before starting")
	shade := b.face.Item.Item.Shade != (job.Shade{})
	texts := []string{
		"Wash and press the cloth. Fold it in half both ways and press the creases: they are the centre lines.",
	}
	if shade {
		texts = []string{"Dust the shade and do not fold it. Mark the middle of it, opposite the seam, lightly at both edges: that is the centre line."}
	}
	if len(b.face.Item.Item.Faces) > 1 || !shade {
		texts = append(texts, "Lay paper inside a cover or bag, so that paint does not come through to the other face.")
	}
	b.Points(dash, append(texts,
		"Mark an arrow to the top on the back of each block. Print the repeat on scrap, not one print alone, until it comes even.",
	))
}

// tape says how the guide is laid, and gives every tape line for a ruler alone.
func (b bench) tape() {
	u := b.job.Units
	heading, laying := "Laying the guide", "Join the sheets row by row, 1a first. Tape the guide flat to the padded mat, then lay the "+b.laying()
	texts := []string{laying}
	if guide.Taped(b.face) {
		heading += " and the tape"
		texts = append(texts, "Where the cloth hides the drawing, work from the ticks: stretch masking tape from a tick to its twin on the far side. The tape lies outside the line and keeps the border clean.")
	}
	b.Heading(heading)
	b.Points(dash, texts)
	var rows [][]string
	for _, p := range b.face.Passes {
		if p.Tape == nil {
			continue
		}
		for _, l := range p.Tape.Lines(b.face.Item.Area.Cloth) {
			name := l.Name
			if name != "start line" {
				name += " of the prints"
			}
			if len(b.face.Passes) > 1 {
				name += ", " + p.Pass.Name
			}
			rows = append(rows, []string{name, l.Edge + " edge", u.Format(l.At), l.FromCrease(u)})
		}
	}
	if len(rows) > 0 {
		b.Space(1)
		b.Table([]string{"tape line", "measured from the cloth’s", "to the line", "from the crease"}, rows, 2)
	}
}

// laying says how the cloth is laid on the guide.
func (b bench) laying() string {
	item := b.face.Item.Item
	_, upright := item.Outline.Upright()
	switch {
	case item.Shade != (job.Shade{}):
		return "shade on it, rolled out: its edges on the wide line, its middle on the centre ticks."
	case upright && b.job.Paper.Extent == job.EdgesExtent:
		return "cloth on it: its corners in the four drawn ones, its creases on the centre ticks."
	}
	return "cloth on it: its edges on the wide line, its creases on the centre ticks."
}

// drift says how errors add up.
func (b bench) drift() []string {
	longest, corner, harmless := 0, 0, geometry.Length(0)
	for _, p := range b.face.Passes {
		if p.Drift != nil && p.Drift.FromCentre > longest {
			longest, corner, harmless = p.Drift.FromCentre, p.Drift.FromCorner, p.Drift.Harmless
		}
	}
	if longest < 2 {
		return nil
	}
	from := fmt.Sprintf("%d placements from the centre (%d from a corner)", longest, corner)
	if b.face.Item.Item.Shape == job.Round {
		from = fmt.Sprintf("%d placements from the centre", longest)
	}
	// Such small lengths would come to nothing in sixteenths of an inch.
	mm := geometry.UnitMM
	text := fmt.Sprintf("Without a guide, an error in each placement adds up: the farthest print is %s, so errors of 0.5 mm can reach %s there",
		from, mm.Format(geometry.Length(longest)*0.5))
	if harmless > 0 {
		text += fmt.Sprintf("; from %s a placement on they are more than the gap or lap itself", mm.Format(harmless))
	}
	return []string{text + ". With the guide they stay 0.5 mm."}
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
