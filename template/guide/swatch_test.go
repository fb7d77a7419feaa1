package guide

import (
	"testing"

	"underlay/geometry"
	"underlay/template/internal/readback"
	"underlay/template/internal/sample"
)

// TestSwatchesReadBack looks on the swatches of every example and of jobs harder than those for
// anything where the printer does not reach, and for text on other text.
func TestSwatchesReadBack(t *testing.T) {
	jobs := sample.Examples(t)
	for name, j := range sample.Hard(t) {
		jobs[name] = j
	}
	for name, j := range jobs {
		p := workedOut(t, j)
		for _, ip := range p.Items {
			all, err := Swatches(p, ip)
			if err != nil {
				t.Fatal(err)
			}
			for _, papers := range all {
				for i, page := range readback.Drawn(t, papers.Pages) {
					at := name + ", " + papers.Name + ", sheet " + papers.Sheets[i].Name
					readback.CheckMargin(t, at, page, j.Paper.Margin)
					readback.CheckTexts(t, at, page)
				}
			}
		}
	}
}

// TestSwatchKeepsWhatIsSeated: on a swatch, too, a pass that is printed on another, or between its
// prints, lies as it does on the cloth.
func TestSwatchKeepsWhatIsSeated(t *testing.T) {
	const blocks = "[[block]]\nname = 'fern'\nprint = '60 x 60 mm'\n[[block]]\nname = 'acorn'\nprint = '12 x 12 mm'\n" +
		"[[item]]\nname = 'cover'\nsize = '40 x 40 cm'\nborder = '20 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '20 mm'\n[[item.pass]]\nblock = 'acorn'\n"
	for rest, off := range map[string]geometry.Point{
		"on = 'fern'\noffset = '11 x -7 mm'\n": geometry.Pt(11, -7),
		"between = 'fern'\n":                   geometry.Pt(40, 40), // half of 60 and a gap of 20
	} {
		p := planOf(t, blocks+rest)
		all, err := Swatches(p, p.Items[0])
		if err != nil {
			t.Fatal(err)
		}
		var ferns, acorns []geometry.Point
		for _, s := range all[0].Pages[0].Views[0].Drawing.Strokes {
			if s.Role.Kind != RolePrint {
				continue
			}
			switch b := s.Bounds(); {
			case (b.W() - 60).Abs() < 0.01:
				ferns = append(ferns, b.Centre())
			case (b.W() - 12).Abs() < 0.01:
				acorns = append(acorns, b.Centre())
			}
		}
		if len(ferns) < 4 || len(acorns) == 0 {
			t.Fatalf("%s: %d ferns, %d acorns", rest, len(ferns), len(acorns))
		}
		for _, a := range acorns {
			seated := false
			for _, f := range ferns {
				seated = seated || f.Add(off).Distance(a) < 0.01
			}
			if !seated {
				t.Errorf("%s: an acorn at %v, ferns at %v", rest, a, ferns)
			}
		}
	}
}
