package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"underlay/paper/planner"
	"underlay/template"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
	"underlay/template/words"
)

// FuzzJSON writes the plan and the sheets of any job that can be read as JSON: nothing is lost
// when that is read back, and worked out again the job gives the same.
func FuzzJSON(f *testing.F) {
	files, err := filepath.Glob(filepath.Join("..", "..", "examples", "*.toml"))
	if err != nil || len(files) < 2 {
		f.Fatalf("%d examples, %v", len(files), err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	for _, shape := range words.Texts(job.Shapes()) {
		text, err := jobfile.StartFile(shape)
		if err != nil {
			f.Fatal(err)
		}
		f.Add([]byte(text))
	}
	f.Add([]byte("units = 'in'\n[paper]\nsize = 'one sheet'\n[[block]]\nname = '<b>&\u2028'\nprint = '1/3 x 2/7 in'\n" +
		"[[item]]\nname = '\u0000 \"'\nsize = '5 x 4 in'\nborder = '0 mm'\n[[item.pass]]\nblock = '<b>&\u2028'\ngap = '0 mm to 1/8 in'\nrepeat = 'half-drop'\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		job, err := jobfile.ReadWith("nook.toml", data, picturesBeside("../../examples/nook.toml"))
		if err != nil || !small(job) {
			return
		}
		if plan.IsShelf(job) {
			shelf, err := plan.NewShelf(job, plan.ShelfGap)
			if err != nil {
				return
			}
			again(t, shelfJSON(shelf))
			return
		}
		first := planned(t, job)
		if second := planned(t, job); !bytes.Equal(first, second) {
			t.Errorf("worked out again, the job gives another plan:\n%s\n%s", first, second)
		}
	})
}

// planned writes the plan and the sheets of a job as JSON; nothing where it cannot be done.
func planned(t *testing.T, job *job.Job) []byte {
	plan, err := plan.New(job)
	if err != nil {
		return nil
	}
	out := again(t, planJSON(plan, threeByTwo()))
	if !json.Valid(out) {
		t.Errorf("not JSON: %s", out)
	}
	if _, sheets, err := template.Document(plan, []string{"guide"}); err == nil {
		out = append(out, again(t, sheetsJSON("guide.pdf", len(sheets), sheets))...)
	}
	return out
}

// small tells whether a job is small enough to work out thousands of: by the sheets its guides
// take, and how often its blocks go into its items.
func small(job *job.Job) bool {
	sheets := 0
	for _, item := range job.Items {
		w, h := item.Size.W, item.Size.H
		if item.Shape == "cone" {
			w, h = 4*item.Shade.Bottom, item.Shade.Height+4*item.Shade.Bottom
		}
		cloth := item.Outline.Bounds()
		cloth.Max.X, cloth.Max.Y = w, h
		n, err := planner.CountSheets(planner.Layout{Bounds: cloth.Grow(job.Paper.Reach)}, guide.SetupOf(job))
		if err == nil {
			sheets += n
		}
		for _, pass := range item.Passes {
			size, gap := pass.Block.Size, max(-0.9*min(pass.Block.Size.W, pass.Block.Size.H), min(pass.Gap.Across.Least, pass.Gap.Down.Least))
			if float64(w*h/((size.W+gap)*(size.H+gap))) > 2000 {
				return false
			}
		}
	}
	return sheets <= 60
}
