package picture

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/png"
	"io"
)

// WritePNG writes a mask as a PNG of two colours, black where at least half is paint and white
// elsewhere, one bit a pixel, which says at how many pixels to the metre it is true to size
// (chunk pHYs; W3C PNG specification, 11.3.4.3). It fails only where w does, or where the mask has
// no pixels.
func WritePNG(w io.Writer, m *Mask, pixelsPerMetre uint32) error {
	black := image.NewPaletted(image.Rect(0, 0, m.W, m.H), color.Palette{color.White, color.Black})
	for i, p := range m.Paint {
		if p >= half {
			black.Pix[i] = 1
		}
	}
	var file bytes.Buffer
	if err := png.Encode(&file, black); err != nil {
		return err
	}
	const header = 8 + 12 + 13 // the signature and the chunk IHDR
	const metre = 1
	size := []byte("pHYs")
	size = binary.BigEndian.AppendUint32(size, pixelsPerMetre)
	size = binary.BigEndian.AppendUint32(size, pixelsPerMetre)
	size = append(size, metre)
	chunk := binary.BigEndian.AppendUint32(nil, uint32(len(size)-4))
	chunk = append(chunk, size...)
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(size))
	for _, part := range [][]byte{file.Bytes()[:header], chunk, file.Bytes()[header:]} {
		if _, err := w.Write(part); err != nil {
			return err
		}
	}
	return nil
}
