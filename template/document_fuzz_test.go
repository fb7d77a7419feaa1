package template

import (
	"bytes"
	"errors"
	"runtime/metrics"
	"strings"
	"testing"
	"unicode/utf8"

	"underlay/geometry"
	"underlay/paper/pdf"
	"underlay/paper/planner"
	"underlay/template/guide"
	"underlay/template/internal/messages"
	"underlay/template/internal/sample"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
	"underlay/template/say"
)

// FuzzDraw draws any job that can be read.
func FuzzDraw(f *testing.F) {
	for _, seed := range []string{
		"[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'cover'\nsize = '20 x 20 cm'\nborder = '5 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n",
		"units = 'in'\n[paper]\nsize = 'one sheet'\nreach = '0 mm'\n[[block]]\nname = 'dot'\nprint = '1 x 1 mm'\n[[item]]\nname = 'ribbon'\nsize = '30 x 10 mm'\nborder = '0 mm'\n[[item.pass]]\nblock = 'dot'\nlap = '0.4 mm'\norder = 'rows'\n",
		"[paper]\nsize = '50 x 60 mm'\nmargin = '0 mm'\noverlap = '0 mm'\nreach = '3 mm'\n[[block]]\nname = '\u202eяблоко'\nprint = '10 x 30 mm'\nwood = '11 x 31 mm'\n[[item]]\nname = 'bag'\nsize = '90 x 80 mm'\nborder = ['1 mm', '2 mm', '3 mm', '0 mm']\nhem = '0 mm'\n[[item.pass]]\nblock = '\u202eяблоко'\ngap = '1 mm to 9 mm'\n[[item.pass]]\nname = 'again'\nblock = '\u202eяблоко'\ngap = '0 mm'\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		job, err := jobfile.Read("nook.toml", data)
		if err != nil {
			messages.Check(t, "nook.toml", err)
			return
		}
		checkDrawn(t, job)
	})
}

// FuzzDrawMade draws jobs made up from any bytes.
func FuzzDrawMade(f *testing.F) {
	for _, seed := range sample.MadeSeeds() {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, choices []byte) {
		if len(choices) > 120 {
			return
		}
		text := sample.Made(choices)
		t.Log(text)
		job, err := jobfile.Read("nook.toml", []byte(text))
		if err != nil {
			messages.Check(t, "nook.toml", err)
			messages.Words(t, err.Error())
			return
		}
		checkDrawn(t, job)
	})
}

// mostMemory is what drawing a job of a few thousand prints may take.
const mostMemory = 1 << 30

// checkDrawn draws a job, unless it is a large one: it is refused in plain words, or all papers are
// written, twice the same, and without more memory than there is. Where its prints lie is held
// to what it says in the tests of template/plan.
func checkDrawn(t *testing.T, j *job.Job) {
	t.Helper()
	if !quick(j) {
		return
	}
	var first []byte
	var plan *plan.Plan
	var err error
	draw := func() { plan, first, err = drawn(j) }
	before := allocated()
	draw()
	if allocated()-before > mostMemory {
		if top := peak(draw); top > mostMemory {
			t.Fatalf("drawing takes %.0f MB", top/1e6)
		}
	}
	if problems := (job.Problems{}); errors.As(err, &problems) {
		messages.Check(t, "nook.toml", err)
		messages.Words(t, err.Error())
		return
	} else if err != nil {
		t.Fatalf("drawn, but not written: %v", err)
	}
	if first == nil {
		return
	}
	if _, again, err := drawn(j); err != nil || !bytes.Equal(first, again) {
		t.Fatalf("drawn again, the job gives other bytes: %d and %d, %v", len(first), len(again), err)
	}
	if _, err := guide.Layout(plan); err != nil {
		messages.Check(t, "nook.toml", err)
	}
	if text := say.Fit(plan); !utf8.ValidString(text) || strings.Contains(text, "%!") || strings.Contains(text, "NaN") || strings.Contains(text, "Inf ") {
		t.Errorf("what fits is told so:\n%s", text)
	}
	in, err := pdf.Open(bytes.NewReader(first), int64(len(first)))
	if err != nil {
		t.Fatal(err)
	}
	if a, err := in.File(CarriedName, len(j.Source)); err != nil || !bytes.Equal(a.Content, j.Source) {
		t.Errorf("the job does not come back out of its PDF: %v", err)
	}
}

// allocated is how much has ever been taken from the heap.
func allocated() uint64 {
	s := []metrics.Sample{{Name: "/gc/heap/allocs:bytes"}}
	metrics.Read(s)
	return s[0].Value.Uint64()
}

// drawn draws a job; no bytes where that has too many prints to be drawn thousands of times.
func drawn(job *job.Job) (*plan.Plan, []byte, error) {
	p, err := plan.New(job)
	if err != nil {
		return nil, nil, err
	}
	prints := 0
	for _, ip := range p.Items {
		for _, pass := range ip.Passes {
			prints += len(pass.Prints)
		}
	}
	if prints > 3000 {
		return p, nil, nil
	}
	doc, _, err := Document(p, partsFor(job))
	if err != nil {
		return nil, nil, err
	}
	var out bytes.Buffer
	err = pdf.Write(&out, doc)
	return p, out.Bytes(), err
}

// partsFor returns all parts, but for the swatch where blocks are so small that one holds
// thousands of prints.
func partsFor(job *job.Job) []string {
	for _, b := range job.Blocks {
		if min(b.Size.W, b.Size.H) < 5 {
			return UsualParts()
		}
	}
	return Parts()
}

// quick tells whether a job is small enough to draw thousands of.
func quick(job *job.Job) bool {
	sheets := 0
	for _, item := range job.Items {
		cloth := geometry.RectAt(geometry.Point{}, item.Size)
		n, err := planner.CountSheets(planner.Layout{Bounds: cloth.Grow(job.Paper.Reach)}, guide.SetupOf(job))
		if err != nil {
			continue
		}
		sheets += n
		for _, pass := range item.Passes {
			if roughly(item, pass) > 10_000 {
				return false
			}
		}
	}
	return sheets <= 60
}

// roughly is how many prints a pass may come to, edges not counted.
func roughly(item *job.Item, pass *job.Pass) float64 {
	w := max(0.5, min(pass.Block.Size.W, pass.Block.Size.H)+pass.Gap.Across.Least)
	h := max(0.5, min(pass.Block.Size.W, pass.Block.Size.H)+pass.Gap.Down.Least)
	return float64(item.Size.W * item.Size.H / w / h)
}
