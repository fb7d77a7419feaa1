package picture

import (
	"encoding/binary"
)

// lookPNG reads what stands in a PNG file before its pixels (W3C PNG specification, 5 and 11.2.2).
func lookPNG(file []byte) (head, error) {
	const signature, lengthAndType, crc, headerSize = 8, 8, 4, 13
	var h head
	var perPixel int64
	deep := int64(1)
	for rest := file[signature:]; len(rest) >= lengthAndType; {
		n := int64(binary.BigEndian.Uint32(rest))
		name, data := string(rest[4:lengthAndType]), rest[lengthAndType:]
		if n > int64(len(data))-crc {
			break
		}
		data, rest = data[:n], data[n+crc:]
		if first := perPixel == 0; first != (name == "IHDR") || first && n != headerSize {
			break
		}
		switch name {
		case "IHDR":
			h.w, h.h = side(data), side(data[4:])
			if data[8] == 16 {
				deep = 2
			}
			perPixel = deep
			if colours := data[9]; colours != 0 && colours != 3 {
				perPixel = 4 * deep
			}
			h.memory = int64(h.w) * int64(h.h)
			if interlaced := data[12] != 0; interlaced {
				h.memory += h.memory / 2
			}
		case "tRNS":
			perPixel = max(perPixel, 4*deep)
		case "eXIf":
			h.turn = orientation(data)
		case "IDAT":
			h.memory *= perPixel
			return h, nil
		}
	}
	return head{}, errBroken
}

// side reads the width or height of a PNG; 0 where it is not one.
func side(data []byte) int {
	n := binary.BigEndian.Uint32(data)
	if n > 1<<31-1 {
		return 0
	}
	return int(n)
}
