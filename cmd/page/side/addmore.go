package side

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile/edit"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// colourway prints one of an item's pieces in another colour.
func (a adder) colourway(item edit.Path) (Added, error) {
	run := item.Sub("colourway")
	colours := a.colours(item)
	if len(colours) == 0 {
		return Added{}, errors.New("no pass of this item names a colour, so there is none to take the place of; give a pass its colours first")
	}
	other := "teal"
	if colours[0] == other {
		other = "ochre"
	}
	text := a.text
	pieces, _ := strconv.Atoi(a.source(item.Sub("quantity"), "1"))
	taken := 0
	for i := range a.reader.run(run) {
		n, err := strconv.Atoi(a.source(run.Sub(strconv.Itoa(i), "quantity"), "1"))
		if err == nil {
			taken += n
		}
	}
	added, err := a.table(text, run, field("name", a.free(run, "evening", "morning", "winter")), edit.Field{Key: "quantity", Source: "1"},
		edit.Field{Key: "swap", Source: edit.Braces(edit.Field{Key: colours[0], Source: words.TOML(other)})})
	if err == nil && taken+1 >= pieces {
		added.Text, err = edit.Set(added.Text, item.Sub("quantity"), strconv.Itoa(taken+2))
	}
	return added, err
}

// source is how a value is written; otherwise where it is not given.
func (a adder) source(p edit.Path, otherwise string) string {
	if n := edit.Find(a.reader.root, p); n != nil {
		return n.Source
	}
	return otherwise
}

// colours lists those that an item's passes name.
func (a adder) colours(item edit.Path) []string {
	var all []string
	for i := range a.reader.run(item.Sub("pass")) {
		pass := item.Sub("pass", strconv.Itoa(i))
		all = append(all, a.reader.texts(pass.Sub("colours"))...)
		for k := range a.reader.run(pass.Sub("dabs")) {
			if c := a.reader.word(pass.Sub("dabs", strconv.Itoa(k), "colour"), ""); c != "" {
				all = append(all, c)
			}
		}
		if rows := edit.Find(a.reader.root, pass.Sub("colours-in-turn")); rows != nil {
			for k := range rows.Items {
				all = append(all, a.reader.texts(pass.Sub("colours-in-turn", strconv.Itoa(k)))...)
			}
		}
	}
	return all
}

// dab puts one more colour on a part of the face: first the middle, beside the colour that is on all of
// it, then the edge, then the corners.
func (a adder) dab(pass edit.Path) (Added, error) {
	run := pass.Sub("dabs")
	there := a.reader.run(run)
	if len(there) == 0 {
		return a.firstDabs(pass)
	}
	taken := map[string]bool{}
	for _, n := range there {
		for _, key := range n.Order {
			taken[key] = true
		}
	}
	part := job.TheMiddle
	for _, p := range []job.FacePart{job.TheMiddle, job.TheEdge, job.TheCorners} {
		if !taken[string(p)] {
			part = p
			break
		}
	}
	dab := edit.Braces(field("colour", "ochre"), field(string(part), a.dabSize(pass, part)))
	// Before the one that has the rest, which comes last.
	last := there[len(there)-1]
	at := len(there)
	if !slices.ContainsFunc([]job.FacePart{job.TheMiddle, job.TheEdge, job.TheCorners}, func(p job.FacePart) bool { return last.Keys[string(p)] != nil }) {
		at--
	}
	var all []string
	for i, n := range there {
		if i == at {
			all = append(all, dab)
		}
		all = append(all, a.reader.source(n))
	}
	if at == len(there) {
		all = append(all, dab)
	}
	out, err := edit.Set(a.text, run, "["+strings.Join(all, ", ")+"]")
	return Added{out, run.Sub(strconv.Itoa(at)).String()}, err
}

// firstDabs parts a pass's colour in two: the middle, and the rest in what was on all of it.
func (a adder) firstDabs(pass edit.Path) (Added, error) {
	rest, middle := "moss", "ochre"
	if colours := a.reader.texts(pass.Sub("colours")); len(colours) > 0 {
		rest = colours[0]
		if len(colours) > 1 {
			middle = colours[1]
		}
	}
	if rest == middle {
		middle = "moss"
	}
	text := a.text
	var err error
	for _, key := range []string{"colours", "colours-in-turn"} {
		if edit.Find(a.reader.root, pass.Sub(key)) != nil {
			if text, err = edit.Remove(text, pass.Sub(key)); err != nil {
				return Added{}, err
			}
		}
	}
	run := pass.Sub("dabs")
	text, err = edit.Set(text, run, "["+edit.Braces(field("colour", middle), field(string(job.TheMiddle), a.dabSize(pass, job.TheMiddle)))+", "+edit.Braces(field("colour", rest))+"]")
	return Added{text, run.Sub("0").String()}, err
}

// dabSize is how large a dab on a part of a pass's block may well be.
func (a adder) dabSize(pass edit.Path, part job.FacePart) string {
	size := geometry.Size{W: 60, H: 60}
	if p, ok := a.works(a.text); ok {
		for _, b := range p.Job.Blocks {
			if b.Name == a.reader.word(pass.Sub("block"), "") {
				size = b.Size
			}
		}
	}
	share := map[job.FacePart]float64{job.TheMiddle: 0.4, job.TheEdge: 0.1, job.TheCorners: 0.2}[part]
	return geometry.Decimals(float64(min(size.W, size.H))*share, 1) + " mm"
}

// another copies a table with all that is in it, under another name.
func (a adder) another(p edit.Path) (Added, error) {
	one := len(p) < 2
	if !one {
		_, err := strconv.Atoi(p[len(p)-1])
		one = err != nil
	}
	if one {
		return Added{}, errors.New("of this there is only one; take another of a block, an item, a pass, a zone, a paint or a colourway")
	}
	n, run := edit.Find(a.reader.root, p), p[:len(p)-1]
	name := a.reader.word(p.Sub("name"), a.reader.word(p.Sub("block"), ""))
	if name == "" {
		name = "another"
	}
	return a.copied(a.text, n, run, field("name", a.free(run, name+" again")))
}

// copied adds a copy of a table to a run, first some keys in place of its own, and copies of the tables
// in it.
func (a adder) copied(text string, n *toml.Node, run edit.Path, own ...edit.Field) (Added, error) {
	fields := slices.Clone(own)
	var below []string
	for _, key := range n.Order {
		child := n.Keys[key]
		switch {
		case slices.ContainsFunc(own, func(f edit.Field) bool { return f.Key == key }):
		case child.Entry != (toml.ByteRange{}):
			fields = append(fields, edit.Field{Key: key, Source: a.reader.source(child)})
		case child.Form == toml.Table:
			var inner []edit.Field
			for _, k := range child.Order {
				if child.Keys[k].Entry != (toml.ByteRange{}) {
					inner = append(inner, edit.Field{Key: k, Source: a.reader.source(child.Keys[k])})
				}
			}
			fields = append(fields, edit.Field{Key: key, Source: edit.Braces(inner...)})
		default:
			below = append(below, key)
		}
	}
	added, err := a.table(text, run, fields...)
	if err != nil {
		return Added{}, err
	}
	to, _ := edit.ParsePath(added.Path)
	for _, key := range below {
		for _, child := range n.Keys[key].Items {
			inner, err := a.copied(added.Text, child, to.Sub(key))
			if err != nil {
				return Added{}, err
			}
			added.Text = inner.Text
		}
	}
	return added, nil
}
