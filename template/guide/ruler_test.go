package guide

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"underlay/geometry"
	"underlay/paper"
	"underlay/template/internal/readback"
	"underlay/template/jobfile"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// pageOfRuler draws the ruler page and reads it back.
func pageOfRuler(t *testing.T, stock paper.Stock) *readback.Page {
	t.Helper()
	pages, err := RulerPage(stock)
	if err != nil {
		t.Fatal(err)
	}
	read := readback.Drawn(t, pages)
	if len(read) != 1 {
		t.Fatalf("%d pages", len(read))
	}
	return read[0]
}

// bars returns the long lines of a page that end at a tick on both ends, as measured from
// the middle of one tick to the middle of the other: across and down.
func bars(p *readback.Page) (across, down []float64) {
	type tick struct{ middle, half geometry.Point }
	var ticks []tick
	var long []geometry.Piece
	for _, path := range p.Paths() {
		for _, piece := range path.Lines {
			if len(piece.Steps) != 1 || piece.Closed {
				continue
			}
			a, b := piece.Start, piece.Steps[0].To
			if a.Distance(b) < 5 {
				ticks = append(ticks, tick{a.Add(b).Mul(0.5), b.Sub(a).Mul(0.5)})
			} else if a.Distance(b) > 100 {
				long = append(long, piece)
			}
		}
	}
	for _, l := range long {
		a, b := l.Start, l.Steps[0].To
		upright := math.Abs(float64(a.X-b.X)) < 0.01
		var at []geometry.Point
		for _, t := range ticks {
			if crosses := math.Abs(float64(t.half.X)) > 0.5; crosses == upright && (t.middle.Distance(a) < 0.5 || t.middle.Distance(b) < 0.5) {
				at = append(at, t.middle)
			}
		}
		if len(at) != 2 {
			continue
		}
		if upright {
			down = append(down, math.Abs(float64(at[0].Y-at[1].Y)))
		} else {
			across = append(across, math.Abs(float64(at[0].X-at[1].X)))
		}
	}
	slices.Sort(across)
	slices.Sort(down)
	return across, down
}

// TestRulerPageMeasuresWhatItSays: pages as ISO 216 and ASME Y14.1 have them.
func TestRulerPageMeasuresWhatItSays(t *testing.T) {
	a4 := geometry.Size{W: 210, H: 297}
	for _, c := range []struct {
		paper string
		want  geometry.Size
	}{
		{"A4", a4},
		{"Letter", geometry.Size{W: 8.5 * 25.4, H: 11 * 25.4}},
		{"Legal", geometry.Size{W: 8.5 * 25.4, H: 14 * 25.4}},
		{"A3", geometry.Size{W: 297, H: 420}},
		{"A0", geometry.Size{W: 841, H: 1189}},
		{"197.4 x 267.4 mm", geometry.Size{W: 197.4, H: 267.4}},
		{"roll 610 mm", geometry.Size{W: 610, H: 297}},
		{"one sheet", a4},
	} {
		t.Run(c.paper, func(t *testing.T) {
			page := pageOfRuler(t, stock(t, c.paper))
			near := cmpopts.EquateApprox(0, 0.01)
			got := []float64{float64(page.Size.W), float64(page.Size.H)}
			if d := cmp.Diff([]float64{float64(c.want.W), float64(c.want.H)}, got, near); d != "" {
				t.Errorf("page: %s", d)
			}
			// The inch is 25.4 mm (international inch, 1959; NIST SP 811).
			across, down := bars(page)
			if d := cmp.Diff([]float64{7 * 25.4, 180}, across, near); d != "" {
				t.Errorf("across: %s", d)
			}
			if d := cmp.Diff([]float64{9 * 25.4, 250}, down, near); d != "" {
				t.Errorf("down: %s", d)
			}
			readback.CheckTexts(t, "ruler page", page)
			readback.CheckMargin(t, "ruler page", page, RulerMargin)
			readback.CheckLinesClearOfText(t, "ruler page", page)
			text := ""
			for _, w := range page.Texts() {
				text += w.Text + "\n"
			}
			for _, want := range []string{"[printer]", "across = \"", "180 mm\"", "down = \"", "250 mm\"", "actual size", "174.6 to 185.4", "242.5 to 257.5"} {
				if !strings.Contains(text, want) {
					t.Errorf("%q is not on the page:\n%s", want, text)
				}
			}
		})
	}
}

// The lines to copy are what the job file takes, and say that nothing is to be corrected.
func TestRulerPageLinesAreForTheJobFile(t *testing.T) {
	job := readJob(t, "[printer]\nacross = \"180 mm\"\ndown = \"250 mm\"\n"+fmt.Sprintf(fernOn, "50 x 50 cm"))
	if s := job.Printer.Scale(); s != (paper.Scale{Across: 1, Down: 1}) {
		t.Errorf("a true printer is corrected by %v", s)
	}
	// What the page calls more than 3 % off is what the job file refuses.
	for _, c := range []struct {
		across, down string
		good         bool
	}{
		{"174.6 mm", "250 mm", true}, {"185.4 mm", "257.5 mm", true}, {"7 1/16 in", "242.5 mm", true},
		{"174.5 mm", "250 mm", false}, {"180 mm", "257.6 mm", false},
	} {
		_, err := jobfile.Read("nook.toml", fmt.Appendf(nil, "[printer]\nacross = %q\ndown = %q\n"+fernOn, c.across, c.down, "50 x 50 cm"))
		if (err == nil) != c.good {
			t.Errorf("across %s, down %s: %v", c.across, c.down, err)
		}
	}
}

func TestRulerPageNeedsRoom(t *testing.T) {
	const small = `the paper %q is too small for the check bars, 180 mm across and 250 mm down, inside a margin of 7 mm; write a larger one, such as "A4" or "Letter"`
	// Beside the margins a bar keeps 1.7 mm from the edge of what is printed, for its end ticks.
	for name, good := range map[string]bool{
		"A5": false, "roll 150 mm": false, "197.3 x 400 mm": false, "200 x 267.3 mm": false, "197.4 x 267.4 mm": true,
	} {
		s := stock(t, name)
		_, err := RulerPage(s)
		if good != (err == nil) || !good && err.Error() != fmt.Sprintf(small, s.Name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
