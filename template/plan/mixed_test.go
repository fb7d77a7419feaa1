package plan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
)

// mixedJob is a pass of several blocks of given sizes in a matrix.
func mixedJob(item, repeat, gap string, sizes []geometry.Size, matrix [][]int) string {
	var b strings.Builder
	for i, s := range sizes {
		fmt.Fprintf(&b, "[[block]]\nname = 'block %d'\nprint = '%v x %v mm'\n", i, float64(s.W), float64(s.H))
	}
	var rows []string
	for _, row := range matrix {
		var names []string
		for _, n := range row {
			names = append(names, fmt.Sprintf("'block %d'", n))
		}
		rows = append(rows, "["+strings.Join(names, ", ")+"]")
	}
	fmt.Fprintf(&b, "[[item]]\nname = 'cushion'\nborder = '20 mm'\n%s\n[[item.pass]]\nname = 'mixed'\nrepeat = '%s'\ngap = '%s'\nblocks = [%s]\n", item, repeat, gap, strings.Join(rows, ", "))
	return b.String()
}

// randomMix is a matrix of up to three by three in which at least two blocks stand.
func randomMix(rng *rand.Rand) (sizes []geometry.Size, matrix [][]int) {
	for range 2 + rng.IntN(2) {
		sizes = append(sizes, geometry.Size{W: geometry.Length(24 + rng.IntN(50)), H: geometry.Length(24 + rng.IntN(50))})
	}
	rows, columns := 1+rng.IntN(3), 1+rng.IntN(3)
	if rows*columns == 1 {
		columns = 2
	}
	for range rows {
		row := make([]int, columns)
		for i := range row {
			row[i] = rng.IntN(len(sizes))
		}
		matrix = append(matrix, row)
	}
	matrix[0][0] = 0
	matrix[rows-1][columns-1] = 1
	return sizes, matrix
}

// TestMixedAgainstBruteForce holds the prints of random matrices in straight rows to what any way of
// centring would give, a place of some kind or a joint on each centre line, added up one by one here:
// none gives more than the one taken, and each is as many prints as whole places fit. By orb no
// print leaves the area, and none is nearer to another than the gap.
func TestMixedAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 12))
	for range 60 {
		sizes, matrix := randomMix(rng)
		width, height, gap := 220+rng.IntN(250), 220+rng.IntN(250), float64(rng.IntN(5))
		text := mixedJob(fmt.Sprintf("size = '%d x %d mm'", width, height), "straight", fmt.Sprintf("%v mm", gap), sizes, matrix)
		p := planOf(t, text).Items[0].Passes[0]

		var columns, rows []float64
		for i := range matrix[0] {
			most := 0.0
			for j := range matrix {
				most = max(most, float64(sizes[matrix[j][i]].W))
			}
			columns = append(columns, most)
		}
		for j := range matrix {
			most := 0.0
			for i := range matrix[j] {
				most = max(most, float64(sizes[matrix[j][i]].H))
			}
			rows = append(rows, most)
		}
		most := bestRun(columns, gap, float64(width-40)) * bestRun(rows, gap, float64(height-40))
		if got := p.Choice().Count; got != most || len(p.Prints) != most {
			t.Errorf("%d prints, %d listed, by brute force %d:\n%s", got, len(p.Prints), most, text)
		}
		for _, c := range p.Choices {
			if c.better(p.Choice()) {
				t.Errorf("%+v is better than the one taken, %+v:\n%s", c, p.Choice(), text)
			}
		}
		checkMixed(t, text, p, gap)
		for _, print := range p.Prints {
			b := p.Choice().Begins
			want := matrix[(print.Row-1+b.J)%len(matrix)][(print.Column-1+b.I)%len(matrix[0])]
			if got := p.Pass.Mix.Parts[print.Part].Block.Name; got != fmt.Sprintf("block %d", want) {
				t.Errorf("column %d, row %d is %s, want block %d:\n%s", print.Column, print.Row, got, want, text)
			}
		}
	}
}

// bestRun is the most places of some sizes, again and again, that fit in a room with a gap, if one of
// some kind or the joint after some kind is in its middle.
func bestRun(sizes []float64, gap, room float64) int {
	at := func(i int) float64 { return sizes[((i%len(sizes))+len(sizes))%len(sizes)] }
	side := func(first, step int, left float64) (n int) {
		for i := first; left-at(i) >= -1e-6; i += step {
			left -= at(i) + gap
			n++
		}
		return n
	}
	most := 0
	for k := range sizes {
		if half := (room - at(k)) / 2; half >= -1e-6 {
			most = max(most, 1+side(k+1, 1, half-gap)+side(k-1, -1, half-gap))
		}
		most = max(most, side(k+1, 1, (room-gap)/2)+side(k, -1, (room-gap)/2))
	}
	return most
}

// checkMixed holds prints of several blocks to their item and to each other, by orb; and to the order
// of printing: one block after the other, as they first come in the matrix, numbered on.
func checkMixed(t *testing.T, text string, p *PassPlan, gap float64) {
	t.Helper()
	shapes := make([]oracle.Shape, len(p.Prints))
	for i, a := range p.Prints {
		shapes[i] = oracle.OutlineAt(p.Pass.Mix.Parts[a.Part].Block, a.Origin, a.Turn)
		if !shapes[i].Fits(p.layout.item, 1e-6) {
			t.Errorf("print %d is not wholly on the area:\n%s", a.Number, text)
		}
		if a.Number != i+1 || i > 0 && a.Part < p.Prints[i-1].Part {
			t.Errorf("print %d, the %dth, is of part %d after part %d:\n%s", a.Number, i+1, a.Part, p.Prints[max(0, i-1)].Part, text)
		}
		for j := range i {
			for _, other := range shapes[j].Copies(p.layout.item) {
				if d := shapes[i].Apart(other); d < gap-1e-6 {
					t.Fatalf("prints %d and %d are %v apart, less than %v:\n%s", j+1, i+1, d, gap, text)
				}
			}
		}
	}
}

// TestMixedPlaces sets mixed blocks out on every other lattice, where a place is as large as the
// largest: there are as many prints as of one block of that size, all inside and apart. Round shades
// the matrix closes.
func TestMixedPlaces(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 7))
	for range 40 {
		sizes, matrix := randomMix(rng)
		repeat := []string{"brick", "half-drop", "straight"}[rng.IntN(3)]
		item := "size = '400 x 360 mm'"
		shade := rng.IntN(2) == 0 || repeat == "straight"
		if shade {
			item = "shape = 'drum'\naround = '900 mm'\nheight = '260 mm'"
		}
		gap := float64(rng.IntN(4))
		text := mixedJob(item, repeat, fmt.Sprintf("%v mm", gap), sizes, matrix)
		p := planOf(t, text).Items[0].Passes[0]
		checkMixed(t, text, p, gap)
		if shade {
			if n := p.Choice().Columns; n%len(matrix[0]) != 0 {
				t.Errorf("%d columns round, of a matrix %d wide:\n%s", n, len(matrix[0]), text)
			}
			continue
		}
		var most geometry.Size
		for _, row := range matrix {
			for _, n := range row {
				most = geometry.Size{W: max(most.W, sizes[n].W), H: max(most.H, sizes[n].H)}
			}
		}
		plain := planOf(t, fmt.Sprintf("[[block]]\nname = 'fern'\nprint = '%v x %v mm'\n[[item]]\nname = 'cushion'\nborder = '20 mm'\n%s\n[[item.pass]]\nblock = 'fern'\nrepeat = '%s'\ngap = '%v mm'\n",
			float64(most.W), float64(most.H), item, repeat, gap))
		if got, want := p.Choice().Count, plain.Items[0].Passes[0].Choice().Count; got != want {
			t.Errorf("%d prints, of one block as large as the largest %d:\n%s", got, want, text)
		}
	}
}

// TestChessboardIsCentred: in a chessboard of two blocks those of one stand on a centred rectangular
// lattice (International Tables for Crystallography A, plane group cm, no. 5: (x, y) and
// (x + 1/2, y + 1/2) are alike), of a cell of two places by two.
func TestChessboardIsCentred(t *testing.T) {
	text := mixedJob("size = '500 x 460 mm'", "straight", "2 mm", []geometry.Size{{W: 50, H: 40}, {W: 36, H: 40}}, [][]int{{0, 1}, {1, 0}})
	p := planOf(t, text).Items[0].Passes[0]
	type point struct{ x, y int }
	round := func(q geometry.Point) point {
		return point{int(math.Round(float64(q.X) * 1e3)), int(math.Round(float64(q.Y) * 1e3))}
	}
	at := map[point]int{}
	for _, q := range p.Prints {
		at[round(q.Origin)] = q.Part
	}
	half := geometry.Pt(52, 42)
	for _, q := range p.Prints {
		for by, same := range map[geometry.Point]bool{half: true, geometry.Pt(half.X, -half.Y): true, geometry.Pt(half.X, 0): false, geometry.Pt(0, half.Y): false} {
			if part, ok := at[round(q.Origin.Add(by))]; ok && (part == q.Part) != same {
				t.Errorf("print %d and that at %v from it: parts %d and %d", q.Number, by, q.Part, part)
			}
		}
	}
	if len(at) < 60 {
		t.Errorf("%d prints only", len(at))
	}
}

// TestMixedByHand: 460 printable across take 90, 60, 90, 60, 90 with four gaps of 1: 394; or, with the
// narrow one in the middle, 364. Both are five, with 25 plain at far and near, the least border of
// either; so the matrix begins with its first place. A range opens the four gaps by (460 - 390)/4.
func TestMixedByHand(t *testing.T) {
	sizes := []geometry.Size{{W: 90, H: 90}, {W: 60, H: 90}}
	for gap, want := range map[string]struct {
		count int
		gap   geometry.Length
	}{"1 mm": {5, 1}, "1 mm to 40 mm": {5, 17.5}} {
		c := planOf(t, mixedJob("size = '500 x 140 mm'", "straight", gap, sizes, [][]int{{0, 1}})).Items[0].Passes[0].Choice()
		if c.Count != want.count || math.Abs(float64(c.Gap.Across-want.gap)) > 1e-9 || c.Begins != (geometry.Site{}) {
			t.Errorf("gap %s: %d prints, gap %v, begins %v", gap, c.Count, c.Gap.Across, c.Begins)
		}
	}
}

// TestColoursInTurn prints one block in stripes of two colours: each is a part by itself in the
// totals, and its paint counts whole.
func TestColoursInTurn(t *testing.T) {
	p := planOf(t, "[printing]\npaint-cover = '100 ml/m2'\n[[block]]\nname = 'fern'\nprint = '100 x 100 mm'\ninked = 0.5\n[[item]]\nname = 'cushion'\nsize = '450 x 450 mm'\nborder = '10 mm'\n"+
		"[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\ncolours-in-turn = [['moss'], ['ochre']]\n")
	pass := p.Items[0].Passes[0]
	if len(pass.Prints) != 16 || len(pass.Printed()) != 2 || pass.Printed()[1].Pass.Name != "fern, ochre" {
		t.Fatalf("%d prints, %d parts", len(pass.Prints), len(pass.Printed()))
	}
	for _, q := range pass.Prints {
		if q.Part != (q.Row-1)%2 {
			t.Errorf("row %d is of part %d", q.Row, q.Part)
		}
	}
	totals := NewTotals(p)
	// 8 prints of 0.01 m2, half of it inked, at 100 ml a square metre: 4 ml.
	for i, colour := range []string{"moss", "ochre"} {
		if r := totals.Rows[i]; r.Colour != colour || r.Prints != 8 || math.Abs(r.Paint-4) > 1e-9 || len(totals.Rows) != 2 {
			t.Errorf("total %d: %+v", i, r)
		}
	}
}

// TestNumbersOfParts: the parts of a pass run on in the numbers of a face, passes after it go on from
// there.
func TestNumbersOfParts(t *testing.T) {
	text := mixedJob("size = '300 x 300 mm'", "straight", "20 mm", []geometry.Size{{W: 60, H: 60}, {W: 40, H: 40}}, [][]int{{0, 1}, {1, 0}}) +
		"[[item.pass]]\nname = 'dots'\nblock = 'block 1'\nrepeat = 'brick'\ngap = '90 mm'\nover = true\n"
	ip := planOf(t, text).Items[0]
	next := 1
	for _, f := range ip.Faces()[0].Passes {
		if f.First != next || f.Prints[0].Number != next {
			t.Errorf("%s begins with %d, %d; want %d", f.Pass.Name, f.First, f.Prints[0].Number, next)
		}
		next += len(f.Prints)
	}
	if n := len(ip.Faces()[0].Passes); n != 3 {
		t.Errorf("%d passes on the face, want two parts and the dots", n)
	}
}

// BenchmarkMixed sets a chessboard of two blocks of one size out, beside one block alone.
func BenchmarkMixed(b *testing.B) {
	size := []geometry.Size{{W: 10, H: 10}, {W: 10, H: 10}}
	for name, text := range map[string]string{
		"chess": mixedJob("size = '1200 x 1200 mm'", "straight", "1 mm", size, [][]int{{0, 1}, {1, 0}}),
		"plain": "[[block]]\nname = 'fern'\nprint = '10 x 10 mm'\n[[item]]\nname = 'cushion'\nborder = '20 mm'\nsize = '1200 x 1200 mm'\n[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n",
	} {
		j := readJob(b, text)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := New(j); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// TestMixedOnPieces: on a cloth of several pieces each part is repeated on every piece, with the
// numbers it has on one.
func TestMixedOnPieces(t *testing.T) {
	text := mixedJob("size = '200 x 200 mm'\npieces = '2 x 2'\napart = '20 mm'", "straight", "1 mm", []geometry.Size{{W: 40, H: 40}, {W: 30, H: 20}}, [][]int{{0, 1}, {1, 0}})
	face := planOf(t, text).Items[0].Faces()[0].Laid()
	if len(face.Passes) != 2 {
		t.Fatalf("%d passes on the cloth, want two parts", len(face.Passes))
	}
	next := 1
	for i, p := range face.Passes {
		each := []int{5, 4}[i] // of three by three
		if len(p.Prints) != 4*each || p.First != next || p.NumberOf(each) != next || p.Whole() == p.PassPlan {
			t.Errorf("part %d: %d prints from %d, the first of the second piece is %d", i, len(p.Prints), p.First, p.NumberOf(8))
		}
		next += each
	}
}
