package bench

import (
	"fmt"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/readback"
	"underlay/template/internal/sample"
	"underlay/template/job"
	"underlay/template/plan"
)

// TestBenchSheetsReadBack: each face has a card with the tape lines to half a millimetre in figures
// 5 mm high; nothing on a bench sheet stands on anything else, or where no printer reaches.
func TestBenchSheetsReadBack(t *testing.T) {
	jobs := sample.Examples(t)
	for name, j := range sample.Hard(t) {
		jobs[name] = j
	}
	for name, j := range jobs {
		p := workedOut(t, j)
		for _, ip := range p.Items {
			sheets := Sheets(p, ip)
			for i, face := range ip.Faces() {
				read := readback.Drawn(t, sheets[i].Pages)
				for k, page := range read {
					at := fmt.Sprintf("%s, %s, page %d", name, face.Label(), k+1)
					readback.CheckMargin(t, at, page, j.Paper.Margin)
					readback.CheckTexts(t, at, page)
				}
				checkCard(t, j, face, read[0])
			}
		}
	}
}

// checkCard looks for the figures of the tape lines, of three passes at the most.
func checkCard(t *testing.T, j *job.Job, face plan.FacePlan, card *readback.Page) {
	t.Helper()
	tapes := 0
	for _, pass := range face.Passes {
		if pass.Tape == nil || tapes == 3 {
			continue
		}
		tapes++
		for _, l := range pass.Tape.Lines(face.Item.Area) {
			if want := j.Units.Ruled(l.At); !readsAt(card, want, 5) {
				t.Errorf("%s: no tape figure %q 5 mm high", face.Label(), want)
			}
		}
	}
}

// readsAt tells whether a page has a text whose ink is so high, less what the figures of the face
// fall short of its capitals.
func readsAt(page *readback.Page, text string, height geometry.Length) bool {
	for _, w := range page.Texts() {
		if w.Text == text && w.Box.H() > 0.93*height {
			return true
		}
	}
	return false
}

// TestTickBoxes counts the boxes of a card: one a piece, up to what the page takes; of more, each
// stands for several, as it says.
func TestTickBoxes(t *testing.T) {
	for _, pieces := range []int{1, 2, 6, 24, 95, 1000, 999_999} {
		p := planOf(t, fmt.Sprintf("[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'floor cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\nquantity = %d\n"+
			"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n", pieces))
		boxes, each := 0, 1
		for _, v := range Sheets(p, p.Items[0])[0].Pages[0].Views {
			for _, s := range v.Drawing.Strokes {
				if s.Role.Kind == "box" {
					boxes++
				}
			}
			for _, l := range v.Drawing.Labels {
				fmt.Sscanf(l.Text, "Tick every %d pieces", &each)
			}
		}
		if boxes != (pieces+each-1)/each || boxes < min(pieces, 10) {
			t.Errorf("%d pieces: %d boxes, each for %d", pieces, boxes, each)
		}
	}
}

// TestOrderPictureNumbers: on the card every number is 2.5 mm high, stands in the middle of its own
// print, and none on another; of few prints none is left out.
func TestOrderPictureNumbers(t *testing.T) {
	for _, c := range []struct {
		size string
		all  bool
	}{{"50 x 50 cm", true}, {"35 x 120 cm", true}, {"3 x 2.6 m", false}} {
		p := planOf(t, "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'floor cushion'\nsize = '"+c.size+"'\nborder = '25 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n")
		prints := p.Items[0].Passes[0].Prints
		seen := map[int]bool{}
		for _, v := range Sheets(p, p.Items[0])[0].Pages[0].Views {
			var boxes []geometry.Rect
			at := map[int]geometry.Point{}
			for _, s := range v.Drawing.Strokes {
				if s.Role.Kind == "print" {
					at[s.Role.Number] = s.Place.At
				}
			}
			for _, l := range v.Drawing.Labels {
				if l.Role.Kind != "number" {
					continue
				}
				if l.Height < 2.5 || l.Text != fmt.Sprint(l.Role.Number) || l.At.Distance(at[l.Role.Number]) > 1e-9 {
					t.Errorf("%s: number %q, %v high, at %v, print %d at %v", c.size, l.Text, l.Height, l.At, l.Role.Number, at[l.Role.Number])
				}
				for _, b := range boxes {
					if b.Overlaps(l.Extent()) {
						t.Errorf("%s: number %q on another", c.size, l.Text)
					}
				}
				boxes = append(boxes, l.Extent())
				seen[l.Role.Number] = true
			}
		}
		if !seen[1] || !seen[len(prints)] || c.all && len(seen) != len(prints) {
			t.Errorf("%s: %d of %d numbers", c.size, len(seen), len(prints))
		}
	}
}
