package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
)

// TestUsesTurn: a shape that is turned is drawn once, and each use brings its corner to where it
// belongs: by x and y, and then turned about that point (SVG 1.1, 5.6 and 7.6), a metre from its
// origin too.
func TestUsesTurn(t *testing.T) {
	d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(2400, 2400)}}
	corner := geometry.Pt(1000, 25)
	shape := paper.NewShape(geometry.Polygon{corner, {X: 980, Y: 60}, {X: 970, Y: 10}}.Path())
	turns := []geometry.Angle{0, 33.33333, 90, 181.007, 7.1}
	for _, turn := range turns {
		d.StampFill(shape, paper.Place{At: geometry.Pt(1200.5, 1180.25), Turn: turn}, paper.Ink{}, paper.Role{})
	}
	var out bytes.Buffer
	if err := Write(&out, "turned", d, Options{}); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(out.String(), "<path"); n != 1 {
		t.Errorf("%d paths", n)
	}
	var picture struct {
		Uses []struct {
			X         geometry.Length `xml:"x,attr"`
			Y         geometry.Length `xml:"y,attr"`
			Transform string          `xml:"transform,attr"`
		} `xml:"g>use"`
	}
	if err := xml.Unmarshal(out.Bytes(), &picture); err != nil || len(picture.Uses) != len(turns) {
		t.Fatalf("%d uses, %v", len(picture.Uses), err)
	}
	for i, u := range picture.Uses {
		at := corner.Add(geometry.Pt(u.X, u.Y))
		if u.Transform != "" {
			var turn, x, y float64
			if _, err := fmt.Sscanf(u.Transform, "rotate(%g %g %g)", &turn, &x, &y); err != nil {
				t.Fatalf("%q: %v", u.Transform, err)
			}
			about := geometry.Pt(geometry.Length(x), geometry.Length(y))
			at = at.Sub(about).Turn(geometry.Angle(turn)).Add(about)
		}
		want := corner.Turn(turns[i]).Add(geometry.Pt(1200.5, 1180.25))
		if off := at.Distance(want); off > 0.003 {
			t.Errorf("turned by %g: off by %.4f mm", float64(turns[i]), float64(off))
		}
	}
}
