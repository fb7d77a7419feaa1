package paper

import (
	"bytes"
	"compress/zlib"
	"crypto/md5"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// update gathers objects to add to a PDF file, or to put in the place of older ones, by an
// incremental update: they follow the file, and a table of their own refers back to its
// (ISO 32000-1, 7.5.6).
type update struct {
	file    pdfFile
	next    int // the least number free
	objects []numbered
}

type numbered struct {
	number int
	body   []byte
}

// set puts o in the place of an object.
func (u *update) set(number int, o any) {
	u.objects = append(u.objects, numbered{number, appendObject(nil, o)})
}

// add adds an object and returns the reference to it.
func (u *update) add(body []byte) pdfRef {
	u.objects = append(u.objects, numbered{u.next, body})
	u.next++
	return pdfRef{number: u.next - 1}
}

// bytes returns the file with the update.
func (u *update) bytes() []byte {
	slices.SortFunc(u.objects, func(a, b numbered) int { return a.number - b.number })
	out := u.file.data
	var table bytes.Buffer
	for i, o := range u.objects {
		if i == 0 || o.number != u.objects[i-1].number+1 {
			run := 1
			for i+run < len(u.objects) && u.objects[i+run].number == o.number+run {
				run++
			}
			fmt.Fprintf(&table, "%d %d\n", o.number, run)
		}
		fmt.Fprintf(&table, "%010d 00000 n \n", len(out))
		out = fmt.Appendf(out, "%d 0 obj\n%s\nendobj\n", o.number, o.body)
	}
	start := len(out)
	trailer := u.file.trailer.with("Size", u.next).with("Prev", u.file.tables[0])
	out = fmt.Appendf(out, "xref\n%strailer\n", table.Bytes())
	return fmt.Appendf(appendObject(out, trailer), "\nstartxref\n%d\n%%%%EOF\n", start)
}

// amend adds to a PDF what fpdf cannot write: that it is to be printed without scaling
// (ISO 32000-1, 12.2), the user units of the sheets that need one, and the attachment.
func amend(pdf []byte, a Attachment, leaves []leaf) ([]byte, error) {
	f, err := openFile(pdf)
	if err != nil {
		return nil, err
	}
	size, _ := f.trailer.get("Size").(pdfWord)
	next, err := strconv.Atoi(string(size))
	root, ok := f.trailer.get("Root").(pdfRef)
	if err != nil || !ok {
		return nil, errors.New("the trailer has no Size or no Root")
	}
	catalog, err := f.dict(root)
	if err != nil {
		return nil, err
	}
	u := &update{file: f, next: next}
	// PrintScaling is from PDF 1.6 on, as is UserUnit; fpdf's file calls itself 1.3.
	catalog = catalog.with("Version", pdfName("1.7")).
		with("ViewerPreferences", pdfDict{{"PrintScaling", pdfName("None")}}).
		with("Names", pdfDict{})
	if a.Name != "" {
		catalog = catalog.with("Names", pdfDict{{"EmbeddedFiles", u.attach(a)}})
	}
	u.set(root.number, catalog)
	if err := u.setUserUnits(catalog, leaves); err != nil {
		return nil, err
	}
	return u.bytes(), nil
}

// attach adds an embedded file (ISO 32000-1, 7.11.4) and returns the name tree that lists it.
func (u *update) attach(a Attachment) pdfDict {
	var packed bytes.Buffer
	z := zlib.NewWriter(&packed)
	z.Write(a.Content) // a bytes.Buffer takes everything
	z.Close()
	sum := md5.Sum(a.Content)
	stream := appendObject(nil, pdfDict{
		{"Type", pdfName("EmbeddedFile")},
		{"Filter", pdfName("FlateDecode")},
		{"Length", packed.Len()},
		{"Params", pdfDict{{"Size", len(a.Content)}, {"CheckSum", pdfText(sum[:])}}},
	})
	stream = fmt.Appendf(stream, "\nstream\n%s\nendstream", packed.Bytes())
	embedded := u.add(stream)
	specification := u.add(appendObject(nil, pdfDict{
		{"Type", pdfName("Filespec")},
		{"F", pdfText(asciiName(a.Name))},
		{"UF", pdfText(textString(a.Name))},
		{"EF", pdfDict{{"F", embedded}, {"UF", embedded}}},
	}))
	return pdfDict{{"Names", pdfArray{pdfText(asciiName(a.Name)), specification}}}
}

// asciiName returns a file's name for readers that know no other letters.
func asciiName(name string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return '_'
		}
		return r
	}, name)
}

// setUserUnits gives the pages of the sheets that need it a user unit other than 1.
func (u *update) setUserUnits(catalog pdfDict, leaves []leaf) error {
	pages, err := u.file.dict(catalog.get("Pages"))
	if err != nil {
		return err
	}
	kids, _ := pages.get("Kids").(pdfArray)
	if len(kids) != len(leaves) {
		return errors.New("the pages are not listed one by one")
	}
	for i, s := range leaves {
		if s.unit() == 1 {
			continue
		}
		kid, ok := kids[i].(pdfRef)
		page, err := u.file.dict(kid)
		if err != nil || !ok {
			return errors.New("a page is not where the list of pages says")
		}
		u.set(kid.number, page.with("UserUnit", s.unit()))
	}
	return nil
}
