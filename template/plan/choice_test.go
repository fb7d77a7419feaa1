package plan

import (
	"slices"
	"testing"

	"underlay/geometry"
)

// TestTies: of ways that hold as many prints the one with rows, or columns, of equal length is
// taken, then the one with the more even borders, then the one whose smallest border is larger,
// and round a shade the one with fewer prints across the seam. Each of the list is better than
// those after it.
func TestTies(t *testing.T) {
	edges := func(top, right, bottom, left geometry.Length) geometry.Edges {
		return geometry.Edges{Top: top, Right: right, Bottom: bottom, Left: left}
	}
	ways := []Choice{
		{Count: 13, RowCounts: []int{4, 5, 4}, Border: edges(1, 9, 1, 1), Seam: 3},
		{Count: 12, RowCounts: []int{4, 4, 4}, Border: edges(1, 9, 1, 1), Seam: 3},
		{Count: 12, RowCounts: []int{4, 5, 3}, Border: edges(2, 4, 2, 4), Seam: 3},
		{Count: 12, RowCounts: []int{5, 4, 3}, Border: edges(1, 9, 1, 9), Seam: 1},
		{Count: 12, RowCounts: []int{3, 4, 5}, Border: edges(1, 9, 1, 9), Seam: 2},
		{Count: 12, RowCounts: []int{3, 5, 4}, Border: edges(3, 9, 4, 9), Seam: 0},
		{Count: 11, ColumnCounts: []int{11}, Border: edges(9, 9, 9, 9)},
	}
	for i, c := range ways {
		for j, d := range ways {
			if got := c.better(d); got != (i < j) {
				t.Errorf("%d better than %d: %v", i, j, got)
			}
		}
	}
	columns := []Choice{{Count: 6, ColumnCounts: []int{3, 3}}, {Count: 6, ColumnCounts: []int{2, 4}, Border: edges(9, 9, 9, 9)}}
	if !columns[0].better(columns[1]) {
		t.Error("columns of equal length are not preferred")
	}
	// Bricks on covers of many sizes: none is taken in uneven rows where as many stand in even ones.
	for w := geometry.Length(200); w < 320; w += 5 {
		for h := geometry.Length(100); h < 320; h += 20 {
			p := planned(t, rectItem(w, h, 0), newPass(rectBlock(50, 40), "brick", 0))
			equal := func(c Choice) bool { return slices.Min(c.RowCounts) == slices.Max(c.RowCounts) }
			for _, c := range p.Choices {
				if c.Count == p.Choice().Count && equal(c) && !equal(p.Choice()) {
					t.Errorf("%v x %v: rows of %v taken, %v has as many", w, h, p.Choice().RowCounts, c.RowCounts)
				}
			}
		}
	}
}
