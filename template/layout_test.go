package template

import (
	"fmt"
	"strings"
	"testing"

	"underlay/template/guide"
)

func TestLayoutNeedsAPass(t *testing.T) {
	plan := planOf(t, fmt.Sprintf(fernOn, "50 x 50 cm")+"[[item]]\nname = 'stool top'\nsize = '30 x 30 cm'\nborder = '2 cm'\n")
	_, err := guide.Layout(plan)
	_, _, want := Document(plan, UsualParts())
	if err == nil || want == nil || err.Error() != want.Error() || !strings.Contains(err.Error(), `"stool top" has no pass`) {
		t.Errorf("layout: %v\ndocument: %v", err, want)
	}
}
