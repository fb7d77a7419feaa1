package pdf

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/pdfcpu/pdfcpu/pkg/api"

	"underlay/geometry"
	"underlay/paper"
	"underlay/testdata/pdfread"
)

// write returns doc as a PDF file that pdfcpu finds no fault with.
func write(t testing.TB, doc Document) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, doc); err != nil {
		t.Fatal(err)
	}
	if err := api.Validate(bytes.NewReader(out.Bytes()), pdfread.Config()); err != nil {
		t.Errorf("pdfcpu: %v", err)
	}
	return out.Bytes()
}

func pages(p ...paper.Page) []paper.Part { return []paper.Part{{Name: "guide", Pages: p}} }

// near compares lengths to within what a mark may be off.
var near = cmp.Options{
	cmp.Comparer(func(a, b geometry.Length) bool { return math.Abs(float64(a-b)) <= 0.01 }),
	cmpopts.EquateEmpty(),
}

func TestMarksLieWhereTheyShould(t *testing.T) {
	red := paper.Ink{R: 200, G: 10, B: 20}
	square := geometry.Rect{Min: geometry.Pt(30, 40), Max: geometry.Pt(45, 55)}.Polygon().Path()
	ring := geometry.CircleOutline(geometry.Pt(100, 120), 33.3).Path()
	d := &paper.Drawing{}
	d.Fill(square, red)
	d.Stroke(ring, paper.Pen{Type: paper.Continuous, Width: 0.35})
	d.Stroke(append(geometry.Line(geometry.Pt(20, 30), geometry.Pt(150, 200)), square...), paper.Pen{Type: paper.Dashed, Width: 0.5, Ink: red})
	d.Stroke(ring, paper.Pen{Type: paper.Dotted, Width: 0.7, Ink: paper.Grey(128)})

	for _, unit := range []float64{1, 2} {
		size := geometry.Size{W: 210, H: 297}
		if unit == 2 {
			size = geometry.Size{W: 210, H: 6000} // more than 14,400 units of 1/72 inch
		}
		v := paper.View{Drawing: d, Area: geometry.RectAt(geometry.Pt(-5, -10), geometry.Size{W: 190, H: 270}),
			At: geometry.Pt(7, 9), Scale: paper.Scale{Across: 1.01, Down: 0.98}}
		pdf := write(t, Document{Parts: pages(paper.Page{Size: size, Views: []paper.View{v}})})
		if has := bytes.Contains(pdf, []byte("/UserUnit 2")); has != (unit == 2) {
			t.Errorf("user unit 2: %v on a page of %v", has, size)
		}
		page := pdfread.Open(t, pdf).Pages()[0]
		if diff := cmp.Diff(size, page.SizeMM(), near); diff != "" {
			t.Error(diff)
		}
		at := func(p geometry.Path) geometry.Path {
			// The contract of View, in its own words.
			return p.Map(func(q geometry.Point) geometry.Point {
				return geometry.Pt(7+(q.X+5)*1.01, 9+(q.Y+10)*0.98)
			})
		}
		red := pdfread.Colour{R: 200, G: 10, B: 20}
		want := []pdfread.Path{
			{Lines: at(square), Filled: true, Fill: red},
			{Lines: at(ring), Stroked: true, Width: 0.35},
			{
				Lines:   at(append(geometry.Line(geometry.Pt(20, 30), geometry.Pt(150, 200)), square...)),
				Stroked: true, Width: 0.5, Dashes: []geometry.Length{6, 1.5}, Stroke: red,
			},
			{
				Lines: at(ring), Stroked: true, Width: 0.7,
				Dashes: []geometry.Length{0.35, 2.1}, Stroke: pdfread.Colour{R: 128, G: 128, B: 128},
			},
		}
		got := page.Paths()
		for i := range got {
			if got[i].Stroked {
				got[i].Fill = pdfread.Colour{}
			}
			got[i].Lines = unclosed(got[i].Lines)
		}
		if diff := cmp.Diff(want, got, near); diff != "" {
			t.Errorf("user unit %v: %s", unit, diff)
		}
	}
}

// unclosed takes out the last step of closed pieces where it only goes back to the start:
// pdfium puts one in.
func unclosed(p geometry.Path) geometry.Path {
	for i, piece := range p {
		n := len(piece.Steps)
		if piece.Closed && !piece.Steps[n-1].Curved && piece.Steps[n-1].To == piece.Start {
			p[i].Steps = piece.Steps[:n-1]
		}
	}
	return p
}

// ISO 216 and ASME Y14.1 sizes, upright and lying, and a long roll, to a hundredth of a point.
func TestPagesAreExactlyAsLargeAsAsked(t *testing.T) {
	var list []paper.Page
	for _, s := range []geometry.Size{
		{W: 210, H: 297}, {W: 297, H: 210}, {W: 841, H: 1189}, {W: 215.9, H: 279.4},
		{W: 610, H: 4000.5}, {W: 105, H: 148}, {W: 4000, H: 20},
	} {
		list = append(list, paper.Page{Size: s})
	}
	got := pdfread.Open(t, write(t, Document{Parts: pages(list...)})).Pages()
	if len(got) != len(list) {
		t.Fatalf("%d pages, want %d", len(got), len(list))
	}
	const hundredth = 25.4 / 72 / 100
	for i, p := range got {
		s := p.SizeMM()
		if math.Abs(float64(s.W-list[i].Size.W)) > hundredth || math.Abs(float64(s.H-list[i].Size.H)) > hundredth {
			t.Errorf("page %d is %v, want %v", i+1, s, list[i].Size)
		}
	}
}

// The PDF unit is 1/72 inch (ISO 32000-1, 8.3.2.3) and the inch 25.4 mm: a bar of 50 mm is
// 50/25.4*300 dots long at 300 dots an inch.
func TestBarOnPaperMeasuresWhatItSays(t *testing.T) {
	const dpi = 300
	for name, v := range map[string]paper.View{
		"true size": {},
		"corrected": {Scale: paper.Scale{Across: 180 / 179.2}},
	} {
		d := &paper.Drawing{}
		// A thick line: pdfium rounds filled rectangles outwards to whole dots.
		d.Stroke(geometry.Line(geometry.Pt(10, 15), geometry.Pt(60, 15)), paper.Pen{Width: 5})
		v.Drawing, v.Area, v.At = d, geometry.RectAt(geometry.Point{}, geometry.Size{W: 80, H: 80}), geometry.Pt(3, 4)
		page := pdfread.Open(t, write(t, Document{Parts: pages(paper.Page{Size: geometry.Size{W: 100, H: 100}, Views: []paper.View{v}})})).Pages()[0]
		ink := inked(page.Render(dpi))
		across := float64(v.Scale.Of(geometry.Pt(1, 0)).X)
		for what, c := range map[string]struct{ got, want float64 }{
			"length": {float64(ink.Dx()), 50 * across / 25.4 * dpi},
			"left":   {float64(ink.Min.X), (3 + 10*across) / 25.4 * dpi},
			"top":    {float64(ink.Min.Y), 16.5 / 25.4 * dpi},
		} {
			if math.Abs(c.got-c.want) > 1 {
				t.Errorf("%s: %s is %v dots, want %.1f", name, what, c.got, c.want)
			}
		}
	}
}

// Two sheets that overlap draw the same dashes where they do.
func TestDashesRunOnFromSheetToSheet(t *testing.T) {
	const scaleX = 1.013
	d := &paper.Drawing{}
	slope := geometry.Line(geometry.Pt(-3.3, 10), geometry.Pt(300, 60))
	pen := paper.Pen{Type: paper.Chain, Width: 0.5}
	d.Stroke(slope, pen)
	var list []paper.Page
	for _, x := range []geometry.Length{0, 80} {
		list = append(list, paper.Page{Size: geometry.Size{W: 100, H: 100}, Views: []paper.View{{
			Drawing: d, Area: geometry.RectAt(geometry.Pt(x, 0), geometry.Size{W: 92, H: 90}), Scale: paper.Scale{Across: scaleX},
		}}})
	}
	dash := map[float64]int{} // where dashes are in a pattern of 27.5 widths: from 0, from 13.5 mm
	for i, p := range pdfread.Open(t, write(t, Document{Parts: pages(list...)})).Pages() {
		paths := p.Paths()
		if len(paths) != 1 || len(paths[0].Lines) != 1 {
			t.Fatalf("sheet %d has %v", i, paths)
		}
		// How far along the whole line, on paper, does this run begin?
		start := paths[0].Lines[0].Start
		dx, dy := (303.3)*scaleX, 50.0
		along := (float64(start.X) + float64(80*i)*scaleX + 3.3*scaleX) * math.Hypot(dx, dy) / dx
		period := float64((24 + 3 + 0.5 + 3) * pen.Width)
		off := math.Mod(along-float64(paths[0].Phase)+period/2, period) - period/2
		if math.Abs(off) > 0.01 {
			t.Errorf("sheet %d: the dashes are %.4f mm off", i, off)
		}
		dash[float64(paths[0].Phase)]++
	}
	if len(dash) != 2 {
		t.Errorf("both sheets begin at the same place of the pattern: the case tests nothing")
	}
}

// Clipping is done on the numbers themselves: nothing is written outside the area, curves and
// fills that are cut included, and the page shows no ink there.
func TestNothingIsDrawnOutsideTheArea(t *testing.T) {
	d := &paper.Drawing{}
	for i := range 30 {
		c := geometry.Pt(geometry.Length(i*7%100), geometry.Length(i*31%100))
		d.Fill(geometry.CircleOutline(c, 12).Path(), paper.Grey(200))
		d.Stroke(geometry.CircleOutline(c, 14).Path(), paper.Pen{Type: paper.LineType(i % 5), Width: 0.5})
		d.Write(paper.Label{Text: fmt.Sprintf("fern %d", i), At: c, Height: 5})
	}
	area := geometry.Rect{Min: geometry.Pt(20, 25), Max: geometry.Pt(80, 70)}
	v := paper.View{Drawing: d, Area: area, At: geometry.Pt(30, 40)}
	shown := geometry.RectAt(v.At, area.Size())
	page := pdfread.Open(t, write(t, Document{Parts: pages(paper.Page{Size: geometry.Size{W: 200, H: 200}, Views: []paper.View{v}})})).Pages()[0]
	for _, p := range page.Paths() {
		if b := p.Lines.Bounds(); !shown.Grow(0.002).Holds(b) {
			t.Errorf("a path takes up %v, outside %v", b, shown)
		}
	}
	const dpi = 150
	ink := inked(page.Render(dpi))
	dots := func(l geometry.Length) int { return int(math.Round(float64(l) / 25.4 * dpi)) }
	if ink.Min.X < dots(shown.Min.X)-1 || ink.Min.Y < dots(shown.Min.Y)-1 ||
		ink.Max.X > dots(shown.Max.X)+1 || ink.Max.Y > dots(shown.Max.Y)+1 {
		t.Errorf("ink at %v, outside %v", ink, shown)
	}

	// Of the labels only whole ones are there, and all of those.
	var want, got []string
	for _, l := range d.Labels {
		if area.Holds(l.Extent()) {
			want = append(want, l.Text)
		}
	}
	for _, s := range page.Texts() {
		got = append(got, s.Text)
		if !shown.Grow(0.1).Holds(s.Box) {
			t.Errorf("%q is in %v, outside %v", s.Text, s.Box, shown)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" || len(want) == 0 || len(want) == len(d.Labels) {
		t.Error(diff, len(want))
	}

	// With the marks picked beforehand the page is the same.
	w := v
	w.Marks = paper.Split(d, []geometry.Rect{{}, area})[1]
	one := write(t, Document{Parts: pages(paper.Page{Size: geometry.Size{W: 200, H: 200}, Views: []paper.View{v}})})
	two := write(t, Document{Parts: pages(paper.Page{Size: geometry.Size{W: 200, H: 200}, Views: []paper.View{w}})})
	if !bytes.Equal(one, two) {
		t.Error("picked marks make another page")
	}
}

func TestLabelsSayWhatTheyShould(t *testing.T) {
	d := &paper.Drawing{}
	labels := []paper.Label{
		{Text: "fern", At: geometry.Pt(50, 20), Height: 5},
		{Text: "Łódź 17¾″ Ж\t🌿", At: geometry.Pt(50, 40), Height: 5, Bold: true, Ink: paper.Ink{R: 200}},
		{Text: "acorn (a\\b)", At: geometry.Pt(50, 60), Height: 2.5},
		{Text: " ", At: geometry.Pt(50, 70), Height: 5},
	}
	for _, l := range labels {
		d.Write(l)
	}
	got := onePage(t, d, geometry.Size{W: 100, H: 100}).Texts()
	want := []string{"fern", "Łódź 17¾″ Ж □", "acorn (a\\b)"}
	for i, s := range got {
		if s.Text != want[i] {
			t.Errorf("%q, want %q", s.Text, want[i])
		}
		if e := labels[i].Extent(); !e.Grow(labels[i].Height * 0.06).Holds(s.Box) {
			t.Errorf("%q is in %v, measured %v", s.Text, s.Box, e)
		}
	}
	if len(got) != len(want) {
		t.Errorf("%d labels, want %d", len(got), len(want))
	}
	if got[1].Fill != (pdfread.Colour{R: 200}) || got[2].Fill != (pdfread.Colour{}) {
		t.Errorf("colours %v and %v", got[1].Fill, got[2].Fill)
	}
}

// A printer's correction widens the lettering as it does the rest.
func TestLabelsAreScaled(t *testing.T) {
	size := geometry.Size{W: 200, H: 50}
	d := &paper.Drawing{}
	l := paper.Label{Text: "floor cushion", At: geometry.Pt(60, 30), Height: 10, Anchor: paper.AnchorLeft}
	d.Write(l)
	box := func(x, y float64) geometry.Rect {
		v := paper.View{Drawing: d, Area: geometry.RectAt(geometry.Pt(50, 0), size), Scale: paper.Scale{Across: x, Down: y}}
		return pdfread.Open(t, write(t, Document{Parts: pages(paper.Page{Size: size, Views: []paper.View{v}})})).Pages()[0].Texts()[0].Box
	}
	plain, scaled := box(1, 1), box(1.03, 0.98)
	want := geometry.Rect{
		Min: geometry.Pt(plain.Min.X*1.03, plain.Min.Y*0.98), Max: geometry.Pt(plain.Max.X*1.03, plain.Max.Y*0.98),
	}
	if diff := cmp.Diff(want, scaled, near); diff != "" {
		t.Error(diff)
	}
}

func TestSameDocumentSameBytes(t *testing.T) {
	d := &paper.Drawing{}
	for i := range 200 {
		d.Write(paper.Label{Text: fmt.Sprintf("fern %c%c", 'A'+i%26, 'Ж'+rune(i%20)), At: geometry.Pt(100, geometry.Length(i)), Height: 2.5, Bold: i%2 == 0})
	}
	doc := Document{
		Title: "nook", Attachments: []Attachment{{Name: "nook.toml", Content: []byte("title = \"nook\"\n")}},
		Parts: pages(paper.Page{Size: geometry.Size{W: 210, H: 6000}, Views: []paper.View{{Drawing: d, Area: geometry.RectAt(geometry.Point{}, geometry.Size{W: 210, H: 297})}}}),
	}
	first := write(t, doc)
	for range 3 {
		if !bytes.Equal(first, write(t, doc)) {
			t.Fatal("the same document made other bytes")
		}
	}
	if bytes.Contains(first, []byte("Date")) {
		t.Error("a document without a date says when it was made")
	}
	if made := pdfread.Open(t, first).Meta("CreationDate"); made != "" {
		t.Errorf("a document without a date was made at %q", made)
	}
}

func TestDocumentsThatCannotBe(t *testing.T) {
	for want, doc := range map[string]Document{
		"no pages":           {Parts: []paper.Part{{Name: "guide"}}},
		"page 2 is 0 x 5 mm": {Parts: pages(paper.Page{Size: geometry.Size{W: 5, H: 5}}, paper.Page{Size: geometry.Size{W: 0, H: 5}})},
		"page 1 is NaN x 5":  {Parts: pages(paper.Page{Size: geometry.Size{W: geometry.Length(math.NaN()), H: 5}})},
		"page 1 is +Inf x 5": {Parts: pages(paper.Page{Size: geometry.Size{W: geometry.Length(math.Inf(1)), H: 5}})},
	} {
		if err := Write(io.Discard, doc); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want %q, got %v", want, err)
		}
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWriterThatFails(t *testing.T) {
	err := Write(fullDisk{}, Document{Parts: pages(paper.Page{Size: geometry.Size{W: 5, H: 5}})})
	if err != io.ErrShortWrite {
		t.Errorf("got %v", err)
	}
}
