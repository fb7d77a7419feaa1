package jobfile

import (
	"errors"
	"strings"
	"testing"

	"underlay/template/job"
)

// TestLapBelowHalf: prints lap by less than half the block; what is advised in place of more is
// taken.
func TestLapBelowHalf(t *testing.T) {
	read := func(gap string) error {
		_, err := Read("nook.toml", []byte("[[block]]\nname = 'wave'\nprint = '60 x 40 mm'\n[[item]]\nname = 'towel'\nsize = '50 x 70 cm'\nborder = '3 cm'\n"+
			"[[item.pass]]\nblock = 'wave'\n"+gap+"\n"))
		return err
	}
	for gap, want := range map[string]string{
		`lap = "19.98 mm"`:                        "",
		`lap = "20 mm"`:                           "40 mm down",
		`lap = "30 mm"`:                           "60 mm across",
		`gap = "-19.98 mm to 900 mm"`:             "",
		`gap = "-35.1 mm to 964.9 mm"`:            "60 mm across",
		"gap = '1 mm'\ngap-across = '-29.98 mm'":  "",
		"gap = '1 mm'\ngap-across = '-30 mm'":     "60 mm across",
		"gap-across = '1 mm'\ngap-down = '-2 cm'": "40 mm down",
	} {
		err := read(gap)
		if want == "" {
			if err != nil {
				t.Errorf("%s: %v", gap, err)
			}
			continue
		}
		var problems job.Problems
		if !errors.As(err, &problems) || !strings.Contains(problems[0].Text, want+", would lie half on each other or more; write ") {
			t.Errorf("%s: %v", gap, err)
			continue
		}
		// What is advised is the key's new value, or with its key in front.
		_, advice, _ := strings.Cut(problems[0].Text, "such as ")
		if !strings.Contains(advice, " = ") {
			advice = problems[0].Key + " = " + advice
		}
		key, _, _ := strings.Cut(advice, " = ")
		var lines []string
		for _, line := range strings.Split(gap, "\n") {
			if !strings.HasPrefix(line, key+" = ") {
				lines = append(lines, line)
			}
		}
		if err := read(strings.Join(append(lines, advice), "\n")); err != nil {
			t.Errorf("%s: %s is advised: %v", gap, advice, err)
		}
	}
}
