package keys

import (
	"fmt"
	"strings"

	"underlay/template/words"
)

// helpWidth is how many letters a line of help has at the most.
const helpWidth = 80

// HelpKeys lists every key of a job file, table by table: what it means, and what holds where it is
// not given.
func HelpKeys() string {
	var b strings.Builder
	tree := NewKeyTree()
	b.WriteString("Every key of a job file, by table. A length has its unit: \"90 mm\", \"2.5 cm\",\n\"3 1/2 in\"; a size is \"50 x 60 cm\". More of one: underlay help KEY.\n")
	tree.each(func(t *KeyTree) {
		b.WriteString("\n" + upperHeading(t) + "\n")
		for _, name := range t.Order {
			k := t.Keys[name]
			text := k.says
			if k.must {
				text += " It has to be there."
			}
			name = t.listed(name)
			if u := k.otherwise(); u != "" {
				text += " Unless given: " + u + "."
			}
			b.WriteString(column(name, text))
		}
	})
	return b.String()
}

// HelpKey says all there is to say of a key, in each table that has it, or of a table by its
// name; ok: there is one of that name.
func HelpKey(name string) (text string, ok bool) {
	var parts []string
	NewKeyTree().each(func(t *KeyTree) {
		if k, has := t.Keys[name]; has && (t.Tables[name] == nil || t.Tables[name].InList) {
			parts = append(parts, k.help(t))
		}
		if t.Path != "" && !t.InList && (t.Path == name || strings.HasSuffix(t.Path, "."+name)) {
			parts = append(parts, t.help())
		}
	})
	return strings.Join(parts, "\n"), len(parts) > 0
}

// HelpNames returns what HelpKey knows.
func HelpNames() []string {
	var names []string
	NewKeyTree().each(func(t *KeyTree) { names = append(names, t.Order...) })
	return names
}

// each calls f for a table and all below it, in order.
func (t *KeyTree) each(f func(*KeyTree)) {
	f(t)
	for _, name := range t.Order {
		if below := t.Tables[name]; below != nil {
			below.each(f)
		}
	}
}

// otherwise is what holds where a key is not given; "" where nothing does.
func (k key) otherwise() string {
	if k.usual == "" && len(k.Words) > 0 {
		return words.Quote(k.Words[0])
	}
	return k.usual
}

// help is the help of one key of a table.
func (k key) help(t *KeyTree) string {
	var b strings.Builder
	where := "in " + t.Heading()
	if t.Path == "" {
		where = "at the top of the file"
	}
	example := k.example
	if len(k.Words) > 0 {
		example = words.Quote(k.Words[len(k.Words)-1])
	}
	fmt.Fprintf(&b, "%s, %s: %s\n\n    %s = %s\n\n", k.name, where, k.Kind, k.name, example)
	say := func(text string) { b.WriteString(wrapped(text, helpWidth)) }
	say(k.says)
	if len(k.Words) > 0 {
		say("One of: " + words.OneOf(k.Words) + ".")
	}
	if k.must {
		say("It has to be there.")
	}
	if u := k.otherwise(); u != "" {
		say("Unless given: " + u + ".")
	}
	if below := t.Tables[k.name]; below != nil {
		b.WriteString("\n" + below.columns())
	}
	if len(k.With) > 0 {
		with := "With shape = " + words.OneOf(k.With)
		if t.Path == "item.pass" {
			with = "With repeat = " + words.OneOf(k.With)
		}
		if k.Seats {
			with += "; or with between"
		}
		say(with + ".")
	}
	return b.String()
}

// help is the help of a table: what it is, and its keys.
func (t *KeyTree) help() string {
	own := t.above.Keys[t.name()]
	return t.Heading() + ": " + string(own.Kind) + "\n\n" + wrapped(own.says, helpWidth) + "\n" + t.columns()
}

// columns lists the keys of the table, each with what it is.
func (t *KeyTree) columns() string {
	var b strings.Builder
	for _, key := range t.Order {
		b.WriteString(column(t.listed(key), t.Keys[key].says))
	}
	return b.String()
}

// listed is how a key of the table stands in a list of them: tables with their brackets.
func (t *KeyTree) listed(key string) string {
	if below := t.Tables[key]; below != nil && !below.InList {
		return below.Heading()
	}
	return key
}

func upperHeading(t *KeyTree) string {
	if t.Path == "" {
		return "At the top of the file"
	}
	return words.UpperFirst(t.Heading())
}

// column writes a name, and a text beside it.
func column(name, text string) string {
	const wide = 20
	lines := strings.SplitAfter(wrapped(text, helpWidth-wide), "\n")
	indent := strings.Repeat(" ", wide)
	out := fmt.Sprintf("  %-*s", wide-2, name)
	if len(name) > wide-3 {
		out = "  " + name + "\n" + indent
	}
	for i, l := range lines {
		if l == "" {
			continue
		}
		if i > 0 {
			out += indent
		}
		out += l
	}
	return out
}

// wrapped breaks a text into lines, each with an end.
func wrapped(text string, width int) string {
	var b strings.Builder
	used := 0
	for _, word := range strings.Fields(text) {
		n := len([]rune(word))
		switch {
		case used == 0:
		case used+1+n > width:
			b.WriteByte('\n')
			used = 0
		default:
			b.WriteByte(' ')
			used++
		}
		b.WriteString(word)
		used += n
	}
	return b.String() + "\n"
}
