package plan

import (
	"testing"
	"underlay/template/internal/messages"
	"underlay/template/internal/oracle"
	"underlay/template/internal/sample"
	"underlay/template/job"
	"underlay/template/jobfile"
)

// FuzzMade plans jobs made up from any bytes: they are refused in plain words, or every print lies
// where it may, turned as asked.
func FuzzMade(f *testing.F) {
	for _, seed := range sample.MadeSeeds() {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, choices []byte) {
		if len(choices) > 120 {
			return
		}
		text := sample.Made(choices)
		t.Log(text)
		j, err := jobfile.Read("nook.toml", []byte(text))
		if err != nil || !quick(j) {
			return // what is said of it is for FuzzDrawMade
		}
		p, err := New(j)
		if err != nil {
			messages.Check(t, "nook.toml", err)
			messages.Words(t, err.Error())
			return
		}
		for _, ip := range p.Items {
			for _, pass := range ip.Passes {
				oracle.CheckPlaces(t, ip.Item, pass.Pass, placesOf(pass))
				checkTurned(t, ip, pass)
			}
		}
	})
}

// quick tells whether a job is small enough to check thousands of.
func quick(j *job.Job) bool {
	for _, item := range j.Items {
		for _, pass := range item.Passes {
			side := min(pass.Block.Size.W, pass.Block.Size.H)
			w, h := max(0.5, side+pass.Gap.Across.Least), max(0.5, side+pass.Gap.Down.Least)
			if item.Size.W*item.Size.H/w/h > 3000 {
				return false
			}
		}
	}
	return true
}

// placesOf hands the prints of a pass to what checks them.
func placesOf(p *PassPlan) []oracle.Placed {
	all := make([]oracle.Placed, len(p.Prints))
	for i, print := range p.Prints {
		all[i] = oracle.Placed{Number: print.Number, Origin: print.Origin, Turn: print.Turn, Outline: print.Outline}
	}
	return all
}
