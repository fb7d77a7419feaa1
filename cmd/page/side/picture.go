package side

import (
	"bytes"
	"fmt"

	"underlay/geometry"
	"underlay/paper"
	"underlay/paper/svg"
	"underlay/template/bench"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
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

// edge is the room round the cloth in a picture.
const edge = 1 * geometry.Millimetre

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
	ways := v.colourings(face)
	for _, c := range ways {
		name := "as the passes name them"
		if c.Colourway != nil {
			name = c.Colourway.Name
		}
		v.Colourways = append(v.Colourways, name)
	}
	v.Colourway = within(v.picked.Colourway, len(ways))
	v.Picture = v.picture("look-", face, func(box geometry.Rect) paper.View { return flat(v.plan.Job, face, ways[v.Colourway], box) })
	v.Order = v.picture("order-", face, func(box geometry.Rect) paper.View {
		view, _ := bench.OrderPicture(face, box)
		return view
	})
	v.Words = v.inWords(face, ways[v.Colourway])
	v.dragged(face)
}

// colourings are the ways in which pieces of a face are coloured.
func (v view) colourings(face plan.FacePlan) []job.Colouring {
	var ways []job.Colouring
	for _, c := range v.plan.Job.Items[v.Item].Colourings() {
		for _, name := range append(face.Names, "") {
			if c.On(name) {
				ways = append(ways, c)
				break
			}
		}
	}
	if len(ways) == 0 {
		ways = []job.Colouring{{}}
	}
	return ways
}

// picture draws a face as wide as was asked for, unless that makes it too high. Ids in it begin with a
// word of its own.
func (v view) picture(ids string, face plan.FacePlan, draw func(box geometry.Rect) paper.View) *Picture {
	cloth := face.Item.Area.Cloth
	w := geometry.Length(min(max(v.width, leastWidth), mostWidth))*pixel - 2*edge
	k := w / cloth.W()
	if high := cloth.H() * k; high > mostHigh*w {
		k *= mostHigh * w / high
	}
	box := geometry.Rect{Max: geometry.Pt(cloth.W()*k+2*edge, cloth.H()*k+2*edge)}
	page := paper.Page{Size: box.Size(), Views: []paper.View{draw(box)}}
	var out bytes.Buffer
	if err := svg.WritePage(&out, "", page, svg.Options{IDs: ids}); err != nil {
		return nil
	}
	room := edge / k
	shown := cloth.Grow(room)
	return &Picture{SVG: out.String(), Prints: face.Count(), Box: boxOf(shown)}
}

func boxOf(r geometry.Rect) Box {
	return Box{float64(r.Min.X), float64(r.Min.Y), float64(r.W()), float64(r.H())}
}

// flat draws a face as it will look.
func flat(j *job.Job, face plan.FacePlan, c job.Colouring, box geometry.Rect) paper.View {
	d := &paper.Drawing{Bounds: box}
	cloth, inner := face.Item.Area.Cloth, box.Grow(-edge)
	k := min(inner.W()/cloth.W(), inner.H()/cloth.H())
	at := func(p geometry.Point) geometry.Point { return p.Sub(cloth.Min).Mul(float64(k)).Add(inner.Min) }
	d.Stroke(face.Item.Area.ClothPath().Map(at), paper.Pen{Width: 0.35})
	for _, z := range face.Item.Item.Zones {
		d.Fill(z.Rect.Polygon().Path().Map(at), paper.Grey(225))
	}
	for _, p := range face.Passes {
		shapes := map[*job.Block]*paper.Shape{}
		colour := ""
		if len(p.Pass.Colours) > 0 {
			colour = c.Colour(p.Pass.Colours[0])
		}
		ink, _ := j.Looks(colour)
		for _, b := range p.Blocks() {
			shapes[b] = paper.NewShape(b.Face.Path().Map(func(p geometry.Point) geometry.Point { return p.Mul(float64(k)) }))
		}
		for i, print := range p.Prints {
			d.StampFill(shapes[print.Block], paper.Place{At: at(print.Origin), Turn: print.Turn}, ink, paper.Role{Kind: "print", Number: p.First + i})
		}
	}
	return paper.View{Drawing: d, Area: box, At: box.Min}
}

// inWords says what a picture shows, for those who cannot see it.
func (v view) inWords(face plan.FacePlan, c job.Colouring) string {
	u := v.plan.Job.Units
	it := face.Item.Item
	text := fmt.Sprintf("%s, %s", words.UpperFirst(words.Shown(face.Label())), u.FormatSize(face.Item.Area.Cloth.Size()))
	if it.Shape != job.Rectangle {
		text += ", " + string(it.Shape)
	}
	text += "."
	for _, p := range face.Passes {
		text += " " + words.UpperFirst(words.Shown(p.Pass.Name)) + ": " + say.Answer(u, face.Item, p.PassPlan)
		var colours []string
		for _, name := range p.Pass.Colours {
			colours = append(colours, words.Shown(c.Colour(name)))
		}
		if len(colours) > 0 {
			text += " In " + words.InWords(colours) + "."
		}
	}
	for _, z := range it.Zones {
		text += fmt.Sprintf(" %s is kept clear, %s, its top left corner %s from the left and %s from the top.",
			words.UpperFirst(words.Shown(z.Name)), u.FormatSize(z.Rect.Size()), u.Format(z.Rect.Min.X), u.Format(z.Rect.Min.Y))
	}
	return text
}
