package picture

import (
	"bytes"
	"encoding/binary"
)

// The markers of a JPEG that matter here (ITU-T T.81, Table B.1).
const (
	markSOF0  = 0xC0
	markSOF2  = 0xC2 // progressive
	markRST0  = 0xD0
	markEOI   = 0xD9
	markSOS   = 0xDA
	markAPP1  = 0xE1
	markAPP14 = 0xEE
)

// lookJPEG reads what a JPEG file says of itself, and counts its scans: of a progressive one each
// goes over the whole picture, though it may be a few bytes long.
func lookJPEG(file []byte) (head, error) {
	var h head
	var frame []byte
	var progressive, adobe bool
	rest := file[2:]
	for {
		at := bytes.IndexByte(rest, 0xFF)
		if at < 0 || at+1 >= len(rest) {
			break
		}
		mark := rest[at+1]
		if mark == 0xFF { // filling
			rest = rest[at+1:]
			continue
		}
		rest = rest[at+2:]
		if mark == markEOI {
			break
		}
		if mark < markSOF0 || markRST0 <= mark && mark < markEOI {
			continue // no segment
		}
		if len(rest) < 2 {
			break
		}
		n := int(binary.BigEndian.Uint16(rest))
		if n < 2 || n > len(rest) {
			break
		}
		segment := rest[2:n]
		rest = rest[n:]
		switch mark {
		case markSOF0, markSOF0 + 1, markSOF2:
			if frame == nil {
				frame, progressive = segment, mark == markSOF2
			}
		case markSOS:
			h.scans++
		case markAPP1:
			if tiff := exifOf(segment); tiff != nil && h.turn == 0 {
				h.turn = orientation(tiff)
			}
		case markAPP14:
			adobe = true
		}
	}
	if n := len(frame); n != 6+3 && n != 6+3*3 && n != 6+4*3 { // of one part, three or four
		return head{}, unreadFrame(file)
	}
	h.h, h.w = int(binary.BigEndian.Uint16(frame[1:])), int(binary.BigEndian.Uint16(frame[3:]))
	h.memory = frameMemory(frame, h.w, h.h, progressive, adobe)
	return h, nil
}

// unreadFrame says what is wrong with a JPEG that has no frame of a form read here.
func unreadFrame(file []byte) error {
	k, _ := kindOf(file)
	_, err := k.decode(bytes.NewReader(file))
	if err == nil {
		err = errBroken
	}
	return unread(err)
}

// frameMemory returns how many bytes it takes to decode a frame (ITU-T T.81, B.2.2): its samples,
// of a progressive one also a number of four bytes for each, and where the colours are not those
// usual in a JPEG, a second picture.
func frameMemory(frame []byte, w, h int, progressive, adobe bool) int64 {
	type sampling struct{ across, down int64 }
	var parts []sampling
	most := sampling{1, 1}
	rgb := ""
	for c := frame[6:]; len(c) >= 3; c = c[3:] {
		s := sampling{int64(c[1] >> 4), int64(c[1] & 15)}
		parts, rgb = append(parts, s), rgb+string(rune(c[0]))
		most = sampling{max(most.across, s.across), max(most.down, s.down)}
	}
	pixels := int64(w) * int64(h)
	var samples int64
	for _, s := range parts {
		samples += pixels * s.across * s.down / (most.across * most.down)
	}
	if len(parts) == 1 {
		samples = pixels
	}
	memory := samples
	if progressive {
		memory += 4 * samples
	}
	if adobe || rgb == "RGB" || len(parts) == 4 {
		memory += 4 * pixels
	}
	return memory
}
