package jobfile

import (
	"maps"
	"slices"

	"underlay/template/job"
	"underlay/template/jobfile/keys"
	"underlay/template/words"
)

// passReader checks the passes of one item.
type passReader struct {
	item   *job.Item
	shape  bool // the item's shape is known
	blocks map[string]*job.Block
	lines  map[string]int // of the passes so far, by name
	passes map[string]*job.Pass
}

// checkPasses reads every [[item.pass]].
func checkPasses(s section, it *job.Item, blocks map[string]*job.Block, known bool) {
	p := &passReader{item: it, shape: known, blocks: blocks, lines: map[string]int{}, passes: map[string]*job.Pass{}}
	run := s.run("pass")
	for _, t := range run {
		it.Passes = append(it.Passes, p.check(t))
	}
	// A pass that names a later one is told so, and not that there is none of that name.
	for i, t := range run {
		p.checkTargets(t, i)
	}
}

// check reads one [[item.pass]].
func (p *passReader) check(s section) *job.Pass {
	pass := &job.Pass{
		Step: 0.5, GridTurn: 45, CentreAcross: job.OnBest, CentreDown: job.OnBest,
		Turns: job.Turns{{0}}, Order: job.CentreOut, Tops: job.TopsOut, Line: s.node.Line,
	}
	pass.Colours, pass.Dabs = checkColours(s), checkDabs(s)
	for _, d := range pass.Dabs {
		if !slices.Contains(pass.Colours, d.Colour) {
			pass.Colours = append(pass.Colours, d.Colour)
		}
	}
	block := p.checkMix(s, pass)
	p.checkName(s, pass)
	if pass.Name != "" {
		s.label = "pass " + words.Quote(pass.Name)
	}
	pass.Face = checkFaceName(s, p.item.Faces)

	var known bool
	pass.Repeat, known = p.checkRepeat(s)
	known = p.checkKeys(s, pass, known)
	pass.Step = checkStep(s)
	pass.GridTurn = checkGridTurn(s)
	across, _ := s.word("centre-across")
	down, _ := s.word("centre-down")
	pass.CentreAcross, pass.CentreDown = job.Centring(across), job.Centring(down)
	order, _ := s.word("order")
	pass.Order = job.Order(order)
	pass.Over, _ = s.key("over").yes()
	pass.EveryOther, _ = s.key("every-other").yes()
	turned := checkTurns(s, pass)
	p.checkFrameAndRings(s, pass)
	checkSingles(s, pass)
	checkExactly(s, pass)
	gaps := checkGaps(s, pass)
	if block {
		checkDabbedFaces(s, pass)
	}
	if block && known {
		p.checkBlockFits(s, pass, turned, gaps)
	}
	return pass
}

// checkRepeat reads how the prints are set out. A word that is none is told those the item takes.
func (p *passReader) checkRepeat(s section) (job.Repeat, bool) {
	e, all := s.key("repeat"), job.Repeats()
	word, ok := e.text(string(all[0]))
	repeat := job.Repeat(word)
	switch {
	case !e.given():
		return all[0], true
	case ok && !slices.Contains(all, repeat):
		takes := all
		if p.shape {
			takes = job.RepeatsOn(p.item.Shape)
		}
		return repeat, e.knows(word, words.Texts(takes))
	}
	return repeat, ok
}

// checkBlockName finds the pass's block; false where there is no good one.
func (p *passReader) checkBlockName(s section, pass *job.Pass) bool {
	e := s.key("block")
	if !s.has("blocks") {
		s.needs("block", `"fern", the name of a [[block]]`)
	}
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
	e.say("there is no %s %s; write %s", thing, words.Quote(name), keys.Instead(name, names))
}

// checkName reads what the pass is called: as its block, where nothing is said.
func (p *passReader) checkName(s section, pass *job.Pass) {
	e := s.key("name")
	name, ok := e.name("fern ground")
	if !ok {
		block, text := s.key("block").value().(string)
		if !pass.Mix.None() && s.has("blocks") {
			block, text = mixName(pass.Mix), true
		}
		if e.given() || s.has("name") || !text {
			return
		}
		name = block
	}
	pass.Name = name
	if line := p.lines[name]; line > 0 {
		if e.given() {
			e.say("%s is the name of the pass in line %d already; write another name for one of them", words.Quote(name), line)
		} else {
			s.say("two passes are called %s, this one and that in line %d; add a name = %s to one of them",
				words.Quote(name), line, words.Quote(words.Shown(name)+" again"))
		}
		return
	}
	p.lines[name] = s.node.Line
	p.passes[name] = pass
}

// mixName is what a pass of several blocks is called where nothing is said: by their names.
func mixName(m job.Mix) string {
	var names []string
	for _, part := range m.Parts {
		if !slices.Contains(names, part.Block.Name) {
			names = append(names, part.Block.Name)
		}
	}
	return words.InWords(names)
}

// checkFaceName reads which one of an item's faces something is on; "" where it names none.
func checkFaceName(s section, faces []string) string {
	e := s.key("face")
	name, ok := e.name("front")
	switch {
	case !ok:
	case faces[0] == "":
		other := words.Quote(name) + `, "back"`
		if name == "back" {
			other = `"front", "back"`
		}
		e.say("this item has no faces; add faces = [%s] to it, or leave face out", other)
	case !slices.Contains(faces, name):
		e.unknownName(name, "face", faces)
	default:
		return name
	}
	return ""
}

func checkColours(s section) []string {
	list, _ := s.key("colours").list(`["moss", "ochre"]`)
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
func (p *passReader) checkKeys(s section, pass *job.Pass, known bool) bool {
	between, on := s.key("between"), s.key("on")
	if between.given() && on.given() {
		on.say("between is given too, in line %d; keep one of them", between.node.Line)
		return false
	}
	s.goesWith("open-edges", "between")
	s.goesWith("offset", "on")
	if over := s.key("over"); on.given() && over.given() {
		over.say("means nothing with on: prints set on those of another pass are meant to lie there; take it out")
	}
	switch {
	case between.given():
		s.placed("between", "the openings of the other pass")
		return true
	case on.given():
		s.placed("on", "the prints of the other pass")
		return true
	case !known:
		return false
	}
	for _, name := range s.node.Order {
		if k := s.keys.Keys[name]; len(k.With) > 0 && !slices.Contains(k.With, string(pass.Repeat)) {
			s.key(name).say("belongs to repeat = %s, and this pass's is %s; take one of the two out",
				words.OneOf(k.With), words.Quote(string(pass.Repeat)))
		}
	}
	if takes := job.RepeatsOn(p.item.Shape); p.shape && !slices.Contains(takes, pass.Repeat) {
		what := string(pass.Repeat)
		if pass.Repeat == job.Tossed {
			what = "tossed prints"
		}
		s.key("repeat").say("%s item takes no %s; write %s", words.Article(p.item.Shape), what, words.OneOf(takes))
		return false
	}
	return true
}

// goesWith refuses a key that says more of another, where that is not given.
func (s section) goesWith(key, other string) {
	if e := s.key(key); e.given() && !s.has(other) {
		e.say("goes with %s, which is not given; take it out, or add %s", other, other)
	}
}

// placed refuses what sets prints out, where the key seat has another pass do that.
func (s section) placed(seat, by string) {
	for _, name := range s.node.Order {
		k := s.keys.Keys[name]
		setsOut := len(k.With) > 0 && !(seat == "between" && k.Seats)
		if setsOut || name == "repeat" {
			s.key(name).say("means nothing with %s: %s say where each print goes; take it out", seat, by)
		}
	}
}

// checkBlockFits refuses a block that the pass's repeat cannot take.
func (p *passReader) checkBlockFits(s section, pass *job.Pass, turned, gaps bool) {
	if s.key("between").given() || s.key("on").given() {
		return
	}
	takes := pass.Repeat.Faces()
	for _, part := range pass.Parts() {
		b := part.Block
		if slices.Contains(takes, b.Shape) {
			continue
		}
		s.key("repeat").say("%s takes %s, and block %s has shape = %s; write another repeat, such as \"brick\"",
			words.Article(pass.Repeat), words.InWords(blocksOf(takes)), words.Quote(b.Name), words.Quote(string(b.Shape)))
		return
	}
	if !gaps || !turned {
		return
	}
	if checkTossGap(s, pass) && checkLaps(s, pass) && checkCombs(s, pass) && checkOneTurn(s, pass) {
		checkRingGap(s, pass)
	}
}

// blocksOf names the blocks with faces of some shapes.
func blocksOf(shapes []job.FaceShape) []string {
	names := map[job.FaceShape]string{
		job.RectangleFace: "rectangles", job.RoundFace: "round blocks", job.HexagonFace: "hexagons", job.OutlineFace: "blocks with an outline",
	}
	var blocks []string
	for _, s := range shapes {
		blocks = append(blocks, names[s])
	}
	return blocks
}
