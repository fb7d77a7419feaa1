package plan_test

import (
	"fmt"
	"underlay/template/jobfile"
	"underlay/template/plan"
)

// A checked job is worked out: how many prints, where each goes, which corner goes down first.
func ExampleNew() {
	j, err := jobfile.FromFlags(jobfile.Quick{Item: "50x50cm", Border: "25mm", Block: "90x90mm", Gap: "1mm"})
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := plan.New(j)
	if err != nil {
		fmt.Println(err)
		return
	}
	pass := p.Items[0].Passes[0]
	fmt.Println(pass.Choice().Columns, "across,", pass.Choice().Rows, "down;", pass.Why())
	first := pass.Prints[0]
	fmt.Println("print", first.Number, "has its centre at", first.Origin, "and its first corner at", first.TouchDown)
	// Output:
	// 4 across, 4 down; it gives the most whole prints
	// print 1 has its centre at {204.5 204.5} and its first corner at {249.5 249.5}
}
