package jobfile

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"underlay/paper"
	"underlay/template/job"
	"underlay/template/words"
)

// exampleInk is a colour as messages write one.
const exampleInk = "#5f7a3a"

// checkPaints reads every [[paint]].
func checkPaints(s section) []job.Paint {
	var paints []job.Paint
	lines := map[string]int{}
	for _, t := range s.run("paint") {
		t, name := t.named("paint", "moss", lines)
		t.needs("looks", words.Quote(exampleInk))
		e := t.key("looks")
		text, ok := e.colour()
		if !ok {
			continue
		}
		ink, ok := paper.ParseInk(text)
		if !ok {
			e.say("%s", noInk(text))
			continue
		}
		paints = append(paints, job.Paint{Name: name, Looks: ink, Line: t.node.Line})
	}
	return paints
}

// colour reads the text of a colour.
func (e entry) colour() (string, bool) {
	if v := e.value(); v != nil {
		if _, text := v.(string); !text {
			e.wrongKind(words.Quote(exampleInk))
			return "", false
		}
	}
	return e.text(exampleInk)
}

var (
	bareHex = regexp.MustCompile(`^(?:0x)?([0-9a-f]{6}|[0-9a-f]{3})$`)
	seeHex  = regexp.MustCompile(`^#([0-9a-f]{6})[0-9a-f]{2}$|^#([0-9a-f]{3})[0-9a-f]$`)
	rgbInk  = regexp.MustCompile(`^rgba?\(\s*([0-9]{1,3})[\s,]+([0-9]{1,3})[\s,]+([0-9]{1,3})\s*\)$`)
)

// noInk says of a text that it is no colour, and what to write.
func noInk(text string) string {
	shown, plain := words.Quote(text), strings.ToLower(strings.TrimSpace(text))
	if m := bareHex.FindStringSubmatch(plain); m != nil {
		return fmt.Sprintf("%s has no # before it; write %s", shown, words.Quote("#"+m[1]))
	}
	if m := seeHex.FindStringSubmatch(plain); m != nil {
		return fmt.Sprintf("%s has figures for how much shows through, and looks takes none; write %s", shown, words.Quote("#"+m[1]+m[2]))
	}
	if strings.HasPrefix(plain, "#") {
		return fmt.Sprintf("%s is no colour: after # come three or six figures, each 0 to 9 or a to f; write it such as %s", shown, words.Quote(exampleInk))
	}
	if ink, ok := parseRGB(plain); ok {
		return fmt.Sprintf("%s is written another way here; write %s", shown, words.Quote(ink.String()))
	}
	if near, ok := words.Nearest(strings.ReplaceAll(plain, " ", ""), paper.InkNames()); ok {
		return fmt.Sprintf("CSS has no colour %s; write %s", shown, words.Quote(near))
	}
	return fmt.Sprintf(`%s is no colour; write red, green and blue such as %s, or a colour that CSS has a name for, such as "olive"`,
		shown, words.Quote(exampleInk))
}

// parseRGB reads rgb(95, 122, 58).
func parseRGB(text string) (paper.Ink, bool) {
	m := rgbInk.FindStringSubmatch(text)
	if m == nil {
		return paper.Ink{}, false
	}
	var rgb [3]uint8
	for i, figures := range m[1:] {
		n, err := strconv.ParseUint(figures, 10, 8)
		if err != nil {
			return paper.Ink{}, false
		}
		rgb[i] = uint8(n)
	}
	return paper.Ink{R: rgb[0], G: rgb[1], B: rgb[2]}, true
}

// checkPaintNames refuses a paint whose name is nearly that of a colour which has no paint, and that of
// none itself: a slip. Others that nothing names stand ready on the shelf.
func checkPaintNames(s section, j *job.Job) {
	run, named := s.run("paint"), j.Colours()
	painted := func(colour string) bool {
		return slices.ContainsFunc(run, func(t section) bool { return t.key("name").value() == colour })
	}
	without := slices.DeleteFunc(slices.Clone(named), painted)
	for _, t := range run {
		e := t.key("name")
		name, text := e.value().(string)
		if !text || slices.Contains(named, name) {
			continue
		}
		if near, ok := words.Nearest(name, without); ok {
			e.say("no pass or colourway names %s; write %s, or take this paint out", words.Quote(name), words.Quote(near))
		}
	}
}
