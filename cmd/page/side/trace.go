package side

import (
	"bytes"
	"fmt"
	"math"
	"path"
	"strings"

	"underlay/geometry"
	"underlay/template/guide"
	"underlay/template/job"
	"underlay/template/picture"
	"underlay/template/say"
	"underlay/template/trace"
	"underlay/template/words"
)

// Traced is a block as it was measured from a photograph.
type Traced struct {
	Name    string `json:"name"`  // what the block is called
	Picture File   `json:"-"`     // its print, a PNG at true size, by the name that the job gives it
	Print   string `json:"print"` // "61.4 x 80.2 mm"
	Inked   string `json:"inked"` // "0.42"
	Block   string `json:"block"` // all of it, as a job has it
	// Edits are what a block of the job is to be given, each path within the block.
	Edits []Edit `json:"edits"`
	Words string `json:"words"` // how sure that is, in lines
}

// Trace measures a block from a photograph, a PNG or JPEG, of one print of it in the window that
// Window draws, and keeps its picture as Picture does. Name is what the block is called; "": as the
// photograph's file, photo. Across and down are what the window page's two bars measure, "" for what they
// are to measure. The error is a plain sentence.
func (s *Side) Trace(file []byte, photo, name, across, down string) (Traced, error) {
	wide, err := bar("across", across, guide.WindowAcross)
	if err != nil {
		return Traced{}, err
	}
	high, err := bar("down", down, guide.WindowDown)
	if err != nil {
		return Traced{}, err
	}
	grey, err := picture.Gray(file)
	if err != nil {
		return Traced{}, err
	}
	p, err := trace.Photo(grey)
	if err != nil {
		return Traced{}, err
	}
	p = p.Scaled(wide, high)
	if name = strings.TrimSpace(name); name == "" {
		photo = plainName(photo)
		name = strings.TrimSpace(strings.TrimSuffix(photo, path.Ext(photo)))
	}
	if name == "" {
		name = "block"
	}
	png := name + ".png"
	if picture.CheckName(png) != nil {
		png = "traced.png"
	}
	var content bytes.Buffer
	if err := picture.WritePNG(&content, p.Mask, trace.PixelsPerMM*1000); err != nil {
		return Traced{}, err
	}
	if err := s.Picture(png, content.Bytes()); err != nil {
		return Traced{}, err
	}
	size, inked := say.TracedSize(p), say.TracedInked(p)
	return Traced{
		Name: name, Picture: File{png, content.Bytes()}, Print: size, Inked: inked,
		Block: say.TracedBlock(name, png, p), Words: words.UpperFirst(say.Traced(p)),
		Edits: []Edit{{"print", size}, {"inked", inked}, {"picture", png}},
	}, nil
}

// bar returns how much longer than drawn a bar of the window page came out.
func bar(way, measured string, drawn geometry.Length) (float64, error) {
	if strings.TrimSpace(measured) == "" {
		return 1, nil
	}
	l, err := geometry.ParsePositive(measured)
	if err != nil {
		return 0, err
	}
	if math.Abs(float64(l-drawn)) > float64(drawn*job.MostOff+geometry.Tolerance) {
		show := geometry.UnitMM.Format
		return 0, fmt.Errorf("%s: %s is more than 3 %% off the %s that the bar is drawn: the page was printed “fit to page”; print it again at 100 %%, and take the photograph again", way, show(l), show(drawn))
	}
	return float64(l / drawn), nil
}
