package pdf

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"underlay/geometry"
	"underlay/paper"
	"underlay/testdata/pdfread"
)

var onlyPage = pages(paper.Page{Size: geometry.Size{W: 50, H: 50}})

// most is larger than any file here.
const most = 1 << 20

// recoverFirst recovers the first file of a PDF in memory.
func recoverFirst(pdf []byte) (Attachment, error) {
	in, err := Open(bytes.NewReader(pdf), int64(len(pdf)))
	if err != nil {
		return Attachment{}, err
	}
	return in.File(in.Names()[0], most)
}

func TestAttachmentComesBack(t *testing.T) {
	for _, a := range []Attachment{
		{"nook.toml", "application/toml", []byte("title = \"Reading nook\"\n")},
		{"empty.toml", "", []byte{}},
		{"Lesekissen №1 🌿 (2).toml", "", []byte("\xEF\xBB\xBFa = 1\r\n%%EOF\nendstream endobj\nstartxref 7\n")},
		{"large.toml", "", bytes.Repeat([]byte("fern pebble wave acorn\n"), 5_000)},
	} {
		pdf := write(t, Document{Attachments: []Attachment{a}, Parts: onlyPage})
		got, err := recoverFirst(pdf)
		if err != nil {
			t.Errorf("%s: %v", a.Name, err)
		} else if d := cmp.Diff(a, got); d != "" {
			t.Errorf("%s: %s", a.Name, d)
		}
		if d := cmp.Diff([]pdfread.Attachment{{Name: a.Name, Content: a.Content}}, pdfread.Open(t, pdf).Attachments()); d != "" && len(a.Content) > 0 {
			t.Errorf("pdfium: %s", d)
		}
		list, err := api.ExtractAttachmentsRaw(bytes.NewReader(pdf), "", nil, pdfread.Config())
		if err != nil || len(list) != 1 {
			t.Errorf("pdfcpu: %v, %v", list, err)
			continue
		}
		content, err := io.ReadAll(list[0])
		if err != nil || !bytes.Equal(content, a.Content) || list[0].FileName != a.Name {
			t.Errorf("pdfcpu has %s with %d bytes, want %s with %d", list[0].FileName, len(content), a.Name, len(a.Content))
		}
	}
}

func TestRecoverSaysWhatIsWrong(t *testing.T) {
	job := Attachment{Name: "nook.toml", Content: []byte("title = \"Reading nook\"\n")}
	pdf := write(t, Document{Attachments: []Attachment{job}, Parts: onlyPage})
	resaved := func(change func(*model.Configuration), save func(rs io.ReadSeeker, w io.Writer, conf *model.Configuration) error) []byte {
		conf := pdfread.Config()
		change(conf)
		var out bytes.Buffer
		if err := save(bytes.NewReader(pdf), &out, conf); err != nil {
			t.Fatal(err)
		}
		return out.Bytes()
	}
	plain := func(c *model.Configuration) { c.WriteObjectStream, c.WriteXRefStream = false, false }
	streams := func(*model.Configuration) {}
	locked := func(c *model.Configuration) { plain(c); c.UserPW, c.OwnerPW = "fern", "acorn" }
	at := bytes.LastIndex(pdf, []byte("/EmbeddedFile\n"))

	for name, c := range map[string]struct {
		pdf  []byte
		want string // "": it comes back
	}{
		"as written":         {pdf, ""},
		"saved again":        {resaved(plain, api.Optimize), ""},
		"saved with streams": {resaved(streams, api.Optimize), ""},
		"locked":             {resaved(locked, api.Encrypt), "password"},
		"owner's lock":       {resaved(func(c *model.Configuration) { c.OwnerPW = "acorn" }, api.Encrypt), "against changes"},
		"empty":              {nil, "not a PDF"},
		"a job file":         {job.Content, "not a PDF"},
		"half":               {pdf[:len(pdf)/2], "cut off"},
		"only the beginning": {pdf[:9], "cut off"},
		"without its end":    {pdf[:len(pdf)-8], "cut off"},
		"without a job":      {write(t, Document{Parts: onlyPage}), "carries no file"},
		"shifted":            {append([]byte("%PDF-1.7\n"), pdf...), "cut off or damaged"},
		"damaged stream":     {bytes.Replace(pdf, pdf[at+120:at+130], []byte("0123456789"), 1), "cut off or damaged"},
		"too large inside": {write(t, Document{Attachments: []Attachment{{Name: "a.toml", Content: make([]byte, most+1)}}, Parts: onlyPage}),
			"larger than all"},
	} {
		got, err := recoverFirst(c.pdf)
		switch {
		case c.want == "" && err != nil:
			t.Errorf("%s: %v", name, err)
		case c.want == "":
			if d := cmp.Diff(job, got); d != "" {
				t.Errorf("%s: %s", name, d)
			}
		case err == nil || !strings.Contains(err.Error(), c.want):
			t.Errorf("%s: got %v, want %q", name, err, c.want)
		}
	}
}

// Whatever is missing at the end, what comes back is the whole file or an error.
func TestRecoverFromCutOffFiles(t *testing.T) {
	job := Attachment{Name: "nook.toml", Content: []byte("title = \"Reading nook\"\n")}
	pdf := write(t, Document{Attachments: []Attachment{job}, Parts: onlyPage})
	for n := range pdf {
		if got, err := recoverFirst(pdf[:n]); err == nil && !cmp.Equal(got, job) {
			t.Fatalf("the first %d bytes gave %v", n, got)
		}
	}
}

// Tables that refer to each other in a ring, and the like, come to an end.
func TestRecoverFromPitfalls(t *testing.T) {
	head := "%PDF-1.4\n"
	table := func(trailer string) string {
		return fmt.Sprintf("%sxref\n0 1\n0000000000 65535 f \ntrailer\n<<%s>>\nstartxref\n%d\n%%%%EOF\n", head, trailer, len(head))
	}
	for name, pdf := range map[string]string{
		"ring":            table("/Prev 9"),
		"far away":        table("/Prev 999999999999"),
		"before":          table("/Prev -5"),
		"no root":         table(""),
		"root missing":    table("/Root 7 0 R"),
		"root is free":    table("/Root 0 0 R"),
		"many entries":    head + "xref\n0 99999999999\n\nstartxref\n9\n%%EOF\n",
		"trailer missing": head + "xref\n0 0\nstartxref\n9\n%%EOF\n",
	} {
		if a, err := recoverFirst([]byte(pdf)); err == nil {
			t.Errorf("%s gave %v", name, a)
		}
	}
}

// counted reads a file and counts what is read.
type counted struct {
	io.ReaderAt
	n int
}

func (c *counted) ReadAt(b []byte, at int64) (int, error) {
	c.n += len(b)
	return c.ReaderAt.ReadAt(b, at)
}

// zeros is a file of nothing but zeros, of any size.
type zeros struct{}

func (zeros) ReadAt(b []byte, _ int64) (int, error) { clear(b); return len(b), nil }

// Of what is no PDF only the first bytes are read, of a long chain of tables only so much.
func TestRecoverReadsLittle(t *testing.T) {
	const size = 1 << 40
	r := &counted{ReaderAt: zeros{}}
	if _, err := Open(r, size); err == nil || r.n > 16 {
		t.Errorf("%v, and %d bytes were read", err, r.n)
	}
	var chain bytes.Buffer
	chain.WriteString("%PDF-1.4\n")
	last := 0
	for i := range 100_000 {
		at := chain.Len()
		previous := ""
		if i > 0 {
			previous = fmt.Sprintf("/Prev %d", last)
		}
		fmt.Fprintf(&chain, "xref\n0 0\ntrailer\n<<%s>>\n", previous)
		last = at
	}
	fmt.Fprintf(&chain, "startxref\n%d\n%%%%EOF\n", last)
	r = &counted{ReaderAt: bytes.NewReader(chain.Bytes())}
	if _, err := Open(r, int64(chain.Len())); err == nil || r.n > 2<<20 {
		t.Errorf("%v, and %d bytes were read", err, r.n)
	}
	// A guide: its pages are none of what is looked for.
	var pages []paper.Page
	d := &paper.Drawing{}
	for i := range 20_000 {
		at := geometry.Pt(geometry.Length(i%200), geometry.Length(i*37%290))
		d.Stroke(geometry.Line(at, at.Add(geometry.Pt(geometry.Length(i*i%17), 3))), paper.Pen{Width: 0.25})
	}
	view := paper.View{Drawing: d, Area: geometry.Rect{Max: geometry.Pt(210, 297)}}
	for range 20 {
		pages = append(pages, paper.Page{Size: geometry.Size{W: 210, H: 297}, Views: []paper.View{view}})
	}
	var out bytes.Buffer
	doc := Document{Parts: []paper.Part{{Pages: pages}}, Attachments: []Attachment{{Name: "job.toml", Content: []byte("a = 1\n")}}}
	if err := Write(&out, doc); err != nil {
		t.Fatal(err)
	}
	r = &counted{ReaderAt: bytes.NewReader(out.Bytes())}
	in, err := Open(r, int64(out.Len()))
	if err != nil {
		t.Fatal(err)
	}
	if got, err := in.File("job.toml", most); err != nil || r.n > 100_000 || out.Len() < 1_000_000 {
		t.Errorf("%v, %v: %d bytes of %d were read", got, err, r.n, out.Len())
	}
}

// Another program may attach files of its own, before ours or behind it.
func TestRecoverByName(t *testing.T) {
	job := Attachment{Name: "job.toml", Content: []byte("title = \"Reading nook\"\n")}
	for _, streams := range []bool{false, true} {
		var out bytes.Buffer
		folder := t.TempDir()
		var others []string
		for _, n := range []string{"a note.txt", "zebra.txt", "job.toml.txt"} {
			n = filepath.Join(folder, n)
			if err := os.WriteFile(n, []byte("something else"), 0o600); err != nil {
				t.Fatal(err)
			}
			others = append(others, n)
		}
		conf := pdfread.Config()
		conf.WriteObjectStream, conf.WriteXRefStream = streams, streams
		pdf := write(t, Document{Attachments: []Attachment{job}, Parts: onlyPage})
		if err := api.AddAttachments(bytes.NewReader(pdf), &out, others, false, conf); err != nil {
			t.Fatal(err)
		}
		if n := len(pdfread.Open(t, out.Bytes()).Attachments()); n != 4 {
			t.Fatalf("%d files are attached", n)
		}
		in, err := Open(bytes.NewReader(out.Bytes()), int64(out.Len()))
		if err != nil {
			t.Fatal(err)
		}
		got, err := in.File(job.Name, most)
		if d := cmp.Diff(job, got); err != nil || d != "" {
			t.Errorf("streams %v: %v %s", streams, err, d)
		}
		if _, err := in.File("fern.toml", most); err == nil || !strings.Contains(err.Error(), "no fern.toml inside") {
			t.Errorf("streams %v: %v", streams, err)
		}
	}
}

// handmade returns a small PDF file, spelled unlike ours, that carries the file a: its name
// tree has branches (ISO 32000-1, 7.9.6), its stream is not compressed.
func handmade() []byte {
	out := []byte("%PDF-1.4\n")
	table := []byte("xref\r\n0 1\r\n0000000000 65535 f\r\n1 5\r\n")
	for i, o := range []string{
		"<</Names<</EmbeddedFiles 5 0 R>>>>",
		"<</Limits[(a)(a)]/Names[(a)3 0 R]>>",
		"<</Type/F/F(dir/a\\))/EF<</F 4 0 R>>>>",
		"<</Length 6 % no filter\n>>stream\r\nhi\n\nho\r\nendstream",
		"<</Kids[2 0 R]>>",
	} {
		table = fmt.Appendf(table, "%010d 00000 n\r\n", len(out))
		out = fmt.Appendf(out, "%d 0 obj%s\rendobj\n", i+1, o)
	}
	start := len(out)
	return fmt.Appendf(append(out, table...), "trailer<</Size 6/Root 1 0 R>>startxref %d\r%%%%EOF", start)
}

func TestRecoverFromAnothersFile(t *testing.T) {
	got, err := recoverFirst(handmade())
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(Attachment{Name: "a)", Content: []byte("hi\n\nho")}, got); d != "" {
		t.Error(d)
	}
}

func FuzzRecover(f *testing.F) {
	var out bytes.Buffer
	if err := Write(&out, Document{Attachments: []Attachment{{Name: "a.toml", Content: []byte("a = 1\n")}}, Parts: onlyPage}); err != nil {
		f.Fatal(err)
	}
	f.Add(out.Bytes())
	f.Add(handmade())
	var streams bytes.Buffer
	if err := api.Optimize(bytes.NewReader(out.Bytes()), &streams, pdfread.Config()); err != nil {
		f.Fatal(err)
	}
	f.Add(streams.Bytes())
	pictures := []Attachment{
		{Name: "job.toml", Type: "application/toml", Content: []byte("a = 1\n")},
		{Name: "fern.png", Type: "image/png", Content: []byte("\x89PNG")},
		{Name: "wave.jpg", Type: "image/jpeg", Content: []byte("\xff\xd8")},
	}
	f.Add(write(f, Document{Attachments: pictures, Parts: onlyPage}))
	f.Fuzz(func(t *testing.T, pdf []byte) {
		in, err := Open(bytes.NewReader(pdf), int64(len(pdf)))
		if err != nil {
			return
		}
		if len(in.Names()) == 0 {
			t.Error("opened, and nothing is inside")
		}
		for _, n := range in.Names() {
			if strings.ContainsAny(n, `/\\`) {
				t.Errorf("%q has folders", n)
			}
			if a, err := in.File(n, most); err == nil && (len(a.Content) > most || a.Name != n) {
				t.Errorf("%q: %d bytes came out of %q", n, len(a.Content), a.Name)
			}
		}
	})
}
