package paper

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/geometry"
)

var flowSize = geometry.Size{W: 210, H: 297}

const flowMargin = 14 * geometry.Millimetre

// flowText is words of all lengths, with tails and accents.
func flowText(r *rand.Rand, words int) string {
	var all []string
	for range words {
		switch n := r.IntN(40); {
		case n == 0:
			all = append(all, strings.Repeat("Ågy", 20+r.IntN(60)))
		default:
			all = append(all, strings.Repeat("jÉp", 1+n/4))
		}
	}
	return strings.Join(all, " ")
}

// pageLabels returns the labels of a page, in the order they were set.
func pageLabels(p Page) []Label {
	var all []Label
	for _, v := range p.Views {
		all = append(all, v.Drawing.Labels...)
	}
	return all
}

// TestFlowKeepsToItsColumn sets all kinds of things in any order: all keep inside the margins,
// and no text stands on text.
func TestFlowKeepsToItsColumn(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 25 {
		f := NewFlow(flowSize, flowMargin)
		figures := 0
		for range 30 {
			switch r.IntN(8) {
			case 0:
				f.Break()
				f.Title(flowText(r, 1+r.IntN(30)), flowText(r, r.IntN(30)))
			case 1:
				f.Heading(flowText(r, 1+r.IntN(30)))
			case 2:
				f.Text(flowText(r, r.IntN(120)))
			case 3:
				f.Quiet(flowText(r, r.IntN(20)))
			case 4:
				f.Points(func(i int) string { return fmt.Sprint(i+1, ".") }, []string{flowText(r, 9), flowText(r, 50), ""})
			case 5:
				f.Space(geometry.Length(r.IntN(20)))
			case 6:
				var rows [][]string
				for range r.IntN(60) {
					rows = append(rows, []string{flowText(r, 1), flowText(r, r.IntN(9)), flowText(r, 2)})
				}
				f.Table([]string{"block", "what it is for", "prints"}, rows, 2)
			case 7:
				h := geometry.Length(20 + r.IntN(300))
				f.Figure(h, func(box geometry.Rect) []View {
					d := &Drawing{Bounds: box}
					d.Stroke(box.Polygon().Path(), Pen{Width: 0.25})
					d.Write(Label{Text: fmt.Sprint("figure ", figures), At: box.Max, Anchor: AnchorBottomRight, Height: 1.8})
					figures++
					if box.H() > h+geometry.Tolerance || box.W() != f.Width() {
						t.Errorf("a figure %v high gets %v", h, box)
					}
					return []View{PageView(d)}
				})
			}
		}
		column := geometry.RectAt(geometry.Point{}, flowSize).Grow(-flowMargin)
		// Tails and accents reach beyond the line by less than half the height of the letters.
		for n, page := range f.Pages() {
			if page.Size != flowSize {
				t.Fatalf("page %d is %v", n+1, page.Size)
			}
			var boxes []geometry.Rect
			for _, l := range pageLabels(page) {
				box := l.Box()
				if !column.Holds(box) || !column.Grow(l.Height/2).Holds(l.Extent()) {
					t.Fatalf("page %d: %q at %v, the column is %v", n+1, l.Text, box, column)
				}
				for i, other := range boxes {
					if box.Overlaps(other) {
						t.Fatalf("page %d: %q at %v stands on %q at %v", n+1, l.Text, box, pageLabels(page)[i].Text, other)
					}
				}
				boxes = append(boxes, l.Extent())
			}
			for _, v := range page.Views {
				for _, s := range v.Drawing.Strokes {
					if !column.Holds(s.Bounds()) {
						t.Fatalf("page %d: a line at %v, the column is %v", n+1, s.Bounds(), column)
					}
				}
			}
		}
	}
}

func TestWrapKeepsEveryWord(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 200 {
		text := flowText(r, r.IntN(80))
		width := geometry.Length(20 + r.IntN(160))
		lines := Wrap(text, 2.5, false, width)
		var words []string
		for i, l := range lines {
			if TextWidth(l, 2.5, false) > width+geometry.Tolerance {
				t.Errorf("%q is wider than %v", l, width)
			}
			got := strings.Fields(l)
			// The first word of a line had no room on the line before.
			if i > 0 && TextWidth(lines[i-1]+" "+got[0], 2.5, false) <= width {
				t.Errorf("%q would have gone on the line %q", got[0], lines[i-1])
			}
			words = append(words, got...)
		}
		want := strings.Fields(text)
		for i, w := range want {
			want[i] = Shorten(w, 2.5, false, width)
		}
		if diff := cmp.Diff(want, words); diff != "" && len(want) > 0 {
			t.Errorf("words got lost: %s", diff)
		}
	}
}

// TestHeadingsStandWithTheirText pushes a heading down a page bit by bit.
func TestHeadingsStandWithTheirText(t *testing.T) {
	for y := geometry.Length(0); y < 290; y += 1.5 {
		f := NewFlow(flowSize, flowMargin)
		f.Text("above")
		f.Space(y)
		f.Heading("Before you print")
		f.Text("Iron the cloth.")
		for n, page := range f.Pages() {
			var texts []string
			for _, l := range pageLabels(page) {
				texts = append(texts, l.Text)
			}
			head, text := slices.Index(texts, "Before you print"), slices.Index(texts, "Iron the cloth.")
			if (head < 0) != (text < 0) {
				t.Fatalf("%v down: page %d has %q", y, n+1, texts)
			}
		}
	}
}

// TestTableHeadsStandWithTheirRows does the same for a table: every page that has rows of it
// has its head, and the other way round.
func TestTableHeadsStandWithTheirRows(t *testing.T) {
	for y := geometry.Length(0); y < 290; y += 1.5 {
		f := NewFlow(flowSize, flowMargin)
		f.Text("above")
		f.Space(y)
		f.Table([]string{"block"}, [][]string{{"fern"}, {"wave"}})
		for n, page := range f.Pages() {
			var texts []string
			for _, l := range pageLabels(page) {
				texts = append(texts, l.Text)
			}
			rows := slices.Contains(texts, "fern") || slices.Contains(texts, "wave")
			if slices.Contains(texts, "block") != rows {
				t.Fatalf("%v down: page %d has %q", y, n+1, texts)
			}
		}
	}
}

func TestTable(t *testing.T) {
	f := NewFlow(flowSize, flowMargin)
	long := strings.Repeat("a long name for a block ", 20)
	f.Table([]string{"block", "prints", "share"}, [][]string{{"fern", "5", "1/2"}, {long, "1200", "1/3"}}, 1)
	byText := map[string]Label{}
	var short string
	for _, l := range pageLabels(f.Pages()[0]) {
		byText[l.Text] = l
		if strings.HasPrefix(l.Text, "a long") {
			short = l.Text
		}
	}
	if !strings.HasSuffix(short, "…") {
		t.Errorf("the long name is %q", short)
	}
	right := func(s string) geometry.Length { return byText[s].Box().Max.X }
	left := func(s string) geometry.Length { return byText[s].Box().Min.X }
	for _, c := range []struct {
		what string
		a, b geometry.Length
	}{
		{"figures end in line", right("5"), right("1200")},
		{"their head too", right("prints"), right("1200")},
		{"names begin in line", left("fern"), left(short)},
		{"their head too", left("block"), left("fern")},
		{"the third column begins in line", left("1/2"), left("share")},
		{"nothing is cut but the long name", left("1/3") + TextWidth("share", 2.5, false), 210 - 14},
	} {
		if d := c.a - c.b; d > 0.01 || d < -0.01 {
			t.Errorf("%s: %v and %v", c.what, c.a, c.b)
		}
	}
}

func TestFigureThatHasNoRoomGoesToANewPage(t *testing.T) {
	f := NewFlow(flowSize, flowMargin)
	f.Text("above")
	var box geometry.Rect
	show := func(b geometry.Rect) []View {
		box = b
		return nil
	}
	f.Figure(100, show)
	if len(f.Pages()) != 1 || box.H() != 100 || box.Min.X != flowMargin || box.W() != f.Width() || f.Width() != 182 {
		t.Errorf("a figure with room is at %v, on page %d", box, len(f.Pages()))
	}
	left := f.Room()
	f.Figure(left+1, show)
	if len(f.Pages()) != 2 || box.Min.Y != flowMargin || box.H() != left+1 {
		t.Errorf("a figure without room is at %v, on page %d", box, len(f.Pages()))
	}
	f.Break()
	f.Space(50)
	if got := f.Room(); got != 297-2*flowMargin {
		t.Errorf("a new page has %v left: space at its top is for nothing", got)
	}
	f.Figure(1000, show)
	if len(f.Pages()) != 3 || box.H() != 297-2*flowMargin {
		t.Errorf("a figure larger than a page is at %v, on page %d", box, len(f.Pages()))
	}
}

// TestFlowClose: text that is set close takes four fifths of the white, and no line stands on another.
func TestFlowClose(t *testing.T) {
	lines := func(f *Flow) []Label {
		f.Heading("Head")
		f.Text("one")
		f.Text("two")
		f.Table([]string{"a"}, [][]string{{"b"}, {"c"}})
		return f.Pages()[0].Views[0].Drawing.Labels
	}
	usual, close := lines(NewFlow(geometry.Size{W: 210, H: 297}, 10)), lines(NewFlow(geometry.Size{W: 210, H: 297}, 10).Close())
	for i := 1; i < len(usual); i++ {
		white := func(l []Label) geometry.Length { return l[i].At.Y - l[i-1].At.Y - l[i].Height }
		if a, b := white(usual), white(close); b >= a || b < 0.75*a || b < 1 {
			t.Errorf("%q: %v mm of white under the line before, set close %v", usual[i].Text, a, b)
		}
	}
}
