package bench

import (
	"regexp"
	"strings"
	"testing"

	"underlay/paper"
	"underlay/template/internal/sample"
)

// finer is a figure that no ruler shows: with more decimals than one, or another than a half.
var finer = regexp.MustCompile(`\d\.(\d\d|[1-46-9])`)

// TestNoFalseExactness: how large the cloth is, and what stays plain, is told in millimetres as a
// ruler shows them, to the half (common practice, no published source).
func TestNoFalseExactness(t *testing.T) {
	seen := 0
	for _, example := range []string{"lampshades", "crooked-cover", "shade-by-tape"} {
		p := workedOut(t, sample.Example(t, example))
		for _, ip := range p.Items {
			for _, sheet := range Sheets(p, ip) {
				for _, l := range labels(sheet.Pages) {
					if !strings.Contains(l, " pieces of ") && !strings.Contains(l, " piece of ") && !strings.Contains(l, "plain ") {
						continue
					}
					seen++
					if finer.MatchString(l) {
						t.Errorf("%s: %q is finer than a ruler", example, l)
					}
				}
			}
		}
	}
	if seen < 8 {
		t.Errorf("only %d lines tell the size or the border", seen)
	}
}

func labels(pages []paper.Page) []string {
	var all []string
	for _, p := range pages {
		for _, v := range p.Views {
			for _, l := range v.Drawing.Labels {
				all = append(all, l.Text)
			}
		}
	}
	return all
}
