package plan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/job"
)

// fourSidedItem is a cover of four sides and a diagonal.
func fourSidedItem(t testing.TB, sides [4]geometry.Length, diagonal geometry.Length, border geometry.Edges) *job.Item {
	t.Helper()
	text := fmt.Sprintf("[[block]]\nname = \"fern\"\nprint = \"90 x 90 mm\"\n[[item]]\nname = \"cover\"\nshape = \"four-sided\"\n"+
		"sides = [\"%.9f mm\", \"%.9f mm\", \"%.9f mm\", \"%.9f mm\"]\ndiagonal = \"%.9f mm\"\nborder = [\"%v mm\", \"%v mm\", \"%v mm\", \"%v mm\"]\n",
		float64(sides[0]), float64(sides[1]), float64(sides[2]), float64(sides[3]), float64(diagonal),
		float64(border.Top), float64(border.Right), float64(border.Bottom), float64(border.Left))
	return readJob(t, text).Items[0]
}

// TestSquareFromSides: four sides of 500 mm with a diagonal of 707.107 mm plan exactly as the 500 mm
// square, for every repeat, with borders that differ, too.
func TestSquareFromSides(t *testing.T) {
	border := geometry.Edges{Top: 20, Right: 31, Bottom: 26, Left: 25}
	crooked := fourSidedItem(t, [4]geometry.Length{500, 500, 500, 500}, 707.107, border)
	square := rectItem(500, 500, 0)
	square.Border = border
	for _, r := range job.RepeatsOn(job.FourSided) {
		// 4 x 110.5 + 2 fill 444 of 500 - 56 exactly.
		pass := newPass(rectBlock(110.5, 60), r, 2.0/3)
		if r == job.Honeycomb {
			pass.Block = roundBlock(110.5)
		}
		pass.Places = []job.Place{{At: geometry.Pt(200, 200)}}
		p, q := planned(t, crooked, pass), planned(t, square, pass)
		if !reflect.DeepEqual(p.Prints, q.Prints) || !reflect.DeepEqual(p.Choices, q.Choices) || !reflect.DeepEqual(p.NearMisses(), q.NearMisses()) {
			t.Errorf("%s: %d prints, on the square %d", r, len(p.Prints), len(q.Prints))
		}
	}
	ip, err := tryPlan(crooked, job.RightHand, newPass(rectBlock(110.5, 60), job.Straight, 2.0/3))
	if err != nil {
		t.Fatal(err)
	}
	if c, ok := ip.Crooked(); !ok || c.Corners != [4]geometry.Angle{90, 90, 90, 90} || !near(c.Field.W, 444) || !near(c.Field.H, 454) {
		t.Errorf("%+v", c)
	}
}

// TestFourSided: on random covers every print keeps each side's own border, judged by
// github.com/paulmach/orb; the pattern is centred where the creases cross, the mean of the four
// corners; the angles add up to 360 degrees and follow from the law of cosines.
func TestFourSided(t *testing.T) {
	random := rand.New(rand.NewPCG(12, 5))
	for range 60 {
		l := func(low, high float64) geometry.Length { return geometry.Length(low + random.Float64()*(high-low)) }
		sides := [4]geometry.Length{l(380, 420), l(300, 330), l(380, 420), l(300, 330)}
		diagonal := l(460, 540)
		border := geometry.EvenEdges(l(5, 40))
		if random.IntN(2) == 0 {
			border = geometry.Edges{Top: l(5, 40), Right: l(5, 40), Bottom: l(5, 40), Left: l(5, 40)}
		}
		item := fourSidedItem(t, sides, diagonal, border)
		pass := newPass(leafBlock(l(20, 60), l(20, 60)), []job.Repeat{job.Straight, job.Brick, job.HalfDrop, job.Diagonal, job.Tossed, job.One}[random.IntN(6)], l(0, 4))
		if pass.Repeat == job.Tossed {
			pass.Toss.Seed = 1
		}
		ip, err := tryPlan(item, job.RightHand, pass)
		if err != nil {
			t.Fatal(err)
		}
		p := ip.Passes[0]
		checkedPlaces(t, item, p)
		mean := geometry.Point{}
		for _, c := range item.Corners {
			mean = mean.Add(c.Mul(0.25))
		}
		level, upright, _ := ip.Area.Creases()
		if level.Middle().Distance(mean) > 1e-9 || upright.Middle().Distance(mean) > 1e-9 || !near(level.From.Y, level.To.Y) {
			t.Fatalf("creases %v and %v, the mean of the corners %v", level, upright, mean)
		}
		// What one border is wider than the opposite one moves the pattern by half of that.
		centre := mean.Add(geometry.Pt((border.Left-border.Right)/2, (border.Top-border.Bottom)/2))
		if ip.Area.Centre().Distance(centre) > 1e-9 {
			t.Fatalf("centred on %v, not %v", ip.Area.Centre(), centre)
		}
		if p.Tape != nil {
			for _, l := range p.Tape.Lines(ip.Area) {
				if want := map[string]geometry.Length{"left": mean.X, "far": mean.Y}[l.Edge]; !near(l.crease, want) || l.From != l.Edge+" corner" {
					t.Fatalf("%s from the %s, the crease at %v, not %v", l.Name, l.From, l.crease, want)
				}
			}
		}
		c, _ := ip.Crooked()
		sum := geometry.Angle(0)
		for _, a := range c.Corners {
			sum += a
		}
		// The angle top right lies across the diagonal, that bottom left too.
		cosines := func(a, b geometry.Length) geometry.Angle {
			return geometry.Degrees(math.Acos(float64((a*a + b*b - diagonal*diagonal) / (2 * a * b))))
		}
		if math.Abs(float64(sum-360)) > 1e-6 || math.Abs(float64(c.Corners[1]-cosines(sides[0], sides[1]))) > 1e-6 || math.Abs(float64(c.Corners[3]-cosines(sides[2], sides[3]))) > 1e-6 {
			t.Fatalf("sides %v, diagonal %v: corners %v", sides, diagonal, c.Corners)
		}
		// The field keeps every border, and no other about the centre that does is larger.
		holds := func(w, h float64) bool {
			b := &job.Block{Shape: job.RectangleFace, Face: geometry.RectOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: geometry.Length(w), H: geometry.Length(h)}))}
			return oracle.OutlineAt(b, ip.Area.Centre(), 0).Fits(item, 1e-6)
		}
		w, h := float64(c.Field.W), float64(c.Field.H)
		if !holds(w, h) {
			t.Fatalf("the field %v does not keep every border", c.Field)
		}
		for k := 1; k < 400; k++ {
			x := float64(k)
			if y := w * h * 1.001 / x; holds(x, y) {
				t.Fatalf("the field is %v, and %v x %v is larger", c.Field, x, y)
			}
		}
		for i, got := range []geometry.Length{p.Choice().Border.Top, p.Choice().Border.Right, p.Choice().Border.Bottom, p.Choice().Border.Left} {
			asked := []geometry.Length{border.Top, border.Right, border.Bottom, border.Left}[i]
			if got < asked-1e-6 {
				t.Fatalf("the border of side %d is %v, and %v is asked", i, got, asked)
			}
		}
	}
}

// TestFourSidedBack: the back of a cover shows it turned over like a leaf.
func TestFourSidedBack(t *testing.T) {
	item := fourSidedItem(t, [4]geometry.Length{500, 520, 490, 470}, 700, geometry.Edges{Top: 20, Right: 40, Bottom: 25, Left: 10})
	back, turned := func() (*job.Item, bool) {
		it := *item
		it.Faces = []string{"front", "back"}
		return it.Seen("back", it.Size.W)
	}()
	if !turned {
		t.Fatal("the back is not turned")
	}
	a, b := newArea(item), newArea(back)
	if want := a.Centre().Mirror(item.Size.W); b.Centre().Distance(want) > 1e-9 || b.Rect.Min.Distance(a.Rect.Mirror(item.Size.W).Min) > 1e-9 {
		t.Errorf("the back is centred on %v, in %v; the front on %v, in %v", b.Centre(), b.Rect, a.Centre(), a.Rect)
	}
}
