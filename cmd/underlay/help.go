package main

import (
	"strings"

	"underlay/template/jobfile/keys"
	"underlay/template/words"
)

// help prints the manual, the help of a command, or that of the job file and its keys.
func (c *call) help(args []string) error {
	switch {
	case len(args) == 0:
		return c.print(manual)
	case len(args) > 1:
		return usage("help takes one command or key; write underlay help %s", args[0])
	}
	name := args[0]
	cmd, err := commandNamed(name)
	if err == nil {
		return cmd.run(c, []string{"--help"})
	}
	if name == "job" {
		return c.print(keys.HelpKeys())
	}
	if text, ok := keys.HelpKey(strings.Trim(name, "[]")); ok {
		return c.print(text)
	}
	if _, ok := words.Nearest(name, commandNames()); ok || strings.HasPrefix(name, "-") {
		return err
	}
	if near, ok := words.Nearest(name, append(keys.HelpNames(), "job")); ok {
		return usage("there is no command or key %q; write underlay help %s", name, near)
	}
	return usage("there is no command or key %q; underlay help shows the commands, underlay help job the keys", name)
}

func commandNames() []string {
	var names []string
	for _, cmd := range commands() {
		names = append(names, cmd.name)
	}
	return names
}
