package side

import (
	"cmp"
	"errors"
	"fmt"
	"strings"

	"underlay/template/job"
	"underlay/template/jobfile/edit"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// place is a value or a table of a text, and the lines that it takes.
type place struct {
	path     edit.Path
	from, to int
	key      string // "" of a table
	says     string // of a single text
}

// problemsOf ties what is wrong with a job to the values it is of.
func problemsOf(err error, p *toml.TreeParser) []Problem {
	var problems job.Problems
	if !errors.As(err, &problems) {
		problems = job.Problems{{Text: err.Error()}}
	}
	var places []place
	if p != nil {
		places = placesIn(p, p.Root, nil, nil)
	}
	all := []Problem{}
	for _, q := range problems {
		all = append(all, Problem{Path: pathOf(q, places), Line: q.Line, Key: q.Key, Text: q.Text})
	}
	return all
}

// placesIn lists all places in a table or a list, those within others after them.
func placesIn(p *toml.TreeParser, n *toml.Node, at edit.Path, all []place) []place {
	if len(at) > 0 {
		r := n.Entry
		if r == (toml.ByteRange{}) {
			r = n.At
		}
		here := place{path: at, from: n.Line, to: n.Line, key: at[len(at)-1]}
		if r != (toml.ByteRange{}) {
			here.from, here.to = p.LineAt(r.From), p.LineAt(max(r.From, r.To-1))
		} else {
			here.key = ""
		}
		here.says, _ = n.Value.(string)
		all = append(all, here)
	}
	for _, key := range n.Order {
		all = placesIn(p, n.Keys[key], at.Sub(key), all)
	}
	for i, item := range n.Items {
		all = placesIn(p, item, at.Sub(fmt.Sprint(i)), all)
	}
	return all
}

// pathOf finds what a problem is of: the value of its key in its line, and of several of that key the
// one that it quotes first; else the table whose heading is there, else what stands there; "" for none.
func pathOf(q job.Problem, places []place) string {
	heading, value, keyed := "", "", ""
	first := len(q.Text) // where it quotes what keyed says
	for _, x := range places {
		switch {
		case q.Line < x.from || q.Line > x.to:
		case x.key == "":
			heading = x.path.String()
		case q.Key == x.key, q.Key == "" && strings.HasPrefix(q.Text, x.key+" = "):
			quoted := strings.Index(q.Text, words.Quote(x.says))
			if keyed == "" || quoted >= 0 && quoted < first {
				keyed = x.path.String()
			}
			if quoted >= 0 {
				first = min(first, quoted)
			}
		case value == "":
			value = x.path.String()
		}
	}
	return cmp.Or(keyed, heading, value)
}
