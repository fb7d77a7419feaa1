package sample

import (
	"fmt"
	"strings"

	"underlay/template/words"
)

// Turned writes a job file with rows of turns; the rest of it follows from a number.
func Turned(rows []string, choice int) string {
	pick := func(list ...string) string {
		k := choice % len(list)
		choice /= len(list)
		return list[k]
	}
	repeat := pick("straight", "brick", "half-drop", "honeycomb", "diagonal", "straight")
	block := pick(
		"shape = 'outline'\noutline = ['0 x 0 mm', '30 x 0 mm', '30 x 30 mm', '20 x 30 mm', '0 x 8 mm']",
		"shape = 'outline'\noutline = ['0 x 0 mm', '24 x 6 mm', '20 x 36 mm', '7 x 20 mm']",
		"shape = 'hexagon'\nprint = '30 mm'", "print = '30 x 30 mm'", "print = '21 x 34 mm'", "shape = 'round'\nprint = '28 mm'",
	)
	item := pick("size = '300 x 260 mm'", "shape = 'round'\nsize = '290 mm'", "shape = 'drum'\naround = '401 mm'\nheight = '190 mm'",
		"shape = 'cone'\ntop = '130 mm'\nbottom = '240 mm'\nheight = '160 mm'",
		"shape = 'outline'\noutline = ['0 x 0 mm', '290 x 40 mm', '280 x 250 mm', '150 x 160 mm', '20 x 250 mm']")
	gap := pick("1 mm", "0 mm", "13.5 mm")
	border := pick("12 mm", "0 mm", "20.5 mm")
	list := make([]string, len(rows))
	for i, r := range rows {
		list[i] = words.TOML(r)
	}
	return fmt.Sprintf("[[block]]\nname = 'leaf'\n%s\n[[item]]\nname = 'cover'\n%s\nborder = '%s'\n"+
		"[[item.pass]]\nblock = 'leaf'\nrepeat = '%s'\ngap = '%s'\nturns = [%s]\n",
		block, item, border, repeat, gap, strings.Join(list, ", "))
}
