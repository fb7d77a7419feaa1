package bench

import (
	"fmt"
	"math"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/internal/readback"
	"underlay/template/job"
)

const tagJob = `
[[block]]
name = "fern"
print = "90 x 80 mm"
wood = "98 x 90 mm"
wood-offset = "1 x 2 mm"
[[block]]
name = "wave"
print = "300 x 250 mm"
[[item]]
name = "floor cushion"
size = "80 x 80 cm"
border = "25 mm"
  [[item.pass]]
  block = "fern"
  gap-across = "6 mm"
  gap-down = "4 mm"
  colours = ["moss"]
  [[item.pass]]
  block = "wave"
  gap = "1 mm"
`

// TestTags measures tags and gap strips with pdfium, on a true printer and on one that needs
// a correction: what comes out of the printer is within 0.01 mm of the block.
func TestTags(t *testing.T) {
	for _, printer := range []job.Printer{{}, {Across: 179.2, Down: 251}} {
		job := readJob(t, tagJob)
		job.Printer = printer
		// 180 mm across that measure 179.2 are drawn 180/179.2 as long, 250 down that measure 251
		// 250/251 as long.
		scale := paper.Scale{Across: 1, Down: 1}
		if printer.Across > 0 {
			scale = paper.Scale{Across: 180 / 179.2, Down: 250.0 / 251}
		}
		var sizes []geometry.Size // as they come out
		words := map[string]bool{}
		for _, page := range readback.Drawn(t, Tags(workedOut(t, job)).Pages) {
			for _, p := range page.Paths() {
				b := p.Lines.Bounds()
				sizes = append(sizes, geometry.Size{W: b.W() / geometry.Length(scale.Across), H: b.H() / geometry.Length(scale.Down)})
			}
			for _, text := range page.Texts() {
				words[text.Text] = true
			}
		}
		for _, want := range []struct {
			what string
			size geometry.Size
		}{
			{"the fern's wood", geometry.Size{W: 98, H: 90}},
			{"the fern's face", geometry.Size{W: 90, H: 80}},
			{"the strip between columns", geometry.Size{W: 80, H: 6}},
			{"the strip between rows", geometry.Size{W: 90, H: 4}},
			{"the check bar across", geometry.Size{W: 50}},
			{"the check bar down", geometry.Size{H: 15}},
			{"the cross tag of a block larger than a sheet", geometry.Size{W: 90, H: 90}},
		} {
			found := false
			for _, s := range sizes {
				found = found || math.Abs(float64(s.W-want.size.W)) < 0.01 && math.Abs(float64(s.H-want.size.H)) < 0.01
			}
			if !found {
				t.Errorf("printer %v: %s, %v, is not on the tags", printer, want.what, want.size)
			}
		}
		for _, w := range []string{"fern", "wave", "floor cushion, moss", "50 mm", "15 mm"} {
			if !words[w] {
				t.Errorf("printer %v: the tags do not say %q", printer, w)
			}
		}
	}
}

// TestTagsOfAllShapes looks with pdfium at the tags of faces without wood, of all shapes: the
// arrow, the name and the ticks are on the tag; of one too small for its name the name is beside
// it. A tag as high as a sheet but for its head becomes a cross.
func TestTagsOfAllShapes(t *testing.T) {
	const l = "['0 x 0 mm', '15 x 0 mm', '15 x 65 mm', '60 x 65 mm', '60 x 80 mm', '0 x 80 mm']"
	const c = "['0 x 0 mm', '70 x 0 mm', '70 x 18 mm', '20 x 18 mm', '20 x 62 mm', '70 x 62 mm', '70 x 80 mm', '0 x 80 mm']"
	for _, s := range []struct {
		face          string
		beside, cross bool
	}{
		{"shape = 'outline'\noutline = " + l, false, false},
		{"shape = 'outline'\noutline = " + c, false, false},
		{"shape = 'round'\nprint = '50 mm'", false, false},
		{"shape = 'hexagon'\nprint = '50 mm'", false, false},
		{"print = '40 x 70 mm'", false, false},
		{"print = '7 x 8 mm'", true, false},
		{"print = '150 x 255 mm'", false, false},
		{"print = '150 x 265 mm'", false, true},
	} {
		plan := planOf(t, "[[block]]\nname = 'fern'\n"+s.face+"\n[[item]]\nname = 'cover'\nsize = '60 x 80 cm'\nborder = '20 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n")
		pages := readback.Drawn(t, Tags(plan).Pages)
		page := pages[len(pages)-1]
		// The tag's edge is the widest line; from the block's own frame it is only moved.
		face := plan.Job.Blocks[0].Face
		var edge geometry.Outline
		var arrow, heading geometry.Rect
		var ticks []geometry.Rect
		crossed := false
		for _, p := range page.Paths() {
			b := p.Lines.Bounds()
			switch {
			case p.Filled:
				arrow = b
			case p.Width > 0.4:
				edge = face.Move(b.Min.Sub(face.Bounds().Min))
				crossed = math.Abs(float64(b.W()-90)) < 0.01 && math.Abs(float64(b.H()-90)) < 0.01
			case p.Width < 0.3 && min(b.W(), b.H()) < 0.01 && max(b.W(), b.H()) <= 5.01:
				ticks = append(ticks, b)
			}
		}
		if crossed != s.cross {
			t.Errorf("%s: a cross tag: %v", s.face, crossed)
		}
		named := false
		for _, w := range page.Texts() {
			if w.Text == "Tags" {
				heading = w.Box
			}
			if w.Text != "fern" {
				continue
			}
			named = true
			if on := readback.Within(edge, w.Box.Grow(-w.Size/64)); on == s.beside && !s.cross {
				t.Errorf("%s: the name is on the tag: %v", s.face, on)
			}
		}
		if !named {
			t.Errorf("%s: the tag has no name", s.face)
		}
		if s.cross {
			continue
		}
		if heading.Grow(1).Overlaps(edge.Bounds()) {
			t.Errorf("%s: the tag, %v, stands on the heading, %v", s.face, edge.Bounds(), heading)
		}
		if !readback.Within(edge, arrow) || arrow.H() <= 0 {
			t.Errorf("%s: the arrow, %v, is off the tag", s.face, arrow)
		}
		if len(ticks) < 2 {
			t.Errorf("%s: %d ticks", s.face, len(ticks))
		}
		for _, tick := range ticks {
			// It ends on the edge, found to a twentieth of a millimetre, and lies within.
			if !edge.Contains(tick.Centre()) {
				t.Errorf("%s: the tick %v is off the tag", s.face, tick)
			}
		}
	}
}

// TestTagsKeepInsideTheMargin lays out tags of every width, on printers that make things too small
// and too large: none reaches beyond the margin, and a tag becomes a cross where it would. By hand:
// of an A4 page 196 mm are inside margins of 7 mm, on which a printer that makes 180 mm come out 176
// shows 196 * 176 / 180 = 191.6 mm, one that makes them 184 shows 200.4.
func TestTagsKeepInsideTheMargin(t *testing.T) {
	for _, c := range []struct {
		measured geometry.Length
		width    float64
		cross    bool
	}{{0, 150, false}, {176, 150, false}, {176, 191.5, false}, {176, 191.8, true}, {180, 195.9, false}, {180, 196.1, true}, {184, 200.3, false}, {184, 200.6, true}} {
		j := readJob(t, fmt.Sprintf("[[block]]\nname = 'fern'\nprint = '%v x 90 mm'\n[[block]]\nname = 'acorn'\nprint = '30 x 30 mm'\n[[item]]\nname = 'cover'\nsize = '60 x 80 cm'\nborder = '20 mm'\n"+
			"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n[[item.pass]]\nblock = 'acorn'\ngap = '5 mm'\n", c.width))
		j.Printer = job.Printer{Across: c.measured}
		crossed := true
		for i, page := range readback.Drawn(t, Tags(workedOut(t, j)).Pages) {
			readback.CheckMargin(t, fmt.Sprintf("%+v, page %d", c, i+1), page, j.Paper.Margin)
			readback.CheckTexts(t, fmt.Sprintf("%+v, page %d", c, i+1), page)
			scale := 1.0
			if c.measured > 0 {
				scale = 180 / float64(c.measured)
			}
			for _, p := range page.Paths() {
				if p.Width > 0.4 && math.Abs(float64(p.Lines.Bounds().W())-c.width*scale) < 0.01 {
					crossed = false
				}
			}
		}
		if crossed != c.cross {
			t.Errorf("%+v: a cross tag: %v", c, crossed)
		}
	}
}
