package template

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/geometry"
)

func TestWhy(t *testing.T) {
	even, uneven := geometry.EvenEdges(30), geometry.Edges{Top: 30, Bottom: 30, Left: 20, Right: 40}
	choice := func(across, down Centring, count int, border geometry.Edges) Choice {
		return Choice{Across: across, Down: down, Count: count, Border: border}
	}
	for _, c := range []struct {
		name    string
		asked   [2]Centring
		choices []Choice
		want    string
	}{
		{"most", [2]Centring{OnBest, OnBest}, []Choice{choice(OnPrint, OnPrint, 9, even), choice(OnPrint, OnJoint, 12, uneven)},
			"it gives the most whole prints"},
		{"evenness", [2]Centring{OnBest, OnBest}, []Choice{choice(OnPrint, OnPrint, 9, uneven), choice(OnJoint, OnPrint, 9, even)},
			"it gives as many prints as print across, print down, and more even borders"},
		{"smallest border", [2]Centring{OnBest, OnBest}, []Choice{choice(OnPrint, OnPrint, 9, even), choice(OnJoint, OnPrint, 9, geometry.EvenEdges(31))},
			"it gives as many prints as print across, print down, and its smallest border is larger"},
		{"alike", [2]Centring{OnBest, OnBest}, []Choice{choice(OnPrint, OnPrint, 9, even), choice(OnJoint, OnPrint, 9, even)},
			"it is as good as joint across, print down, and stands first"},
		{"asked", [2]Centring{OnJoint, OnPrint}, []Choice{choice(OnPrint, OnPrint, 8, even), choice(OnJoint, OnPrint, 9, even)},
			"the job asks for it"},
		{"asked at a cost", [2]Centring{OnPrint, OnPrint}, []Choice{choice(OnPrint, OnPrint, 1, even), choice(OnJoint, OnPrint, 2, even)},
			"the job asks for it, though joint across, print down gives 2 prints"},
		{"half asked at a cost", [2]Centring{OnPrint, OnBest},
			[]Choice{choice(OnPrint, OnPrint, 9, even), choice(OnPrint, OnJoint, 12, even), choice(OnJoint, OnJoint, 16, even)},
			"it gives the most whole prints, of those the job asks for, though joint across, joint down gives 16 prints"},
	} {
		t.Run(c.name, func(t *testing.T) {
			pass := &Pass{CentreAcross: c.asked[0], CentreDown: c.asked[1]}
			p := &PassPlan{Pass: pass, Choices: c.choices, Taken: take(c.choices, pass)}
			if d := cmp.Diff(c.want, p.why()); d != "" {
				t.Error(d)
			}
		})
	}
}

// TestRounded holds lengths that must be enough, or not too much, to what their unit can show.
func TestRounded(t *testing.T) {
	for _, u := range []geometry.Unit{geometry.UnitMM, geometry.UnitCM, geometry.UnitInch} {
		for i := range 1000 {
			l := geometry.Length(i) / 7 * geometry.Length(math.Pi)
			up, down := roundedUp(l, u), roundedDown(l, u)
			if up < l-geometry.Tolerance || up > l+step(u) || down > l+geometry.Tolerance || down < l-step(u) {
				t.Fatalf("%v: up %v, down %v in %s", l, up, down, u)
			}
			if got, err := geometry.ParseLength(u.Format(up)); err != nil || got < l-geometry.Tolerance {
				t.Fatalf("%v is shown as %s: %v, %v", l, u.Format(up), got, err)
			}
			if again := roundedUp(up, u); math.Abs(float64(again-up)) > 1e-9 {
				t.Fatalf("%v rounded twice: %v", up, again)
			}
		}
	}
}

// TestFitLines breaks lines, and keeps numbers and their units together.
func TestFitLines(t *testing.T) {
	f := &fitText{}
	f.say("  ", strings.Repeat("abcd ", 13)+"write 3 15/16 in or 12 mm")
	f.say("", strings.Repeat("x", 100)+" y")
	want := []string{
		"  " + strings.Repeat("abcd ", 13) + "write",
		"  3 15/16 in or 12 mm",
		strings.Repeat("x", 100),
		"y",
	}
	if d := cmp.Diff(want, f.lines); d != "" {
		t.Error(d)
	}
}

// TestSpots sets out numbers of repeats of many kinds: none may lie on another, prints of one
// height stand on one line, and the order from left to right and from far to near is kept.
func TestSpots(t *testing.T) {
	block := &Block{Size: geometry.Size{W: 40, H: 30}}
	at := func(n int, place func(i int) geometry.Point) *PassPlan {
		p := &PassPlan{Pass: &Pass{Block: block}, First: 1}
		for i := range n {
			p.Prints = append(p.Prints, Print{Site: Site{Origin: place(i)}, Number: i + 1})
		}
		return p
	}
	for name, p := range map[string]*PassPlan{
		"one":    at(1, func(int) geometry.Point { return geometry.Pt(70, 70) }),
		"column": at(9, func(i int) geometry.Point { return geometry.Pt(70, geometry.Length(31*i)) }),
		"rows":   at(120, func(i int) geometry.Point { return geometry.Pt(geometry.Length(41*(i%10)), geometry.Length(31*(i/10))) }),
		"bricks": at(120, func(i int) geometry.Point {
			return geometry.Pt(geometry.Length(41*(i%10)+20*(i/10%2)), geometry.Length(31*(i/10)))
		}),
		"dropped": at(120, func(i int) geometry.Point {
			return geometry.Pt(geometry.Length(41*(i%10)), geometry.Length(31*(i/10)+15*(i%2)))
		}),
		"turned": at(120, func(i int) geometry.Point {
			return geometry.Pt(50*geometry.Length(i%10), 50*geometry.Length(i/10)).Turn(45)
		}),
		"ring": at(30, func(i int) geometry.Point {
			return geometry.Pt(0, 300).Turn(geometry.Angle(12 * i))
		}),
	} {
		const width = 3
		spots := p.spots(width)
		taken := map[spot]int{}
		for i, s := range spots {
			if s.number != p.Prints[i].Number || s.line < 0 || s.column < 0 {
				t.Fatalf("%s: print %d is at %+v", name, i+1, s)
			}
			for column := range width {
				place := spot{line: s.line, column: s.column + column}
				if other := taken[place]; other != 0 {
					t.Fatalf("%s: %d lies on %d", name, s.number, other)
				}
				taken[place] = s.number
			}
			for j, r := range spots {
				a, b := p.Prints[i].Origin, p.Prints[j].Origin
				if math.Abs(float64(a.Y-b.Y)) < 1e-6 && s.line != r.line || s.line > r.line && a.Y <= b.Y || s.column > r.column && a.X <= b.X {
					t.Fatalf("%s: %v is at %+v, %v at %+v", name, a, s, b, r)
				}
			}
		}
	}
}

// TestPictureWindow holds a picture too large for the window to its size, with the first print
// in it, and its count to the numbers shown.
func TestPictureWindow(t *testing.T) {
	q := Quick{Item: "3x4m", Border: "25mm", Block: "90x90mm", Gap: "1mm"}
	for _, order := range []string{"centre-out", "rows"} {
		q.Order = order
		job, err := QuickJob(q)
		if err != nil {
			t.Fatal(err)
		}
		plan, err := NewPlan(job)
		if err != nil {
			t.Fatal(err)
		}
		f := &fitText{}
		f.picture(plan.Items[0].Passes[0])
		text := strings.Join(f.lines, "\n")
		head, body, _ := strings.Cut(text, ":\n")
		numbers := strings.Fields(body)
		if !strings.Contains(head, "The "+strconv.Itoa(len(numbers))+" prints round the first, of 1376,") {
			t.Errorf("%s: %d numbers under %q", order, len(numbers), head)
		}
		if !slices.Contains(numbers, "1") {
			t.Errorf("%s: the first print is not shown", order)
		}
		lines := strings.Split(body, "\n")
		if len(lines) != pictureLines {
			t.Errorf("%s: %d lines", order, len(lines))
		}
		for _, l := range lines {
			if len(l) > fitWidth {
				t.Errorf("%s: %d characters: %s", order, len(l), l)
			}
		}
		slices.Sort(numbers)
		if len(slices.Compact(numbers)) != len(strings.Fields(body)) {
			t.Errorf("%s: a number is shown twice", order)
		}
	}
}
