package guide

import (
	"fmt"
	"strings"
	"testing"

	"underlay/template/plan"
)

// TestRollTakesOnePrint: a roll is refused where it shows less than one print inside its margins,
// once the printer has made of it what it makes. By hand: of 104 mm with margins of 7 mm, 90 are
// left: a print of 90 mm fits a true printer. One that makes 180 mm come out 175 shows 90 * 175 / 180
// = 87.5 mm of the guide on them, one that makes them 185 shows 92.5.
func TestRollTakesOnePrint(t *testing.T) {
	for _, c := range []struct {
		measured, print float64
		good            bool
	}{{180, 90, true}, {180, 90.1, false}, {175, 90, false}, {175, 87.5, true}, {185, 92.5, true}, {185, 92.6, false}} {
		j := readJob(t, fmt.Sprintf("[paper]\nsize = 'roll 104 mm'\nmargin = '7 mm'\n[printer]\nacross = '%v mm'\ndown = '250 mm'\n"+
			"[[block]]\nname = 'fern'\nprint = '%v x 95 mm'\n[[item]]\nname = 'cover'\nsize = '20 x 20 cm'\nborder = '2 cm'\n"+
			"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n", c.measured, c.print))
		p, err := plan.New(j)
		if err != nil {
			t.Fatal(err)
		}
		_, err = Faces(j, p.Items[0], 0)
		if (err == nil) != c.good || err != nil && !strings.Contains(err.Error(), "less than one print") {
			t.Errorf("%+v: %v", c, err)
		}
	}
}
