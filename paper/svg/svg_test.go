package svg

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/testdata/pdfread"
)

// near compares lengths to within what a mark may be off.
var near = cmp.Options{
	cmp.Comparer(func(a, b geometry.Length) bool { return math.Abs(float64(a-b)) <= 0.01 }),
	cmpopts.EquateEmpty(),
}

// drawnPiece is one piece of a path with how it is painted.
type drawnPiece struct {
	Path   geometry.Path
	Filled bool
	Width  geometry.Length
	Dashes []geometry.Length
	Phase  geometry.Length
	Colour string
}

func svgPieces(t *testing.T, f svgFile, origin geometry.Point) []drawnPiece {
	var all []drawnPiece
	for _, g := range f.Groups {
		for _, p := range g.Paths {
			one := drawnPiece{Filled: g.Fill != "none", Colour: g.Fill}
			if !one.Filled {
				one.Width, one.Dashes, one.Colour = length(t, g.Width), lengths(t, g.Dashes), g.Stroke
				if g.Mitre != "10" { // what a PDF does unless told (ISO 32000-1, Table 52)
					t.Errorf("mitres up to %q", g.Mitre)
				}
				if p.Offset != "" {
					one.Phase = length(t, p.Offset)
				}
			}
			path := pathData(t, p.D)
			if len(path) > 1 && len(one.Dashes) > 0 {
				t.Errorf("dashes run through %d pieces of one path", len(path))
			}
			for i := range path {
				one.Path = path[i : i+1].Map(func(q geometry.Point) geometry.Point { return q.Sub(origin) })
				all = append(all, one)
			}
		}
	}
	return all
}

func pdfPieces(page *pdfread.Page) []drawnPiece {
	var all []drawnPiece
	for _, p := range page.Paths() {
		one, c := drawnPiece{Filled: p.Filled, Width: p.Width, Dashes: p.Dashes, Phase: p.Phase}, p.Stroke
		if p.Filled {
			c = p.Fill
		}
		one.Colour = fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
		for i, piece := range p.Lines {
			// pdfium puts in the last step of closed pieces, back to the start.
			n := len(piece.Steps)
			if piece.Closed && !piece.Steps[n-1].Curved && piece.Steps[n-1].To == piece.Start {
				p.Lines[i].Steps = piece.Steps[:n-1]
			}
		}
		for i := range p.Lines {
			one.Path = p.Lines[i : i+1]
			all = append(all, one)
		}
	}
	return all
}

// cutOffDrawing runs over its bounds on all sides, with every type of line and both faces.
func cutOffDrawing() *paper.Drawing {
	d := &paper.Drawing{Bounds: geometry.RectAt(geometry.Pt(-25, -10), geometry.Size{W: 150.5, H: 90.25})}
	ring := geometry.CircleOutline(geometry.Pt(50, 40), 33.3).Path()
	d.Fill(geometry.RectAt(geometry.Pt(-60, 60), geometry.Size{W: 50, H: 50}).Polygon().Path(), paper.Ink{R: 200, G: 10, B: 20})
	d.Fill(ring, paper.Grey(230))
	for i, kind := range []paper.LineType{paper.Continuous, paper.Dashed, paper.Chain, paper.DoubleChain, paper.Dotted, paper.LongShort} {
		y := geometry.Length(10 * i)
		d.Stroke(geometry.Line(geometry.Pt(-60, y), geometry.Pt(200, y+3)), paper.Pen{Type: kind, Width: 0.35, Ink: paper.Grey(uint8(20 * i))})
		d.Stroke(ring, paper.Pen{Type: kind, Width: 0.5})
	}
	d.Stroke(geometry.Line(geometry.Pt(-0.00001, 60), geometry.Pt(20, -0.00001)), paper.Pen{Type: paper.Continuous, Width: 0.25})
	d.Stroke(geometry.UpArrow(geometry.Pt(20, 20), 10, 30), paper.Pen{Type: paper.Continuous, Width: 0.25})
	d.Stroke(geometry.Line(geometry.Pt(-60, -60), geometry.Pt(-50, -50)), paper.Pen{Type: paper.Continuous, Width: 0.25})
	d.Write(paper.Label{Text: "Hedge & <wave>", At: geometry.Pt(10, 30), Anchor: paper.AnchorLeft, Height: 5})
	d.Write(paper.Label{Text: "23", At: geometry.Pt(80, 30), Anchor: paper.AnchorTopRight, Height: 5, Bold: true, Ink: paper.Grey(90)})
	d.Write(paper.Label{Text: "Ось ábc", At: geometry.Pt(50, 60), Height: 2.5})
	d.Write(paper.Label{Text: "half out", At: geometry.Pt(-25, 60), Height: 2.5})
	return d
}

// guide is squares in rows with their wood, arrows, dots and numbers.
func guide(across int, side geometry.Length) *paper.Drawing {
	d := &paper.Drawing{}
	for n := range across * across {
		at := geometry.Pt(geometry.Length(n%across)*(side+1), geometry.Length(n/across)*(side+1))
		r := geometry.RectAt(at, geometry.Size{W: side, H: side})
		d.Bounds = d.Bounds.Union(r.Grow(5))
		d.Stroke(r.Polygon().Path(), paper.Pen{Type: paper.Continuous, Width: 0.25})
		d.Stroke(r.Grow(3).Polygon().Path(), paper.Pen{Type: paper.Dashed, Width: 0.25})
		d.Stroke(geometry.UpArrow(r.Centre(), side/4, 0), paper.Pen{Type: paper.Continuous, Width: 0.25})
		d.Fill(geometry.CircleOutline(geometry.Pt(r.Min.X+3, r.Max.Y-3), 1).Path(), paper.Ink{})
		d.Write(paper.Label{Text: fmt.Sprint(n + 1), At: r.Centre().Add(geometry.Pt(side/4, 0)), Height: 2.5})
	}
	return d
}

func TestSVGShowsWhatThePDFShows(t *testing.T) {
	for name, d := range map[string]*paper.Drawing{"guide": guide(3, 90), "cut off": cutOffDrawing()} {
		f := readSVG(t, name, d)
		view := paper.View{Drawing: d, Area: d.Bounds}
		var file bytes.Buffer
		if err := pdf.Write(&file, pdf.Document{Parts: []paper.Part{{Pages: []paper.Page{{Size: d.Bounds.Size(), Views: []paper.View{view}}}}}}); err != nil {
			t.Fatal(err)
		}
		page := pdfread.Open(t, file.Bytes()).Pages()[0]
		box := lengths(t, f.ViewBox)
		origin := geometry.Pt(box[0], box[1])
		if d := cmp.Diff(pdfPieces(page), svgPieces(t, f, origin), near); d != "" {
			t.Errorf("%s: lines and fills (-pdf +svg): %s", name, d)
		}
		type text struct {
			Text                string
			Left, Right, Bottom geometry.Length // of its ink; pdfium takes the top a little higher than that
			Size                geometry.Length
			Colour              string
		}
		var want, got []text
		for _, x := range page.Texts() {
			want = append(want, text{x.Text, x.Box.Min.X, x.Box.Max.X, x.Box.Max.Y, x.Size, fmt.Sprintf("#%02x%02x%02x", x.Fill.R, x.Fill.G, x.Fill.B)})
		}
		for _, g := range f.Groups {
			for _, x := range g.Texts {
				size := length(t, g.FontSize)
				at := geometry.Pt(length(t, x.X), length(t, x.Y)).Sub(origin)
				ink := inkOf(t, embedded(t, f, g.Weight), x.Text, at, size)
				got = append(got, text{x.Text, ink.Min.X, ink.Max.X, ink.Max.Y, size, g.Fill})
				if family, _, _ := strings.Cut(g.Family, ","); !strings.Contains(strings.Join(f.Styles, ""), strconv.Quote(family)) {
					t.Errorf("the face %q is not in the file", family)
				}
			}
		}
		if d := cmp.Diff(want, got, near); d != "" {
			t.Errorf("%s: text (-pdf +svg): %s", name, d)
		}
	}
}

func TestSVGIsAtTrueSize(t *testing.T) {
	d := &paper.Drawing{Bounds: geometry.Rect{Min: geometry.Pt(-25, -12.5), Max: geometry.Pt(6*25.4, 1000.0/3)}}
	f := readSVG(t, "bench & stool <1>\x00", d)
	if f.Version != "1.1" || f.Width != "177.4mm" || f.Height != "345.833mm" || f.ViewBox != "-25 -12.5 177.4 345.833" {
		t.Errorf("version %q, width %q, height %q, viewBox %q", f.Version, f.Width, f.Height, f.ViewBox)
	}
	if f.Title != "bench & stool <1>\uFFFD" {
		t.Errorf("title %q", f.Title)
	}
	if len(f.Styles) != 0 || len(f.Groups) != 0 {
		t.Errorf("nothing is drawn, and it has %d styles and %d groups", len(f.Styles), len(f.Groups))
	}
}

// Widths and lengths of line elements in ISO 128-2 (from ISO 128-20:1996, table 3): dots up to
// 0.5 d, gaps 3 d, short dashes 6 d, dashes 12 d, long dashes 24 d.
func TestSVGLinesAreInProportion(t *testing.T) {
	for _, width := range []geometry.Length{0.25, 0.35, 0.5, 0.7, 1, 1.4, 2} {
		for kind, parts := range map[paper.LineType][]geometry.Length{
			paper.Continuous: nil, paper.Dashed: {12, 3}, paper.Chain: {24, 3, 0.5, 3}, paper.DoubleChain: {24, 3, 0.5, 3, 0.5, 3}, paper.Dotted: {0.5, 3}, paper.LongShort: {24, 3, 6, 3},
		} {
			d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(100, 100)}}
			d.Stroke(geometry.Line(geometry.Pt(10, 10), geometry.Pt(90, 90)), paper.Pen{Type: kind, Width: width})
			g := readSVG(t, "line", d).Groups[0]
			var want []geometry.Length
			for _, p := range parts {
				want = append(want, max(p*width, 0.25)) // no dot is shorter
			}
			exact := cmp.Comparer(func(a, b geometry.Length) bool { return math.Abs(float64(a-b)) < 1e-9 })
			if d := cmp.Diff(want, lengths(t, g.Dashes), exact); d != "" || length(t, g.Width) != width {
				t.Errorf("type %d, %v mm: width %s, dashes: %s", kind, width, g.Width, d)
			}
		}
	}
}

func TestSVGIsTheSameEachTime(t *testing.T) {
	var a, b bytes.Buffer
	d := guide(12, 30)
	if err := Write(&a, "guide", d, Options{Face: true}); err != nil {
		t.Fatal(err)
	}
	if err := Write(&b, "guide", d, Options{Face: true}); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("two files of one drawing differ")
	}
	if n := strings.Count(a.String(), "@font-face"); n != 1 {
		t.Errorf("%d faces, and the letters are of one", n)
	}
}

func TestSVGSaysAPenOnce(t *testing.T) {
	d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(100, 100)}}
	for i := range 90 {
		y := geometry.Length(i + 1)
		d.Stroke(geometry.Line(geometry.Pt(1, y), geometry.Pt(99, y)), paper.Pen{Type: paper.LineType(i / 30), Width: 0.25})
		d.Write(paper.Label{Text: "fern", At: geometry.Pt(50, y), Height: 0.6})
	}
	if n := len(readSVG(t, "lines", d).Groups); n != 4 {
		t.Errorf("%d groups for 3 pens and a label's letters", n)
	}
}

func TestSVGNeedsASize(t *testing.T) {
	for _, r := range []geometry.Rect{{}, {Max: geometry.Pt(10, 0)}, {Max: geometry.Pt(geometry.Length(math.Inf(1)), 5)}, {Max: geometry.Pt(geometry.Length(math.NaN()), 5)}} {
		if err := Write(&bytes.Buffer{}, "x", &paper.Drawing{Bounds: r}, Options{}); err == nil {
			t.Errorf("a drawing of %v is written", r)
		}
	}
	d := &paper.Drawing{Bounds: geometry.Rect{Max: geometry.Pt(10, 10)}}
	if err := Write(full{}, "x", d, Options{}); err == nil {
		t.Error("no word of what the disk said")
	}
}

// full is a disk that takes nothing more.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }
