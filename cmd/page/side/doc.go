// Package side is the Go side of the page: ordinary functions that take the text of a job and say what
// is in it, what fits, how it looks and what its papers are, in values made for JSON. It knows nothing
// of browsers.
//
// The state of the page is the job's text and the pictures given to a Side; each call takes the text
// anew. No text makes a call panic, and none makes it go on without end: what is too large is refused
// with a sentence.
package side
