package jobfile

import (
	"math"
	"strings"
	"testing"

	"underlay/template/picture"

	"github.com/google/go-cmp/cmp"
)

// halfInk is a mask of w x h with paint on the upper half.
func halfInk(w, h int) *picture.Mask {
	m := &picture.Mask{W: w, H: h, Paint: make([]uint8, w*h)}
	for i := range m.Paint[:w*h/2] {
		m.Paint[i] = 255
	}
	return m
}

// pictureJob is a job with blocks as written, and an item.
func pictureJob(blocks string) []byte {
	return []byte(blocks + "\n[[item]]\nname = 'floor cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\n")
}

// The share of paint is that of the face: half of its bounds are painted here. Areas by the formulas of
// any handbook.
func TestInkedFromThePicture(t *testing.T) {
	for _, c := range []struct {
		block string
		want  float64
	}{
		{"print = '90 x 60 mm'", 0.5},
		{"print = '90 x 60 mm'\ninked = 0.3", 0.3},
		{"shape = 'round'\nprint = '60 mm'", 0.5 * 4 / math.Pi},
		{"shape = 'hexagon'\nprint = '60 mm'", 0.5 * 4 / 3},
		{"shape = 'outline'\noutline = ['0 x 0 mm', '90 x 0 mm', '45 x 80 mm']", 1},
	} {
		job, err := ReadWith("nook.toml", pictureJob("[[block]]\nname = 'fern'\npicture = 'fern.png'\n"+c.block), func(name string) (*picture.Picture, error) {
			return &picture.Picture{Name: name, Mask: halfInk(90, 60)}, nil
		})
		if err != nil {
			t.Fatal(err)
		}
		if got := job.Blocks[0].Inked; math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: inked %g, want %g", c.block, got, c.want)
		}
		if job.Blocks[0].Picture.Name != "fern.png" {
			t.Errorf("%s: the picture is not kept", c.block)
		}
	}
}

// A picture that two blocks name is read once; one that cannot be read is said at both.
func TestPicturesAreReadOnce(t *testing.T) {
	const two = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\npicture = '%.png'\n" +
		"[[block]]\nname = 'frond'\nprint = '45 x 45 mm'\npicture = '%.png'\n"
	read := 0
	pictures := func(name string) (*picture.Picture, error) {
		read++
		_, err := picture.Read(name, nil)
		if name == "fern.png" {
			return &picture.Picture{Name: name, Mask: halfInk(16, 16)}, nil
		}
		return nil, err
	}
	job, err := ReadWith("nook.toml", pictureJob(strings.ReplaceAll(two, "%", "fern")), pictures)
	if err != nil || read != 1 || job.Blocks[0].Picture != job.Blocks[1].Picture {
		t.Errorf("%v: read %d times", err, read)
	}
	_, err = ReadWith("nook.toml", pictureJob(strings.ReplaceAll(two, "%", "wave")), pictures)
	const want = "nook.toml:4: picture: this file is empty; copy the picture again from where it came from\n" +
		"nook.toml:8: picture: this file is empty; copy the picture again from where it came from"
	if err == nil || err.Error() != want || read != 2 {
		t.Errorf("%v: read %d times", err, read)
	}
}

func TestPicturesInAll(t *testing.T) {
	var job strings.Builder
	for _, name := range []string{"fern", "wave", "pebble", "acorn", "seed"} {
		job.WriteString("[[block]]\nname = '" + name + "'\nprint = '90 x 90 mm'\npicture = '" + name + ".png'\n")
	}
	pictures := func(name string) (*picture.Picture, error) {
		return &picture.Picture{Name: name, Mask: halfInk(16, 16), File: make([]byte, picture.MostBytes)}, nil
	}
	_, err := ReadWith("nook.toml", pictureJob(job.String()), pictures)
	const want = "nook.toml:20: picture: the pictures of this job come to more than 128 MB with this one; save them smaller, such as 4000 pixels on the longer side"
	if err == nil || err.Error() != want {
		t.Error(err)
	}
}

func TestNoPictures(t *testing.T) {
	_, err := Read("nook.toml", pictureJob("[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\npicture = 'fern.png'\n"))
	const want = "nook.toml:4: picture: there are no pictures beside this job; take this line out"
	if err == nil || err.Error() != want {
		t.Error(err)
	}
}

func TestPictureNames(t *testing.T) {
	for text, want := range map[string][]string{
		"[[block]]\npicture = 'fern.png'\n[[block]]\npicture = 'wave.jpg'\n[[block]]\npicture = 'fern.png'\n": {"fern.png", "wave.jpg"},
		"block = [{picture = 'fern.png'}]":                           {"fern.png"},
		"[[block]]\npicture = '../fern.png'\n[[block]]\npicture = 7": nil,
		"[[block]]\nname = 'fern'":                                   nil,
		"picture = 'fern.png'":                                       nil,
		"block = 'fern.png'":                                         nil,
		"[[block]]\npicture = 'fern.png'\n[[block":                   nil,
		"": nil,
		"\ufeff[[block]]\r\npicture = 'fern.png'\r\n[[item]]\r\nx = 1\r\n": {"fern.png"},
	} {
		if d := cmp.Diff(want, PictureNames([]byte(text))); d != "" {
			t.Errorf("%s: %s", text, d)
		}
	}
}
