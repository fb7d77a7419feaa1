package side

import (
	"fmt"
	"strings"
	"testing"

	"underlay/template/job"
	"underlay/template/words"
)

// noRoom tells messages that are for the maker to settle: that there is no room for a print, or for a
// zone, and that another pass is seated by one that has no openings any more.
func noRoom(text string) bool {
	for _, part := range []string{"no print fits", "no whole print", "no opening closed by four", "only that has openings", "is kept clear", "reaches over the border", "beyond the item", "is not on the cloth"} {
		if strings.Contains(text, part) {
			return true
		}
	}
	return false
}

// wrong is what is wrong with a job, as Look tells it.
func wrong(s *Side, text string) []Problem {
	if _, err := s.plan(text); err != nil {
		return problemsOf(err, nil)
	}
	return nil
}

// TestChoiceLeavesAJobThatWorks: any shape for any item, any repeat for any pass that the sentence
// offers, and any shape for any block, leave a job that can be worked out, or, where the cloth has no room for the
// block so, says that and nothing else.
func TestChoiceLeavesAJobThatWorks(t *testing.T) {
	tried := map[string]int{}
	for name, text := range jobs(t) {
		s := sideWithPictures()
		st := s.Look(text, Picked{Only: "none"}, 300)
		if !st.Good {
			t.Errorf("%s: %v", name, st.Problems)
			continue
		}
		try := func(path, value string) {
			out, err := s.Choose(text, path, value)
			if err != nil {
				t.Errorf("%s: %s = %s: %v", name, path, value, err)
				return
			}
			tried[path[strings.LastIndex(path, ".")+1:]]++
			for _, p := range wrong(s, out) {
				if !noRoom(p.Text) {
					t.Errorf("%s: %s = %s: line %d, %s: %s\n%s", name, path, value, p.Line, p.Key, p.Text, out)
				}
			}
		}
		for i, it := range st.Values.Items {
			for _, shape := range words.Texts(job.Shapes()) {
				try(fmt.Sprintf("item.%d.shape", i), shape)
			}
			for k, pass := range it.Passes {
				for _, v := range pass.Values {
					if v.Key == "repeat" {
						for _, repeat := range v.Words {
							try(fmt.Sprintf("item.%d.pass.%d.repeat", i, k), repeat)
						}
					}
				}
			}
		}
		for i := range st.Values.Blocks {
			for _, shape := range words.Texts(job.FaceShapes()) {
				try(fmt.Sprintf("block.%d.shape", i), shape)
			}
		}
	}
	if tried["shape"] < 200 || tried["repeat"] < 200 {
		t.Errorf("tried %v", tried)
	}
}
