package plan

import (
	"fmt"
	"math"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

// checkedPlaces holds a pass against github.com/paulmach/orb: each print is the block's face, on the
// area, and none on another.
func checkedPlaces(t *testing.T, item *job.Item, p *PassPlan) {
	t.Helper()
	var all []oracle.Placed
	for _, q := range p.Prints {
		all = append(all, oracle.Placed{Number: q.Number, Origin: q.Origin, Turn: q.Turn, Outline: q.Outline})
	}
	oracle.CheckPlaces(t, item, p.Pass, all)
}

// TestOne: a single print stands in the middle of the printable area, on a shade opposite the seam.
func TestOne(t *testing.T) {
	uneven := rectItem(400, 300, 0)
	uneven.Border = geometry.Edges{Top: 40, Right: 10, Bottom: 20, Left: 30}
	for name, c := range map[string]struct {
		item *job.Item
		at   geometry.Point
	}{
		"cushion": {rectItem(500, 500, 25), geometry.Pt(250, 250)},
		// (30 + 390) / 2 and (40 + 280) / 2.
		"uneven borders": {uneven, geometry.Pt(210, 160)},
		"stool":          {roundItem(340, 20), geometry.Pt(170, 170)},
		"drum":           {drumItem(900, 300, 20), geometry.Pt(450, 150)},
	} {
		pass := newPass(leafBlock(60, 90), job.One, 0)
		pass.Turns = job.Turns{{90}}
		p := planned(t, c.item, pass)
		if len(p.Prints) != 1 || p.Prints[0].Origin.Distance(c.at) > 1e-9 || p.Prints[0].Turn != 90 {
			t.Errorf("%s: %+v, want one at %v", name, p.Prints, c.at)
		}
		checkedPlaces(t, c.item, p)
		if p.Drift != nil || p.Choice().Count != 1 || p.Choice().Columns != 0 {
			t.Errorf("%s: drift %v, choice %+v", name, p.Drift, p.Choice())
		}
	}
	// On a cone half way down the slope, in the middle of the flat shade.
	item := coneItem(180, 320, 240, 15)
	p := planned(t, item, newPass(rectBlock(50, 60), job.One, 0))
	d := newDevelopment(item.Shade)
	if want := d.At((d.Inner+d.Outer)/2, 0); p.Prints[0].Origin.Distance(want) > 1e-9 {
		t.Errorf("cone: %v, want %v", p.Prints[0].Origin, want)
	}
}

// TestCorners: a print in each corner of the printable area, flush with it, turned a quarter from
// the last. A leaf of 60 x 90 lies on its side in every other.
func TestCorners(t *testing.T) {
	for _, c := range []struct {
		tops  job.Tops
		hand  job.Hand
		turns []geometry.Angle // in the order of printing
	}{
		{job.TopsOut, job.RightHand, []geometry.Angle{0, 90, 270, 180}},
		{job.TopsOut, job.LeftHand, []geometry.Angle{90, 0, 180, 270}},
		{job.TopsIn, job.RightHand, []geometry.Angle{180, 270, 90, 0}},
		{job.TopsUp, job.RightHand, []geometry.Angle{0, 0, 0, 0}},
	} {
		item := rectItem(500, 400, 0)
		item.Border = geometry.Edges{Top: 40, Right: 10, Bottom: 20, Left: 30}
		pass := newPass(leafBlock(60, 90), job.Corners, 0)
		pass.Tops = c.tops
		ip, err := tryPlan(item, c.hand, pass)
		if err != nil {
			t.Fatal(err)
		}
		p := ip.Passes[0]
		var turns []geometry.Angle
		for i, q := range p.Prints {
			turns = append(turns, q.Turn)
			b := q.Outline.Bounds()
			left, top := (i%2 == 0) == (c.hand == job.RightHand), i < 2
			if left && !near(b.Min.X, 30) || !left && !near(b.Max.X, 490) || top && !near(b.Min.Y, 40) || !top && !near(b.Max.Y, 380) {
				t.Errorf("%s, %s hand: print %d lies in %v", c.tops, c.hand, i+1, b)
			}
		}
		if d := cmp.Diff(c.turns, turns); d != "" {
			t.Errorf("%s, %s hand: turns (-want +got):\n%s", c.tops, c.hand, d)
		}
		checkedPlaces(t, item, p)
	}
	// A corner kept clear has none, and it is said.
	item := rectItem(500, 400, 20)
	item.Zones = []job.Zone{{Name: "label", Rect: geometry.RectAt(geometry.Pt(450, 350), geometry.Size{W: 30, H: 30})}}
	p := planned(t, item, newPass(rectBlock(60, 60), job.Corners, 0))
	if len(p.Prints) != 3 || !strings.Contains(strings.Join(p.Notes, "\n"), "1 print is left out") {
		t.Errorf("%d prints, %q", len(p.Prints), p.Notes)
	}
	if _, err := tryPlan(rectItem(150, 400, 20), job.RightHand, newPass(rectBlock(60, 60), job.Corners, 0)); err == nil {
		t.Error("corners on each other are taken")
	}
	if p := planned(t, rectItem(160, 160, 20), newPass(rectBlock(60, 60), job.Corners, 0)); len(p.Prints) != 4 {
		t.Errorf("four that just touch: %d", len(p.Prints))
	}
}

const placedJob = `
[[block]]
name = "leaf"
print = "60 x 90 mm"
[[item]]
name = "bag"
size = "380 x 420 mm"
border = "20 mm"
  [[item.keep-clear]]
  name = "pocket"
  at = "200 x 200 mm"
  size = "100 x 80 mm"
  [[item.pass]]
  block = "leaf"
  repeat = "placed"
`

// TestPlaced: prints go where the job says, in its order, turned as it says; those that touch do not
// lie on each other.
func TestPlaced(t *testing.T) {
	p := planOf(t, placedJob+`at = ["50 x 65 mm", "110 x 65 mm", "260 x 110 mm turned 30", "100 x 300 mm turned -45.5°"]`)
	pp := p.Items[0].Passes[0]
	want := []job.Place{{At: geometry.Pt(50, 65)}, {At: geometry.Pt(110, 65)}, {At: geometry.Pt(260, 110), Turn: 30}, {At: geometry.Pt(100, 300), Turn: 314.5}}
	for i, q := range pp.Prints {
		if q.Origin != want[i].At || q.Turn != want[i].Turn || q.Number != i+1 {
			t.Errorf("print %d at %v turned %v", q.Number, q.Origin, q.Turn)
		}
	}
	checkedPlaces(t, p.Items[0].Item, pp)

	// On a drum a print may lie across the seam, and then on one that comes in on the other side.
	item := drumItem(900, 300, 20)
	pass := newPass(rectBlock(60, 90), job.Placed, 0)
	pass.Places = []job.Place{{At: geometry.Pt(10, 100)}, {At: geometry.Pt(450, 100)}}
	if p := planned(t, item, pass); !p.Prints[0].Seam || p.Prints[1].Seam {
		t.Errorf("seam: %+v", p.Prints)
	}
	pass.Places[1].At.X = 890
	if _, err := tryPlan(item, job.RightHand, pass); err == nil || !strings.Contains(err.Error(), "at 2: the print lies on that of at 1") {
		t.Errorf("two on each other across the seam: %v", err)
	}
}

// TestPlacedInTheWay: what is in the way is named, with the line and the number of the place, and
// what is said to write will do.
func TestPlacedInTheWay(t *testing.T) {
	write := regexp.MustCompile(`; write "([^"]*)"$`)
	moves := regexp.MustCompile(`write a place ([0-9.]+) mm to the (right|left), or ([0-9.]+) mm (down|up)$`)
	for _, c := range []struct{ at, want string }{
		{"340 x 65 mm", `the print reaches over the border line, by 10 mm at the right; write "330 x 65 mm"`},
		{"40.0004 x 64 mm", `by 1 mm at the top and 10 mm at the left; write "50 x 65 mm"`},
		{"330 x 400 mm turned 90", `by 15 mm at the right and 30 mm at the bottom; write "315 x 370 mm turned 90"`},
		{"340 x 120 mm turned 30", `turned 30"`},
		{"210 x 330 mm turned 0", ""},
		{"230 x 320 mm", `the print lies on "pocket", which is kept clear; write a place off it`},
		{"400 x 65 mm", `the middle of the print is not on the cloth; write a place on it`},
		{"100 x 105 mm", `the print lies on that of at 1; write a place 10 mm to the right, or 50 mm down`},
		{"100 x 105 mm turned 20", `the print lies on that of at 1; write a place `},
		{"30 x 105 mm", `by 20 mm at the left; write "50 x 105 mm"`},
	} {
		text := placedJob + fmt.Sprintf("at = [\n%q,\n%q,\n]\n", "50 x 65 mm", c.at)
		_, err := tryText(text)
		if c.want == "" {
			if err != nil {
				t.Errorf("%s: %v", c.at, err)
			}
			continue
		}
		if err == nil || !strings.HasPrefix(err.Error(), `nook.toml:18: item "bag", pass "leaf": at 2: `) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v\nwant %s", c.at, err, c.want)
			continue
		}
		var at []string
		if m := write.FindStringSubmatch(err.Error()); m != nil {
			at = append(at, m[1])
		}
		if m := moves.FindStringSubmatch(err.Error()); m != nil {
			var x, y, dx, dy float64
			fmt.Sscanf(c.at, "%g x %g", &x, &y)
			fmt.Sscan(m[1], &dx)
			fmt.Sscan(m[3], &dy)
			if m[2] == "left" {
				dx = -dx
			}
			if m[4] == "up" {
				dy = -dy
			}
			_, turned, _ := strings.Cut(c.at, "mm")
			at = append(at, fmt.Sprintf("%v x %v mm%s", x+dx, y, turned), fmt.Sprintf("%v x %v mm%s", x, y+dy, turned))
		}
		for _, at := range at {
			_, err := tryText(strings.Replace(text, fmt.Sprintf("%q", c.at), fmt.Sprintf("%q", at), 1))
			if err != nil && !strings.Contains(err.Error(), "that of at 1") {
				t.Errorf("%s: and with %s: %v", c.at, at, err)
			}
		}
	}
	// Every place that is wrong is told.
	_, err := tryText(placedJob + "at = [\"0 x 0 mm\",\n \"150 x 65 mm\",\n \"400 x 500 mm\"]\n")
	if err == nil || !strings.Contains(err.Error(), "nook.toml:16: ") || !strings.Contains(err.Error(), "nook.toml:18: ") || strings.Count(err.Error(), "\n") != 1 {
		t.Errorf("two wrong places: %v", err)
	}
}

// dent is a block with a bay in its side.
func dent() *job.Block {
	p := geometry.Polygon{{X: -20, Y: -15}, {X: 20, Y: -15}, {X: 20, Y: 15}, {X: 5, Y: 15}, {X: 0, Y: -5}, {X: -6, Y: 15}, {X: -20, Y: 15}}
	return &job.Block{Name: "fern", Shape: "outline", Size: geometry.Size{W: 40, H: 30}, Face: geometry.PolygonOutline(p)}
}

// TestTossed: strewn prints lie on the area, no two nearer than the gap, and there is room for no
// other on a grid of a tenth of the block, turned or not; the same seed strews them the same way.
// Where prints lie is judged by github.com/paulmach/orb.
func TestTossed(t *testing.T) {
	pocket := rectItem(300, 260, 15)
	pocket.Zones = []job.Zone{{Name: "pocket", Rect: geometry.RectAt(geometry.Pt(80, 90), geometry.Size{W: 90, H: 70})}}
	for name, c := range map[string]struct {
		item *job.Item
		pass *job.Pass
		any  bool
	}{
		"squares":     {rectItem(300, 260, 15), newPass(rectBlock(30, 30), job.Tossed, 4), false},
		"rectangles":  {pocket, newPass(rectBlock(40, 24), job.Tossed, 0), false},
		"pebbles":     {roundItem(280, 12), newPass(roundBlock(25), job.Tossed, 3), false},
		"leaves":      {rectItem(260, 300, 20), newPass(leafBlock(30, 48), job.Tossed, 2), true},
		"dents":       {rectItem(240, 240, 10), newPass(dent(), job.Tossed, 2), true},
		"a pennant":   {outlineItem(10, geometry.Pt(0, 0), geometry.Pt(360, 0), geometry.Pt(180, 420)), newPass(hexBlock(30), job.Tossed, 1.5), true},
		"odd border":  {rectItem(300, 260, 13.37), newPass(rectBlock(30, 26), job.Tossed, 0), false},
		"hardly room": {rectItem(100, 100, 10), newPass(rectBlock(79, 79), job.Tossed, 1), false},
	} {
		t.Run(name, func(t *testing.T) {
			c.pass.Toss = job.Toss{Seed: 5, AnyTurn: c.any}
			p := planned(t, c.item, c.pass)
			checkedPlaces(t, c.item, p)
			gap := float64(c.pass.Gap.Across.Least)
			var shapes []oracle.Shape
			for _, q := range p.Prints {
				if !c.any && q.Turn != 0 {
					t.Errorf("print %d is turned by %v", q.Number, q.Turn)
				}
				shapes = append(shapes, oracle.OutlineAt(c.pass.Block, q.Origin, q.Turn))
			}
			turns := []geometry.Angle{0}
			if c.any {
				turns = []geometry.Angle{0, 45, 90, 210}
			}
			size, reach := c.pass.Block.Size, math.Hypot(float64(c.pass.Block.Size.W), float64(c.pass.Block.Size.H))+gap
			for y := geometry.Length(0); y <= c.item.Size.H; y += size.H / 10 {
				for x := geometry.Length(0); x <= c.item.Size.W; x += size.W / 10 {
					for _, turn := range turns {
						s := oracle.OutlineAt(c.pass.Block, geometry.Pt(x, y), turn)
						if !s.Fits(c.item, oracle.Spare) {
							continue
						}
						free := true
						for _, u := range shapes {
							if math.Hypot(u.Centre[0]-s.Centre[0], u.Centre[1]-s.Centre[1]) < reach && s.Plain(u) < gap+1e-4 {
								free = false
								break
							}
						}
						if free {
							t.Fatalf("%d prints, and room for one more at %v, %v turned %v", len(shapes), x, y, turn)
						}
					}
				}
			}
			if again := planned(t, c.item, c.pass); !reflect.DeepEqual(p.Prints, again.Prints) {
				t.Error("strewn another way by the same seed")
			}
			if len(p.Prints) > 1 {
				c.pass.Toss.Seed = 6
				if other := planned(t, c.item, c.pass); reflect.DeepEqual(p.Prints, other.Prints) {
					t.Error("another seed strews the same way")
				}
			}
		})
	}
}

// TestTossedCount: as many as asked for, and no more; where they find no room, the number that does,
// which will do.
func TestTossedCount(t *testing.T) {
	item, pass := rectItem(300, 260, 15), newPass(rectBlock(30, 30), job.Tossed, 4)
	pass.Toss = job.Toss{Seed: 1, Count: 12}
	p := planned(t, item, pass)
	if len(p.Prints) != 12 {
		t.Errorf("%d prints, want 12", len(p.Prints))
	}
	checkedPlaces(t, item, p)
	pass.Toss.Count = 1000
	_, err := tryPlan(item, job.RightHand, pass)
	var asked, room int
	if m := regexp.MustCompile(`of ([0-9]+) prints ([0-9]+) find room`).FindStringSubmatch(fmt.Sprint(err)); m != nil {
		fmt.Sscan(m[1], &asked)
		fmt.Sscan(m[2], &room)
	}
	if asked != 1000 || room < 20 {
		t.Fatalf("1000 where few find room: %v", err)
	}
	pass.Toss.Count = room
	if p := planned(t, item, pass); len(p.Prints) != room {
		t.Errorf("%d prints, want %d", len(p.Prints), room)
	}
	// Too many to strew: the count that is said is taken.
	pass.Toss = job.Toss{Seed: 1}
	big := rectItem(5000, 4000, 15)
	_, err = tryPlan(big, job.RightHand, pass)
	if m := regexp.MustCompile(`write count = ([0-9,]+) or less`).FindStringSubmatch(fmt.Sprint(err)); m != nil {
		fmt.Sscan(strings.ReplaceAll(m[1], ",", ""), &pass.Toss.Count)
	}
	if pass.Toss.Count == 0 {
		t.Fatalf("no count is said: %v", err)
	}
	if _, err := tryPlan(big, job.RightHand, pass); err != nil {
		t.Errorf("with %d: %v", pass.Toss.Count, err)
	}
	// A block too large is refused as anywhere.
	if _, err := tryPlan(item, job.RightHand, newPass(rectBlock(290, 30), job.Tossed, 1)); err == nil || !strings.Contains(err.Error(), "no print fits: the block") {
		t.Errorf("a block too large: %v", err)
	}
}

// BenchmarkTossed strews as many prints as find room on 2 x 1.5 m.
func BenchmarkTossed(b *testing.B) {
	for name, pass := range map[string]*job.Pass{
		"squares": newPass(rectBlock(30, 30), job.Tossed, 4),
		"pebbles": newPass(roundBlock(30), job.Tossed, 4),
		"leaves":  newPass(leafBlock(60, 90), job.Tossed, 4),
	} {
		b.Run(name, func(b *testing.B) {
			pass.Toss = job.Toss{Seed: 1, AnyTurn: name == "leaves"}
			n := 0
			for b.Loop() {
				ip, err := tryPlan(rectItem(2000, 1500, 20), job.RightHand, pass)
				if err != nil {
					b.Fatal(err)
				}
				n = len(ip.Passes[0].Prints)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*n), "ns/print")
			b.ReportMetric(float64(n), "prints")
		})
	}
}
