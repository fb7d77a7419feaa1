package side

import (
	"fmt"
	"strings"
	"testing"
)

// counts are how many prints the passes of an item have on each of its cloths, by their paths.
func counts(t *testing.T, s *Side, text string, item int) (map[string][]int, []Problem) {
	t.Helper()
	p, err := s.plan(text)
	if err != nil {
		return nil, problemsOf(err, nil)
	}
	all := map[string][]int{}
	for _, cloth := range p.Items[item].Cloths() {
		for _, pp := range cloth.Passes {
			for i, q := range p.Job.Items[item].Passes {
				if q == pp.Pass {
					path := fmt.Sprintf("item.%d.pass.%d", item, i)
					all[path] = append(all[path], len(pp.Prints))
				}
			}
		}
	}
	return all, nil
}

// TestMoreDoesWhatItSays puts each way to one more print into the job: it gives more prints.
func TestMoreDoesWhatItSays(t *testing.T) {
	tried, without := map[string]int{}, 0
	for name, text := range jobs(t) {
		for _, unit := range []string{"", "cm", "in"} {
			s := sideWithPictures()
			if unit != "" {
				text, _ = s.Set(text, "units", unit)
			}
			st := s.Look(text, Picked{Only: "none"}, 300)
			for i := range st.Items {
				before, _ := counts(t, s, text, i)
				for _, m := range s.Look(text, Picked{Item: i, Only: "none"}, 300).More {
					for _, w := range m.Ways {
						if len(w.Edits) == 0 {
							without++
							continue
						}
						out, err := s.Apply(text, w.Edits)
						if err != nil {
							t.Errorf("%s: %s %s: %v", name, m.Text, w.Text, err)
							continue
						}
						tried[w.Edits[len(w.Edits)-1].Path[strings.LastIndex(w.Edits[len(w.Edits)-1].Path, ".")+1:]]++
						after, problems := counts(t, s, out, i)
						more := false
						for k, n := range after[m.Path] {
							more = more || n > before[m.Path][k]
						}
						if !more {
							t.Errorf("%s, in %q: %s %s: %v: %v prints, were %v; %v", name, unit, m.Text, w.Text, w.Edits, after[m.Path], before[m.Path], problems)
						}
					}
				}
			}
		}
	}
	t.Log(tried, without)
	for _, key := range []string{"size", "border", "gap", "gap-down", "print", "height", "diameter"} {
		if tried[key] == 0 {
			t.Errorf("nothing was tried with %s: %v", key, tried)
		}
	}
}
