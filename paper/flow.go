package paper

import (
	"strings"

	"underlay/geometry"
)

// Flow sets text and pictures down a column, page after page: for what is read, not measured.
type Flow struct {
	size  geometry.Size
	box   geometry.Rect // of a page, inside its margin
	pages []Page
	page  *Drawing
	y     geometry.Length // where the next line may begin
	lead  geometry.Length // how much of the usual white is left between lines
}

// Heights of letters on pages that are read (ISO 3098).
const (
	titleHeight = 7 * geometry.Millimetre
	headHeight  = 3.5 * geometry.Millimetre
	textHeight  = 2.5 * geometry.Millimetre
)

// quietInk is for what is read second.
var quietInk = Grey(90)

// NewFlow begins a column on pages of the given size, margin clear on every edge.
func NewFlow(size geometry.Size, margin geometry.Length) *Flow {
	page := geometry.Rect{Max: geometry.Point{X: size.W, Y: size.H}}
	return NewFlowIn(size, page.Grow(-margin))
}

// NewFlowIn begins a column in a box of each page, which leaves the rest of it for other
// things.
func NewFlowIn(size geometry.Size, box geometry.Rect) *Flow {
	f := &Flow{size: size, box: box, lead: 1}
	f.Break()
	return f
}

// Close sets what follows closer, with four fifths of the usual white between lines.
func (f *Flow) Close() *Flow {
	f.lead = 0.8
	return f
}

// Pages returns the pages filled so far.
func (f *Flow) Pages() []Page { return f.pages }

// Break goes on at the top of a new page.
func (f *Flow) Break() {
	f.page = &Drawing{Bounds: geometry.Rect{Max: geometry.Point{X: f.size.W, Y: f.size.H}}}
	f.pages = append(f.pages, Page{Size: f.size, Views: []View{PageView(f.page)}})
	f.y = f.box.Min.Y
}

// Room returns how much of the page is left.
func (f *Flow) Room() geometry.Length { return f.box.Max.Y - f.y }

// Width returns the width of the column.
func (f *Flow) Width() geometry.Length { return f.box.W() }

// Space leaves h clear, but for the top of a page.
func (f *Flow) Space(h geometry.Length) {
	if f.y > f.box.Min.Y {
		f.y += h
	}
}

// Need breaks the page unless h is left on it.
func (f *Flow) Need(h geometry.Length) {
	if f.Room() < h && f.y > f.box.Min.Y {
		f.Break()
	}
}

// Title sets the page's title, on two lines where it is long, and a quieter line under it.
func (f *Flow) Title(title, under string) {
	for _, l := range TitleLines(title, titleHeight, f.Width()) {
		f.line(0, l, titleHeight, true, Ink{})
		f.y += 3
	}
	if under != "" {
		f.paragraph(0, under, quietInk)
	}
	f.y += 2
}

// TitleLines breaks a title into two lines at the most, in bold letters; what is longer is
// shortened.
func TitleLines(title string, height, width geometry.Length) []string {
	lines := Wrap(title, height, true, width)
	if len(lines) > 2 {
		lines = []string{lines[0], Shorten(strings.Join(lines[1:], " "), height, true, width)}
	}
	return lines
}

// Heading begins a section; it never stands alone at the foot of a page.
func (f *Flow) Heading(text string) {
	f.Need(25)
	f.Space(4 * f.lead)
	f.line(0, Shorten(text, headHeight, true, f.Width()), headHeight, true, Ink{})
	f.y += 2.2 * f.lead
}

// Text sets a paragraph.
func (f *Flow) Text(text string) { f.paragraph(0, text, Ink{}) }

// Quiet sets a paragraph in grey.
func (f *Flow) Quiet(text string) { f.paragraph(0, text, quietInk) }

// Points sets a list, each paragraph behind its sign: "1." or "–".
func (f *Flow) Points(signs func(i int) string, texts []string) {
	var indent geometry.Length
	for i := range texts {
		indent = max(indent, TextWidth(signs(i), textHeight, false)+2)
	}
	for i, t := range texts {
		f.Need(2 * textHeight)
		f.page.Write(Label{Text: signs(i), At: geometry.Pt(f.box.Min.X, f.y+textHeight), Anchor: AnchorBottomLeft, Height: textHeight, Ink: quietInk})
		f.paragraph(indent, t, Ink{})
	}
}

// paragraph sets a text in as many lines as it takes, indent in from the left.
func (f *Flow) paragraph(indent geometry.Length, text string, ink Ink) {
	for _, l := range Wrap(text, textHeight, false, f.Width()-indent) {
		f.line(indent, l, textHeight, false, ink)
		f.y += textHeight * 0.75 * f.lead
	}
	f.y += textHeight * 0.4 * f.lead
}

// line sets one line of letters at the height h.
func (f *Flow) line(indent geometry.Length, text string, h geometry.Length, bold bool, ink Ink) {
	f.Need(h * 1.4)
	f.page.Write(Label{Text: text, At: geometry.Pt(f.box.Min.X+indent, f.y+h), Anchor: AnchorBottomLeft, Height: h, Bold: bold, Ink: ink})
	f.y += h
}

// Table sets rows of cells under a head, which each page repeats, where it is not blank, each column as wide as its widest cell and a little
// more; cells of the columns named right are set to the right. A column that would run over
// the edge is shortened.
func (f *Flow) Table(head []string, rows [][]string, right ...int) {
	const space = 6 * geometry.Millimetre
	widths := make([]geometry.Length, len(head))
	for _, row := range append([][]string{head}, rows...) {
		for i, c := range row {
			widths[i] = max(widths[i], TextWidth(c, textHeight, false))
		}
	}
	total := -space
	for _, w := range widths {
		total += w + space
	}
	for total > f.Width() {
		widest := 0
		for i, w := range widths {
			if w > widths[widest] {
				widest = i
			}
		}
		cut := min(total-f.Width(), widths[widest]/2)
		widths[widest], total = widths[widest]-cut, total-cut
	}
	isRight := map[int]bool{}
	for _, i := range right {
		isRight[i] = true
	}
	set := func(row []string, ink Ink) {
		x := f.box.Min.X
		for i, c := range row {
			l := Label{Text: Shorten(c, textHeight, false, widths[i]), At: geometry.Pt(x, f.y+textHeight), Anchor: AnchorBottomLeft, Height: textHeight, Ink: ink}
			if isRight[i] {
				l.At.X, l.Anchor = x+widths[i], AnchorBottomRight
			}
			f.page.Write(l)
			x += widths[i] + space
		}
		f.y += textHeight * (1 + 0.9*f.lead)
	}
	setHead := func() {
		if strings.Join(head, "") == "" {
			return
		}
		set(head, quietInk)
		rule := f.y - textHeight*0.45
		f.page.Stroke(geometry.Line(geometry.Pt(f.box.Min.X, rule), geometry.Pt(f.box.Min.X+min(total, f.Width()), rule)), Pen{Continuous, 0.18, quietInk})
		f.y += textHeight * 0.5
	}
	f.Need(4.5 * textHeight) // the head never stands alone at the foot of a page
	setHead()
	for _, row := range rows {
		pages := len(f.pages)
		if f.Need(2 * textHeight); len(f.pages) > pages {
			setHead()
		}
		set(row, Ink{})
	}
	f.y += textHeight * 0.4
}

// Figure takes a box of the given height, as wide as the column, and hands it to draw, which
// returns what to show there.
func (f *Flow) Figure(h geometry.Length, draw func(box geometry.Rect) []View) {
	f.Need(h)
	h = min(h, f.Room())
	box := geometry.RectAt(geometry.Pt(f.box.Min.X, f.y), geometry.Size{W: f.Width(), H: h})
	p := &f.pages[len(f.pages)-1]
	p.Views = append(p.Views, draw(box)...)
	f.y += h + 2
}

// Wrap breaks text into lines no longer than width; a word that is longer alone is shortened.
func Wrap(text string, height geometry.Length, bold bool, width geometry.Length) []string {
	text, _ = Legible(text)
	f := faceOf(bold)
	em := f.em(height)
	var lines []string
	var line strings.Builder
	var long float64 // the line, in ems
	for word := range strings.FieldsSeq(text) {
		if em*geometry.Length(f.advance(0, word)) > width {
			if word = Shorten(word, height, bold, width); word == "" {
				continue
			}
		}
		if line.Len() > 0 {
			if longer := f.advance(f.advance(long, " "), word); em*geometry.Length(longer) <= width {
				line.WriteString(" " + word)
				long = longer
				continue
			}
			lines = append(lines, line.String())
			line.Reset()
		}
		line.WriteString(word)
		long = f.advance(0, word)
	}
	return append(lines, line.String())
}
