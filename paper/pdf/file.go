package pdf

import (
	"bytes"
	"compress/zlib"
	"errors"
	"io"
	"strconv"
)

// file is a PDF file as it lies on disk: numbered objects found by cross-reference tables
// (ISO 32000-1, 7.5). Only the plain form of those tables is understood, the one Write uses.
type file struct {
	data    []byte
	tables  []int // where the tables are, the newest first
	trailer dict  // of the newest
}

var (
	errBroken = errors.New("this PDF is cut off or damaged: copy it again from where it came from")
	errResave = errors.New("this PDF was saved again by another program, in a form that cannot be read here: use the file as it was first written")
	errLocked = errors.New("this PDF is locked with a password: use the file as it was first written")
	errTooBig = errors.New("what this PDF carries inside is larger than 2 MiB, more than is read here")
)

// The most that is read of one object and of one stream's content, and the most tables.
const (
	maxObject  = 4 << 20
	maxContent = 2 << 20
	maxTables  = 64
)

// openFile finds the tables of a PDF file.
func openFile(data []byte) (file, error) {
	f := file{data: data}
	tail := data[max(0, len(data)-1024):]
	at := bytes.LastIndex(tail, []byte("startxref"))
	if at < 0 || !bytes.Contains(tail[at:], []byte("%%EOF")) {
		return f, errBroken
	}
	p := parser{b: tail[at:], pos: len("startxref")}
	table, ok := p.integer()
	if !ok {
		return f, errBroken
	}
	for len(f.tables) < maxTables {
		trailer, err := f.trailerOf(table)
		if err != nil {
			return f, err
		}
		f.tables = append(f.tables, table)
		if f.trailer == nil {
			f.trailer = trailer
		}
		previous, ok := trailer.get("Prev").(word)
		if !ok {
			return f, nil
		}
		if table, err = strconv.Atoi(string(previous)); err != nil {
			return f, errBroken
		}
	}
	return f, errBroken
}

// from returns a parser of what begins at an offset; nil where that is not in the file.
func (f file) from(offset int) *parser {
	if offset < 0 || offset >= len(f.data) {
		return nil
	}
	return &parser{b: f.data[offset:]}
}

// entrySize is the length of a table's entry.
const entrySize = 20

// sections calls visit with each run of entries of the table at offset: the number of the
// first object and the entries' bytes. It returns a parser of what follows them.
func (f file) sections(offset int, visit func(first int, entries []byte)) (*parser, error) {
	p := f.from(offset)
	switch {
	case p == nil:
		return nil, errBroken
	case !p.accept("xref"):
		if _, ok := p.integer(); ok {
			return nil, errResave // a cross-reference stream
		}
		return nil, errBroken
	}
	for !p.accept("trailer") {
		first, ok1 := p.integer()
		count, ok2 := p.integer()
		p.skip()
		if !ok1 || !ok2 || count > (len(p.b)-p.pos)/entrySize {
			return nil, errBroken
		}
		visit(first, p.b[p.pos:p.pos+count*entrySize])
		p.pos += count * entrySize
	}
	return p, nil
}

func (f file) trailerOf(table int) (dict, error) {
	p, err := f.sections(table, func(int, []byte) {})
	if err != nil {
		return nil, err
	}
	p.b = p.b[:min(len(p.b), p.pos+maxObject)]
	o, err := p.object(0)
	d, ok := o.(dict)
	if err != nil || !ok {
		return nil, errBroken
	}
	return d, nil
}

// offset returns where an object is.
func (f file) offset(number int) (int, bool) {
	for _, table := range f.tables {
		var entry []byte
		_, err := f.sections(table, func(first int, entries []byte) {
			if n := number - first; entry == nil && n >= 0 && n < len(entries)/entrySize {
				entry = entries[n*entrySize : (n+1)*entrySize]
			}
		})
		if err != nil {
			return 0, false
		}
		if entry != nil {
			offset, err := strconv.Atoi(string(entry[:10]))
			return offset, err == nil && entry[17] == 'n'
		}
	}
	return 0, false
}

// object returns o itself or, where o refers to an object, that; and what follows it.
func (f file) object(o any) (any, *parser, error) {
	r, ok := o.(ref)
	if !ok {
		return o, nil, nil
	}
	offset, ok := f.offset(r.number)
	p := f.from(offset)
	if !ok || p == nil {
		return nil, nil, errBroken
	}
	whole := p.b
	p.b = p.b[:min(len(p.b), maxObject)]
	number, ok := p.integer()
	if _, ok2 := p.integer(); !ok || !ok2 || number != r.number || !p.accept("obj") {
		return nil, nil, errBroken
	}
	found, err := p.object(0)
	if err != nil {
		return nil, nil, errBroken
	}
	p.b = whole
	return found, p, nil
}

// dict returns o, or what it refers to, as a dictionary; an empty one where it is none.
func (f file) dict(o any) (dict, error) {
	found, _, err := f.object(o)
	d, _ := found.(dict)
	return d, err
}

// content returns the bytes of the stream that o refers to.
func (f file) content(o any) ([]byte, error) {
	found, p, err := f.object(o)
	if err != nil {
		return nil, err
	}
	d, ok := found.(dict)
	if !ok || p == nil {
		return nil, errBroken
	}
	raw, err := f.stream(d, p)
	if err != nil {
		return nil, err
	}
	filter := d.get("Filter")
	if a, ok := filter.(array); ok && len(a) == 1 {
		filter = a[0]
	}
	switch filter {
	case nil:
		if len(raw) > maxContent {
			return nil, errTooBig
		}
		return bytes.Clone(raw), nil
	case name("FlateDecode"):
		return inflate(raw)
	}
	return nil, errResave
}

// stream returns the bytes, as they stand in the file, of the stream that goes on at p after
// its dictionary d.
func (f file) stream(d dict, p *parser) ([]byte, error) {
	if !p.accept("stream") {
		return nil, errBroken
	}
	if p.pos < len(p.b) && p.b[p.pos] == '\r' {
		p.pos++
	}
	p.pos++ // the end of the line
	size, _, err := f.object(d.get("Length"))
	if err != nil {
		return nil, err
	}
	w, _ := size.(word)
	n, err := strconv.ParseUint(string(w), 10, 31)
	if err != nil || p.pos > len(p.b) || int(n) > len(p.b)-p.pos {
		return nil, errBroken
	}
	return p.b[p.pos : p.pos+int(n)], nil
}

func inflate(raw []byte) ([]byte, error) {
	z, err := zlib.NewReader(bytes.NewReader(raw))
	if err != nil {
		return nil, errBroken
	}
	content, err := io.ReadAll(io.LimitReader(z, maxContent+1))
	if err != nil {
		return nil, errBroken
	}
	if len(content) > maxContent {
		return nil, errTooBig
	}
	return content, nil
}
