package look

import (
	"math"
	"testing"

	"underlay/geometry"
	"underlay/template/jobfile"
	"underlay/template/plan"
)

// standingOf stands up the one shade of a job.
func standingOf(t *testing.T, item string) (standing, *plan.ItemPlan) {
	t.Helper()
	j, err := jobfile.Read("nook.toml", []byte("[[block]]\nname = 'pebble'\nprint = '20 x 20 mm'\n[[item]]\nname = 'lampshade'\nborder = '12 mm'\n"+item+"\n[[item.pass]]\nblock = 'pebble'\ngap = '1 mm'\n"))
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.New(j)
	if err != nil {
		t.Fatal(err)
	}
	return stood(p.Items[0]), p.Items[0]
}

const (
	drum    = "shape = 'drum'\ndiameter = '300 mm'\nheight = '200 mm'"
	frustum = "shape = 'cone'\ntop = '127 mm'\nbottom = '203.2 mm'\nheight = '100 mm'" // 5 and 8 inches across
)

// TestDrumByHand: 300 mm across, so that a twelfth of the way round, 25 pi mm, is 30 degrees, and is
// seen at 150 sin 30 = 75 mm from the middle; a quarter is at the edge.
func TestDrumByHand(t *testing.T) {
	s, _ := standingOf(t, drum)
	middle := 150 * math.Pi
	for _, c := range []struct{ x, y, seenX float64 }{
		{middle, 0, 0}, {middle + 25*math.Pi, 40, 75}, {middle - 25*math.Pi, 200, -75},
		{middle + 50*math.Pi, 10, 150 * math.Sqrt(3) / 2}, {middle + 75*math.Pi, 10, 150}, {middle - 75*math.Pi, 10, -150},
	} {
		got := s.at(geometry.Pt(geometry.Length(c.x), geometry.Length(c.y)))
		if want := geometry.Pt(geometry.Length(c.seenX), geometry.Length(c.y)); got.Distance(want) > 1e-6 {
			t.Errorf("%.2f, %.2f is seen at %v, want %v", c.x, c.y, got, want)
		}
	}
}

// TestConeByHand: of a frustum 5 and 8 inches across, the corners of what is seen are half as far from
// the middle as the ends are across; the middle line stays upright and is the height high; and a point
// 30 degrees round halfway up is at half the mean radius, 3.25/2 inches.
func TestConeByHand(t *testing.T) {
	s, ip := standingOf(t, frustum)
	d := ip.Area.Flat
	quarter := d.Angle / 4 // of the way round
	for _, c := range []struct {
		name       string
		from, want geometry.Point
	}{
		{"upper rim, middle", d.At(d.Inner, 0), geometry.Pt(0, 0)},
		{"lower rim, middle", d.At(d.Outer, 0), geometry.Pt(0, 100)},
		{"upper right", d.At(d.Inner, quarter), geometry.Pt(63.5, 0)},
		{"lower right", d.At(d.Outer, quarter), geometry.Pt(101.6, 100)},
		{"lower left", d.At(d.Outer, -quarter), geometry.Pt(-101.6, 100)},
		{"halfway, a twelfth round", d.At((d.Inner+d.Outer)/2, d.Angle/12), geometry.Pt(3.25/2*25.4, 50)},
	} {
		if got := s.at(c.from); got.Distance(c.want) > 1e-6 {
			t.Errorf("%s is seen at %v, want %v", c.name, got, c.want)
		}
	}
}

// TestSeenFollows: what is seen of a straight edge leaves the curve that it is by no more than asked
// for, however few corners it had.
func TestSeenFollows(t *testing.T) {
	for _, item := range []string{drum, frustum} {
		s, ip := standingOf(t, item)
		c := ip.Area.Cloth.Centre()
		edge := geometry.RectAround(c, geometry.Size{W: ip.Area.Cloth.W() * 0.45, H: 90}).Polygon()
		for i, p := range edge { // level edges of a drum are seen straight
			edge[i] = p.Sub(c).Turn(7).Add(c)
		}
		const slack = 0.05
		seen := cornersOf(s.seen(edge.Path(), slack)[0])
		worst := geometry.Length(0)
		for i, a := range edge {
			b := edge[(i+1)%len(edge)]
			for k := range 400 {
				worst = max(worst, seen.EdgeDistance(s.at(a.Add(b.Sub(a).Mul(float64(k)/400)))))
			}
		}
		if worst > slack || len(seen) > 400 {
			t.Errorf("%s: off by %.3f mm with %d corners", ip.Item.Shape, float64(worst), len(seen))
		}
	}
}
