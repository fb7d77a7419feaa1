package jobfile_test

import (
	"errors"
	"fmt"

	"underlay/template/job"
	"underlay/template/jobfile"
)

// A job file is read and checked in one go.
func ExampleRead() {
	j, err := jobfile.Read("nook.toml", []byte(`
[[block]]
name = "fern"
print = "90 x 90 mm"

[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"
  [[item.pass]]
  block = "fern"
  gap = "1 mm"
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	item := j.Items[0]
	fmt.Println(item.Name, item.Size, "in a", item.Passes[0].Repeat, "repeat")
	// Output: floor cushion {500 500} in a straight repeat
}

// What is wrong comes as problems, each with its line and what to write instead.
func ExampleRead_problems() {
	_, err := jobfile.Read("nook.toml", []byte(`
[[block]]
name = "fern"
print = "90 x 90"

[[item]]
name = "floor cushion"
size = "50 x 50 cm"
border = "25 mm"
`))
	var problems job.Problems
	if errors.As(err, &problems) {
		fmt.Println(len(problems), "problem:", problems[0])
	}
	// Output: 1 problem: nook.toml:4: print: "90 x 90" has no unit; write "90 x 90 mm", "90 x 90 cm" or "90 x 90 in"
}

// One block on one item can be asked for without a file.
func ExampleFromFlags() {
	j, err := jobfile.FromFlags(jobfile.Quick{Item: "50x50cm", Border: "25mm", Block: "90x90mm", Gap: "1mm"})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(j.Blocks[0].Size, "on", j.Items[0].Size)
	// Output: {90 90} on {500 500}
}
