package sheets

import (
	"strings"

	"underlay/geometry"
	"underlay/paper"
)

// parts returns the panel of a sheet in pieces, each in the ways it may be set out, for narrow
// places: one row high, and for want of even that lower.
func (m panelMaker) parts(s paper.Sheet) [][]paper.Drawing {
	var name []paper.Drawing
	for _, h := range []geometry.Length{nameLarge, 10, nameSmall, 5, 3.5, panelText, 1.8} {
		if s.Joined != nil && h > nameSmall {
			continue
		}
		var d paper.Drawing
		d.Write(paper.Label{Text: s.Name, At: geometry.Pt(0, h), Anchor: paper.AnchorBottomLeft, Height: h, Bold: true})
		if m.Mark != "" {
			x := paper.TextWidth(s.Name, h, true) + panelGap
			d.Write(paper.Label{Text: m.Mark, At: geometry.Pt(x, h), Anchor: paper.AnchorBottomLeft, Height: min(h, max(h/2, panelText)), Bold: true})
		}
		name = append(name, sign(d))
	}
	var low, words []paper.Drawing
	var large paper.Drawing
	m.drawMap(&large, geometry.Point{}, s)
	low = append(low, sign(large))
	for _, small := range m.small() {
		var d paper.Drawing
		small.draw(&d, geometry.Point{}, s)
		low = append(low, sign(d))
	}
	text := strings.Join(append([]string{m.number(s), m.Title}, m.Lines...), " · ")
	for _, h := range []geometry.Length{panelText, 1.8} {
		for _, width := range []geometry.Length{180, 120, 90, 70, 50, 34, 20} {
			words = append(words, textSign(wrapFew(text, h, false, width), h))
		}
	}
	all := [][]paper.Drawing{name, low, words}
	if key := m.keys(); len(key) > 0 {
		all = append(all, key)
	}
	return all
}

// smallMaps returns maps for narrow places, the cloth on those that have room for it.
func (m panelMaker) smallMaps() []miniMap {
	var all []miniMap
	for _, h := range []geometry.Length{2 * nameSmall, nameSmall, panelText} {
		cloth := m.Cloth
		if h < nameSmall {
			cloth = nil
		}
		all = append(all, newMiniMap(m.sheets, cloth, geometry.Size{W: 3 * h, H: h}))
	}
	return all
}

// keySigns returns the key in the ways it may be set out.
func (m panelMaker) keySigns() []paper.Drawing {
	var key []paper.Drawing
	for _, width := range []geometry.Length{200, 60, 40} {
		var d paper.Drawing
		if m.key(&d, 0, width) > 0 {
			key = append(key, sign(d))
		}
	}
	return key
}
