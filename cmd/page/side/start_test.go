package side

import (
	"strings"
	"testing"
)

// TestStarts: each beginning is a good job with a line for its pass, a picture and a look for its
// colour.
func TestStarts(t *testing.T) {
	for _, name := range Starts() {
		text, err := Start(name)
		if err != nil {
			t.Fatal(err)
		}
		st := New().Look(text, Picked{}, 600)
		if !st.Good || len(st.Answer) != 1 || st.Picture == nil || st.Order == nil || st.Accent == "" || st.Words == "" {
			t.Errorf("%s: good %v, %v, %v", name, st.Good, st.Answer, st.Problems)
		}
		if len(st.Overlaps) > 0 || len(st.Values.Items) != 1 {
			t.Errorf("%s: %v", name, st.Overlaps)
		}
	}
	if _, err := Start("boat"); err == nil || !strings.Contains(err.Error(), `"cushion"`) {
		t.Errorf("a beginning that is none: %v", err)
	}
}
