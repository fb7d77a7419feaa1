package say

import (
	"regexp"
	"strings"

	"underlay/geometry"
)

// fitWidth is the most characters in a line of FitText, so that it goes into any window.
const fitWidth = 78

// fitText is such a text under way.
type fitText struct {
	u     geometry.Unit
	lines []string
}

func (f *fitText) blank() { f.lines = append(f.lines, "") }

// together matches what stays on one line: a number with its fraction or its unit, and a width
// with its height, and a key with the sign after it.
var together = regexp.MustCompile(`\d (?:× |\d+/\d+(?: in\b)?|mm\b|cm\b|in\b)|[a-z] = `)

// say adds a text, broken into lines that all begin with indent.
func (f *fitText) say(indent, text string) {
	const tie = "\u00a0"
	text = together.ReplaceAllStringFunc(text, func(s string) string { return strings.ReplaceAll(s, " ", tie) })
	add := func(line string) { f.lines = append(f.lines, indent+strings.ReplaceAll(line, tie, " ")) }
	line := ""
	for word := range strings.SplitSeq(text, " ") {
		if line != "" && len([]rune(indent+line+" "+word)) > fitWidth {
			add(line)
			line = ""
		}
		line = strings.TrimPrefix(line+" "+word, " ")
	}
	add(line)
}

// table adds rows of cells below each other, the first row its heading. Cells stand to the
// right of their column but in the first few.
func (f *fitText) table(indent string, rows [][]string, left int) {
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], len([]rune(cell)))
		}
	}
	for _, row := range rows {
		var cells []string
		for i, cell := range row {
			room := strings.Repeat(" ", widths[i]-len([]rune(cell)))
			if i < left {
				cells = append(cells, cell+room)
			} else {
				cells = append(cells, room+cell)
			}
		}
		f.lines = append(f.lines, strings.TrimRight(indent+strings.Join(cells, "  "), " "))
	}
}
