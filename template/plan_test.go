package template

import (
	"math"
	"testing"

	"underlay/geometry"
)

// Things to plan with. Each is good as ReadJob would leave it.

func rectBlock(w, h geometry.Length) *Block {
	size := geometry.Size{W: w, H: h}
	return &Block{Name: "fern", Shape: "rectangle", Size: size, Face: geometry.RectOutline(geometry.RectAround(geometry.Point{}, size))}
}

func roundBlock(d geometry.Length) *Block {
	return &Block{Name: "pebble", Shape: "round", Size: geometry.Size{W: d, H: d}, Face: geometry.CircleOutline(geometry.Point{}, d/2)}
}

func hexBlock(w geometry.Length) *Block {
	size := geometry.Size{W: w, H: w * geometry.Length(2/math.Sqrt(3))}
	return &Block{Name: "acorn", Shape: "hexagon", Size: size, Face: geometry.HexagonOutline(geometry.RectAround(geometry.Point{}, size))}
}

// leafBlock is a kite w wide and h high, its widest place at a third of the height.
func leafBlock(w, h geometry.Length) *Block {
	p := geometry.Polygon{{X: 0, Y: -h / 2}, {X: w / 2, Y: -h / 6}, {X: 0, Y: h / 2}, {X: -w / 2, Y: -h / 6}}
	return &Block{Name: "leaf", Shape: "outline", Size: geometry.Size{W: w, H: h}, Face: geometry.PolygonOutline(p)}
}

func rectItem(w, h, border geometry.Length) *Item {
	size := geometry.Size{W: w, H: h}
	return &Item{Name: "floor cushion", Shape: "rectangle", Size: size, Quantity: 1, Faces: []string{""},
		Border: geometry.EvenEdges(border), Outline: geometry.RectOutline(geometry.RectAt(geometry.Point{}, size))}
}

func roundItem(d, border geometry.Length) *Item {
	return &Item{Name: "stool top", Shape: "round", Size: geometry.Size{W: d, H: d}, Quantity: 1, Faces: []string{""},
		Border: geometry.EvenEdges(border), Outline: geometry.CircleOutline(geometry.Pt(d/2, d/2), d/2)}
}

func outlineItem(border geometry.Length, corners ...geometry.Point) *Item {
	p := geometry.Polygon(corners)
	b := p.Bounds()
	return &Item{Name: "flag", Shape: "outline", Size: b.Size(), Quantity: 1, Faces: []string{""},
		Border: geometry.EvenEdges(border), Outline: geometry.PolygonOutline(p.Move(geometry.Point{}.Sub(b.Min)))}
}

func drumItem(around, height, border geometry.Length) *Item {
	size := geometry.Size{W: around, H: height}
	return &Item{Name: "lampshade", Shape: "drum", Size: size, Quantity: 1, Faces: []string{""},
		Border: geometry.Edges{Top: border, Bottom: border}, Shade: Shade{Top: around / 3, Bottom: around / 3, Height: height},
		Outline: geometry.RectOutline(geometry.RectAt(geometry.Point{}, size))}
}

func coneItem(top, bottom, height, border geometry.Length) *Item {
	return &Item{Name: "lampshade", Shape: "cone", Quantity: 1, Faces: []string{""},
		Border: geometry.Edges{Top: border, Bottom: border}, Shade: Shade{Top: top, Bottom: bottom, Height: height}}
}

func newPass(b *Block, repeat string, gap geometry.Length) *Pass {
	return &Pass{Name: repeat, Block: b, Repeat: repeat, Gap: evenGaps(gap, gap), Step: 0.5, GridTurn: 45,
		CentreAcross: OnBest, CentreDown: OnBest, Turns: [][]int{{0}}, Order: CentreOut, Tops: "out"}
}

// evenGaps is the same range across and down.
func evenGaps(least, most geometry.Length) Gaps {
	return Gaps{Gap{least, most}, Gap{least, most}}
}

// tryPlan works the passes out on an item.
func tryPlan(item *Item, hand Hand, passes ...*Pass) (*ItemPlan, error) {
	it := *item
	it.Passes = passes
	plan, err := NewPlan(&Job{Title: "Reading nook", Printing: Printing{Hand: hand}, Items: []*Item{&it}})
	if err != nil {
		return nil, err
	}
	return plan.Items[0], nil
}

// planned works one pass out on an item for a right-handed printer.
func planned(t *testing.T, item *Item, pass *Pass) *PassPlan {
	t.Helper()
	ip, err := tryPlan(item, RightHand, pass)
	if err != nil {
		t.Fatalf("%s on %s: %v", pass.Repeat, item.Name, err)
	}
	return ip.Passes[0]
}

// near tells whether two lengths are the same but for rounding.
func near(a, b geometry.Length) bool { return absLength(a-b) <= 1e-9 }

func nearEdges(a, b geometry.Edges) bool {
	return near(a.Top, b.Top) && near(a.Right, b.Right) && near(a.Bottom, b.Bottom) && near(a.Left, b.Left)
}
