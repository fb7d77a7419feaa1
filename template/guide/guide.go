package guide

import (
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// guide draws a face at true size, in the frame of the item.
type guide struct {
	*paper.Drawing
	job   *job.Job
	face  plan.FacePlan
	pens  pens
	crowd *Crowd // text, and what text may not lie on
	lines *Crowd // lines that text keeps off
	// covered is, of several passes, where the prints of each lie.
	covered []*Crowd
	layered bool
	cloth   geometry.Rect // bounds of the item
	reach   geometry.Length
	// slantLines are the slanted ticks.
	slantLines [][2]geometry.Point
	unnamed    []string // what found no place, by name
}

// Draw draws the guide for a face: the cloth, the prints, and outside the cloth the ticks.
// With the extent "edges" only what lies outside the cloth, and the cloth's edge.
func Draw(j *job.Job, face plan.FacePlan) *paper.Drawing {
	return drawIn(j, face, bounds(face.Item, j)).Drawing
}

// drawIn draws the guide with what room for ticks the bounds leave round the cloth.
func drawIn(j *job.Job, face plan.FacePlan, bounds geometry.Rect) *guide {
	g := newGuide(j, face, bounds)
	if len(face.Passes) > 1 {
		g.covered = covered(face, bounds)
	}
	g.drawMove()
	if j.Paper.Extent == job.EdgesExtent {
		g.drawEdge()
	} else {
		g.drawCloth()
		g.drawPrints()
	}
	g.drawTicks()
	if face.Item.Item.Shape.Shade() {
		g.nameEnds()
	}
	return g
}

// newGuide returns a guide with nothing drawn yet.
func newGuide(j *job.Job, face plan.FacePlan, bounds geometry.Rect) *guide {
	cloth := face.Item.Area.Cloth
	return &guide{
		Drawing: &paper.Drawing{Bounds: bounds},
		job:     j, face: face, pens: NewPens(j.Paper.Lines), crowd: NewCrowd(bounds), lines: NewCrowd(bounds), cloth: cloth,
		reach:   reachOf(face.Item, bounds),
		layered: layered(face),
	}
}

// covered returns where the prints of each pass lie.
func covered(face plan.FacePlan, area geometry.Rect) []*Crowd {
	var all []*Crowd
	for _, p := range face.Passes {
		c := NewCrowd(area)
		for _, print := range p.Prints {
			c.Take(print.Outline.Bounds())
		}
		all = append(all, c)
	}
	return all
}

// leave remembers that something found no place.
func (g *guide) leave(what string) { g.unnamed = append(g.unnamed, what) }

// drawCloth draws what the cloth is: outline, hem, border line, zones, creases.
func (g *guide) drawCloth() {
	item := g.face.Item.Item
	g.line(g.face.Item.Area.ClothPath(), g.pens.Cloth, RoleEdge)
	g.drawLap()
	if path := g.hemPath(); path != nil {
		g.line(path, g.pens.Hem, RoleHem)
	}
	if item.Border != (geometry.Edges{}) {
		g.line(g.face.Item.Area.Path(), g.pens.Border, RoleBorder)
	}
	for _, z := range item.Zones {
		g.drawZone(z)
	}
	if f := g.face.Item.Area.Flat; f != nil {
		// Straight across, a line would cut through the arcs.
		g.line(geometry.Line(f.At(f.Inner, 0), f.At(f.Outer, 0)), g.pens.Crease, RoleCrease)
		return
	}
	// The crease across a cloth that is moved along lies on some other stretch; where a cut runs along a
	// crease, that is drawn.
	level, upright, _ := g.face.Item.Area.Creases()
	c := level.Middle()
	down, along := moved(g.face)
	cutAcross, cutDown := g.face.Item.Cuts()
	if (!along || down) && !slices.ContainsFunc(cutAcross, near(c.X)) {
		g.line(geometry.Line(upright.From, upright.To), g.pens.Crease, RoleCrease)
	}
	if (!along || !down) && !slices.ContainsFunc(cutDown, near(c.Y)) {
		g.line(geometry.Line(level.From, level.To), g.pens.Crease, RoleCrease)
	}
	g.drawPieces()
}

// drawZone draws a zone kept clear: its edge, crossed out, and its name, which every sheet that
// shows some of it repeats.
func (g *guide) drawZone(z job.Zone) {
	r := z.Rect
	g.line(r.Polygon().Path(), g.pens.Zone, RoleZone)
	g.line(geometry.Line(geometry.Pt(r.Min.X, r.Max.Y), geometry.Pt(r.Max.X, r.Min.Y)), g.pens.Zone, RoleZone)
	g.Name(paper.Name{Text: z.Name, Of: r, Role: paper.Role{Kind: RoleZone}})
	g.crowd.Take(r)
}

// drawEdge draws the edge of the cloth alone, all along; of one that is moved along not the side
// where it goes on.
func (g *guide) drawEdge() {
	c := g.cloth
	down, ok := moved(g.face)
	switch right, left := geometry.Pt(c.Max.X, c.Min.Y), geometry.Pt(c.Min.X, c.Max.Y); {
	case !ok:
		g.line(g.face.Item.Area.ClothPath(), g.pens.Cloth, RoleEdge)
	case down:
		g.line(geometry.Chain(c.Min, left, c.Max, right), g.pens.Cloth, RoleEdge)
	default:
		g.line(geometry.Chain(right, c.Min, left, c.Max), g.pens.Cloth, RoleEdge)
	}
}
