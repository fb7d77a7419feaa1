package pdf

import (
	"bytes"
	"crypto/md5"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf16"
)

// Inside is what a PDF carries inside: files, by name.
type Inside struct {
	file  *file
	names []string // in the order listed
	specs map[string]dict
}

// Open looks for the files which a PDF of so many bytes carries inside, and reads no more of it than
// that takes; nothing past the first bytes where those are no PDF's.
//
// The error says in plain words where the PDF is none, is locked, cut off or damaged, carries nothing,
// or has been saved again in a form not understood here; or it is r's.
func Open(r io.ReaderAt, size int64) (*Inside, error) {
	head := make([]byte, len(magic))
	if n, err := r.ReadAt(head, 0); err != nil && err != io.EOF {
		return nil, err
	} else if !Begins(head[:n]) {
		return nil, errors.New("this is not a PDF file; write the name of a PDF that underlay drew")
	}
	f, err := openFile(r, size, maxRead)
	if err != nil {
		return nil, err
	}
	if f.trailer.get("Encrypt") != nil {
		return nil, errLocked
	}
	catalog, err := f.dict(f.trailer.get("Root"))
	if err != nil {
		return nil, err
	}
	names, err := f.dict(catalog.get("Names"))
	if err != nil {
		return nil, err
	}
	in := &Inside{file: f, specs: map[string]dict{}}
	nodes := 0
	if err := in.list(names.get("EmbeddedFiles"), 0, &nodes); err != nil {
		return nil, err
	}
	if len(in.names) == 0 {
		return nil, errors.New("this PDF carries no file inside, or its end is missing; take one that underlay draw wrote, whole")
	}
	return in, nil
}

// Names returns the names of the files, without folders, in the order listed.
func (in *Inside) Names() []string { return in.names }

// File returns the file of a name, of no more than most bytes. The error is a plain sentence, or that
// of the reader.
func (in *Inside) File(want string, most int) (Attachment, error) {
	spec, ok := in.specs[want]
	if !ok {
		return Attachment{}, fmt.Errorf("this PDF carries no %s inside, only other files; take one that underlay draw wrote", want)
	}
	embedded, err := in.file.dict(spec.get("EF"))
	if err != nil {
		return Attachment{}, err
	}
	d, content, err := in.file.stream(embedded.get("F"), most)
	if err != nil {
		return Attachment{}, err
	}
	params, err := in.file.dict(d.get("Params"))
	if err != nil {
		return Attachment{}, err
	}
	sum := md5.Sum(content)
	if said, ok := params.get("CheckSum").(text); ok && len(said) == len(sum) && string(said) != string(sum[:]) {
		return Attachment{}, errBroken
	}
	return Attachment{Name: want, Type: typeOf(d), Content: content}, nil
}

// typeOf returns the media type that the dictionary of an embedded file gives; "" where it gives none.
func typeOf(d dict) string {
	s, _ := d.get("Subtype").(name)
	return strings.ReplaceAll(strings.ReplaceAll(string(s), "#2F", "/"), "#2f", "/")
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

// maxNodes is the most nodes of a name tree that are looked at, and the most files.
const maxNodes = 10_000

// list lists the files of a name tree (ISO 32000-1, 7.9.6). Of several of one name the first counts.
func (in *Inside) list(tree any, depth int, nodes *int) error {
	if *nodes++; depth > maxNesting || *nodes > maxNodes {
		return errBroken
	}
	node, err := in.file.dict(tree)
	if err != nil {
		return err
	}
	names, _ := node.get("Names").(array)
	for i := 1; i < len(names) && len(in.names) < maxNodes; i += 2 {
		spec, err := in.file.dict(names[i])
		if err != nil {
			return err
		}
		n := fileName(spec)
		if _, listed := in.specs[n]; !listed {
			in.names, in.specs[n] = append(in.names, n), spec
		}
	}
	kids, _ := node.get("Kids").(array)
	for _, kid := range kids {
		if err := in.list(kid, depth+1, nodes); err != nil {
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
