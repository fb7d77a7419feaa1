package plan

import (
	"fmt"
	"regexp"
	"testing"
	"underlay/template/jobfile"
)

// TestAdviceWillDo writes into a job the very length that its refusal names, in units in which
// that has to be rounded: then it is not refused again.
func TestAdviceWillDo(t *testing.T) {
	advice := regexp.MustCompile(`"?([0-9.]+ (?:mm|cm|in))"? or (?:more|less)`)
	for name, job := range map[string]string{
		"border below the hem": "[[block]]\nname = 'fern'\nprint = '20 x 20 mm'\n[[item]]\nname = 'bag'\nsize = '30 x 30 cm'\nhem = '%[1]v mm'\nborder = '%[2]s'\n" +
			"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n",
		"overlap too wide": "[paper]\nsize = 'A6'\nmargin = '%[1]v mm'\noverlap = '%[2]s'\n[[block]]\nname = 'fern'\nprint = '20 x 20 mm'\n" +
			"[[item]]\nname = 'bag'\nsize = '30 x 30 cm'\nborder = '1 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n",
		"margin too wide": "[paper]\nsize = 'A6'\noverlap = '%[1]v mm'\nmargin = '%[2]s'\n[[block]]\nname = 'fern'\nprint = '20 x 20 mm'\n" +
			"[[item]]\nname = 'bag'\nsize = '30 x 30 cm'\nborder = '1 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n",
	} {
		wrong := map[string]string{"overlap too wide": "105 mm", "margin too wide": "60 mm"}[name]
		if wrong == "" {
			wrong = "0.5 mm"
		}
		for _, unit := range []string{"mm", "cm", "in"} {
			for _, l := range []float64{3, 3.0004, 7, 12.3456, 20.63754, 26.9875} {
				write := func(s string) string { return "units = '" + unit + "'\n" + fmt.Sprintf(job, l, s) }
				_, err := jobfile.Read("nook.toml", []byte(write(wrong)))
				if err == nil {
					t.Errorf("%s: %v is not refused", name, l)
					continue
				}
				found := advice.FindStringSubmatch(err.Error())
				if found == nil {
					t.Errorf("%s: no length is advised: %v", name, err)
					continue
				}
				if _, again := jobfile.Read("nook.toml", []byte(write(found[1]))); again != nil {
					t.Errorf("%s, %v mm: %v\nand with that: %v", name, l, err, again)
				}
			}
		}
	}
}
