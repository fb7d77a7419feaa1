package plan

import (
	"maps"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
)

// Remedy is what keeps the prints of a pass from lying on those of another: each of Gap, Block
// and First alone, the first two together with Between where the pass is not seated yet.
type Remedy struct {
	Between bool             // the pass is to be seated in the openings of the other
	Gap     *geometry.Length // of the other pass, both ways; nil: none is known
	Block   *geometry.Size   // the most the face of the pass may measure; nil: none is known
	First   bool             // the pass, a frame, is to come before the other
}

// Known tells whether there is anything to do but to leave one of the two out.
func (r Remedy) Known() bool { return r != (Remedy{}) }

// remedy finds what would avoid an overlap on a cloth of an item. All that it names has been tried: the job
// worked out with it has the overlap no longer, and no other in its place.
func (p *Plan) remedy(item, cloth int, o Overlap) Remedy {
	t := trialJob{p, item, cloth, o}
	var r Remedy
	r.First = o.Pass.Pass.Framed() && !o.On.Pass.Seated() && t.clear(t.before)
	if on := o.On.Pass; !on.Repeat.Opens() || on.Seated() {
		return r
	}
	seat := func(pass, on *job.Pass) {
		pass.Between, pass.Repeat = on, job.Straight
		if o.Pass.Pass.Between == nil {
			pass.OpenEdges = false
		}
	}
	if o.Pass.Pass.Between == nil && t.clear(func(_ *job.Item, pass, on *job.Pass) { seat(pass, on) }) {
		r.Between = true
		return r
	}
	seated, ok := t.work(func(_ *job.Item, pass, on *job.Pass) { seat(pass, on) })
	if !ok {
		return r
	}
	l := seated.layout
	if gap, ok := l.clearGap(p.Job.Units); ok && t.clear(func(_ *job.Item, pass, on *job.Pass) {
		seat(pass, on)
		even := job.Gap{Least: gap, Most: gap}
		on.Gap = job.Gaps{Across: even, Down: even}
	}) {
		r.Gap = &gap
	}
	if size, ok := l.clearBlock(p.Job.Units); ok && t.clear(func(it *job.Item, pass, on *job.Pass) {
		seat(pass, on)
		block := scaled(pass.Block, size)
		for _, q := range it.Passes {
			if q.Block == o.Pass.Pass.Block {
				q.Block = block
			}
		}
	}) {
		r.Block = &size
	}
	r.Between = o.Pass.Pass.Between == nil && (r.Gap != nil || r.Block != nil)
	return r
}

// trialJob is an item with an overlap, to be worked out with something changed.
type trialJob struct {
	plan        *Plan
	item, cloth int // among its items, and the item's cloths
	o           Overlap
}

// try works the item out anew, with what change makes of it, and returns the same cloth.
func (t trialJob) try(change func(it *job.Item, pass, on *job.Pass)) (*ItemPlan, bool) {
	j, it := *t.plan.Job, *t.plan.Job.Items[t.item]
	copies := map[*job.Pass]*job.Pass{}
	it.Passes = nil
	for _, p := range t.plan.Job.Items[t.item].Passes {
		q := *p
		q.Between, q.On = copies[p.Between], copies[p.On]
		copies[p] = &q
		it.Passes = append(it.Passes, &q)
	}
	change(&it, copies[t.o.Pass.Pass], copies[t.o.On.Pass])
	j.Items = []*job.Item{&it}
	p, err := New(&j)
	if err != nil {
		return nil, false
	}
	return p.Items[0].Cloths()[t.cloth], true
}

// work is what the pass becomes by a change.
func (t trialJob) work(change func(it *job.Item, pass, on *job.Pass)) (*PassPlan, bool) {
	ip, ok := t.try(change)
	if !ok {
		return nil, false
	}
	i := slices.IndexFunc(ip.Passes, func(p *PassPlan) bool { return p.Pass.Name == t.o.Pass.Pass.Name })
	return ip.Passes[i], true
}

// clear tells whether a change takes the overlap away, and brings none that was not there.
func (t trialJob) clear(change func(it *job.Item, pass, on *job.Pass)) bool {
	ip, ok := t.try(change)
	if !ok {
		return false
	}
	was, is := t.pairs(t.plan.Items[t.item].Cloths()[t.cloth]), t.pairs(ip)
	delete(was, [2]string{t.o.Pass.Pass.Name, t.o.On.Pass.Name})
	for pair := range maps.Keys(is) {
		if !was[pair] {
			return false
		}
	}
	return true
}

// pairs are the passes that lie on others, by name: those that are told, and whatever the pass lies
// on, also where it is seated and held against the prints round it alone.
func (t trialJob) pairs(ip *ItemPlan) map[[2]string]bool {
	all := map[[2]string]bool{}
	for _, o := range ip.Overlaps {
		all[[2]string{o.Pass.Pass.Name, o.On.Pass.Name}] = true
	}
	for i, p := range ip.Passes {
		if p.Pass.Name != t.o.Pass.Pass.Name {
			continue
		}
		for _, q := range ip.Passes[:i] {
			if p.sharesFace(q) && p.countOn(q) > 0 {
				all[[2]string{p.Pass.Name, q.Pass.Name}] = true
			}
		}
	}
	return all
}

// before moves a pass to stand before another.
func (trialJob) before(it *job.Item, pass, on *job.Pass) {
	it.Passes = slices.DeleteFunc(it.Passes, func(p *job.Pass) bool { return p == pass })
	it.Passes = slices.Insert(it.Passes, slices.Index(it.Passes, on), pass)
}

// corner is a seat with the prints round it, each as it lies from the middle of the seat, with the
// turns that tell one kind from another.
type corner struct {
	turn   geometry.Angle
	round  [4]geometry.Outline
	middle [4]geometry.Point
}

// corners lists the kinds of seats there are: each with its turn, and the turns of the prints
// round it.
func (l layout) corners() []corner {
	o := newOpenings(l)
	sites, _ := l.seats()
	type kind [9]geometry.Angle
	seen := map[kind]bool{}
	var all []corner
	for _, s := range sites {
		k := kind{0: s.Turn}
		c := corner{turn: s.Turn}
		for n, at := range o.round4(s.key) {
			if i, ok := o.at(at); ok {
				p := l.target.Prints[i]
				c.round[n] = p.Outline.Move(geometry.Point{}.Sub(s.Origin))
				c.middle[n] = p.Origin.Sub(s.Origin)
				k[2*n+1], k[2*n+2] = 1, p.Turn
			}
		}
		if !seen[k] {
			seen[k] = true
			all = append(all, c)
		}
	}
	return all
}

// clearGap returns the least gap between the prints of the target, the same both ways, with which
// a seat lies on none of them, as the unit writes it. On a shade the gap follows from what closes.
func (l layout) clearGap(u geometry.Unit) (geometry.Length, bool) {
	if l.area.surface.closes() {
		return 0, false
	}
	kinds, gap := l.corners(), l.target.Choice().Gap
	clear := func(g geometry.Length) bool {
		dx, dy := (g-gap.Across)/2, (g-gap.Down)/2
		for _, c := range kinds {
			seat := l.pass.Block.Face.Turn(c.turn)
			for i, o := range c.round {
				step := geometry.Pt(dx, dy)
				if c.middle[i].X < 0 {
					step.X = -dx
				}
				if c.middle[i].Y < 0 {
					step.Y = -dy
				}
				if o.Move(step).Overlaps(seat) {
					return false
				}
			}
		}
		return true
	}
	most := max(l.cell.W, l.cell.H, gap.Across, gap.Down)
	if !clear(most) {
		return 0, false
	}
	low, high := geometry.Length(0), most
	for high-low > finest {
		if mid := (low + high) / 2; clear(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return u.Up(high - finest), true
}

// clearBlock returns the largest size of the block, of the shape it has, with which a seat lies on
// none of the prints round it, as the unit writes it.
func (l layout) clearBlock(u geometry.Unit) (geometry.Size, bool) {
	kinds, size := l.corners(), l.pass.Block.Size
	clear := func(k float64) bool {
		for _, c := range kinds {
			seat := l.pass.Block.Face.Stretch(k, k).Turn(c.turn)
			for _, o := range c.round {
				if o.Overlaps(seat) {
					return false
				}
			}
		}
		return true
	}
	low, high := 0.0, 1.0
	for range 40 {
		if mid := (low + high) / 2; clear(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	// What touches all but exactly is taken to touch.
	low += 1e-6 / float64(max(size.W, size.H))
	fit := geometry.Size{W: u.Down(size.W * geometry.Length(low)), H: u.Down(size.H * geometry.Length(low))}
	if l.pass.Block.Shape.Regular() {
		fit.H = size.H * fit.W / size.W
	}
	return fit, min(fit.W, fit.H) >= job.LeastFace
}

// scaled returns a block of another size.
func scaled(b *job.Block, size geometry.Size) *job.Block {
	s := *b
	s.Face, s.Size = b.Face.Stretch(float64(size.W/b.Size.W), float64(size.H/b.Size.H)), size
	return &s
}
