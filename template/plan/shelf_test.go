package plan

import (
	"errors"
	"fmt"
	"math"
	"runtime"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"underlay/geometry"
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
		turned := count(390, block.H)*count(270, block.W) > count(390, block.W)*count(270, block.H)
		if turned {
			block = block.Swap()
		}
		columns, rows := count(390, block.W), count(270, block.H)
		if fits := columns*rows > 0; fits != fit.Fits() || fits == (fit.Why != "") || turned != fit.Turned {
			t.Errorf("%v: fits %v, turned %v, said why not %q", size, fit.Fits(), fit.Turned, fit.Why)
		}
		if !fit.Fits() {
			continue
		}
		c := fit.Choice
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
		"high":     {"print = '60 x 90 mm'", "size = '120 x 90 mm'\nborder = '20 mm'", "40 mm too high"},
		"turned":   {"print = '50 x 90 mm'", "size = '140 x 90 mm'\nborder = '20 mm'", "fits"},
		"both":     {"print = '101 x 51 mm'", "size = '140 x 90 mm'\nborder = '20 mm'", "1 mm too wide and 1 mm too high"},
		"hair":     {"print = '100.001 x 50 mm'", "size = '140 x 90 mm'\nborder = '20 mm'", "0.01 mm too wide"},
		"fits":     {"print = '100 x 50 mm'", "size = '140 x 90 mm'\nborder = '20 mm'", "fits"},
		"round":    {"print = '90 x 90 mm'", "shape = 'round'\nsize = '140 mm'\nborder = '20 mm'", ""},
		"drum":     {"print = '300 x 50 mm'", "shape = 'drum'\naround = '300 mm'\nheight = '90 mm'\nborder = '20 mm'", "1 mm too wide"},
		"cone":     {"print = '55 x 90 mm'", "shape = 'cone'\ntop = '60 mm'\nbottom = '140 mm'\nheight = '30 mm'\nborder = '0 mm'", "40 mm too high"},
		"too many": {"print = '1 x 1 mm'", "size = '4 x 4 m'\nborder = '20 mm'", "too small, for it would make too many prints"},
	} {
		t.Run(name, func(t *testing.T) {
			fit := readShelf(t, "[[block]]\nname = 'fern'\n"+c.block+"\n[[item]]\nname = 'thing'\n"+c.item+"\n").Items[0].Fits[0]
			got := fit.Why
			if fit.Fits() {
				got = "fits"
			}
			if got != c.want {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}

// TestShelfLikeThePass holds a shelf to the prints of jobs that a maker would write to ask for the
// same, upright and turned: the more of the two, upright where they are as many.
func TestShelfLikeThePass(t *testing.T) {
	const blocks = "[[block]]\nname = 'wave'\nprint = '60 x 40 mm'\n[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n" +
		"[[block]]\nname = 'pebble'\nshape = 'round'\nprint = '55 mm'\n[[block]]\nname = 'cell'\nshape = 'hexagon'\nprint = '52 x 60 mm'\n" +
		"[[block]]\nname = 'leaf'\nshape = 'outline'\noutline = ['0 x 0 mm', '50 x 10 mm', '40 x 60 mm', '20 x 25 mm']\n"
	turned, wider := 0, 0
	for _, item := range []string{
		"size = '430 x 310 mm'\nborder = '20 mm'", "size = '250 x 620 mm'\nborder = ['10 mm', '22 mm', '31.5 mm', '44 mm']",
		"shape = 'round'\nsize = '360 mm'\nborder = '20 mm'", "shape = 'outline'\noutline = ['0 x 0 mm', '400 x 0 mm', '200 x 500 mm']\nborder = '15 mm'",
		"shape = 'drum'\naround = '630 mm'\nheight = '180 mm'\nborder = '10 mm'", "shape = 'cone'\ntop = '15 cm'\nbottom = '25 cm'\nheight = '18 cm'\nborder = '10 mm'",
	} {
		thing := "[[item]]\nname = 'thing'\n" + item + "\n"
		for _, gap := range []geometry.Length{1, 2.5} {
			shelf, err := NewShelf(readJob(t, blocks+thing), gap)
			if err != nil {
				t.Fatal(err)
			}
			for _, fit := range shelf.Items[0].Fits {
				var counts [2]int
				for i, turn := range []string{"0", "90"} {
					pass := fmt.Sprintf("[[item.pass]]\nblock = '%s'\ngap = '%v mm'\nturns = ['%s']\n", fit.Block.Name, float64(gap), turn)
					if p, err := tryText(blocks + thing + pass); err == nil {
						counts[i] = len(p.Items[0].Passes[0].Prints)
					}
				}
				if want := max(counts[0], counts[1]); fit.Choice.Count != want || fit.Turned != (counts[1] > counts[0]) {
					t.Errorf("%s, gap %v: %s: %d, turned %v; prints %v", item, gap, fit.Block.Name, fit.Choice.Count, fit.Turned, counts)
				}
				if fit.Turned {
					turned++
				}
				if fit.Choice.Count > 0 {
					wider++
				}
			}
		}
	}
	if turned < 5 || wider < 40 {
		t.Errorf("%d blocks lie on their side, of %d", turned, wider)
	}
}

// TestShelfOrder: on 430 x 310 mm with a border of 20, 390 x 270 is printable. With gaps of 1, 4 x 4
// of 96 x 66 take up 16 x 97 x 67 = 103,984 mm2; 4 x 2 of 90 x 130, upright, 8 x 91 x 131 =
// 95,368; 4 x 2 of 90 x 90, 8 x 91 x 91 = 66,248. What does not fit comes last.
func TestShelfOrder(t *testing.T) {
	shelf := readShelf(t, "[[block]]\nname = 'too large'\nprint = '400 x 400 mm'\n[[block]]\nname = 'second'\nprint = '90 x 130 mm'\n"+
		"[[block]]\nname = 'third'\nprint = '90 x 90 mm'\n[[block]]\nname = 'first'\nprint = '96 x 66 mm'\n"+
		"[[item]]\nname = 'towel'\nsize = '430 x 310 mm'\nborder = '20 mm'\n")
	var got []string
	for _, f := range shelf.Items[0].Fits {
		got = append(got, fmt.Sprintf("%s %d", f.Block.Name, f.Choice.Count))
	}
	if d := cmp.Diff([]string{"first 16", "second 8", "third 8", "too large 0"}, got); d != "" {
		t.Error(d)
	}
}

// TestShelfLimits refuses a shelf of more than is tried, and at the limit keeps no prints: a shelf
// of a million of them holds no more than a few lines a pair.
func TestShelfLimits(t *testing.T) {
	text := func(blocks, items int, print, size string) string {
		var b strings.Builder
		for i := range blocks {
			fmt.Fprintf(&b, "[[block]]\nname = 'block %d'\nprint = '%s'\n", i, print)
		}
		for i := range items {
			fmt.Fprintf(&b, "[[item]]\nname = 'item %d'\nsize = '%s'\nborder = '20 mm'\n", i, size)
		}
		return b.String()
	}
	for _, c := range []struct {
		blocks, items int
		print, size   string
		want          string
	}{
		{101, 100, "90 x 90 mm", "50 x 50 cm", "there are 10,100 pairs of a block and an item, and 10,000 are tried at once; leave some blocks or items out"},
		{10, 20, "5 x 5 mm", "150 x 150 cm", "this makes about 11,939,756 prints to try, and 10,000,000 are tried at once; leave some blocks or items out"},
	} {
		_, err := NewShelf(readJob(t, text(c.blocks, c.items, c.print, c.size)), ShelfGap)
		var problems job.Problems
		if !errors.As(err, &problems) || problems[0].Text != c.want {
			t.Errorf("got %v, want %s", err, c.want)
		}
	}
	j := readJob(t, text(20, 5, "10 x 10 mm", "100 x 100 cm"))
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	shelf, err := NewShelf(j, ShelfGap)
	if err != nil {
		t.Fatal(err)
	}
	runtime.GC()
	runtime.ReadMemStats(&after)
	prints := 0
	for _, si := range shelf.Items {
		for _, f := range si.Fits {
			prints += f.Choice.Count
		}
	}
	if kept := int(after.HeapAlloc) - int(before.HeapAlloc); prints < 700_000 || kept > 2<<20 {
		t.Errorf("%d prints, %d bytes kept", prints, kept)
	}
	runtime.KeepAlive(shelf)
}
