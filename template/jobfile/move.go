package jobfile

import (
	"underlay/template/job"
	"underlay/template/words"
)

// checkMove reads the length of the table that a long cloth is moved along. What is printed must
// come again from stretch to stretch.
func checkMove(s section, it *job.Item) {
	e := s.key("move-along")
	length, ok := e.positive("120 cm")
	if !ok {
		return
	}
	own := 0
	for _, p := range it.Passes {
		if !p.Mix.None() {
			e.say("the cloth is printed stretch by stretch, with one block through all of it, and pass %s takes turns; write block, or colours, there, or take move-along out", words.Quote(p.Name))
			return
		}
		switch {
		case p.Seated():
		case !p.Repeat.Lattice() || p.Slanted():
			e.say("the cloth is printed stretch by stretch, and pass %s, with repeat = %s, does not come again; write repeat = \"straight\" there, or take move-along out",
				words.Quote(p.Name), words.Quote(string(p.Repeat)))
			return
		default:
			own++
		}
	}
	if own > 1 {
		e.say("a cloth that is moved along takes one pass, and others on its prints or between them: two repeats seldom come again together; take the other passes into an item of their own, or take move-along out")
		return
	}
	if len(it.Zones) > 0 {
		e.say("a cloth that is moved along has the same prints in every stretch, and a keep-clear zone lies in one of them; take keep-clear out, or move-along")
		return
	}
	it.MoveAlong = length
}
