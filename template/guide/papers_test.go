package guide

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper/sheets"
	"underlay/template/internal/sample"
	"underlay/template/plan"
)

// countWords writes counts as "A4 6, A1 1*", the star with the fewest.
func countWords(counts []SheetCount) string {
	var words []string
	for _, c := range counts {
		w := fmt.Sprint(c.Stock.Name, " ", c.Sheets)
		if c.Fewest {
			w += "*"
		}
		words = append(words, w)
	}
	return strings.Join(words, ", ")
}

// The sheets along a side are ceil((L - v)/(a - v)), of the layout L with its reach of 25 mm
// both ways, and a of a sheet inside margins of 7 mm. A cushion of 500 mm makes 550, on A4:
// 538/184 = 2.9 and 538/271 = 1.99, so 3 x 2; on A3 538/271 and 538/394, so 2 x 2; on A2
// 538/394 and 538/568, 2 x 1; on A1 538/568, one.
func TestSheetCountsWorkedByHand(t *testing.T) {
	for _, c := range []struct{ name, paper, size, want string }{
		{"cushion", "", "50 x 50 cm", "A4 6, A3 4, A2 2, A1 1*, A0 1, one sheet 1"},
		{"inches", "size = 'Legal'\nmargin = '1/4 in'\noverlap = '1/2 in'\nreach = '1 in'", "18 x 18 in",
			// 20 in of layout: Letter 19.5/7.5 and 19.5/10 upright, 3 x 2; Legal 3 x 2; Tabloid
			// 19.5/10 and 19.5/16, 2 x 2; C 19.5/16 and 19.5/21, 2 x 1; D and E one.
			"Letter 6, Legal 6, Tabloid 4, ANSI C 2, ANSI D 1*, ANSI E 1, one sheet 1"},
		{"own paper", "size = '300 x 320 mm'", "50 x 50 cm", "A4 6, 300 × 320 mm 4, A3 4, A2 2, A1 1*, A0 1, one sheet 1"},
		{"own roll", "size = 'roll 610 mm'", "50 x 50 cm", "A4 6, A3 4, A2 2, A1 1*, A0 1, roll 610 mm 1, one sheet 1"},
		{"small papers fall out", "margin = '105 mm'\nsize = 'A0'\noverlap = '60 mm'\nreach = '25 mm'", "50 x 50 cm",
			// On A3 490/27 and 490/150, 19 x 4, of which two hold nothing but a bare part of the reach; on A2 490/150 and 490/324, 4 x 2; on A1 490/324 and 490/571.
			"A3 74, A2 8, A1 2, A0 1*, one sheet 1"},
	} {
		units := "units = 'mm'\n"
		if c.name == "inches" {
			units = "units = 'in'\n"
		}
		plan := planOf(t, units+"[paper]\n"+c.paper+"\n"+fmt.Sprintf(fernOn, c.size))
		got := countWords(SheetCounts(plan, plan.Items[0].Faces()[0]))
		if got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// What is counted is what the PDF then has, whatever is left out.
func TestSheetCountsAreTheSheetsDrawn(t *testing.T) {
	jobs := sample.Hard(t)
	jobs["wide plain border"] = planOf(t, "[[block]]\nname = 'acorn'\nprint = '40 x 40 mm'\n"+
		"[[item]]\nname = 'banner'\nsize = '1400 x 1400 mm'\nborder = '550 mm'\n[[item.pass]]\nblock = 'acorn'\ngap = '1 mm'\n").Job
	leftOut := 0
	for _, name := range []string{"inches", "edges", "corrected", "round", "two faces", "wide plain border"} {
		job := jobs[name]
		plan, err := plan.New(job)
		if err != nil {
			t.Fatal(err)
		}
		for _, face := range plan.Items[0].Faces() {
			counts := SheetCounts(plan, face)
			if len(counts) < 6 {
				t.Errorf("%s: %s", name, countWords(counts))
			}
			for _, c := range counts {
				one := *job
				one.Paper.Stock = c.Stock
				drawing, tiling, err := Spread(&one, face)
				if err != nil {
					t.Fatal(err)
				}
				_, pages := sheets.Furnish(drawing, tiling, panel(face, job, drawing))
				if c.Sheets != len(pages) {
					t.Errorf("%s, %s: %d sheets are counted, %d drawn", name, c.Stock.Name, c.Sheets, len(pages))
				}
				if !tiling.Strips {
					leftOut += tiling.Rows*tiling.Columns - len(pages)
				}
			}
		}
	}
	if leftOut < 1 {
		t.Errorf("only %d sheets are left out of all", leftOut)
	}
}

// What lies wholly on the cloth has nothing to show of its edges; strips round it are left.
func TestEdgesLeaveOutTheSheetsInside(t *testing.T) {
	plan := planOf(t, "[paper]\nextent = 'edges'\n"+fmt.Sprintf(fernOn, "80 x 90 cm"))
	face := plan.Items[0].Faces()[0]
	_, tiling, err := Spread(plan.Job, face)
	if err != nil {
		t.Fatal(err)
	}
	cloth := geometry.Rect{Max: geometry.Pt(800, 900)}
	for _, s := range tiling.Sheets {
		if cloth.Holds(s.Cell) {
			t.Errorf("%s lies on the cloth, %v", s.Name, s.Cell)
		}
	}
	// A rim of 50 mm round 80 x 90 cm, 850 and 950 mm long, of strips up to 283 mm long, 12 mm of
	// that shared: four of each, four beside each other on a page.
	if n := tiling.Leaves(); !tiling.Strips || n > 5 {
		t.Errorf("on %d pages, strips: %v", n, tiling.Strips)
	}
	counts := SheetCounts(plan, face)
	i := slices.IndexFunc(counts, func(c SheetCount) bool { return c.Stock.Name == "A4" })
	if n := counts[i].Sheets; n != tiling.Leaves() {
		t.Errorf("%d sheets are counted, %d are made", n, tiling.Leaves())
	}
}

// The extent "edges" draws every shape of cloth there is.
func TestEdgesOfOtherShapes(t *testing.T) {
	for _, shape := range []string{
		"shape = 'outline'\noutline = ['0 x 0 mm', '400 x 0 mm', '300 x 300 mm', '100 x 300 mm']\n",
		"shape = 'drum'\ndiameter = '200 mm'\nheight = '200 mm'\nlap = '10 mm'\n",
		"shape = 'cone'\ntop = '150 mm'\nbottom = '300 mm'\nheight = '200 mm'\nlap = '10 mm'\n",
	} {
		plan := planOf(t, "[paper]\nextent = 'edges'\n[[block]]\nname = 'pebble'\nprint = '40 x 40 mm'\n"+
			"[[item]]\nname = 'shade'\n"+shape+"border = '15 mm'\n[[item.pass]]\nblock = 'pebble'\ngap = '1 mm to 9 mm'\n")
		for _, c := range SheetCounts(plan, plan.Items[0].Faces()[0]) {
			if c.Sheets < 1 {
				t.Errorf("%s takes %d sheets of %s", shape, c.Sheets, c.Stock.Name)
			}
		}
	}
}
