package side

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/jobfile/edit"
	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

// Picked says what of a job is to be shown, each counted from 0 as State lists them; one that is not
// there is the first.
type Picked struct {
	Item      int `json:"item"`
	Face      int `json:"face"`
	Colourway int `json:"colourway"`
	// Only is the one picture wanted, "look" or "order", which is quicker; "": all there are.
	Only string `json:"only"`
}

// Look works a job out as it stands, and shows what was picked of it, as wide as so many pixels of a
// screen. It is quick, to be called at each letter typed.
func (s *Side) Look(text string, picked Picked, width int) State {
	st := State{Problems: []Problem{}, File: s.saveAs("")}
	st.empty()
	tree, broken := treeOf(text)
	p, err := s.plan(text)
	if broken != nil {
		st.Problems = problemsOf(cmp.Or(err, broken), nil)
		return st
	}
	r := valueReader{text: string(tree.data), root: tree.Root, keys: keys.NewKeyTree()}
	st.Values = r.values()
	if err != nil {
		st.Problems = problemsOf(err, tree.TreeParser)
		st.Title = r.word(edit.Path{"title"}, "")
		st.File = s.saveAs(st.Title)
		return st
	}
	st.Title, st.File = p.Job.Title, s.saveAs(p.Job.Title)
	st.Good = true
	for _, it := range p.Job.Items {
		st.Items = append(st.Items, it.Name)
	}
	if plan.IsShelf(p.Job) {
		st.shelf(p.Job)
		return st
	}
	st.Item = within(picked.Item, len(p.Items))
	ip := p.Items[st.Item]
	v := view{valueReader: r, State: &st, plan: p, ip: ip, picked: picked, width: width}
	v.say()
	v.draw()
	return st
}

// empty makes every list one that JSON writes as such.
func (st *State) empty() {
	st.Items, st.Faces, st.Colourways = []string{}, []string{}, []string{}
	st.Answer, st.More, st.Serves, st.Overlaps, st.Notes = []Answer{}, []More{}, []string{}, []More{}, []Note{}
	st.Zones, st.Placed, st.Colours = []Zone{}, []Placed{}, []Colour{}
}

// tree is a text taken apart.
type tree struct {
	*toml.TreeParser
	data []byte
}

// treeOf takes a text apart; the error, of type job.Problems, says why it is no TOML, or too long.
func treeOf(text string) (tree, error) {
	if len(text) > jobfile.LargestJob {
		return tree{}, job.Problems{{Text: "the text is larger than 1 MiB, too large for a job; write a smaller one"}}
	}
	data, err := toml.DecodeText([]byte(text))
	if err != nil {
		return tree{}, job.Problems{{Text: err.Error()}}
	}
	if !utf8.Valid(data) {
		return tree{}, job.Problems{{Text: "this is not a text in UTF-8; save the file as UTF-8"}}
	}
	p := toml.ParseTree(data)
	if found := p.Problems(); len(found) > 0 {
		return tree{}, found.Sorted()
	}
	return tree{p, data}, nil
}

// within keeps a number within a list.
func within(i, n int) int {
	if i < 0 || i >= n {
		return 0
	}
	return i
}

// saveAs is the name to save a job under: that of its file, else made of its title.
func (s *Side) saveAs(title string) string {
	if s.name != "" {
		return s.name
	}
	var b strings.Builder
	for _, c := range strings.ToLower(title) {
		switch {
		case c >= 'a' && c <= 'z' || c >= '0' && c <= '9':
			b.WriteRune(c)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
		if b.Len() >= 60 {
			break
		}
	}
	if name := strings.Trim(b.String(), "-"); name != "" {
		return name
	}
	return "untitled"
}

// shelf says of a job without passes what every block gives on every item.
func (st *State) shelf(j *job.Job) {
	shelf, err := plan.NewShelf(j, plan.ShelfGap)
	if err != nil {
		st.Notes = append(st.Notes, Note{Text: err.Error()})
		return
	}
	st.Shelf = say.Shelf(shelf)
}

// view is one item of a job as it is shown.
type view struct {
	valueReader
	*State
	plan   *plan.Plan
	ip     *plan.ItemPlan
	picked Picked
	width  int
}

// passPath is the path of a pass of the item shown.
func (v view) passPath(p *job.Pass) string {
	for i, q := range v.plan.Job.Items[v.Item].Passes {
		if q == p {
			return fmt.Sprintf("item.%d.pass.%d", v.Item, i)
		}
	}
	return fmt.Sprintf("item.%d", v.Item)
}

// say fills in the sentences.
func (v view) say() {
	u := v.plan.Job.Units
	if len(v.ip.Item.Passes) == 0 {
		v.Notes = append(v.Notes, Note{fmt.Sprintf("item.%d", v.Item), "There is no pass, so nothing is printed on it; add one."})
	}
	for _, cloth := range v.ip.Cloths() {
		on := ""
		if len(v.ip.Turned) > 0 {
			on = ", on the " + words.Shown(words.InWords(cloth.FaceNames))
		}
		for _, p := range cloth.Passes {
			path := v.passPath(p.Pass)
			v.Answer = append(v.Answer, Answer{words.Shown(p.Pass.Name) + on, path, words.UpperFirst(say.Answer(u, cloth, p))})
			for _, n := range p.Notes {
				v.Notes = append(v.Notes, Note{path, words.UpperFirst(n) + "."})
			}
			v.more(cloth, p, path)
		}
		for _, o := range cloth.Overlaps {
			v.overlap(o)
		}
	}
	v.Serves = append(v.Serves, say.Whole(u, v.ip)...)
	if text := say.Crooked(u, v.ip); text != "" {
		v.Notes = append(v.Notes, Note{fmt.Sprintf("item.%d", v.Item), text})
	}
	if text := say.Pieces(u, v.ip); text != "" && len(v.ip.Passes) > 0 {
		v.Notes = append(v.Notes, Note{fmt.Sprintf("item.%d", v.Item), words.UpperFirst(text) + ": " + say.PrintsOnPieces(v.ip) + ". What is shown is one piece."})
	}
	v.Set = say.Set(v.plan)
	v.colours()
}

// colours lists the colours of the item's passes, with those that its colourways put in their place.
func (v view) colours() {
	j := v.plan.Job
	only := job.Job{Items: []*job.Item{j.Items[v.Item]}}
	for _, name := range only.Colours() {
		ink, known := j.Looks(name)
		c := Colour{Name: name, Looks: fmt.Sprintf("#%02x%02x%02x", ink.R, ink.G, ink.B), Known: known}
		if i := slices.IndexFunc(j.Paints, func(p job.Paint) bool { return p.Name == name }); i >= 0 {
			c.Path = fmt.Sprintf("paint.%d", i)
		}
		if known && v.Accent == "" {
			v.Accent = c.Looks
		}
		v.Colours = append(v.Colours, c)
	}
}
