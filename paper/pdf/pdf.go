package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"time"
	"unicode"
	"unicode/utf16"

	"github.com/go-pdf/fpdf"

	"underlay/geometry"
	"underlay/paper"
)

// maxSide is the longest side of a page, in PDF units, that common readers take (ISO 32000-1,
// Annex C).
const maxSide = 14400

// Write writes doc as a PDF file: pages of exactly the sizes given, drawn at true size, to
// be printed without scaling. The same document gives the same bytes. It fails where there is
// no page, where a page has no size, and where w does.
func Write(w io.Writer, doc Document) error {
	leaves := flattenParts(nil, doc.Parts, 0)
	if len(leaves) == 0 {
		return errors.New("nothing to print: no pages were asked for")
	}
	for i, s := range leaves {
		if !(s.page.Size.W > 0 && s.page.Size.H > 0) || math.IsInf(float64(s.page.Size.W+s.page.Size.H), 0) {
			return fmt.Errorf("page %d is %g x %g mm; a page needs a width and a height above 0",
				i+1, s.page.Size.W, s.page.Size.H)
		}
	}
	known, looks := formsOf(leaves)
	contents, used := packContents(leaves, known)
	base, err := skeleton(doc, leaves, used)
	if err != nil {
		return fmt.Errorf("writing the PDF: %w", err)
	}
	all, err := assemble(base, doc.Attachments, leaves, contents, looks)
	if err != nil {
		return fmt.Errorf("writing the PDF: %w", err)
	}
	return all.write(w)
}

// leaf is a page with what the list of contents says of it.
type leaf struct {
	page     paper.Page
	contents []entry
}

// entry is a line in the list of contents.
type entry struct {
	name  string
	level int
}

// unit returns the page's user unit: how many 1/72 inch one unit of its coordinates is, the
// least whole number that keeps its sides within the readers' limit (ISO 32000-1, Table 30).
func (s leaf) unit() int {
	side := float64(max(s.page.Size.W, s.page.Size.H)) * pointsPerMM
	return max(1, int(math.Ceil(side/maxSide-1e-9)))
}

// scale returns how many of the page's units a millimetre takes.
func (s leaf) scale() float64 { return pointsPerMM / float64(s.unit()) }

// size returns the page's size in its own units, to the hundredth that fpdf writes.
func (s leaf) size() fpdf.SizeType {
	side := func(l geometry.Length) float64 {
		return math.Round(float64(l)*pointsPerMM/float64(s.unit())*100) / 100
	}
	return fpdf.SizeType{Wd: side(s.page.Size.W), Ht: side(s.page.Size.H)}
}

// flattenParts adds the pages of parts and of their children to leaves, each part's entry in
// the contents with the first of its pages. A part without pages is left out.
func flattenParts(leaves []leaf, parts []paper.Part, level int) []leaf {
	for _, p := range parts {
		first := len(leaves)
		for _, page := range p.Pages {
			views := make([]paper.View, len(page.Views))
			for i, v := range page.Views {
				views[i] = v.Picked()
			}
			page.Views = views
			leaves = append(leaves, leaf{page: page})
		}
		leaves = flattenParts(leaves, p.Children, level+1)
		if first < len(leaves) {
			s := &leaves[first]
			s.contents = append([]entry{{p.Name, level}}, s.contents...)
		}
	}
	return leaves
}

// producer is what a file says it was made by.
const producer = "underlay"

// skeleton returns a PDF made with fpdf: pages of the right sizes with nothing on them yet,
// the list of contents, and the faces, cut down to the letters used. (The last page has all
// those letters on it: that is how fpdf gets to know them.)
func skeleton(doc Document, leaves []leaf, used lettersUsed) ([]byte, error) {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", OrientationStr: "P", Size: leaves[0].size()})
	pdf.SetMargins(0, 0, 0)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetCatalogSort(true)
	pdf.SetCompression(false) // see assemble
	pdf.SetTitle(textString(doc.Title), false)
	pdf.SetProducer(producer, false)
	pdf.SetCreator(producer, false)
	date := doc.Date.UTC()
	if doc.Date.IsZero() {
		date = time.Unix(0, 0).UTC() // blanked in the end
	}
	pdf.SetCreationDate(date)
	pdf.SetModificationDate(date)
	last := leaves[len(leaves)-1].size().Ht
	for _, s := range leaves {
		pdf.AddPageFormat("P", s.size())
		for _, e := range s.contents {
			// fpdf measures the place of every entry from the top of the last page; -1 means
			// something else to it.
			y := last - s.size().Ht
			if y == -1 {
				y -= 0.001
			}
			// No font is set yet: with one set, fpdf would encode the name again.
			pdf.Bookmark(textString(e.name), e.level, y)
		}
	}
	for _, bold := range []bool{false, true} {
		if text := used.of(bold).String(); text != "" {
			// fpdf writes into the bytes it is given.
			pdf.AddUTF8FontFromBytes(fontName(bold), "", bytes.Clone(paper.Typeface(bold)))
			pdf.SetFont(fontName(bold), "", 1)
			pdf.Text(0, 0, text)
		}
	}
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		return nil, err
	}
	if doc.Date.IsZero() {
		blankDates(out.Bytes())
	}
	return out.Bytes(), nil
}

// fontName is what a page's content calls a face.
func fontName(bold bool) string {
	if bold {
		return "bold"
	}
	return "regular"
}

// textString returns s as a PDF text string (ISO 32000-1, 7.9.2.2): as it is where it is all
// ASCII, else in UTF-16, big end first, with a byte order mark.
func textString(s string) string {
	ascii := true
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		ascii = ascii && r < unicode.MaxASCII
		return r
	}, s)
	if ascii {
		return s
	}
	out := []byte{0xFE, 0xFF}
	for _, u := range utf16.Encode([]rune(s)) {
		out = append(out, byte(u>>8), byte(u))
	}
	return string(out)
}

// blankDates writes spaces over the dates, which fpdf puts after everything a user can name.
func blankDates(file []byte) {
	for _, key := range []string{"/CreationDate (", "/ModDate ("} {
		at := bytes.LastIndex(file, []byte(key))
		for i := at; i >= 0 && i < len(file) && file[i] != '\n'; i++ {
			file[i] = ' '
		}
	}
}
