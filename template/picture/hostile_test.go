package picture

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"image"
	"os"
	"path/filepath"
	"runtime/metrics"
	"strings"
	"testing"
)

// header is a PNG's signature and header, and nothing behind it.
func header(w, h uint32, depth, colours, interlaced byte) []byte {
	b := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, w), h)
	return append([]byte("\x89PNG\r\n\x1a\n"), chunk("IHDR", append(b, depth, colours, 0, 0, interlaced))...)
}

// zeros is so many bytes, packed.
func zeros(t testing.TB, n int) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zlib.NewWriter(&b)
	if _, err := z.Write(make([]byte, n)); err != nil {
		t.Fatal(err)
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// pngOf is a PNG with pixels of zeros, so many bytes of them.
func pngOf(t testing.TB, header []byte, n int) []byte {
	return append(append(header, chunk("IDAT", zeros(t, n))...), chunk("IEND", nil)...)
}

// frame is a segment of a JPEG that says what picture it is.
func frame(w, h uint16, parts ...byte) []byte {
	b := binary.BigEndian.AppendUint16(binary.BigEndian.AppendUint16([]byte{8}, h), w)
	b = append(b, byte(len(parts)))
	for i, sampling := range parts {
		b = append(b, byte(i+1), sampling, 0)
	}
	return b
}

// jpegOf is a JPEG of nothing but a frame.
func jpegOf(mark byte, frame []byte) []byte {
	return withSegment([]byte{0xFF, 0xD8, 0xFF, 0xDA, 0, 2, 0xFF, 0xD9}, mark, frame)
}

// Whatever a file says it is, it is refused with a sentence, before it takes much memory.
func TestHostilePictures(t *testing.T) {
	good, err := os.ReadFile(filepath.Join("testdata", "progressive.jpg"))
	if err != nil {
		t.Fatal(err)
	}
	scan := bytes.LastIndex(good, []byte{0xFF, 0xDA})
	layers := append(bytes.Clone(good[:scan]), bytes.Repeat(good[scan:len(good)-2], 2000)...)
	whole := encode(t, paper(64, 48, image.Rect(8, 8, 40, 40)))
	photo := encodeJPEG(t, paper(64, 48, image.Rect(8, 8, 40, 40)))
	const (
		damaged = "cut off or damaged"
		pixels  = "more than 40 million"
		memory  = "takes too much memory"
	)
	for name, c := range map[string]struct {
		file []byte
		want string
	}{
		"nothing":                           {nil, "is empty"},
		"large file":                        {append(bytes.Clone(whole), make([]byte, MostBytes)...), "larger than 32 MB"},
		"signature alone":                   {whole[:8], damaged},
		"cut off":                           {whole[:len(whole)-20], damaged},
		"JPEG cut off":                      {photo[:len(photo)-20], damaged},
		"JPEG, its beginning":               {photo[:3], damaged},
		"a bit wrong":                       {append(append(bytes.Clone(whole[:50]), whole[50]^1), whole[51:]...), damaged},
		"header twice":                      {append(header(10, 10, 8, 0, 0), pngOf(t, header(20_000, 20_000, 8, 6, 0), 10)[8:]...), damaged},
		"no size":                           {pngOf(t, header(0, 10, 8, 0, 0), 10), damaged},
		"a size beyond all":                 {pngOf(t, header(1<<31, 1, 8, 0, 0), 10), damaged},
		"too many pixels":                   {pngOf(t, header(40_000_001, 1, 1, 0, 0), 10), pixels},
		"one row":                           {pngOf(t, header(65_536, 1, 1, 0, 0), 10), "more than 65,535 on a side"},
		"one column":                        {pngOf(t, header(1, 40_000_000, 1, 0, 0), 10), "more than 65,535 on a side"},
		"pixels that overflow":              {pngOf(t, header(1<<31-1, 1<<31-1, 8, 0, 0), 10), pixels},
		"more pixels packed than there are": {pngOf(t, header(100, 100, 8, 0, 0), 100<<20), damaged},
		"fewer pixels":                      {pngOf(t, header(6000, 6000, 8, 6, 0), 6000), damaged},
		"deep colours":                      {pngOf(t, header(5000, 5000, 16, 6, 0), 10), memory},
		"deep greys with a clear one":       {withChunk(pngOf(t, header(5000, 5000, 16, 0, 0), 10), "tRNS", []byte{0, 0}), memory},
		"interlaced":                        {pngOf(t, header(6000, 6000, 8, 6, 1), 10), memory},
		"palette too long":                  {withChunk(pngOf(t, header(10, 10, 8, 3, 0), 110), "PLTE", make([]byte, 257*3)), damaged},
		"palette missing":                   {pngOf(t, header(10, 10, 8, 3, 0), 110), damaged},
		"text that unpacks without end":     {withChunk(whole[:len(whole)-13], "zTXt", append([]byte("fern\x00\x00"), zeros(t, 300<<20)...)), damaged},
		"unknown way of packing":            {pngOf(t, header(10, 10, 7, 0, 0), 110), "in a form that is not read"},
		"JPEG of too many pixels":           {jpegOf(0xC0, frame(65535, 65535, 0x11)), pixels},
		"JPEG without height":               {jpegOf(0xC0, frame(100, 0, 0x11)), damaged},
		"progressive":                       {jpegOf(0xC2, frame(6000, 6000, 0x22, 0x11, 0x11)), memory},
		"progressive CMYK":                  {jpegOf(0xC2, frame(4000, 3000, 0x11, 0x11, 0x11, 0x11)), memory},
		"large CMYK":                        {jpegOf(0xC0, frame(6000, 4000, 0x11, 0x11, 0x11, 0x11)), memory},
		"too many layers":                   {layers, "too many layers"},
		"arithmetic coding":                 {jpegOf(0xC9, frame(100, 100, 0x11)), "in a form that is not read"},
		"twelve bits":                       {jpegOf(0xC1, append([]byte{12}, frame(100, 100, 0x11)[1:]...)), "in a form that is not read"},
		"frame too short":                   {jpegOf(0xC0, frame(100, 100)[:4]), "in a form that is not read"},
		"two parts":                         {jpegOf(0xC0, frame(100, 100, 0x11, 0x11)), "in a form that is not read"},
		"20,000 parts":                      {jpegOf(0xC0, append(frame(100, 100), make([]byte, 60_000)...)), "in a form that is not read"},
		"GIF":                               {[]byte("GIF89a..."), "this is a GIF picture"},
		"WebP":                              {[]byte("RIFF\x10\x00\x00\x00WEBPVP8 "), "this is a WebP picture"},
		"HEIC":                              {[]byte("\x00\x00\x00\x18ftypheic\x00"), "this is a HEIC picture, as telephones take them"},
		"text":                              {[]byte("a picture of a fern"), "no picture that is read here"},
	} {
		before := allocated()
		p, err := Read("fern.png", c.file)
		if err == nil {
			t.Errorf("%s: read, %d x %d", name, p.Mask.W, p.Mask.H)
			continue
		}
		if !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "; ") {
			t.Errorf("%s: %v", name, err)
		}
		if used := allocated() - before; used > 200_000_000 {
			t.Errorf("%s takes %d MB", name, used/1_000_000)
		}
	}
}

// allocated is how much has ever been taken from the heap.
func allocated() uint64 {
	s := []metrics.Sample{{Name: "/gc/heap/allocs:bytes"}}
	metrics.Read(s)
	return s[0].Value.Uint64()
}

// The largest pictures there may be, in forms that take the most memory, take no more than 200 MB and
// a little.
func TestLargestPictures(t *testing.T) {
	photo, err := os.ReadFile(filepath.Join("testdata", "narrow.jpg"))
	if err != nil {
		t.Fatal(err)
	}
	at := bytes.Index(photo, []byte{0xFF, 0xC0})
	binary.BigEndian.PutUint16(photo[at+5:], 5000)
	binary.BigEndian.PutUint16(photo[at+7:], 8000)
	for name, file := range map[string][]byte{
		"colours and clear": pngOf(t, header(8000, 5000, 8, 6, 0), 5000*(1+4*8000)),
		"deep greys":        pngOf(t, header(8000, 5000, 16, 0, 0), 5000*(1+2*8000)),
		"two colours":       pngOf(t, header(8000, 5000, 1, 0, 0), 5000*(1+1000)),
		"JPEG, cut off":     photo,
	} {
		before := allocated()
		_, err := Read("fern.png", file)
		if used := allocated() - before; err == nil || used > 230_000_000 {
			t.Errorf("%s: %v, %d MB", name, err, used/1_000_000)
		}
	}
}
