package plan

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"underlay/template/job"
)

// manyCorners is a job of rows of round-ish blocks with many corners on a strip that takes
// exactly so many across, one row, in one or more passes.
func manyCorners(corners, across, down, passes int) string {
	points := make([]string, corners)
	for i := range points {
		a := 2 * math.Pi * float64(i) / float64(corners)
		points[i] = fmt.Sprintf("'%.4f x %.4f mm'", 10+10*math.Cos(a), 10+10*math.Sin(a))
	}
	text := "[[block]]\nname = 'dot'\nshape = 'outline'\noutline = [" + strings.Join(points, ", ") + "]\n" +
		fmt.Sprintf("[[item]]\nname = 'runner'\nsize = '%d x %d mm'\nborder = '0 mm'\n", 21*across+1, 21*down+1)
	for i := range passes {
		text += fmt.Sprintf("[[item.pass]]\nname = 'pass %d'\nblock = 'dot'\ngap = '1 mm'\n", i)
	}
	return text
}

// TestCornersLimit holds corners times prints to their limit, in one pass and in two together: 500
// corners 100 x 50 times are 2,500,000.
func TestCornersLimit(t *testing.T) {
	if n := len(planOf(t, manyCorners(500, 100, 50, 1)).Items[0].Passes[0].Prints); n*500 != mostCorners {
		t.Fatalf("%d prints", n)
	}
	for _, c := range []struct {
		across, down, passes int
		want                 string
	}{
		{101, 50, 1, "has 2,525,000 corners"},
		{50, 50, 2, ""},
		{51, 50, 2, "has 2,550,000 corners"},
		{400, 400, 1, "has 80,000,000 corners"},
	} {
		_, err := New(readJob(t, manyCorners(500, c.across, c.down, c.passes)))
		if c.want == "" {
			if err != nil {
				t.Errorf("%+v: %v", c, err)
			}
			continue
		}
		var problems job.Problems
		if !errors.As(err, &problems) || len(problems) != 1 || !strings.Contains(problems[0].Text, c.want) {
			t.Errorf("%+v: %v", c, err)
		}
	}
	// What is advised helps: fewer corners.
	planOf(t, manyCorners(490, 101, 50, 1))
}
