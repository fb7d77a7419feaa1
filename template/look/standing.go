package look

import (
	"math"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// standing is a shade as it stands, seen straight on from the front, its seam at the back (an
// orthographic projection). Its frame has the middle of the upper rim at (0, 0).
type standing struct {
	flat   *plan.Development // of a cone
	middle geometry.Length   // of a drum: x of its front, laid flat
	shade  job.Shade
}

// stood stands up a shade that is laid flat.
func stood(ip *plan.ItemPlan) standing {
	shade := ip.Item.Shade
	if ip.Area.Flat == nil { // by the tape round it, which closes
		shade.Top = ip.Area.Cloth.W() / math.Pi
		shade.Bottom = shade.Top
	}
	return standing{ip.Area.Flat, ip.Area.Cloth.Centre().X, shade}
}

// at returns where a point of the shade laid flat is seen. Laid flat, a drum of radius r has its
// points at x from the middle, which go round by x/r: they are seen at r sin(x/r). A cone has them at
// a radius from its apex and at an angle, which is to the sector's as the way round to a whole circle;
// both ends of the cone, and the heights between, are to those radii as the wide end's to the largest.
func (s standing) at(p geometry.Point) geometry.Point {
	if s.flat == nil {
		r := s.shade.Top / 2
		return geometry.Pt(r*geometry.Length(math.Sin(float64((p.X-s.middle)/r))), p.Y)
	}
	q := p.Sub(s.flat.Apex)
	from := q.Norm()
	round := math.Atan2(float64(q.X), float64(q.Y)) * 2 * math.Pi / s.flat.Angle.Radians()
	r := s.shade.Bottom / 2 * from / s.flat.Outer
	return geometry.Pt(
		r*geometry.Length(math.Sin(round)),
		s.shade.Height*(from-s.flat.Inner)/(s.flat.Outer-s.flat.Inner))
}

// bounds are those of the shade as it is seen.
func (s standing) bounds() geometry.Rect {
	half := max(s.shade.Top, s.shade.Bottom) / 2
	return geometry.Rect{Min: geometry.Pt(-half, 0), Max: geometry.Pt(half, s.shade.Height)}
}

// edge is the outline of the shade as it is seen: both rims straight on are lines.
func (s standing) edge() geometry.Path {
	top, bottom := s.shade.Top/2, s.shade.Bottom/2
	return geometry.Polygon{{X: -top}, {X: top}, {X: bottom, Y: s.shade.Height}, {X: -bottom, Y: s.shade.Height}}.Path()
}

// seen returns closed paths of straight steps of the shade laid flat as they are seen, no further than
// slack from where they belong.
func (s standing) seen(path geometry.Path, slack geometry.Length) geometry.Path {
	out := make(geometry.Path, 0, len(path))
	for _, piece := range path {
		points := cornersOf(piece)
		var q geometry.Polygon
		for i, a := range points {
			b := points[(i+1)%len(points)]
			q = s.follow(append(q, s.at(a)), a, b, slack, 0)
		}
		out = append(out, q.Path()...)
	}
	return out
}

// follow appends what it takes between the ends of a straight step for steps to follow the curve
// that it is seen as.
func (s standing) follow(q geometry.Polygon, a, b geometry.Point, slack geometry.Length, depth int) geometry.Polygon {
	const deepest = 12
	middle := a.Add(b).Mul(0.5)
	at, from, to := s.at(middle), s.at(a), s.at(b)
	// A step that is long beside the shade may bend both ways and have its middle on the line.
	long := a.Distance(b) > s.bounds().W()/8
	if depth == deepest || !long && at.Distance(from.Add(to).Mul(0.5)) <= slack {
		return q
	}
	q = append(s.follow(q, a, middle, slack, depth+1), at)
	return s.follow(q, middle, b, slack, depth+1)
}

// Most corners of all the prints that are seen of a shade: each print is drawn by itself.
const mostSeen = 60_000

// Standing draws a shade as it will stand, in the colours of one colouring, as large as goes into a
// box of a page and at its top left: seen straight on from the front, with the seam at the back. The
// marks of prints are less than 0.1 mm from where they belong on the page.
func Standing(j *job.Job, face plan.FacePlan, c job.Colouring, box geometry.Rect) paper.View {
	const slack = 0.03 * geometry.Millimetre
	d := &paper.Drawing{Bounds: box}
	shade := stood(face.Item)
	s := Fitted(shade.bounds(), box.Grow(-1))
	sides := sidesOf(face.Item)
	front := sides.edges(0.5)
	see := func(path geometry.Path) geometry.Path {
		for _, e := range front {
			path = kept(path, e.on, e.inwards)
		}
		return shade.seen(path, slack/s.K).Map(s.At)
	}
	ground(d, shade.edge().Map(s.At), Cloth(j, face, c))
	for _, z := range face.Item.Item.Zones {
		if path := see(z.Rect.Polygon().Path()); len(path) > 0 {
			d.Fill(path, paper.Grey(238))
		}
	}
	for i, p := range face.Passes {
		layers := map[*job.Block][]layer{}
		for k, b := range p.Blocks() {
			layers[b] = layersOf(j, p, b, c, i+k, s.K, max(1, face.Count()/2), mostSeen)
		}
		for k, print := range p.Prints {
			sites := []plan.Site{print.Site}
			if print.Seam {
				sites = append(sites, sides.again(print.Site)[1].Site)
			}
			reach := print.Block.Face.Bounds().Size()
			for _, l := range layers[print.Block] {
				for _, at := range sites {
					if behind(front, at.Origin, geometry.Pt(reach.W, reach.H).Norm()/2) {
						continue
					}
					if path := see(placed(l.path, at)); len(path) > 0 {
						d.Fills = append(d.Fills, paper.Fill{Shape: paper.Once(path), Ink: l.ink, Role: paper.Role{Kind: RolePrint, Number: p.NumberOf(k)}})
					}
				}
			}
		}
	}
	d.Stroke(shade.edge().Map(s.At), paper.Pen{Width: clothLine})
	return paper.View{Drawing: d, Area: box, At: box.Min}
}

// behind tells whether nothing within reach of a point is seen from the front.
func behind(front [2]edge, p geometry.Point, reach geometry.Length) bool {
	for _, e := range front {
		if q := p.Sub(e.on); q.X*e.inwards.X+q.Y*e.inwards.Y < -reach {
			return true
		}
	}
	return false
}

// StandingSize returns how large a shade is seen to be from the front.
func StandingSize(ip *plan.ItemPlan) geometry.Size { return stood(ip).bounds().Size() }
