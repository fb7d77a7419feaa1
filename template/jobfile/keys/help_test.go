package keys

import (
	"regexp"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
)

// TestHelpNamesEveryKey holds the list of keys to the table, and the lines to the width of a window.
func TestHelpNamesEveryKey(t *testing.T) {
	all := HelpKeys()
	for _, k := range jobKeys() {
		if !regexp.MustCompile(`(?m)^  \[*([a-z-]+\.)?` + k.name + `\]*( |$)`).MatchString(all) {
			t.Errorf("help job does not list %s", k.name)
		}
		one, ok := HelpKey(k.name)
		if !ok || !strings.Contains(strings.Join(strings.Fields(one), " "), k.says) {
			t.Errorf("help %s does not say %q:\n%s", k.name, k.says, one)
		}
		all += one
	}
	for _, line := range strings.Split(all, "\n") {
		if n := len([]rune(line)); n > helpWidth {
			t.Errorf("%d letters: %s", n, line)
		}
	}
	if _, ok := HelpKey("zebra"); ok {
		t.Error("there is help for zebra")
	}
}

// TestExamplesOfKeys reads the example of every key as TOML.
func TestExamplesOfKeys(t *testing.T) {
	for _, k := range jobKeys() {
		if k.Kind == oneTable || k.Kind == manyTable {
			continue
		}
		var v map[string]any
		if k.example == "" && len(k.Words) == 0 {
			t.Errorf("%s.%s has no example", k.in, k.name)
		} else if err := toml.Unmarshal([]byte(k.name+" = "+k.example), &v); k.example != "" && err != nil {
			t.Errorf("%s.%s: %v", k.in, k.name, err)
		}
	}
}
