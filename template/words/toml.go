package words

import (
	"fmt"
	"strings"
)

// TOML writes a text as TOML has it, whatever characters it holds (TOML 1.0, strings).
func TOML(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range strings.ToValidUTF8(s, "?") {
		switch {
		case c == '"' || c == '\\':
			b.WriteByte('\\')
			b.WriteRune(c)
		case Unseen(c):
			fmt.Fprintf(&b, `\u%04X`, c)
		default:
			b.WriteRune(c)
		}
	}
	b.WriteByte('"')
	return b.String()
}
