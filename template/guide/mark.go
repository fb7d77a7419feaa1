package guide

import (
	"crypto/sha256"
	"fmt"
	"hash"
	"slices"

	"underlay/template/job"
	"underlay/template/plan"
)

// The signs of a mark: letters without vowels, figures without 0 and 1, none of them taken for
// another when it is read from a sheet (no 8 beside B, no 5 beside S).
const (
	markLetters = "CDFHJKLMNPRTVWXY"
	markFigures = "2345679"
)

// Mark is the sign of the guide of a face: letter, figure, letter, figure. It is made from all that
// decides the drawing and its sheets, so that one guide has the same mark whenever it is drawn,
// and a guide of another item, face or paper has another.
func Mark(j *job.Job, face plan.FacePlan) string {
	h := sha256.New()
	describePaper(h, j)
	describeItem(h, face.Item.Asked())
	fmt.Fprintf(h, "%q\n", face.Names)
	for _, p := range face.Wholes() {
		describePass(h, p.Pass)
		if face.Alone {
			// The passes left out decide what it is numbered from, and where it is seated.
			fmt.Fprintf(h, "%d\n", p.First)
			for host := p.Pass.Host(); host != nil; host = host.Host() {
				describePass(h, host)
			}
		}
	}
	return markOf(h)
}

// SetMark is the sign of papers that are of a job as a whole: its items, and its paper.
func SetMark(j *job.Job) string {
	h := sha256.New()
	describePaper(h, j)
	for _, it := range j.Items {
		describeItem(h, it)
		for _, p := range it.Passes {
			describePass(h, p)
		}
	}
	return markOf(h)
}

func markOf(h hash.Hash) string {
	sum := h.Sum(nil)
	mark := make([]byte, 4)
	for i := range mark {
		signs := markLetters
		if i%2 == 1 {
			signs = markFigures
		}
		mark[i] = signs[int(sum[i])%len(signs)]
	}
	return string(mark)
}

func describePaper(h hash.Hash, j *job.Job) {
	fmt.Fprintf(h, "%#v\n%#v\n%#v\n%#v\n", j.Units, j.Paper, j.Printer, j.Printing.Hand)
}

// describeItem writes everything of an item but its passes, its quantity and colours, and where it is written.
func describeItem(h hash.Hash, it *job.Item) {
	item := *it
	item.Passes, item.Colourways, item.Quantity, item.Line = nil, nil, 0, 0
	fmt.Fprintf(h, "%#v\n", item)
}

// describePass writes everything of a pass and its block but its colours, which no guide shows unless
// they tell its parts apart, and where it is written; of another pass that seats it, the name.
func describePass(h hash.Hash, p *job.Pass) {
	pass := *p
	for _, seat := range []*job.Pass{pass.Between, pass.On} {
		if seat != nil {
			fmt.Fprintf(h, "%q\n", seat.Name)
		}
	}
	if pass.Corner != nil {
		describeBlock(h, pass.Corner)
	}
	pass.Block, pass.Corner, pass.Between, pass.On, pass.Dabs, pass.Colours, pass.Line = nil, nil, nil, nil, nil, nil, 0
	pass.Places = slices.Clone(pass.Places)
	for i := range pass.Places {
		pass.Places[i].Line = 0
	}
	if !p.Mix.None() {
		for i, part := range p.Mix.Parts {
			describeBlock(h, part.Block)
			others := slices.Delete(slices.Clone(p.Mix.Parts), i, i+1)
			if slices.ContainsFunc(others, func(q job.Part) bool { return q.Block == part.Block }) {
				fmt.Fprintf(h, "%q\n", part.Colours)
			}
		}
		pass.Mix.Parts = nil
	}
	fmt.Fprintf(h, "%#v\n", pass)
	describeBlock(h, p.Block)
}

// describeBlock writes everything of a block but its picture and what that says, which no guide
// shows.
func describeBlock(h hash.Hash, b *job.Block) {
	block := *b
	block.Picture, block.Inked = nil, 0
	fmt.Fprintf(h, "%#v\n", block)
}
