package pdf

import (
	"bufio"
	"bytes"
	"cmp"
	"compress/zlib"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
)

// assembly is a PDF file under way: the bodies of its objects, what stands between "obj" and
// "endobj", by number. There is no object 0.
type assembly struct {
	file   *file
	pdf    []byte // the skeleton
	bodies [][]byte
	whole  map[int]bool // streams, by number, that packing would make no smaller
}

// assemble takes the skeleton that fpdf made, puts the pages' contents in, and adds what fpdf
// cannot write: that it is to be printed without scaling (ISO 32000-1, 12.2), the user units
// of the sheets that need one, and the attachments.
func assemble(pdf []byte, files []Attachment, leaves []leaf, contents [][]byte, looks []look) (*assembly, error) {
	f, err := openFile(bytes.NewReader(pdf), int64(len(pdf)), math.MaxInt64)
	if err != nil {
		return nil, err
	}
	bodies, err := f.bodies(pdf)
	if err != nil {
		return nil, err
	}
	root, ok := f.trailer.get("Root").(ref)
	if !ok {
		return nil, errors.New("the trailer has no Root")
	}
	catalog, err := f.dict(root)
	if err != nil {
		return nil, err
	}
	all := &assembly{file: f, pdf: pdf, bodies: bodies}
	catalog = catalog.with("ViewerPreferences", dict{{"PrintScaling", name("None")}}).with("Names", dict{})
	if len(files) > 0 {
		catalog = catalog.with("Names", dict{{"EmbeddedFiles", all.attach(files)}})
	}
	all.bodies[root.number] = appendObject(nil, catalog)
	if err := all.fill(catalog, leaves, contents, looks); err != nil {
		return nil, err
	}
	return all, all.pack()
}

// bodies returns the body of every object of a file, the bytes of which are pdf.
func (f *file) bodies(pdf []byte) ([][]byte, error) {
	n, ok := whole(f.trailer.get("Size"))
	if !ok || n < 1 || n > len(pdf) {
		return nil, errors.New("the trailer has no Size")
	}
	type place struct{ number, offset int }
	var places []place
	for number := 1; number < n; number++ {
		if e, ok := f.spot(number); ok {
			places = append(places, place{number, e.offset})
		}
	}
	slices.SortFunc(places, func(a, b place) int { return cmp.Compare(a.offset, b.offset) })
	bodies := make([][]byte, n)
	for i, at := range places {
		end := bytes.LastIndex(pdf, []byte("xref\n0 "))
		if i+1 < len(places) {
			end = places[i+1].offset
		}
		if at.offset > end || end > len(pdf) {
			return nil, errBroken
		}
		body, ok := bytes.CutPrefix(pdf[at.offset:end], fmt.Appendf(nil, "%d 0 obj\n", at.number))
		last := bytes.LastIndex(body, []byte("\nendobj"))
		if !ok || last < 0 {
			return nil, errBroken
		}
		bodies[at.number] = body[:last]
	}
	return bodies, nil
}

// add adds an object and returns the reference to it.
func (all *assembly) add(body []byte) ref {
	all.bodies = append(all.bodies, body)
	return ref{number: len(all.bodies) - 1}
}

// fill gives the pages their contents and, where they need one, a user unit other than 1; and
// it names faces and forms as the contents do.
func (all *assembly) fill(catalog dict, leaves []leaf, contents [][]byte, looks []look) error {
	pages, err := all.file.dict(catalog.get("Pages"))
	if err != nil {
		return err
	}
	kids, _ := pages.get("Kids").(array)
	if len(kids) != len(leaves) {
		return errors.New("the pages are not listed one by one")
	}
	var resources ref // of all pages
	for i, s := range leaves {
		kid, ok := kids[i].(ref)
		page, err := all.file.dict(kid)
		if err != nil || !ok {
			return errors.New("a page is not where the list of pages says")
		}
		content, ok := page.get("Contents").(ref)
		if resources, _ = page.get("Resources").(ref); !ok || resources.number == 0 {
			return errors.New("a page has no contents or no resources")
		}
		all.bodies[content.number] = contents[i]
		if s.unit() != 1 {
			all.bodies[kid.number] = appendObject(nil, page.with("UserUnit", s.unit()))
		}
	}
	return all.name(resources, looks)
}

// name names the faces and the forms among the pages' resources.
func (all *assembly) name(resources ref, looks []look) error {
	found, err := all.file.dict(resources)
	if err != nil {
		return err
	}
	fonts, err := all.file.dict(found.get("Font"))
	if err != nil {
		return err
	}
	var named dict
	for _, m := range fonts {
		font, err := all.file.dict(m.value)
		if err != nil {
			return err
		}
		base, _ := font.get("BaseFont").(name)
		face := fontName(strings.HasSuffix(string(base), fontName(true)))
		named = append(named, member{name(face), m.value})
	}
	found = found.with("Font", named)
	if len(looks) > 0 {
		var forms dict
		z := newDeflater()
		for i, l := range looks {
			forms = append(forms, member{name(formName(i)), all.add(l.stream(z))})
		}
		found = found.with("XObject", forms)
	}
	all.bodies[resources.number] = appendObject(nil, found)
	return nil
}

// pack compresses the streams that are not so yet.
func (all *assembly) pack() error {
	z := newDeflater()
	for number, body := range all.bodies {
		if all.whole[number] || !bytes.HasSuffix(body, []byte("endstream")) {
			continue
		}
		packed, err := all.packed(body, z)
		if err != nil {
			return err
		}
		all.bodies[number] = packed
	}
	return nil
}

// packed returns a stream with its content compressed.
func (all *assembly) packed(body []byte, z *deflater) ([]byte, error) {
	p := &parser{b: body}
	o, err := p.object(0)
	d, ok := o.(dict)
	if err != nil || !ok {
		return nil, errBroken
	}
	if d.get("Filter") != nil {
		return body, nil
	}
	size, _, err := all.file.object(d.get("Length"))
	if err != nil {
		return nil, err
	}
	n, ok := whole(size)
	if !ok || !p.streamFollows() || n > len(body)-p.pos {
		return nil, errBroken
	}
	return z.stream(d, body[p.pos:p.pos+n]), nil
}

// deflater makes compressed streams (ISO 32000-1, 7.4.4). It is large, and made to be used
// again.
type deflater struct {
	z   *zlib.Writer
	out bytes.Buffer
}

// packing is how hard streams are packed: harder takes a quarter longer to draw, and saves 2 in 100.
const packing = 4

func newDeflater() *deflater {
	z, _ := zlib.NewWriterLevel(io.Discard, packing) // a level that exists
	return &deflater{z: z}
}

// stream returns a stream of that content; d tells all else of it.
func (f *deflater) stream(d dict, content []byte) []byte {
	f.out.Reset()
	f.z.Reset(&f.out)
	f.z.Write(content) // a bytes.Buffer takes everything
	f.z.Close()
	return appendStream(nil, append(dict{{"Filter", name("FlateDecode")}}, d...), f.out.Bytes())
}

// appendStream writes a stream; d tells all of it but the length.
func appendStream(b []byte, d dict, content []byte) []byte {
	b = slices.Grow(b, len(content)+200)
	b = append(appendObject(b, d.with("Length", len(content))), "\nstream\n"...)
	return append(append(b, content...), "\nendstream"...)
}

// write writes the file: its objects, the table of where they are, and the trailer
// (ISO 32000-1, 7.5). PrintScaling and UserUnit are from PDF 1.6 on.
func (all *assembly) write(to io.Writer) error {
	w := &tally{w: bufio.NewWriterSize(to, 1<<16)}
	fmt.Fprint(w, "%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
	var table bytes.Buffer
	for number, body := range all.bodies {
		if body == nil {
			table.WriteString("0000000000 65535 f \n")
			continue
		}
		fmt.Fprintf(&table, "%010d 00000 n \n", w.n)
		fmt.Fprintf(w, "%d 0 obj\n%s\nendobj\n", number, body)
	}
	start := w.n
	fmt.Fprintf(w, "xref\n0 %d\n%strailer\n", len(all.bodies), table.Bytes())
	trailer := appendObject(nil, all.file.trailer.with("Size", len(all.bodies)))
	fmt.Fprintf(w, "%s\nstartxref\n%d\n%%%%EOF\n", trailer, start)
	return w.w.Flush()
}

// tally counts what is written through it. An error shows when it is flushed.
type tally struct {
	w *bufio.Writer
	n int
}

func (t *tally) Write(b []byte) (int, error) {
	n, err := t.w.Write(b)
	t.n += n
	return n, err
}
