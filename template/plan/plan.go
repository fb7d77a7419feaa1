package plan

import (
	"cmp"
	"errors"
	"slices"
	"sync"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// Plan is a job worked out: what fits, where it goes, in what order.
type Plan struct {
	Job   *job.Job
	Items []*ItemPlan
}

// ItemPlan is one item worked out, for those of its faces that show the cloth alike.
type ItemPlan struct {
	Item      *job.Item // as these faces show it
	FaceNames []string  // of these faces; one without a name where the job names none
	Area      Area
	Passes    []*PassPlan // on these faces
	// Overlaps are the passes that lie on earlier ones without being meant to.
	Overlaps []Overlap
	Moves    *Moves // nil: the cloth is not moved along
	// LaidOn is, of one stretch of a cloth that is moved along, the bounds of what FacePlan.LaidOn
	// lists; zero of any other.
	LaidOn geometry.Rect
	// Turned are the item's other faces, where they show the cloth otherwise than the first.
	Turned []*ItemPlan
	hand   job.Hand
	asked  *job.Item // nil: Item
}

// PassPlan is one pass worked out.
type PassPlan struct {
	Pass    *job.Pass
	Choices []Choice // every way of centring, or the only way there is
	Taken   int      // index of the one taken
	Prints  []Print  // in the order of printing
	// First is the number of the first print, on the first face the pass is printed on: numbers
	// run on through the passes of a face.
	First int
	// What follows is nil or empty where the repeat gives it no meaning.
	Tape  *TapeLines
	Drift *Drift
	// Notes say in plain words what else the maker should know of the pass.
	Notes []string
	// ColumnsInLine and RowsInLine tell whether each column, or row, has its edges in one line,
	// so that ticks beyond the cloth can name it.
	ColumnsInLine, RowsInLine bool
	layout                    layout
	laid                      []Print     // of a cloth that is moved along: one whole stretch
	before                    int         // prints of a stretch that earlier passes of the face have
	each                      int         // of a cloth of several pieces, as it lies: prints of a piece
	whole                     *PassPlan   // that it is a part of; nil: it is none
	parts                     []*PassPlan // of several blocks, or colours in turn: each by itself
	serves                    func() (across, down *Serves)
	misses                    func() []NearMiss
}

// Asked returns the item as the job asks for it, where the plan is of what lies on the guide.
func (ip *ItemPlan) Asked() *job.Item { return cmp.Or(ip.asked, ip.Item) }

// Choice returns the way of centring that was taken.
func (p *PassPlan) Choice() Choice { return p.Choices[p.Taken] }

// The most prints a job may have, and the most corners of all its prints together: more than
// that takes more than 1 GiB to draw.
const (
	mostPrints  = 200_000
	mostCorners = 2_500_000
)

// New works a checked job out. The error is of type Problems: a pass of which no print
// fits, or a job of more prints than can be drawn.
func New(j *job.Job) (*Plan, error) {
	plan := &Plan{Job: j}
	var problems job.Problems
	total, corners := 0, 0
	for _, item := range j.Items {
		ip := newItemPlan(item, j.Printing.Hand)
		plan.Items = append(plan.Items, ip)
		failed := map[*job.Pass]bool{}
		for _, cloth := range ip.Cloths() {
			for _, pass := range item.Passes {
				if !cloth.shows(pass) {
					continue
				}
				if failed[pass] || failed[pass.Between] || failed[pass.On] {
					// What is wrong with that pass has been said.
					failed[pass] = true
					continue
				}
				pp, err := planPass(j, cloth.Item, cloth.Area, pass, mostPrints-total, cloth.Passes...)
				if err == nil {
					err = checkPieces(item.Pieces, len(pp.Prints), total)
				}
				if err == nil {
					each := len(pass.Block.Face.Corners())
					corners += each * len(pp.Prints) * item.Pieces.Count()
					err = checkCorners(corners, each)
				}
				if err != nil {
					failed[pass] = true
					for _, e := range linesOf(err, pass.Line) {
						problems = append(problems, j.Problem(e.line, "item %s, pass %s%s: %s", words.Quote(item.Name), words.Quote(pass.Name), cloth.onFace(), e.text))
					}
					continue
				}
				if item.Pieces.Several() && pass.Slanted() {
					pp.Notes = append(pp.Notes, "beyond a cloth of several pieces its slanted rows have no ticks, as those of one piece would run between those of the next; it is for cloth that shows the guide through")
				}
				total += len(pp.Prints) * item.Pieces.Count()
				cloth.Overlaps = append(cloth.Overlaps, pp.overlapsWith(cloth.Passes)...)
				cloth.Passes = append(cloth.Passes, pp)
				if cloth.Moves == nil {
					cloth.Moves = pp.layout.moves
				}
			}
		}
	}
	if len(problems) > 0 {
		// What is wrong on the back of an item comes after all that is on its front.
		slices.SortStableFunc(problems, func(a, b job.Problem) int { return cmp.Compare(a.Line, b.Line) })
		return nil, problems
	}
	for n, ip := range plan.Items {
		ip.number()
		for at, cloth := range ip.Cloths() {
			for i, o := range cloth.Overlaps {
				cloth.Overlaps[i].remedy = sync.OnceValue(func() Remedy { return plan.remedy(n, at, o) })
			}
		}
	}
	return plan, nil
}

// number gives the prints the numbers that they have on the first face they are on.
func (ip *ItemPlan) number() {
	for _, f := range ip.Faces() {
		laid := 0
		for _, p := range f.Passes {
			before := laid
			laid += len(p.laid)
			if p.PassPlan.First > 0 {
				continue
			}
			p.PassPlan.First, p.before = p.First, before
			for i := range p.Prints {
				p.Prints[i].Number = p.First + i
			}
		}
	}
	for _, p := range ip.Passes {
		p.First = p.Prints[0].Number
	}
}

// planPass works one pass out, of at most room prints. Before are the passes of the item
// worked out so far; one that the pass is seated by and that is not among them is worked out
// for it.
func planPass(j *job.Job, item *job.Item, area Area, pass *job.Pass, room int, before ...*PassPlan) (*PassPlan, error) {
	l := newLayout(area, pass)
	l.item, l.units, l.before = item, j.Units, before
	if err := l.findTarget(j, before); err != nil {
		return nil, err
	}
	var framed bool
	if l.area, framed = l.insideFrames(before); framed && l.area.Rect.Empty() {
		return nil, errors.New("the frame printed before it leaves no room inside; write a smaller block for the frame, or fewer sides")
	}
	r := repeatOf(l)
	p := &PassPlan{Pass: pass, ColumnsInLine: r.columns, RowsInLine: r.rows, layout: l}
	var err error
	var sites []Site
	if p.Choices, p.Taken, sites, err = l.choose(r, room); err != nil {
		return nil, err
	}
	each := len(pass.Block.Face.Corners())
	if err := checkCorners(each*len(sites), each); err != nil {
		return nil, err
	}
	hand := j.Printing.Hand
	if item.MoveAlong > 0 {
		if err := p.move(r, sites, hand); err != nil {
			return nil, err
		}
		return p, nil
	}
	near := neighbours(sites, r.next)
	order := l.order(r, sites, near, l.area.Centre(), hand)
	if !pass.Mix.None() {
		byPart(order, sites)
	}
	p.Prints = l.prints(sites, order, hand)
	p.extras(r, sites, near, order[0])
	if framed {
		p.Notes = append(p.Notes, "its prints keep inside the frame printed before them")
	}
	if note := p.roundsNote(); note != "" {
		p.Notes = append(p.Notes, note)
	}
	p.split()
	return p, nil
}

// order returns the order in which sites round a centre are printed.
func (l layout) order(r repeat, sites []Site, near [][]int32, centre geometry.Point, hand job.Hand) []int {
	var order []int
	switch {
	case r.order != nil:
		return r.order(sites, hand)
	case l.pass.Order == job.RowByRow:
		order = rowByRow(sites, r.byHeight)
	case l.pass.Order == job.ByColumn:
		order = columnByColumn(sites, r.byHeight, hand)
	default:
		order = centreOut(sites, near, centre, hand)
	}
	if l.pass.EveryOther {
		inRounds(order, sites, near, r.next)
	}
	return order
}

// choose sets a pass out in every way of centring, and tells which is taken, of at most room
// prints, and its sites.
func (l layout) choose(r repeat, room int) (choices []Choice, taken int, sites []Site, err error) {
	if n := l.roughCount(); n > 2*mostPrints {
		return nil, 0, nil, tooMany(n)
	}
	ways, err := r.ways(l)
	if err != nil {
		return nil, 0, nil, err
	}
	for _, w := range ways {
		choices = append(choices, w.Choice)
	}
	taken = take(choices, l.pass)
	if taken < 0 || choices[taken].Count == 0 {
		return nil, 0, nil, l.noneFits(choices)
	}
	if n := choices[taken].Count; n > room {
		return nil, 0, nil, tooMany(float64(mostPrints - room + n))
	}
	return choices, taken, ways[taken].sites, nil
}

// findTarget finds the pass that this one is seated by, where it is.
func (l *layout) findTarget(job *job.Job, before []*PassPlan) error {
	target := cmp.Or(l.pass.Between, l.pass.On)
	if target == nil {
		return nil
	}
	for _, p := range before {
		if p.Pass == target {
			l.target = p
			return nil
		}
	}
	var err error
	l.target, err = planPass(job, l.item, l.area, target, mostPrints)
	return err
}

// extras works out what goes with the prints, where the repeat gives it a meaning.
func (p *PassPlan) extras(r repeat, sites []Site, near [][]int32, first int) {
	l, choice := p.layout, p.Choice()
	if r.taped {
		tape := l.tapeLines(sites, sites[first])
		p.Tape = &tape
	}
	if r.notes != nil {
		p.Notes = r.notes(l, choice)
	}
	if r.sizes != nil {
		s := r.sizes(l, choice, sites)
		if s.note == "" {
			p.serves, p.misses = sync.OnceValues(s.serves), sync.OnceValue(s.misses)
		} else {
			p.Notes = append(p.Notes, s.note)
		}
	}
	switch {
	case l.pass.On != nil, l.pass.Repeat.Single():
	case len(choice.Runs) > 0:
		d := driftAround(choice.Runs, choice.Gap)
		p.Drift = &d
	default:
		d := driftOf(sites, near, first, choice.Gap)
		p.Drift = &d
	}
}

// roughCount estimates from above how many prints the bounds of the area could take. Of a
// frame, of rings and of single prints, and where another pass says where prints go, it is for the
// repeat to say.
func (l layout) roughCount() float64 {
	if l.pass.Seated() || l.pass.Repeat.Ringed() || l.pass.Repeat.Single() {
		return 0
	}
	px, py := float64(l.cell.W+l.pass.Gap.Across.Least), float64(l.cell.H+l.pass.Gap.Down.Least)
	w, h := float64(l.area.Rect.W()), float64(l.area.Rect.H())
	if l.pass.Repeat.Framed() {
		return 2 * (w/px + 1 + h/float64(l.cell.W+l.pass.Gap.Down.Least) + 1)
	}
	return (w/px + 1) * (h/py + 1)
}
