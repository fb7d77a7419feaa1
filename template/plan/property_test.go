package plan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/job"
)

// randomJob is one block in one repeat on one item, at random. Lengths come in quarters of a
// millimetre, so that exact fits are met with.
type randomJob struct {
	*rand.Rand
	item *job.Item
	pass *job.Pass
}

func (r randomJob) pick(low, high int) geometry.Length {
	return geometry.Length(low*4+r.IntN((high-low)*4+1)) / 4
}

func (r *randomJob) make() {
	border := r.pick(0, 40)
	shapes := []string{"rectangle", "rectangle", "rectangle", "round", "outline", "drum"}
	switch shape := shapes[r.IntN(len(shapes))]; shape {
	case "rectangle":
		r.item = rectItem(r.pick(150, 600), r.pick(150, 600), border)
		if r.IntN(3) == 0 {
			r.item.Border = geometry.Edges{Top: r.pick(0, 40), Right: r.pick(0, 40), Bottom: r.pick(0, 40), Left: r.pick(0, 40)}
		}
	case "round":
		r.item = roundItem(r.pick(200, 600), border)
	case "outline":
		w, h := r.pick(200, 600), r.pick(200, 600)
		r.item = outlineItem(border, [][]geometry.Point{
			{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w / 2, Y: h}},                                     // a flag
			{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w, Y: h / 2}, {X: w / 2, Y: h}, {X: 0, Y: h / 2}}, // a pocket
			{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w, Y: h}, {X: w * 3 / 5, Y: h}, {X: w * 3 / 5, Y: h / 2}, {X: 0, Y: h / 2}},
		}[r.IntN(3)]...)
	case "drum":
		r.item = drumItem(r.pick(250, 900), r.pick(120, 400), border)
	}
	for range max(0, r.IntN(5)-2) {
		size := geometry.Size{W: r.pick(10, 80), H: r.pick(10, 80)}
		at := geometry.Pt(r.pick(0, 400), r.pick(0, 400))
		r.item.Zones = append(r.item.Zones, job.Zone{Name: fmt.Sprintf("zone %d", len(r.item.Zones)), Rect: geometry.RectAt(at, size)})
	}
	repeats := []job.Repeat{"straight", "brick", "half-drop", "honeycomb", "diagonal"}
	if r.item.Shape == "drum" {
		repeats = repeats[:4]
	}
	repeat := repeats[r.IntN(len(repeats))]
	blocks := []*job.Block{roundBlock(r.pick(25, 90)), hexBlock(r.pick(25, 90)), rectBlock(r.pick(25, 90), r.pick(25, 90)), leafBlock(r.pick(25, 90), r.pick(25, 90))}
	if repeat == "honeycomb" {
		blocks = blocks[:2]
	}
	block := blocks[r.IntN(len(blocks))]
	r.pass = newPass(block, repeat, 0)
	least := r.pick(-1, 6)
	r.pass.Gap = evenGaps(least, least)
	if repeat != "honeycomb" && r.IntN(3) == 0 {
		down := r.pick(-1, 6)
		r.pass.Gap.Down = job.Gap{Least: down, Most: down}
	}
	if r.IntN(3) == 0 {
		r.pass.Gap.Across.Most += r.pick(0, 5)
		r.pass.Gap.Down.Most += r.pick(0, 5)
		if repeat == "honeycomb" {
			r.pass.Gap.Down = r.pass.Gap.Across
		}
	}
	r.pass.Step = []float64{0.5, 0.5, 1.0 / 3, 0.25, 0.4}[r.IntN(5)]
	r.pass.GridTurn = []geometry.Angle{45, 45, 30, -20, 90, 10}[r.IntN(6)]
	turns := [][][]int{{{0}}, {{0}}, {{180}}, {{0, 180}}, {{0, 180}, {180, 0}}}
	if block.Size.W == block.Size.H && repeat != "honeycomb" {
		turns = append(turns, [][]int{{0, 90}, {270, 180}})
	}
	if repeat != "honeycomb" {
		turns = append(turns, [][]int{{90}}, [][]int{{90, 270}})
	}
	r.pass.Turns = turns[r.IntN(len(turns))]
	if r.IntN(4) == 0 {
		r.pass.CentreAcross = []job.Centring{job.OnPrint, job.OnJoint}[r.IntN(2)]
	}
	if r.IntN(4) == 0 {
		r.pass.CentreDown = []job.Centring{job.OnPrint, job.OnJoint}[r.IntN(2)]
	}
}

func (r randomJob) String() string {
	return fmt.Sprintf("%s %v, border %v, zones %v, block %s %v; %s, gap %v, step %v, turns %v, grid turn %v, centre %s %s",
		r.item.Shape, r.item.Size, r.item.Border, r.item.Zones, r.pass.Block.Shape, r.pass.Block.Size, r.pass.Repeat, r.pass.Gap,
		r.pass.Step, r.pass.Turns, r.pass.GridTurn, r.pass.CentreAcross, r.pass.CentreDown)
}

// TestEveryPlan works out random jobs and holds each plan to what all promise: no print
// outside the area or over a zone, no two closer than the gap, none missing that would have
// fitted on the lattice, and no other way of centring holds more.
func TestEveryPlan(t *testing.T) {
	r := &randomJob{Rand: rand.New(rand.NewPCG(11, 7))}
	planned, empty := map[job.Repeat]int{}, 0
	for range 500 {
		r.make()
		want := map[[2]job.Centring]int{}
		for _, across := range []job.Centring{job.OnPrint, job.OnJoint} {
			for _, down := range []job.Centring{job.OnPrint, job.OnJoint} {
				want[[2]job.Centring{across, down}] = r.count(across, down)
			}
		}
		ip, err := tryPlan(r.item, job.RightHand, r.pass)
		if err != nil {
			most := 0
			for centring, n := range want {
				if (Choice{Across: centring[0], Down: centring[1]}).allowed(r.pass) {
					most = max(most, n)
				}
			}
			if most > 0 && r.item.Shape != "drum" {
				t.Fatalf("%v: %v; by hand %d prints", r, err, most)
			}
			empty++
			continue
		}
		p := ip.Passes[0]
		planned[r.pass.Repeat]++
		r.checkPrints(t, p)
		r.checkLattice(t, ip.Area.Rect, p)
		for _, c := range p.Choices {
			n := want[[2]job.Centring{c.Across, c.Down}]
			// With the gap opened there may be room for one more, never for one less.
			if n >= 0 && (c.Count < n || c.Count > n && r.pass.Gap.Across.Least == r.pass.Gap.Across.Most && r.pass.Gap.Down.Least == r.pass.Gap.Down.Most) {
				t.Fatalf("%v: %s %s has %d prints, by hand %d", r, c.Across, c.Down, c.Count, n)
			}
			if c.allowed(r.pass) && c.better(p.Choice()) {
				t.Fatalf("%v: %+v is better than the one taken, %+v", r, c, p.Choice())
			}
		}
	}
	for _, repeat := range []job.Repeat{"straight", "brick", "half-drop", "honeycomb", "diagonal"} {
		if planned[repeat] < 30 {
			t.Errorf("%s: only %d plans, %d empty", repeat, planned[repeat], empty)
		}
	}
}

// checkPrints looks at every print and every pair.
func (r randomJob) checkPrints(t *testing.T, p *PassPlan) {
	t.Helper()
	b := r.pass.Block
	shapes := make([]oracle.Shape, len(p.Prints))
	for i, print := range p.Prints {
		shapes[i] = oracle.OutlineAt(b, print.Origin, print.Turn)
		if !shapes[i].Fits(r.item, oracle.Slack) {
			t.Fatalf("%v: print %d at %v is not wholly on the area", r, i+1, print.Origin)
		}
		if r.item.Shape == "drum" && (print.Origin.X < 0 || print.Origin.X >= r.item.Size.W) {
			t.Fatalf("%v: print %d at %v is not on the flat shade", r, i+1, print.Origin)
		}
	}
	least := float64(min(r.pass.Gap.Across.Least, r.pass.Gap.Down.Least))
	reach := math.Hypot(float64(b.Size.W), float64(b.Size.H)) + math.Max(0, least)
	for i, s := range shapes {
		for j, u := range shapes[:i] {
			for _, u := range u.Copies(r.item) {
				if math.Hypot(s.Centre[0]-u.Centre[0], s.Centre[1]-u.Centre[1]) > reach+1 {
					continue
				}
				if d := s.Apart(u); d < least-oracle.Slack {
					t.Fatalf("%v: prints %d and %d are %v apart", r, j+1, i+1, d)
				}
			}
		}
	}
}

// sites lists the places of the lattice as the trade has them, from the centre of the area:
// row k moved along by frac(k step), or column k down.
func (r randomJob) sites(centre geometry.Point, across, down job.Centring, pitch job.Spacing, visit func(at geometry.Point)) {
	half := map[job.Centring]float64{job.OnJoint: 0.5}
	far := math.Hypot(float64(r.item.Size.W), float64(r.item.Size.H))
	n := int(far/math.Min(float64(pitch.Across), float64(pitch.Down))) + 2
	for row := -n; row <= n; row++ {
		for column := -n; column <= n; column++ {
			x, y := float64(column)+half[across], float64(row)+half[down]
			step := r.pass.Step
			if r.pass.Repeat == "honeycomb" {
				step = 0.5
			}
			frac := func(k int) float64 {
				f := float64(k) * step
				return f - math.Floor(f+1e-9)
			}
			turn := 0.0
			switch r.pass.Repeat {
			case "brick", "honeycomb":
				x += frac(row)
			case "half-drop":
				y += frac(column)
			case "diagonal":
				turn = float64(r.pass.GridTurn) * math.Pi / 180
			}
			dx, dy := x*float64(pitch.Across), y*float64(pitch.Down)
			if dx*dx+dy*dy > far*far {
				continue
			}
			sin, cos := math.Sincos(turn)
			visit(geometry.Pt(centre.X+geometry.Length(dx*cos-dy*sin), centre.Y+geometry.Length(dx*sin+dy*cos)))
		}
	}
}

// turn tells by how much prints are turned, where all the turns of the matrix come to
// the same outline; otherwise the oracle cannot say which of them applies.
func (r randomJob) turn() (geometry.Angle, bool) {
	first := r.pass.Turns[0][0]
	add := geometry.Angle(0)
	if r.pass.Repeat == "diagonal" {
		add = r.pass.GridTurn
	}
	for _, row := range r.pass.Turns {
		for _, turn := range row {
			same := turn == first || r.pass.Block.Shape == "round" || r.pass.Block.Shape != "outline" && (turn-first)%180 == 0 ||
				r.pass.Block.Shape == "rectangle" && r.pass.Block.Size.W == r.pass.Block.Size.H
			if !same {
				return 0, false
			}
		}
	}
	return geometry.Angle(first) + add, true
}

// pitchOf is the pitch for a gap.
func (r randomJob) pitchOf(gap job.Spacing) job.Spacing {
	w, h := r.pass.Block.Size.W, r.pass.Block.Size.H
	if r.pass.Turns[0][0]%180 != 0 && r.pass.Turns.AllAside() {
		w, h = h, w
	}
	if r.pass.Repeat == "honeycomb" {
		return job.Spacing{Across: w + gap.Across, Down: (w + gap.Across) * geometry.Length(math.Sqrt(3)/2)}
	}
	return job.Spacing{Across: w + gap.Across, Down: h + gap.Down}
}

// count counts by hand the prints of a way of centring with the least gap; -1 where the
// oracle cannot say.
func (r randomJob) count(across, down job.Centring) int {
	turn, ok := r.turn()
	area := newArea(r.item)
	if !ok || area.Rect.Empty() || r.item.Shape == "drum" {
		return -1
	}
	centre := area.Rect.Centre()
	n := 0
	r.sites(centre, across, down, r.pitchOf(job.Spacing{Across: r.pass.Gap.Across.Least, Down: r.pass.Gap.Down.Least}), func(at geometry.Point) {
		s := oracle.OutlineAt(r.pass.Block, at, turn)
		if s.Fits(r.item, oracle.Slack) {
			n++
		}
	})
	return n
}

// checkLattice lists every place of the lattice of the choice taken and sees that what fits is
// printed, and nothing else.
func (r randomJob) checkLattice(t *testing.T, area geometry.Rect, p *PassPlan) {
	t.Helper()
	c := p.Choice()
	turn, ok := r.turn()
	if !ok {
		return
	}
	if r.item.Shape == "drum" {
		// The gap closes the repeat.
		if d := math.Remainder(float64(r.item.Size.W/c.Pitch.Across), 1); math.Abs(d) > 1e-9 {
			t.Fatalf("%v: the pitch %v does not go into %v", r, c.Pitch.Across, r.item.Size.W)
		}
	}
	cell := func(at geometry.Point) [2]int {
		return [2]int{int(math.Floor(float64(at.X))), int(math.Floor(float64(at.Y)))}
	}
	printed := map[[2]int][]int{}
	for i, print := range p.Prints {
		k := cell(print.Origin)
		printed[k] = append(printed[k], i)
	}
	find := func(at geometry.Point) int {
		k := cell(at)
		for x := k[0] - 1; x <= k[0]+1; x++ {
			for y := k[1] - 1; y <= k[1]+1; y++ {
				for _, i := range printed[[2]int{x, y}] {
					if p.Prints[i].Origin.Distance(at) < 1e-6 {
						return i
					}
				}
			}
		}
		return -1
	}
	found := map[int]bool{}
	r.sites(area.Centre(), c.Across, c.Down, c.Pitch, func(at geometry.Point) {
		if round := float64(r.item.Size.W); r.item.Shape == "drum" {
			at.X -= geometry.Length(round * math.Floor((float64(at.X)+1e-6)/round))
		}
		if i := find(at); i >= 0 {
			found[i] = true
		} else if oracle.OutlineAt(r.pass.Block, at, turn).Fits(r.item, oracle.Spare) {
			t.Fatalf("%v: a print at %v would fit and is missing; taken %+v", r, at, c)
		}
	})
	if len(found) != len(p.Prints) {
		t.Fatalf("%v: %d of %d prints lie on the lattice; taken %+v", r, len(found), len(p.Prints), c)
	}
}
