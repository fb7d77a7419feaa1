package pdf

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/geometry"
	"underlay/paper"
)

// What a page says, in PDF operators (ISO 32000-1, Annex A): the pen and the ink are named
// only where they change, dashes begin where the line's own beginning would have them.
func TestContentOfAPage(t *testing.T) {
	const unit = geometry.Inch / 72
	at := func(x, y float64) geometry.Point {
		return geometry.Pt(geometry.Length(x)*unit, geometry.Length(y)*unit)
	}
	square := geometry.Rect{Min: at(10, 10), Max: at(20, 20)}.Polygon().Path()
	wide := paper.Pen{Type: paper.Continuous, Width: 2 * unit}
	d := &paper.Drawing{}
	d.Fill(square, paper.Grey(255))
	d.Fill(square, paper.Grey(255))
	d.Fill(square, paper.Ink{R: 255, B: 51})
	d.Stroke(geometry.Line(at(0, 0), at(0.5, 0.25)), wide)
	d.Stroke(geometry.Line(at(-5, 10), at(200, 10)), wide)
	d.Stroke(square, paper.Pen{Type: paper.Dashed, Width: 2 * unit})
	d.Stroke(geometry.Line(at(-40, 10), at(200, 10)), paper.Pen{Type: paper.Dashed, Width: 2 * unit})
	d.Stroke(geometry.Line(at(-40, 60), at(200, 60)), wide)
	c := &content{
		view:   paper.View{Drawing: d, Area: geometry.Rect{Max: at(100, 50)}, At: at(1, 2)},
		unit:   pointsPerMM,
		height: 60,
	}
	c.draw()
	want := `q
1 8 100 50 re
W n
1 g
11 48 m
21 48 l
21 38 l
11 38 l
h
f
11 48 m
21 48 l
21 38 l
11 38 l
h
f
1 0 0.2 rg
11 48 m
21 48 l
21 38 l
11 38 l
h
f
0 G
2 w
[] 0 d
1 58 m
1.5 57.75 l
S
1 48 m
101 48 l
S
[24 6 ] 0 d
11 48 m
21 48 l
21 38 l
11 38 l
h
S
[24 6 ] 10 d
1 48 m
101 48 l
S
Q
`
	if d := cmp.Diff(want, string(c.out)); d != "" {
		t.Error(d)
	}
}

func TestNumbers(t *testing.T) {
	for x, want := range map[float64]string{
		0: "0", 1: "1", -1: "-1", 0.5: "0.5", -0.0004: "0", 0.0006: "0.001", 1234.56789: "1234.568",
		-20.05: "-20.05", 100: "100", 14400: "14400", 0.1 + 0.2: "0.3", 7.999999: "8",
	} {
		c := &content{}
		c.number(x)
		got := strings.TrimSuffix(string(c.out), " ")
		if got != want {
			t.Errorf("%v is written %s, want %s", x, got, want)
		}
		if back, err := strconv.ParseFloat(got, 64); err != nil || math.Abs(back-x) > 0.00051 {
			t.Errorf("%v is read back as %v, %v", x, back, err)
		}
	}
}
