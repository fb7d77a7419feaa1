package template

import (
	"bufio"
	"bytes"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"underlay/template/internal/repo"
)

// rooms says which of this module's packages each may import, tests aside. A package that is not
// in it, or an arrow that points up or sideways, fails TestArrowsPointDown.
var rooms = map[string]string{
	"geometry":               "",
	"paper/internal/cores":   "",
	"paper":                  "geometry paper/internal/cores",
	"paper/pdf":              "geometry paper paper/internal/cores",
	"paper/svg":              "geometry paper",
	"template/words":         "",
	"template/job":           "geometry paper template/words",
	"template/jobfile":       "geometry paper template/words template/job",
	"template/plan":          "geometry template/words template/job",
	"template/guide":         "geometry paper template/words template/job template/plan",
	"template/say":           "geometry paper template/words template/job template/plan template/guide",
	"template/bench":         "geometry paper template/words template/job template/plan template/guide template/say",
	"template":               "geometry paper paper/pdf template/words template/job template/plan template/guide template/say template/bench",
	"cmd/underlay":           "geometry paper paper/pdf paper/svg template template/words template/job template/jobfile template/plan template/guide template/say template/bench",
	"template/internal/repo": "",
	// What only tests use.
	"template/internal/messages": "template/job template/internal/repo",
	"template/internal/oracle":   "geometry template/job",
	"template/internal/readback": "geometry paper paper/pdf testdata/pdfread",
	"template/internal/sample":   "geometry template/words template/job template/jobfile template/internal/repo",
}

// TestArrowsPointDown holds every import within the module against the table.
func TestArrowsPointDown(t *testing.T) {
	cmd := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, "./...")
	cmd.Dir = repo.Path(t)
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(bytes.NewReader(out))
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		fields := strings.Fields(strings.ReplaceAll(lines.Text(), "underlay/", ""))
		allowed, known := rooms[fields[0]]
		if !known {
			t.Errorf("%s is in no floor's table", fields[0])
		}
		for i, name := range strings.Fields(lines.Text())[1:] {
			if strings.HasPrefix(name, "underlay/") && !slices.Contains(strings.Fields(allowed), fields[i+1]) {
				t.Errorf("%s may not import %s", fields[0], fields[i+1])
			}
		}
	}
}
