package sample

import (
	"fmt"
	"math"
	"strings"
)

// Made makes up a job file from any bytes, each of which picks one of the things that a job file
// can say: nearly all can be read, and most can be drawn.
func Made(choices []byte) string { return (&maker{choices: choices}).job() }

// MadeSeeds are bytes to begin with.
func MadeSeeds() []string {
	return []string{
		"", "underlay", "\x01\x02\x03\x04\x05\x06\x07\x08\x09\x0a\x0b\x0c", "a pillow and a bag, a runner, a shade",
		"\xff\xfe\xfd\xfc\xfb\xfa\xf9\xf8\xf7\xf6\xf5\xf4\xf3\xf2\xf1", "zyxwvutsrqponmlkjihgfedcba9876543210",
		"0101010101010101010101010101", "\x03\x01\x04\x01\x05\x09\x02\x06\x05\x03\x05\x08\x09\x07\x09\x03\x02\x03\x08\x04\x06",
	}
}

// maker makes up a job file.
type maker struct {
	choices []byte
	text    strings.Builder
	blocks  []string // their shapes
	passes  []string // of the item being made
}

// next is the next choice from 0 up to, not including, n; 0 when all are used up.
func (m *maker) next(n int) int {
	if len(m.choices) == 0 {
		return 0
	}
	c := m.choices[0]
	m.choices = m.choices[1:]
	return int(c) % n
}

func (m *maker) pick(list ...string) string { return list[m.next(len(list))] }

func (m *maker) put(format string, args ...any) { fmt.Fprintf(&m.text, format+"\n", args...) }

// maybe writes one of some lines, or none.
func (m *maker) maybe(lines ...string) {
	if line := m.pick(append([]string{""}, lines...)...); line != "" {
		m.put("%s", line)
	}
}

func (m *maker) job() string {
	m.maybe("units = 'in'", "units = 'cm'", "title = 'Ecke № 1, «Лес»'")
	m.put("[paper]")
	m.maybe("size = 'one sheet'", "size = 'A3'", "size = 'Letter'", "size = 'roll 300 mm'", "size = '90 x 130 mm'", "size = 'A6'")
	m.maybe("extent = 'edges'")
	m.maybe("lines = 'strong'")
	m.maybe("reach = '0 mm'", "reach = '3 mm'", "reach = '80 mm'")
	m.maybe("margin = '0 mm'\noverlap = '0 mm'", "margin = '12.7 mm'\noverlap = '1 mm'", "overlap = '45 mm'")
	if m.next(4) == 3 {
		m.put("[printer]\nacross = '%d.3 mm'\ndown = '%d.9 mm'", 176+m.next(8), 245+m.next(10))
	}
	m.put("[printing]")
	m.maybe("hand = 'left'")
	m.maybe("seconds-a-print = 75", "seconds-a-print = 0.001\nseconds-a-colour = 86400", "paint-cover = '90 ml/m2'")
	blocks := 1 + m.next(3)
	for i := range blocks {
		m.block(i)
	}
	for i := range 1 + m.next(3)/2 {
		m.item(i, blocks)
	}
	return m.text.String()
}

// side is a length in millimetres.
func (m *maker) side(least, most int) string {
	return fmt.Sprintf("%d%s", least+m.next(most-least), m.pick("", "", ".5", ".003", ".999"))
}

// corners are those of an outline, most often a star about its middle.
func (m *maker) corners(scale float64) string {
	n := 3 + m.next(7)
	list := make([]string, n)
	for i := range list {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + float64(m.next(8))/16) / float64(n))
		r := float64(12+m.next(90)) * scale
		list[i] = fmt.Sprintf("'%.2f x %.2f mm'", r*cos, r*sin)
	}
	return strings.Join(list, ", ")
}

func (m *maker) block(i int) {
	m.put("[[block]]\nname = '%s'", []string{"fern", "pebble", "a rather long name for a block that is but a wave"}[i])
	shape := m.pick("rectangle", "square", "round", "hexagon", "outline")
	m.blocks = append(m.blocks, shape)
	switch shape {
	case "rectangle":
		m.put("print = '%s x %s mm'", m.side(3, 80), m.side(3, 80))
	case "square":
		a := m.side(3, 90)
		m.put("print = '%s x %s mm'", a, a)
	case "outline":
		m.put("shape = 'outline'\noutline = [%s]", m.corners(0.5))
	default:
		m.put("shape = '%s'\nprint = '%s mm'", shape, m.side(3, 90))
	}
	m.maybe("inked = 0.55", "wood = '110 x 120 mm'", "wood = '125 x 125 mm'\nwood-offset = '3 x -5 mm'")
}

func (m *maker) item(i, blocks int) {
	m.put("[[item]]\nname = '%s'", []string{"floor cushion", "bag"}[i])
	shape := m.pick("rectangle", "rectangle", "round", "outline", "drum", "cone")
	switch shape {
	case "rectangle":
		m.put("size = '%s x %s mm'", m.side(80, 330), m.side(80, 330))
		m.put("border = %s", m.pick("'25 mm'", "'0 mm'", "['3 mm', '40 mm', '0 mm', '11.25 mm']", "'7.77 mm'"))
	case "round":
		m.put("size = '%s mm'\nborder = '%d mm'", m.side(100, 350), 7*m.next(4))
	case "outline":
		m.put("outline = [%s]\nborder = '%d mm'", m.corners(2.5), 4*m.next(4))
	case "drum":
		m.put("%s = '%s mm'\nheight = '%s mm'\nborder = '%d mm'", m.pick("diameter", "around"), m.side(90, 340), m.side(90, 250), 5*m.next(4))
	case "cone":
		m.put("top = '%s mm'\nbottom = '%s mm'\nheight = '%s mm'\nborder = '%d mm'", m.side(20, 200), m.side(150, 300), m.side(40, 250), 5*m.next(4))
	}
	m.put("shape = '%s'", shape)
	m.maybe("hem = '0 mm'", "quantity = 999999")
	if shape == "drum" || shape == "cone" {
		m.maybe("lap = '10 mm'")
	}
	faces := m.next(3) == 2
	if faces {
		m.put("faces = ['front', 'back', 'inside']")
	}
	for k := range max(0, m.next(5)-2) {
		m.put("[[item.keep-clear]]\nname = 'pocket %d'\nat = '%d x %d mm'\nsize = '%d x %d mm'", k, m.next(50), m.next(50), 1+m.next(30), 1+m.next(30))
	}
	m.passes = nil
	for k := range 1 + m.next(3) {
		m.pass(k, blocks, shape, faces)
	}
}

func (m *maker) pass(k, blocks int, shape string, faces bool) {
	name, block := fmt.Sprintf("pass %d", k+1), m.next(blocks)
	m.put("[[item.pass]]\nname = '%s'\nblock = '%s'", name, []string{"fern", "pebble", "a rather long name for a block that is but a wave"}[block])
	if faces {
		m.maybe("face = 'front'", "face = 'inside'")
	}
	m.maybe("colours = ['moss']", "colours = ['moss', 'ochre', 'a blue like the sea at five']",
		"dabs = [{ colour = 'ochre', middle = '5 mm' }, { colour = 'moss' }]",
		"dabs = [{ colour = 'moss', edge = '1 mm' }, { colour = 'a blue like the sea at five', middle = '8 mm' }]")
	if k > 0 && m.next(3) == 2 {
		if m.next(2) == 0 {
			m.put("on = '%s'\noffset = '%d x %d mm'", m.passes[m.next(k)], m.next(60)-30, m.next(60)-30)
		} else {
			m.put("between = '%s'\nopen-edges = %s", m.passes[m.next(k)], m.pick("false", "true"))
			m.turns(block)
		}
		m.passes = append(m.passes, name)
		return
	}
	m.passes = append(m.passes, name)
	repeat := m.pick("straight", "straight", "brick", "half-drop", "honeycomb", "diagonal", "frame", "rings")
	if repeat == "frame" && shape != "rectangle" {
		repeat = "rings"
	}
	if repeat == "rings" && shape != "round" || repeat == "diagonal" && (shape == "drum" || shape == "cone") {
		repeat = "brick"
	}
	if shape := m.blocks[block]; repeat == "honeycomb" && shape != "round" && shape != "hexagon" {
		repeat = "half-drop"
	}
	m.put("repeat = '%s'", repeat)
	gaps := []string{"gap = '1 mm'", "lap = '0.5 mm'", "gap = '0 mm'", "gap = '0.5 mm to 6 mm'", "gap = '-1 mm to 9 mm'", "gap = '17.3 mm'"}
	if repeat != "honeycomb" && repeat != "rings" {
		gaps = append(gaps, "gap = '2 mm'\ngap-down = '30 mm'", "gap-across = '3 mm to 20 mm'\ngap-down = '-0.25 mm'")
	}
	m.put("%s", m.pick(gaps...))
	switch repeat {
	case "frame":
		m.maybe("sides = ['bottom']", "sides = ['left', 'top']", "sides = ['left', 'right']", "tops = 'in'")
		return
	case "rings":
		m.maybe("rings = 1", "rings = 2")
		return
	case "brick", "half-drop":
		m.maybe("step = '1/3'", "step = 0.4", "step = '0.123'")
	case "diagonal":
		m.maybe("grid-turn = 30", "grid-turn = -7.5", "grid-turn = 90", "grid-turn = 180")
	}
	m.maybe("centre-across = 'joint'", "centre-across = 'print'")
	m.maybe("centre-down = 'joint'", "centre-down = 'print'")
	m.maybe("order = 'rows'")
	m.turns(block)
}

// turns are such as go with the block, unless it is one of the maker's own.
func (m *maker) turns(block int) {
	turns := []string{"turns = ['180']", "turns = ['0 180']", "turns = ['0 180', '180 0', '0 0']"}
	if m.blocks[block] != "rectangle" && m.blocks[block] != "hexagon" {
		turns = append(turns, "turns = ['90']", "turns = ['0 90', '270 180']", "turns = ['0 90 180 270']", "turns = ['270', '0', '90']")
	}
	m.maybe(turns...)
}
