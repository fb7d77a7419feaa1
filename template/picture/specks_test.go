package picture

import (
	"image"
	"math/rand/v2"
	"slices"
	"testing"
)

// Specks, wherever they lie round a print, change nothing of its bounds: prints in one piece, in a few
// and in many dots, in small pictures and in ones that are looked at smaller.
func TestSpecksChangeNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for i := range 36 {
		k := 1 + i%3*4 // times as large
		print := image.Rect(60*k, 60*k, (180+r.IntN(40))*k, (160+r.IntN(60))*k)
		m := image.NewGray(image.Rect(0, 0, 300*k, 280*k))
		for i := range m.Pix {
			m.Pix[i] = 230
		}
		switch i % 4 {
		case 0: // one piece
			ink(m, print)
		case 1: // bars
			for x := print.Min.X; x < print.Max.X; x += 20 * k {
				ink(m, image.Rect(x, print.Min.Y, min(x+10*k, print.Max.X), print.Max.Y))
			}
			ink(m, image.Rect(print.Max.X-5*k, print.Min.Y, print.Max.X, print.Max.Y))
		case 2: // dots all over, to the corners
			const n = 16
			for i := range n * n {
				x := print.Min.X + i%n*(print.Dx()-4*k)/(n-1)
				y := print.Min.Y + i/n*(print.Dy()-4*k)/(n-1)
				ink(m, image.Rect(x, y, x+4*k, y+4*k))
			}
		case 3: // a piece, and leaves round it
			ink(m, print.Inset(30*k))
			for _, p := range []image.Point{print.Min, {print.Max.X - 5*k, print.Min.Y}, {print.Min.X, print.Max.Y - 5*k}, print.Max.Sub(image.Pt(5*k, 5*k))} {
				ink(m, image.Rect(p.X, p.Y, p.X+5*k, p.Y+5*k))
			}
		}
		clean, err := Part(m)
		if err != nil {
			t.Fatal(err)
		}
		if k == 1 && (clean.W != print.Dx() || clean.H != print.Dy()) {
			t.Errorf("%d: the print of %v is %d x %d", i, print, clean.W, clean.H)
		}
		largest := 1
		if i%4 != 2 && k > 1 {
			largest = k / 2 // of a dot of a print, they would be a tenth
		}
		for range 60 {
			x, y := r.IntN(m.Rect.Dx()-largest), r.IntN(m.Rect.Dy()-largest)
			speck := image.Rect(x, y, x+1+r.IntN(largest), y+1+r.IntN(largest))
			if !speck.Overlaps(print.Inset(-4 * k)) {
				ink(m, speck)
			}
		}
		specked, err := Part(m)
		if err != nil {
			t.Fatal(err)
		}
		if specked.W != clean.W || specked.H != clean.H || !slices.Equal(specked.Paint, clean.Paint) {
			t.Errorf("%d: %d x %d with specks, %d x %d without", i, specked.W, specked.H, clean.W, clean.H)
		}
	}
}

// Small dots at the rim belong to the print where it is made of dots: of a quarter of the others'
// size, and round a large piece that has less paint than they have.
func TestDotsAreNoSpecks(t *testing.T) {
	grid := func(n, step, size int, m *image.Gray) {
		for i := range n * n {
			x, y := 20+i%n*step, 20+i/n*step
			ink(m, image.Rect(x, y, x+size, y+size))
		}
	}
	quarter := paper(300, 300)
	grid(2, 200, 2, quarter)
	dots := paper(300, 300)
	grid(16, 10, 4, dots)
	for i, g := range dots.Pix {
		if x, y := i%300, i/300; g == 0 {
			quarter.SetGray(x+20, y+20, dots.GrayAt(x, y))
		}
	}
	piece := paper(300, 300)
	grid(40, 5, 2, piece)
	ink(piece, image.Rect(100, 100, 130, 130))
	for name, c := range map[string]struct {
		m    *image.Gray
		side int
	}{"a quarter of the size": {quarter, 202}, "round a piece": {piece, 197}} {
		mask, err := Part(c.m)
		if err != nil {
			t.Fatal(err)
		}
		if mask.W != c.side || mask.H != c.side {
			t.Errorf("%s: %d x %d, not %d", name, mask.W, mask.H, c.side)
		}
	}
}

// pieces against a flood that goes on until nothing changes.
func TestPiecesBySpreading(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 50 {
		m := &Mask{W: 1 + r.IntN(30), H: 1 + r.IntN(30)}
		for range m.W * m.H {
			m.Paint = append(m.Paint, uint8(r.IntN(2)*255))
		}
		of, sizes := m.pieces()
		want := make([]int, len(m.Paint))
		for i, p := range m.Paint {
			if p >= half {
				want[i] = i + 1
			}
		}
		for changed := true; changed; {
			changed = false
			for i := range want {
				for _, d := range []image.Point{{1, 0}, {0, 1}, {1, 1}, {-1, 1}} {
					x, y := i%m.W+d.X, i/m.W+d.Y
					if x < 0 || x >= m.W || y >= m.H || want[i] == 0 || want[y*m.W+x] == 0 || want[i] == want[y*m.W+x] {
						continue
					}
					least := min(want[i], want[y*m.W+x])
					want[i], want[y*m.W+x], changed = least, least, true
				}
			}
		}
		count := map[int32]int{}
		name := map[int32]int{}
		for i, p := range of {
			if (p == 0) != (want[i] == 0) || p > 0 && name[p] != 0 && name[p] != want[i] {
				t.Fatalf("pixel %d is of piece %d", i, p)
			}
			name[p] = want[i]
			count[p]++
		}
		for p, n := range sizes {
			if count[int32(p+1)] != n {
				t.Errorf("piece %d has %d pixels, not %d", p+1, count[int32(p+1)], n)
			}
		}
	}
}
