package plan

import (
	"math"
	"testing"

	"underlay/geometry"
	"underlay/template/job"
)

// Things to plan with. Each is good as ReadJob would leave it.

func rectBlock(w, h geometry.Length) *job.Block {
	size := geometry.Size{W: w, H: h}
	return &job.Block{Name: "fern", Shape: "rectangle", Size: size, Face: geometry.RectOutline(geometry.RectAround(geometry.Point{}, size))}
}

func roundBlock(d geometry.Length) *job.Block {
	return &job.Block{Name: "pebble", Shape: "round", Size: geometry.Size{W: d, H: d}, Face: geometry.CircleOutline(geometry.Point{}, d/2)}
}

func hexBlock(w geometry.Length) *job.Block {
	size := geometry.Size{W: w, H: w * geometry.Length(2/math.Sqrt(3))}
	return &job.Block{Name: "acorn", Shape: "hexagon", Size: size, Face: geometry.HexagonOutline(geometry.RectAround(geometry.Point{}, size))}
}

// leafBlock is a kite w wide and h high, its widest place at a third of the height.
func leafBlock(w, h geometry.Length) *job.Block {
	p := geometry.Polygon{{X: 0, Y: -h / 2}, {X: w / 2, Y: -h / 6}, {X: 0, Y: h / 2}, {X: -w / 2, Y: -h / 6}}
	return &job.Block{Name: "leaf", Shape: "outline", Size: geometry.Size{W: w, H: h}, Face: geometry.PolygonOutline(p)}
}

func rectItem(w, h, border geometry.Length) *job.Item {
	size := geometry.Size{W: w, H: h}
	return &job.Item{Name: "floor cushion", Shape: "rectangle", Size: size, Quantity: 1, Faces: []string{""},
		Border: geometry.EvenEdges(border), Outline: geometry.RectOutline(geometry.RectAt(geometry.Point{}, size))}
}

func roundItem(d, border geometry.Length) *job.Item {
	return &job.Item{Name: "stool top", Shape: "round", Size: geometry.Size{W: d, H: d}, Quantity: 1, Faces: []string{""},
		Border: geometry.EvenEdges(border), Outline: geometry.CircleOutline(geometry.Pt(d/2, d/2), d/2)}
}

func outlineItem(border geometry.Length, corners ...geometry.Point) *job.Item {
	p := geometry.Polygon(corners)
	b := p.Bounds()
	return &job.Item{Name: "flag", Shape: "outline", Size: b.Size(), Quantity: 1, Faces: []string{""},
		Border: geometry.EvenEdges(border), Outline: geometry.PolygonOutline(p.Move(geometry.Point{}.Sub(b.Min)))}
}

func drumItem(around, height, border geometry.Length) *job.Item {
	size := geometry.Size{W: around, H: height}
	return &job.Item{Name: "lampshade", Shape: "drum", Size: size, Quantity: 1, Faces: []string{""},
		Border: geometry.Edges{Top: border, Bottom: border}, Shade: job.Shade{Top: around / 3, Bottom: around / 3, Height: height},
		Outline: geometry.RectOutline(geometry.RectAt(geometry.Point{}, size))}
}

func coneItem(top, bottom, height, border geometry.Length) *job.Item {
	return &job.Item{Name: "lampshade", Shape: "cone", Quantity: 1, Faces: []string{""},
		Border: geometry.Edges{Top: border, Bottom: border}, Shade: job.Shade{Top: top, Bottom: bottom, Height: height}}
}

func newPass(b *job.Block, repeat job.Repeat, gap geometry.Length) *job.Pass {
	return &job.Pass{Name: string(repeat), Block: b, Repeat: repeat, Gap: evenGaps(gap, gap), Step: 0.5, GridTurn: 45,
		CentreAcross: job.OnBest, CentreDown: job.OnBest, Turns: [][]int{{0}}, Order: job.CentreOut, Tops: "out"}
}

// evenGaps is the same range across and down.
func evenGaps(least, most geometry.Length) job.Gaps {
	return job.Gaps{Across: job.Gap{Least: least, Most: most}, Down: job.Gap{Least: least, Most: most}}
}

// tryPlan works the passes out on an item.
func tryPlan(item *job.Item, hand job.Hand, passes ...*job.Pass) (*ItemPlan, error) {
	it := *item
	it.Passes = passes
	plan, err := New(&job.Job{Title: "Reading nook", Printing: job.Printing{Hand: hand}, Items: []*job.Item{&it}})
	if err != nil {
		return nil, err
	}
	return plan.Items[0], nil
}

// planned works one pass out on an item for a right-handed printer.
func planned(t *testing.T, item *job.Item, pass *job.Pass) *PassPlan {
	t.Helper()
	ip, err := tryPlan(item, job.RightHand, pass)
	if err != nil {
		t.Fatalf("%s on %s: %v", pass.Repeat, item.Name, err)
	}
	return ip.Passes[0]
}

func nearEdges(a, b geometry.Edges) bool {
	return near(a.Top, b.Top) && near(a.Right, b.Right) && near(a.Bottom, b.Bottom) && near(a.Left, b.Left)
}
