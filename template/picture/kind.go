package picture

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"io"
)

// kind is a way pictures are saved.
type kind struct {
	begins string
	mime   string // its media type (RFC 2046; RFC 2083 for PNG)
	look   func(file []byte) (head, error)
	decode func(io.Reader) (image.Image, error)
}

// kinds has a line for each way of saving pictures that is read.
func kinds() []kind {
	return []kind{
		{"\x89PNG\r\n\x1a\n", "image/png", lookPNG, png.Decode},
		{"\xff\xd8\xff", "image/jpeg", lookJPEG, jpeg.Decode},
	}
}

// others are the beginnings of files that makers may take for a PNG or JPEG, and what they are.
func others() []struct{ at, begins, is string } {
	return []struct{ at, begins, is string }{
		{"", "GIF8", "a GIF picture"},
		{"", "BM", "a BMP picture"},
		{"", "II*\x00", "a TIFF picture, or a camera's raw one"},
		{"", "MM\x00*", "a TIFF picture, or a camera's raw one"},
		{"RIFF....", "WEBP", "a WebP picture"},
		{"....", "ftypheic", "a HEIC picture, as telephones take them"},
		{"....", "ftypheix", "a HEIC picture, as telephones take them"},
		{"....", "ftypmif1", "a HEIC picture, as telephones take them"},
		{"....", "ftypavif", "an AVIF picture"},
		{"", "%PDF-", "a PDF"},
		{"", "<svg", "an SVG drawing"},
		{"", "<?xml", "an SVG drawing, or another text"},
	}
}

// kindOf tells what a file is by how it begins: its name may be wrong.
func kindOf(file []byte) (kind, error) {
	for _, k := range kinds() {
		if bytes.HasPrefix(file, []byte(k.begins)) {
			return k, nil
		}
	}
	if len(file) == 0 {
		return kind{}, errors.New("this file is empty; copy the picture again from where it came from")
	}
	for _, o := range others() {
		if len(file) > len(o.at) && bytes.HasPrefix(file[len(o.at):], []byte(o.begins)) {
			return kind{}, fmt.Errorf("this is %s, whatever its name says; open it, and save it as PNG or JPEG", o.is)
		}
	}
	return kind{}, errors.New("this is no picture that is read here; save it as PNG or JPEG")
}

// MediaType returns the media type of a picture's file, such as "image/png"; "" of what is none.
func MediaType(file []byte) string {
	k, _ := kindOf(file)
	return k.mime
}
