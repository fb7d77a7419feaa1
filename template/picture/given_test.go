package picture

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/png"
	"testing"
)

// encode writes a picture as a PNG.
func encode(t testing.TB, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// chunk is a chunk of a PNG.
func chunk(name string, data []byte) []byte {
	b := binary.BigEndian.AppendUint32(nil, uint32(len(data)))
	b = append(append(b, name...), data...)
	return binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE(b[4:]))
}

// withChunk puts a chunk behind a PNG's header.
func withChunk(png []byte, name string, data []byte) []byte {
	const header = 8 + 12 + 13
	return append(append(bytes.Clone(png[:header]), chunk(name, data)...), png[header:]...)
}

// paper is a white picture with some of its rectangles black.
func paper(w, h int, black ...image.Rectangle) *image.Gray {
	m := image.NewGray(image.Rect(0, 0, w, h))
	for i := range m.Pix {
		m.Pix[i] = 255
	}
	for _, r := range black {
		ink(m, r)
	}
	return m
}

// ink makes a rectangle of a picture black.
func ink(m *image.Gray, r image.Rectangle) {
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			m.SetGray(x, y, color.Gray{})
		}
	}
}
