package sheets

import (
	"fmt"
	"slices"
	"sync"

	"underlay/geometry"
	"underlay/paper"
)

// Panel is what every sheet of a guide says about itself, besides its name, its neighbours and
// its check bars.
type Panel struct {
	Title  string   // whose guide it is
	Lines  []string // what is printed
	Mark   string   // tells loose sheets of one guide from those of another; "": none
	Inches bool     // a check bar of 2 in beside the one of 50 mm
	Key    []KeyLine
	Cloth  geometry.Path // the edge of what the guide is of, in the layout's frame, for the map
	Far    string        // what is said at the top of the map,
	Near   string        // and at its foot
}

// KeyLine is a sign of the guide and what it means. The sign's frame is its own, the sign a few
// millimetres large and round its origin; none: the text alone.
type KeyLine struct {
	Sign paper.Drawing
	Text string
}

// Measures of a panel. Its letters have the heights of ISO 3098.
const (
	panelText  = 2.5 * geometry.Millimetre
	panelRow   = 4.4 * geometry.Millimetre // from row to row
	panelGap   = 2 * geometry.Millimetre   // between things that do not belong together
	panelAside = 4 * geometry.Millimetre   // between columns
	keySign    = 4 * geometry.Millimetre   // room for a sign before its text
	mapWidth   = 26 * geometry.Millimetre
	mapHeight  = 17 * geometry.Millimetre
)

// Names of sheets, from large to small.
const (
	nameLarge = 14 * geometry.Millimetre
	nameSmall = 7 * geometry.Millimetre
)

// sameMark is what the mark is for.
const sameMark = "same mark, same guide"

// panelMaker draws the panels of the sheets of a tiling.
type panelMaker struct {
	Panel
	sheets []paper.Sheet
	large  miniMap       // as large as a whole panel has room for
	badge  paper.Drawing // the guide's mark and its squares
	// What only panels in pieces need, the same on every sheet.
	small func() []miniMap
	keys  func() []paper.Drawing
}

func newPanelMaker(p Panel, sheets []paper.Sheet) panelMaker {
	high := geometry.Length(mapHeight)
	if sheets[0].Joined != nil {
		high = 10 // strips are low
	}
	m := panelMaker{
		Panel: p, sheets: sheets,
		large: newMiniMap(sheets, p.Cloth, geometry.Size{W: mapWidth, H: high}),
		badge: badge(p.Mark),
	}
	m.small, m.keys = sync.OnceValue(m.smallMaps), sync.OnceValue(m.keySigns)
	return m
}

// number says which of the sheets one is.
func (m panelMaker) number(s paper.Sheet) string {
	switch {
	case len(m.sheets) == 1:
		return "the only sheet"
	case s.Joined != nil:
		return fmt.Sprintf("one of %d strips", len(m.sheets))
	}
	return fmt.Sprintf("sheet %s of %d", s.Name, len(m.sheets))
}

// whole returns the panel of a sheet in the ways it may be set out, the one to be liked most
// first: all with the same things on them. Each is drawn when it is asked for.
func (m panelMaker) whole(s paper.Sheet) []lazySign {
	var all []lazySign
	for _, c := range []struct {
		width geometry.Length
		name  geometry.Length
		aside bool // the map stands beside the words
	}{
		{104, nameLarge, true}, {86, nameLarge, true}, {70, nameLarge, true}, {56, nameLarge, false}, {40, 10, false}, {34, nameSmall, false},
		{130, nameSmall, true}, {72, nameSmall, true}, {190, 5, true},
	} {
		all = append(all, sync.OnceValue(func() paper.Drawing { return m.set(s, c.width, c.name, c.aside) }))
	}
	return all
}

// set sets a panel out, so wide, its name so high: beside the name which of the sheets it is, and
// the mark; below, what is printed and what signs mean; the map at the right, or at the foot.
func (m panelMaker) set(s paper.Sheet, width, name geometry.Length, aside bool) paper.Drawing {
	var d paper.Drawing
	words := width
	if aside {
		words -= mapWidth + panelAside
	}
	title := paper.Label{Text: s.Name, At: geometry.Pt(0, name), Anchor: paper.AnchorBottomLeft, Height: name, Bold: true}
	d.Write(title)
	y := max(name+panelGap, title.Extent().Max.Y+panelGap/2) // names may have tails: 1g
	x := paper.TextWidth(s.Name, name, true) + panelAside
	if number, mark := m.number(s), m.badge; x+max(mark.Bounds.W(), paper.TextWidth(number, panelText, false)) <= words && name >= 2*panelRow {
		d.Write(paper.Label{Text: number, At: geometry.Pt(x, 0), Anchor: paper.AnchorTopLeft, Height: panelText})
		d.Add(mark, geometry.Pt(x, name-mark.Bounds.H()))
	} else {
		y = m.rows(&d, 0, y, words, false, number)
		d.Add(mark, geometry.Pt(0, y))
		y += mark.Bounds.H() + panelGap
	}
	y = m.rows(&d, 0, y, words, true, m.Title)
	y = m.rows(&d, 0, y, words, false, m.Lines...) + panelGap/2
	y = m.key(&d, y, words)
	at := geometry.Pt(0, y+panelGap/2)
	if aside {
		at = geometry.Pt(width-mapWidth, 0)
	}
	m.drawMap(&d, at, s)
	return sign(d)
}

// rows writes texts under each other, those too long in several rows, and returns where the next
// row begins.
func (m panelMaker) rows(d *paper.Drawing, x, y, width geometry.Length, bold bool, texts ...string) geometry.Length {
	for _, text := range texts {
		for _, row := range wrapFew(text, panelText, bold, width) {
			d.Write(paper.Label{Text: row, At: geometry.Pt(x, y), Anchor: paper.AnchorTopLeft, Height: panelText, Bold: bold})
			y += panelRow
		}
	}
	return y
}

// mostRows is the most rows a text takes on a panel; what is left is cut off.
const mostRows = 6

// wrapFew breaks a text into rows, and cuts it short where even that does not do.
func wrapFew(text string, height geometry.Length, bold bool, width geometry.Length) []string {
	rows := paper.Wrap(text, height, bold, width)
	if len(rows) > mostRows {
		rows = rows[:mostRows]
		rows[mostRows-1] = paper.Shorten(rows[mostRows-1]+" …"+text, height, bold, width)
	}
	return rows
}

func (m panelMaker) keyWidth(k KeyLine) geometry.Length {
	w := paper.TextWidth(k.Text, panelText, false)
	if len(k.Sign.Strokes)+len(k.Sign.Fills) > 0 {
		w += keySign
	}
	return w
}

func (m panelMaker) keyLine(d *paper.Drawing, k KeyLine, at geometry.Point) {
	if len(k.Sign.Strokes)+len(k.Sign.Fills) > 0 {
		d.Add(k.Sign, at.Add(geometry.Pt(keySign/2-0.5, panelText/2)))
		at.X += keySign
	}
	d.Write(paper.Label{Text: k.Text, At: at, Anchor: paper.AnchorTopLeft, Height: panelText})
}

// badge returns a guide's mark and its squares.
func badge(mark string) paper.Drawing {
	var d paper.Drawing
	if mark == "" {
		return d
	}
	d.Write(paper.Label{Text: mark, At: geometry.Pt(0, 0), Anchor: paper.AnchorTopLeft, Height: 3.5, Bold: true})
	squares := selvedge(mark, false, 0.45)
	d.Add(squares, geometry.Pt(paper.TextWidth(mark, 3.5, true)+panelGap, 1.75-squares.Bounds.H()/2))
	return sign(d)
}

// key writes what the mark is for and what signs mean, as many beside each other as there is room
// for.
func (m panelMaker) key(d *paper.Drawing, y, width geometry.Length) geometry.Length {
	x := geometry.Length(0)
	for _, k := range m.keyLines() {
		w := m.keyWidth(k)
		if x > 0 && x+w > width {
			x, y = 0, y+panelRow
		}
		m.keyLine(d, k, geometry.Pt(x, y))
		x += w + panelAside
	}
	if x > 0 {
		y += panelRow
	}
	return y
}

func (m panelMaker) keyLines() []KeyLine {
	if m.Mark == "" {
		return m.Key
	}
	return append(slices.Clone(m.Key), KeyLine{Text: sameMark})
}

// drawMap draws the map of the sheets, what is far above it and where one stands below it.
func (m panelMaker) drawMap(d *paper.Drawing, at geometry.Point, s paper.Sheet) {
	middle := at.X + mapWidth/2
	y := at.Y
	if m.Far != "" {
		d.Write(paper.Label{Text: m.Far, At: geometry.Pt(middle, y), Anchor: paper.AnchorTop, Height: panelText})
		y += panelText + 1.2
	}
	m.large.draw(d, geometry.Pt(middle-m.large.size.W/2, y), s)
	y += m.large.size.H + 1.2
	if m.Near != "" {
		d.Write(paper.Label{Text: m.Near, At: geometry.Pt(middle, y), Anchor: paper.AnchorTop, Height: panelText})
	}
}

// strip returns the panel of a strip of several on a page, low and wide or narrow and high.
func (m panelMaker) strip(s paper.Sheet) []paper.Drawing {
	var all []paper.Drawing
	name := paper.Label{Text: s.Name, At: geometry.Pt(0, nameSmall), Anchor: paper.AnchorBottomLeft, Height: nameSmall, Bold: true}
	mark := m.badge
	for _, width := range []geometry.Length{90, 120, 60, 45} {
		var d paper.Drawing
		d.Write(name)
		y := name.Extent().Max.Y + 1.5
		d.Add(mark, geometry.Pt(0, y))
		m.rows(&d, 0, y+mark.Bounds.H()+1.2, 40, false, m.number(s))
		x := max(paper.TextWidth(s.Name, nameSmall, true), mark.Bounds.W(), 36) + panelAside
		m.rows(&d, x, m.rows(&d, x, 0, width, true, m.Title), width, false, append(slices.Clone(m.Lines), sameMark)...)
		m.drawMap(&d, geometry.Pt(x+width+panelAside, 0), s)
		all = append(all, sign(d))
	}
	for _, width := range []geometry.Length{26, 22, 19} {
		var d paper.Drawing
		h := geometry.Length(5)
		for h > 1.8 && paper.TextWidth(s.Name, h, true) > width {
			h *= 0.7
		}
		l := paper.Label{Text: s.Name, At: geometry.Pt(0, h), Anchor: paper.AnchorBottomLeft, Height: h, Bold: true}
		d.Write(l)
		y := l.Extent().Max.Y + 1.5
		if m.Mark != "" {
			y = m.rows(&d, 0, y, width, true, m.Mark)
		}
		y = m.rows(&d, 0, y, width, false, m.number(s))
		y = m.rows(&d, 0, y, width, true, m.Title)
		y = m.rows(&d, 0, y, width, false, append(slices.Clone(m.Lines), sameMark)...) + 1
		newMiniMap(m.sheets, m.Cloth, geometry.Size{W: width, H: width}).draw(&d, geometry.Pt(0, y), s)
		all = append(all, sign(d))
	}
	return all
}
