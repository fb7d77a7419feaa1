package template

import (
	"regexp"
	"strings"
	"testing"

	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
	"underlay/template/words"
)

// TestStartFile works out and draws the file that a maker begins with, of every shape, as it is
// and with each line that is commented out brought back.
func TestStartFile(t *testing.T) {
	commented := regexp.MustCompile(`(?m)^( *)# ([a-z-]+)( = .*)$`)
	// Keys that stand in for another.
	inPlaceOf := map[string]string{"lap": "  gap", "around": "diameter"}
	for _, shape := range words.Texts(job.Shapes()) {
		t.Run(shape, func(t *testing.T) {
			text, err := jobfile.StartFile(shape)
			if err != nil {
				t.Fatal(err)
			}
			works := func(name, text string) {
				t.Helper()
				job, err := jobfile.Read(name, []byte(text))
				if err != nil {
					t.Errorf("%v", err)
					return
				}
				if string(job.Items[0].Shape) != shape {
					t.Errorf("the item is %q", job.Items[0].Shape)
				}
				plan, err := plan.New(job)
				if err != nil {
					t.Errorf("%s: %v", name, err)
					return
				}
				if n := len(plan.Items[0].Passes[0].Prints); n == 0 {
					t.Errorf("%s: no print", name)
				}
				if _, sheets, err := Document(plan, Parts()); err != nil || len(sheets) == 0 {
					t.Errorf("%s: %d sheets, %v", name, len(sheets), err)
				}
			}
			works("start.toml", text)
			lines := commented.FindAllStringSubmatch(text, -1)
			if len(lines) == 0 {
				t.Fatal("no line is commented out")
			}
			for _, m := range lines {
				changed := strings.Replace(text, m[0], m[1]+m[2]+m[3], 1)
				if other, ok := inPlaceOf[m[2]]; ok {
					changed = regexp.MustCompile(`(?m)^`+other+` = .*\n`).ReplaceAllString(changed, "")
				}
				works(m[2], changed)
			}
			for i, line := range strings.Split(text, "\n") {
				if len(line) > 100 || strings.ContainsRune(line, '\t') {
					t.Errorf("line %d is long, or has a tab: %q", i+1, line)
				}
			}
			shade := shape == "drum" || shape == "cone"
			if careful := strings.Contains(text, "printing does not make a shade safe"); careful != shade {
				t.Errorf("it says to take care: %v", careful)
			}
		})
	}
}

func TestStartShapes(t *testing.T) {
	for word, want := range map[string]string{
		"rectangel": `"rectangel" is not known here; write "rectangle"`,
		"star":      `"star" is not known here; write "rectangle", "round", "outline", "drum" or "cone"`,
	} {
		if _, err := jobfile.StartFile(word); err == nil || err.Error() != want {
			t.Errorf("%s: %v", word, err)
		}
	}
}
