package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"underlay/geometry"
)

// printJSON writes a value to standard output as JSON, its names as they are.
func (c *call) printJSON(v any) error {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(v); err != nil {
		return err
	}
	return c.print(escaped(out.String()))
}

// escaped is JSON without any character that would steer a terminal: those can only stand in
// texts, and mean the same there as an escape (RFC 8259, 7).
func escaped(text string) string {
	if !strings.ContainsFunc(text, func(r rune) bool { return steers(r) && r != '\n' }) {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		if steers(r) && r != '\n' {
			fmt.Fprintf(&b, `\u%04x`, r)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// mm is a number of millimetres, or another measure, written to a millionth.
type mm float64

// MarshalJSON writes the number without the last digits, which are those of the computer's own
// arithmetic, and without a minus before 0.
func (v mm) MarshalJSON() ([]byte, error) {
	return []byte(geometry.Decimals(float64(v), 6)), nil
}

func length(l geometry.Length) mm { return mm(l.Millimetres()) }

func lengths(ls []geometry.Length) []mm {
	out := make([]mm, len(ls))
	for i, l := range ls {
		out[i] = length(l)
	}
	return out
}
