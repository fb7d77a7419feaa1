package plan

import (
	"math"

	"underlay/geometry"
	"underlay/template/job"
)

// onCone sets a lattice out round a cone laid flat: rows on arcs, tops to the narrow end, the
// same number in every row. The narrowest row sets the number.
func onCone(t lattice) repeat {
	k := cone{t}
	return repeat{
		ways: k.ways, next: t.next(), middle: k.middle,
		sizes: func(l layout, c Choice, sites []Site) otherSizes {
			if l.pass.Exactly != (job.Counts{}) {
				return l.asAsked(nil, nil, nil)
			}
			return l.triedSizes(c, sites, false, k.most)
		},
		notes: func(l layout, c Choice) []string {
			r := k.rows(l, c)
			most := k.beside(l, r).count(r.narrowest(), l.area.Flat.Angle, l.pass.Gap.Across.Least)
			return append(t.closingNotes(l, c, most),
				"the rows of a cone are arcs, so there is no straight edge to stretch tape along: work from the marks on the guide",
				"a shade of another slope lies flat in another curve, so this guide serves this size alone")
		},
	}
}

// cone sets out a lattice on a cone. A print has a place u round it, counted in columns from
// the middle line, and a place v on the slope, counted in rows.
type cone struct{ lattice }

// coneRows is how the rows of a choice lie on the slope: place v has the radius from + v pitch.
type coneRows struct {
	from, pitch geometry.Length
	low, high   float64 // the least and the greatest v that fit; low above high: none does
}

func (r coneRows) radius(v float64) geometry.Length { return r.from + geometry.Length(v)*r.pitch }

func (r coneRows) narrowest() geometry.Length { return r.radius(r.low) }

func (r coneRows) none() bool { return r.low > r.high }

// coneFan is the face as it stands on the rows of a cone.
func (l layout) coneFan() fan {
	parts := l.pass.Parts()
	all := newFan(parts[0].Block, l.pass.Turns, 0)
	for _, part := range parts[1:] {
		all = all.with(newFan(part.Block, l.pass.Turns, 0))
	}
	return all
}

// beside is the face as it stands beside others of its row. Columns that are moved down put it
// beside parts of them that no print of its own row faces; so there it is its bounds that keep
// the gap, as on flat cloth.
func (k cone) beside(l layout, r coneRows) fan {
	f := l.coneFan()
	if !k.columns {
		return f
	}
	f = f.boxed()
	share := geometry.Length(k.share(l.pass))
	f.moved = []geometry.Length{share * r.pitch, (1 - share) * r.pitch}
	return f
}

// rowPitch is the step from row to row. Rows that are moved along bring the corners of one
// over the middles of the next: there the pitch grows by how far the corners of the narrowest
// row stand out over its middles, which of all rows is the most.
func (k cone) rowPitch(l layout, f fan, gap geometry.Length) geometry.Length {
	if k.step == nil || k.columns {
		return f.size.H + gap
	}
	first := l.area.slant[0] + f.size.H/2
	return f.reach(first) - first + f.size.H/2 + gap
}

// ends are the radii of the origins of the first and the last row there is room for.
func (l layout) coneEnds(f fan) (first, last geometry.Length, ok bool) {
	first = l.area.slant[0] + f.size.H/2
	last, ok = f.outermost(l.area.slant[1])
	return first, last, ok && last >= first-geometry.Tolerance
}

// rows works out where the rows of a choice lie: as many as fit, print or joint on the middle
// of the slope, and then moved so that the borders at both ends are even.
func (k cone) rows(l layout, c Choice) coneRows {
	f := l.coneFan()
	r := coneRows{pitch: k.rowPitch(l, f, c.Gap.Down), low: math.Inf(1), high: math.Inf(-1)}
	first, last, ok := l.coneEnds(f)
	if !ok {
		return r
	}
	// A quarter of the tolerance at both ends: what is set out has to lie on the area within it.
	room := float64((last-first)/2+geometry.Tolerance/4) / float64(r.pitch)
	for _, part := range k.parts(l) {
		shift := part
		if c.Down == job.OnJoint {
			shift += 0.5
		}
		if low, high := math.Ceil(-room-shift), math.Floor(room-shift); low <= high {
			r.low, r.high = min(r.low, low+part), max(r.high, high+part)
		}
	}
	if r.none() {
		return r
	}
	r = r.trimmed(l.pass.Exactly.Down)
	// The first row then stands t farther out than it might, and the last reaches t less far.
	base, outer := first+geometry.Length(r.high-r.low)*r.pitch, l.area.slant[1]
	t := geometry.Length(math.Inf(1))
	if f.round {
		t = (outer - base - f.size.W/2) / 2
	}
	for _, face := range f.faces {
		for _, p := range face.Corners() {
			b := base + p.Y
			t = min(t, (outer*outer-b*b-p.X*p.X)/(2*(b+outer)))
		}
	}
	r.from = first + max(0, t) - geometry.Length(r.low)*r.pitch
	return r
}

// trimmed leaves out as many rows at both ends as are more than n; of a number that is odd too
// many, one more stays. n = 0: none.
func (r coneRows) trimmed(n int) coneRows {
	if over := math.Round(r.high-r.low) + 1 - float64(n); n > 0 && over > 0 {
		r.low, r.high = r.low+math.Floor(over/2), r.high-math.Floor(over/2)
	}
	return r
}

// parts lists the shares of the pitch by which columns are moved down: 0 alone where they are
// not moved.
func (k cone) parts(l layout) []float64 {
	parts := []float64{0}
	if !k.columns {
		return parts
	}
	share := k.share(l.pass)
	for i := 1; i < mostPrints; i++ {
		part := float64(i)*share - math.Floor(float64(i)*share+1e-9)
		if math.Abs(part) < 1e-8 {
			break
		}
		parts = append(parts, part)
	}
	return parts
}

// ways tries every centring. The number in each row and the gap in the narrowest row follow.
func (k cone) ways(l layout) ([]way, error) {
	f := l.coneFan()
	var ways []way
	for _, across := range []job.Centring{job.OnPrint, job.OnJoint} {
		for _, down := range []job.Centring{job.OnPrint, job.OnJoint} {
			c := Choice{Across: across, Down: down, Gap: l.leastGap()}
			r := k.rows(l, c)
			if r.none() {
				ways = append(ways, l.describe(c, nil))
				continue
			}
			if steps := geometry.Length(r.high - r.low); steps > 0 {
				first, last, _ := l.coneEnds(f)
				c.Gap.Down = clamp(l.pass.Gap.Down, c.Gap.Down+(last-first)/steps-r.pitch)
				r = k.rows(l, c)
			}
			beside := k.beside(l, r)
			n, _, err := k.closing(l, beside.count(r.narrowest(), l.area.Flat.Angle, c.Gap.Across))
			if err != nil {
				return nil, err
			}
			if n == 0 {
				return nil, errNoneRound
			}
			c.Columns = n
			if n > 1 {
				c.Gap.Across = beside.gap(r.narrowest(), l.area.Flat.Angle/geometry.Angle(n))
			}
			c.Pitch = job.Spacing{Across: l.cell.W + c.Gap.Across, Down: r.pitch}
			ways = append(ways, k.describeOn(l, c, k.place(l, c)))
		}
	}
	return ways, nil
}

// most is how many prints the best way of centring allowed holds.
func (k cone) most(l layout) int {
	f, most := l.coneFan(), 0
	for _, down := range []job.Centring{job.OnPrint, job.OnJoint} {
		c := Choice{Down: down, Gap: l.leastGap()}
		r := k.rows(l, c)
		if !c.allowed(l.pass) || r.none() {
			continue
		}
		if steps := geometry.Length(r.high - r.low); steps > 0 {
			first, last, _ := l.coneEnds(f)
			c.Gap.Down = clamp(l.pass.Gap.Down, c.Gap.Down+(last-first)/steps-r.pitch)
			r = k.rows(l, c)
		}
		n, _, err := k.closing(l, k.beside(l, r).count(r.narrowest(), l.area.Flat.Angle, c.Gap.Across))
		if err != nil || n == 0 {
			continue
		}
		if len(l.area.zones) > 0 {
			for _, c.Across = range []job.Centring{job.OnPrint, job.OnJoint} {
				if c.Columns = n; c.allowed(l.pass) {
					most = max(most, len(k.place(l, c)))
				}
			}
			continue
		}
		count := 0
		for _, part := range k.parts(l) {
			if low, high := math.Ceil(r.low-part-1e-9), math.Floor(r.high-part+1e-9); low <= high {
				count += int(high-low) + 1
			}
		}
		most = max(most, count*n/len(k.parts(l)))
	}
	return most
}

// describeOn fills in what a choice gives; its columns are known.
func (k cone) describeOn(l layout, choice Choice, sites []Site) way {
	c := l.describe(choice, sites)
	switch {
	case k.columns:
		c.RowCounts = nil
	case k.step != nil:
		c.ColumnCounts = nil
		fallthrough
	default:
		c.Rows = len(c.RowCounts)
	}
	return c
}

// at returns the site at u columns and v rows.
func (k cone) at(l layout, c Choice, r coneRows, u, v float64) Site {
	a := geometry.Angle(u) * l.area.Flat.Angle / geometry.Angle(c.Columns)
	return Site{Origin: l.area.Flat.At(r.radius(v), a), Turn: (-a).Normal()}
}

// place returns the prints of a choice, from the narrow end, each row from the left.
func (k cone) place(l layout, c Choice) []Site {
	r := k.rows(l, c)
	if r.none() {
		return nil
	}
	share, joint := k.share(l.pass), 0.0
	if c.Across == job.OnJoint {
		joint = 0.5
	}
	var sites []Site
	for row := 0; float64(row) <= r.high-r.low+1e-9; row++ {
		// In a half-drop a row is what lies within one pitch of the slope.
		for column := range c.Columns {
			var s Site
			if k.columns {
				i := firstRound(c.Columns, joint) + column
				part := float64(i) * share
				j := int(math.Ceil(r.low + float64(row) - part - 1e-9))
				if float64(j)+part > r.high+1e-9 {
					continue
				}
				s = k.at(l, c, r, float64(i)+joint, float64(j)+part)
				s.key = geometry.Site{I: i, J: j}
			} else {
				j := int(math.Round(r.low)) + row
				along := float64(j)*share + joint
				i := firstRound(c.Columns, along) + column
				s = k.at(l, c, r, float64(i)+along, float64(j))
				s.key = geometry.Site{I: i, J: j}
			}
			s.Column, s.Row = column+1, row+1
			s = l.mixedAt(s, column, row)
			sites = append(sites, s)
		}
	}
	return l.number(sites, false)
}

// firstRound returns the least i with i + along at or after the left edge of the flat shade,
// n columns wide.
func firstRound(n int, along float64) int {
	return int(math.Ceil(-float64(n)/2 - along - 1e-9))
}

// middle returns the site in the middle of four prints of a straight repeat.
func (k cone) middle(l layout, c Choice, key geometry.Site) Site {
	u := float64(key.I) + 0.5
	if c.Across == job.OnJoint {
		u += 0.5
	}
	if half := float64(c.Columns) / 2; u >= half-1e-9 {
		u -= float64(c.Columns)
	}
	return k.at(l, c, k.rows(l, c), u, float64(key.J)+0.5)
}
