package template

import (
	"io"
	"testing"

	"underlay/paper"
)

// FuzzDraw draws any job that can be read: it is refused in plain words or drawn, never a panic.
func FuzzDraw(f *testing.F) {
	for _, seed := range []string{
		"[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'cover'\nsize = '20 x 20 cm'\nborder = '5 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n",
		"units = 'in'\n[paper]\nsize = 'one sheet'\nreach = '0 mm'\n[[block]]\nname = 'dot'\nprint = '1 x 1 mm'\n[[item]]\nname = 'ribbon'\nsize = '30 x 10 mm'\nborder = '0 mm'\n[[item.pass]]\nblock = 'dot'\nlap = '0.4 mm'\norder = 'rows'\n",
		"[paper]\nsize = '50 x 60 mm'\nmargin = '0 mm'\noverlap = '0 mm'\nreach = '3 mm'\n[[block]]\nname = '\u202eяблоко'\nprint = '10 x 30 mm'\nwood = '11 x 31 mm'\n[[item]]\nname = 'bag'\nsize = '90 x 80 mm'\nborder = ['1 mm', '2 mm', '3 mm', '0 mm']\nhem = '0 mm'\n[[item.pass]]\nblock = '\u202eяблоко'\ngap = '1 mm to 9 mm'\n[[item.pass]]\nname = 'again'\nblock = '\u202eяблоко'\ngap = '0 mm'\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		job, err := ReadJob("nook.toml", data)
		if err != nil || !quick(job) {
			return
		}
		p, err := NewPlan(job)
		prints := 0
		if err == nil {
			for _, ip := range p.Items {
				for _, pass := range ip.Passes {
					prints += len(pass.Prints)
				}
			}
			if prints > 3000 {
				return
			}
			var doc paper.Document
			if doc, _, err = p.Document(partsFor(job)); err == nil {
				if err := paper.WritePDF(io.Discard, doc); err != nil {
					t.Errorf("drawn, but not written: %v", err)
				}
				return
			}
		}
		checkProblems(t, "nook.toml", err)
	})
}

// partsFor returns all parts, but for the swatch where blocks are so small that one holds
// thousands of prints.
func partsFor(job *Job) []string {
	for _, b := range job.Blocks {
		if min(b.Size.W, b.Size.H) < 5 {
			return UsualParts()
		}
	}
	return Parts()
}

// quick tells whether a job is small enough to draw thousands of.
func quick(job *Job) bool {
	sheets := 0
	for _, item := range job.Items {
		n, err := paper.CountSheets(item.Outline.Bounds().Grow(job.Paper.Reach), job.Paper.Stock, job.Paper.Margin, job.Paper.Overlap, job.Printer.Scale())
		if err != nil {
			continue
		}
		sheets += n
		for _, pass := range item.Passes {
			if area, ok := newArea(item); ok && newLayout(area, pass).roughCount() > 10_000 {
				return false
			}
		}
	}
	return sheets <= 60
}
