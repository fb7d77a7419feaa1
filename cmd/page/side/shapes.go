package side

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile/edit"
)

// itemKey makes the edits that go with a key of an item.
func (c *chooser) itemKey(item edit.Path, name string) {
	taped, upright := []string{"top-around", "bottom-around", "slope"}, []string{"top", "bottom", "height"}
	switch {
	case name == "shape":
		c.itemShape(item)
	case slices.Contains(taped, name):
		if c.now().word(item.Sub("shape"), "") == string(job.Cone) {
			c.tape(item, upright)
		}
	case slices.Contains(upright, name):
		c.drop(item, taped...)
		if c.now().word(item.Sub("shape"), "") == string(job.Cone) {
			c.uprightCone(item)
		}
	default:
		c.drop(item, instead(name)...)
	}
}

// tape gives the size of a cone as a tape measures it, in place of its upright one.
func (c *chooser) tape(item edit.Path, upright []string) {
	c.drop(item, upright...)
	c.need(item, "top-around", "56 cm")
	c.need(item, "bottom-around", "100 cm")
	c.need(item, "slope", "25 cm")
}

func (c *chooser) uprightCone(item edit.Path) {
	c.need(item, "top", "18 cm")
	c.need(item, "bottom", "32 cm")
	c.need(item, "height", "24 cm")
}

// itemShape sees to it that an item has what its shape needs, about as large as it was.
func (c *chooser) itemShape(item edit.Path) {
	r := c.now()
	shape := job.Shape(r.word(item.Sub("shape"), string(job.Rectangle)))
	size := c.sizeOf(item)
	tree := edit.Tree(r.keys, item)
	for _, name := range tree.Order {
		if !tree.Keys[name].SuitsItem(string(shape)) {
			c.drop(item, name)
		}
	}
	mm := func(l geometry.Length) string { return geometry.Decimals(math.Round(float64(l)*10)/10, 1) + " mm" }
	both := func(w, h geometry.Length) string { return strings.TrimSuffix(mm(w), " mm") + " x " + mm(h) }
	switch shape {
	case job.Rectangle:
		if _, one, err := geometry.ParseSizeOrDiameter(r.word(item.Sub("size"), "")); err != nil || one {
			c.set(item.Sub("size"), both(size.W, size.H))
		}
	case job.Round:
		if _, one, err := geometry.ParseSizeOrDiameter(r.word(item.Sub("size"), "")); err != nil || !one {
			c.set(item.Sub("size"), mm(min(size.W, size.H)))
		}
	case job.Outline:
		c.drop(item, "size")
		c.need(item, "outline", strings.Join([]string{both(0, 0), both(size.W, 0), both(size.W, size.H), both(0, size.H)}, ", "))
	case job.FourSided:
		c.need(item, "sides", strings.Join([]string{mm(size.W), mm(size.H), mm(size.W), mm(size.H)}, ", "))
		c.need(item, "diagonal", mm(geometry.Pt(size.W, size.H).Norm()))
	case job.Drum:
		if !c.has(item.Sub("around")) {
			c.need(item, "diameter", "30 cm")
		}
		c.need(item, "height", "22 cm")
	case job.Cone:
		if !c.has(item.Sub("slope")) {
			c.uprightCone(item)
		}
	}
	if n := edit.Find(c.now().root, item.Sub("border")); n != nil && len(n.Items) > 0 && (shape.EvenBorder() || shape.Shade()) {
		c.set(item.Sub("border"), c.widest(item.Sub("border")))
	}
	for i := range c.now().run(item.Sub("pass")) {
		pass := item.Sub("pass", strconv.Itoa(i))
		if r := c.now(); r.seat(pass) == "" && !slices.Contains(job.RepeatsOn(shape), job.Repeat(r.word(pass.Sub("repeat"), string(job.Straight)))) {
			c.set(pass.Sub("repeat"), string(job.Straight))
			c.setOut(pass)
		}
	}
}

// widest is the longest of a list of lengths, as it is written.
func (c *chooser) widest(list edit.Path) string {
	best, most := "25 mm", geometry.Length(-1)
	for _, text := range c.now().texts(list) {
		if l, err := geometry.ParseLength(text); err == nil && l > most {
			best, most = text, l
		}
	}
	return best
}

// sizeOf is how large an item was before, where that is known; else the size of a cushion.
func (c *chooser) sizeOf(item edit.Path) geometry.Size {
	if p, err := c.side.plan(string(c.was.data)); err == nil {
		for i, ip := range p.Items {
			if item[1] == strconv.Itoa(i) && !ip.Item.Shape.Shade() {
				return ip.Area.Cloth.Size()
			}
		}
	}
	if size, _, err := geometry.ParseSizeOrDiameter(c.now().word(item.Sub("size"), "")); err == nil && size.W > 0 {
		if size.H == 0 {
			size.H = size.W
		}
		return size
	}
	return geometry.Size{W: 500, H: 500}
}

// placeIn is a place for a print of a pass on its item, as it is written: one on the area, near the middle.
func (c *chooser) placeIn(pass edit.Path) string {
	if p, err := c.side.plan(string(c.was.data)); err == nil {
		for i, ip := range p.Items {
			for k, q := range p.Job.Items[i].Passes {
				if pass[1] == strconv.Itoa(i) && pass[3] == strconv.Itoa(k) {
					return freePlace(ip, q)
				}
			}
		}
	}
	size := c.sizeOf(pass[:2])
	return across(size.W/2, size.H/2)
}

// leastGap makes of a range of gaps the least, and of a lap none.
func (c *chooser) leastGap(pass edit.Path) {
	text := c.now().word(pass.Sub("gap"), "")
	least, most, err := geometry.ParseRange(text)
	switch {
	case err != nil:
	case least < 0:
		c.set(pass.Sub("gap"), "0 mm")
	case most > least:
		c.set(pass.Sub("gap"), geometry.Decimals(float64(least), 4)+" mm")
	}
}

// blockShape sees to it that a block has what the shape of its face needs, about as large as it was.
func (c *chooser) blockShape(block edit.Path) {
	r := c.now()
	shape := job.FaceShape(r.word(block.Sub("shape"), string(job.RectangleFace)))
	size, one, err := geometry.ParseSizeOrDiameter(r.word(block.Sub("print"), ""))
	if err != nil {
		size, one = geometry.Size{W: 60, H: 60}, true
		if p, err := c.side.plan(string(c.was.data)); err == nil {
			for i, b := range p.Job.Blocks {
				if block[1] == strconv.Itoa(i) {
					size, one = b.Size, false
				}
			}
		}
	}
	if one {
		size.H = size.W
	}
	text := func(l geometry.Length) string { return geometry.Decimals(float64(l), 2) }
	both := func(w, h geometry.Length) string { return text(w) + " x " + text(h) + " mm" }
	switch shape {
	case job.OutlineFace:
		c.drop(block, "print")
		c.need(block, "outline", strings.Join([]string{both(size.W/2, 0), both(size.W, size.H), both(0, size.H)}, ", "))
	case job.RectangleFace:
		c.drop(block, "outline")
		if one || err != nil {
			c.set(block.Sub("print"), both(size.W, size.H))
		}
	default:
		c.drop(block, "outline")
		if !one || err != nil {
			c.set(block.Sub("print"), text(min(size.W, size.H))+" mm")
		}
	}
	name := r.word(block.Sub("name"), "")
	for i := range r.run(edit.Path{"item"}) {
		item := edit.Path{"item", strconv.Itoa(i)}
		for k := range r.run(item.Sub("pass")) {
			pass := item.Sub("pass", strconv.Itoa(k))
			repeat := job.Repeat(r.word(pass.Sub("repeat"), string(job.Straight)))
			if r.seat(pass) == "" && r.word(pass.Sub("block"), "") == name && !slices.Contains(repeat.Faces(), shape) {
				c.set(pass.Sub("repeat"), string(job.Straight))
				c.setOut(pass)
			}
		}
	}
}
