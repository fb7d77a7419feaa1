package pdf

import (
	"bytes"
	"errors"
	"strings"
	"unicode/utf16"
)

// maxFile is the largest PDF that is looked into.
const maxFile = 1 << 30

// Recover brings back the file that a PDF carries inside: of one written by Write the
// document's attachment, of another the first it lists. The error says in plain words where
// the PDF is none, is locked, cut off or damaged, carries nothing, or has been saved again in
// a form not understood here.
func Recover(pdf []byte) (Attachment, error) {
	switch {
	case !bytes.HasPrefix(pdf, []byte("%PDF-")):
		return Attachment{}, errors.New("this is not a PDF file")
	case len(pdf) > maxFile:
		return Attachment{}, errors.New("this PDF is larger than 1 GiB, more than is read here")
	}
	f, err := openFile(pdf)
	if err != nil {
		return Attachment{}, err
	}
	if f.trailer.get("Encrypt") != nil {
		return Attachment{}, errLocked
	}
	catalog, err := f.dict(f.trailer.get("Root"))
	if err != nil {
		return Attachment{}, err
	}
	names, err := f.dict(catalog.get("Names"))
	if err != nil {
		return Attachment{}, err
	}
	specification, err := f.firstName(names.get("EmbeddedFiles"), 0)
	if err != nil {
		return Attachment{}, err
	}
	if specification == nil {
		return Attachment{}, errors.New("this PDF carries no file inside, or its end is missing; take one that underlay draw wrote, whole")
	}
	embedded, err := f.dict(specification.get("EF"))
	if err != nil {
		return Attachment{}, err
	}
	content, err := f.content(embedded.get("F"))
	if err != nil {
		return Attachment{}, err
	}
	return Attachment{Name: fileName(specification), Content: content}, nil
}

// firstName returns the value that comes first in a name tree (ISO 32000-1, 7.9.6), as a
// dictionary; nil where there is none.
func (f file) firstName(tree any, depth int) (dict, error) {
	node, err := f.dict(tree)
	if err != nil || depth > maxNesting {
		return nil, err
	}
	if names, ok := node.get("Names").(array); ok && len(names) > 1 {
		return f.dict(names[1])
	}
	if kids, ok := node.get("Kids").(array); ok && len(kids) > 0 {
		return f.firstName(kids[0], depth+1)
	}
	return nil, nil
}

// fileName returns the name in a file specification, without any folders.
func fileName(specification dict) string {
	s, ok := specification.get("UF").(text)
	if !ok {
		s, _ = specification.get("F").(text)
	}
	n := string(s)
	if rest, ok := strings.CutPrefix(n, "\xFE\xFF"); ok {
		var units []uint16
		for i := 0; i+1 < len(rest); i += 2 {
			units = append(units, uint16(rest[i])<<8|uint16(rest[i+1]))
		}
		n = string(utf16.Decode(units))
	}
	n = n[strings.LastIndexAny(n, `/\`)+1:]
	return strings.ToValidUTF8(n, "_")
}
