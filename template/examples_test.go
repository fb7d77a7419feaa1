package template

import (
	"strings"
	"testing"

	"underlay/template/internal/sample"
)

// TestPapersReadBack draws every example, and jobs harder than those, reads each PDF back with
// pdfium and holds it against the plan and against what any paper must be.
func TestPapersReadBack(t *testing.T) {
	jobs := sample.Examples(t)
	for name, job := range sample.Hard(t) {
		jobs[name] = job
	}
	checks := map[string]func(*testing.T, *papers){
		"pages":      checkPages,
		"margins":    checkMargins,
		"file":       checkFile,
		"contents":   checkContents,
		"crosses":    checkCrosses,
		"texts":      checkTexts,
		"footprints": checkFootprints,
		"cloth":      checkCloth,
		"ticks":      checkTicks,
		"numbers":    checkNumbers,
		"numbered":   checkNumbersRunOn,
		"feet":       checkFeet,
	}
	for name, job := range jobs {
		t.Run(strings.ReplaceAll(name, " ", "-"), func(t *testing.T) {
			p := readPapers(t, job)
			for name, check := range checks {
				t.Run(name, func(t *testing.T) { check(t, p) })
			}
		})
	}
}
