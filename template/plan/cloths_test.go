package plan

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

// turnedOver is an item as one sees it after turning it over like a leaf, worked out corner by
// corner: x becomes width less x, right becomes left. Zones of one face are left to the caller.
func turnedOver(it *job.Item) *job.Item {
	w := it.Size.W
	m := *it
	m.Border.Left, m.Border.Right = it.Border.Right, it.Border.Left
	var corners geometry.Polygon
	for _, c := range it.Outline.Corners() {
		corners = append(geometry.Polygon{geometry.Pt(w-c.X, c.Y)}, corners...)
	}
	if len(corners) > 0 {
		m.Outline = geometry.PolygonOutline(corners)
	}
	m.Zones = nil
	for _, z := range it.Zones {
		z.Rect.Min.X, z.Rect.Max.X = w-z.Rect.Max.X, w-z.Rect.Min.X
		m.Zones = append(m.Zones, z)
	}
	return &m
}

// lopsided makes an item with two faces that differ, and a pass for it, at random.
func lopsided(r *randomJob) {
	for {
		r.make()
		r.item.Faces = []string{"front", "back"}
		if r.item.Shape == job.Rectangle && r.IntN(2) == 0 {
			r.item.Border.Left += r.pick(1, 30)
		}
		if !r.item.Alike(turnedOver(r.item)) {
			return
		}
	}
}

// TestTurnedOver: what is printed on the back is what would be on the front of a cloth that is
// its mirror image, print for print, on every shape and in every repeat; and the places are the
// front's, mirrored, where block and repeat are their own mirror images.
func TestTurnedOver(t *testing.T) {
	r := &randomJob{Rand: rand.New(rand.NewPCG(3, 31))}
	planned, mirrored := map[string]int{}, map[job.Repeat]int{}
	for range 400 {
		lopsided(r)
		ip, err := tryPlan(r.item, job.RightHand, r.pass)
		alone := turnedOver(r.item)
		alone.Faces = nil
		other, otherErr := tryPlan(alone, job.RightHand, r.pass)
		if err != nil {
			continue
		}
		if otherErr != nil || len(ip.Turned) != 1 || !slices.Equal(ip.Turned[0].FaceNames, []string{"back"}) {
			t.Fatalf("%v: %v, %d turned", r, otherErr, len(ip.Turned))
		}
		back := ip.Turned[0].Passes[0]
		planned[fmt.Sprint(r.item.Shape)]++
		oracle.CheckPlaces(t, alone, r.pass, placedOf(back))
		if d := cmp.Diff(places(other.Passes[0]), places(back)); d != "" {
			t.Fatalf("%v (-on the mirror image +on the back):\n%s", r, d)
		}
		if got, want := back.Choice().Border, other.Passes[0].Choice().Border; got != want {
			t.Fatalf("%v: border %v, want %v", r, got, want)
		}
		if !ownMirrorImage(ip.Passes[0]) || r.item.Shape == job.Drum {
			continue
		}
		mirrored[r.pass.Repeat]++
		width := ip.Area.Cloth.W()
		if d := cmp.Diff(mirroredPlaces(ip.Passes[0], width), places(back)); d != "" {
			t.Fatalf("%v (-front mirrored +back):\n%s", r, d)
		}
		b := ip.Passes[0].Choice().Border
		if c := back.Choice().Border; !near(b.Left, c.Right) || !near(b.Right, c.Left) || !near(b.Top, c.Top) {
			t.Fatalf("%v: border %v on the front, %v on the back", r, b, c)
		}
	}
	for _, s := range []string{"rectangle", "round", "outline", "drum"} {
		if planned[s] < 20 {
			t.Errorf("%d of shape %s", planned[s], s)
		}
	}
	for _, s := range []job.Repeat{"straight", "brick", "half-drop", "honeycomb"} {
		if mirrored[s] < 5 {
			t.Errorf("%d of %s mirrored", mirrored[s], s)
		}
	}
}

// ownMirrorImage tells whether block, turns and repeat are their own mirror images: of a half-drop
// with the joint on the middle, one of the two columns there is lower than the other.
func ownMirrorImage(pp *PassPlan) bool {
	p := pp.Pass
	if p.Repeat == job.HalfDrop && pp.Choice().Across == job.OnJoint {
		return false
	}
	return p.Block.Shape != job.OutlineFace && !p.Turns.Mixed() && len(p.Turns) == 1 && len(p.Turns[0]) == 1 &&
		(p.Repeat != job.Diagonal) && (!p.Repeat.Stepped() || p.Step == 0.5)
}

// places are where prints lie, to a millionth of a millimetre, in order of place.
func places(p *PassPlan) []string {
	return placesAt(p, func(q geometry.Point) geometry.Point { return q })
}

func mirroredPlaces(p *PassPlan, width geometry.Length) []string {
	return placesAt(p, func(q geometry.Point) geometry.Point { return geometry.Pt(width-q.X, q.Y) })
}

func placesAt(p *PassPlan, at func(geometry.Point) geometry.Point) []string {
	var all []string
	for _, q := range p.Prints {
		o := at(q.Origin)
		all = append(all, fmt.Sprintf("%.5f %.5f turned %v", float64(o.X)+1e-9, float64(o.Y)+1e-9, float64(q.Turn)))
	}
	slices.Sort(all)
	return all
}

func placedOf(p *PassPlan) []oracle.Placed {
	var all []oracle.Placed
	for _, q := range p.Prints {
		all = append(all, oracle.Placed{Number: q.Number, Origin: q.Origin, Turn: q.Turn, Outline: q.Outline})
	}
	return all
}

// TestFramesAndRingsTurnedOver: these are their own mirror images; so is what is seated in them.
func TestFramesAndRingsTurnedOver(t *testing.T) {
	frame := newPass(rectBlock(40, 30), "frame", 3)
	frame.Sides = job.Sides{job.TopSide, job.LeftSide}
	rings := newPass(rectBlock(30, 20), "rings", 3)
	ground, dots, on := newPass(rectBlock(50, 60), "straight", 20), newPass(roundBlock(12), "straight", 0), newPass(rectBlock(10, 10), "straight", 0)
	dots.Between, dots.Name, dots.OpenEdges = ground, "dots", true
	on.On, on.Name, on.Offset = ground, "on", geometry.Pt(0, 5)
	uneven := rectItem(420, 380, 20)
	uneven.Border = geometry.Edges{Top: 10, Right: 20, Bottom: 30, Left: 55}
	zoned := roundItem(420, 15)
	zoned.Zones = []job.Zone{{Name: "button", Rect: geometry.RectAt(geometry.Pt(60, 90), geometry.Size{W: 50, H: 40})}}
	for name, c := range map[string]struct {
		item   *job.Item
		passes []*job.Pass
		mirror bool
	}{
		"frame":  {uneven, []*job.Pass{newPass(rectBlock(40, 30), "frame", 3)}, true},
		"seated": {uneven, []*job.Pass{ground, dots, on}, true},
		"rings":  {zoned, []*job.Pass{rings}, false},
		"corner": {uneven, []*job.Pass{frame}, false},
	} {
		item := *c.item
		item.Faces = []string{"front", "back"}
		ip, err := tryPlan(&item, job.RightHand, c.passes...)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		alone := turnedOver(&item)
		alone.Faces = nil
		other, err := tryPlan(alone, job.RightHand, c.passes...)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for i, back := range ip.Turned[0].Passes {
			if d := cmp.Diff(places(other.Passes[i]), places(back)); d != "" {
				t.Errorf("%s: %s", name, d)
			}
			if d := cmp.Diff(mirroredPlaces(ip.Passes[i], ip.Area.Cloth.W()), places(back)); c.mirror && name != "frame" && d != "" {
				t.Errorf("%s, front mirrored: %s", name, d)
			}
		}
	}
}

// TestZonesOfAFace: a zone of the front is not on the back, one of the back lies as seen there, and
// one that goes through is mirrored. By hand: 400 wide, a zone from 30 to 70 that goes through is
// from 330 to 370 on the back.
func TestZonesOfAFace(t *testing.T) {
	zone := func(name, face string, x geometry.Length) job.Zone {
		return job.Zone{Name: name, Face: face, Rect: geometry.RectAt(geometry.Pt(x, 50), geometry.Size{W: 40, H: 60})}
	}
	rows := func(ip *ItemPlan) []string {
		var all []string
		for _, c := range ip.Cloths() {
			text := fmt.Sprint(c.FaceNames)
			for _, z := range c.Item.Zones {
				text += fmt.Sprintf(" %s at %v", z.Name, z.Rect.Min.X)
			}
			all = append(all, text)
		}
		return all
	}
	for name, c := range map[string]struct {
		faces []string
		zones []job.Zone
		want  []string
	}{
		"through":                {[]string{"front", "back"}, []job.Zone{zone("eyelet", "", 30)}, []string{"[front] eyelet at 30", "[back] eyelet at 330"}},
		"of the front":           {[]string{"front", "back"}, []job.Zone{zone("pocket", "front", 30)}, []string{"[front] pocket at 30", "[back]"}},
		"of the back":            {[]string{"front", "back"}, []job.Zone{zone("pocket", "back", 30)}, []string{"[front]", "[back] pocket at 30"}},
		"both":                   {[]string{"front", "back"}, []job.Zone{zone("pocket", "back", 30), zone("eyelet", "", 200)}, []string{"[front] eyelet at 200", "[back] pocket at 30 eyelet at 160"}},
		"in the middle":          {[]string{"front", "back"}, []job.Zone{zone("eyelet", "", 180)}, []string{"[front back] eyelet at 180"}},
		"a pair":                 {[]string{"front", "back"}, []job.Zone{zone("eyelet", "", 30), zone("eyelet", "", 330)}, []string{"[front back] eyelet at 30 eyelet at 330"}},
		"the second named first": {[]string{"back", "front"}, []job.Zone{zone("eyelet", "", 30)}, []string{"[back] eyelet at 30", "[front] eyelet at 330"}},
		"three faces":            {[]string{"a", "b", "c"}, []job.Zone{zone("eyelet", "", 30)}, []string{"[a] eyelet at 30", "[b c] eyelet at 330"}},
		"only one face":          {[]string{"back"}, []job.Zone{zone("eyelet", "", 30)}, []string{"[back] eyelet at 30"}},
	} {
		item := rectItem(400, 300, 10)
		item.Faces, item.Zones = c.faces, c.zones
		ip, err := tryPlan(item, job.RightHand, newPass(rectBlock(30, 30), "straight", 2))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if d := cmp.Diff(c.want, rows(ip)); d != "" {
			t.Errorf("%s (-want +got):\n%s", name, d)
		}
		// Each of a cloth's guides is of faces that show it so, and all faces have one.
		var got []string
		for _, f := range ip.Faces() {
			got = append(got, f.Names...)
			if !cmp.Equal(f.Names, f.Item.FaceNames) {
				t.Errorf("%s: a guide for %v of a cloth for %v", name, f.Names, f.Item.FaceNames)
			}
		}
		if d := cmp.Diff(c.faces, got); d != "" {
			t.Errorf("%s: guides (-want +got):\n%s", name, d)
		}
	}
}

// TestConeTurnedOver: a cone lies alike on both sides of its middle line; what is kept clear on one
// side is, from inside, on the other.
func TestConeTurnedOver(t *testing.T) {
	item := coneItem(150, 300, 200, 10)
	item.Faces = []string{"outside", "inside"}
	d := newDevelopment(item.Shade)
	at := d.At((d.Inner+d.Outer)/2, -20).Sub(geometry.Pt(10, 10))
	item.Zones = []job.Zone{{Name: "switch", Rect: geometry.RectAt(at, geometry.Size{W: 20, H: 20})}}
	ip, err := tryPlan(item, job.RightHand, newPass(roundBlock(20), "straight", 2))
	if err != nil {
		t.Fatal(err)
	}
	if len(ip.Turned) != 1 {
		t.Fatalf("%d turned", len(ip.Turned))
	}
	r := ip.Turned[0].Item.Zones[0].Rect
	if want := d.At((d.Inner+d.Outer)/2, 20); r.Centre().Distance(want) > 1e-9 {
		t.Errorf("the switch is at %v, want %v", r.Centre(), want)
	}
	for _, p := range ip.Turned[0].Passes[0].Prints {
		if c, radius, _ := p.Outline.Round(); radius > 0 && c.X > r.Min.X-radius && c.X < r.Max.X+radius && c.Y > r.Min.Y && c.Y < r.Max.Y {
			t.Errorf("print %d at %v lies on the switch", p.Number, c)
		}
	}
}

// TestMissesTurnedOver puts the cloth that one more takes on the back into the job: there it is one
// more or several, and with a hair less none; a zone that goes through stays where it is on the front.
func TestMissesTurnedOver(t *testing.T) {
	r := &randomJob{Rand: rand.New(rand.NewPCG(4, 9))}
	tried := 0
	for range 300 {
		lopsided(r)
		if r.item.Shape != job.Rectangle || len(r.item.Zones) == 0 {
			continue
		}
		r.pass.Gap.Across.Most, r.pass.Gap.Down.Most = r.pass.Gap.Across.Least, r.pass.Gap.Down.Least
		ip, err := tryPlan(r.item, job.RightHand, r.pass)
		if err != nil {
			continue
		}
		back := ip.Turned[0].Passes[0]
		for _, m := range back.NearMisses() {
			if m.Cloth == nil || *m.Cloth > 200 {
				continue
			}
			count := func(d geometry.Length) int {
				it := *r.item
				if m.Down {
					it.Size.H += d
				} else {
					it.Size.W += d
				}
				it.Outline = geometry.RectOutline(geometry.RectAt(geometry.Point{}, it.Size))
				ip, err := tryPlan(&it, job.RightHand, r.pass)
				if err != nil {
					t.Fatalf("%v, %v more: %v", r, d, err)
				}
				return len(ip.Turned[0].Passes[0].Prints)
			}
			tried++
			if n := count(*m.Cloth + 1e-3); n <= len(back.Prints) {
				t.Fatalf("%v: %d on the back; with %v more cloth, down %v, %d", r, len(back.Prints), *m.Cloth, m.Down, n)
			}
		}
	}
	if tried < 40 {
		t.Errorf("%d tried", tried)
	}
}
