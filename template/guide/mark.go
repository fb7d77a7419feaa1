package guide

import (
	"crypto/sha256"

	"underlay/template/job"
)

// markLetters are not mistaken for each other when read from a sheet: no I, O, 0, 1 and such.
const markLetters = "ABCDEFGHJKMNPRSTUVWXY346789"

// Mark is a short sign made from the job's content, printed on every sheet: loose sheets of
// different guides are told apart by it.
func Mark(j *job.Job) string {
	sum := sha256.Sum256(j.Source)
	mark := make([]byte, 4)
	for i := range mark {
		mark[i] = markLetters[int(sum[i])%len(markLetters)]
	}
	return string(mark)
}
