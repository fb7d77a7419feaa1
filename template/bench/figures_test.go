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

// fromCrease is where a tape line lies from the crease beside it.
var fromCrease = regexp.MustCompile(`^[0-9.]+ mm (left|right|farther|nearer)$`)

// TestNoFalseExactness: how large the cloth is, what stays plain, and how far the tape is
// from the crease, is told in millimetres as a
// ruler shows them, to the half (common practice, no published source).
func TestNoFalseExactness(t *testing.T) {
	seen := 0
	for _, example := range []string{"lampshades", "crooked-cover", "shade-by-tape", "book-bag", "bench-runner"} {
		p := workedOut(t, sample.Example(t, example))
		for _, ip := range p.Items {
			for _, sheet := range Sheets(p, ip) {
				for _, l := range labels(sheet.Pages) {
					if !strings.Contains(l, " pieces of ") && !strings.Contains(l, " piece of ") && !strings.Contains(l, "plain ") && !fromCrease.MatchString(l) {
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
	if seen < 25 {
		t.Errorf("only %d lines tell the size or the border", seen)
	}
}

// TestDetailsSetClose: details that would spill a little on another page are set closer, and keep to
// one behind the card.
func TestDetailsSetClose(t *testing.T) {
	for _, example := range []string{"book-bag", "crooked-cover", "pennant", "runner-with-fringe"} {
		p := workedOut(t, sample.Example(t, example))
		if n := len(Sheets(p, p.Items[0])[0].Pages); n != 2 {
			t.Errorf("%s: the bench sheet takes %d pages, not 2", example, n)
		}
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
