package main

import (
	"encoding/json"
	"testing"

	"underlay/geometry"
)

// TestNumbers writes numbers that a computer's arithmetic leaves a little off.
func TestNumbers(t *testing.T) {
	for want, l := range map[string]geometry.Length{
		"454": 454.00000000000006, "0": -1e-9, "-0.5": -0.5, "68.5": 68.49999999999999, "2000": 2000,
		"0.333333": geometry.Length(1) / 3, "50000000": 5e7,
	} {
		got, err := json.Marshal(length(l))
		if err != nil || string(got) != want {
			t.Errorf("%v: %s, %v; want %s", float64(l), got, err, want)
		}
	}
}
