package jobfile

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

// tableLines is a job as lines below headings, so that lines can be put in and taken out.
type tableLines map[string][]string

func goodLines() tableLines {
	return tableLines{
		"":                    {`title = "Nook"`},
		"[paper]":             {`size = "A4"`},
		"[printer]":           {`across = "180 mm"`, `down = "250 mm"`},
		"[printing]":          {`hand = "right"`},
		"[[block]]":           {`name = "fern"`, `print = "40 x 40 mm"`, `wood = "48 x 48 mm"`},
		"[[item]]":            {`name = "cover"`, `size = "50 x 50 cm"`, `border = "25 mm"`},
		"[[item.keep-clear]]": {`name = "pocket"`, `at = "0 x 0 mm"`, `size = "20 x 20 mm"`},
		"[[item.pass]]":       {`block = "fern"`, `gap = "1 mm"`},
	}
}

// put adds a line below a heading, and takes out those of the same key and of other keys.
func (l tableLines) put(heading, line string, out ...string) {
	l[heading] = slices.DeleteFunc(l[heading], func(s string) bool {
		return lineKey(s) == lineKey(line) || slices.Contains(out, lineKey(s))
	})
	l[heading] = append(l[heading], line)
}

func lineKey(line string) string { return strings.TrimSpace(strings.SplitN(line, "=", 2)[0]) }

func (l tableLines) String() string {
	var b strings.Builder
	for _, h := range []string{"", "[paper]", "[printer]", "[printing]", "[[block]]", "[[item]]", "[[item.keep-clear]]", "[[item.pass]]"} {
		b.WriteString(h + "\n" + strings.Join(l[h], "\n") + "\n")
	}
	return b.String()
}

// TestUnknownKeys writes a key that is none, and then what its message says to write instead:
// the job is then good. Out are keys that go with the one that was written wrongly.
func TestUnknownKeys(t *testing.T) {
	word := regexp.MustCompile(`; write "([a-z-]+)"$`)
	line := regexp.MustCompile(`; write ([a-z-]+ = .*)$`)
	both := regexp.MustCompile(`; write both sides in one, as in (.*)$`)
	place := regexp.MustCompile(`; it belongs in (\[.*\])$`)
	for _, c := range []struct {
		in, line, want string
		out            []string
		so             string // the line to write, where the message leaves that to the maker
	}{
		{in: "[[item]]", line: `gap = "2 mm"`, want: `it belongs in [[item.pass]]`},
		{in: "[[item]]", line: `turns = ["90"]`, want: `it belongs in [[item.pass]]`},
		{in: "[[block]]", line: `border = "30 mm"`, want: `it belongs in [[item]]`},
		{in: "[[item.pass]]", line: `border = "30 mm"`, want: `it belongs in [[item]]`},
		{in: "[[item.pass]]", line: `quantity = 4`, want: `it belongs in [[item]]`},
		{in: "[paper]", line: `units = "cm"`, want: `it belongs at the top of the file, above all headings`},
		{in: "[paper]", line: `hand = "left"`, want: `it belongs in [printing]`},
		{in: "", line: `margin = "8 mm"`, want: `it belongs in [paper]`},

		{in: "", line: `name = "Corner"`, want: `write "title"`},
		{in: "", line: `unit = "cm"`, want: `write "units"`},
		{in: "[paper]", line: `format = "A3"`, want: `write "size"`},
		{in: "[paper]", line: `border = "8 mm"`, want: `write "margin"`},
		{in: "[printing]", line: `paint = "90 ml/m2"`, want: `write "paint-cover"`},
		{in: "[[block]]", line: `size = "30 x 30 mm"`, want: `write "print"`},
		{in: "[[block]]", line: `face = "30 x 30 mm"`, want: `write "print"`},
		{in: "[[block]]", line: `width = "30 mm"`, want: `write both sides in one, as in print = "90 x 60 mm"`, out: []string{"wood"}},
		{in: "[[block]]", line: `diameter = "30 mm"`, want: `write print, and shape = "round"`, so: "print = \"30 mm\"\nshape = \"round\""},
		{in: "[[block]]", line: `radius = "15 mm"`, want: `write print, twice the radius, and shape = "round"`, so: "print = \"30 mm\"\nshape = \"round\""},
		{in: "[[block]]", line: `offset = "0 x 2 mm"`, want: `write "wood-offset"`},
		{in: "[[block]]", line: `ink = 0.5`, want: `write "inked"`},
		{in: "[[item]]", line: `margin = "20 mm"`, want: `write "border"`},
		{in: "[[item]]", line: `count = 4`, want: `write "quantity"`},
		{in: "[[item]]", line: `Quantity = 4`, want: `write "quantity"`},
		{in: "[[item]]", line: `face = "front"`, want: `write faces = ["front"]`},
		{in: "[[item]]", line: `length = "60 cm"`, want: `write both sides in one, as in size = "50 x 60 cm"`},
		{in: "[[item.keep-clear]]", line: `position = "5 x 5 mm"`, want: `write "at"`},
		{in: "[[item.pass]]", line: `space = "2 mm"`, want: `write "gap"`},
		{in: "[[item.pass]]", line: `spacing = "2 mm"`, want: `write "gap"`},
		{in: "[[item.pass]]", line: `distance = "2 mm"`, want: `write "gap"`},
		{in: "[[item.pass]]", line: `overlap = "0.5 mm"`, want: `write "lap"`, out: []string{"gap"}},
		{in: "[[item.pass]]", line: `layout = "brick"`, want: `write "repeat"`},
		{in: "[[item.pass]]", line: `color = "moss"`, want: `write colours = ["moss"]`},
		{in: "[[item.pass]]", line: `colors = ["moss"]`, want: `write "colours"`},
		{in: "[[item.pass]]", line: `turn = "0 90"`, want: `write turns = ["0 90"]`},
		{in: "[[item.pass]]", line: `gap_across = "2 mm"`, want: `write "gap-across"`},
		{in: "[[item.pass]]", line: `margin = "30 mm"`, want: `write it as border in the [[item]]`},

		// Nothing has any of these names: all keys of the table are listed.
		{in: "[[item]]", line: `incline = "20 cm"`, want: `the keys of [[item]] are name, shape, size, `},
		{in: "[[item]]", line: `legs = 4`, want: `the keys of [[item]] are name, shape, size, `},
		{in: "[[item]]", line: `across = "50 cm"`, want: `the keys of [[item]] are name, shape, size, `},
		{in: "[[item.pass]]", line: `columns = 5`, want: `write "across"`},
		{in: "[[item.pass]]", line: `rows = 5`, want: `write "down"`},
		{in: "[[item.pass]]", line: `prints = 25`, want: `the keys of [[item.pass]] are name, block, blocks, `},
		{in: "[[item.pass]]", line: `ribbon = "fern"`, want: `the keys of [[item.pass]] are name, block, blocks, `},
		{in: "[[item.pass]]", line: `size = "5 cm"`, want: `the keys of [[item.pass]] are name, block, blocks, `},
	} {
		job := goodLines()
		job.put(c.in, c.line, c.out...)
		_, err := Read("nook.toml", []byte(job.String()))
		if err == nil {
			t.Errorf("%s %s is taken", c.in, c.line)
			continue
		}
		text := err.Error()
		if !strings.Contains(text, "; "+c.want) {
			t.Errorf("%s %s:\n%s\nwant: %s", c.in, c.line, text, c.want)
			continue
		}
		if strings.Contains(text, "the keys of") {
			continue
		}
		heading, write := c.in, c.so
		value := strings.TrimSpace(strings.SplitN(c.line, "=", 2)[1])
		if m := word.FindStringSubmatch(text); m != nil {
			write = m[1] + " = " + value
		} else if m := line.FindStringSubmatch(text); m != nil {
			write = m[1]
		} else if m := both.FindStringSubmatch(text); m != nil {
			write = m[1]
		} else if m := place.FindStringSubmatch(text); m != nil {
			heading, write = m[1], c.line
		} else if strings.Contains(text, "at the top of the file") {
			heading, write = "", c.line
		} else if strings.Contains(text, "border in the [[item]]") {
			heading, write = "[[item]]", "border = "+value
		}
		job = goodLines()
		out := append([]string{lineKey(c.line)}, c.out...)
		if heading != c.in {
			out = nil
		}
		job.put(heading, write, out...)
		if _, err := Read("nook.toml", []byte(job.String())); err != nil {
			t.Errorf("%s %s:\n%s\nand with that:\n%v", c.in, c.line, text, err)
		}
	}
}

// BenchmarkUnknownKeys reads a job of 16,000 keys that are none.
func BenchmarkUnknownKeys(b *testing.B) {
	job := goodLines()
	var text []byte
	for i := range 16000 {
		text = append(text, ("zebra" + plainLetters(i) + " = 1\n")...)
	}
	text = append(text, job.String()...)
	for b.Loop() {
		if _, err := Read("nook.toml", text); err == nil {
			b.Fatal("taken")
		}
	}
}

// plainLetters writes a number in letters.
func plainLetters(n int) string {
	s := ""
	for ; n > 0; n /= 26 {
		s += string(rune('a' + n%26))
	}
	return s
}
