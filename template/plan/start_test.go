package plan

import (
	"regexp"
	"strings"
	"testing"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/words"
)

// TestStartFileIsWorkedOut works out the file that a maker begins with, of every shape, as it is
// and with each line that is commented out brought back.
func TestStartFileIsWorkedOut(t *testing.T) {
	commented := regexp.MustCompile(`(?m)^( *)# ([a-z-]+)( = .*)$`)
	wholeTable := regexp.MustCompile(`(?m)^ *# \[\[.*\]\]\n(?: *# [a-z-]+ = .*\n)+`)
	colours := regexp.MustCompile(`(?m)^( *)# colours`)
	// Keys that stand in for others.
	inPlaceOf := map[string]string{"lap": "gap", "around": "diameter", "top-around": "top|bottom|height"}
	// Keys that go together, with the first of them.
	together := map[string]string{"top-around": "top-around|bottom-around|slope", "bottom-around": "", "slope": ""}
	for _, shape := range words.Texts(job.Shapes()) {
		t.Run(shape, func(t *testing.T) {
			text, err := jobfile.StartFile(shape)
			if err != nil {
				t.Fatal(err)
			}
			works := func(name, text string) {
				t.Helper()
				p, err := tryText(text)
				if err != nil {
					t.Errorf("%s: %v", name, err)
				} else if len(p.Items[0].Passes[0].Prints) == 0 {
					t.Errorf("%s: no print", name)
				}
			}
			works("as it is", text)
			// A table is put in whole; what it speaks of has to be there too.
			for _, m := range wholeTable.FindAllString(text, -1) {
				works(m, colours.ReplaceAllString(strings.Replace(text, m, strings.ReplaceAll(m, "# ", ""), 1), "${1}colours"))
				text = strings.Replace(text, m, "", 1)
			}
			lines := commented.FindAllStringSubmatch(text, -1)
			if len(lines) == 0 {
				t.Fatal("no line is commented out")
			}
			for _, m := range lines {
				key := m[2]
				changed := strings.Replace(text, m[0], m[1]+key+m[3], 1)
				if with, several := together[key]; with != "" {
					changed = regexp.MustCompile(`(?m)^# (`+with+`) = `).ReplaceAllString(text, "$1 = ")
				} else if several {
					continue
				}
				if others := inPlaceOf[key]; others != "" {
					changed = regexp.MustCompile(`(?m)^ *(`+others+`) = .*\n`).ReplaceAllString(changed, "")
				}
				works(key, changed)
			}
		})
	}
}
