package template

import (
	"bytes"
	"strings"
	"testing"

	"underlay/paper/pdf"
	"underlay/testdata/pdfread"
)

// TestLegendNamesWhatTheGuideHas reads legends back with pdfium: each line and sign that a guide
// has is named, once, and none that it has not; where there are several passes, each with its
// numbers.
func TestLegendNamesWhatTheGuideHas(t *testing.T) {
	const plain = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n"
	const wooden = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\nwood = '98 x 98 mm'\n"
	// Wood that is off the face's middle is wood all the same.
	const off = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\nwood = '98 x 98 mm'\nwood-offset = '2 x 3 mm'\n"
	const item = "[[item]]\nname = 'cover'\nsize = '30 x 30 cm'\nborder = '20 mm'\n"
	const pass = "[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n"
	const hem, zone = "hem = '10 mm'\n", "[[item.keep-clear]]\nname = 'pocket'\nat = '0 x 0 mm'\nsize = '300 x 40 mm'\n"
	always := []string{"edge of the cloth", "crease: centre line of the cloth", "outside the cloth: tape, from tick to tick", "outside the cloth: edge of a row or column"}
	prints := []string{"border line: no print beyond it", "a print", "its number in the order of printing", "arrow: top of the block", "this corner goes down first"}
	all := append([]string{"hem", "kept clear: not to print on", "corners of the wood", "lap of the seam, not printed", "centre line of the shade",
		"prints 1 to 9: fern", "prints 10 to 18: again"}, append(append([]string(nil), always...), prints...)...)
	for _, c := range []struct {
		job  string
		want []string
	}{
		{plain + item + pass, prints},
		{plain + strings.Replace(item, "border = '20 mm'", "border = '0 mm'", 1) + pass, prints[1:]},
		{wooden + item + hem + pass, append(prints, "hem", "corners of the wood")},
		{off + item + pass, append(prints, "corners of the wood")},
		{plain + item + zone + pass, append(prints, "kept clear: not to print on")},
		{plain + "[[item]]\nname = 'cover'\nsize = '32 x 32 cm'\nborder = '20 mm'\n" + pass + pass + "name = 'again'\nover = true\n", nil},
		{"[paper]\nextent = 'edges'\n" + wooden + item + hem + zone + pass, []string{}},
	} {
		text := c.job
		if c.want == nil { // one pass registered on another
			text = strings.Replace(c.job, "gap = '1 mm'\nname = 'again'\nover = true\n", "name = 'again'\non = 'fern'\n", 1)
			c.want = append(append([]string(nil), prints...), "prints 1 to 9: fern", "prints 10 to 18: again")
		}
		doc, _, err := Document(planOf(t, text), []string{"guide"})
		if err != nil {
			t.Fatal(err)
		}
		var file bytes.Buffer
		if err := pdf.Write(&file, doc); err != nil {
			t.Fatal(err)
		}
		count := map[string]int{}
		for _, w := range pdfread.Open(t, file.Bytes()).Pages()[0].Texts() {
			count[w.Text]++
		}
		want := map[string]bool{}
		for _, name := range append(append([]string(nil), always...), c.want...) {
			want[name] = true
		}
		for _, name := range all {
			if got := count[name]; want[name] && got != 1 || !want[name] && got != 0 {
				t.Errorf("%s\nis %q named %d times, wanted: %v", text, name, got, want[name])
			}
		}
	}
}
