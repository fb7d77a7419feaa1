package say

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"underlay/template/plan"
)

// passText is a pass of a job file, its lines by key.
type passText struct{ name, block, rest string }

func (p passText) String() string {
	return "[[item.pass]]\nname = '" + p.name + "'\nblock = '" + p.block + "'\n" + p.rest + "\n"
}

// TestAdviceOnOverlaps puts each thing that is said of an overlap into the job file, as it is said:
// then nothing is said of it any more.
func TestAdviceOnOverlaps(t *testing.T) {
	ferns := passText{"ferns", "fern", "gap = '5 mm'"}
	moved := regexp.MustCompile(`move (\w+) above (\w+) in the job`)
	seated := regexp.MustCompile(`write (between = "\w+") for (\w+) in place of how it is set out`)
	gap := regexp.MustCompile(`(gap = "[^"]+") for (\w+)`)
	print := regexp.MustCompile(`(print = "[^"]+") for the block (\w+)`)
	over := regexp.MustCompile(`write (over = true) for (\w+)\.`)
	tried := map[string]int{}
	for _, units := range []string{"mm", "in", "cm"} {
		for name, passes := range map[string][]passText{
			"on each other":     {ferns, {"waves", "wave", "gap = '4 mm'"}},
			"in small openings": {ferns, {"pebbles", "pebble", "between = 'ferns'"}},
			"hexagons":          {ferns, {"acorns", "acorn", "between = 'ferns'\nopen-edges = true"}},
			"that fit between":  {{"ferns", "fern", "gap = '50 mm'"}, {"waves", "wave", "gap = '41 mm'"}},
			"framed too late":   {ferns, {"waves", "wave", "gap = '2 mm'"}, {"edge", "pebble", "gap = '2 mm'\nrepeat = 'frame'"}},
			"no openings":       {{"ferns", "fern", "gap = '5 mm'\nrepeat = 'brick'"}, {"waves", "wave", "gap = '4 mm'"}},
		} {
			blocks := map[string]string{"fern": "print = '90 x 90 mm'", "wave": "print = '60 x 40 mm'", "pebble": "shape = 'round'\nprint = '20 mm'", "acorn": "shape = 'hexagon'\nprint = '24 mm'"}
			says := func(passes []passText, blocks map[string]string) (all []string, on []string) {
				text := "units = '" + units + "'\n"
				for b, rest := range blocks {
					text += "[[block]]\nname = '" + b + "'\n" + rest + "\n"
				}
				text += "[[item]]\nname = 'cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\n"
				for _, p := range passes {
					text += p.String()
				}
				p, err := plan.New(readJob(t, text))
				if err != nil {
					t.Fatalf("%s: %v", name, err)
				}
				for _, o := range p.Items[0].Overlaps {
					all, on = append(all, Overlap(p.Job.Units, o)), append(on, o.Pass.Pass.Name+" on "+o.On.Pass.Name)
				}
				return all, on
			}
			texts, on := says(passes, blocks)
			if len(texts) == 0 {
				t.Fatalf("%s: nothing is said", name)
			}
			for i, text := range texts {
				follow := func(what string, change func(passes []passText, blocks map[string]string) []passText) {
					tried[what]++
					b := map[string]string{}
					for k, v := range blocks {
						b[k] = v
					}
					if _, left := says(change(slices.Clone(passes), b), b); slices.Contains(left, on[i]) {
						t.Errorf("%s: %s\n%s does not help: %s", name, text, what, left)
					}
				}
				set := func(passes []passText, name, rest string) {
					at := slices.IndexFunc(passes, func(p passText) bool { return p.name == name })
					if strings.HasPrefix(rest, "over") {
						rest = passes[at].rest + "\n" + rest
					}
					passes[at].rest = rest
				}
				seat := seated.FindStringSubmatch(text)
				begin := func(passes []passText) {
					if seat != nil {
						set(passes, seat[2], seat[1])
					}
				}
				if m := moved.FindStringSubmatch(text); m != nil {
					follow("move", func(passes []passText, _ map[string]string) []passText {
						at := slices.IndexFunc(passes, func(p passText) bool { return p.name == m[1] })
						p := passes[at]
						passes = slices.Delete(passes, at, at+1)
						return slices.Insert(passes, slices.IndexFunc(passes, func(q passText) bool { return q.name == m[2] }), p)
					})
				}
				g, b := gap.FindStringSubmatch(text), print.FindStringSubmatch(text)
				if g != nil {
					follow("gap", func(passes []passText, _ map[string]string) []passText {
						begin(passes)
						set(passes, g[2], g[1])
						return passes
					})
				}
				if b != nil {
					follow("print", func(passes []passText, blocks map[string]string) []passText {
						begin(passes)
						shape, _, round := strings.Cut(blocks[b[2]], "\n")
						blocks[b[2]] = b[1]
						if round {
							blocks[b[2]] = shape + "\n" + b[1]
						}
						return passes
					})
				}
				if seat != nil && g == nil && b == nil {
					follow("between", func(passes []passText, _ map[string]string) []passText { begin(passes); return passes })
				}
				m := over.FindStringSubmatch(text)
				if m == nil {
					t.Fatalf("no word of over: %s", text)
				}
				follow("over", func(passes []passText, _ map[string]string) []passText { set(passes, m[2], m[1]); return passes })
				if strings.Contains(text, "leave one of the two passes out") {
					follow("none", func(passes []passText, _ map[string]string) []passText { return passes[:1] })
				}
			}
		}
	}
	for _, what := range []string{"move", "gap", "print", "between", "over", "none"} {
		if tried[what] < 3 {
			t.Errorf("%s: tried %d times", what, tried[what])
		}
	}
}
