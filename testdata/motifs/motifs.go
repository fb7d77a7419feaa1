// Package motifs draws the carved blocks of the examples: fern, pebble, wave, acorn. They are our own,
// made of curves, and come out as pictures of one print each, for the examples and for tests.
//
// Frame: millimetres, x to the right, y down, from the middle of the face; the block's top upwards.
package motifs

import (
	"bytes"

	"underlay/template/picture"
)

// Motif is the print of one block.
type Motif struct {
	File          string  // its picture in the folder of the examples
	Width, Height float64 // of the face
	carve         func(*block)
}

// All returns every motif, each with its own picture.
func All() []Motif {
	return []Motif{
		{"fern.png", 90, 90, fern},
		{"fern-tall.png", 110, 148, fern},
		{"fern-upright.png", 60, 72, fern},
		{"pebble.png", 32, 32, pebble},
		{"pebbles.png", 30, 30, pebbles},
		{"pebble-flat.png", 42, 32, flatPebble},
		{"wave.png", 60, 40, wave},
		{"wave-short.png", 55, 40, wave},
		{"wave-long.png", 60, 30, wave},
		{"acorn.png", 50, 60, acorn},
		{"acorn-tall.png", 55, 70, acorn},
		{"acorn-wide.png", 40, 45, acorn},
		{"acorn-square.png", 45, 45, acorn},
		{"acorn-outline.png", 60, 80, acornOutline},
		{"acorn-fill.png", 54, 70, acornFill},
	}
}

// PNG returns the picture: black on white, 1 bit a pixel, with a plain margin round the print. The same
// motif gives the same bytes on every machine.
func (m Motif) PNG() ([]byte, error) {
	b := &block{w: m.Width, h: m.Height}
	m.carve(b)
	var out bytes.Buffer
	err := picture.WritePNG(&out, b.print(), 1000*dotsPerMM)
	return out.Bytes(), err
}
