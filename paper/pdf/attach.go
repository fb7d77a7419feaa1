package pdf

import (
	"crypto/md5"
	"slices"
	"strings"
)

// attach adds embedded files (ISO 32000-1, 7.11.4) and returns the name tree that lists them: one
// node, its names sorted by their bytes (7.9.6).
func (all *assembly) attach(files []Attachment) dict {
	files = slices.Clone(files)
	slices.SortStableFunc(files, func(a, b Attachment) int { return strings.Compare(textString(a.Name), textString(b.Name)) })
	all.whole = map[int]bool{}
	var names array
	for _, a := range files {
		names = append(names, text(textString(a.Name)), all.embed(a))
	}
	return dict{{"Names", names}}
}

// embed adds one file and returns its specification.
func (all *assembly) embed(a Attachment) ref {
	sum := md5.Sum(a.Content)
	d := dict{{"Type", name("EmbeddedFile")}}
	if a.Type != "" {
		d = append(d, member{"Subtype", nameOf(a.Type)})
	}
	d = append(d, member{"Params", dict{{"Size", len(a.Content)}, {"CheckSum", text(sum[:])}}})
	embedded := all.add(appendStream(nil, d, a.Content))
	if strings.HasPrefix(a.Type, "image/") { // packed as it comes
		all.whole[embedded.number] = true
	}
	return all.add(appendObject(nil, dict{
		{"Type", name("Filespec")},
		{"F", text(asciiName(a.Name))},
		{"UF", text(textString(a.Name))},
		{"EF", dict{{"F", embedded}, {"UF", embedded}}},
	}))
}

// nameOf returns a text of letters, figures, - and / as a name (ISO 32000-1, 7.3.5).
func nameOf(s string) name { return name(strings.ReplaceAll(s, "/", "#2F")) }

// asciiName returns a file's name for readers that know no other letters.
func asciiName(name string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return '_'
		}
		return r
	}, name)
}
