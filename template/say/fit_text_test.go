package say

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"

	"github.com/google/go-cmp/cmp"
)

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
	block := &job.Block{Size: geometry.Size{W: 40, H: 30}}
	at := func(n int, place func(i int) geometry.Point) *plan.PassPlan {
		p := &plan.PassPlan{Pass: &job.Pass{Block: block}, First: 1}
		for i := range n {
			p.Prints = append(p.Prints, plan.Print{Site: plan.Site{Origin: place(i)}, Number: i + 1})
		}
		return p
	}
	for name, p := range map[string]*plan.PassPlan{
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
		spots := spots(p, width)
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
	q := jobfile.Quick{Item: "3x4m", Border: "25mm", Block: "90x90mm", Gap: "1mm"}
	for _, order := range []string{"centre-out", "rows"} {
		q.Order = order
		job, err := jobfile.FromFlags(q)
		if err != nil {
			t.Fatal(err)
		}
		plan, err := plan.New(job)
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
