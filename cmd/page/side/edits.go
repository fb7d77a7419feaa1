package side

import (
	"underlay/template/jobfile/edit"
	"underlay/template/jobfile/keys"
)

// Set returns the text with a value changed as it is typed, added where it is not there, or with
// "" taken away; a number one past the last of a list adds to it. A name by which other places of
// the job go is changed there too. All else of the text stays as it is. The value may be one
// that the job then refuses: that is for Look to say. The error says why there is no such place, or
// that the text is no TOML; the text then comes back as it was.
func (s *Side) Set(text, path, value string) (string, error) {
	p, err := edit.ParsePath(path)
	if err != nil {
		return text, err
	}
	tree, err := treeOf(text)
	if err != nil {
		return text, err
	}
	if there := edit.Find(tree.Root, p); edit.Names(p) && there != nil && value != "" {
		return edit.Rename(text, p, value)
	}
	return edit.Set(text, p, edit.Source(kindOf(p), value))
}

// kindOf is the kind of what is at a path; of one of a list it is a text.
func kindOf(p edit.Path) keys.Kind {
	table, name := p[:len(p)-1], p[len(p)-1]
	if tree := edit.Tree(keys.NewKeyTree(), table); tree != nil {
		return tree.Keys[name].Kind
	}
	return ""
}

// Remove returns the text without what is at a path: a value, one of a list, or a whole table: a block,
// an item, a pass, a zone, a paint, a colourway, a placed print. Errors as those of Set.
func (s *Side) Remove(text, path string) (string, error) {
	p, err := edit.ParsePath(path)
	if err != nil {
		return text, err
	}
	if _, err := treeOf(text); err != nil {
		return text, err
	}
	return edit.Remove(text, p)
}

// Apply makes edits one after the other, as Set does; taking away what is not there is none.
func (s *Side) Apply(text string, edits []Edit) (string, error) {
	out := text
	for _, e := range edits {
		if e.Value == "" {
			p, err := edit.ParsePath(e.Path)
			if err != nil {
				return text, err
			}
			tree, err := treeOf(out)
			if err != nil {
				return text, err
			}
			if edit.Find(tree.Root, p) == nil {
				continue
			}
		}
		var err error
		if out, err = s.Set(out, e.Path, e.Value); err != nil {
			return text, err
		}
	}
	return out, nil
}
