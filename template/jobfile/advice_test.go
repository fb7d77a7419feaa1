package jobfile

import (
	"regexp"
	"testing"
)

// TestAdviceKeepsWhatIsWritten writes values of a wrong kind, and then what is said to write
// instead, which holds what was written where that can be.
func TestAdviceKeepsWhatIsWritten(t *testing.T) {
	advice := regexp.MustCompile(`; write (?:straight ones: )?([a-z-]+ = .*)$`)
	for _, c := range []struct{ heading, line, want string }{
		{"[[item.pass]]", `turns = 90`, `turns = ["90"]`},
		{"[[item.pass]]", `turns = -90`, `turns = ["270"]`},
		{"[[item.pass]]", `turns = 540.0`, `turns = ["180"]`},
		{"[[item.pass]]", `turns = 45`, `turns = ["0"]`},
		{"[[item.pass]]", `turns = inf`, `turns = ["0"]`},
		{"[[item.pass]]", `turns = "0 90"`, `turns = ["0 90"]`},
		{"[[item.pass]]", `colours = "moss"`, `colours = ["moss"]`},
		{"[[item.pass]]", `colours = 'the "new" moss'`, `colours = ['the "new" moss']`},
		{"[[item.pass]]", `colours = 'o\er'`, `colours = ['o\er']`},
		{"[[item]]", `faces = "front"`, `faces = ["front"]`},
		{"[[item]]", `hem = 12`, `hem = "12 mm"`},
		{"[[item]]", `hem = inf`, `hem = "12 mm"`},
		{"[[item]]", `hem = 1e1`, `hem = "12 mm"`},
		{"[[item]]", `hem = +1_2`, `hem = "12 mm"`},
		{"[[item]]", `hem = 12 mm`, `hem = "12 mm"`},
		{"[[item]]", `hem = 1/4"`, `hem = "1/4 in"`},
		{"[[item]]", `hem = “12 mm”`, `hem = "12 mm"`},
		{"[[item]]", `quantity = 06`, `quantity = 6`},
		{"", `title = 7`, `title = "7"`},
	} {
		job := goodLines()
		job.put(c.heading, c.line)
		_, err := Read("nook.toml", []byte(job.String()))
		if err == nil {
			t.Errorf("%s is taken", c.line)
			continue
		}
		found := advice.FindStringSubmatch(err.Error())
		if found == nil || found[1] != c.want {
			t.Errorf("%s: %v\nwant: write %s", c.line, err, c.want)
			continue
		}
		job.put(c.heading, found[1])
		if _, err := Read("nook.toml", []byte(job.String())); err != nil {
			t.Errorf("%s: and with %s: %v", c.line, found[1], err)
		}
	}
}
