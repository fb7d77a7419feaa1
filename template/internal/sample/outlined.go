package sample

import (
	"fmt"
	"strings"
)

// Outlined writes a job file of a block and an item with the outlines and turns given by bytes.
func Outlined(block, item, turns []byte, choice uint8) string {
	repeats := []string{"straight", "brick", "half-drop", "honeycomb", "diagonal", "frame", "rings"}
	var text strings.Builder
	fmt.Fprintf(&text, "[paper]\nsize = 'A2'\n[[block]]\nname = 'leaf'\nshape = 'outline'\noutline = %s\n"+
		"[[item]]\nname = 'pennant'\nshape = 'outline'\noutline = %s\nborder = '%d mm'\n"+
		"[[item.pass]]\nblock = 'leaf'\ngap = '2 mm'\nrepeat = '%s'\n",
		points(block, 1), points(item, 4), choice/7%4*5, repeats[int(choice)%len(repeats)])
	if len(turns) > 0 {
		fmt.Fprintf(&text, "turns = %s\n", matrix(turns, int(choice)/28%3+1))
	}
	return text.String()
}

// points makes an outline of pairs of bytes, each so many millimetres.
func points(b []byte, scale int) string {
	var list []string
	for i := 0; i+1 < len(b); i += 2 {
		list = append(list, fmt.Sprintf("'%d x %d mm'", int(b[i])*scale, int(b[i+1])*scale))
	}
	return "[" + strings.Join(list, ", ") + "]"
}

// matrix makes rows, so wide, of quarter turns.
func matrix(b []byte, width int) string {
	var rows []string
	for len(b) > 0 {
		var row []string
		n := min(width, len(b))
		for _, q := range b[:n] {
			row = append(row, fmt.Sprint(int(q%4)*90))
		}
		rows, b = append(rows, "'"+strings.Join(row, " ")+"'"), b[n:]
	}
	return "[" + strings.Join(rows, ", ") + "]"
}
