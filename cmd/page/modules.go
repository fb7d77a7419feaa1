package main

import (
	"fmt"
	"regexp"
	"strings"
)

// The page's script is written as modules, one thing a file. A file opened from a stick can load no
// others, so they are joined into one: each becomes a function that is called once and gives what it
// exports, after those it imports.
var (
	importLine = regexp.MustCompile(`(?m)^import (\{[^}]*\}) from "\./([a-z]+)\.js";\n`)
	exported   = regexp.MustCompile(`(?m)^export (?:async function|function|class|const) (\w+)`)
	exportWord = regexp.MustCompile(`(?m)^export `)
)

// joinModules returns the modules of web/script that the one named needs, itself last.
func joinModules(name string) (string, error) {
	j := joiner{state: map[string]int{}}
	err := j.add(name)
	return j.out.String(), err
}

type joiner struct {
	out   strings.Builder
	state map[string]int // of each module met: 1 under way, 2 joined
}

func (j *joiner) add(name string) error {
	switch j.state[name] {
	case 1:
		return fmt.Errorf("script/%s.js needs itself", name)
	case 2:
		return nil
	}
	j.state[name] = 1
	text, err := web.ReadFile("web/script/" + name + ".js")
	if err != nil {
		return err
	}
	for _, found := range importLine.FindAllSubmatch(text, -1) {
		if err := j.add(string(found[2])); err != nil {
			return err
		}
	}
	body := importLine.ReplaceAllString(string(text), "const $1 = module_$2;\n")
	var names []string
	for _, found := range exported.FindAllStringSubmatch(body, -1) {
		names = append(names, found[1])
	}
	body = exportWord.ReplaceAllString(body, "")
	if strings.Contains(body, "\nimport ") || len(names) != len(exportWord.FindAll(text, -1)) {
		return fmt.Errorf("script/%s.js: write import { name } from \"./file.js\"; on a line, and export before a function, class or const", name)
	}
	fmt.Fprintf(&j.out, "const module_%s = (() => {\n%s\nreturn { %s };\n})();\n", name, body, strings.Join(names, ", "))
	j.state[name] = 2
	return nil
}
