package template

import (
	"fmt"

	"underlay/geometry"
)

// Plan is a job worked out: what fits, where it goes, in what order.
type Plan struct {
	Job   *Job
	Items []*ItemPlan
}

// ItemPlan is one item worked out.
type ItemPlan struct {
	Item   *Item
	Area   Area
	Passes []*PassPlan
}

// PassPlan is one pass worked out.
type PassPlan struct {
	Pass    *Pass
	Choices []Choice // every way of centring, or the only way there is
	Taken   int      // index of the one taken
	Prints  []Print  // in the order of printing
	// First is the number of the first print: numbers run on through the passes of a face.
	First int
	// What follows is nil or empty where the repeat gives it no meaning.
	ServesAcross, ServesDown *Serves
	NearMisses               []NearMiss
	Tape                     *TapeLines
	Drift                    *Drift
	// Notes say in plain words what else the maker should know of the pass.
	Notes []string
	// Dropped is how many prints were left out because they would not lie wholly on the area.
	Dropped int
}

// Print is one impression.
type Print struct {
	Site
	Number    int
	Footprint geometry.Footprint
	TouchDown geometry.Point // the corner put down first
	Quarter   Quarter
}

// Choice returns the way of centring that was taken.
func (p *PassPlan) Choice() Choice { return p.Choices[p.Taken] }

// mostPrints is the most prints a job may have.
const mostPrints = 200_000

// NewPlan works a checked job out. The error is of type Problems: a pass of which no print
// fits, or a job of more prints than can be drawn.
func NewPlan(job *Job) (*Plan, error) {
	plan := &Plan{Job: job}
	var problems Problems
	total := 0
	for _, item := range job.Items {
		ip := &ItemPlan{Item: item}
		plan.Items = append(plan.Items, ip)
		area, ok := newArea(item)
		if !ok {
			problems = append(problems, job.problem(item.Line, "item %q: the border leaves nothing to print on; write a smaller border", item.Name))
			continue
		}
		ip.Area = area
		first := 1
		for _, pass := range item.Passes {
			pp, err := planPass(job, item, area, pass, mostPrints-total)
			if err != nil {
				problems = append(problems, job.problem(pass.Line, "item %q, pass %q: %s", item.Name, pass.Name, err))
				continue
			}
			pp.renumber(first)
			first += len(pp.Prints)
			total += len(pp.Prints)
			ip.Passes = append(ip.Passes, pp)
		}
	}
	if len(problems) > 0 {
		return nil, problems
	}
	return plan, nil
}

// problem makes one thing wrong with the job, found when it was worked out.
func (j *Job) problem(line int, format string, args ...any) Problem {
	return Problem{File: j.File, Line: line, Text: fmt.Sprintf(format, args...)}
}

func (p *PassPlan) renumber(first int) {
	p.First = first
	for i := range p.Prints {
		p.Prints[i].Number = first + i
	}
}

// planPass works one pass out, of at most room prints.
func planPass(job *Job, item *Item, area Area, pass *Pass, room int) (*PassPlan, error) {
	l, r := newLayout(area, pass), repeatOf(pass.Repeat)
	if n := l.roughCount(); n > 2*mostPrints {
		return nil, tooMany(n)
	}
	p := &PassPlan{Pass: pass, Choices: r.ways(l)}
	p.Taken = take(p.Choices, pass)
	if p.Taken < 0 || p.Choice().Count == 0 {
		return nil, l.noneFits(job.Units, p.Choices)
	}
	choice := p.Choice()
	if choice.Count > room {
		return nil, tooMany(float64(mostPrints - room + choice.Count))
	}
	sites := r.place(l, choice)
	near := neighbours(sites, r.next)
	centre, hand := area.Rect.Centre(), job.Printing.Hand
	var order []int
	if pass.Order == RowByRow {
		order = rowByRow(sites)
	} else {
		order = centreOut(sites, near, centre, hand)
	}
	p.Prints = make([]Print, len(order))
	for i, s := range order {
		site := sites[s]
		f := pass.Block.Face.Place(site.Origin, site.Turn)
		corner := lowerLeft(f)
		if pass.Order != RowByRow {
			corner = touchDown(f, centre, hand)
		}
		p.Prints[i] = Print{Site: site, Footprint: f, TouchDown: corner, Quarter: quarterOf(site.Origin, centre, hand)}
	}
	if r.grid {
		tape := tapeLines(pass.Block, sites, sites[order[0]], pass.Order)
		p.Tape = &tape
	}
	if r.grid && area.Plain() {
		across, down := axes(item, l)
		a, d := across.serves(choice.Columns, choice.Gap.Across), down.serves(choice.Rows, choice.Gap.Down)
		p.ServesAcross, p.ServesDown = &a, &d
		p.NearMisses = []NearMiss{across.nearMiss(choice.Columns, false), down.nearMiss(choice.Rows, true)}
	}
	drift := driftOf(sites, near, order[0], choice.Gap)
	p.Drift = &drift
	return p, nil
}

// roughCount estimates from above how many prints the bounds of the area could take.
func (l layout) roughCount() float64 {
	px, py := l.cell.W+l.pass.Gap.Across.Least, l.cell.H+l.pass.Gap.Down.Least
	return float64((l.area.Rect.W()/px + 1) * (l.area.Rect.H()/py + 1))
}

func tooMany(n float64) error {
	return fmt.Errorf("this makes about %.0f prints, and a job may have %d; write a larger block, a smaller item or fewer passes", n, mostPrints)
}

// noneFits explains why no print of a pass fits, and what would make one fit.
func (l layout) noneFits(u geometry.Unit, choices []Choice) error {
	for _, c := range choices {
		if c.Count > 0 {
			return fmt.Errorf("no print fits with the centre lines as asked; write centre-across = %q and centre-down = %q", c.Across, c.Down)
		}
	}
	room := l.area.Rect.Size()
	over := geometry.Size{W: l.cell.W - room.W, H: l.cell.H - room.H}
	if over.W <= geometry.Tolerance && over.H <= geometry.Tolerance {
		return fmt.Errorf("no whole print of the block %q fits; write a smaller border, another repeat or a smaller block", l.pass.Block.Name)
	}
	var by string
	switch {
	case over.W > geometry.Tolerance && over.H > geometry.Tolerance:
		by = fmt.Sprintf("%s too wide and %s too high", u.Format(over.W), u.Format(over.H))
	case over.W > geometry.Tolerance:
		by = u.Format(over.W) + " too wide"
	default:
		by = u.Format(over.H) + " too high"
	}
	return fmt.Errorf("no print fits: the block %q, %s, is %s for the printable area, %s; make the item that much larger, the border less, or write a block of at most %s",
		l.pass.Block.Name, u.FormatSize(l.cell), by, u.FormatSize(room),
		u.FormatSize(geometry.Size{W: min(l.cell.W, room.W), H: min(l.cell.H, room.H)}))
}
