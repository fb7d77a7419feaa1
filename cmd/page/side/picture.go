package side

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/png"
	"strings"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/raster"
	"underlay/paper/svg"
	"underlay/template/bench"
	"underlay/template/job"
	"underlay/template/look"
	"underlay/template/plan"
)

// The widths of a picture that are drawn, in pixels of a screen, and how high one is at the most beside
// its width.
const (
	leastWidth = 160
	mostWidth  = 2400
	mostHigh   = 2.4
)

// pixel is that of CSS: 96 to the inch (CSS Values and Units 4, 6.2, from memory).
const pixel = geometry.Inch / 96

// edge is the room round the cloth in a picture, as package look leaves it.
const edge = 1 * geometry.Millimetre

// The most prints of a picture that is drawn mark by mark, and the most bytes of it; any other is an
// image.
const (
	mostMarked = 5000
	mostSVG    = 400_000
)

// draw fills in the pictures, and where the things are that can be dragged.
func (v view) draw() {
	faces := v.ip.Faces()
	if len(faces) == 0 {
		return
	}
	for _, f := range faces {
		v.Faces = append(v.Faces, f.Name())
	}
	v.Face = within(v.picked.Face, len(faces))
	face := faces[v.Face]
	ways := look.Colourings(face)
	if len(ways) == 0 {
		ways = []job.Colouring{{}}
	}
	for _, c := range ways {
		name := "as the passes name them"
		if c.Colourway != nil {
			name = c.Colourway.Name
		}
		v.Colourways = append(v.Colourways, name)
	}
	v.Colourway = within(v.picked.Colourway, len(ways))
	way := ways[v.Colourway]
	cloth := face.Item.Area.Cloth
	wanted := func(name string) bool { return v.picked.Only == "" || v.picked.Only == name }
	if wanted("look") {
		v.Picture = v.picture("look-", face, cloth.Size(), func(box geometry.Rect) paper.View { return look.Flat(v.plan.Job, face, way, box) })
	}
	if wanted("order") {
		v.Order = v.picture("order-", face, cloth.Size(), func(box geometry.Rect) paper.View {
			view, _ := bench.OrderPicture(face, box)
			return view
		})
	}
	if it := face.Item.Item; it.Shape.Shade() && wanted("look") {
		size := geometry.Size{W: max(it.Shade.Top, it.Shade.Bottom), H: it.Shade.Height}
		v.Stands = v.picture("stands-", face, size, func(box geometry.Rect) paper.View { return look.Standing(v.plan.Job, face, way, box) })
	}
	v.Words = v.inWords(face, way)
	v.dragged(face)
}

// picture draws a face of a size as wide as was asked for, unless that makes it too high. Ids in it
// begin with a word of its own.
func (v view) picture(ids string, face plan.FacePlan, size geometry.Size, draw func(box geometry.Rect) paper.View) *Picture {
	w := geometry.Length(min(max(v.width, leastWidth), mostWidth))*pixel - 2*edge
	k := w / size.W
	if high := size.H * k; high > mostHigh*w {
		k *= mostHigh * w / high
	}
	box := geometry.Rect{Max: geometry.Pt(size.W*k+2*edge, size.H*k+2*edge)}
	p := &Picture{Prints: face.Count(), Box: boxOf(geometry.RectAt(face.Item.Area.Cloth.Min, size).Grow(edge / k))}
	page := paper.Page{Size: box.Size(), Views: []paper.View{draw(box)}}
	if p.Prints <= mostMarked {
		var out bytes.Buffer
		if err := svg.WritePage(&out, "", page, svg.Options{IDs: ids}); err != nil {
			return nil
		}
		p.SVG = out.String()
	}
	if p.Prints > mostMarked || len(p.SVG) > mostSVG {
		p.SVG, p.Image = imageOf(page), true
	}
	return p
}

// imageOf draws a page as an image in a picture; "" where it cannot be.
func imageOf(page paper.Page) string {
	m, err := raster.Draw(page, int(page.Size.W/pixel))
	if err != nil {
		return ""
	}
	var shown image.Image = m
	if grey, ok := inGrey(m); ok {
		shown = grey
	}
	var file bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&file, shown); err != nil {
		return ""
	}
	w, h := geometry.Decimals(float64(page.Size.W), 3), geometry.Decimals(float64(page.Size.H), 3)
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="%smm" height="%smm" viewBox="0 0 %s %s">`, w, h, w, h)
	fmt.Fprintf(&b, `<image width="%s" height="%s" href="data:image/png;base64,%s"/></svg>`, w, h, base64.StdEncoding.EncodeToString(file.Bytes()))
	return b.String()
}

// inGrey returns an image without colours in the fewer bytes that it takes; false where it has some.
func inGrey(m *image.RGBA) (*image.Gray, bool) {
	grey := image.NewGray(m.Rect)
	for i := range grey.Pix {
		p := m.Pix[4*i : 4*i+3]
		if p[0] != p[1] || p[1] != p[2] {
			return nil, false
		}
		grey.Pix[i] = p[0]
	}
	return grey, true
}

func boxOf(r geometry.Rect) Box {
	return Box{float64(r.Min.X), float64(r.Min.Y), float64(r.W()), float64(r.H())}
}
