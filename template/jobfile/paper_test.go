package jobfile

import (
	"strings"
	"testing"
)

func TestParseStockNamesTheNearest(t *testing.T) {
	for name, want := range map[string]string{
		"Leter": "Letter", "tabliod": "Tabloid", "ANSI-D": "ANSI D", "onesheet": "one sheet", "A44": "A4", "rol 610 mm": "roll 610 mm",
		"A9": "", "wallpaper": "",
	} {
		_, err := ParseStock(name)
		if err == nil {
			t.Errorf("%q was taken", name)
			continue
		}
		_, advice, _ := strings.Cut(err.Error(), "; write ")
		if named := strings.HasPrefix(advice, `"`+want+`"`); named != (want != "") {
			t.Errorf("%q: %v", name, err)
		}
		if _, err := ParseStock(want); want != "" && err != nil {
			t.Errorf("%q is advised and refused: %v", want, err)
		}
	}
}
