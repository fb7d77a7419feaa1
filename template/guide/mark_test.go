package guide

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"underlay/template/internal/sample"
	"underlay/template/picture"
	"underlay/template/plan"
)

const twoBags = `[[block]]
name = "fern"
print = "40 x 40 mm"
[[block]]
name = "acorn"
print = "20 x 20 mm"
[[item]]
name = "book bag"
size = "30 x 30 cm"
border = "20 mm"
faces = ["front", "back"]
  [[item.pass]]
  block = "fern"
  gap = "1 mm"
  [[item.pass]]
  block = "acorn"
  between = "fern"
  face = "front"
[[item]]
name = "other bag"
size = "30 x 30 cm"
border = "20 mm"
  [[item.pass]]
  block = "fern"
  gap = "1 mm"
`

// marksOf are the marks of all guides of a job, and that of the set.
func marksOf(t *testing.T, text string) []string {
	t.Helper()
	p, err := plan.New(readJob(t, text))
	if err != nil {
		t.Fatal(err)
	}
	marks := []string{SetMark(p.Job)}
	for _, ip := range p.Items {
		for _, f := range ip.Faces() {
			marks = append(marks, Mark(p.Job, f))
		}
	}
	return marks
}

// TestMarks changes a job line by line: what decides a drawing changes its mark, and nothing else
// does. Marks are the set's, the first bag's front and back, and the other bag's.
func TestMarks(t *testing.T) {
	form := regexp.MustCompile(`^[BCDFGHJKLMNPQRSTVWXYZ][2-9][BCDFGHJKLMNPQRSTVWXYZ][2-9]$`)
	was := marksOf(t, twoBags)
	seen := map[string]bool{}
	for _, m := range was {
		if !form.MatchString(m) || seen[m] {
			t.Errorf("marks %q: not letter, figure, letter, figure, or one twice", was)
		}
		seen[m] = true
	}
	for _, c := range []struct {
		what, from, to string
		changed        string // of set, front, back, other: x changed
	}{
		{"nothing", "", "", "...."},
		{"a remark", "[[item]]", "# sewn by hand\n[[item]]", "...."},
		{"the title", "[[block]]", "title = \"Bags\"\n[[block]]", "...."},
		{"how many", "border", "quantity = 3\nborder", "...."},
		{"the paper", "[[block]]\nname = \"fern\"", "[paper]\nsize = \"A3\"\n[[block]]\nname = \"fern\"", "xxxx"},
		{"the lines", "[[block]]\nname = \"fern\"", "[paper]\nlines = \"strong\"\n[[block]]\nname = \"fern\"", "xxxx"},
		{"the hand", "[[block]]\nname = \"fern\"", "[printing]\nhand = \"left\"\n[[block]]\nname = \"fern\"", "xxxx"},
		{"one block", "20 x 20 mm", "21 x 20 mm", "xx.."},
		{"both bags' block", "40 x 40 mm", "40 x 41 mm", "xxxx"},
		{"one bag's name", "other bag", "third bag", "x..x"},
		{"a hair of border", "size = \"30 x 30 cm\"\nborder = \"20 mm\"\n  [[", "size = \"30 x 30 cm\"\nborder = \"20.001 mm\"\n  [[", "x..x"},
		{"pieces on one cloth", "size = \"30 x 30 cm\"\nborder = \"20 mm\"\n  [[", "size = \"30 x 30 cm\"\nborder = \"20 mm\"\npieces = \"2 x 1\"\n  [[", "x..x"},
		{"a colour", "gap = \"1 mm\"", "gap = \"1 mm\"\ncolours = [\"moss\"]", "...."},
		{"dabs", "gap = \"1 mm\"", "gap = \"1 mm\"\ndabs = [{ colour = \"moss\", middle = \"20 mm\" }, { colour = \"ochre\" }]", "...."},
		{"colours in turn, which the guide names", "gap = \"1 mm\"", "gap = \"1 mm\"\ncolours-in-turn = [[\"moss\", \"ochre\"]]", "xxx."},
		{"how a colour looks", "[[block]]", "[[paint]]\nname = \"moss\"\nlooks = \"#5f7a3a\"\n[[block]]", "...."},
		{"what is inked", "print = \"40 x 40 mm\"", "print = \"40 x 40 mm\"\ninked = 0.5", "...."},
		{"openings at the edge", "between = \"fern\"", "between = \"fern\"\nopen-edges = true", "xx.."},
	} {
		n := 1
		if c.what == "a remark" || c.what == "how many" {
			n = -1
		}
		now := marksOf(t, strings.Replace(twoBags, c.from, c.to, n))
		got := ""
		for i := range was {
			if now[i] == was[i] {
				got += "."
			} else {
				got += "x"
			}
		}
		if got != c.changed {
			t.Errorf("%s: %s changed, want %s: %q, then %q", c.what, got, c.changed, was, now)
		}
	}
}

// TestMarksLeaveColoursOut: of several blocks in turn too, as their names tell them apart.
func TestMarksLeaveColoursOut(t *testing.T) {
	two := strings.ReplaceAll(twoBags, `block = "fern"`+"\n  gap", `blocks = [["fern", "acorn"]]`+"\n  gap")
	two = strings.Replace(two, "[[item.pass]]\n  block = \"acorn\"\n  between = \"fern\"\n  face = \"front\"\n", "", 1)
	was, now := marksOf(t, two), marksOf(t, strings.ReplaceAll(two, `gap = "1 mm"`, "gap = \"1 mm\"\ncolours = [\"moss\"]"))
	if !slices.Equal(was, now) {
		t.Errorf("marks %q, and %q in a colour", was, now)
	}
	turn := func(first string) string {
		return marksOf(t, strings.Replace(twoBags, `gap = "1 mm"`, `gap = "1 mm"`+"\ncolours-in-turn = [[\""+first+"\", \"ochre\"]]", 1))[1]
	}
	if turn("moss") == turn("slate") {
		t.Error("another colour in turn, which the guide names, leaves the mark as it was")
	}
}

// TestMarksLeavePicturesOut: a guide has the mark that it has without pictures of its blocks.
func TestMarksLeavePicturesOut(t *testing.T) {
	p, err := plan.New(readJob(t, twoBags))
	if err != nil {
		t.Fatal(err)
	}
	was := marksOf(t, twoBags)[:2]
	for _, b := range p.Job.Blocks {
		b.Picture = &picture.Picture{Name: b.Name + ".png", Mask: &picture.Mask{W: 1, H: 1, Paint: []uint8{255}}}
		b.Inked = 0.3
	}
	if now := []string{SetMark(p.Job), Mark(p.Job, p.Items[0].Faces()[0])}; !slices.Equal(now, was) {
		t.Errorf("marks %q, and %q with pictures", was, now)
	}
}

// TestMarkOfWhatIsLaid: the bench sheet and the guide it goes with, which shows a stretch of a cloth
// or all its pieces, have one mark.
func TestMarkOfWhatIsLaid(t *testing.T) {
	jobs := sample.Examples(t)
	for name, j := range sample.Hard(t) {
		jobs[name] = j
	}
	for name, j := range jobs {
		p, err := plan.New(j)
		if err != nil {
			t.Fatal(err)
		}
		for _, ip := range p.Items {
			for _, f := range ip.Faces() {
				laid := f.Laid()
				if Mark(j, f) != Mark(j, laid) {
					t.Errorf("%s, %s: mark %s, and %s on its guide", name, f.Label(), Mark(j, f), Mark(j, laid))
				}
				if again := laid.Laid(); again.Count() != laid.Count() || again.Item.Area.Cloth != laid.Item.Area.Cloth {
					t.Errorf("%s, %s: laid twice it has %d prints, once %d", name, f.Label(), again.Count(), laid.Count())
				}
			}
		}
	}
}
