package template

import (
	"strings"
	"testing"

	"underlay/template/internal/sample"
)

// TestPapersReadBack draws every example, and jobs harder than those, reads each PDF back with
// pdfium and holds it as a whole against what it must be. What stands on the papers of one kind
// is held against the plan where these are made.
func TestPapersReadBack(t *testing.T) {
	jobs := sample.Examples(t)
	for name, job := range sample.Hard(t) {
		jobs[name] = job
	}
	checks := map[string]func(*testing.T, *papers){
		"pages":    checkPages,
		"file":     checkFile,
		"contents": checkContents,
		"reading":  checkReading,
		"feet":     checkFeet,
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
