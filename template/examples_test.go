package template

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/testdata/pdfread"
)

// off is how far a mark may be from its place.
const off = 0.01 * geometry.Millimetre

// papers is a job drawn, and its PDF as pdfium reads it.
type papers struct {
	job    *Job
	plan   *Plan
	doc    paper.Document
	places []SheetPlace
	pdf    []byte
	read   *pdfread.Doc
	pages  []pageRead
	guides []guideRead
}

// pageRead is what stands on a page, in millimetres from its top left corner.
type pageRead struct {
	size  geometry.Size
	paths []pdfread.Path
	texts []pdfread.Text
}

// guideRead is the guide of one face.
type guideRead struct {
	face   FacePlan
	cloth  geometry.Rect
	sheets []*sheetRead
}

// sheetRead is a sheet of a guide with what stands on it in the item's frame.
type sheetRead struct {
	SheetPlace
	page  *pageRead
	lines *lineIndex
	// closed are the closed pieces that are stroked, for each the path it is part of.
	closed []closedPiece
}

type closedPiece struct {
	corners []geometry.Point
	of      *pdfread.Path
}

// layout returns which point of the item's frame lies at a point of the page: the page shows
// (X, Y) at at + (X - area.x, Y - area.y) * scale.
func (s SheetPlace) layout(p geometry.Point) geometry.Point {
	at := s.Sheet.At
	return geometry.Pt(
		s.Sheet.Area.Min.X+(p.X-at.X)/geometry.Length(s.Sheet.ScaleX),
		s.Sheet.Area.Min.Y+(p.Y-at.Y)/geometry.Length(s.Sheet.ScaleY))
}

func (s SheetPlace) layoutRect(r geometry.Rect) geometry.Rect {
	return geometry.Rect{Min: s.layout(r.Min), Max: s.layout(r.Max)}
}

// pdfOf plans and draws a job, with all parts there are.
func pdfOf(job *Job) (*papers, error) {
	p := &papers{job: job}
	var err error
	if p.plan, err = NewPlan(job); err != nil {
		return nil, err
	}
	if p.doc, p.places, err = p.plan.Document(Parts()); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := paper.WritePDF(&out, p.doc); err != nil {
		return nil, err
	}
	p.pdf = out.Bytes()
	return p, nil
}

// readPapers draws a job and reads its PDF back.
func readPapers(t *testing.T, job *Job) *papers {
	t.Helper()
	p, err := pdfOf(job)
	if err != nil {
		t.Fatal(err)
	}
	p.read = pdfread.Open(t, p.pdf)
	for _, page := range p.read.Pages() {
		p.pages = append(p.pages, pageRead{page.SizeMM(), page.Paths(), page.Texts()})
	}
	// The sheets of a guide are on pages that follow each other, the guides of an item in the
	// order of its faces.
	next := 0
	for _, ip := range p.plan.Items {
		for _, face := range ip.Faces() {
			g := guideRead{face: face, cloth: ip.Area.cloth}
			for ; next < len(p.places); next++ {
				place := p.places[next]
				if place.Part != "guide" {
					continue
				}
				if n := len(g.sheets); place.Item != ip.Item.Name || n > 0 && place.Page != g.sheets[n-1].Page+1 {
					break
				}
				g.sheets = append(g.sheets, readSheet(place, &p.pages[place.Page-1]))
			}
			if len(g.sheets) == 0 {
				t.Fatalf("%s has no guide", face.Label())
			}
			p.guides = append(p.guides, g)
		}
	}
	for _, place := range p.places[next:] {
		if place.Part == "guide" {
			t.Fatalf("page %d is a guide's, but of no face", place.Page)
		}
	}
	return p
}

func readSheet(place SheetPlace, page *pageRead) *sheetRead {
	s := &sheetRead{SheetPlace: place, page: page, lines: newLineIndex()}
	for i := range page.paths {
		path := &page.paths[i]
		if !path.Stroked {
			continue
		}
		for _, piece := range path.Lines.Map(place.layout) {
			corners := corners(piece)
			for i, b := range corners[1:] {
				s.lines.add(line{corners[i], b, path})
			}
			if piece.Closed {
				s.lines.add(line{corners[len(corners)-1], corners[0], path})
				s.closed = append(s.closed, closedPiece{corners, path})
			}
		}
	}
	return s
}

// corners returns the points of straight steps along a piece; of a curve enough of them that
// the steps leave it by much less than off.
func corners(p geometry.Piece) []geometry.Point {
	points := []geometry.Point{p.Start}
	for _, s := range p.Steps {
		a := points[len(points)-1]
		n := 1.0
		if s.Curved { // an eighth of a circle at most, so the bend is a tenth of the chord
			n = math.Ceil(math.Sqrt(50 * float64(s.To.Distance(a))))
		}
		for i := 1.0; i < n; i++ {
			t := i / n
			u := 1 - t
			points = append(points, a.Mul(u*u*u).Add(s.C1.Mul(3*u*u*t)).Add(s.C2.Mul(3*u*t*t)).Add(s.To.Mul(t*t*t)))
		}
		points = append(points, s.To)
	}
	// pdfium ends a closed piece where it began.
	if n := len(points); p.Closed && n > 2 && points[n-1].Distance(points[0]) <= off {
		points = points[:n-1]
	}
	return points
}

// exampleJobs reads every job file a user is given.
func exampleJobs(t *testing.T) map[string]*Job {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "examples", "*.toml"))
	if err != nil || len(files) < 2 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	jobs := map[string]*Job{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		job, err := ReadJob(filepath.Base(file), data)
		if err != nil {
			t.Fatal(err)
		}
		jobs[filepath.Base(file)] = job
	}
	return jobs
}

// hardJobs are jobs harder than the examples, in a maker's own words as far as can be.
func hardJobs(t *testing.T) map[string]*Job {
	t.Helper()
	read := func(text string) *Job {
		job, err := ReadJob("nook.toml", []byte(text))
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		return job
	}
	const fern = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\nwood = '98 x 104 mm'\nwood-offset = '0 x 2 mm'\n"
	const wave = "[[block]]\nname = 'wave'\nprint = '60 x 40 mm'\n"
	const acorn = "[[block]]\nname = 'acorn'\nprint = '30 x 30 mm'\n"
	const cushion = "[[item]]\nname = 'floor cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\n"
	const fernPass = "[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n"
	name := func(s string) string { return strings.Repeat(s, 300)[:300] }

	jobs := map[string]*Job{
		"inches": read("units = 'in'\n[paper]\nsize = 'Letter'\nmargin = '1/4 in'\nreach = '1 1/8 in'\n" +
			"[[block]]\nname = 'pebble'\nprint = '2 3/16 x 1 7/16 in'\n" +
			"[[item]]\nname = 'stool top'\nsize = '17 x 13 1/2 in'\nborder = '5/8 in'\nhem = '3/8 in'\n" +
			"[[item.pass]]\nblock = 'pebble'\ngap = '1/16 in to 1/4 in'\n"),
		"small blocks": read("[[block]]\nname = 'pebble'\nprint = '30 x 30 mm'\n" +
			"[[item]]\nname = 'bench runner'\nsize = '600 x 400 mm'\nborder = '12 mm'\n" +
			"[[item.pass]]\nblock = 'pebble'\ngap = '1 mm'\n"),
		"tiny blocks": read("[paper]\nsize = 'A5'\n[[block]]\nname = 'seed'\nprint = '8 x 8 mm'\n" +
			"[[item]]\nname = 'bookmark'\nsize = '180 x 120 mm'\nborder = '6 mm'\n" +
			"[[item.pass]]\nblock = 'seed'\ngap = '0.5 mm'\n"),
		"borders of all kinds": read("[printing]\nhand = 'left'\n" + wave +
			"[[item]]\nname = 'book bag'\nsize = '380 x 420 mm'\nborder = ['70 mm', '22 mm', '31.5 mm', '44 mm']\nhem = '15 mm'\n" +
			"[[item.keep-clear]]\nname = 'handle'\nat = '100 x 40 mm'\nsize = '60 x 90 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\ngap = '1 mm'\ncentre-across = 'joint'\norder = 'rows'\n"),
		"lap": read("[paper]\nsize = 'A3'\n[[block]]\nname = 'wave'\nprint = '60 x 40 mm'\nwood = '61 x 41 mm'\n" +
			"[[item]]\nname = 'bench runner'\nsize = '35 x 90 cm'\nborder = '20 mm'\n" +
			"[[item.pass]]\nblock = 'wave'\nlap = '0.5 mm'\n"),
		"strong":    read("[paper]\nlines = 'strong'\n" + fern + cushion + "hem = '12 mm'\n" + fernPass),
		"edges":     read("[paper]\nextent = 'edges'\n" + fern + strings.Replace(cushion, "50 x 50", "80 x 90", 1) + fernPass),
		"corrected": read("[printer]\nacross = '179.2 mm'\ndown = '248.9 mm'\n" + fern + cushion + fernPass),
		"two passes": read("[paper]\nsize = 'A3'\nreach = '32 mm'\n" + fern + acorn + cushion +
			fernPass + "[[item.pass]]\nblock = 'acorn'\ngap = '61 mm'\ncentre-across = 'joint'\ncentre-down = 'joint'\n"),
		"two faces": read("[paper]\nsize = '300 x 500 mm'\nmargin = '5 mm'\noverlap = '8 mm'\n" + fern + acorn +
			cushion + "faces = ['front', 'back']\n" + fernPass +
			"[[item.pass]]\nname = 'acorns'\nblock = 'acorn'\nface = 'back'\ngap = '25 mm'\n"),
		"small sheets": read("[paper]\nsize = 'A6'\nmargin = '4 mm'\noverlap = '5 mm'\nreach = '15 mm'\n" + acorn +
			"[[item]]\nname = 'coaster'\nsize = '150 x 150 mm'\nborder = '10 mm'\n[[item.pass]]\nblock = 'acorn'\ngap = '1 mm'\n"),
		"one sheet": read("[paper]\nsize = 'one sheet'\nmargin = '10 mm'\n" + fern + cushion + fernPass),
		"roll":      read("[paper]\nsize = 'roll 610 mm'\nmargin = '5 mm'\n" + fern + strings.Replace(cushion, "50 x 50", "90 x 70", 1) + fernPass),
		"round": read("[[block]]\nname = 'pebble'\nshape = 'round'\nprint = '55 mm'\nwood = '60 x 60 mm'\n" +
			"[[item]]\nname = 'stool top'\nshape = 'round'\nsize = '360 mm'\nborder = '20 mm'\nhem = '10 mm'\n" +
			"[[item.pass]]\nblock = 'pebble'\ngap = '2 mm'\n"),
		"six-sided": read("[[block]]\nname = 'pebble'\nshape = 'hexagon'\nprint = '52 x 60 mm'\n" + cushion +
			"[[item.pass]]\nblock = 'pebble'\ngap = '2 mm'\n"),
		"long names": read("title = '" + name("Reading nook ") + "'\n[[block]]\nname = '" + name("W") + "'\nprint = '60 x 40 mm'\n" +
			"[[block]]\nname = '" + name("two acorns ") + "'\nprint = '30 x 30 mm'\n" +
			"[[item]]\nname = '" + name("Wide floor cushion ") + "'\nsize = '300 x 260 mm'\nborder = '20 mm'\n" +
			"[[item.keep-clear]]\nname = '" + name("pocket ") + "'\nat = '30 x 30 mm'\nsize = '50 x 40 mm'\n" +
			"[[item.pass]]\nname = '" + name("first ") + "'\nblock = '" + name("W") + "'\ngap = '1 mm'\n" +
			"[[item.pass]]\nname = '" + name("second ") + "'\nblock = '" + name("two acorns ") + "'\ngap = '31 mm'\n"),
	}
	return jobs
}

// TestPapersReadBack draws every example, and jobs harder than those, reads each PDF back with
// pdfium and holds it against the plan and against what any paper must be.
func TestPapersReadBack(t *testing.T) {
	jobs := exampleJobs(t)
	for name, job := range hardJobs(t) {
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
