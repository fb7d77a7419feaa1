package jobfile

import (
	"underlay/template/job"
)

// mostAsked is the most prints across, or down, that a job may ask for.
const mostAsked = 10_000

// checkExactly reads how many prints there are to be across and down, and whether a gap opens as much
// one way as the other.
func checkExactly(s section, pass *job.Pass) {
	for _, way := range []struct {
		key string
		to  *int
	}{{"across", &pass.Exactly.Across}, {"down", &pass.Exactly.Down}} {
		if n, ok := s.key(way.key).count("4", mostAsked); ok {
			*way.to = n
		}
	}
	e := s.key("gap-even")
	even, ok := e.yes()
	if !ok {
		return
	}
	pass.GapEven = even
	for _, key := range []string{"gap-across", "gap-down"} {
		if even && s.has(key) {
			e.say("is one gap for both ways, and %s is given too; take one of the two out", key)
			return
		}
	}
}
