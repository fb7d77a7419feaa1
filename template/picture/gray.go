package picture

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/draw"
	"image/jpeg"
	"image/png"
)

// Gray reads the bytes of a PNG or JPEG file as greys, as they are to be seen: turned as its Exif
// data say, and transparent parts on white. It looks at the size before it decodes anything. The
// error is a plain sentence: what is wrong with the picture, and what to do.
func Gray(file []byte) (*image.Gray, error) {
	if len(file) > MostBytes {
		return nil, errors.New("this picture's file is larger than 32 MB; save it smaller, such as 4000 pixels on its longer side")
	}
	kind, err := kindOf(file)
	if err != nil {
		return nil, err
	}
	head, err := kind.look(file)
	if err != nil {
		return nil, err
	}
	if err := head.check(); err != nil {
		return nil, err
	}
	m, err := kind.decode(bytes.NewReader(file))
	if err != nil {
		return nil, unread(err)
	}
	return toGray(m, head.turn), nil
}

// unread says what is wrong with a picture that its decoder refuses.
func unread(err error) error {
	_, png := errors.AsType[png.UnsupportedError](err)
	_, jpeg := errors.AsType[jpeg.UnsupportedError](err)
	if png || jpeg {
		return errors.New("this picture is saved in a form that is not read here; open it, and save it as a plain PNG or JPEG")
	}
	return errBroken
}

var errBroken = errors.New("this picture is cut off or damaged; copy it again from where it came from, or save it anew")

// head is what the first part of a file says of its picture.
type head struct {
	w, h   int
	memory int64 // bytes that decoding takes
	scans  int   // how often decoding goes over the picture
	turn   turn
}

const (
	mostMemory = 160_000_000 // 40 megapixels of four bytes
	mostScans  = 100         // a progressive JPEG has about ten
	mostLong   = 65_535      // on a side, as in a JPEG
)

func (h head) check() error {
	const smaller = "save it smaller, such as 4000 pixels on its longer side"
	switch {
	case h.w < 1 || h.h < 1:
		return errBroken
	case int64(h.w)*int64(h.h) > MostPixels:
		return fmt.Errorf("this picture has %d x %d pixels, more than 40 million; %s", h.w, h.h, smaller)
	case max(h.w, h.h) > mostLong:
		return fmt.Errorf("this picture has %d x %d pixels, more than 65,535 on a side; %s", h.w, h.h, smaller)
	case h.memory > mostMemory:
		return fmt.Errorf("this picture, %d x %d pixels, is saved in a form that takes too much memory; save it as a plain JPEG, or %s", h.w, h.h, smaller[len("save it "):])
	case h.scans > mostScans:
		return errors.New("this picture is saved in too many layers; open it, and save it as a plain PNG or JPEG")
	}
	return nil
}

// toGray draws a picture on white, in greys, and turns it.
func toGray(m image.Image, t turn) *image.Gray {
	from := m.Bounds()
	w, h := from.Dx(), from.Dy()
	out := image.NewGray(image.Rectangle{Max: t.size(w, h)})
	row := image.NewRGBA(image.Rect(0, 0, w, 1))
	for y := range h {
		draw.Draw(row, row.Rect, image.White, image.Point{}, draw.Src)
		draw.Draw(row, row.Rect, m, image.Pt(from.Min.X, from.Min.Y+y), draw.Over)
		at, step := t.row(out, w, h, y)
		for x := range w {
			p := row.Pix[4*x:]
			out.Pix[at] = grey(p[0], p[1], p[2])
			at += step
		}
	}
	return out
}

// grey returns how light a colour looks (ITU-R BT.601), with the weights of color.GrayModel.
func grey(r, g, b uint8) uint8 {
	const red, green, blue = 19595, 38470, 7471 // of 65536
	return uint8(((red*uint32(r)+green*uint32(g)+blue*uint32(b))*0x101 + 1<<15) >> 24)
}
