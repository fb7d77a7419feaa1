package trace

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// drawn reads a picture drawn with # for dark.
func drawn(rows string) (dark []bool, w int) {
	for _, row := range strings.Fields(rows) {
		w = len(row)
		for _, c := range row {
			dark = append(dark, c == '#')
		}
	}
	return dark, w
}

func TestBlobs(t *testing.T) {
	// A ring that hangs together by corners, with a hole; a dark dot in a light patch is its own blob.
	dark, w := drawn(`
		.........
		..##.....
		.#..#..#.
		.#...#...
		..###..#.
		.........`)
	all, labels := blobs(dark, w)
	type kind struct {
		Dark  bool
		N, In int
	}
	var got []kind
	for _, b := range all {
		got = append(got, kind{b.dark, b.n, b.in})
	}
	want := []kind{{false, 38, -1}, {true, 9, -1}, {false, 5, 1}, {true, 1, -1}, {true, 1, -1}}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	if labels[2*w+2] != 2 || labels[0] != 0 {
		t.Errorf("labels %v", labels)
	}
}

// TestBlobsAgainstFlooding holds the two passes against a flood from each pixel.
func TestBlobsAgainstFlooding(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		w, h := 1+r.IntN(12), 1+r.IntN(12)
		dark := make([]bool, w*h)
		for i := range dark {
			dark[i] = r.IntN(2) == 0
		}
		all, labels := blobs(dark, w)
		flooded := make([]int, w*h)
		n := 0
		for i := range dark {
			if flooded[i] > 0 {
				continue
			}
			n++
			flooded[i] = n
			for next := []int{i}; len(next) > 0; {
				at := next[0]
				next = next[1:]
				for dy := -1; dy <= 1; dy++ {
					for dx := -1; dx <= 1; dx++ {
						x, y := at%w+dx, at/w+dy
						if x < 0 || y < 0 || x >= w || y >= h || !dark[i] && dx != 0 && dy != 0 {
							continue
						}
						if k := y*w + x; dark[k] == dark[i] && flooded[k] == 0 {
							flooded[k] = n
							next = append(next, k)
						}
					}
				}
			}
		}
		if len(all) != n {
			t.Fatalf("%d blobs, not %d", len(all), n)
		}
		sizes := make([]int, n)
		for i := range dark {
			if flooded[i] != int(labels[i])+1 {
				t.Fatalf("pixel %d is in blob %d, not %d", i, labels[i], flooded[i]-1)
			}
			sizes[labels[i]]++
		}
		for i, b := range all {
			if b.n != sizes[i] {
				t.Fatalf("blob %d has %d pixels, not %d", i, b.n, sizes[i])
			}
		}
	}
}

// TestEllipseOfABlob: half axes and middle of an ellipse that is drawn; a square takes 0.955 of one
// (4 pi / 12 inverted: a square of side s has the moments s²/12).
func TestEllipseOfABlob(t *testing.T) {
	filled := func(in func(x, y float64) bool) (ellipse, float64) {
		var b blob
		for y := range 200 {
			for x := range 200 {
				if fx, fy := float64(x)+0.5, float64(y)+0.5; in(fx, fy) {
					b.add(blob{n: 1, sx: fx, sy: fy, sxx: fx * fx, syy: fy * fy, sxy: fx * fy, right: x + 1, foot: y + 1})
				}
			}
		}
		return b.ellipse()
	}
	s, c := math.Sincos(0.6)
	e, share := filled(func(x, y float64) bool {
		u, v := (x-90)*c+(y-104)*s, (y-104)*c-(x-90)*s
		return u*u/3600+v*v/900 <= 1
	})
	long, short := e.axes()
	if math.Abs(long-60) > 0.1 || math.Abs(short-30) > 0.1 || e.at.distance(point{90, 104}) > 0.05 || math.Abs(share-1) > 0.002 {
		t.Errorf("%v, %v by %v, filled %v", e, long, short, share)
	}
	if on := e.away(point{90 + 60*c, 104 + 60*s}); math.Abs(on-1) > 0.002 {
		t.Errorf("a point on the ellipse is %v away", on)
	}
	if _, share := filled(func(x, y float64) bool { return x > 40 && x < 140 && y > 60 && y < 160 }); math.Abs(share-0.955) > 0.001 {
		t.Errorf("a square takes %v", share)
	}
}
