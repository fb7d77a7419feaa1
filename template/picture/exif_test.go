package picture

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/jpeg"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// sides says where the stored first row and first column of a picture are to be seen, by its Exif
// orientation (CIPA DC-008, Exif 2.3, tag 0x0112, from memory).
func sides() map[uint16][2]string {
	return map[uint16][2]string{
		1: {"top", "left"}, 2: {"top", "right"}, 3: {"bottom", "right"}, 4: {"bottom", "left"},
		5: {"left", "top"}, 6: {"right", "top"}, 7: {"right", "bottom"}, 8: {"left", "bottom"},
	}
}

// exif is the data of one tag, in either order of bytes.
func exif(order binary.AppendByteOrder, begins string, tag, kind uint16, count uint32, value uint16) []byte {
	b := order.AppendUint32([]byte(begins), 8)
	b = order.AppendUint16(b, 2) // another tag stands before it
	b = append(order.AppendUint32(order.AppendUint16(order.AppendUint16(b, 0x0100), 3), 1), 0, 0, 0, 0)
	b = order.AppendUint32(order.AppendUint16(order.AppendUint16(b, tag), kind), count)
	return append(order.AppendUint16(b, value), 0, 0, 0, 0, 0, 0)
}

// withSegment puts a segment of a JPEG first in it.
func withSegment(jpeg []byte, mark byte, data []byte) []byte {
	segment := binary.BigEndian.AppendUint16([]byte{0xFF, mark}, uint16(len(data)+2))
	return append(append(bytes.Clone(jpeg[:2]), append(segment, data...)...), jpeg[2:]...)
}

func encodeJPEG(t testing.TB, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: 100}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// scene is a picture as it is to be seen: no two of its quarters are of one grey.
func scene(w, h int) *image.Gray {
	m := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			m.SetGray(x, y, color.Gray{uint8(40 + 120*(2*x/w) + 60*(2*y/h))})
		}
	}
	return m
}

// stored is a scene as a camera stores it whose first row and column are at those sides.
func stored(m *image.Gray, row, column string) *image.Gray {
	w, h := m.Rect.Dx(), m.Rect.Dy()
	seen := map[string]func(n int) (x, y int){
		"top": func(n int) (int, int) { return 0, n }, "bottom": func(n int) (int, int) { return 0, h - 1 - n },
		"left": func(n int) (int, int) { return n, 0 }, "right": func(n int) (int, int) { return w - 1 - n, 0 },
	}
	out := image.NewGray(m.Rect)
	if row == "left" || row == "right" {
		out = image.NewGray(image.Rect(0, 0, h, w))
	}
	for r := range out.Rect.Dy() {
		for c := range out.Rect.Dx() {
			x0, y0 := seen[row](r)
			x1, y1 := seen[column](c)
			out.SetGray(c, r, m.GrayAt(x0+x1, y0+y1))
		}
	}
	return out
}

func TestTurnedAsItIsToBeSeen(t *testing.T) {
	seen := scene(48, 32)
	for value, at := range sides() {
		file := encodeJPEG(t, stored(seen, at[0], at[1]))
		for name, tiff := range map[string][]byte{
			"II": exif(binary.LittleEndian, "II*\x00", 0x0112, 3, 1, value),
			"MM": exif(binary.BigEndian, "MM\x00*", 0x0112, 3, 1, value),
		} {
			got, err := Gray(withSegment(file, 0xE1, append([]byte("Exif\x00\x00"), tiff...)))
			if err != nil {
				t.Fatal(err)
			}
			if got.Rect != seen.Rect {
				t.Errorf("%d %s: %v", value, name, got.Rect)
				continue
			}
			for _, p := range []image.Point{{12, 8}, {36, 8}, {12, 24}, {36, 24}, {0, 0}, {47, 0}, {0, 31}, {47, 31}} {
				if d := int(got.GrayAt(p.X, p.Y).Y) - int(seen.GrayAt(p.X, p.Y).Y); d < -3 || d > 3 {
					t.Errorf("%d %s: at %v it is %v, not %v", value, name, p, got.GrayAt(p.X, p.Y), seen.GrayAt(p.X, p.Y))
				}
			}
		}
	}
}

// What Exif data say that is not understood turns nothing.
func TestExifNotUnderstood(t *testing.T) {
	little := func(tag, kind uint16, count uint32, value uint16) []byte {
		return exif(binary.LittleEndian, "II*\x00", tag, kind, count, value)
	}
	good := little(0x0112, 3, 1, 6)
	if got := orientation(good); got != 6 {
		t.Fatalf("%d", got)
	}
	for name, tiff := range map[string][]byte{
		"nothing": nil, "no header": []byte("Exif of a kind"), "0": little(0x0112, 3, 1, 0), "9": little(0x0112, 3, 1, 9),
		"another tag": little(0x0113, 3, 1, 6), "another kind": little(0x0112, 4, 1, 6), "two values": little(0x0112, 3, 2, 6),
		"far away": append([]byte("II*\x00\xff\xff\xff\xff"), good[8:]...), "in itself": append([]byte("II*\x00\x00\x00\x00\x00"), good[8:]...),
		"more entries than bytes": append(append(bytes.Clone(good[:8]), 0xff, 0xff), good[10:22]...),
	} {
		if got := orientation(tiff); got != 0 {
			t.Errorf("%s: %d", name, got)
		}
	}
	for n := range good {
		if got := orientation(good[:n]); got != 0 && n < len(good)-4 {
			t.Errorf("the first %d bytes: %d", n, got)
		}
	}
}

// The first Exif data count, and only where they stand before the picture ends; a PNG's are obeyed
// too (W3C PNG specification, 3rd edition, chunk eXIf).
func TestWhereExifStands(t *testing.T) {
	file := encodeJPEG(t, scene(48, 32))
	data := func(value uint16) []byte {
		return append([]byte("Exif\x00\x00"), exif(binary.BigEndian, "MM\x00*", 0x0112, 3, 1, value)...)
	}
	turned := image.Rect(0, 0, 32, 48)
	for name, c := range map[string]struct {
		file []byte
		want image.Rectangle
	}{
		"none":                    {file, image.Rect(0, 0, 48, 32)},
		"one":                     {withSegment(file, 0xE1, data(6)), turned},
		"two":                     {withSegment(withSegment(file, 0xE1, data(1)), 0xE1, data(6)), turned},
		"behind another's":        {withSegment(withSegment(file, 0xE1, data(8)), 0xE1, []byte("http://ns.adobe.com/xap/1.0/\x00<x/>")), turned},
		"in a comment":            {withSegment(file, 0xFE, data(6)), image.Rect(0, 0, 48, 32)},
		"in a picture in another": {withSegment(file, 0xE2, withSegment(file, 0xE1, data(6))), image.Rect(0, 0, 48, 32)},
		"behind the end":          {append(bytes.Clone(file), withSegment(file, 0xE1, data(6))...), image.Rect(0, 0, 48, 32)},
		"PNG":                     {withChunk(encode(t, scene(48, 32)), "eXIf", exif(binary.BigEndian, "MM\x00*", 0x0112, 3, 1, 6)), turned},
	} {
		m, err := Gray(c.file)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if d := cmp.Diff(c.want, m.Rect); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
}
