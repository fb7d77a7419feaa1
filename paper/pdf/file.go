package pdf

import (
	"bytes"
	"errors"
	"io"
	"strconv"
)

// file is a PDF file as it lies on disk: numbered objects found by cross-reference tables
// (ISO 32000-1, 7.5), read a little at a time.
type file struct {
	r       io.ReaderAt
	size    int64
	tables  []table // the newest first
	trailer dict    // of the newest
	streams map[int]objectStream
	budget  int64 // how many bytes may still be read
}

var (
	errBroken = errors.New("this PDF is cut off or damaged: copy it again from where it came from")
	errResave = errors.New("this PDF was saved again by another program, in a form that cannot be read here: use the file as it was first written")
	errLocked = errors.New("this PDF is locked with a password, or against changes: use the file as it was first written")
	errTooBig = errors.New("what this PDF carries inside is larger than all that underlay draw puts in: use the file as it was first written")
)

// The most that is read of one object and of one stream's content, and the most tables.
const (
	maxObject  = 4 << 20
	maxContent = 2 << 20
	maxTables  = 64
	maxRead    = 192 << 20 // bytes in all: a job, its pictures, and what leads to them
)

// openFile finds the tables of a PDF file, of which no more than budget bytes are ever read.
func openFile(r io.ReaderAt, size, budget int64) (*file, error) {
	f := &file{r: r, size: size, budget: budget, streams: map[int]objectStream{}}
	tail, err := f.read(max(0, size-1024), 1024)
	if err != nil {
		return nil, err
	}
	at := bytes.LastIndex(tail, []byte("startxref"))
	if at < 0 || !bytes.Contains(tail[at:], []byte("%%EOF")) {
		return nil, errBroken
	}
	p := parser{b: tail[at:], pos: len("startxref")}
	next, ok := p.integer()
	if !ok {
		return nil, errBroken
	}
	seen := map[int]bool{}
	for !seen[next] {
		seen[next] = true
		trailer, err := f.addTable(next)
		if err != nil {
			return nil, err
		}
		if f.trailer == nil {
			f.trailer = trailer
		}
		// A file for old and new readers at once hides the newer's table here (7.5.8.4).
		if hidden, ok := whole(trailer.get("XRefStm")); ok && !seen[hidden] {
			seen[hidden] = true
			if _, err := f.addTable(hidden); err != nil {
				return nil, err
			}
		}
		if trailer.get("Prev") == nil {
			break
		}
		if next, ok = whole(trailer.get("Prev")); !ok {
			return nil, errBroken
		}
	}
	return f, nil
}

// whole returns a number that is whole and not negative.
func whole(o any) (int, bool) {
	w, _ := o.(word)
	n, err := strconv.ParseUint(string(w), 10, 40)
	return int(n), err == nil
}

// read returns up to n bytes from an offset on; none beyond the file's end.
func (f *file) read(offset int64, n int) ([]byte, error) {
	if offset < 0 || offset > f.size {
		return nil, errBroken
	}
	b := make([]byte, min(int64(n), f.size-offset))
	if f.budget -= int64(len(b)); f.budget < 0 {
		return nil, errBroken
	}
	if k, err := f.r.ReadAt(b, offset); k < len(b) {
		if err == io.EOF {
			return nil, errBroken // it has grown shorter
		}
		return nil, err
	}
	return b, nil
}

// parse has take parse what begins at an offset, of which little is read if that does.
func (f *file) parse(offset int, take func(p *parser) error) error {
	var err error
	for _, n := range []int{4 << 10, maxObject} {
		b, e := f.read(int64(offset), n)
		if e != nil {
			return e
		}
		p := &parser{b: b}
		err = take(p)
		// What ends near the end of what was read may go on beyond it.
		const near = 32
		if err == nil && p.pos < len(b)-near || int64(offset+len(b)) == f.size {
			return err
		}
	}
	return err
}

// body returns the object that stands at an offset, and where what follows it does.
func (f *file) body(offset int) (o any, number, after int, err error) {
	err = f.parse(offset, func(p *parser) error {
		n, ok := p.integer()
		if _, ok2 := p.integer(); !ok || !ok2 || !p.accept("obj") {
			return errBroken
		}
		found, err := p.object(0)
		if err != nil {
			return errBroken
		}
		p.skip()
		o, number, after = found, n, offset+p.pos
		return nil
	})
	return o, number, after, err
}

// object returns o itself or, where o refers to an object, that; and where what follows it is, 0
// where nothing can.
func (f *file) object(o any) (any, int, error) {
	r, ok := o.(ref)
	if !ok {
		return o, 0, nil
	}
	e, ok := f.spot(r.number)
	switch {
	case !ok:
		return nil, 0, errBroken
	case e.stream > 0:
		found, err := f.inStream(e, r.number)
		return found, 0, err
	}
	found, number, after, err := f.body(e.offset)
	if err == nil && number != r.number {
		err = errBroken
	}
	return found, after, err
}

// dict returns o, or what it refers to, as a dictionary; an empty one where it is none.
func (f *file) dict(o any) (dict, error) {
	found, _, err := f.object(o)
	d, _ := found.(dict)
	return d, err
}

// stream returns the dictionary of the stream that o refers to, and its content, most bytes at the
// most.
func (f *file) stream(o any, most int) (dict, []byte, error) {
	found, after, err := f.object(o)
	if err != nil {
		return nil, nil, err
	}
	d, ok := found.(dict)
	if !ok || after == 0 {
		return nil, nil, errBroken
	}
	content, err := f.unpacked(d, after, most)
	return d, content, err
}
