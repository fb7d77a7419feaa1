package jobfile

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
	tree := newKeyTree()
	b.WriteString("Every key of a job file, by table. A length has its unit: \"90 mm\", \"2.5 cm\",\n\"3 1/2 in\"; a size is \"50 x 60 cm\". More of one: underlay help KEY.\n")
	tree.each(func(t *keyTree) {
		b.WriteString("\n" + upperHeading(t) + "\n")
		for _, name := range t.order {
			k := t.keys[name]
			text := k.says
			if k.must {
				text += " It has to be there."
			}
			if t.tables[name] != nil {
				name = t.tables[name].heading()
			}
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
	newKeyTree().each(func(t *keyTree) {
		if k, has := t.keys[name]; has && t.tables[name] == nil {
			parts = append(parts, k.help(t))
		}
		if t.path != "" && (t.path == name || strings.HasSuffix(t.path, "."+name)) {
			parts = append(parts, t.help())
		}
	})
	return strings.Join(parts, "\n"), len(parts) > 0
}

// HelpNames returns what HelpKey knows.
func HelpNames() []string {
	var names []string
	newKeyTree().each(func(t *keyTree) { names = append(names, t.order...) })
	return names
}

// each calls f for a table and all below it, in order.
func (t *keyTree) each(f func(*keyTree)) {
	f(t)
	for _, name := range t.order {
		if below := t.tables[name]; below != nil {
			below.each(f)
		}
	}
}

// otherwise is what holds where a key is not given; "" where nothing does.
func (k key) otherwise() string {
	if k.usual == "" && len(k.words) > 0 {
		return words.Quote(k.words[0])
	}
	return k.usual
}

// help is the help of one key of a table.
func (k key) help(t *keyTree) string {
	var b strings.Builder
	where := "in " + t.heading()
	if t.path == "" {
		where = "at the top of the file"
	}
	example := k.example
	if len(k.words) > 0 {
		example = words.Quote(k.words[len(k.words)-1])
	}
	fmt.Fprintf(&b, "%s, %s: %s\n\n    %s = %s\n\n", k.name, where, k.kind, k.name, example)
	say := func(text string) { b.WriteString(wrapped(text, helpWidth)) }
	say(k.says)
	if len(k.words) > 0 {
		say("One of: " + words.OneOf(k.words) + ".")
	}
	if k.must {
		say("It has to be there.")
	}
	if u := k.otherwise(); u != "" {
		say("Unless given: " + u + ".")
	}
	if len(k.with) > 0 {
		with := "With shape = " + words.OneOf(k.with)
		if t.path == "item.pass" {
			with = "With repeat = " + words.OneOf(k.with)
		}
		if k.seats {
			with += "; or with between"
		}
		say(with + ".")
	}
	return b.String()
}

// help is the help of a table: what it is, and its keys.
func (t *keyTree) help() string {
	name := t.path[strings.LastIndex(t.path, ".")+1:]
	var b strings.Builder
	b.WriteString(t.heading() + ": " + string(t.above.keys[name].kind) + "\n\n")
	b.WriteString(wrapped(t.above.keys[name].says, helpWidth) + "\n")
	for _, key := range t.order {
		says := t.keys[key].says
		if below := t.tables[key]; below != nil {
			key = below.heading()
		}
		b.WriteString(column(key, says))
	}
	return b.String()
}

func upperHeading(t *keyTree) string {
	if t.path == "" {
		return "At the top of the file"
	}
	return t.heading()
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
