package template

import (
	"regexp"
	"strings"
	"testing"
)

// TestStartFile works out the file that a maker begins with, as it is and with each line that
// is commented out brought back.
func TestStartFile(t *testing.T) {
	text, err := StartFile("rectangle")
	if err != nil {
		t.Fatal(err)
	}
	works := func(name, text string) {
		t.Helper()
		job, err := ReadJob(name, []byte(text))
		if err != nil {
			t.Errorf("%v", err)
			return
		}
		plan, err := NewPlan(job)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			return
		}
		if n := len(plan.Items[0].Passes[0].Prints); n == 0 {
			t.Errorf("%s: no print", name)
		}
	}
	works("start.toml", text)
	commented := regexp.MustCompile(`(?m)^( *)# ([a-z-]+ = .*)$`)
	lines := commented.FindAllString(text, -1)
	if len(lines) == 0 {
		t.Fatal("no line is commented out")
	}
	for _, line := range lines {
		changed := strings.Replace(text, line, commented.ReplaceAllString(line, "$1$2"), 1)
		if strings.Contains(line, "lap =") {
			changed = regexp.MustCompile(`(?m)^  gap = .*\n`).ReplaceAllString(changed, "")
		}
		works(strings.TrimSpace(line), changed)
	}
	for i, line := range strings.Split(text, "\n") {
		if len(line) > 100 || strings.ContainsRune(line, '\t') {
			t.Errorf("line %d is long, or has a tab: %q", i+1, line)
		}
	}
}

func TestStartShapes(t *testing.T) {
	for _, shape := range StartShapes() {
		text, err := StartFile(shape)
		if err != nil {
			if !strings.Contains(err.Error(), "not yet built; write \"rectangle\"") {
				t.Errorf("%s: %v", shape, err)
			}
			continue
		}
		job, err := ReadJob("start.toml", []byte(text))
		if err != nil {
			t.Errorf("%v", err)
		} else if job.Items[0].Shape != shape {
			t.Errorf("the file for %q has a %q item", shape, job.Items[0].Shape)
		}
	}
	for word, want := range map[string]string{
		"rectangel": `"rectangel" is not known here; write "rectangle"`,
		"star":      `"star" is not known here; write "rectangle", "round", "outline", "drum" or "cone"`,
	} {
		if _, err := StartFile(word); err == nil || err.Error() != want {
			t.Errorf("%s: %v", word, err)
		}
	}
}
