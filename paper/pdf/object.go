package pdf

import (
	"bytes"
	"encoding/hex"
	"errors"
	"strconv"
)

// The kinds of PDF object (ISO 32000-1, 7.3) are these types. A stream's dictionary is a
// dict; its bytes are found by file.content.
type (
	name   string // without its slash, escapes as they stand
	text   string // the bytes of a string
	word   string // a number, true, false or null, as it stands
	ref    struct{ number, generation int }
	array  []any
	dict   []member
	member struct {
		key   name
		value any
	}
)

// get returns the value of a key, nil where there is none.
func (d dict) get(key name) any {
	for _, m := range d {
		if m.key == key {
			return m.value
		}
	}
	return nil
}

// with returns d with the value of a key set.
func (d dict) with(key name, value any) dict {
	out := append(dict(nil), d...)
	for i := range out {
		if out[i].key == key {
			out[i].value = value
			return out
		}
	}
	return append(out, member{key, value})
}

// appendObject writes an object as PDF. Strings are written in hexadecimal: no byte of them
// needs care.
func appendObject(b []byte, o any) []byte {
	switch o := o.(type) {
	case name:
		return append(append(b, '/'), o...)
	case text:
		return append(hex.AppendEncode(append(b, '<'), []byte(o)), '>')
	case word:
		return append(b, o...)
	case int:
		return strconv.AppendInt(b, int64(o), 10)
	case ref:
		b = append(strconv.AppendInt(b, int64(o.number), 10), ' ')
		return append(strconv.AppendInt(b, int64(o.generation), 10), " R"...)
	case array:
		b = append(b, '[')
		for i, x := range o {
			if i > 0 {
				b = append(b, ' ')
			}
			b = appendObject(b, x)
		}
		return append(b, ']')
	case dict:
		b = append(b, "<<"...)
		for _, m := range o {
			b = append(appendObject(append(b, '\n'), m.key), ' ')
			b = appendObject(b, m.value)
		}
		return append(b, "\n>>"...)
	}
	return append(b, "null"...)
}

// errObject is what parsing says of bytes that are no object.
var errObject = errors.New("not a PDF object")

// parser reads objects from bytes.
type parser struct {
	b   []byte
	pos int
}

// maxNesting is how deep arrays and dictionaries may stand in each other.
const maxNesting = 32

func isSpace(c byte) bool {
	return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f' || c == 0
}

func isDelimiter(c byte) bool { return bytes.IndexByte([]byte("()<>[]{}/%"), c) >= 0 }

// skip passes over white space and comments.
func (p *parser) skip() {
	for ; p.pos < len(p.b); p.pos++ {
		if p.b[p.pos] == '%' {
			for p.pos < len(p.b) && p.b[p.pos] != '\n' && p.b[p.pos] != '\r' {
				p.pos++
			}
			if p.pos == len(p.b) {
				return
			}
		}
		if !isSpace(p.b[p.pos]) {
			return
		}
	}
}

// accept passes over white space and s, if s is next.
func (p *parser) accept(s string) bool {
	p.skip()
	if !bytes.HasPrefix(p.b[p.pos:], []byte(s)) {
		return false
	}
	p.pos += len(s)
	return true
}

// regular reads a run of regular characters.
func (p *parser) regular() string {
	from := p.pos
	for p.pos < len(p.b) && !isSpace(p.b[p.pos]) && !isDelimiter(p.b[p.pos]) {
		p.pos++
	}
	return string(p.b[from:p.pos])
}

// integer reads a whole number that is not negative.
func (p *parser) integer() (int, bool) {
	p.skip()
	n, err := strconv.ParseUint(p.regular(), 10, 40)
	return int(n), err == nil
}

// object reads the next object.
func (p *parser) object(nesting int) (any, error) {
	if nesting > maxNesting {
		return nil, errObject
	}
	switch {
	case p.accept("/"):
		return name(p.regular()), nil
	case p.accept("<<"):
		return p.dict(nesting)
	case p.accept("<"):
		return p.hexText()
	case p.accept("("):
		return p.literalText()
	case p.accept("["):
		var a array
		for !p.accept("]") {
			o, err := p.object(nesting + 1)
			if err != nil {
				return nil, err
			}
			a = append(a, o)
		}
		return a, nil
	}
	w := p.regular()
	if w == "" {
		return nil, errObject
	}
	after := p.pos
	if number, err := strconv.ParseUint(w, 10, 31); err == nil {
		if generation, ok := p.integer(); ok && p.accept("R") {
			return ref{int(number), generation}, nil
		}
	}
	p.pos = after
	return word(w), nil
}

func (p *parser) dict(nesting int) (any, error) {
	var d dict
	for !p.accept(">>") {
		if !p.accept("/") {
			return nil, errObject
		}
		key := name(p.regular())
		value, err := p.object(nesting + 1)
		if err != nil {
			return nil, err
		}
		d = append(d, member{key, value})
	}
	return d, nil
}

func (p *parser) hexText() (any, error) {
	end := bytes.IndexByte(p.b[p.pos:], '>')
	if end < 0 {
		return nil, errObject
	}
	var digits []byte
	for _, c := range p.b[p.pos : p.pos+end] {
		if !isSpace(c) {
			digits = append(digits, c)
		}
	}
	if len(digits)%2 == 1 {
		digits = append(digits, '0')
	}
	p.pos += end + 1
	s, err := hex.AppendDecode(nil, digits)
	if err != nil {
		return nil, errObject
	}
	return text(s), nil
}

// literalText reads a string in parentheses, the first of which has been read.
func (p *parser) literalText() (any, error) {
	var s []byte
	escapes := map[byte]byte{'n': '\n', 'r': '\r', 't': '\t', 'b': '\b', 'f': '\f'}
	for open := 1; p.pos < len(p.b); {
		c := p.b[p.pos]
		p.pos++
		switch c {
		case '(':
			open++
		case ')':
			open--
			if open == 0 {
				return text(s), nil
			}
		case '\\':
			if p.pos == len(p.b) {
				return nil, errObject
			}
			c = p.b[p.pos]
			p.pos++
			if e, ok := escapes[c]; ok {
				c = e
			} else if c >= '0' && c <= '7' {
				c -= '0'
				for range 2 {
					if p.pos < len(p.b) && p.b[p.pos] >= '0' && p.b[p.pos] <= '7' {
						c = c<<3 + p.b[p.pos] - '0'
						p.pos++
					}
				}
			} else if c == '\n' {
				continue // the string goes on on the next line
			}
		}
		s = append(s, c)
	}
	return nil, errObject
}
