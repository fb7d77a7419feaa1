package guide

import (
	"strconv"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/template/internal/readback"
	"underlay/template/internal/sample"
	"underlay/template/job"
	"underlay/template/plan"
)

// off is how far a mark may be from its place.
const off = readback.Off

// guideRead is the guide of one face, and what stands on its sheets as pdfium reads them, in the
// item's frame.
type guideRead struct {
	job    *job.Job
	face   plan.FacePlan
	cloth  geometry.Rect
	sheets []*readback.Sheet
}

// facesOf draws the guides of a job that must be good.
func facesOf(t testing.TB, j *job.Job) []Guide {
	t.Helper()
	p, err := plan.New(j)
	if err != nil {
		t.Fatal(err)
	}
	var all []Guide
	for _, ip := range p.Items {
		guides, err := Faces(j, ip, 0)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, guides...)
	}
	return all
}

// documentOf binds the sheets of all guides of a job.
func documentOf(t testing.TB, j *job.Job) pdf.Document {
	t.Helper()
	var doc pdf.Document
	for _, g := range facesOf(t, j) {
		doc.Parts = append(doc.Parts, paper.Part{Name: "guide", Pages: g.Pages})
	}
	return doc
}

// TestGuidesReadBack draws the guides of every example, and of jobs harder than those, reads them
// back with pdfium and holds them against the plan.
func TestGuidesReadBack(t *testing.T) {
	jobs := sample.Examples(t)
	for name, j := range sample.Hard(t) {
		jobs[name] = j
	}
	checks := map[string]func(*testing.T, guideRead){
		"papers":     checkPapers,
		"joins":      checkJoins,
		"crosses":    checkCrosses,
		"footprints": checkFootprints,
		"cloth":      checkCloth,
		"ticks":      checkTicks,
		"numbers":    checkNumbers,
		"numbered":   checkNumbersRunOn,
		"pieces":     checkPieces,
	}
	for name, j := range jobs {
		t.Run(strings.ReplaceAll(name, " ", "-"), func(t *testing.T) {
			for _, g := range facesOf(t, j) {
				read := guideRead{job: j, face: g.Face, cloth: g.Face.Item.Area.Cloth}
				pages := readback.Drawn(t, g.Pages)
				for _, sheet := range g.Sheets {
					read.sheets = append(read.sheets, readback.ReadSheet(sheet, pages[sheet.Leaf]))
				}
				for name, check := range checks {
					t.Run(name, func(t *testing.T) { check(t, read) })
				}
			}
		})
	}
}

// checkPapers holds each sheet to its page: nothing where the printer does not reach, no text on
// another.
func checkPapers(t *testing.T, g guideRead) {
	for _, s := range g.sheets {
		at := g.face.Label() + ", sheet " + s.Name
		readback.CheckMargin(t, at, s.Page, g.job.Paper.Margin)
		readback.CheckTexts(t, at, s.Page)
	}
}

// checkJoins looks for the line of every join on both its sheets, from edge to edge.
func checkJoins(t *testing.T, g guideRead) {
	for _, s := range g.sheets {
		a, k := s.Area, s.Kept
		for _, join := range []struct {
			neighbour string
			from, to  geometry.Point
		}{
			{s.Left, geometry.Pt(k.Min.X, a.Min.Y), geometry.Pt(k.Min.X, a.Max.Y)},
			{s.Right, geometry.Pt(k.Max.X, a.Min.Y), geometry.Pt(k.Max.X, a.Max.Y)},
			{s.Above, geometry.Pt(a.Min.X, k.Min.Y), geometry.Pt(a.Max.X, k.Min.Y)},
			{s.Below, geometry.Pt(a.Min.X, k.Max.Y), geometry.Pt(a.Max.X, k.Max.Y)},
		} {
			if join.neighbour == "" {
				continue
			}
			for _, q := range along(join.from, join.to) {
				if !s.Lines.On(q) {
					t.Errorf("%s, sheet %s: no line of the join with %s at %v", g.face.Label(), s.Name, join.neighbour, q)
					break
				}
			}
		}
	}
}

// checkCrosses finds the crosses of every join on both its sheets: at the same points of the
// layout, on the line the one is cut along and laid on the other.
func checkCrosses(t *testing.T, g guideRead) {
	if g.job.Paper.Overlap < 2 {
		return // no room for any
	}
	named := map[string]*readback.Sheet{}
	for _, s := range g.sheets {
		named[s.Sheet.Name] = s
	}
	for _, s := range g.sheets {
		for _, j := range s.Joined {
			o, line := named[j.Name], geometry.Rect{Min: j.From, Max: j.To}
			if o == nil {
				t.Fatalf("%s names %s, which is not there", s.Name, j.Name)
			}
			on := func(q geometry.Point) bool { return line.Grow(off).Contains(q) }
			here, there := s.Crosses(on), o.Crosses(on)
			if len(here) != 2 || len(there) != 2 || here[0].Distance(there[0]) > off || here[1].Distance(there[1]) > off {
				t.Errorf("%s: %s and %s have crosses at %v and %v", g.face.Label(), s.Name, o.Name, here, there)
			}
		}
		for _, join := range []struct {
			name string
			on   func(geometry.Point) bool
		}{
			{s.Sheet.Right, func(q geometry.Point) bool {
				return (q.X - s.Sheet.Kept.Max.X).Abs() <= off
			}},
			{s.Sheet.Below, func(q geometry.Point) bool {
				return (q.Y - s.Sheet.Kept.Max.Y).Abs() <= off
			}},
		} {
			o := named[join.name]
			if o == nil {
				if join.name != "" {
					t.Errorf("%s names %s, which is not there", s.Sheet.Name, join.name)
				}
				continue
			}
			here, there := s.Crosses(join.on), o.Crosses(join.on)
			if len(here) < 2 || len(here) != len(there) {
				t.Errorf("%s: %s and %s have crosses at %v and %v", g.face.Label(), s.Sheet.Name, o.Sheet.Name, here, there)
				continue
			}
			for i := range here {
				if here[i].Distance(there[i]) > off {
					t.Errorf("%s: %s and %s have a cross at %v and %v", g.face.Label(), s.Sheet.Name, o.Sheet.Name, here[i], there[i])
				}
			}
		}
	}
}

// checkNumbersRunOn holds the numbers of each face against the plan: they run on from pass to
// pass, where passes are apart too, and none on the cloth is larger than the number of its prints.
func checkNumbersRunOn(t *testing.T, g guideRead) {
	next := 1
	if g.face.Alone {
		next = g.face.Passes[0].First
	}
	first := next
	for _, pass := range g.face.Passes {
		if pass.First != next {
			t.Errorf("%s: %s begins at %d, want %d", g.face.Label(), pass.Pass.Name, pass.First, next)
		}
		next += g.onEach(pass)
	}
	for _, s := range g.sheets {
		for _, w := range s.Page.Texts() {
			if n, err := strconv.Atoi(w.Text); err == nil && g.cloth.Holds(s.LayoutRect(w.Box)) && (n < first || n >= next) {
				t.Errorf("%s: a number %d, and prints %d to %d", g.face.Label(), n, first, next-1)
			}
		}
	}
}
