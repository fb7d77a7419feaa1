package toml

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"underlay/template/words"
)

var (
	keyAndValue  = regexp.MustCompile(`^\s*([A-Za-z0-9_-]+)\s*=\s*(.*?)\s*$`)
	startsWord   = regexp.MustCompile(`^[A-Za-z]`)
	StartsFigure = regexp.MustCompile(`^[+-]?[0-9.]`)
	inchMark     = regexp.MustCompile(`([0-9])\s*"`)
	bareNumber   = regexp.MustCompile(`^[+-]?[0-9][0-9_]*(\.[0-9_]+)?$`)
)

// syntaxText says in plain words why a line is no TOML, and what to write instead. The
// message is go-toml's own; it is not shown, as it speaks to programmers.
func syntaxText(line, message string) string {
	bare := strings.TrimSpace(line)
	switch {
	case holds(message, "control character", "carriage return"):
		return "there is a character in this line that cannot be seen; type the line again"
	case strings.HasPrefix(bare, "[") && !strings.Contains(bare, "="):
		return headingText(bare)
	case holds(message, "escape", `after \`):
		return `a backslash (\) in a text means something else; write two of them (\\) or none`
	case holds(message, "unterminated", "new lines", "not terminated", "too many quotes"):
		return `a text is opened with a quote and not closed; close it with a quote on the same line`
	}
	m := keyAndValue.FindStringSubmatch(line)
	if m == nil {
		return lineText(bare)
	}
	key, value := m[1], m[2]
	if i := strings.Index(value, "#"); i >= 0 && !strings.ContainsAny(value[:i], `"'`) {
		value = strings.TrimSpace(value[:i])
	}
	return valueText(key, value, message)
}

// holds tells whether a message has one of some parts in it.
func holds(message string, parts ...string) bool {
	return slices.ContainsFunc(parts, func(s string) bool { return strings.Contains(message, s) })
}

// valueText is for a line whose value cannot be read, by how the value begins.
func valueText(key, value, message string) string {
	switch {
	case value == "":
		return fmt.Sprintf("nothing stands after %s =; write a value, or leave the line out", key)
	case strings.ContainsAny(value, "“”„‘’«»"):
		return fmt.Sprintf(`%s has curved quotes; write straight ones: %s = %s`, key, key, words.Quote(strings.Trim(value, "“”„‘’«» ")))
	case strings.HasPrefix(value, "["):
		return fmt.Sprintf(`the list of %s is not closed, or lacks a comma; write it as in: ["one", "two"]`, key)
	case strings.HasPrefix(value, "{"):
		return fmt.Sprintf(`the braces of %s are not closed, or lack a comma; write them as in: { across = "180 mm", down = "250 mm" }`, key)
	case strings.HasPrefix(value, `"`) && strings.Count(value, `"`) > 2:
		return fmt.Sprintf(`the text of %s ends at its second quote, and more follows; write inches as in "17 3/4 in"`, key)
	case strings.HasPrefix(value, `"`), strings.HasPrefix(value, `'`):
		return fmt.Sprintf(`something follows the text of %s; take it out, or put # before it`, key)
	case holds(message, "leading zero"), holds(message, "too large", "out of range"), bareNumber.MatchString(value):
		return numberText(key, value, message)
	}
	return fmt.Sprintf(`the value of %s needs quotes; write %s = %s`, key, key, words.Quote(inchesInWords(value)))
}

// numberText is for a number that cannot be read.
func numberText(key, value, message string) string {
	shown := words.Shown(value)
	switch {
	case holds(message, "leading zero"):
		return fmt.Sprintf(`%s = %s begins with a zero; write %s = %s`, key, shown, key, words.Shown(strings.TrimLeft(value, "0")+zeroIfNone(value)))
	case holds(message, "too large", "out of range"):
		return fmt.Sprintf(`%s = %s is too large a number; write a smaller one`, key, shown)
	}
	return fmt.Sprintf(`%s = %s cannot be read; write a number such as 6, or a text in quotes`, key, shown)
}

// inchesInWords writes inch marks as a word, so that the text needs no quotes inside.
func inchesInWords(s string) string {
	return strings.ReplaceAll(inchMark.ReplaceAllString(s, "$1 in"), `"`, "")
}

func zeroIfNone(digits string) string {
	if strings.Trim(digits, "0") == "" {
		return "0"
	}
	return ""
}

// headingText is for a line that begins with a bracket.
func headingText(line string) string {
	name, _, _ := strings.Cut(line, "#")
	name = strings.Trim(name, "[] \t")
	if name == "" {
		return `this heading has no name; write one such as [paper] or [[item]]`
	}
	write := "[" + name + "]"
	if strings.HasPrefix(line, "[[") {
		write = "[[" + name + "]]"
	}
	return fmt.Sprintf("this heading cannot be read; write %s on a line of its own", words.Shown(write))
}

// lineText is for a line that is neither a heading nor a key with a value.
func lineText(line string) string {
	if StartsFigure.MatchString(line) {
		return fmt.Sprintf(`%s needs quotes; write %s`, words.Quote(line), words.Quote(inchesInWords(strings.TrimRight(line, ", ]"))))
	}
	key, value, ok := strings.Cut(line, ":")
	if !ok {
		key, value, _ = strings.Cut(line, " ")
	}
	key, value = strings.TrimSpace(key), strings.Trim(strings.TrimSpace(value), `"`)
	if startsWord.MatchString(key) && keyAndValue.MatchString(key+"=") && value != "" && !strings.ContainsAny(value, `="`) {
		return fmt.Sprintf(`%s has no = after it; write %s = "%s"`, words.Shown(key), words.Shown(key), words.Shown(value))
	}
	return fmt.Sprintf(`%s cannot be read here; write key = "value", [table], or # before a remark`, words.Quote(line))
}
