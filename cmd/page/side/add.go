package side

import (
	"errors"
	"fmt"
	"slices"
	"strconv"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile/edit"
	"underlay/template/jobfile/toml"
	"underlay/template/plan"
	"underlay/template/words"
)

// Added is a text with one thing more in it.
type Added struct {
	Text string `json:"text"`
	Path string `json:"path"` // of what was added
}

// Things are what Add adds, each with the path it takes.
func Things() []string {
	return []string{"block", "item", "pass", "zone", "place", "paint", "colourway", "dab", "another"}
}

// Add returns the text with one thing more, such that a job that works goes on working where that can
// be had: a block, an item, or a paint, in ""; a pass, a zone, or a colourway in an item; a place or a
// dab in a pass; another of a block, an item, a pass, a zone, a paint or a colourway, like the one in.
// Errors as those of Set.
func (s *Side) Add(text, what, in string) (Added, error) {
	var p edit.Path
	var err error
	if in != "" {
		if p, err = edit.ParsePath(in); err != nil {
			return Added{Text: text}, err
		}
	}
	if _, err := treeOf(text); err != nil {
		return Added{Text: text}, err
	}
	a := adder{side: s, text: text, reader: readerOf(text)}
	n := edit.Find(a.reader.root, p)
	add := map[string]func(edit.Path) (Added, error){
		"block": a.block, "item": a.item, "pass": a.pass, "zone": a.zone, "place": a.place,
		"paint": a.paint, "colourway": a.colourway, "dab": a.dab, "another": a.another,
	}[what]
	var out Added
	switch {
	case add == nil:
		err = fmt.Errorf("there is nothing called %s to add; write %s", words.Quote(what), words.OneOf(Things()))
	case n == nil || n.Form != toml.Table:
		err = fmt.Errorf("there is no %s to add to", words.Shown(in))
	case len(p) != map[string]int{"pass": 2, "zone": 2, "colourway": 2, "place": 4, "dab": 4}[what] && what != "another":
		err = fmt.Errorf("%s cannot be added there", words.Article(what))
	default:
		out, err = add(p)
	}
	if err != nil {
		return Added{Text: text}, err
	}
	return out, nil
}

// adder adds to a text.
type adder struct {
	side   *Side
	text   string
	reader valueReader
}

// table adds a table to the end of a run.
func (a adder) table(text string, run edit.Path, fields ...edit.Field) (Added, error) {
	out, err := edit.Add(text, run, fields...)
	return Added{out, run.Sub(strconv.Itoa(len(a.reader.run(run)))).String()}, err
}

// works tells whether a job can be worked out.
func (a adder) works(text string) (*plan.Plan, bool) {
	p, err := a.side.plan(text)
	return p, err == nil
}

func field(key, text string) edit.Field { return edit.Field{Key: key, Source: words.TOML(text)} }

// free is the first of some names that no table of a run has; where all are taken, the first with a
// number behind it.
func (a adder) free(run edit.Path, names ...string) string {
	var taken []string
	for i := range a.reader.run(run) {
		at := run.Sub(strconv.Itoa(i))
		taken = append(taken, a.reader.word(at.Sub("name"), a.reader.word(at.Sub("block"), "")))
	}
	for _, n := range names {
		if !slices.Contains(taken, n) {
			return n
		}
	}
	for k := 2; ; k++ {
		if n := names[0] + " " + strconv.Itoa(k); !slices.Contains(taken, n) {
			return n
		}
	}
}

func (a adder) block(edit.Path) (Added, error) {
	run := edit.Path{"block"}
	return a.table(a.text, run, field("name", a.free(run, "fern", "pebble", "wave", "acorn")), field("print", "40 x 40 mm"))
}

// item adds a cloth with the first block all over it.
func (a adder) item(edit.Path) (Added, error) {
	run := edit.Path{"item"}
	added, err := a.table(a.text, run, field("name", a.free(run, "napkin", "floor cushion", "book bag", "bench runner")), field("size", "40 x 40 cm"), field("border", "20 mm"))
	if blocks := a.reader.blocks(); err == nil && len(blocks) > 0 {
		p, _ := edit.ParsePath(added.Path)
		added.Text, err = edit.Add(added.Text, p.Sub("pass"), field("block", blocks[0]), field("gap", "1 mm"))
	}
	return added, err
}

// pass adds a pass of a block that is not on the item yet: in the openings of the last that has some,
// else a single print in the middle, over what is there, else on the prints of another.
func (a adder) pass(item edit.Path) (Added, error) {
	blocks := a.reader.blocks()
	if len(blocks) == 0 {
		return Added{}, errors.New("there is no block to print with; add a block first")
	}
	run := item.Sub("pass")
	block := blocks[0]
	var names []string
	used := map[string]bool{}
	for i := range a.reader.run(run) {
		at := run.Sub(strconv.Itoa(i))
		used[a.reader.word(at.Sub("block"), "")] = true
		names = append(names, a.reader.passName(at))
	}
	if i := slices.IndexFunc(blocks, func(b string) bool { return !used[b] }); i >= 0 {
		block = blocks[i]
	}
	first := []edit.Field{}
	if slices.Contains(names, block) {
		first = append(first, field("name", a.free(run, block+" again")))
	}
	first = append(first, field("block", block))
	ways := [][]edit.Field{{field("gap", "1 mm")}}
	for _, name := range slices.Backward(names) {
		ways = append(ways, []edit.Field{field("between", name)})
	}
	ways = append(ways, []edit.Field{field("repeat", string(job.One)), {Key: "over", Source: "true"}})
	for _, name := range slices.Backward(names) {
		ways = append(ways, []edit.Field{field("on", name)})
	}
	for _, way := range ways {
		added, err := a.table(a.text, run, append(slices.Clone(first), way...)...)
		if err != nil {
			return Added{}, err
		}
		if p, ok := a.works(added.Text); ok && !overlaps(p) {
			return added, nil
		}
	}
	return a.table(a.text, run, append(first, ways[0]...)...)
}

// overlaps tells whether passes of a plan lie on others without being meant to.
func overlaps(p *plan.Plan) bool {
	for _, ip := range p.Items {
		for _, cloth := range ip.Cloths() {
			if len(cloth.Overlaps) > 0 {
				return true
			}
		}
	}
	return false
}

// zone keeps a part of an item clear: near its middle, and smaller where that would leave no print.
func (a adder) zone(item edit.Path) (Added, error) {
	run := item.Sub("keep-clear")
	name := a.free(run, "pocket", "label")
	cloth := geometry.Rect{Max: geometry.Pt(200, 200)}
	if p, ok := a.works(a.text); ok {
		if i, err := strconv.Atoi(item[1]); err == nil && i < len(p.Items) {
			cloth = p.Items[i].Area.Cloth
		}
	}
	var added Added
	for _, share := range []float64{0.3, 0.15, 0.05} {
		w, h := tens(cloth.W()*geometry.Length(share)), tens(cloth.H()*geometry.Length(share))
		at := cloth.Centre().Sub(geometry.Pt(w/2, h/2))
		var err error
		added, err = a.table(a.text, run, field("name", name), field("at", across(tens(at.X), tens(at.Y))), field("size", across(w, h)))
		if err != nil {
			return Added{}, err
		}
		if _, ok := a.works(added.Text); ok {
			break
		}
	}
	return added, nil
}

// tens rounds to whole centimetres, but not to nothing.
func tens(l geometry.Length) geometry.Length {
	return max(10, geometry.Length(int(l/10+0.5))*10)
}

// across writes two lengths in millimetres.
func across(x, y geometry.Length) string {
	return geometry.Decimals(float64(x), 2) + " x " + geometry.Decimals(float64(y), 2) + " mm"
}

// place adds a print to a pass that places each by itself: where it lies on the area and clear of the
// others, as near to the middle as that can be had.
func (a adder) place(pass edit.Path) (Added, error) {
	list := pass.Sub("at")
	n := 0
	if at := edit.Find(a.reader.root, list); at != nil {
		n = len(at.Items)
	}
	where := "100 x 100 mm"
	if p, ok := a.works(a.text); ok {
		item, _ := strconv.Atoi(pass[1])
		which, _ := strconv.Atoi(pass[3])
		if item < len(p.Items) && which < len(p.Job.Items[item].Passes) {
			where = freePlace(p.Items[item], p.Job.Items[item].Passes[which])
		}
	}
	if n == 0 {
		out, err := edit.Set(a.text, list, "["+words.TOML(where)+"]")
		return Added{out, list.Sub("0").String()}, err
	}
	at := list.Sub(strconv.Itoa(n))
	out, err := edit.Set(a.text, at, words.TOML(where))
	return Added{out, at.String()}, err
}

// freePlace finds a place for one more print of a placed pass.
func freePlace(ip *plan.ItemPlan, pass *job.Pass) string {
	area := ip.Area.Rect
	const steps = 24
	best, least := area.Centre(), -1.0
	for i := range steps + 1 {
		for k := range steps + 1 {
			at := geometry.Pt(area.Min.X+area.W()*geometry.Length(i)/steps, area.Min.Y+area.H()*geometry.Length(k)/steps)
			at = geometry.Pt(geometry.Length(int(at.X+0.5)), geometry.Length(int(at.Y+0.5)))
			face := pass.Block.Face.Place(at, 0)
			taken := slices.ContainsFunc(pass.Places, func(p job.Place) bool { return pass.Block.Face.Place(p.At, p.Turn).Overlaps(face) })
			if from := float64(at.Distance(area.Centre())); ip.Area.Holds(face) && !taken && (least < 0 || from < least) {
				best, least = at, from
			}
		}
	}
	return across(best.X, best.Y)
}

// paint says how a colour looks that is named and not known yet, else a new one.
func (a adder) paint(edit.Path) (Added, error) {
	run := edit.Path{"paint"}
	name := a.free(run, "moss", "ochre", "teal", "berry")
	looks := map[string]string{"moss": "#5f7a3a", "ochre": "#c58a2d", "teal": "#2f7f7b", "berry": "#8c2f4b"}[name]
	if p, ok := a.works(a.text); ok {
		for _, colour := range p.Job.Colours() {
			if _, known := p.Job.Looks(colour); !known {
				name, looks = colour, "#808080"
				break
			}
		}
	}
	if looks == "" {
		looks = "#808080"
	}
	return a.table(a.text, run, field("name", name), field("looks", looks))
}
