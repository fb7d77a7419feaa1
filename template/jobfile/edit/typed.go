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
// say. What is typed as TOML already, a list in its brackets or a text in its quotes, stays as it is, but
// for names, which may hold any sign. "" for nothing.
func Source(k keys.Kind, typed string) string {
	bare := strings.TrimSpace(typed)
	switch {
	case bare == "":
		return ""
	case k.Name():
		return words.TOML(typed)
	case strings.ContainsAny(bare[:1], `[{"'`) && isValue(bare):
		return bare
	}
	typed = bare
	switch k.Form() {
	case keys.Bare:
		if isValue(typed) {
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
	text := typed(k, n)
	if text == "" {
		return source
	}
	again, problems := toml.Parse([]byte("x = " + Source(k, text)))
	if x := again.Keys["x"]; len(problems) > 0 || x == nil || !alike(n, x) {
		return source
	}
	return text
}

// typed is the plainest way to type a value.
func typed(k keys.Kind, n *toml.Node) string {
	switch form := k.Form(); {
	case n.Form == toml.Single:
		if text, isText := n.Value.(string); isText {
			return text
		}
		return n.Source
	case n.Form == toml.List && form == keys.Matrix:
		var rows []string
		for _, row := range n.Items {
			rows = append(rows, parted(row.Items))
		}
		return strings.Join(rows, "; ")
	case n.Form == toml.List && (form == keys.Listed || form == keys.Edges):
		return parted(n.Items)
	case n.Form == toml.Table && form == keys.Swaps:
		var parts []string
		for _, from := range n.Order {
			parts = append(parts, from+" = "+said(n.Keys[from]))
		}
		return strings.Join(parts, ", ")
	}
	return ""
}

// parted writes texts one after the other.
func parted(items []*toml.Node) string {
	var parts []string
	for _, n := range items {
		parts = append(parts, said(n))
	}
	return strings.Join(parts, ", ")
}

// alike tells whether two values say the same.
func alike(a, b *toml.Node) bool {
	if a.Form != b.Form || len(a.Items) != len(b.Items) || len(a.Order) != len(b.Order) || a.Value != b.Value {
		return false
	}
	for i := range a.Items {
		if !alike(a.Items[i], b.Items[i]) {
			return false
		}
	}
	for key, n := range a.Keys {
		if other := b.Keys[key]; other == nil || !alike(n, other) {
			return false
		}
	}
	return true
}
