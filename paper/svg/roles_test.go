package svg

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
)

// rows is prints in rows, each an outline, a dot, an arrow and a number.
func rows(across, down int) *paper.Drawing {
	d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(geometry.Length(across)*31+10, geometry.Length(down)*31+10)}}
	edge := paper.NewShape(geometry.RectAround(geometry.Point{}, geometry.Size{W: 30, H: 30}).Polygon().Path())
	arrow := paper.NewShape(geometry.UpArrow(geometry.Point{}, 6, 0))
	dot := paper.Disc(0.6)
	for n := range across * down {
		at := paper.Place{At: geometry.Pt(geometry.Length(n%across)*31+20.55, geometry.Length(n/across)*31+20.55)}
		d.Stamp(edge, at, paper.Pen{Width: 0.25}, paper.Role{Kind: "edge", Number: n + 1})
	}
	for n := range across * down {
		at := paper.Place{At: geometry.Pt(geometry.Length(n%across)*31+20.55, geometry.Length(n/across)*31+20.55)}
		d.StampFill(dot, paper.Place{At: at.At.Add(geometry.Pt(-13, 13))}, paper.Ink{}, paper.Role{Kind: "dot"})
		d.Stamp(arrow, paper.Place{At: at.At.Add(geometry.Pt(4, -4))}, paper.Pen{Width: 0.25}, paper.Role{Kind: "arrow"})
		d.Write(paper.Label{Text: fmt.Sprint(n + 1), At: at.At.Add(geometry.Pt(-4, -4)), Height: 2.5, Bold: true, Role: paper.Role{Kind: "number"}})
	}
	return d
}

func TestRolesAreClassesAndNumbers(t *testing.T) {
	var out bytes.Buffer
	d := rows(5, 4)
	d.Stroke(geometry.Line(geometry.Pt(0, 1), geometry.Pt(9, 1)), paper.Pen{Width: 0.5})
	if err := Write(&out, "guide", d, Options{}); err != nil {
		t.Fatal(err)
	}
	var old bytes.Buffer
	if err := Write(&old, "guide", d, Options{Face: true}); err != nil {
		t.Fatal(err)
	}
	if strings.ReplaceAll(old.String(), "xlink:href", "href") == old.String() || !strings.Contains(old.String(), "@font-face") {
		t.Error("a picture for all readers uses what only new ones know")
	}
	s := out.String()
	for want, n := range map[string]int{
		`<g class="edge" `: 1, `<g class="number" `: 1, `<g class="dot" `: 1, `data-number="20"`: 1, `<g fill="none"`: 1, "@font-face": 0, "<defs>": 1,
		`<use href="#x`: 40, "h0": 20, `stroke-linecap="round"`: 1,
	} {
		if got := strings.Count(s, want); got != n {
			t.Errorf("%s: %d times, want %d", want, got, n)
		}
	}
}

// A picture for a screen is light: 2,000 prints take little over 300 KB.
func TestLightWithoutTheFace(t *testing.T) {
	var out bytes.Buffer
	if err := Write(&out, "guide", rows(50, 40), Options{}); err != nil {
		t.Fatal(err)
	}
	if out.Len() > 320_000 {
		t.Errorf("%d bytes", out.Len())
	}
}

// A page's picture has its furniture in it, in the page's frame, scaled as the page is.
func TestPageAsAPicture(t *testing.T) {
	d := rows(3, 3)
	for name, scale := range map[string]paper.Scale{"true size": {}, "corrected": {Across: 1.01, Down: 0.99}} {
		over := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(120, 120)}}
		over.Write(paper.Label{Text: "A1", At: geometry.Pt(20, 20), Height: 7, Bold: true})
		p := paper.Page{Size: geometry.Size{W: 120, H: 120}, Views: []paper.View{
			{Drawing: d, Area: d.Bounds, At: geometry.Pt(7, 9), Scale: scale}, paper.Whole(over),
		}}
		var out bytes.Buffer
		if err := WritePage(&out, "sheet A1", p, Options{}); err != nil {
			t.Fatal(err)
		}
		at := p.Views[0].Place(geometry.Pt(20.55, 20.55))
		for _, want := range []string{
			`viewBox="0 0 120 120"`, ">A1</text>", fmt.Sprintf(`" x="%s" y="%s" data-number="1"/>`, decimal(at.X), decimal(at.Y)),
		} {
			if !strings.Contains(out.String(), want) {
				t.Errorf("%s: no %s in\n%s", name, want, out.String())
			}
		}
	}
	if err := WritePage(&bytes.Buffer{}, "x", paper.Page{}, Options{}); err == nil {
		t.Error("a page without a size is written")
	}
}
