package toml

import (
	"strings"
	"testing"

	"underlay/template/words"

	"github.com/google/go-cmp/cmp"
)

// TestBrokenFiles reads files that are no TOML: one message, on the line where it is broken.
func TestBrokenFiles(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"units = mm", `2: the value of units needs quotes; write units = "mm"`},
		{"border = 25 mm  # plain", `2: the value of border needs quotes; write border = "25 mm"`},
		{`size = 17 3/4"`, `2: the value of size needs quotes; write size = "17 3/4 in"`},
		{"hand = left", `2: the value of hand needs quotes; write hand = "left"`},
		{"title = true story", `2: the value of title needs quotes; write title = "true story"`},
		{`title = "Reading nook`, `2: a text is opened with a quote and not closed; close it with a quote on the same line`},
		{`title = 'Reading nook`, `2: a text is opened with a quote and not closed; close it with a quote on the same line`},
		{`title = """Reading nook`, `2: a text is opened with a quote and not closed; close it with a quote on the same line`},
		{`title = “Reading nook”`, `2: title has curved quotes; write straight ones: title = "Reading nook"`},
		{`size = "17 3/4""`, `2: the text of size ends at its second quote, and more follows; write inches as in "17 3/4 in"`},
		{`title = "Nook" and more`, `2: something follows the text of title; take it out, or put # before it`},
		{`title = "Nook\pocket"`, `2: a backslash (\) in a text means something else; write two of them (\\) or none`},
		{`title =`, `2: nothing stands after title =; write a value, or leave the line out`},
		{`title = # later`, `2: nothing stands after title =; write a value, or leave the line out`},
		{`title "Nook"`, `2: title has no = after it; write title = "Nook"`},
		{`title: "Nook"`, `2: title has no = after it; write title = "Nook"`},
		{`title`, `2: "title" cannot be read here; write key = "value", [table], or # before a remark`},
		{`= "Nook"`, `2: '= "Nook"' cannot be read here; write key = "value", [table], or # before a remark`},
		{`Size of the nook, in all`, `2: Size has no = after it; write Size = "of the nook, in all"`},
		{`[paper`, `2: this heading cannot be read; write [paper] on a line of its own`},
		{`[[item]`, `2: this heading cannot be read; write [[item]] on a line of its own`},
		{`[[]]`, `2: this heading has no name; write one such as [paper] or [[item]]`},
		{`[`, `2: this heading has no name; write one such as [paper] or [[item]]`},
		{`faces = ["front" "back"]`, `2: the list of faces is not closed, or lacks a comma; write it as in: ["one", "two"]`},
		{`faces = ["front"`, `2: the list of faces is not closed, or lacks a comma; write it as in: ["one", "two"]`},
		{`paper = {size = "A4"`, `2: the braces of paper are not closed, or lack a comma; write them as in: { across = "180 mm", down = "250 mm" }`},
		{`quantity = 06`, `2: quantity = 06 begins with a zero; write quantity = 6`},
		{`quantity = 00`, `2: quantity = 00 begins with a zero; write quantity = 0`},
		{"border = [\n  25 mm,\n]", `3: "25 mm," needs quotes; write "25 mm"`},
		{`- the nook`, `2: "- the nook" cannot be read here; write key = "value", [table], or # before a remark`},
		{"title = \"a\x01\"", `2: there is a character in this line that cannot be seen; type the line again`},
	} {
		_, problems := Parse([]byte("# Reading nook\n" + c.text + "\n"))
		if len(problems) != 1 {
			t.Errorf("%q: %d problems: %v", c.text, len(problems), problems)
			continue
		}
		p := problems[0]
		if d := cmp.Diff(c.want, words.PlainNumber(float64(p.Line))+": "+p.Text); d != "" {
			t.Errorf("%q:\n%s", c.text, d)
		}
	}
}

// TestTooDeep: what stands within more than anyone needs is refused, and not followed.
func TestTooDeep(t *testing.T) {
	for _, text := range []string{
		"x = " + strings.Repeat("[", 21) + strings.Repeat("]", 21),
		"x = " + strings.Repeat("{ a = ", 21) + "1" + strings.Repeat(" }", 21),
		"a" + strings.Repeat(".a", 20) + " = 1",
		"[a" + strings.Repeat(".a", 20) + "]\nb = 1",
	} {
		if _, problems := Parse([]byte(text)); len(problems) != 1 || problems[0].Line != 1 || !strings.Contains(problems[0].Text, "within each other") {
			t.Errorf("%q: %v", text, problems)
		}
	}
	if _, problems := Parse([]byte("x = " + strings.Repeat("[", 19) + "1" + strings.Repeat("]", 19))); len(problems) > 0 {
		t.Error(problems)
	}
}
