package bench

import (
	"fmt"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/internal/sample"
	"underlay/template/job"
)

// overviews returns the text of the first pages of a job's guides.
func overviews(t *testing.T, j *job.Job) map[*guide.Guide]string {
	t.Helper()
	p := workedOut(t, j)
	all := map[*guide.Guide]string{}
	for _, ip := range p.Items {
		guides, err := guide.Faces(j, ip, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, g := range guides {
			all[&g] = textOf(Overview(j, g))
		}
	}
	return all
}

// TestLegendNamesWhatIsDrawn: the legend has wood, hem, border, zones and laps where the guide does,
// and only there; of the cloth's edge alone it has none of them.
func TestLegendNamesWhatIsDrawn(t *testing.T) {
	jobs := sample.Examples(t)
	for name, j := range sample.Hard(t) {
		jobs[name] = j
	}
	seen := map[string]int{}
	for name, j := range jobs {
		for g, text := range overviews(t, j) {
			item, whole := g.Face.Item.Item, j.Paper.Extent != job.EdgesExtent
			wood := false
			for _, p := range g.Face.Passes {
				wood = wood || !p.Pass.Block.Wood.None()
			}
			for what, want := range map[string]bool{
				"corners of the wood":            whole && wood,
				" hem ":                          whole && item.Hem > 0 && item.Shade == (job.Shade{}),
				"border line":                    whole && item.Border != (geometry.Edges{}),
				"kept clear: not to print on":    whole && len(item.Zones) > 0,
				"lap of the seam, not printed":   whole && item.Shade.Lap > 0,
				"this corner goes down first":    whole,
				"edge of the cloth":              true,
				"tape, from tick to tick":        guide.Taped(g.Face),
				"edge of a row or column":        guide.Ticked(g.Face),
				"centre line of the shade":       item.Shade != (job.Shade{}),
				"crease: centre line of the clo": item.Shade == (job.Shade{}),
			} {
				if got := strings.Contains(text+" ", what); got != want {
					t.Errorf("%s, %s: the legend has %q: %v", name, g.Face.Label(), what, got)
				}
				if want {
					seen[what]++
				} else {
					seen["no "+what]++
				}
			}
		}
	}
	for _, what := range []string{"corners of the wood", " hem ", "kept clear: not to print on", "lap of the seam, not printed"} {
		if seen[what] == 0 || seen["no "+what] == 0 {
			t.Errorf("%q: %d guides with it, %d without", what, seen[what], seen["no "+what])
		}
	}
}

// TestStepsOfJoining: over a ring of sheets no line runs from side to side, so that it is closed by
// measuring from corner to corner; all other sheets are laid by a straight edge.
func TestStepsOfJoining(t *testing.T) {
	const along, ring = "Lay a straight edge along a line that runs over the joins", "from corner to corner of the cloth’s edge"
	for extent, edges := range map[string]bool{"full": false, "edges": true} {
		j := readJob(t, "[paper]\nextent = '"+extent+"'\n[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n"+
			"[[item]]\nname = 'cover'\nsize = '80 x 90 cm'\nborder = '25 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n")
		for g, text := range overviews(t, j) {
			if len(g.Sheets) < 4 || strings.Contains(text, along) == edges || strings.Contains(text, ring) != edges {
				t.Errorf("%s, %d sheets: %s", extent, len(g.Sheets), text)
			}
		}
	}
}

// TestNumbersByFace: where a pass is printed on one face only, those after it have other numbers on
// each face, and all papers of a face say those.
func TestNumbersByFace(t *testing.T) {
	// By hand: 200 x 110 mm take (200 + 1) / 91 by (110 + 1) / 91, 2 x 1 ferns, and (200 + 10) / 40
	// by (110 + 10) / 40, 5 x 3 acorns.
	j := readJob(t, "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[block]]\nname = 'acorn'\nprint = '30 x 30 mm'\n"+
		"[[item]]\nname = 'cover'\nsize = '240 x 150 mm'\nborder = '20 mm'\nfaces = ['front', 'back']\n"+
		"[[item.pass]]\nblock = 'fern'\nface = 'back'\ngap = '1 mm'\n[[item.pass]]\nblock = 'acorn'\ngap = '10 mm'\n")
	p := workedOut(t, j)
	sheets := Sheets(p, p.Items[0])
	for i, face := range p.Items[0].Faces() {
		from := map[string]int{"front": 1, "back": 3}[face.Name()]
		guides, err := guide.Faces(j, p.Items[0], 0)
		if err != nil {
			t.Fatal(err)
		}
		words := textOf(Overview(j, guides[i])) + " "
		// Once by the pass, and, of several, once in the legend.
		if want := fmt.Sprintf("prints %d to %d", from, from+14); strings.Count(words, want) != len(face.Passes) {
			t.Errorf("%s: its first page says %q %d times: %s", face.Name(), want, strings.Count(words, want), words)
		}
		words = textOf(sheets[i].Pages[1:]) + " "
		if want := fmt.Sprintf("%d to %d ", from, from+14); !strings.Contains(words, want) {
			t.Errorf("%s: its bench sheet does not say %q: %s", face.Name(), want, words)
		}
		if want := fmt.Sprintf("nearest the centre %d ", from); !strings.Contains(words, want) { // the middle one of 5 x 3
			t.Errorf("%s: its bench sheet does not say %q: %s", face.Name(), want, words)
		}
		checkOrderNumbers(t, face.Name(), sheets[i].Pages[0], from, from+14)
	}
}

// checkOrderNumbers holds the numbers of the acorns, 30 mm wide, on a card: they begin and end as
// they should, and each is what its print's mark says.
func checkOrderNumbers(t *testing.T, face string, card paper.Page, from, to int) {
	t.Helper()
	seen := map[int]bool{}
	for _, v := range card.Views {
		for _, l := range v.Drawing.Labels {
			if l.Role.Kind == "number" {
				seen[l.Role.Number] = true
				if l.Text != fmt.Sprint(l.Role.Number) {
					t.Errorf("%s: number %q is of print %d", face, l.Text, l.Role.Number)
				}
			}
		}
	}
	if !seen[1] || !seen[from] || !seen[to] || seen[to+1] {
		t.Errorf("%s: the card has the numbers %v, want those up to %d", face, seen, to)
	}
}
