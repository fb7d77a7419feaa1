package template

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// The floor is what no program that prints through fpdf can do without: handing it the same
// pages, paths and texts, from a list made beforehand. The list is read back from a finished
// PDF, so that it is the same to the last clipped line.

// call is one call of fpdf.
type call struct {
	do   byte // 'm', 'l', 'c', 'h', 'S', 'f', 'w', 'd', 'G', 'g', 'T', 'q', 'Q'
	at   [6]float64
	dash []float64
	text string
	bold bool
}

// floorPage is a page's size, in points, and the calls that fill it.
type floorPage struct {
	size  fpdf.SizeType
	calls []call
}

// readCalls makes the list from a PDF as WritePDF writes it.
func readCalls(tb testing.TB, pdf []byte) []floorPage {
	tb.Helper()
	var pages []floorPage
	rest, forms := pdf, readForms(tb, pdf)
	box := func(b []byte) fpdf.SizeType {
		sides := bytes.Fields(b[:bytes.IndexByte(b, ']')])
		return fpdf.SizeType{Wd: figure(tb, sides[0]), Ht: figure(tb, sides[1])}
	}
	const key = "/MediaBox [0 0 "
	_, all, _ := bytes.Cut(pdf, []byte("<</Type /Pages"))
	_, all, _ = bytes.Cut(all, []byte(key))
	for {
		_, after, found := bytes.Cut(rest, []byte("<</Type /Page\n"))
		if !found {
			break
		}
		head, stream, _ := bytes.Cut(after, []byte("stream\n"))
		p := floorPage{size: box(all)}
		if _, own, found := bytes.Cut(head, []byte(key)); found {
			p.size = box(own)
		}
		p.read(tb, unpacked(tb, stream), forms, 0, 0)
		pages = append(pages, p)
		rest = stream
	}
	return pages
}

// unpacked returns what a stream holds.
func unpacked(tb testing.TB, stream []byte) []byte {
	tb.Helper()
	z, err := zlib.NewReader(bytes.NewReader(stream))
	if err != nil {
		tb.Fatal(err)
	}
	content, err := io.ReadAll(z)
	if err != nil {
		tb.Fatal(err)
	}
	return content
}

// readForms returns the contents of the forms that pages call, by their names.
func readForms(tb testing.TB, pdf []byte) map[string][]byte {
	tb.Helper()
	forms := map[string][]byte{}
	for _, m := range regexp.MustCompile(`/(x[0-9]+) ([0-9]+) 0 R`).FindAllSubmatch(pdf, -1) {
		if forms[string(m[1])] != nil {
			continue
		}
		_, object, found := bytes.Cut(pdf, []byte("\n"+string(m[2])+" 0 obj"))
		_, stream, begun := bytes.Cut(object, []byte("stream\n"))
		if !found || !begun {
			tb.Fatalf("there is no form %s", m[1])
		}
		forms[string(m[1])] = unpacked(tb, stream)
	}
	return forms
}

func figure(tb testing.TB, b []byte) float64 {
	x, err := strconv.ParseFloat(string(b), 64)
	if err != nil {
		tb.Fatal(err)
	}
	return x
}

// read takes a page's content apart, moved to the right and up. What a form draws counts as if it
// were drawn there: fpdf has none.
func (p *floorPage) read(tb testing.TB, content []byte, forms map[string][]byte, right, up float64) {
	var numbers, dash []float64
	var place [6]float64
	var font, text string
	bold := map[string]bool{}
	called := false // a form, within q and Q
	for len(content) > 0 {
		switch c := content[0]; {
		case c == ' ' || c == '\n' || c == '[':
			content = content[1:]
			continue
		case c == ']':
			dash, numbers, content = numbers, nil, content[1:]
			continue
		case c == '(':
			text, content = literal(content[1:])
			continue
		}
		n := bytes.IndexAny(content, " \n[](")
		if n < 0 {
			n = len(content)
		}
		word := string(content[:n])
		content = content[n:]
		if x, err := strconv.ParseFloat(word, 64); err == nil {
			numbers = append(numbers, x)
			continue
		}
		c := call{do: word[0]}
		for i, x := range numbers[:min(len(numbers), len(c.at))] {
			c.at[i] = x
		}
		numbers = numbers[:0]
		down := func(i int) { c.at[i-1], c.at[i] = c.at[i-1]+right, p.size.Ht-c.at[i]-up }
		if form, ok := strings.CutPrefix(word, "cm/"); ok {
			p.read(tb, forms[form], forms, c.at[4], c.at[5])
			called = true
			continue
		}
		switch word {
		case "m", "l":
			down(1)
		case "c":
			down(1)
			down(3)
			down(5)
		case "re": // followed by W n
			c.do = 'q'
			c.at[1] = p.size.Ht - c.at[1] - c.at[3]
		case "cm":
			place = c.at
			continue
		case "d":
			c.dash = dash
		case "Tj":
			c = call{do: 'T', at: [6]float64{place[4], p.size.Ht - place[5], place[0]}, text: text, bold: font == boldFont(bold)}
		case "Q":
			if called {
				called = false
				continue
			}
			if len(p.calls) > 0 && p.calls[len(p.calls)-1].do == 'T' && place != [6]float64{} {
				place = [6]float64{} // the label's own
				continue
			}
		case "g", "G", "rg", "RG":
			if word[0] == 'r' || word[0] == 'R' {
				c.do = map[byte]byte{'r': 'g', 'R': 'G'}[word[0]]
			} else {
				c.at[1], c.at[2] = c.at[0], c.at[0]
			}
			for i := range 3 {
				c.at[i] = math.Round(c.at[i] * 255)
			}
		case "h", "S", "f", "w":
		default:
			if word[0] == '/' {
				font = word
				bold[word] = true
			}
			continue
		}
		p.calls = append(p.calls, c)
	}
}

// boldFont tells which of the fonts met so far is taken for the bold one; which does not
// matter to what it costs.
func boldFont(met map[string]bool) string {
	name := ""
	for f := range met {
		name = max(name, f)
	}
	return name
}

// literal reads a string in parentheses, in UTF-16, and returns what follows it.
func literal(b []byte) (string, []byte) {
	var raw []byte
	i := 0
	for ; b[i] != ')'; i++ {
		if b[i] == '\\' {
			i++
			if b[i] == 'r' {
				raw = append(raw, '\r')
				continue
			}
		}
		raw = append(raw, b[i])
	}
	var units []uint16
	for k := 0; k+1 < len(raw); k += 2 {
		units = append(units, uint16(raw[k])<<8|uint16(raw[k+1]))
	}
	return string(utf16.Decode(units)), b[i+1:]
}

// writeFloor writes the pages with fpdf's own calls.
func writeFloor(tb testing.TB, w io.Writer, pages []floorPage) {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", OrientationStr: "P", Size: pages[0].size})
	pdf.SetMargins(0, 0, 0)
	pdf.SetAutoPageBreak(false, 0)
	pdf.AddUTF8FontFromBytes("go", "", bytes.Clone(goregular.TTF))
	pdf.AddUTF8FontFromBytes("go", "B", bytes.Clone(gobold.TTF))
	for _, p := range pages {
		pdf.AddPageFormat("P", p.size)
		// Places are from the top of the page; fpdf measures from that of the one added last.
		_, top := pdf.GetPageSize()
		shift := top - p.size.Ht
		style, size := "none", 0.0
		for _, c := range p.calls {
			a := c.at
			switch c.do {
			case 'm':
				pdf.MoveTo(a[0], a[1]+shift)
			case 'l':
				pdf.LineTo(a[0], a[1]+shift)
			case 'c':
				pdf.CurveBezierCubicTo(a[0], a[1]+shift, a[2], a[3]+shift, a[4], a[5]+shift)
			case 'h':
				pdf.ClosePath()
			case 'S':
				pdf.DrawPath("D")
			case 'f':
				pdf.DrawPath("F")
			case 'w':
				pdf.SetLineWidth(a[0])
			case 'd':
				pdf.SetDashPattern(c.dash, a[0])
			case 'G':
				pdf.SetDrawColor(int(a[0]), int(a[1]), int(a[2]))
			case 'g':
				pdf.SetFillColor(int(a[0]), int(a[1]), int(a[2]))
				pdf.SetTextColor(int(a[0]), int(a[1]), int(a[2]))
			case 'q':
				pdf.ClipRect(a[0], a[1]+shift, a[2], a[3], false)
			case 'Q':
				pdf.ClipEnd()
			case 'T':
				s := ""
				if c.bold {
					s = "B"
				}
				if s != style || a[2] != size {
					pdf.SetFont("go", s, a[2])
					style, size = s, a[2]
				}
				pdf.Text(a[0], a[1]+shift, c.text)
			}
		}
	}
	if err := pdf.Output(w); err != nil {
		tb.Fatal(err)
	}
}
