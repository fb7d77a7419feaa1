package guide

import (
	"testing"

	"underlay/geometry"
	"underlay/template/internal/readback"
	"underlay/template/internal/sample"
)

// TestBackIsTheFrontMirrored reads the guides of a bag that is no mirror image of itself back with
// pdfium: what the front shows at x is on the back at width - x, the cloth's edge, the eyelet that
// goes through, and every print; the pocket of the front is on the front alone.
func TestBackIsTheFrontMirrored(t *testing.T) {
	j := sample.Hard(t)["faces that differ"]
	var guides []guideRead
	for _, g := range facesOf(t, j) {
		read := guideRead{job: j, face: g.Face, cloth: g.Face.Item.Area.Cloth}
		for i, page := range readback.Drawn(t, g.Pages) {
			read.sheets = append(read.sheets, readback.ReadSheet(g.Sheets[i], page))
		}
		guides = append(guides, read)
	}
	if len(guides) != 2 || guides[0].face.Name() != "front" || guides[1].face.Name() != "back" {
		t.Fatalf("%d guides", len(guides))
	}
	front, back := guides[0], guides[1]
	// Of the job as it is written: 380 mm wide.
	mirror := func(q geometry.Point) geometry.Point { return geometry.Pt(380-q.X, q.Y) }
	edge := []geometry.Point{{X: 0, Y: 40}, {X: 300, Y: 0}, {X: 380, Y: 40}, {X: 340, Y: 420}, {X: 0, Y: 420}}
	box := func(x, y, w, h geometry.Length) []geometry.Point {
		return geometry.RectAt(geometry.Pt(x, y), geometry.Size{W: w, H: h}).Polygon()
	}
	ring := func(corners []geometry.Point, at func(geometry.Point) geometry.Point) []geometry.Point {
		var all []geometry.Point
		for i, a := range corners {
			all = append(all, along(at(a), at(corners[(i+1)%len(corners)]))...)
		}
		return all
	}
	asIs := func(q geometry.Point) geometry.Point { return q }
	front.mustRun(t, "the cloth's edge, front", ring(edge, asIs))
	back.mustRun(t, "the cloth's edge, back", ring(edge, mirror))
	front.mustRun(t, "the eyelet, front", ring(box(20, 60, 40, 30), asIs))
	back.mustRun(t, "the eyelet, back", ring(box(20, 60, 40, 30), mirror))
	front.mustRun(t, "the pocket, front", ring(box(200, 180, 90, 110), asIs))
	for _, s := range back.sheets {
		for _, w := range s.Page.Texts() {
			if w.Text == "pocket" {
				t.Error("the back has the front's pocket")
			}
		}
	}
	drawn := func(g guideRead, o geometry.Outline) bool {
		for _, s := range g.sheets {
			if len(stylesOf(s, o)) > 0 {
				return true
			}
		}
		return false
	}
	// The acorns are on both faces, clear of the pocket on either, and square.
	checked := 0
	for _, print := range front.face.Passes[0].Prints {
		if !drawn(front, print.Outline) {
			continue // a join cuts it
		}
		b := print.Outline.Bounds()
		m := geometry.RectOutline(geometry.Rect{Min: geometry.Pt(380-b.Max.X, b.Min.Y), Max: geometry.Pt(380-b.Min.X, b.Max.Y)})
		if checked++; !drawn(back, m) {
			t.Errorf("print %d at %v is not on the back", print.Number, print.Origin)
		}
	}
	if n := len(back.face.Passes[0].Prints); checked < 20 || n < len(front.face.Passes[0].Prints)+3 {
		t.Errorf("%d of %d prints checked, %d on the back", checked, len(front.face.Passes[0].Prints), n)
	}
}
