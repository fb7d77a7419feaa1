package plan

import (
	"fmt"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// flatCloth is the surface of an item that lies as it is.
type flatCloth struct{}

// newClothArea draws an item's outline in by its border.
func newClothArea(item *job.Item) Area {
	a := Area{surface: flatCloth{}, zones: item.Zones, Cloth: item.Outline.Bounds(), whole: item.Outline.Path()}
	if r, ok := item.Outline.Upright(); ok {
		a.Rect, a.upright = r.In(item.Border), true
		a.edge = a.Rect.Polygon().Path()
		return a
	}
	clear := item.Border.Least()
	a.ground = geometry.NewGround(item.Outline, clear)
	a.edge, a.Rect, _ = item.Outline.Inset(clear)
	return a
}

func (flatCloth) lattice(t lattice) repeat { return t.repeat() }

func (flatCloth) closes() bool { return false }

func (flatCloth) centre(a Area) geometry.Point { return a.Rect.Centre() }

func (flatCloth) covers(a Area, p geometry.Point) bool { return a.Cloth.Contains(p) }

func (flatCloth) holds(a Area, f geometry.Outline) bool {
	return a.Rect.Holds(f.Bounds()) && (a.upright || a.ground.Holds(f)) && a.clearOfZones(f)
}

func (flatCloth) wrapped(_ Area, s Site, _ geometry.Point) Site { return s }

func (flatCloth) crossesSeam(Area, *job.Block, Site) bool { return false }

func (flatCloth) again(Area, geometry.Outline) []geometry.Outline { return nil }

// borders counts, with no print at all, half of the cloth to either side.
func (flatCloth) borders(a Area, b *job.Block, sites []Site) geometry.Edges {
	c := a.Rect.Centre()
	field := geometry.Rect{Min: c, Max: c}
	if len(sites) > 0 {
		field = fieldOf(b, sites)
	}
	return geometry.Edges{
		Top: field.Min.Y - a.Cloth.Min.Y, Right: a.Cloth.Max.X - field.Max.X,
		Bottom: a.Cloth.Max.Y - field.Max.Y, Left: field.Min.X - a.Cloth.Min.X,
	}
}

func (flatCloth) seam(a Area) (top, bottom, out geometry.Point) {
	return geometry.Pt(a.Cloth.Max.X, a.Cloth.Min.Y), a.Cloth.Max, geometry.Pt(1, 0)
}

func (flatCloth) room(l layout) geometry.Size { return l.area.Rect.Size() }

func (flatCloth) noneFits(l layout) error {
	u, name, room := l.units, words.Quote(l.pass.Block.Name), l.area.Rect.Size()
	over := geometry.Size{W: l.cell.W - room.W, H: l.cell.H - room.H}
	if over.W <= geometry.Tolerance && over.H <= geometry.Tolerance {
		return fmt.Errorf("no whole print of the block %s fits; write a smaller border, another repeat or a smaller block", name)
	}
	return fmt.Errorf("no print fits: the block %s, %s, is %s for the printable area, %s; make the item that much larger, the border less, or write a block of at most %s",
		name, u.FormatSize(l.cell), overWords(over, u), u.FormatSize(room),
		u.FormatSize(geometry.Size{W: u.Down(min(l.cell.W, room.W)), H: u.Down(min(l.cell.H, room.H))}))
}

// overWords says by how much something is too large; "" where it is not.
func overWords(over geometry.Size, u geometry.Unit) string {
	var text []string
	if over.W > geometry.Tolerance {
		text = append(text, u.Format(u.Up(over.W))+" too wide")
	}
	if over.H > geometry.Tolerance {
		text = append(text, u.Format(u.Up(over.H))+" too high")
	}
	return words.InWords(text)
}
