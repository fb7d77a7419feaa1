package template

import (
	"fmt"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/bench"
	"underlay/testdata/pdfread"
)

// checkFeet: every page but the sheets at true size says at its foot, last of all, which page it is
// of how many.
func checkFeet(t *testing.T, p *papers) {
	atSize := map[int]bool{}
	for _, s := range p.places {
		atSize[s.Page] = true
	}
	for i, page := range p.pages {
		want := fmt.Sprintf("page %d of %d · mark ", i+1, len(p.pages))
		lowest := geometry.Length(0)
		var foot *pdfread.Text
		for k, w := range page.texts {
			if strings.HasPrefix(w.Text, want) {
				foot = &page.texts[k]
			} else {
				lowest = max(lowest, w.Box.Min.Y)
			}
		}
		switch {
		case atSize[i+1]:
			if foot != nil {
				t.Errorf("page %d is a sheet and has a foot line", i+1)
			}
		case foot == nil:
			t.Errorf("page %d has no foot line %q", i+1, want)
		case foot.Box.Max.Y < lowest:
			t.Errorf("page %d: text stands below the foot line", i+1)
		}
	}
}

// checkCards: each face has a card with a box for each piece, as many as go in, and with the tape
// lines to half a millimetre in figures 5 mm high.
func checkCards(t *testing.T, p *papers) {
	page := 0
	if len(p.plan.Items) > 1 {
		page = len(p.doc.Parts[0].Pages)
	}
	for _, ip := range p.plan.Items {
		for _, face := range ip.Faces() {
			for !strings.Contains(textOf(p.pages[page]), "As it will look") {
				if page++; page == len(p.pages) {
					t.Fatalf("%s has no card", face.Label())
				}
			}
			read := p.pages[page]
			page++
			tapes := 0
			for _, pass := range face.Passes {
				if pass.Tape == nil || tapes == 3 {
					continue
				}
				tapes++
				for _, l := range pass.Tape.Lines(ip.Area.Cloth) {
					want := p.job.Units.Ruled(l.At)
					if !readsAt(read, want, 5) {
						t.Errorf("%s: no tape figure %q 5 mm high", face.Label(), want)
					}
				}
			}
		}
	}
}

// readsAt tells whether a page has a text whose ink is so high, less what the figures of the face
// fall short of its capitals.
func readsAt(page pageRead, text string, height geometry.Length) bool {
	for _, w := range page.texts {
		if w.Text == text && w.Box.H() > 0.93*height {
			return true
		}
	}
	return false
}

func textOf(page pageRead) string {
	var all []string
	for _, w := range page.texts {
		all = append(all, w.Text)
	}
	return strings.Join(all, " ")
}

// TestContentsOfASet: a set's first page names for everything the page it is on; a job of one item
// has no such page.
func TestContentsOfASet(t *testing.T) {
	const blocks = "title = 'reading nook'\n[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n"
	const cushion = "[[item]]\nname = 'floor cushion'\nsize = '300 x 300 mm'\nborder = '25 mm'\nquantity = 3\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\ncolours = ['moss']\n"
	const bag = "[[item]]\nname = 'book bag'\nsize = '380 x 420 mm'\nborder = '30 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\ncolours = ['moss', 'ochre']\n"
	p := readPapers(t, readJob(t, blocks+cushion+bag))
	first := textOf(p.pages[0])
	for _, want := range []string{"Reading nook", "3 × floor cushion", "1 × book bag", "fern 90 × 90 mm", "moss for ", "ochre for "} {
		if !strings.Contains(first, want) {
			t.Errorf("the set's first page does not say %q: %s", want, first)
		}
	}
	at := 1
	var walk func(parts []paper.Part)
	walk = func(parts []paper.Part) {
		for _, part := range parts {
			if strings.HasPrefix(part.Name, "sheet ") {
				continue
			}
			n := len(flat([]paper.Part{part}))
			from := at
			if want := pageWords(from, from+n-1); part.Name != "the whole set" && !strings.Contains(first, want) {
				t.Errorf("%s is on %s: %s", part.Name, want, first)
			}
			walk(part.Children)
			at = from + n
		}
	}
	walk(p.doc.Parts)
	if one := readPapers(t, readJob(t, blocks+cushion)); !strings.Contains(textOf(one.pages[0]), "As it will look") {
		t.Error("a job of one item does not begin with its card")
	}
}

func pageWords(from, to int) string {
	if from == to {
		return fmt.Sprint(from)
	}
	return fmt.Sprintf("%d to %d", from, to)
}

// TestTickBoxes counts the boxes of a card: one a piece, up to what the page takes; of more, each
// stands for several, as it says.
func TestTickBoxes(t *testing.T) {
	for _, pieces := range []int{1, 2, 6, 24, 95, 1000, 999_999} {
		p := planOf(t, fmt.Sprintf("[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'floor cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\nquantity = %d\n"+
			"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n", pieces))
		boxes, each := 0, 1
		for _, v := range bench.Sheets(p, p.Items[0])[0].Pages[0].Views {
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
		for _, v := range bench.Sheets(p, p.Items[0])[0].Pages[0].Views {
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
