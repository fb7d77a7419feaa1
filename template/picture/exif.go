package picture

import (
	"bytes"
	"encoding/binary"
)

// orientation returns what the tag of that name in Exif data says, 1 to 8; 0 where it says nothing
// that is understood. The data is a TIFF file (TIFF 6.0, section 2), of which the first directory
// is looked at.
func orientation(tiff []byte) turn {
	const header, tagOrientation, short = 8, 0x0112, 3
	if len(tiff) < header {
		return 0
	}
	var order binary.ByteOrder = binary.LittleEndian
	switch string(tiff[:4]) {
	case "II*\x00":
	case "MM\x00*":
		order = binary.BigEndian
	default:
		return 0
	}
	at := uint64(order.Uint32(tiff[4:]))
	if at+2 > uint64(len(tiff)) {
		return 0
	}
	entries := tiff[at+2:]
	for range order.Uint16(tiff[at:]) {
		const size = 12
		if len(entries) < size {
			return 0
		}
		if e := entries; order.Uint16(e) == tagOrientation && order.Uint16(e[2:]) == short && order.Uint32(e[4:]) == 1 {
			if v := order.Uint16(e[8:]); 1 <= v && v <= 8 {
				return turn(v)
			}
			return 0
		}
		entries = entries[size:]
	}
	return 0
}

// exifOf returns the Exif data in a JPEG's APP1 segment, what stands in it; nil where it is another.
func exifOf(segment []byte) []byte {
	tiff, _ := bytes.CutPrefix(segment, []byte("Exif\x00\x00"))
	if len(tiff) == len(segment) {
		return nil
	}
	return tiff
}
