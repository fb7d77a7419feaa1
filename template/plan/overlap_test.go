package plan

import (
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

// lying counts by brute force how many prints of a pass lie on any of another, by
// github.com/paulmach/orb; sure is false where some touch but for what rounding may move.
func lying(item *job.Item, p, q *PassPlan) (n int, sure bool) {
	const hair = 1e-5
	var under []oracle.Shape
	for _, b := range q.Prints {
		under = append(under, oracle.OutlineAt(b.Block, b.Origin, b.Turn).Copies(item)...)
	}
	sure = true
	for _, a := range p.Prints {
		shape, least := oracle.OutlineAt(a.Block, a.Origin, a.Turn), 1.0
		for _, u := range under {
			least = min(least, shape.Plain(u))
		}
		if least < -hair {
			n++
		} else if least < -float64(geometry.Tolerance)/2 {
			sure = false
		}
	}
	return n, sure
}

// TestOverlapsOfRandomPasses lays random passes on each other, flat and round drums, and counts by
// brute force.
func TestOverlapsOfRandomPasses(t *testing.T) {
	r := &randomJob{Rand: rand.New(rand.NewPCG(5, 23))}
	told, clear, kinds := 0, 0, map[job.Shape]int{}
	for told < 120 || clear < 15 {
		r.make()
		first := r.pass
		first.Name = "first"
		item := r.item
		r.make()
		second := r.pass
		second.Name = "second"
		if r.IntN(2) == 0 {
			// Far apart, so that some are clear; and of the same pitch, so that edges touch.
			first.Gap = evenGaps(60, 60)
			second.Block, second.Gap = roundBlock(r.pick(2, 10)), evenGaps(70, 70)
		}
		if r.IntN(3) == 0 && first.Repeat == job.Straight {
			second.Between = first
		}
		ip, err := tryPlan(item, job.RightHand, first, second)
		if err != nil {
			continue
		}
		want, sure := lying(item, ip.Passes[1], ip.Passes[0])
		if !sure {
			continue
		}
		got := 0
		for _, o := range ip.Overlaps {
			got += o.Prints
		}
		if got != want || len(ip.Overlaps) > 1 {
			t.Fatalf("%v, and first %v, gap %v: %d prints told, by brute force %d", r, first.Block, first.Gap, got, want)
		}
		if want > 0 {
			told++
			kinds[item.Shape]++
		} else {
			clear++
		}
	}
	for _, s := range []job.Shape{job.Rectangle, job.Round, job.Outline, job.Drum} {
		if kinds[s] < 10 {
			t.Errorf("%d overlaps on a %s", kinds[s], s)
		}
	}
}

// TestOverlapsOnACone: 12 rows of dots lie on the prints below them as often as by brute force, the
// flat shade turned once round its apex either way.
func TestOverlapsOnACone(t *testing.T) {
	item := coneItem(60, 400, 120, 10)
	ground, dots := newPass(rectBlock(30, 30), "straight", 12), newPass(roundBlock(9), "straight", 31)
	ground.Name, dots.Name = "ground", "dots"
	ip, err := tryPlan(item, job.RightHand, ground, dots)
	if err != nil {
		t.Fatal(err)
	}
	flat := ip.Area.Flat
	want := 0
	for _, d := range ip.Passes[1].Prints {
		on := false
		for _, g := range ip.Passes[0].Prints {
			for _, turn := range []geometry.Angle{-flat.Angle, 0, flat.Angle} {
				at := g.Origin.Sub(flat.Apex).Turn(turn).Add(flat.Apex)
				on = on || oracle.OutlineAt(ground.Block, at, g.Turn+turn).Plain(oracle.OutlineAt(dots.Block, d.Origin, d.Turn)) < 0
			}
		}
		if on {
			want++
		}
	}
	if len(ip.Overlaps) != 1 || ip.Overlaps[0].Prints != want || want < 3 || want >= len(ip.Passes[1].Prints) {
		t.Errorf("%+v, by brute force %d of %d", ip.Overlaps, want, len(ip.Passes[1].Prints))
	}
}

// told is an overlap by its names.
type told struct {
	Pass, On string
	Prints   int
}

func toldOf(ip *ItemPlan) []told {
	var all []told
	for _, o := range ip.Overlaps {
		all = append(all, told{o.Pass.Pass.Name, o.On.Pass.Name, o.Prints})
	}
	return all
}

// TestWhichOverlapsAreTold: 450 mm printable, ferns of 90 and 1 mm: 4 by 4 with the joint on the
// centre, from 68.5 to 431.5 mm; a dot of 10 in the middle of the cloth, alone with a gap of
// 400 mm, is over the corners of four.
func TestWhichOverlapsAreTold(t *testing.T) {
	const head = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[block]]\nname = 'dot'\nprint = '10 x 10 mm'\n" +
		"[[item]]\nname = 'cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\nfaces = ['front', 'back']\n"
	const ferns = "[[item.pass]]\nname = 'ferns'\nblock = 'fern'\ngap = '1 mm'\n"
	dot := func(name, more string) string { return "[[item.pass]]\nname = '" + name + "'\nblock = 'dot'\n" + more }
	const alone = "gap = '400 mm'\ncentre-across = 'print'\ncentre-down = 'print'\n"
	for name, c := range map[string]struct {
		passes string
		want   []told
	}{
		"one on the other":     {ferns + dot("dots", alone), []told{{"dots", "ferns", 1}}},
		"meant to":             {ferns + dot("dots", alone+"over = true\n"), nil},
		"not meant to":         {ferns + dot("dots", alone+"over = false\n"), []told{{"dots", "ferns", 1}}},
		"each on all before":   {ferns + dot("a", alone) + dot("b", alone), []told{{"a", "ferns", 1}, {"b", "ferns", 1}, {"b", "a", 1}}},
		"on other faces":       {ferns + "face = 'front'\n" + dot("dots", alone+"face = 'back'\n"), nil},
		"on a face they share": {ferns + dot("dots", alone+"face = 'back'\n"), []told{{"dots", "ferns", 1}}},
		"set on it":            {ferns + dot("dots", "on = 'ferns'\n"), nil},
		"larger than openings": {ferns + dot("dots", "between = 'ferns'\n"), []told{{"dots", "ferns", 9}}},
		"larger, meant to":     {ferns + dot("dots", "between = 'ferns'\nover = true\n"), nil},
		"inside a frame":       {dot("dots", "repeat = 'frame'\ngap = '1 mm'\n") + ferns, nil},
		"a frame round a field": {ferns + dot("dots", "repeat = 'frame'\ngap = '1 mm'\n"),
			nil}, // 4 ferns leave 43.5 mm on either side of the area, and the frame is 10 deep
		"a frame on a field": {"[[item.pass]]\nname = 'ferns'\nblock = 'fern'\ngap = '1 mm to 40 mm'\n" + dot("dots", "repeat = 'frame'\ngap = '30 mm'\n"),
			// The field opens to the border: all 44 dots but those in the gaps of 30 mm, three a side.
			[]told{{"dots", "ferns", 0}}},
	} {
		ip := planOf(t, head+c.passes).Items[0]
		got := toldOf(ip)
		for i := range got {
			if i < len(c.want) && c.want[i].Prints == 0 {
				n, _ := lying(ip.Item, ip.Passes[1], ip.Passes[0])
				c.want[i].Prints = n
			}
		}
		if d := cmp.Diff(c.want, got); d != "" {
			t.Errorf("%s (-want +got):\n%s", name, d)
		}
	}
}

// BenchmarkOverlaps lays 100,000 dots on 100,000 others.
func BenchmarkOverlaps(b *testing.B) {
	item := rectItem(3150, 3150, 10)
	first, second := newPass(roundBlock(6), "straight", 4), newPass(rectBlock(5, 5), "brick", 5.1)
	first.Name, second.Name = "first", "second"
	ip, err := tryPlan(item, job.RightHand, first, second)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(float64(len(ip.Passes[1].Prints)), "prints")
	for b.Loop() {
		ip.Passes[1].countOn(ip.Passes[0])
	}
}

// TestRemedies puts everything that a remedy names into the job: then the overlap is gone, and a
// block a little larger, or a gap a little less, has it still.
func TestRemedies(t *testing.T) {
	r := &randomJob{Rand: rand.New(rand.NewPCG(8, 1))}
	tried := map[string]int{}
	for range 150 {
		ground := newPass([]*job.Block{rectBlock(r.pick(40, 90), r.pick(40, 90)), roundBlock(r.pick(40, 90)), leafBlock(r.pick(40, 90), r.pick(40, 90))}[r.IntN(3)], job.Straight, r.pick(0, 20))
		ground.Gap.Down.Most += r.pick(0, 9)
		seat := newPass([]*job.Block{rectBlock(r.pick(8, 40), r.pick(8, 40)), roundBlock(r.pick(8, 40)), hexBlock(r.pick(8, 30))}[r.IntN(3)], job.Straight, r.pick(2, 9))
		ground.Name, seat.Name = "ground", "seat"
		if ground.Block.Size.W == ground.Block.Size.H || r.IntN(2) == 0 {
			ground.Turns = job.Turns{{0, 180}, {180, 0}}
		}
		switch r.IntN(3) {
		case 0:
			seat.Between = ground
		case 1:
			seat.Repeat, seat.Block = job.Frame, rectBlock(r.pick(8, 40), r.pick(8, 40))
		default:
			if r.IntN(4) == 0 {
				ground.Repeat = job.Brick // no openings to be seated in
			}
		}
		item := rectItem(r.pick(300, 600), r.pick(300, 600), r.pick(0, 25))
		ip, err := tryPlan(item, job.RightHand, ground, seat)
		if err != nil || len(ip.Overlaps) == 0 {
			continue
		}
		// left lays the passes anew and tells how many still lie on others.
		left := func(size geometry.Size, gap geometry.Length, between, first bool) int {
			g, s := *ground, *seat
			if gap >= 0 {
				g.Gap = evenGaps(gap, gap)
			}
			s.Block = scaled(seat.Block, size)
			s.Between = nil
			if between || seat.Between != nil {
				s.Between, s.Repeat = &g, job.Straight
			}
			passes := []*job.Pass{&g, &s}
			if first {
				passes = []*job.Pass{&s, &g}
			}
			ip, err := tryPlan(item, job.RightHand, passes...)
			if err != nil {
				t.Fatalf("%v %v, %v %v: %v", ground.Block, ground.Gap, seat.Block, seat.Repeat, err)
			}
			n, _ := lying(item, ip.Passes[1], ip.Passes[0])
			if told := toldOf(ip); (n > 0) != (len(told) > 0) {
				t.Fatalf("%d lie, told %v", n, told)
			}
			return n
		}
		m, size := ip.Overlaps[0].Remedy(), seat.Block.Size
		check := func(what string, n int, none bool) {
			tried[what]++
			if (n == 0) != none {
				t.Fatalf("%v %v turns %v, %v %v between %v on %v: %s: %d lie; remedy %+v", ground.Block, ground.Gap, ground.Turns, seat.Block, seat.Repeat, seat.Between != nil, item.Size, what, n, m)
			}
		}
		if m.First {
			check("first", left(size, -1, false, true), true)
		}
		if m.Between && m.Gap == nil && m.Block == nil {
			check("between", left(size, -1, true, false), true)
		}
		if m.Gap != nil {
			check("gap", left(size, *m.Gap, m.Between, false), true)
			if seat.Between != nil {
				check("gap less", left(size, *m.Gap-0.02, m.Between, false), false)
			}
		}
		if m.Block != nil {
			check("block", left(*m.Block, -1, m.Between, false), true)
			if b := *m.Block; seat.Between != nil {
				k := 1 + 0.03/min(b.W, b.H)
				check("block larger", left(geometry.Size{W: b.W * k, H: b.H * k}, -1, m.Between, false), false)
			}
		}
		if !m.Known() {
			tried["none"]++
		}
	}
	for what, least := range map[string]int{"first": 10, "between": 3, "gap": 10, "gap less": 5, "block": 10, "block larger": 5, "none": 1} {
		if tried[what] < least {
			t.Errorf("%s: tried %d times, want %d: %v", what, tried[what], least, tried)
		}
	}
}
