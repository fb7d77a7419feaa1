package svg

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"underlay/geometry"
	"underlay/paper"
)

// svgFile is an SVG file as an XML reader sees it.
type svgFile struct {
	XMLName xml.Name   `xml:"http://www.w3.org/2000/svg svg"`
	Version string     `xml:"version,attr"`
	Width   string     `xml:"width,attr"`
	Height  string     `xml:"height,attr"`
	ViewBox string     `xml:"viewBox,attr"`
	Title   string     `xml:"title"`
	Styles  []string   `xml:"style"`
	Groups  []svgGroup `xml:"g"`
}

type svgGroup struct {
	Fill     string    `xml:"fill,attr"`
	Stroke   string    `xml:"stroke,attr"`
	Width    string    `xml:"stroke-width,attr"`
	Mitre    string    `xml:"stroke-miterlimit,attr"`
	Dashes   string    `xml:"stroke-dasharray,attr"`
	Family   string    `xml:"font-family,attr"`
	FontSize string    `xml:"font-size,attr"`
	Weight   string    `xml:"font-weight,attr"`
	Paths    []svgPath `xml:"path"`
	Texts    []svgText `xml:"text"`
}

type svgPath struct {
	D      string `xml:"d,attr"`
	Offset string `xml:"stroke-dashoffset,attr"`
}

type svgText struct {
	X    string `xml:"x,attr"`
	Y    string `xml:"y,attr"`
	Text string `xml:",chardata"`
}

// readSVG writes d as an SVG file and reads it back.
func readSVG(t *testing.T, title string, d *paper.Drawing) svgFile {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, title, d, Options{Face: true}); err != nil {
		t.Fatal(err)
	}
	var f svgFile
	if err := xml.Unmarshal(out.Bytes(), &f); err != nil {
		t.Fatal(err)
	}
	return f
}

func lengths(t *testing.T, s string) []geometry.Length {
	t.Helper()
	var all []geometry.Length
	for _, n := range strings.Fields(s) {
		v, err := strconv.ParseFloat(n, 64)
		if err != nil {
			t.Fatal(err)
		}
		if _, decimals, _ := strings.Cut(n, "."); len(decimals) > 4 || n == "-0" {
			t.Errorf("a number is written %s", n)
		}
		all = append(all, geometry.Length(v))
	}
	return all
}

func length(t *testing.T, s string) geometry.Length {
	t.Helper()
	all := lengths(t, s)
	if len(all) != 1 {
		t.Fatalf("%q is not one number", s)
	}
	return all[0]
}

var command = regexp.MustCompile(`([MLCZ])([^MLCZ]*)`)

// pathData reads path data (SVG 1.1, 8.3).
func pathData(t *testing.T, d string) geometry.Path {
	t.Helper()
	if command.ReplaceAllString(d, "") != "" {
		t.Fatalf("path data %q", d)
	}
	var path geometry.Path
	for _, c := range command.FindAllStringSubmatch(d, -1) {
		n := lengths(t, c[2])
		at := func(i int) geometry.Point { return geometry.Pt(n[2*i], n[2*i+1]) }
		switch c[1] {
		case "M":
			path = append(path, geometry.Piece{Start: at(0)})
			continue
		case "L":
			path[len(path)-1].Steps = append(path[len(path)-1].Steps, geometry.Step{To: at(0)})
		case "C":
			path[len(path)-1].Steps = append(path[len(path)-1].Steps, geometry.Step{C1: at(0), C2: at(1), To: at(2), Curved: true})
		case "Z":
			path[len(path)-1].Closed = true
		}
	}
	return path
}

var faceRule = regexp.MustCompile(`font-weight: (\w+); src: url\("data:font/ttf;base64,([^"]+)"\)`)

// embedded returns the face of a weight that the file carries.
func embedded(t *testing.T, f svgFile, weight string) *sfnt.Font {
	t.Helper()
	if weight == "" {
		weight = "normal"
	}
	for _, s := range f.Styles {
		m := faceRule.FindStringSubmatch(s)
		if m == nil || m[1] != weight {
			continue
		}
		ttf, err := base64.StdEncoding.DecodeString(m[2])
		if err != nil {
			t.Fatal(err)
		}
		face, err := sfnt.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		return face
	}
	t.Fatalf("no %s face in the file", weight)
	return nil
}

// inkOf returns what the ink of a text covers that starts at a point, as the face has it.
func inkOf(t *testing.T, face *sfnt.Font, text string, at geometry.Point, size geometry.Length) geometry.Rect {
	t.Helper()
	var ink geometry.Rect
	var buf sfnt.Buffer
	em := fixed.I(int(face.UnitsPerEm()))
	length := func(x fixed.Int26_6) geometry.Length { return size * geometry.Length(x) / geometry.Length(em) }
	for _, r := range text {
		i, err := face.GlyphIndex(&buf, r)
		if err != nil || i == 0 {
			t.Fatalf("%q: no letter %q", text, r)
		}
		b, advance, err := face.GlyphBounds(&buf, i, em, font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		glyph := geometry.Rect{Min: geometry.Pt(length(b.Min.X), length(b.Min.Y)), Max: geometry.Pt(length(b.Max.X), length(b.Max.Y))}.Move(at)
		if ink.Empty() {
			ink = glyph
		} else if !glyph.Empty() {
			ink = ink.Union(glyph)
		}
		at.X += length(advance)
	}
	return ink
}
