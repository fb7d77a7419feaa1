package main

import (
	"fmt"
	"io"
	"strings"
	"unicode"
)

// print writes what was asked for to standard output, as it is.
func (c *call) print(text string) error {
	_, err := io.WriteString(c.stdout, text)
	return outputError("standard output", err)
}

// say writes words that were asked for to standard output.
func (c *call) say(text string) error { return c.print(visible(text)) }

// tell writes words about something that is done to standard output. It stays done where nobody
// reads them.
func (c *call) tell(text string) { io.WriteString(c.stdout, visible(text)) }

// note writes a line to standard error: a message, or a warning.
func (c *call) note(text string) { fmt.Fprintln(c.stderr, visible(text)) }

// visible is a text for a terminal. Names come from files and from the command line, and may
// hold characters that steer a terminal or turn the direction of writing: they would hide what
// is said. Each is shown by its number. Line breaks and tabs are left.
func visible(text string) string {
	var b strings.Builder
	for _, r := range text {
		if steers(r) && r != '\n' && r != '\t' {
			fmt.Fprintf(&b, "<U+%04X>", r)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// steers tells characters that a terminal does not show but obeys, and those that turn the
// direction of writing or break a line unseen (Unicode 16, UAX 9 and PropList.txt).
func steers(r rune) bool {
	return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == '\u2028' || r == '\u2029' || r == '\ufeff'
}
