package pdf

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
)

// raw returns the bytes, as they stand in the file, of the stream whose dictionary is d; no more
// than most.
func (f *file) raw(d dict, after, most int) ([]byte, error) {
	head, err := f.read(int64(after), len("stream\r\n"))
	if err != nil {
		return nil, err
	}
	p := parser{b: head}
	size, _, err := f.object(d.get("Length"))
	if err != nil {
		return nil, err
	}
	n, ok := whole(size)
	if !p.streamFollows() || !ok || int64(n) > f.size-int64(after+p.pos) || n > math.MaxInt32 {
		return nil, errBroken
	}
	if n > most {
		return nil, errTooBig
	}
	return f.read(int64(after+p.pos), n)
}

// streamFollows passes over the word before a stream's bytes, and the end of its line.
func (p *parser) streamFollows() bool {
	if !p.accept("stream") {
		return false
	}
	if p.pos < len(p.b) && p.b[p.pos] == '\r' {
		p.pos++
	}
	p.pos++
	return p.pos <= len(p.b)
}

// unpacked returns the content of the stream whose dictionary is d, most bytes at the most.
func (f *file) unpacked(d dict, after, most int) ([]byte, error) {
	raw, err := f.raw(d, after, most+most/8+1<<10) // packing may make it larger by a little
	if err != nil {
		return nil, err
	}
	filter, parms := d.get("Filter"), d.get("DecodeParms")
	if a, ok := filter.(array); ok && len(a) == 1 {
		filter = a[0]
	}
	if a, ok := parms.(array); ok && len(a) == 1 {
		parms = a[0]
	}
	switch filter {
	case nil:
		if len(raw) > most {
			return nil, errTooBig
		}
		return raw, nil
	case name("FlateDecode"):
	default:
		return nil, errResave
	}
	content, err := inflate(raw, most)
	if err != nil {
		return nil, err
	}
	p, err := f.dict(parms)
	if err != nil {
		return nil, err
	}
	return predicted(content, p)
}

// inflate unpacks no more than most bytes.
func inflate(raw []byte, most int) ([]byte, error) {
	z, err := zlib.NewReader(bytes.NewReader(raw))
	if err != nil {
		return nil, errBroken
	}
	content, err := io.ReadAll(io.LimitReader(z, int64(most)+1))
	if err != nil {
		return nil, errBroken
	}
	if len(content) > most {
		return nil, errTooBig
	}
	return content, nil
}

// predicted undoes a predictor (ISO 32000-1, 7.4.4.4), of which only PNG's for bytes are known
// (PNG 1.2, 6): each row begins with the number of the way it was foretold in.
func predicted(b []byte, parms dict) ([]byte, error) {
	kind, said := whole(parms.get("Predictor"))
	if !said || kind == 1 {
		return b, nil
	}
	columns, said := whole(parms.get("Columns"))
	if !said {
		columns = 1
	}
	if kind < 10 || columns < 1 || columns > maxContent || parms.get("Colors") != nil || parms.get("BitsPerComponent") != nil {
		return nil, errResave
	}
	out := make([]byte, 0, len(b))
	above := make([]byte, columns)
	for ; len(b) > columns; b = b[columns+1:] {
		row := bytes.Clone(b[1 : columns+1])
		for i := range row {
			var left, corner byte
			if i > 0 {
				left, corner = row[i-1], above[i-1]
			}
			switch b[0] {
			case 1:
				row[i] += left
			case 2:
				row[i] += above[i]
			case 3:
				row[i] += byte((int(left) + int(above[i])) / 2)
			case 4:
				row[i] += paeth(left, above[i], corner)
			}
		}
		out, above = append(out, row...), row
	}
	return out, nil
}

// paeth returns which of three neighbours is nearest to left + above - corner.
func paeth(left, above, corner byte) byte {
	p := int(left) + int(above) - int(corner)
	away := func(b byte) int {
		if d := p - int(b); d >= 0 {
			return d
		}
		return int(b) - p
	}
	switch a, b, c := away(left), away(above), away(corner); {
	case a <= b && a <= c:
		return left
	case b <= c:
		return above
	}
	return corner
}

// objectStream is objects in a stream, by their numbers (ISO 32000-1, 7.5.7).
type objectStream map[int][]byte

// inStream returns an object that is in an object stream.
func (f *file) inStream(e spot, number int) (any, error) {
	objects, ok := f.streams[e.stream]
	if !ok {
		var err error
		if objects, err = f.openStream(e.stream); err != nil {
			return nil, err
		}
		f.streams[e.stream] = objects
	}
	b, ok := objects[number]
	if !ok {
		return nil, errBroken
	}
	o, err := (&parser{b: b}).object(0)
	if err != nil {
		return nil, errBroken
	}
	return o, nil
}

func (f *file) openStream(number int) (objectStream, error) {
	e, ok := f.spot(number)
	if !ok || e.stream > 0 {
		return nil, errBroken
	}
	o, found, after, err := f.body(e.offset)
	if err != nil {
		return nil, err
	}
	d, _ := o.(dict)
	count, ok1 := whole(d.get("N"))
	first, ok2 := whole(d.get("First"))
	content, err := f.unpacked(d, after, maxContent)
	if err != nil {
		return nil, err
	}
	if found != number || !ok1 || !ok2 || first > len(content) {
		return nil, errBroken
	}
	objects := objectStream{}
	p := parser{b: content[:first]}
	for range min(count, len(content)) {
		n, ok1 := p.integer()
		at, ok2 := p.integer()
		if !ok1 || !ok2 || at > len(content)-first {
			return nil, errBroken
		}
		objects[n] = content[first+at:]
	}
	return objects, nil
}
