package picture

import (
	"strings"
	"testing"
)

func TestPlainNames(t *testing.T) {
	for _, name := range []string{
		"fern.png", "Fern.PNG", "fern.jpg", "fern.JPEG", "fern 2 (moss).png", "fern.2.png", "шишка.png", "葉.jpg", "-fern.png",
		"con-fern.png", "com.png", "com10.png", "console.png", "lpt.jpg", strings.Repeat("f", longestName-4) + ".png",
	} {
		if err := CheckName(name); err != nil {
			t.Errorf("%q is refused: %v", name, err)
		}
	}
	for name, want := range map[string]string{
		"": "is empty", "  ": "is empty", ".": "another folder", "..": "another folder", "../fern.png": `write "fern.png"`,
		`..\fern.png`: `write "fern.png"`, "/fern.png": `write "fern.png"`, "a/../b/": "another folder", "http://x/fern.png": "is an address",
		"C:fern.png": "has : in it", "fern?.png": "has ? in it", "fern\x00.png": "in it", "fern\n.png": "in it", "fern\u202egnp.png": "in it",
		"a\xffb.png": "is not UTF-8", "fern": "has no ending", "fern.": "has no ending", "fern.gif": "neither .png nor .jpg",
		"fern.png.exe": "neither", ".png": "begins with a dot", ".fern.png": "begins with a dot", "fern.png ": `write "fern.png"`,
		strings.Repeat("f", longestName-3) + ".png": "too long",
		"con.png": "a device", "CON.fern.png": "a device", "Aux .jpg": "a device", "nul.jpeg": "a device", "prn.png": "a device",
		"COM1.png": "a device", "lpt9.png": "a device", "COM².png": "a device", "conin$.png": "a device", "CONOUT$.png": "a device",
	} {
		if err := CheckName(name); err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "; ") {
			t.Errorf("%q: %v, want %s", name, err, want)
		}
	}
}
