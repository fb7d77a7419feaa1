package plan

import (
	"math"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/sample"
	"underlay/template/job"
)

// TestShelf tries blocks of many sizes on a rectangle, and holds each to the count of a straight
// repeat on both axes, n = floor((A + g) / (w + g)), and to what that leaves.
func TestShelf(t *testing.T) {
	const text = "[[block]]\nname = 'block'\nprint = '%W x %H mm'\n[[item]]\nname = 'towel'\nsize = '430 x 310 mm'\nborder = '20 mm'\n"
	for _, size := range [][2]string{{"90", "90"}, {"60", "40"}, {"389", "1"}, {"390", "270"}, {"390.01", "270"}, {"100", "271"}, {"400", "300"}, {"129", "134.5"}} {
		shelf := readShelf(t, strings.NewReplacer("%W", size[0], "%H", size[1]).Replace(text))
		fit := shelf.Items[0].Fits[0]
		count := func(room, face geometry.Length) int { return int(math.Floor(float64((room + 1) / (face + 1)))) }
		block := fit.Block.Size
		columns, rows := count(390, block.W), count(270, block.H)
		if fits := columns*rows > 0; fits != (fit.Pass != nil) || fits == (fit.Why != "") {
			t.Errorf("%v: fits %v, said why not %q", size, fit.Pass != nil, fit.Why)
		}
		if fit.Pass == nil {
			continue
		}
		c := fit.Pass.Choice()
		side := 20 + (390-geometry.Length(columns)*(block.W+1)+1)/2
		if c.Columns != columns || c.Rows != rows || c.Count != columns*rows || (c.Border.Left-side).Abs() > 1e-6 || (c.Border.Right-side).Abs() > 1e-6 {
			t.Errorf("%v: %d × %d = %d, %v; want %d × %d, %v at the sides", size, c.Columns, c.Rows, c.Count, c.Border, columns, rows, side)
		}
	}
}

// TestShelfWhy says why a block does not fit, on every shape of item.
func TestShelfWhy(t *testing.T) {
	for name, c := range map[string]struct{ block, item, want string }{
		"wide":     {"print = '112 x 50 mm'", "size = '140 x 90 mm'\nborder = '20 mm'", "12 mm too wide"},
		"high":     {"print = '50 x 90 mm'", "size = '140 x 90 mm'\nborder = '20 mm'", "40 mm too high"},
		"both":     {"print = '101 x 51 mm'", "size = '140 x 90 mm'\nborder = '20 mm'", "1 mm too wide and 1 mm too high"},
		"hair":     {"print = '100.001 x 50 mm'", "size = '140 x 90 mm'\nborder = '20 mm'", "0.01 mm too wide"},
		"fits":     {"print = '100 x 50 mm'", "size = '140 x 90 mm'\nborder = '20 mm'", "fits"},
		"round":    {"print = '90 x 90 mm'", "shape = 'round'\nsize = '140 mm'\nborder = '20 mm'", ""},
		"drum":     {"print = '300 x 50 mm'", "shape = 'drum'\naround = '300 mm'\nheight = '90 mm'\nborder = '20 mm'", "1 mm too wide"},
		"cone":     {"print = '20 x 90 mm'", "shape = 'cone'\ntop = '60 mm'\nbottom = '140 mm'\nheight = '30 mm'\nborder = '0 mm'", "40 mm too high"},
		"too many": {"print = '1 x 1 mm'", "size = '4 x 4 m'\nborder = '20 mm'", "too small, for it would make too many prints"},
	} {
		t.Run(name, func(t *testing.T) {
			fit := readShelf(t, "[[block]]\nname = 'fern'\n"+c.block+"\n[[item]]\nname = 'thing'\n"+c.item+"\n").Items[0].Fits[0]
			got := fit.Why
			if fit.Pass != nil {
				got = "fits"
			}
			if got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

// TestShelfLikeThePass holds a shelf to the plan of a job that asks for the same.
func TestShelfLikeThePass(t *testing.T) {
	for name, j := range sample.Examples(t) {
		for _, item := range j.Items {
			for _, block := range j.Blocks {
				bare := *item
				bare.Passes = nil
				shelf := NewShelf(&job.Job{Units: j.Units, Printing: j.Printing, Blocks: []*job.Block{block}, Items: []*job.Item{&bare}})
				whole := bare
				whole.Passes = []*job.Pass{shelfPass(block)}
				plan, err := New(&job.Job{Units: j.Units, Printing: j.Printing, Blocks: []*job.Block{block}, Items: []*job.Item{&whole}})
				fit := shelf.Items[0].Fits[0]
				if (err == nil) != (fit.Pass != nil) {
					t.Errorf("%s: %s on %s fits: %v, but %v", name, block.Name, item.Name, fit.Pass != nil, err)
					continue
				}
				if err != nil {
					continue
				}
				if got, want := fit.Pass.Choice().Count, len(plan.Items[0].Passes[0].Prints); got != want {
					t.Errorf("%s: %s on %s: %d, want %d", name, block.Name, item.Name, got, want)
				}
			}
		}
	}
}
