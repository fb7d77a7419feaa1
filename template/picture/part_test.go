package picture

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// on is a picture of one grey all over.
func on(w, h int, g uint8) *image.Gray {
	m := image.NewGray(image.Rect(0, 0, w, h))
	for i := range m.Pix {
		m.Pix[i] = g
	}
	return m
}

// noisy adds up to so much to every grey, either way.
func noisy(m *image.Gray, most int, r *rand.Rand) *image.Gray {
	for i, g := range m.Pix {
		m.Pix[i] = uint8(min(max(int(g)+r.IntN(2*most+1)-most, 0), 255))
	}
	return m
}

func TestWhatIsNoPrint(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	inverse := paper(60, 40, image.Rect(10, 10, 40, 30))
	for i := range inverse.Pix {
		inverse.Pix[i] = ^inverse.Pix[i]
	}
	for name, c := range map[string]struct {
		m    *image.Gray
		want string // "": it is a print
	}{
		"white":                {on(60, 40, 255), "nothing stands out"},
		"cloth with grain":     {noisy(on(60, 40, 200), 20, r), "nothing stands out"},
		"black":                {on(60, 40, 0), "dark all over"},
		"paint with grain":     {noisy(on(60, 40, 50), 20, r), "dark all over"},
		"light on dark":        {inverse, "edges of this picture are dark"},
		"cut too close":        {paper(60, 40, image.Rect(0, 0, 60, 40).Inset(0), image.Rect(0, 0, 60, 30)), "dark all over"},
		"a solid print, cut":   {paper(60, 40, image.Rect(0, 0, 60, 38)), "edges of this picture are dark"},
		"one dot":              {paper(600, 400, image.Rect(10, 10, 20, 20)), "smaller than 16 pixels"},
		"a print":              {paper(60, 40, image.Rect(10, 10, 40, 30)), ""},
		"a print that touches": {paper(60, 40, image.Rect(10, 10, 60, 30)), ""},
		"pale paint":           {light(60, 40, image.Rect(10, 10, 40, 30), 226), ""}, // yellow, on white
		"one pixel":            {on(1, 1, 128), "nothing stands out"},
	} {
		mask, err := Part(c.m)
		switch {
		case c.want == "" && err != nil:
			t.Errorf("%s: %v", name, err)
		case c.want == "" && (mask.W == 0 || mask.H == 0):
			t.Errorf("%s: nothing is left", name)
		case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "; ")):
			t.Errorf("%s: %v", name, err)
		}
	}
}

// light is a white picture with a rectangle of one grey.
func light(w, h int, r image.Rectangle, g uint8) *image.Gray {
	m := on(w, h, 255)
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			m.SetGray(x, y, color.Gray{g})
		}
	}
	return m
}

// disc is a round print drawn with grey steps at its edge: each pixel as dark as the disc covers it, by
// 16 x 16 points in it.
func disc(w, h int, x0, y0, radius float64, paint, cloth uint8) *image.Gray {
	m := on(w, h, cloth)
	const n = 16
	for y := range h {
		for x := range w {
			in := 0
			for i := range n * n {
				u, v := float64(x)+(float64(i%n)+0.5)/n-x0, float64(y)+(float64(i/n)+0.5)/n-y0
				if u*u+v*v < radius*radius {
					in++
				}
			}
			m.SetGray(x, y, color.Gray{uint8(float64(cloth) - float64(in)/(n*n)*float64(cloth-paint) + 0.5)})
		}
	}
	return m
}

// Grey steps at the edge of paint are kept: the paint of a disc is pi r^2 far closer than whole pixels
// could be, wherever it lies, and its contour runs between them.
func TestGreyStepsAreKept(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 30 {
		radius := 9 + 10*r.Float64()
		x0, y0 := 30+r.Float64(), 30+r.Float64()
		m := disc(60, 60, x0, y0, radius, 40, 220)
		mask, err := Part(m)
		if err != nil {
			t.Fatal(err)
		}
		got := mask.Share() * float64(mask.W*mask.H)
		if want := math.Pi * radius * radius; math.Abs(got-want) > 0.01*want {
			t.Errorf("radius %.3f: paint on %.2f pixels, want %.2f", radius, got, want)
		}
		if w := float64(mask.W); w < 2*radius-0.2 || w > 2*radius+2 {
			t.Errorf("radius %.3f: %g pixels wide", radius, w)
		}
		steps := map[uint8]bool{}
		for _, p := range mask.Paint {
			steps[p] = true
		}
		if len(steps) < 10 {
			t.Errorf("radius %.3f: only %d steps of paint", radius, len(steps))
		}
	}
}

// A print of any size keeps its shape and share where it has to be made smaller.
func TestMadeSmaller(t *testing.T) {
	for _, n := range []int{1599, 1600, 1601, 2399, 3200, 4001} {
		w, h := n, n*2/3
		m := paper(w+40, h+30, image.Rect(20, 10, 20+w, 10+h/2), image.Rect(20, 10, 20+w/4, 10+h))
		mask, err := Part(m)
		if err != nil {
			t.Fatal(err)
		}
		if want := min(n, mostSide); mask.W != want {
			t.Errorf("%d: %d pixels wide", n, mask.W)
		}
		if off := float64(mask.W) / float64(mask.H) / (float64(w) / float64(h)); math.Abs(off-1) > 0.001 {
			t.Errorf("%d: %d x %d, so %g times as wide", n, mask.W, mask.H, off)
		}
		want := float64(w*(h/2)+w/4*(h-h/2)) / float64(w*h)
		if math.Abs(mask.Share()-want) > 0.001 {
			t.Errorf("%d: share %g, want %g", n, mask.Share(), want)
		}
	}
}

// reduce takes the mean of what each pixel covers: held against each part of each pixel, by area.
func TestMeanByArea(t *testing.T) {
	var paint [256]uint8
	for g := range paint {
		paint[g] = uint8(255 - g)
	}
	r := rand.New(rand.NewPCG(5, 6))
	const w, h = 2*mostSide - 57, 7
	m := noisy(on(w, h, 128), 127, r)
	mask := reduce(m, m.Rect, paint)
	if mask.W != mostSide || mask.H != 4 {
		t.Fatalf("%d x %d", mask.W, mask.H)
	}
	shared := func(cell, cells, pixel, n int) float64 {
		k := float64(n) / float64(cells)
		from, to := max(float64(cell)*k, float64(pixel)), min(float64(cell+1)*k, float64(pixel+1))
		return max(0, to-from)
	}
	for y := range mask.H {
		for _, x := range []int{0, 1, 2, 799, 800, 1234, mostSide - 1} {
			var sum float64
			for v := range h {
				for u := range w {
					if across := shared(x, mask.W, u, w); across > 0 {
						sum += float64(255-m.Pix[v*w+u]) * across * shared(y, mask.H, v, h)
					}
				}
			}
			want := sum / (float64(w) / float64(mask.W) * float64(h) / float64(mask.H))
			if got := float64(mask.At(x, y)); math.Abs(got-want) > 0.51 {
				t.Errorf("%d, %d: %g, want %.2f", x, y, got, want)
			}
		}
	}
}
