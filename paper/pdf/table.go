package pdf

import (
	"bytes"
	"strconv"
)

// table is a cross-reference table: runs of entries, one for each object (ISO 32000-1, 7.5.4); or,
// in a stream, entries of three numbers of fixed widths (7.5.8).
type table struct {
	runs   []run
	packed []byte // of a stream: its content
	widths [3]int
}

// run is entries of objects whose numbers follow each other.
type run struct {
	first, count int
	at           int // of the first entry: in the file, or in packed
}

// spot is where an object is: at an offset, or one of those in an object stream.
type spot struct {
	offset int
	stream int // the number of the object stream; 0: none
}

// entrySize is the length of an entry of a plain table.
const entrySize = 20

// addTable reads the table at an offset and returns its trailer.
func (f *file) addTable(offset int) (dict, error) {
	if len(f.tables) == maxTables {
		return nil, errBroken
	}
	head, err := f.read(int64(offset), 64)
	if err != nil {
		return nil, err
	}
	if p := (&parser{b: head}); !p.accept("xref") {
		return f.addStream(offset)
	}
	var t table
	at := offset + bytes.Index(head, []byte("xref")) + len("xref")
	for {
		done := false
		var r run
		err := f.parse(at, func(p *parser) error {
			if done = p.accept("trailer"); done {
				at += p.pos
				return nil
			}
			first, ok1 := p.integer()
			count, ok2 := p.integer()
			p.skip()
			start := int64(at) + int64(p.pos)
			if !ok1 || !ok2 || int64(count) > (f.size-start)/entrySize {
				return errBroken
			}
			r = run{first, count, int(start)}
			return nil
		})
		if err != nil {
			return nil, err
		}
		if done {
			break
		}
		if len(t.runs) == maxRuns {
			return nil, errBroken
		}
		t.runs = append(t.runs, r)
		at = r.at + r.count*entrySize
	}
	var trailer dict
	err = f.parse(at, func(p *parser) error {
		o, err := p.object(0)
		d, ok := o.(dict)
		if trailer = d; err != nil || !ok {
			return errBroken
		}
		return nil
	})
	f.tables = append(f.tables, t)
	return trailer, err
}

// maxRuns is the most runs of entries of one table.
const maxRuns = 1 << 16

// addStream reads a table that is a stream.
func (f *file) addStream(offset int) (dict, error) {
	o, _, after, err := f.body(offset)
	if err != nil {
		return nil, err
	}
	d, ok := o.(dict)
	if !ok || d.get("Type") != name("XRef") {
		return nil, errBroken
	}
	var t table
	if t.packed, err = f.unpacked(d, after, maxContent); err != nil {
		return nil, err
	}
	widths, _ := d.get("W").(array)
	if len(widths) != len(t.widths) {
		return nil, errBroken
	}
	length := 0
	for i, o := range widths {
		w, ok := whole(o)
		if !ok || w > 8 {
			return nil, errBroken
		}
		t.widths[i] = w
		length += w
	}
	index, _ := d.get("Index").(array)
	if index == nil {
		index = array{word("0"), d.get("Size")}
	}
	at := 0
	for i := 0; i+1 < len(index) && length > 0; i += 2 {
		first, ok1 := whole(index[i])
		count, ok2 := whole(index[i+1])
		if !ok1 || !ok2 || count > (len(t.packed)-at)/length {
			return nil, errBroken
		}
		t.runs = append(t.runs, run{first, count, at})
		at += count * length
	}
	f.tables = append(f.tables, t)
	return d, nil
}

// spot returns where an object is.
func (f *file) spot(number int) (spot, bool) {
	for _, t := range f.tables {
		for _, r := range t.runs {
			n := number - r.first
			if n < 0 || n >= r.count {
				continue
			}
			if t.packed != nil {
				return t.unpack(r, n)
			}
			b, err := f.read(int64(r.at+n*entrySize), entrySize)
			if err != nil || len(b) < entrySize {
				return spot{}, false
			}
			offset, err := strconv.Atoi(string(b[:10]))
			return spot{offset: offset}, err == nil && b[17] == 'n'
		}
	}
	return spot{}, false
}

// unpack returns the nth entry of a run of a stream's.
func (t table) unpack(r run, n int) (spot, bool) {
	at := r.at + n*(t.widths[0]+t.widths[1]+t.widths[2])
	var field [3]int
	for i, w := range t.widths {
		for range w {
			field[i] = field[i]<<8 | int(t.packed[at])
			at++
		}
	}
	kind := field[0]
	if t.widths[0] == 0 {
		kind = 1
	}
	switch kind {
	case 1:
		return spot{offset: field[1]}, true
	case 2:
		return spot{stream: field[1]}, field[1] > 0
	}
	return spot{}, false
}
