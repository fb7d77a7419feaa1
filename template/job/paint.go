package job

import "underlay/paper"

// Paint is how a colour that passes name looks on paper and screen.
type Paint struct {
	Name  string
	Looks paper.Ink
	Line  int // of its heading in the job file; 0: none
}
