package picture

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image/png"
	"math/rand/v2"
	"testing"
)

// chunks takes a PNG apart (W3C PNG specification, 5.3), and checks each chunk's sum.
func chunks(t *testing.T, file []byte) (names []string, data map[string][]byte) {
	t.Helper()
	data = map[string][]byte{}
	for rest := file[8:]; len(rest) > 0; {
		n := binary.BigEndian.Uint32(rest)
		name, content := string(rest[4:8]), rest[8:8+n]
		if crc32.ChecksumIEEE(rest[4:8+n]) != binary.BigEndian.Uint32(rest[8+n:]) {
			t.Errorf("the sum of %s is wrong", name)
		}
		names, data[name] = append(names, name), content
		rest = rest[12+n:]
	}
	return names, data
}

// A mask is written with one bit a pixel and its size on paper, and reads as the same print.
func TestWritePNG(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, w := range []int{16, 17, 23, 1600} {
		m := &Mask{W: w, H: 20, Paint: make([]uint8, w*20)}
		for i := range m.Paint {
			m.Paint[i] = uint8(r.IntN(256))
		}
		var file bytes.Buffer
		if err := WritePNG(&file, m, 20_000); err != nil {
			t.Fatal(err)
		}
		names, data := chunks(t, file.Bytes())
		if names[0] != "IHDR" || names[1] != "pHYs" || data["IHDR"][8] != 1 {
			t.Errorf("chunks %v, %d bits a pixel", names, data["IHDR"][8])
		}
		// pHYs: pixels across, pixels down, and 1 for the metre (11.3.4.3).
		if want := []byte{0, 0, 0x4E, 0x20, 0, 0, 0x4E, 0x20, 1}; !bytes.Equal(data["pHYs"], want) {
			t.Errorf("size % x", data["pHYs"])
		}
		read, err := png.Decode(bytes.NewReader(file.Bytes()))
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range m.Paint {
			grey, _, _, _ := read.At(i%w, i/w).RGBA()
			if want := p < half; (grey == 0xFFFF) != want || grey != 0 && grey != 0xFFFF {
				t.Fatalf("pixel %d with paint %d is written as %x", i, p, grey)
			}
		}
	}
}

// full is a disk with no room.
type full struct{}

var errFull = errors.New("no room")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestWritePNGFails(t *testing.T) {
	if err := WritePNG(full{}, &Mask{W: 1, H: 1, Paint: []uint8{255}}, 1); err != errFull {
		t.Error(err)
	}
	if err := WritePNG(&bytes.Buffer{}, &Mask{}, 1); err == nil {
		t.Error("a mask of no pixels is written")
	}
}
