package template

import (
	"maps"
	"slices"
)

// The repeats of a job file, the default first.
var repeatWords = []string{"straight", "brick", "half-drop", "honeycomb", "diagonal", "frame", "rings"}

// lattices are the repeats that go on and on both ways.
var lattices = []string{"straight", "brick", "half-drop", "honeycomb", "diagonal"}

// passKeys says with which repeats a key of a pass means something; the keys not listed
// always do. A key may also go with a pass seated between the prints of another.
var passKeys = []struct {
	key     string
	repeats []string
	between bool
}{
	{"gap", repeatWords, false},
	{"lap", repeatWords, false},
	{"gap-across", []string{"straight", "brick", "half-drop", "diagonal", "frame"}, false},
	{"gap-down", []string{"straight", "brick", "half-drop", "diagonal", "frame"}, false},
	{"step", []string{"brick", "half-drop"}, false},
	{"grid-turn", []string{"diagonal"}, false},
	{"centre-across", lattices, false},
	{"centre-down", lattices, false},
	{"turns", lattices, true},
	{"order", lattices, true},
	{"sides", []string{"frame"}, false},
	{"tops", []string{"frame"}, false},
	{"rings", []string{"rings"}, false},
}

// itemRepeats says which repeats a shape of item takes: a frame needs straight sides, rings a
// round edge, and on a shade the repeat must close.
func itemRepeats(shape string) []string {
	switch shape {
	case "rectangle":
		return []string{"straight", "brick", "half-drop", "honeycomb", "diagonal", "frame"}
	case "round":
		return []string{"straight", "brick", "half-drop", "honeycomb", "diagonal", "rings"}
	case "drum":
		return []string{"straight", "brick", "half-drop", "honeycomb"}
	case "cone":
		return []string{"straight", "brick", "half-drop"}
	}
	return lattices
}

// passReader checks the passes of one item.
type passReader struct {
	item   *Item
	shape  bool // the item's shape is known
	blocks map[string]*Block
	lines  map[string]int // of the passes so far, by name
	passes map[string]*Pass
}

// checkPasses reads every [[item.pass]].
func checkPasses(s section, raw *rawItem, it *Item, blocks map[string]*Block, known bool) {
	p := &passReader{item: it, shape: known, blocks: blocks, lines: map[string]int{}, passes: map[string]*Pass{}}
	for i := range raw.Passes {
		t := section{r: s.r, node: s.node.keys["pass"].items[i], label: "this pass"}
		it.Passes = append(it.Passes, p.check(t, &raw.Passes[i]))
	}
	// A pass that names a later one is told so, and not that there is none of that name.
	for i := range raw.Passes {
		t := section{r: s.r, node: s.node.keys["pass"].items[i]}
		p.checkTargets(t, &raw.Passes[i], i)
	}
}

// check reads one [[item.pass]].
func (p *passReader) check(s section, raw *rawPass) *Pass {
	pass := &Pass{
		Step: 0.5, GridTurn: 45, CentreAcross: OnBest, CentreDown: OnBest,
		Turns: [][]int{{0}}, Order: CentreOut, Tops: "out", Line: s.node.line,
	}
	block := p.checkBlockName(s, raw, pass)
	p.checkName(s, raw, pass)
	if pass.Name != "" {
		s.label = "pass " + quote(pass.Name)
	}
	p.checkFaceName(s, raw, pass)
	pass.Colours = checkColours(s, raw)

	var known bool
	pass.Repeat, known = s.key("repeat", raw.Repeat).word(repeatWords, repeatWords[0])
	known = p.checkKeys(s, raw, pass, known)
	pass.Step = checkStep(s, raw)
	pass.GridTurn = checkGridTurn(s, raw)
	across, _ := s.key("centre-across", raw.CentreAcross).word(centrings, string(OnBest))
	down, _ := s.key("centre-down", raw.CentreDown).word(centrings, string(OnBest))
	pass.CentreAcross, pass.CentreDown = Centring(across), Centring(down)
	order, _ := s.key("order", raw.Order).word([]string{string(CentreOut), string(RowByRow)}, string(CentreOut))
	pass.Order = Order(order)
	turned := checkTurns(s, raw, pass)
	checkFrameAndRings(s, raw, pass)
	gaps := checkGaps(s, raw, pass)
	if block && known {
		p.checkBlockFits(s, raw, pass, turned, gaps)
	}
	return pass
}

var centrings = []string{string(OnBest), string(OnPrint), string(OnJoint)}

// checkBlockName finds the pass's block; false where there is no good one.
func (p *passReader) checkBlockName(s section, raw *rawPass, pass *Pass) bool {
	e := s.key("block", raw.Block)
	s.needs("block", `"fern", the name of a [[block]]`)
	name, ok := e.text("fern")
	if !ok {
		return false
	}
	block, known := p.blocks[name]
	if !known && len(p.blocks) > 0 {
		e.unknownName(name, "block", slices.Sorted(maps.Keys(p.blocks)))
	}
	pass.Block = block
	return block != nil
}

// unknownName reports a name that nothing has.
func (e entry) unknownName(name, thing string, names []string) {
	e.say("there is no %s %s; write %s", thing, quote(name), instead(name, names))
}

// checkName reads what the pass is called: as its block, where nothing is said.
func (p *passReader) checkName(s section, raw *rawPass, pass *Pass) {
	e := s.key("name", raw.Name)
	name, ok := e.name("fern ground")
	if !ok {
		block, text := raw.Block.(string)
		if e.given() || s.has("name") || !text {
			return
		}
		name = block
	}
	pass.Name = name
	if line := p.lines[name]; line > 0 {
		if e.given() {
			e.say("%s is the name of the pass in line %d already; write another name for one of them", quote(name), line)
		} else {
			s.say("two passes are called %s, this one and that in line %d; add a name = %s to one of them",
				quote(name), line, quote(shown(name)+" again"))
		}
		return
	}
	p.lines[name] = s.node.line
	p.passes[name] = pass
}

func (p *passReader) checkFaceName(s section, raw *rawPass, pass *Pass) {
	e := s.key("face", raw.Face)
	name, ok := e.name("front")
	switch {
	case !ok:
	case p.item.Faces[0] == "":
		e.say(`this item has no faces; add faces = [%s, "back"] to it, or leave face out`, quote(name))
	case !slices.Contains(p.item.Faces, name):
		e.unknownName(name, "face", p.item.Faces)
	default:
		pass.Face = name
	}
}

func checkColours(s section, raw *rawPass) []string {
	list, _ := s.key("colours", raw.Colours).list(`["moss", "ochre"]`)
	var colours []string
	for _, e := range list {
		if c, ok := e.name("moss"); ok {
			colours = append(colours, c)
		}
	}
	return colours
}

// checkKeys refuses keys that mean nothing with the pass's repeat, or where it is seated by
// another pass. It tells whether the way of setting out is known and goes with the item.
func (p *passReader) checkKeys(s section, raw *rawPass, pass *Pass, known bool) bool {
	between, on := s.key("between", raw.Between), s.key("on", raw.On)
	repeat := s.key("repeat", raw.Repeat)
	if between.given() && on.given() {
		on.say("between is given too, in line %d; keep one of them", between.node.line)
		return false
	}
	if e := s.key("open-edges", raw.OpenEdges); e.given() && !s.has("between") {
		e.say("goes with between, which is not given; take it out, or add between")
	}
	if e := s.key("offset", raw.Offset); e.given() && !s.has("on") {
		e.say("goes with on, which is not given; take it out, or add on")
	}
	seat, by := "", ""
	switch {
	case between.given():
		seat, by = "between", "the openings of the other pass"
	case on.given():
		seat, by = "on", "the prints of the other pass"
	}
	if seat != "" && repeat.given() {
		repeat.say("means nothing with %s: %s say where each print goes; take it out", seat, by)
	}
	for _, k := range passKeys {
		e := s.key(k.key, true)
		switch {
		case !e.given():
		case seat == "" && known && !slices.Contains(k.repeats, pass.Repeat):
			e.say("belongs to repeat = %s, and this pass's is %s; take one of the two out",
				oneOf(k.repeats), quote(pass.Repeat))
		case seat == "on", seat == "between" && !k.between:
			e.say("means nothing with %s: %s say where each print goes; take it out", seat, by)
		}
	}
	if seat != "" {
		return true
	}
	if takes := itemRepeats(p.item.Shape); known && p.shape && !slices.Contains(takes, pass.Repeat) {
		repeat.say("%s item takes no %s; write %s", article(p.item.Shape), pass.Repeat, oneOf(takes))
		return false
	}
	return known
}

// checkBlockFits refuses a block that the pass's repeat cannot take.
func (p *passReader) checkBlockFits(s section, raw *rawPass, pass *Pass, turned, gaps bool) {
	if s.key("between", raw.Between).given() || s.key("on", raw.On).given() {
		return
	}
	b := pass.Block
	if pass.Repeat == "honeycomb" && !slices.Contains([]string{"round", "hexagon"}, b.Shape) {
		s.key("repeat", raw.Repeat).say("a honeycomb takes round blocks and hexagons, and block %s has shape = %s; "+
			"write another repeat, such as \"brick\"", quote(b.Name), quote(b.Shape))
		return
	}
	if !gaps || !turned {
		return
	}
	if checkLaps(s, raw, pass) {
		checkCollisions(s, raw, pass)
	}
}
