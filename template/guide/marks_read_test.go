package guide

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/template/internal/readback"
	"underlay/template/internal/sample"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
	"underlay/testdata/pdfread"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// marksRead is a guide on one page as pdfium reads it, in the item's frame: what is drawn, in its
// order, and what is written.
type marksRead struct {
	page   *pdfread.Page
	corner geometry.Point // of the page, in the item's frame
	paths  []pdfread.Path
	texts  []pdfread.Text
	signs  []markRead
	arrows []markRead
}

// markRead is a small mark: its kind, its middle, and of an arrow which way it points.
type markRead struct {
	kind   string
	middle geometry.Point
	way    geometry.Point
}

func readMarks(t testing.TB, drawing *paper.Drawing) marksRead {
	t.Helper()
	view := paper.Whole(drawing)
	doc := pdf.Document{Title: "marks", Parts: []paper.Part{{Name: "guide", Pages: []paper.Page{{
		Size: drawing.Bounds.Size(), Views: []paper.View{view},
	}}}}}
	var out bytes.Buffer
	if err := pdf.Write(&out, doc); err != nil {
		t.Fatal(err)
	}
	m := marksRead{page: pdfread.Open(t, out.Bytes()).Pages()[0], corner: drawing.Bounds.Min}
	place := func(p geometry.Point) geometry.Point { return p.Add(m.corner) }
	for _, path := range m.page.Paths() {
		path.Lines = path.Lines.Map(place)
		m.paths = append(m.paths, path)
		if mark, ok := smallMark(path); ok {
			if mark.kind == "arrow" {
				m.arrows = append(m.arrows, mark)
			} else {
				m.signs = append(m.signs, mark)
			}
		}
	}
	for _, text := range m.page.Texts() {
		text.Box = geometry.Rect{Min: place(text.Box.Min), Max: place(text.Box.Max)}
		m.texts = append(m.texts, text)
	}
	return m
}

// smallMark tells what a path is by its form: a dot, a ring, a triangle, an open triangle, a
// square, an arrow (four corners, one of them inwards).
func smallMark(path pdfread.Path) (markRead, bool) {
	b := path.Lines.Bounds()
	if len(path.Lines) != 1 || max(b.W(), b.H()) > 6 || path.Fill == (pdfread.Colour{R: 255, G: 255, B: 255}) && path.Filled {
		return markRead{}, false
	}
	piece := path.Lines[0]
	if !piece.Closed && !path.Filled || len(piece.Steps) == 0 {
		return markRead{}, false
	}
	if piece.Steps[0].Curved {
		kind := "ring"
		if path.Filled {
			kind = "dot"
		}
		return markRead{kind: kind, middle: b.Centre()}, true
	}
	c := geometry.Polygon(readback.Corners(piece))
	if n := len(c); n > 1 && c[n-1].Distance(c[0]) <= off {
		c = c[:n-1]
	}
	var middle geometry.Point
	for _, p := range c {
		middle = middle.Add(p.Mul(1 / float64(len(c))))
	}
	switch {
	case len(c) == 3 && path.Filled:
		return markRead{kind: "triangle", middle: middle}, true
	case len(c) == 3:
		return markRead{kind: "open triangle", middle: middle}, true
	case len(c) == 4 && path.Filled && len(c.Jutting()) == 4:
		return markRead{kind: "square", middle: middle}, true
	case len(c) == 4 && path.Filled:
		barbs := c[1].Add(c[3]).Mul(0.5)
		return markRead{kind: "arrow", middle: c[0].Add(barbs).Mul(0.5), way: c[0].Sub(barbs)}, true
	}
	return markRead{}, false
}

// capitals is how high the capitals of the bold face are, in ems, as the font itself says.
func capitals(t testing.TB) geometry.Length {
	t.Helper()
	f, err := sfnt.Parse(gobold.TTF)
	if err != nil {
		t.Fatal(err)
	}
	m, err := f.Metrics(nil, fixed.I(1000), font.HintingNone)
	if err != nil {
		t.Fatal(err)
	}
	return geometry.Length(float64(m.CapHeight) / 64 / 1000)
}

// numberSize is the least height of a number on a print (the project's own ruling; heights of
// ISO 3098).
func numberSize(b *job.Block) geometry.Length {
	switch side := min(b.Size.W, b.Size.H); {
	case side >= 25-geometry.Tolerance:
		return 3.5
	case side >= 15-geometry.Tolerance:
		return 2.5
	}
	return 1.8
}

// checkMarks looks on the guide of a face for what every print has to have: its number at its
// size, in it or joined to it by a leader, on no other text and struck by no line that is not
// under white paper; the sign of its pass inside it, by its first corner; an arrow inside it that
// points to the top of the block. It returns how many numbers have no room.
func checkMarks(t *testing.T, name string, j *job.Job, face plan.FacePlan) int {
	t.Helper()
	drawing := Draw(j, face)
	m := readMarks(t, drawing)
	cap := capitals(t)
	kinds := []string{"dot", "ring", "triangle", "open triangle", "square"}
	byText := map[string][]pdfread.Text{}
	for _, w := range m.texts {
		byText[w.Text] = append(byText[w.Text], w)
	}
	fail := func(number int, format string, args ...any) {
		t.Errorf("%s, %s, print %d: %s", name, face.Label(), number, fmt.Sprintf(format, args...))
	}
	missing, arrows := 0, 0
	for i, pass := range face.Passes {
		for k, print := range pass.Prints {
			side := min(print.Block.Size.W, print.Block.Size.H)
			number := pass.First + k%(len(pass.Prints)/face.Item.Item.Pieces.Count())
			outlines := face.Item.Area.Again(print, print.Outline)
			inside := func(box geometry.Rect) bool {
				for _, o := range outlines {
					if readback.Within(o, box) {
						return true
					}
				}
				return false
			}
			var own *pdfread.Text
			for _, w := range byText[strconv.Itoa(number)] {
				box := w.Box.Grow(-w.Size / 64)
				// A tick's figure is not bold, and stands off the cloth.
				if face.Item.Area.Cloth.Holds(box) && (inside(box) || m.led(box, outlines)) {
					own = &w
				}
			}
			if own == nil {
				missing++
			} else {
				if got := own.Size * cap; math.Abs(float64(got-numberSize(print.Block))) > 0.01 {
					fail(number, "its number is %v high", got)
				}
				m.checkClear(t, own, func(format string, args ...any) { fail(number, format, args...) })
			}
			signed, pointed := false, false
			for _, s := range m.signs {
				limit := max(5, min(9, side/2))
				if s.kind == kinds[i%5] && print.Outline.Contains(s.middle) && s.middle.Distance(print.TouchDown) <= limit {
					signed = true
				}
			}
			if !signed {
				fail(number, "no %s by its first corner, %v", kinds[i%5], print.TouchDown)
			}
			for _, a := range m.arrows {
				sin, cos := print.Turn.SinCos()
				n := float64(a.way.Norm())
				if math.Abs(float64(a.way.X)/n-float64(sin)) < 1e-3 && math.Abs(float64(a.way.Y)/n+float64(cos)) < 1e-3 &&
					inside(geometry.Rect{Min: a.middle, Max: a.middle}) {
					pointed = true
				}
			}
			if !pointed {
				fail(number, "no arrow in it that points as it is turned, %v", print.Turn)
			}
			arrows++
		}
	}
	if len(m.arrows) < arrows {
		t.Errorf("%s, %s: %d arrows for %d prints", name, face.Label(), len(m.arrows), arrows)
	}
	if told := LeftOut(face, j, drawing); missing != told {
		t.Errorf("%s, %s: %d prints have no number, and the sheets say %d", name, face.Label(), missing, told)
	}
	return missing
}

// led tells whether a leader joins a box to a print.
func (m marksRead) led(box geometry.Rect, print []geometry.Outline) bool {
	for _, path := range m.paths {
		if !path.Stroked || len(path.Lines) != 1 || len(path.Lines[0].Steps) != 1 || len(path.Dashes) > 0 {
			continue
		}
		a, b := path.Lines[0].Start, path.Lines[0].Steps[0].To
		for _, o := range print {
			if box.Grow(0.9).Contains(a) && o.Contains(b) {
				return true
			}
		}
	}
	return false
}

// checkClear looks for what is in a number's way: other text, and lines that no white paper lies
// over.
func (m marksRead) checkClear(t *testing.T, w *pdfread.Text, fail func(string, ...any)) {
	t.Helper()
	box := w.Box.Grow(-w.Size/64 - 0.05)
	for _, other := range m.texts {
		if other.Box != w.Box && other.Box.Grow(-other.Size/64-0.05).Overlaps(box) {
			fail("its number stands on %q", other.Text)
		}
	}
	var struck []pdfread.Path
	for _, path := range m.paths {
		b := path.Lines.Bounds()
		if path.Filled && path.Fill == (pdfread.Colour{R: 255, G: 255, B: 255}) {
			if b.Grow(0.01).Holds(box) {
				struck = nil // what lies below is hidden
			}
			continue
		}
		if b.Grow(path.Width/2).Overlaps(box) && crosses(path, box) {
			struck = append(struck, path)
		}
	}
	if len(struck) > 0 {
		fail("its number, %v, is struck by %v", box, struck[0].Lines.Bounds())
	}
}

// crosses tells whether a path's lines run through a box.
func crosses(path pdfread.Path, box geometry.Rect) bool {
	for _, piece := range path.Lines {
		points := readback.Corners(piece)
		if piece.Closed {
			points = append(points, points[0])
		}
		for i, b := range points[1:] {
			a := points[i]
			n := math.Ceil(float64(a.Distance(b))/0.1) + 1
			for k := 0.0; k <= n; k++ {
				if box.Contains(a.Add(b.Sub(a).Mul(k / n))) {
					return true
				}
			}
		}
	}
	return false
}

// TestMarksOfPrints holds the marks of every print of the examples and of jobs harder than they
// are against what they have to be.
func TestMarksOfPrints(t *testing.T) {
	jobs := sample.Examples(t)
	for name, j := range sample.Hard(t) {
		jobs[name] = j
	}
	for name, j := range jobs {
		if j.Paper.Extent == job.EdgesExtent {
			continue
		}
		p, err := plan.New(j)
		if err != nil {
			t.Fatal(err)
		}
		for _, ip := range p.Items {
			for _, face := range ip.Laid() {
				if n := checkMarks(t, name, j, face); n > 0 {
					t.Errorf("%s, %s: %d prints without a number", name, face.Label(), n)
				}
			}
		}
	}
}

// TestMarksOfRandomPrints does so for jobs drawn at random: passes on each other, blocks of 5 mm
// and more, of all shapes and turns, with wood, gaps and laps. Prints of 8 mm and more on their
// own have room for all their numbers.
func TestMarksOfRandomPrints(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 2))
	pick := func(list ...string) string { return list[r.IntN(len(list))] }
	planned, unnumbered := 0, 0
	for range 30 {
		block := func(name string, least, most float64) string {
			w, h := least+r.Float64()*(most-least), least+r.Float64()*(most-least)
			text := fmt.Sprintf("[[block]]\nname = '%s'\n", name)
			switch r.IntN(5) {
			case 0:
				return text + fmt.Sprintf("shape = 'round'\nprint = '%.1f mm'\n", w)
			case 1:
				return text + fmt.Sprintf("shape = 'hexagon'\nprint = '%.1f mm'\n", w)
			case 2:
				return text + fmt.Sprintf("shape = 'outline'\noutline = ['0 x 0 mm', '%.1[1]f x 0 mm', '%.1[1]f x %.1[2]f mm', '%.1[3]f x %.1[4]f mm', '0 x %.1[2]f mm']\n", w, h, w*0.6, h*0.4)
			}
			text += fmt.Sprintf("print = '%.1f x %.1f mm'\n", w, h)
			if r.IntN(2) == 0 {
				text += fmt.Sprintf("wood = '%.1f x %.1f mm'\n", w+1+r.Float64()*8, h+1+r.Float64()*8)
			}
			return text
		}
		least := 8 + r.Float64()*20
		text := block("ground", least, least*2) + block("second", 5, 30) +
			fmt.Sprintf("[[item]]\nname = 'cover'\nsize = '%d x %d mm'\nborder = '%d mm'\n", 150+r.IntN(200), 150+r.IntN(200), 10+r.IntN(15)) +
			"[[item.pass]]\nblock = 'ground'\n" + pick("gap = '1 mm'", "gap = '4 mm'", "lap = '0.5 mm'", "gap = '0 mm'") + "\n" +
			"repeat = '" + pick("straight", "brick", "half-drop", "diagonal") + "'\n" + pick("", "turns = ['0 90', '270 180']\n", "turns = ['180']\n")
		passes := r.IntN(3)
		for i := range passes {
			text += fmt.Sprintf("[[item.pass]]\nname = 'pass %d'\nblock = 'second'\non = 'ground'\noffset = '%d x %d mm'\n", i, r.IntN(6), r.IntN(6)-3)
		}
		j, err := jobfile.Read("nook.toml", []byte(text))
		if err != nil {
			continue
		}
		p, err := plan.New(j)
		if err != nil || p.Items[0].Faces()[0].Count() > 400 {
			continue
		}
		planned++
		n := checkMarks(t, text, j, p.Items[0].Faces()[0])
		unnumbered += n
		if n > 0 && passes == 0 {
			t.Errorf("%s: %d prints without a number", text, n)
		}
	}
	if planned < 20 {
		t.Errorf("%d jobs were tried", planned)
	}
	t.Logf("%d jobs, %d numbers without room", planned, unnumbered)
}
