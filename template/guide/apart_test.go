package guide

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/geometry"
	"underlay/template/internal/readback"
)

// apart is a job with its passes apart.
func apart(text string) string { return "[paper]\npasses = \"apart\"\n" + text }

// TestPassesApart reads each guide of a bag whose passes are apart: it shows the prints of its own
// pass, at the places and with the numbers they have where all are together, and no others.
func TestPassesApart(t *testing.T) {
	together, alone := facesOf(t, readJob(t, twoBags)), facesOf(t, readJob(t, apart(twoBags)))
	var labels []string
	for _, g := range alone {
		labels = append(labels, g.Face.Label())
	}
	// A face of one pass is as it was.
	want := []string{"book bag, front, fern", "book bag, front, acorn", "book bag, back", "other bag"}
	if d := cmp.Diff(want, labels); d != "" {
		t.Fatal(d)
	}
	numbers := func(g Guide) map[string]int {
		found := map[string]int{}
		for _, s := range g.Drawing.Labels {
			if s.Role.Kind == RoleNumber {
				found[s.Text]++
			}
		}
		return found
	}
	// 6 x 6 ferns of 40 mm with 1 mm between are 245 of the 260 mm there are; 5 x 5 openings.
	wanted := map[string]int{}
	for i, g := range alone[:2] {
		own := map[string]int{}
		for n := []int{1, 37}[i]; n <= []int{36, 61}[i]; n++ {
			own[strconv.Itoa(n)], wanted[strconv.Itoa(n)] = 1, 1
		}
		if d := cmp.Diff(own, numbers(g)); d != "" {
			t.Errorf("%s: %s", labels[i], d)
		}
		if d := cmp.Diff(outlinesOf(together[0], i), outlinesOf(g, 0)); d != "" {
			t.Errorf("%s: prints lie elsewhere than together: %s", labels[i], d)
		}
		for _, page := range readback.Drawn(t, g.Pages) {
			said := page.Text()
			if other := []string{"acorn", "fern"}[i]; strings.Contains(strings.ReplaceAll(said, "in the openings of fern", ""), other) {
				t.Errorf("%s tells of the %s: %s", labels[i], other, said)
			}
			if !strings.Contains(said, []string{"fern", "acorn"}[i]) {
				t.Errorf("%s does not say so: %s", labels[i], said)
			}
		}
	}
	if d := cmp.Diff(wanted, numbers(together[0])); d != "" {
		t.Errorf("together: %s", d)
	}
}

// outlinesOf returns the bounds of the outlines that a guide has of its i-th pass, by number.
func outlinesOf(g Guide, i int) map[int]geometry.Rect {
	pass := g.Face.Passes[i]
	found := map[int]geometry.Rect{}
	for _, s := range g.Drawing.Strokes {
		if n := s.Role.Number; s.Role.Kind == RolePrint && n >= pass.First && n < pass.First+len(pass.Prints) {
			found[n] = s.Bounds()
		}
	}
	return found
}

// TestMarksOfPassesApart holds that each guide has a mark of its own, which changes with all that
// decides where its prints lie and how they are numbered: with the pass that seats it, too.
func TestMarksOfPassesApart(t *testing.T) {
	marks := func(text string) []string {
		var all []string
		j := readJob(t, text)
		for _, g := range facesOf(t, j) {
			all = append(all, Mark(j, g.Face))
		}
		return all
	}
	was := marks(apart(twoBags))
	all := slices.Concat(was, marks(twoBags))
	slices.Sort(all)
	if n := len(slices.Compact(slices.Clone(all))); n != len(all) {
		t.Errorf("some guides have the same mark: %q", all)
	}
	now := marks(apart(strings.Replace(twoBags, "gap = \"1 mm\"", "gap = \"2 mm\"", 1)))
	for i, changed := range []bool{true, true, true, false} {
		if (was[i] != now[i]) != changed {
			t.Errorf("with a wider gap between ferns the mark of guide %d goes from %s to %s", i, was[i], now[i])
		}
	}
}
