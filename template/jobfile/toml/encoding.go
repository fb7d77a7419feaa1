package toml

import (
	"bytes"
	"errors"
	"unicode/utf8"

	"golang.org/x/text/encoding/unicode"
)

// DecodeText returns a job file as UTF-8, without the mark some editors put before it. A file
// that begins with the mark of UTF-16 is read as that: the bytes FF FE or FE FF say which byte of
// two comes first (The Unicode Standard, chapter 3, D98 and D101; from memory).
func DecodeText(data []byte) ([]byte, error) {
	utf16 := bytes.HasPrefix(data, []byte{0xff, 0xfe}) || bytes.HasPrefix(data, []byte{0xfe, 0xff})
	if !utf16 {
		return bytes.TrimPrefix(data, []byte("\ufeff")), nil
	}
	text, err := unicode.UTF16(unicode.LittleEndian, unicode.ExpectBOM).NewDecoder().Bytes(data)
	if err != nil || len(data)%2 != 0 || bytes.ContainsRune(text, utf8.RuneError) {
		return nil, errors.New("the file begins as UTF-16 and does not go on as that; save it as UTF-8")
	}
	return text, nil
}
