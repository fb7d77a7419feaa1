package template

import (
	"math"
	"strings"
	"testing"

	"underlay/geometry"
)

func readShelf(t *testing.T, text string) *Shelf {
	t.Helper()
	job, err := ReadJob("shelf.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	if !job.IsShelf() {
		t.Fatal("a job without a pass is not taken for a shelf")
	}
	return NewShelf(job)
}

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
		if c.Columns != columns || c.Rows != rows || c.Count != columns*rows || absLength(c.Border.Left-side) > 1e-6 || absLength(c.Border.Right-side) > 1e-6 {
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
	for name, job := range exampleJobs(t) {
		for _, item := range job.Items {
			for _, block := range job.Blocks {
				bare := *item
				bare.Passes = nil
				shelf := NewShelf(&Job{Units: job.Units, Printing: job.Printing, Blocks: []*Block{block}, Items: []*Item{&bare}})
				whole := bare
				whole.Passes = []*Pass{shelfPass(block)}
				plan, err := NewPlan(&Job{Units: job.Units, Printing: job.Printing, Blocks: []*Block{block}, Items: []*Item{&whole}})
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

// TestShelfNames keeps a table of long names to the window.
func TestShelfNames(t *testing.T) {
	long := strings.Repeat("leaf ", 50) + "end"
	shelf := readShelf(t, "units = 'in'\n[[block]]\nname = '"+long+"'\nprint = '2 3/16 x 1 7/16 in'\n"+
		"[[item]]\nname = '"+long+"'\nsize = '17 11/16 x 13 1/2 in'\nborder = ['1 1/16 in', '5/8 in', '1 3/8 in', '7/8 in']\n")
	text := shelf.FitText()
	for _, line := range strings.Split(text, "\n") {
		if n := len([]rune(line)); n > fitWidth {
			t.Errorf("%d characters: %s", n, line)
		}
	}
	if !strings.Contains(text, "2 3/16 × 1 7/16 in") || !strings.Contains(text, "…") {
		t.Errorf("size or name is missing:\n%s", text)
	}
}
