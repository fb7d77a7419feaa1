package jobfile

import (
	"strings"
	"testing"

	"underlay/template/job"
	"underlay/template/words"
)

// TestStartFile reads the file that a maker begins with, of every shape.
func TestStartFile(t *testing.T) {
	for _, shape := range words.Texts(job.Shapes()) {
		text, err := StartFile(shape)
		if err != nil {
			t.Fatal(err)
		}
		j, err := Read("start.toml", []byte(text))
		if err != nil {
			t.Errorf("%v", err)
		} else if string(j.Items[0].Shape) != shape {
			t.Errorf("%s: the item is %q", shape, j.Items[0].Shape)
		}
		for i, line := range strings.Split(text, "\n") {
			if len(line) > 100 || strings.ContainsRune(line, '\t') {
				t.Errorf("%s: line %d is long, or has a tab: %q", shape, i+1, line)
			}
		}
		shade := shape == "drum" || shape == "cone"
		if careful := strings.Contains(text, "printing does not make a shade safe"); careful != shade {
			t.Errorf("%s: it says to take care: %v", shape, careful)
		}
	}
}

func TestStartShapes(t *testing.T) {
	for word, want := range map[string]string{
		"rectangel": `"rectangel" is not known here; write "rectangle"`,
		"star":      `"star" is not known here; write "rectangle", "round", "outline", "four-sided", "drum" or "cone"`,
	} {
		if _, err := StartFile(word); err == nil || err.Error() != want {
			t.Errorf("%s: %v", word, err)
		}
	}
}
