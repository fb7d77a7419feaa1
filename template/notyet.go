package template

import "strings"

// unbuilt is one thing a job file can say that cannot be drawn yet. It goes when the thing
// is built.
type unbuilt struct {
	table string // path of the table: "", "item.pass"
	key   string
	value string // "": whatever is written there
	write string // what to write instead
}

// notYetBuilt lists all of them.
func notYetBuilt() []unbuilt {
	const out = "leave it out"
	return []unbuilt{
		{"", "printer", "", out},

		{"paper", "extent", "edges", `write "full"`},
		{"paper", "lines", "strong", `write "fine"`},

		{"printing", "seconds-a-print", "", out},
		{"printing", "seconds-a-colour", "", out},
		{"printing", "paint-cover", "", out},

		{"block", "shape", "round", `write "rectangle"`},
		{"block", "shape", "hexagon", `write "rectangle"`},
		{"block", "shape", "outline", `write "rectangle"`},
		{"block", "outline", "", out},
		{"block", "inked", "", out},

		{"item", "shape", "round", `write "rectangle"`},
		{"item", "shape", "outline", `write "rectangle"`},
		{"item", "shape", "drum", `write "rectangle"`},
		{"item", "shape", "cone", `write "rectangle"`},
		{"item", "outline", "", out},
		{"item", "diameter", "", out},
		{"item", "around", "", out},
		{"item", "top", "", out},
		{"item", "bottom", "", out},
		{"item", "height", "", out},
		{"item", "lap", "", out},
		{"item", "keep-clear", "", out},

		{"item.pass", "repeat", "brick", `write "straight"`},
		{"item.pass", "repeat", "half-drop", `write "straight"`},
		{"item.pass", "repeat", "honeycomb", `write "straight"`},
		{"item.pass", "repeat", "diagonal", `write "straight"`},
		{"item.pass", "repeat", "frame", `write "straight"`},
		{"item.pass", "repeat", "rings", `write "straight"`},
		{"item.pass", "step", "", out},
		{"item.pass", "grid-turn", "", out},
		{"item.pass", "turns", "", out},
		{"item.pass", "sides", "", out},
		{"item.pass", "tops", "", out},
		{"item.pass", "rings", "", out},
		{"item.pass", "between", "", out},
		{"item.pass", "open-edges", "", out},
		{"item.pass", "on", "", out},
		{"item.pass", "offset", "", out},
	}
}

// refuseUnbuilt reports everything in the file that is not built.
func (r *reader) refuseUnbuilt(root *node) {
	root.each(nil, func(path []string, n *node) {
		if len(path) == 0 || n.blamed {
			return
		}
		table, key := strings.Join(path[:len(path)-1], "."), path[len(path)-1]
		for _, u := range r.unbuilt {
			if u.table == table && u.key == key && (u.value == "" || u.value == strings.Trim(n.source, `"'`)) {
				n.blamed = true
				what := u.key
				if u.value != "" {
					what += " " + quote(u.value)
				}
				r.add(n.line, "", what+" is not yet built; "+u.write)
				return
			}
		}
	})
}
