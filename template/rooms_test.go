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
	"paper/planner":          "geometry paper paper/internal/cores",
	"paper/sheets":           "geometry paper paper/internal/cores",
	"paper/pdf":              "geometry paper paper/internal/cores",
	"paper/svg":              "geometry paper",
	"paper/raster":           "geometry paper",
	"template/words":         "",
	"template/picture":       "geometry template/words",
	"template/trace":         "geometry template/words template/picture",
	"template/job":           "geometry paper template/words template/picture",
	"template/jobfile/toml":  "template/job template/words",
	"template/jobfile/keys":  "geometry paper template/words template/job",
	"template/jobfile/edit":  "template/words template/job template/jobfile/toml template/jobfile/keys",
	"template/jobfile":       "geometry paper template/words template/picture template/job template/jobfile/toml template/jobfile/keys template/jobfile/edit",
	"template/motif":         "geometry template/picture template/job",
	"template/plan":          "geometry template/words template/job template/motif",
	"template/look":          "geometry paper template/job template/motif template/plan",
	"template/guide":         "geometry paper paper/planner paper/sheets template/words template/trace template/job template/plan",
	"template/say":           "geometry paper template/words template/trace template/job template/plan template/guide",
	"template/bench":         "geometry paper paper/planner paper/sheets template/words template/job template/plan template/guide template/say template/look template/motif",
	"template":               "geometry paper paper/planner paper/sheets paper/pdf template/words template/picture template/job template/jobfile template/plan template/guide template/say template/bench",
	"cmd/underlay":           "template/trace template/jobfile/keys geometry paper paper/planner paper/sheets paper/pdf paper/svg template template/words template/picture template/job template/jobfile template/plan template/guide template/say template/bench",
	"cmd/page":               "cmd/page/notices",
	"cmd/page/notices":       "",
	"cmd/page/side":          "template/jobfile/keys template/jobfile/toml template/jobfile/edit geometry paper paper/pdf paper/svg paper/raster template template/picture template/look template/words template/job template/jobfile template/plan template/guide template/say template/bench template/trace",
	"template/internal/repo": "",
	// What only tests use.
	"template/internal/messages": "template/job template/internal/repo",
	"template/internal/oracle":   "geometry template/job",
	"template/internal/readback": "geometry paper paper/pdf testdata/pdfread",
	"template/internal/sample":   "geometry template/words template/job template/jobfile template/picture template/internal/repo",
}

// tested says which more the tests of each may import: helpers, and what makes what they test. Only
// those that read papers back start a PDF engine.
var tested = map[string]string{
	"paper":                 "paper/planner",
	"paper/sheets":          "paper/planner",
	"paper/pdf":             "paper/planner paper/sheets testdata/pdfread",
	"paper/svg":             "paper/planner paper/sheets paper/pdf testdata/pdfread",
	"paper/raster":          "paper/pdf testdata/pdfread",
	"template/jobfile":      "template/internal/messages template/internal/repo",
	"template/plan":         "template/jobfile template/picture template/internal/messages template/internal/oracle template/internal/repo template/internal/sample",
	"template/trace":        "geometry paper paper/pdf template/guide template/picture template/internal/readback template/internal/repo testdata/photograph",
	"template/guide":        "paper/pdf paper/svg template/jobfile template/picture template/internal/oracle template/internal/readback template/internal/sample testdata/pdfread",
	"template/look":         "paper/pdf paper/svg template/picture template/jobfile template/internal/readback template/internal/sample testdata/pdfread",
	"template/say":          "template/jobfile template/internal/sample",
	"template/bench":        "paper/raster template/jobfile template/picture template/internal/readback template/internal/sample testdata/pdfread",
	"template":              "template/internal/messages template/internal/readback template/internal/repo template/internal/sample testdata/pdfread testdata/motifs template/picture",
	"template/jobfile/edit": "template/internal/sample",
}

// TestArrowsPointDown holds every import within the module against the tables.
func TestArrowsPointDown(t *testing.T) {
	cmd := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}} tests {{join .TestImports " "}} {{join .XTestImports " "}}`, "./...")
	cmd.Dir = repo.Path(t)
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(bytes.NewReader(out))
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		fields := strings.Fields(lines.Text())
		room := strings.TrimPrefix(fields[0], "underlay/")
		known, found := rooms[room]
		if !found {
			t.Errorf("%s is in no floor's table", room)
		}
		allowed, who := strings.Fields(known), room
		for _, name := range fields[1:] {
			name, ours := strings.CutPrefix(name, "underlay/")
			switch {
			case name == "tests":
				// Tests of a package may stand beside it, and import it.
				allowed, who = append(append(allowed, room), strings.Fields(tested[room])...), "a test of "+room
			case ours && !slices.Contains(allowed, name):
				t.Errorf("%s may not import %s", who, name)
			}
		}
	}
	if err := lines.Err(); err != nil {
		t.Error(err)
	}
}
