package side

import (
	"fmt"
	"strings"
	"testing"
)

// TestAddLeavesAJobThatWorks: one more of anything, in every job.
func TestAddLeavesAJobThatWorks(t *testing.T) {
	tried := map[string]int{}
	for name, text := range jobs(t) {
		s := sideWithPictures()
		st := s.Look(text, Picked{Only: "none"}, 300)
		try := func(what, in string) {
			added, err := s.Add(text, what, in)
			if err != nil {
				if what == "colourway" && strings.Contains(err.Error(), "names a colour") {
					return
				}
				t.Errorf("%s: add %s to %q: %v", name, what, in, err)
				return
			}
			tried[what]++
			for _, p := range wrong(s, added.Text) {
				if !noRoom(p.Text) && !(what == "zone" && strings.Contains(p.Text, "moved along")) {
					t.Errorf("%s: add %s to %q: line %d: %s\n%s", name, what, in, p.Line, p.Text, added.Text)
				}
			}
			if back, err := s.Remove(added.Text, added.Path); err != nil || what != "dab" && what != "colourway" && lines(back) != lines(text) {
				t.Errorf("%s: add %s to %q and take it away: %v\n%s", name, what, in, err, back)
			}
		}
		for _, what := range []string{"block", "item", "paint"} {
			try(what, "")
		}
		for i, it := range st.Values.Items {
			item := fmt.Sprintf("item.%d", i)
			for _, what := range []string{"pass", "zone", "colourway"} {
				try(what, item)
			}
			try("another", item)
			for k, pass := range it.Passes {
				try("dab", fmt.Sprintf("%s.pass.%d", item, k))
				if pass.Repeat == "placed" {
					try("place", fmt.Sprintf("%s.pass.%d", item, k))
				}
			}
		}
		for i := range st.Values.Blocks {
			try("another", fmt.Sprintf("block.%d", i))
		}
	}
	for _, what := range Things() {
		if tried[what] == 0 {
			t.Errorf("no %s was added", what)
		}
	}
}

// lines are those of a text that have something in them.
func lines(text string) string {
	var all []string
	for line := range strings.Lines(text) {
		if line = strings.TrimSpace(line); line != "" {
			all = append(all, line)
		}
	}
	return strings.Join(all, "\n")
}
