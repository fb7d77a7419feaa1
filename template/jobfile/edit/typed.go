package edit

import (
	"strings"

	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// Source returns what someone typed into the blank of a key of a kind as TOML writes it: a text with
// quotes, a number without, a list with brackets, of what commas part. Where that cannot be what the
// key takes it becomes a text all the same: what is wrong with it is then for the check of the job to
// say. What is typed as TOML already, a list in its brackets, stays as it is. "" for nothing.
func Source(k keys.Kind, typed string) string {
	typed = strings.TrimSpace(typed)
	if typed == "" {
		return ""
	}
	if !k.Name() && strings.ContainsAny(typed[:1], "[{") && isValue(typed) {
		return typed
	}
	switch k.Form() {
	case keys.Bare:
		if isValue(typed) && typed[0] != '"' && typed[0] != '\'' {
			return typed
		}
	case keys.Listed:
		return listed(typed, ",")
	case keys.Matrix:
		var rows []string
		for _, row := range strings.Split(typed, ";") {
			rows = append(rows, listed(row, ","))
		}
		return "[" + strings.Join(rows, ", ") + "]"
	case keys.Edges:
		if strings.Contains(typed, ",") {
			return listed(typed, ",")
		}
	case keys.Swaps:
		return swaps(typed)
	}
	return words.TOML(typed)
}

// listed writes what a sign parts as a list of texts.
func listed(typed, sign string) string {
	var parts []string
	for _, part := range strings.Split(typed, sign) {
		if part = strings.TrimSpace(part); part != "" {
			parts = append(parts, words.TOML(part))
		}
	}
	return "[" + strings.Join(parts, ", ") + "]"
}

// swaps writes "moss = teal, ochre = sage" as a table in braces.
func swaps(typed string) string {
	var parts []string
	for _, part := range strings.Split(typed, ",") {
		from, to, ok := strings.Cut(part, "=")
		if from = strings.TrimSpace(from); !ok || from == "" {
			return words.TOML(typed)
		}
		parts = append(parts, spelled([]string{from})+" = "+words.TOML(strings.TrimSpace(to)))
	}
	if source := "{ " + strings.Join(parts, ", ") + " }"; isValue(source) {
		return source
	}
	return words.TOML(typed)
}

// Typed returns a value as it stands in the blank of a key of a kind, so that Source makes of it what
// says the same. Source is how it is written in the job, and stands where the blank has no plainer way.
func Typed(k keys.Kind, n *toml.Node, source string) string {
	if text, ok := typed(k, n); ok && text != "" {
		return text
	}
	return source
}

func typed(k keys.Kind, n *toml.Node) (string, bool) {
	switch form := k.Form(); {
	case n.Form == toml.Single:
		text, isText := n.Value.(string)
		if !isText {
			return n.Source, form == keys.Bare
		}
		return text, form == keys.Quoted || form == keys.Edges && !strings.Contains(text, ",") || form == keys.Bare && !isValue(text)
	case n.Form == toml.List && (form == keys.Listed || form == keys.Edges && len(n.Items) > 1):
		return parted(n.Items, ", ")
	case n.Form == toml.List && form == keys.Matrix:
		var rows []string
		for _, row := range n.Items {
			text, ok := parted(row.Items, ", ")
			if !ok || row.Form != toml.List {
				return "", false
			}
			rows = append(rows, text)
		}
		return strings.Join(rows, "; "), true
	case n.Form == toml.Table && form == keys.Swaps:
		var parts []string
		for _, from := range n.Order {
			to, ok := n.Keys[from].Value.(string)
			if !ok || strings.ContainsAny(from+to, `,="`) || strings.TrimSpace(from) != from || strings.TrimSpace(to) != to {
				return "", false
			}
			parts = append(parts, from+" = "+to)
		}
		return strings.Join(parts, ", "), true
	}
	return "", false
}

// parted writes texts one after the other; false where they would not come apart again.
func parted(items []*toml.Node, sign string) (string, bool) {
	var parts []string
	for _, n := range items {
		text, ok := n.Value.(string)
		if !ok || text == "" || strings.ContainsAny(text, `,;[{`) || strings.TrimSpace(text) != text {
			return "", false
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, sign), true
}
