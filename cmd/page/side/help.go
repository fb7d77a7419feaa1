package side

import (
	"underlay/template/jobfile/keys"
)

// HelpTable is a table of the job file, with its keys.
type HelpTable struct {
	Heading string    `json:"heading"` // "[[item.pass]]"; "the top of the file"
	Path    string    `json:"path"`    // "item.pass"
	Keys    []HelpKey `json:"keys"`
}

// HelpKey is a key of the job file.
type HelpKey struct {
	Name    string   `json:"name"`
	Kind    string   `json:"kind"`
	Says    string   `json:"says"`
	Must    bool     `json:"must"`
	Usual   string   `json:"usual"`
	Example string   `json:"example"` // as TOML writes it
	Words   []string `json:"words"`   // all it can be
	With    []string `json:"with"`    // the shapes, or repeats, with which it means something; none: it always does
}

// Help lists every key of a job file, table by table.
func Help() []HelpTable {
	var all []HelpTable
	var walk func(t *keys.KeyTree)
	walk = func(t *keys.KeyTree) {
		table := HelpTable{Heading: t.Heading(), Path: t.Path, Keys: []HelpKey{}}
		for _, name := range t.Order {
			k := t.Keys[name]
			table.Keys = append(table.Keys, HelpKey{name, string(k.Kind), k.Says(), k.Must(), k.Usual(), k.Example(), notNil(k.Words), notNil(k.With)})
		}
		all = append(all, table)
		for _, name := range t.Order {
			if below := t.Tables[name]; below != nil {
				walk(below)
			}
		}
	}
	walk(keys.NewKeyTree())
	return all
}
