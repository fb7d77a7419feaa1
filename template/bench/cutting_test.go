package bench

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/guide"
	"underlay/template/internal/readback"
	"underlay/testdata/pdfread"
)

const napkins = "[[block]]\nname = 'acorn'\nprint = '45 x 45 mm'\n[[item]]\nname = 'napkin'\nsize = '20 x 20 cm'\nborder = '20 mm'\n" +
	"pieces = '3 x 4'\napart = '20 mm'\nquantity = 2\n[[item.pass]]\nblock = 'acorn'\ngap = '12 mm'\n"

// TestCuttingPlan reads the plan of the cuts back with pdfium: a cloth of 640 x 860 mm, cut at 210 and
// 430 mm from its left edge, then at 210, 430 and 650 from the far one; each line where that is on the
// small cloth, its number and figure at its end, and the same in the table.
func TestCuttingPlan(t *testing.T) {
	p := planOf(t, napkins)
	pages := readback.Drawn(t, Sheets(p, p.Items[0])[0].Pages)
	var lines []geometry.Path
	var page *readback.Page
	for _, q := range pages {
		for _, path := range q.Paths() {
			if len(path.Dashes) == 4 && path.Dashes[2] > 2*path.Dashes[1]-0.01 {
				lines, page = append(lines, path.Lines), q
			}
		}
	}
	if len(lines) != 5 {
		t.Fatalf("%d lines to cut by, want 5", len(lines))
	}
	cloth := lines[0].Bounds()
	for _, l := range lines {
		cloth = cloth.Union(l.Bounds())
	}
	// The lines begin beyond the cloth, at its far edge and at its left one.
	outlines := slices.DeleteFunc(page.Paths(), func(o pdfread.Path) bool {
		b := o.Lines.Bounds()
		return !o.Stroked || len(o.Dashes) > 0 || !o.Lines[0].Closed || b.Max.Distance(cloth.Max) > 0.01 || !cloth.Holds(b)
	})
	if len(outlines) != 1 {
		t.Fatalf("%d outlines of the cloth", len(outlines))
	}
	cloth = outlines[0].Lines.Bounds()
	k := cloth.W() / 640
	if (k-cloth.H()/860).Abs() > 1e-3 || k < 0.05 {
		t.Errorf("the cloth is drawn %v by %v", cloth.W(), cloth.H())
	}
	for i, at := range []geometry.Length{210, 430, 210, 430, 650} {
		l := lines[i].Bounds()
		end := geometry.Pt(l.Min.X, l.Min.Y)
		off := l.Min.X - cloth.Min.X - at*k
		if i >= 2 {
			off = l.Min.Y - cloth.Min.Y - at*k
		}
		if off.Abs() > 0.01 {
			t.Errorf("cut %d is %v off its place", i+1, off)
		}
		for _, text := range []string{strconv.Itoa(i + 1), strconv.Itoa(int(at))} {
			if !slices.ContainsFunc(page.Texts(), func(w pdfread.Text) bool {
				return w.Text == text && w.Box.Centre().Distance(end) < 9 && !cloth.Overlaps(w.Box)
			}) {
				t.Errorf("cut %d: no %q at its end", i+1, text)
			}
		}
	}
	var all []string
	for _, q := range pages {
		for _, w := range q.Texts() {
			all = append(all, w.Text)
		}
	}
	text := strings.Join(all, " ")
	for _, want := range []string{
		"first cuts 1 and 2, from the far edge to the near one, then across the strips.", "Each piece keeps 10 mm beyond its size where it was cut,",
		"2 from far to near left edge 430", "5 from left to right far edge 650",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the bench sheet does not say %q:\n%s", want, text)
		}
	}
}

// TestPiecesOnTheCard: a box for each piece of both cloths, figures from each piece's edges, and the
// cutting last of all there is to do.
func TestPiecesOnTheCard(t *testing.T) {
	p := planOf(t, napkins)
	sheets := Sheets(p, p.Items[0])
	boxes, texts := 0, []string{}
	for _, v := range sheets[0].Pages[0].Views {
		for _, s := range v.Drawing.Strokes {
			if s.Role.Kind == "box" {
				boxes++
			}
		}
		for _, l := range v.Drawing.Labels {
			texts = append(texts, l.Text)
		}
	}
	if boxes != 24 {
		t.Errorf("%d boxes to tick for 24 napkins", boxes)
	}
	all := strings.Join(texts, " ")
	for _, want := range []string{
		"2 cloths: each 12 pieces on one cloth of 640 × 860 mm, 3 across and 4 down, 20 mm apart; a piece is 200 × 200 mm and has 9 prints",
		"in mm from each piece’s left and far edges", "print piece after piece, each in the order of the numbers",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("the card does not say %q:\n%s", want, all)
		}
	}
	steps := bench{job: p.Job, face: p.Items[0].Faces()[0]}.steps(false)
	if last := steps[len(steps)-1]; !strings.Contains(last, "Cut the pieces apart last, when all is dry") {
		t.Errorf("the last step is %q", last)
	}
	// For each cloth 6 tapes of 1020 mm up and down and 12 of 800 mm across.
	if m := tapeMetres(p); m != 31.5 { // 2 x (6 x 1.02 + 12 x 0.8) = 31.44
		t.Errorf("%v m of tape", m)
	}
}

// TestPiecesInTheLegend: the guide's first page says how the pieces lie and names their lines.
func TestPiecesInTheLegend(t *testing.T) {
	p := planOf(t, napkins)
	guides, err := guide.Faces(p.Job, p.Items[0], 0)
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, page := range readback.Drawn(t, Overview(p.Job, guides[0])) {
		for _, w := range page.Texts() {
			all = append(all, w.Text)
		}
	}
	text := strings.Join(all, " ")
	for _, want := range []string{"12 pieces on one cloth of 640 × 860 mm", "cut here when dry", "edge of a piece", "prints 1 to 9."} {
		if !strings.Contains(text, want) {
			t.Errorf("the first page does not say %q:\n%s", want, text)
		}
	}
}
