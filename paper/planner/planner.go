package planner

import (
	"cmp"
	"math"
	"slices"

	"underlay/paper"
)

// clearWanted is the distance of joins from lines that is worth another way up of the sheets,
// and that lines with a weight are to be kept clear by.
const clearWanted = 5

// mostWork is the work that the search for a first spread may take, in boxes looked at: about as
// many hundred-millionths of a second.
const mostWork = 4_000_000

// Planner spreads one layout over sheets, of one stock after another.
type Planner struct {
	layout Layout
	boxes  *boxes
	marks  *occupied
	lines  [2][]float64 // rising; of what joins across, and of what joins down keep clear
	heavy  [2][]Rule    // those with a weight
}

// NewPlanner gets a layout ready to be spread.
func NewPlanner(l Layout) *Planner {
	marks := l.Marks
	if len(marks) > mostMarks && !l.Bounds.Empty() {
		marks = squared(marks, l.Bounds)
	}
	p := &Planner{layout: l, boxes: newBoxes(l.Whole), marks: newOccupied(marks)}
	for d, lines := range [2][]Rule{l.Upright, l.Level} {
		for _, line := range lines {
			p.lines[d] = append(p.lines[d], float64(line.At))
			if line.Weight > 0 {
				p.heavy[d] = append(p.heavy[d], line)
			}
		}
		slices.Sort(p.lines[d])
		p.lines[d] = slices.CompactFunc(p.lines[d], func(a, b float64) bool { return math.Abs(a-b) < hair })
	}
	return p
}

// Plan spreads the layout, see Plan.
func (p *Planner) Plan(s paper.Setup) (paper.Tiling, error) {
	ways, err := waysUp(p.layout, s)
	if err != nil {
		return paper.Tiling{}, err
	}
	searches := make([]search, len(ways))
	fewest := math.MaxInt
	for i, g := range ways {
		searches[i] = search{Planner: p, directions: g.directions}
		searches[i].begin()
		fewest = min(fewest, searches[i].start.sheets)
	}
	var best spread
	var joined joins
	found := false
	for i, g := range ways {
		if searches[i].start.sheets > fewest {
			continue
		}
		if j := searches[i].run(); !found || g.better(j, best, joined) {
			best, joined, found = g, j, true
		}
	}
	return best.tiling(p.layout, s, joined, p.marks), nil
}

// joins are the places of both directions, and what they come to.
type joins struct {
	places [2][]place
	sheets int     // those that hold something
	cost   int     // the weight of the boxes cut and of lines too near
	clear  float64 // the least distance from a line
}

// better tells whether a is: fewer sheets, less weight cut, a wider distance.
func (a joins) better(b joins) bool {
	return cmp.Or(cmp.Compare(a.sheets, b.sheets), cmp.Compare(a.cost, b.cost), cmp.Compare(b.clear, a.clear)) < 0
}

// search looks for the joins of one way up of the sheets.
//
// Across and down hang together in two ways alone: a box cut by both is cut once, and a sheet
// is empty by both. So one direction is settled with the other as it is, exactly, and then the
// other, until neither gains; from the best spread of those that share the least everywhere,
// and from one that takes each direction for itself.
type search struct {
	*Planner
	directions [2]direction // across and down
	start      joins
}

// run returns the best joins found.
func (p *search) run() joins {
	best := p.improve(p.start)
	if len(p.boxes.all)+len(p.heavy[0])+len(p.heavy[1]) == 0 && p.marks == nil {
		return best
	}
	var alone [2][]place
	for d := range alone {
		alone[d] = p.settle(d, nil, nil)
	}
	if other := p.weigh(alone); other.sheets <= best.sheets {
		if other = p.improve(other); other.better(best) {
			best = other
		}
	}
	return best
}

// settle finds the joins of one direction, where those of the other cut some boxes already,
// each within its bounds; nil where there is no way.
func (p *search) settle(d int, already []bool, bounds []marked) []place {
	within := func(int) (float64, float64) { return math.Inf(-1), math.Inf(1) }
	if bounds != nil {
		within = func(i int) (float64, float64) { return bounds[i-1].from, bounds[i-1].to }
	}
	clear := func(x float64) float64 { return nearest(p.lines[d], x) }
	boxes := p.boxes.weigher(d, already)
	cut := func(x float64) int { return boxes(x) + p.beside(d, x) }
	places, _, _ := p.directions[d].join(cut, clear, within)
	return places
}

// improve settles one direction after the other for as long as that gains something.
func (p *search) improve(best joins) joins {
	for d, idle := 0, 0; idle < 2; d = 1 - d {
		idle++
		if len(best.places[d]) == 0 {
			continue
		}
		var limits []marked
		if p.marks != nil {
			limits = bounds(p.marks.bands(1-d, best.places[1-d]), best.places[d])
		}
		next := best.places
		if next[d] = p.settle(d, p.boxes.cutBy(1-d, best.places[1-d]), limits); next[d] == nil {
			continue
		}
		w := p.weigh(next)
		switch {
		case w.better(best):
			best, idle = w, 1
		case !best.better(w): // as good, and more even
			best = w
		}
	}
	return best
}

// beside returns the weight of the lines that a join comes near.
func (p *Planner) beside(d int, x float64) int {
	sum := 0
	for _, line := range p.heavy[d] {
		if math.Abs(float64(line.At)-x) < clearWanted-hair {
			sum += line.Weight
		}
	}
	return sum
}

// weigh works out what joins come to.
func (p *search) weigh(places [2][]place) joins {
	j := joins{places: places, clear: math.Inf(1)}
	j.sheets = p.marks.sheets(places[0], places[1])
	j.cost = p.boxes.weightOf(p.boxes.cutBy(0, places[0]), p.boxes.cutBy(1, places[1]))
	for d, list := range places {
		for _, at := range list {
			j.clear = min(j.clear, nearest(p.lines[d], at.at))
			j.cost += p.beside(d, at.at)
		}
	}
	return j
}

// begin finds, of the spreads whose sheets all share the least, one of the fewest sheets and
// of those one that cuts least, moving the whole by about a millimetre; by more where a layout
// is so large that this would take long.
func (p *search) begin() {
	across, down := p.directions[0], p.directions[1]
	c := p.boxes.classes()
	every := 1
	if p.marks == nil && len(p.boxes.all)+len(p.heavy[0])+len(p.heavy[1]) == 0 {
		every = math.MaxInt / 2
	}
	marks := 0
	if p.marks != nil {
		marks = len(p.marks[0])
	}
	work := func() int {
		a, b := len(across.shifts(every)), len(down.shifts(every))
		boxes := len(p.boxes.all) + 1
		cells := 0
		if p.marks != nil {
			cells = 8 * across.n * down.n
		}
		return b*marks + (a+b)*boxes*4 + a*b*(len(c.weights)+cells)
	}
	for work() > mostWork && every < 1<<20 {
		every *= 2
	}
	type moved struct {
		places []place
		cut    boxSet
		beside int
	}
	move := func(d int) []moved {
		var list []moved
		for _, back := range p.directions[d].shifts(every) {
			places := p.directions[d].rigid(back)
			m := moved{places: places, cut: c.set(p.boxes.cutBy(d, places))}
			for _, at := range places {
				m.beside += p.beside(d, at.at)
			}
			list = append(list, m)
		}
		return list
	}
	columns := move(0)
	fewest, least := math.MaxInt, math.MaxInt
	var best [2][]place
	for _, row := range move(1) {
		var bands [][]marked
		if p.marks != nil {
			bands = p.marks.bands(1, row.places)
		}
		for _, column := range columns {
			n := across.n * down.n
			if bands != nil {
				n = count(bands, column.places, fewest)
			}
			if n > fewest {
				continue
			}
			if cost := c.union(row.cut, column.cut) + row.beside + column.beside; n < fewest || cost < least {
				fewest, least, best = n, cost, [2][]place{column.places, row.places}
			}
		}
	}
	p.start = p.weigh(best)
}

// Plan spreads a layout over sheets of a stock. Of all the ways it takes one
//
//   - of the fewest sheets, those that would have no mark on them left out;
//   - of these, one whose joins cut boxes, or come near lines, of the least weight;
//   - of these, one whose joins keep the widest distance from the lines.
//
// It looks for the way up of the sheets, for the place of the layout on them, and for the place
// of each join within what its two sheets share: the setup's overlap or more, half of it or 3 mm
// at the least on both sides of the join. Of two ways up that do equally well, 5 mm from
// the lines being as good as more, the one is taken that has the smaller pages, then fewer
// joins, then the upright one.
//
// Everything inside the margin of a page is drawing area. The lengths of a roll are cut as long
// as the layout needs, and lie along or across it; "one sheet" is a page as large as the layout
// and its margins.
//
// Errors say which of margin, overlap or paper to change. They are those of CountSheets, which
// is to be asked first where a layout may take more sheets than anyone would join: the work
// grows with their number.
func Plan(l Layout, s paper.Setup) (paper.Tiling, error) {
	return NewPlanner(l).Plan(s)
}

// CountSheets returns how many sheets Plan makes at the most, none left out, without making
// them: a job may ask for millions.
func CountSheets(l Layout, s paper.Setup) (int, error) {
	ways, err := waysUp(l, s)
	if err != nil {
		return 0, err
	}
	n := math.MaxInt
	for _, g := range ways {
		n = min(n, g.directions[0].n*g.directions[1].n)
	}
	return n, nil
}
