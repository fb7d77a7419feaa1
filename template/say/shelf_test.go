package say

import (
	"strings"
	"testing"
)

// TestShelfNames keeps a table of long names to the window.
func TestShelfNames(t *testing.T) {
	long := strings.Repeat("leaf ", 50) + "end"
	shelf := readShelf(t, "units = 'in'\n[[block]]\nname = '"+long+"'\nprint = '2 3/16 x 1 7/16 in'\n"+
		"[[item]]\nname = '"+long+"'\nsize = '17 11/16 x 13 1/2 in'\nborder = ['1 1/16 in', '5/8 in', '1 3/8 in', '7/8 in']\n")
	text := Shelf(shelf)
	for _, line := range strings.Split(text, "\n") {
		if n := len([]rune(line)); n > fitWidth {
			t.Errorf("%d characters: %s", n, line)
		}
	}
	if !strings.Contains(text, "2 3/16 × 1 7/16 in") || !strings.Contains(text, "…") {
		t.Errorf("size or name is missing:\n%s", text)
	}
}
