package jobfile

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/template/job"
)

// dabbed is a job with a pass that is dabbed as a line says, on a block of 90 x 60 mm or another.
func dabbed(line, block string) string {
	return `
[[block]]
name = "fern"
print = "90 x 60 mm"
[[block]]
name = "pebble"
shape = "round"
print = "40 mm"
[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"
  [[item.pass]]
  block = "` + block + `"
  gap = "1 mm"
  ` + line + "\n"
}

func TestReadDabs(t *testing.T) {
	const middle = `dabs = [{ colour = "ochre", middle = "3 cm" }, `
	for line, want := range map[string][]job.Dab{
		`colours = ["moss"]`:                           nil,
		middle + `{ colour = "moss" }]`:                {{Colour: "ochre", Part: job.TheMiddle, Size: 30}, {Colour: "moss", Part: job.TheRest}},
		middle + `{ colour = "moss", edge = "5 mm" }]`: {{Colour: "ochre", Part: job.TheMiddle, Size: 30}, {Colour: "moss", Part: job.TheEdge, Size: 5}},
		middle + `{ corners = "1 in", colour = "ochre" }, { colour = "moss" },]`: {
			{Colour: "ochre", Part: job.TheMiddle, Size: 30}, {Colour: "ochre", Part: job.TheCorners, Size: 25.4}, {Colour: "moss", Part: job.TheRest}},
		"[[item.pass.dabs]]\ncolour = 'ochre'\nmiddle = '30 mm'\n[[item.pass.dabs]]\ncolour = 'moss'": {
			{Colour: "ochre", Part: job.TheMiddle, Size: 30}, {Colour: "moss", Part: job.TheRest}},
	} {
		j, err := Read("nook.toml", []byte(dabbed(line, "fern")))
		if err != nil {
			t.Errorf("%s: %v", line, err)
			continue
		}
		p := j.Items[0].Passes[0]
		if d := cmp.Diff(want, p.Dabs); d != "" {
			t.Errorf("%s (-want +got):\n%s", line, d)
		}
		if d := cmp.Diff([]string{"moss"}, p.Colours); len(want) == 0 && d != "" {
			t.Error(d)
		}
		if d := cmp.Diff([]string{"ochre", "moss"}, p.Colours); len(want) > 0 && d != "" {
			t.Errorf("%s: colours (-want +got):\n%s", line, d)
		}
	}
}

// TestAdviceOfDabs follows what is said of dabs that are wrong.
func TestAdviceOfDabs(t *testing.T) {
	const moss = `{ colour = "moss" }`
	for _, c := range []struct{ block, line, says, followed string }{
		{"fern", `dabs = { colour = "ochre", edge = "5 mm" }`, "write [ before it and ] after it", `dabs = [{ colour = "ochre", edge = "5 mm" }]`},
		{"fern", `dabs = ["ochre", ` + moss + `]`, `write { colour = "ochre" }, or with the part it goes on, { colour = "ochre", middle = "30 mm" }`, `dabs = [{ colour = "ochre", middle = "30 mm" }, ` + moss + `]`},
		{"fern", `dabs = [` + moss + `, { colour = "ochre", edge = "5 mm" }]`, "move it to the end", `dabs = [{ colour = "ochre", edge = "5 mm" }, ` + moss + `]`},
		{"fern", `dabs = [` + moss + `, { colour = "ochre", edge = "5 mm" }]`, "or give it middle, corners or edge", `dabs = [{ colour = "moss", corners = "5 mm" }, { colour = "ochre", edge = "5 mm" }]`},
		{"fern", `dabs = [{ colour = "ochre", middle = "9 mm", edge = "5 mm" }, ` + moss + `]`, "write two dabs, one for each", `dabs = [{ colour = "ochre", middle = "9 mm" }, { colour = "ochre", edge = "5 mm" }, ` + moss + `]`},
		{"fern", `dabs = [{ colour = "ochre", edge = "5 mm" }, { colour = "ochre" }]`, `write colours = ["ochre"] in place of dabs`, `colours = ["ochre"]`},
		{"fern", `dabs = [{ colour = "ochre", edge = "5 mm" }, { colour = "ochre" }]`, "or dab another colour too", `dabs = [{ colour = "ochre", edge = "5 mm" }, ` + moss + `]`},
		{"fern", `dabs = [{ colour = "ochre", middle = "110 mm" }, ` + moss + `]`, `write "88 mm" or less`, `dabs = [{ colour = "ochre", middle = "88 mm" }, ` + moss + `]`},
		{"fern", `dabs = [{ colour = "ochre", edge = "1.2 in" }, ` + moss + `]`, `write "23 mm" or less`, `dabs = [{ colour = "ochre", edge = "23 mm" }, ` + moss + `]`},
		{"pebble", `dabs = [{ colour = "ochre", edge = "25 mm" }, ` + moss + `]`, `write "13 mm" or less`, `dabs = [{ colour = "ochre", edge = "13 mm" }, ` + moss + `]`},
		{"fern", `dabs = [{ colour = "ochre", corners = "60 mm" }]`, `write "44 mm" or less`, `dabs = [{ colour = "ochre", corners = "44 mm" }]`},
		{"pebble", `dabs = [{ colour = "ochre", corners = "5 mm" }, ` + moss + `]`, "write middle or edge", `dabs = [{ colour = "ochre", edge = "5 mm" }, ` + moss + `]`},
		{"fern", `dabs = [{ colour = "ochre", middle = "60 mm" }, { colour = "sand", middle = "30 mm" }]`, "or put it before them", `dabs = [{ colour = "sand", middle = "30 mm" }, { colour = "ochre", middle = "60 mm" }]`},
		{"fern", `dabs = [{ colour = "ochre", middle = "60 mm" }, { colour = "sand", middle = "30 mm" }]`, "make them smaller", `dabs = [{ colour = "ochre", middle = "20 mm" }, { colour = "sand", middle = "30 mm" }]`},
		{"fern", `dabs = [{ colour = "ochre", edge = "26 mm" }, { colour = "sand", middle = "60 mm" }, ` + moss + `]`, "or take it out", `dabs = [{ colour = "ochre", edge = "26 mm" }, { colour = "sand", middle = "60 mm" }]`},
	} {
		_, err := Read("nook.toml", []byte(dabbed(c.line, c.block)))
		if err == nil || strings.Count(err.Error(), "\n") > 0 || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s\n says: %v\n want one message with: %s", c.line, err, c.says)
		}
		if _, err := Read("nook.toml", []byte(dabbed(c.followed, c.block))); err != nil {
			t.Errorf("%s\n and when followed, %s: %v", c.line, c.followed, err)
		}
	}
}

// TestDabsInInches: what is advised is in eighths where that is fine enough.
func TestDabsInInches(t *testing.T) {
	for line, want := range map[string]string{
		`dabs = [{ colour = "ochre", edge = "1.5 in" }]`:   `edge: 1.5 in takes all of the face of block "fern"; write "0.875 in" or less`,
		`dabs = [{ colour = "ochre", middle = "120 mm" }]`: `middle: 4.724 in takes all of the face of block "fern"; write "3.375 in" or less`,
	} {
		_, err := Read("nook.toml", []byte("units = \"in\""+dabbed(line, "fern")))
		if got := problemText(err); got != want {
			t.Errorf("%s\n says %s\n want %s", line, got, want)
		}
	}
}

// TestPaintNames: a paint may stand ready without being named, but not by a slip.
func TestPaintNames(t *testing.T) {
	const moss, ochre = "[[paint]]\nname = 'moss'\nlooks = '#5f7a3a'\n", "[[paint]]\nname = 'ochre'\nlooks = '#c08a2e'\n"
	job := dabbed(`dabs = [{ colour = "ochre", edge = "5 mm" }, { colour = "moss" }]`+"\n  [[item.colourway]]\n  name = 'evening'\n  swap = { moss = 'teal' }", "fern")
	for paints, says := range map[string]string{
		moss + ochre: "",
		moss:         "",
		moss + "[[paint]]\nname = 'ocher'\nlooks = 'navy'\n":                                    `name: no pass or colourway names "ocher"; write "ochre", or take this paint out`,
		"[[paint]]\nname = 'teal'\nlooks = 'navy'\n[[paint]]\nname = 'ochre'\nlooks = 'navy'\n": "",                                                                                // moss has none, and is no slip of theirs
		moss + "[[paint]]\nname = 'lake'\nlooks = 'navy'\n":                                     "",                                                                                // ready on the shelf
		moss + ochre + "[[paint]]\nname = 'mos'\nlooks = 'navy'\n":                              "",                                                                                // moss has a paint: this is another
		"[[paint]]\nname = 'mos'\nlooks = 'navy'\n":                                             `name: no pass or colourway names "mos"; write "moss", or take this paint out`,    //
		"[[paint]]\nname = 'Ochre'\nlooks = 'navy'\n":                                           `name: no pass or colourway names "Ochre"; write "ochre", or take this paint out`, //
		"[[paint]]\nname = 'teel'\nlooks = 'navy'\n":                                            `name: no pass or colourway names "teel"; write "teal", or take this paint out`,   // CSS has a teal
		moss + ochre + "[[paint]]\nname = 'moss'\nlooks = 'navy'\n":                             `name: "moss" is the name of the paint in line 2 already; write another name for one of them`,
	} {
		_, err := Read("nook.toml", []byte(paints+job))
		if got := problemText(err); got != says {
			t.Errorf("%s\n says %q, want %q", paints, got, says)
		}
	}
}

// problemText is what a single problem says, without file and line.
func problemText(err error) string {
	if err == nil {
		return ""
	}
	_, text, _ := strings.Cut(err.Error(), ": ")
	return text
}

// TestNamedPaintsAreNoSlips: a paint that is named is right, however near another colour is.
func TestNamedPaintsAreNoSlips(t *testing.T) {
	job := "[[paint]]\nname = 'moss'\nlooks = 'navy'\n" + dabbed(`colours = ["moss", "mosss"]`, "fern")
	if _, err := Read("nook.toml", []byte(job)); err != nil {
		t.Error(err)
	}
}
