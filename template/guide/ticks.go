package guide

import (
	"cmp"
	"slices"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// Measures of the ticks, from the cloth outwards.
const (
	tickClear  = 1.5 * geometry.Millimetre // plain paper between cloth and ticks
	tickLength = 5 * geometry.Millimetre
	leastTick  = 2.1 * geometry.Millimetre // in a short reach
	trackAir   = 2 * geometry.Millimetre   // from the ticks of a track to the next track
	leastAir   = 0.6 * geometry.Millimetre // the same in a short reach
	tapeZone   = 4.5 * geometry.Millimetre // of tape lines and creases, outside all tracks
	// The same where names lie along the depth.
	tapeZoneDown = 3.5 * geometry.Millimetre
	tapeHead     = 1.6 * geometry.Millimetre
	creaseMore   = 1.5 * geometry.Millimetre // by how much a crease goes on beyond tape lines
	edgeAir      = 0.2 * geometry.Millimetre // from the end of a tape line to that of the reach
	tickText     = 2.5 * geometry.Millimetre // ISO 3098
	nameText     = 3.5 * geometry.Millimetre // of names with room enough
)

// The least reach that has room for ticks, and for the names of rows and tapes by them.
const (
	leastReach = tickClear + leastTick + leastAir + leastTick
	namedReach = 15 * geometry.Millimetre
)

// run is the ticks along one direction: across, of lines that run up and down.
type run struct {
	g        *guide
	down     bool            // the lines run across, their ticks are left and right of the cloth
	from, to geometry.Length // the cloth along the run
	bands    []track
	beyond   geometry.Length // where the zone of tape lines and creases begins
	outer    geometry.Length // and where its lines end
	lines    []tickLine      // all ticks, from the least
	figures  bool            // some have been written
}

// tickLine is a tick: where along the run, and from which depth to which.
type tickLine struct{ at, from, to geometry.Length }

// drawTicks draws the ticks of columns and rows, creases and tapes, on both ends of each line,
// with their names and their distance from the cloth's left or far edge.
func (g *guide) drawTicks() {
	if g.reach < leastReach {
		return
	}
	runs := []*run{
		{g: g, from: g.cloth.Min.X, to: g.cloth.Max.X},
		{g: g, down: true, from: g.cloth.Min.Y, to: g.cloth.Max.Y},
	}
	slants := g.slants()
	// Lines first, so that no name is written where one is still to come.
	for _, r := range runs {
		r.layTracks(slants)
	}
	for _, s := range slants {
		g.drawSlant(s)
	}
	for _, r := range runs {
		for _, t := range r.bands {
			r.drawTrack(t)
		}
		r.drawCrease()
		r.drawCuts()
		r.drawTapes()
		slices.SortFunc(r.lines, func(a, b tickLine) int { return cmp.Compare(a.at, b.at) })
	}
	// Of names the start tapes' come first, then what else a tape is stretched by.
	for _, start := range []bool{true, false} {
		for _, r := range runs {
			r.nameTapes(start)
		}
	}
	for _, r := range runs {
		r.nameCrease()
		r.nameCuts()
	}
	for _, r := range runs {
		for i := range r.bands {
			r.nameStripes(&r.bands[i])
		}
	}
	for _, s := range slants {
		g.nameSlant(s)
	}
	for _, r := range runs {
		r.writeCaption()
		for _, t := range r.bands {
			r.writeFigures(t)
		}
	}
}

// layTracks gives each track of each pass its depth, outside those of slanted ticks; in a short
// reach they are shallower, and where even that is too little the last share one.
func (r *run) layTracks(slants []slant) {
	for _, p := range r.g.face.Passes {
		r.bands = append(r.bands, r.tracks(p)...)
	}
	first := tickClear
	for _, s := range slants {
		first = s.depth + s.length + trackAir
	}
	zone := tapeZone
	if r.down {
		zone = tapeZoneDown
	}
	room := r.g.reach - edgeAir - first - zone
	length, air := tickLength, trackAir
	if n := geometry.Length(len(r.bands)); r.down && n > 1 {
		// Beside ticks figures lie along the depth.
		air = clamp(room/n-length, trackAir, r.widest()+2*endAir-length)
	}
	if n := geometry.Length(len(r.bands)); n > 0 && n*(length+air) > room {
		air = clamp(room/n-tickLength, leastAir, trackAir)
		length = clamp(room/n-air, leastTick, tickLength)
	}
	shared := max(1, int((r.g.reach-edgeAir-first-leastTick)/(length+air)))
	for i := range r.bands {
		t := &r.bands[i]
		t.depth, t.length = first+geometry.Length(min(i, shared-1))*(length+air), length
		t.figures = t.depth
	}
	if len(r.bands) > shared {
		r.g.leave("ticks of each pass") // they share some
	}
	r.beyond = first
	if n := min(len(r.bands), shared); n > 0 {
		r.beyond += geometry.Length(n) * (length + air)
		if n == 1 {
			r.beyond -= air // a tape line then goes on from the tick of its edge
		}
	}
	r.outer = min(r.beyond+zone, r.g.reach-edgeAir)
}

func clamp(l, least, most geometry.Length) geometry.Length { return max(least, min(l, most)) }

// widest is the width of the longest figure by a tick.
func (r *run) widest() geometry.Length {
	var most geometry.Length
	for _, t := range r.bands {
		for _, l := range t.lines() {
			most = max(most, paper.TextWidth(r.distance(l), tickText, false))
		}
	}
	return most
}

// at returns the point of the run at l, out from the cloth by depth, on its first side (above,
// or left of the cloth) or its second. To the right of a drum the ticks lie beyond its lap, and a
// cone's only line ends at its arcs.
func (r *run) at(l, depth geometry.Length, second bool) geometry.Point {
	c := r.g.cloth
	if f := r.g.face.Item.Area.Flat; f != nil {
		c.Min.Y = f.At(f.Inner, 0).Y
	}
	switch {
	case !r.down && !second:
		return geometry.Pt(l, c.Min.Y-depth)
	case !r.down:
		return geometry.Pt(l, c.Max.Y+depth)
	case !second:
		return geometry.Pt(c.Min.X-depth, l)
	}
	return geometry.Pt(c.Max.X+r.g.face.Item.Item.Shade.Lap+depth, l)
}

// line draws a tick at l from one depth to another, at both ends of the line.
func (r *run) line(l, from, to geometry.Length, pen paper.Pen, role paper.Role) {
	for _, second := range []bool{false, true} {
		path := geometry.Line(r.at(l, from, second), r.at(l, to, second))
		r.g.mark(path, pen, role)
		r.g.crowd.Take(path.Bounds().Grow(pen.Width / 2))
	}
	r.lines = append(r.lines, tickLine{l, from, to})
}

// mark draws a line that knows what it is for.
func (g *guide) mark(path geometry.Path, pen paper.Pen, role paper.Role) {
	g.Stroke(path, pen)
	g.Strokes[len(g.Strokes)-1].Role = role
}

// drawTrack draws a tick for every edge of a track's columns or rows, each of which bears the
// number of the first it belongs to.
func (r *run) drawTrack(t track) {
	type edge struct {
		at     geometry.Length
		number int
	}
	var edges []edge
	for _, s := range t.stripes {
		for _, l := range s.edges {
			edges = append(edges, edge{l, s.number})
		}
	}
	slices.SortFunc(edges, func(a, b edge) int { return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.number, b.number)) })
	last := edges[0].at - 1
	for _, e := range edges {
		if e.at-last >= sameLine {
			r.line(e.at, t.depth, t.depth+t.length, r.g.pens.Tick, paper.Role{Kind: RoleTick, Number: e.number})
			last = e.at
		}
	}
}

// drawCrease draws the ends of the centre line, outside the ticks of the edges beside it. A cone
// has no straight line across.
func (r *run) drawCrease() {
	if !r.creased() {
		return
	}
	from, to := r.beyond, min(r.outer+creaseMore, r.g.reach-edgeAir)
	level, upright, ok := r.g.face.Item.Area.Creases()
	if !ok || !r.g.crooked() {
		r.line(r.creaseAt(), from, to, r.g.pens.Crease, paper.Role{Kind: RoleCrease})
		return
	}
	// The crease goes on straight beyond the cloth, aslant.
	crease := upright
	if r.down {
		crease = level
	}
	along := crease.To.Sub(crease.From)
	for _, second := range []bool{false, true} {
		on := func(depth geometry.Length) geometry.Point {
			p := r.at(0, depth, second)
			if r.down {
				return crease.From.Add(along.Mul(float64((p.X - crease.From.X) / along.X)))
			}
			return crease.From.Add(along.Mul(float64((p.Y - crease.From.Y) / along.Y)))
		}
		path := geometry.Line(on(from), on(to))
		r.g.mark(path, r.g.pens.Crease, paper.Role{Kind: RoleCrease})
		r.g.crowd.Take(path.Bounds().Grow(r.g.pens.Crease.Width / 2))
	}
	r.lines = append(r.lines, tickLine{r.creaseAt(), from, to})
}

// creaseAt is where the centre line crosses the middle of the run.
func (r *run) creaseAt() geometry.Length {
	level, _, ok := r.g.face.Item.Area.Creases()
	switch {
	case !ok:
		return (r.from + r.to) / 2
	case r.down:
		return level.Middle().Y
	}
	return level.Middle().X
}

// crooked tells whether the cloth is four-sided and not square.
func (g *guide) crooked() bool {
	return g.face.Item.Area.Outermost() == "corner"
}

func (r *run) creased() bool {
	if down, ok := moved(r.g.face); ok && down == r.down {
		return false // it lies on some other stretch
	}
	return !r.down || r.g.face.Item.Area.Flat == nil
}

// fromNear tells whether distances are told from the near edge: the cloth is moved along from it.
func (r *run) fromNear() bool {
	down, ok := moved(r.g.face)
	return ok && down && r.down
}

// drawTapes draws the ends of the tape lines, with a head that points at the cloth.
func (r *run) drawTapes() {
	var places []geometry.Length
	for _, t := range r.tapeLines() {
		places = append(places, t.at)
	}
	for _, l := range apartLines(places) {
		r.line(l, r.beyond, r.outer, r.g.pens.Tape, paper.Role{Kind: RoleTape})
		for _, second := range []bool{false, true} {
			head := geometry.Polygon{
				r.at(l, r.outer-tapeHead, second), r.at(l+tapeHead/2, r.outer, second), r.at(l-tapeHead/2, r.outer, second),
			}.Path()
			r.g.Fill(head, paper.Ink{})
			r.g.Fills[len(r.g.Fills)-1].Role = paper.Role{Kind: RoleTape}
			r.g.crowd.Take(head.Bounds())
		}
	}
}

// tape is a tape line of a pass.
type tape struct {
	at    geometry.Length
	start bool
	pass  string // "" where one pass of the face has any
}

// tapeLines returns the tape lines of all passes.
func (r *run) tapeLines() []tape {
	taped := 0
	for _, p := range r.g.face.Passes {
		if p.Tape != nil {
			taped++
		}
	}
	var all []tape
	for _, p := range r.g.face.Passes {
		if p.Tape == nil {
			continue
		}
		pass := ""
		if taped > 1 {
			pass = p.Pass.Name
		}
		lines := p.Tape.Across
		if r.down {
			lines = p.Tape.Down
		}
		for _, l := range lines {
			all = append(all, tape{l, r.down && p.Tape.StartsAt(l), pass})
		}
	}
	return all
}

// closes tells whether the run goes round a drum and meets itself.
func (r *run) closes() bool { return !r.down && r.g.face.Item.Item.Shape == job.Drum }

// Taped tells whether the guide has tape lines.
func Taped(f plan.FacePlan) bool {
	return slices.ContainsFunc(f.Passes, func(p plan.FacePass) bool { return p.Tape != nil })
}

// Ticked tells whether the guide has ticks for the edges of rows or columns.
func Ticked(f plan.FacePlan) bool {
	return slices.ContainsFunc(f.Passes, func(p plan.FacePass) bool {
		return p.ColumnsInLine || p.RowsInLine || p.Pass.Framed() || p.Pass.Slanted() && !f.Item.Item.Pieces.Several() || !p.Pass.Repeat.Gapped()
	})
}

// distance is what a tick says of where it is.
func (r *run) distance(l geometry.Length) string {
	if r.fromNear() {
		return r.g.job.Units.Ruled(r.to - l)
	}
	return r.g.job.Units.Ruled(l - r.from)
}
