package plan

import (
	"math"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
)

// change is one thing made larger or smaller, to see what would fit then.
type change int

const (
	moreCloth    change = iota // across, or down; of a round item both ways, of a cone both ends as much farther round
	lessBorder                 // on both sides; round an outline everywhere
	lessGap                    // the least of the range, of a single gap all of it
	smallerBlock               // across or down as it is turned; round ones and hexagons keep their shape
)

// changed is the layout with one thing changed by d along an axis.
func (l layout) changed(what change, down bool, d geometry.Length) layout {
	item, pass := *l.item, *l.pass
	switch what {
	case moreCloth:
		item = larger(item, down, d)
	case lessBorder:
		item.Border = narrower(item, down, d)
	case lessGap:
		both := pass.Repeat.OneGap()
		if both || !down {
			pass.Gap.Across = less(pass.Gap.Across, d)
		}
		if both || down {
			pass.Gap.Down = less(pass.Gap.Down, d)
		}
	case smallerBlock:
		block := smaller(&pass, down, d)
		if pass.Corner == pass.Block {
			pass.Corner = block
		}
		pass.Block = block
	}
	area := newArea(&item)
	if area.Turned = l.area.Turned; area.Turned && what == moreCloth {
		// What goes through the cloth keeps its distance from the left edge of the first face.
		item.Zones = shifted(item.Zones, area.Cloth.W()-l.area.Cloth.W())
		area.zones = item.Zones
	}
	m := newLayout(area, &pass)
	m.item, m.units, m.target, m.before = &item, l.units, l.target, l.before
	m.area, _ = m.insideFrames(l.before)
	return m
}

// shifted returns zones, of which those that go through the cloth lie d farther to the right.
func shifted(zones []job.Zone, d geometry.Length) []job.Zone {
	zones = slices.Clone(zones)
	for i, z := range zones {
		if z.Face == "" {
			zones[i].Rect = z.Rect.Move(geometry.Pt(d, 0))
		}
	}
	return zones
}

func less(g job.Gap, d geometry.Length) job.Gap {
	if g.Most <= g.Least {
		g.Most -= d
	}
	g.Least -= d
	return g
}

// larger returns the item d wider, or higher; an outline is stretched. What is kept clear stays
// as far from the top left corner as it was.
func larger(it job.Item, down bool, d geometry.Length) job.Item {
	size := it.Size
	*side(&size, down || it.Shape == job.Round) += d
	switch it.Shape {
	case job.Round:
		size.W = size.H
		it.Outline = geometry.CircleOutline(geometry.Pt(size.W/2, size.W/2), size.W/2)
	case job.FourSided:
		kx, ky := float64(size.W/it.Size.W), float64(size.H/it.Size.H)
		for i, c := range it.Corners {
			it.Corners[i] = geometry.Pt(c.X*geometry.Length(kx), c.Y*geometry.Length(ky))
		}
		it.Outline = geometry.PolygonOutline(it.Corners[:])
	case job.Outline:
		it.Outline = it.Outline.Stretch(float64(size.W/it.Size.W), float64(size.H/it.Size.H))
	case job.Cone:
		if down {
			it.Shade.Height += d
		} else {
			it.Shade.Top, it.Shade.Bottom = it.Shade.Top+d/math.Pi, it.Shade.Bottom+d/math.Pi
		}
		return it
	default:
		it.Outline = geometry.RectOutline(geometry.RectAt(geometry.Point{}, size))
	}
	it.Size = size
	return it
}

// narrower returns the border of the item, less by d on both sides of an axis.
func narrower(it job.Item, down bool, d geometry.Length) geometry.Edges {
	b := it.Border
	if it.Shape.EvenBorder() {
		return geometry.EvenEdges(b.Top - d)
	}
	if down {
		b.Top, b.Bottom = b.Top-d, b.Bottom-d
	} else {
		b.Left, b.Right = b.Left-d, b.Right-d
	}
	return b
}

// smaller returns the block of the pass less by d. Where prints lie both ways round it is less
// both ways, and in a frame, where prints go along all sides with their width, in its width.
func smaller(p *job.Pass, down bool, d geometry.Length) *job.Block {
	b := *p.Block
	size := b.Size
	mixed := p.Turns.Mixed()
	switch {
	case b.Shape.Regular():
		size = geometry.Size{W: size.W - d, H: size.H * (1 - d/size.W)}
	case mixed:
		size = geometry.Size{W: size.W - d, H: size.H - d}
	case p.Repeat.Framed():
		size.W -= d
	default:
		*side(&size, down != p.Turns.AllAside()) -= d
	}
	if b.Shape == job.RoundFace {
		b.Face = geometry.CircleOutline(geometry.Point{}, size.W/2)
	} else {
		b.Face = b.Face.Stretch(float64(size.W/b.Size.W), float64(size.H/b.Size.H))
	}
	b.Size = size
	return &b
}

// limit is the most by which something may be changed, as far as it makes sense to a maker: the
// border no less than the hem, the gap no less than nothing or the most lap, and the block no
// less than can be carved and set out. More cloth ends nowhere.
func (l layout) limit(what change, down bool) geometry.Length {
	p := l.pass
	gap := p.Gap.Across
	if down && !p.Repeat.OneGap() {
		gap = p.Gap.Down
	}
	switch what {
	case lessBorder:
		b := l.item.Border
		switch {
		case l.item.Shape.EvenBorder():
			return b.Top - l.item.Hem
		case down:
			return min(b.Top, b.Bottom) - l.item.Hem
		case l.item.Shape.Shade():
			return 0 // there is none at the seam
		}
		return min(b.Left, b.Right) - l.item.Hem
	case lessGap:
		return gap.Least - leastOf(gap)
	case smallerBlock:
		if !p.Mix.None() {
			return 0 // each of them would be another
		}
		size := p.Block.Size
		face := min(size.W, size.H)
		if !p.Block.Shape.Regular() && !p.Turns.Mixed() {
			face = *side(&size, !p.Repeat.Framed() && down != p.Turns.AllAside())
		}
		// Prints lap by less than half their block.
		return face - max(job.LeastFace, 0.01-2*min(p.Gap.Across.Least, p.Gap.Down.Least))
	}
	return 4096 * l.step(down)
}

// step is about how far it is from print to print.
func (l layout) step(down bool) geometry.Length {
	cell := l.cell
	if down {
		return cell.H + max(0, l.pass.Gap.Down.Least)
	}
	return cell.W + max(0, l.pass.Gap.Across.Least)
}

func side(s *geometry.Size, down bool) *geometry.Length {
	if down {
		return &s.H
	}
	return &s.W
}
