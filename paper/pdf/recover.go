package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf16"
)

// Recover brings back the file of that name which a PDF of so many bytes carries inside; with the
// name "", the first it lists. It reads only what it needs, and nothing past the first bytes where
// those are no PDF's.
//
// The error says in plain words where the PDF is none, is locked, cut off or damaged, does not
// carry that file, or has been saved again in a form not understood here; or it is r's.
func Recover(r io.ReaderAt, size int64, want string) (Attachment, error) {
	head := make([]byte, len(magic))
	if n, err := r.ReadAt(head, 0); err != nil && err != io.EOF {
		return Attachment{}, err
	} else if !Begins(head[:n]) {
		return Attachment{}, errors.New("this is not a PDF file; write the name of a PDF that underlay drew")
	}
	f, err := openFile(r, size, maxRead)
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
	s := search{file: f, want: want}
	if err := s.in(names.get("EmbeddedFiles"), 0); err != nil {
		return Attachment{}, err
	}
	switch {
	case s.found == nil && s.others > 0:
		return Attachment{}, fmt.Errorf("this PDF carries no %s inside, only other files; take one that underlay draw wrote", want)
	case s.found == nil:
		return Attachment{}, errors.New("this PDF carries no file inside, or its end is missing; take one that underlay draw wrote, whole")
	}
	embedded, err := f.dict(s.found.get("EF"))
	if err != nil {
		return Attachment{}, err
	}
	content, err := f.content(embedded.get("F"))
	if err != nil {
		return Attachment{}, err
	}
	return Attachment{Name: fileName(s.found), Content: content}, nil
}

// magic is how a PDF file begins (ISO 32000-1, 7.5.2).
const magic = "%PDF-"

// Begins tells whether a file that begins so is a PDF.
func Begins(head []byte) bool { return bytes.HasPrefix(head, []byte(magic)) }

// Own tells whether a PDF says that it was made by Write.
func Own(r io.ReaderAt, size int64) bool {
	f, err := openFile(r, size, maxRead)
	if err != nil {
		return false
	}
	info, err := f.dict(f.trailer.get("Info"))
	return err == nil && info.get("Producer") == text(producer)
}

// search looks through a name tree (ISO 32000-1, 7.9.6) for the specification of a file.
type search struct {
	file   *file
	want   string
	found  dict
	others int // files of other names
	nodes  int
}

// maxNodes is the most nodes of a name tree that are looked at, and the most files.
const maxNodes = 10_000

func (s *search) in(tree any, depth int) error {
	if s.nodes++; depth > maxNesting || s.nodes > maxNodes {
		return errBroken
	}
	node, err := s.file.dict(tree)
	if err != nil {
		return err
	}
	names, _ := node.get("Names").(array)
	for i := 1; i < len(names) && s.found == nil && s.others < maxNodes; i += 2 {
		d, err := s.file.dict(names[i])
		if err != nil {
			return err
		}
		if s.want == "" || fileName(d) == s.want {
			s.found = d
		} else {
			s.others++
		}
	}
	kids, _ := node.get("Kids").(array)
	for _, kid := range kids {
		if s.found != nil {
			break
		}
		if err := s.in(kid, depth+1); err != nil {
			return err
		}
	}
	return nil
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
