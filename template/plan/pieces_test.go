package plan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"

	"underlay/geometry"
	"underlay/template/job"
)

// TestPiecesAreTheOnePieceAgain puts random pieces on one cloth: each has the prints, the numbers,
// the first corners and the tape lines of the piece alone, moved; none leaves its piece, by orb; the
// cuts lie halfway between two pieces; and the totals are so many times those of one.
func TestPiecesAreTheOnePieceAgain(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 8))
	seen := 0
	for seen < 150 {
		w, h := 80+r.IntN(200), 80+r.IntN(200)
		columns, rows, apart := 1+r.IntN(5), 1+r.IntN(5), float64(r.IntN(60))/2
		quantity, left := 1+r.IntN(3), r.IntN(2) == 0
		repeat := []string{"straight", "brick", "half-drop", "honeycomb", "frame", "diagonal", "corners"}[r.IntN(7)]
		gap := fmt.Sprintf("gap = '%d mm'\n", r.IntN(6))
		if repeat == "corners" {
			gap = ""
		}
		block := fmt.Sprintf("print = '%d x %d mm'", 10+r.IntN(40), 10+r.IntN(40))
		if repeat == "honeycomb" {
			block = fmt.Sprintf("shape = 'round'\nprint = '%d mm'", 10+r.IntN(40))
		}
		extra := ""
		if r.IntN(3) == 0 {
			extra = "[[item.keep-clear]]\nname = 'tab'\nat = '20 x 30 mm'\nsize = '15 x 20 mm'\n"
		}
		second := ""
		if repeat == "straight" && r.IntN(2) == 0 {
			second = "[[item.pass]]\nname = 'seeds'\nblock = 'seed'\non = 'leaves'\n"
		}
		which := "block = 'leaf'"
		if repeat == "straight" && second == "" && r.IntN(2) == 0 {
			which = "blocks = [['leaf', 'seed'], ['seed', 'leaf']]"
		}
		faces := ""
		if r.IntN(3) == 0 {
			faces = "faces = ['front', 'back']\n"
		}
		hand := "right"
		if left {
			hand = "left"
		}
		text := fmt.Sprintf("[printing]\nhand = '%s'\n[[block]]\nname = 'leaf'\n%s\n[[block]]\nname = 'seed'\nprint = '6 x 6 mm'\n"+
			"[[item]]\nname = 'napkin'\nsize = '%d x %d mm'\nborder = ['%d mm', '%d mm', '%d mm', '%d mm']\nquantity = %d\n%sPIECES\n%s"+
			"[[item.pass]]\nname = 'leaves'\n%s\nrepeat = '%s'\n%s%s",
			hand, block, w, h, r.IntN(20), r.IntN(20), r.IntN(20), r.IntN(20), quantity, faces, extra, which, repeat, gap, second)
		one, err := tryText(strings.Replace(text, "PIECES", "", 1))
		if err != nil || columns*rows == 1 {
			continue
		}
		seen++
		all := planOf(t, strings.Replace(text, "PIECES", fmt.Sprintf("pieces = '%d x %d'\napart = '%v mm'", columns, rows, apart), 1))
		checkOnPieces(t, text, one, all, columns, rows, apart, left)
		a, b := NewTotals(one), NewTotals(all)
		if n := columns * rows; b.Pieces != n*quantity || b.Prints != n*a.Prints || a.Pieces != quantity {
			t.Fatalf("%d prints on %d pieces, %d on %d alone, and %d to a cloth\n%s", b.Prints, b.Pieces, a.Prints, a.Pieces, n, text)
		}
	}
}

// checkOnPieces holds a cloth of pieces against the one piece.
func checkOnPieces(t *testing.T, text string, one, all *Plan, columns, rows int, apart float64, left bool) {
	t.Helper()
	if a, b := one.Items[0].Faces(), all.Items[0].Faces(); len(a) != len(b) {
		t.Fatalf("%d faces that differ, alone %d\n%s", len(b), len(a), text)
	}
	for i, c := range all.Items[0].Cloths() {
		checkCloth(t, text, one.Items[0].Cloths()[i], c, columns, rows, apart, left)
	}
}

// checkCloth does so as one face shows it.
func checkCloth(t *testing.T, text string, one, ip *ItemPlan, columns, rows int, apart float64, left bool) {
	t.Helper()
	w, h := float64(one.Item.Size.W), float64(one.Item.Size.H)
	laid := FacePlan{Item: ip.OnCloth()}
	for _, p := range laid.Item.Passes {
		laid.Passes = append(laid.Passes, FacePass{p, p.First})
	}
	if c := laid.Item.Area.Cloth; math.Abs(float64(c.W())-(float64(columns)*w+float64(columns-1)*apart)) > 1e-9 ||
		math.Abs(float64(c.H())-(float64(rows)*h+float64(rows-1)*apart)) > 1e-9 {
		t.Fatalf("the cloth is %v\n%s", c, text)
	}
	across, down := laid.Item.Cuts()
	if len(across) != columns-1 || len(down) != rows-1 {
		t.Fatalf("%d and %d cuts\n%s", len(across), len(down), text)
	}
	for i, x := range across { // halfway from the end of one to the beginning of the next
		if end := float64(i)*(w+apart) + w; math.Abs(float64(x)-(end+end+apart)/2) > 1e-9 {
			t.Fatalf("cut %d at %v, pieces end at %v and begin %v on\n%s", i, x, end, apart, text)
		}
	}
	for i, y := range down {
		if end := float64(i)*(h+apart) + h; math.Abs(float64(y)-(end+end+apart)/2) > 1e-9 {
			t.Fatalf("cut %d at %v, pieces end at %v and begin %v on\n%s", i, y, end, apart, text)
		}
	}
	numbers := map[int]bool{}
	for k, pass := range one.Passes {
		got := laid.Passes[k]
		n := len(pass.Prints)
		if len(got.Prints) != n*columns*rows || got.Last() != pass.First+n-1 {
			t.Fatalf("%d prints, and %d on one piece; the last has number %d\n%s", len(got.Prints), n, got.Last(), text)
		}
		for i, print := range got.Prints {
			piece := i / n
			row, column := piece/columns, piece%columns
			if left {
				column = columns - 1 - column
			}
			by := geometry.Pt(geometry.Length(float64(column)*(w+apart)), geometry.Length(float64(row)*(h+apart)))
			want := pass.Prints[i%n]
			if print.Origin.Distance(want.Origin.Add(by)) > 1e-9 || print.TouchDown.Distance(want.TouchDown.Add(by)) > 1e-9 || print.Turn != want.Turn ||
				print.Number != want.Number || got.NumberOf(i) != want.Number || print.Piece != piece+1 {
				t.Fatalf("print %d is number %d of piece %d at %v; alone number %d at %v, and the piece at %v\n%s",
					i, print.Number, print.Piece, print.Origin, want.Number, want.Origin, by, text)
			}
			numbers[ip.Passes[k].NumberInAll(i, ip.Item.Pieces)] = true
			x, y := float64(by.X), float64(by.Y)
			bound := orb.Ring{{x - 1e-6, y - 1e-6}, {x + w + 1e-6, y - 1e-6}, {x + w + 1e-6, y + h + 1e-6}, {x - 1e-6, y + h + 1e-6}, {x - 1e-6, y - 1e-6}}
			for _, p := range print.Outline.Rim(by) {
				if !planar.RingContains(bound, orb.Point{float64(p.X), float64(p.Y)}) {
					t.Fatalf("print %d at %v leaves its piece at %v\n%s", i, print.Origin, by, text)
				}
			}
		}
		checkTapeOnPieces(t, text, pass, got, w+apart, h+apart, columns, rows)
	}
	for i := range len(numbers) {
		if !numbers[i+1] {
			t.Fatalf("no print is number %d of %d in all\n%s", i+1, len(numbers), text)
		}
	}
	if mark := len(ip.Item.Zones) * columns * rows; len(laid.Item.Item.Zones) != mark {
		t.Fatalf("%d zones, want %d\n%s", len(laid.Item.Item.Zones), mark, text)
	}
}

// checkTapeOnPieces holds the tape lines of a whole cloth against those of one piece.
func checkTapeOnPieces(t *testing.T, text string, one *PassPlan, all FacePass, across, down float64, columns, rows int) {
	t.Helper()
	if one.Tape == nil {
		return
	}
	for row := range rows {
		y := one.Tape.Start + geometry.Length(float64(row)*down)
		if !all.Tape.StartsAt(y) || all.Tape.StartsAt(y+0.01) {
			t.Fatalf("no start tape at %v\n%s", y, text)
		}
	}
	for _, run := range []struct {
		one, all []geometry.Length
		step     float64
		n        int
	}{{one.Tape.Across, all.Tape.Across, across, columns}, {one.Tape.Down, all.Tape.Down, down, rows}} {
		var want []geometry.Length
		for i := range run.n {
			for _, l := range run.one {
				l += geometry.Length(float64(i) * run.step)
				if n := len(want); n == 0 || l-want[n-1] > 1e-6 {
					want = append(want, l)
				}
			}
		}
		if d := cmp.Diff(want, run.all, cmpopts.EquateApprox(0, 1e-9)); d != "" {
			t.Fatalf("tape lines: %s\n%s", d, text)
		}
	}
}

// TestNapkinsByHand: three times 200 mm and twice 20 are 640 mm, four times 200 and three times 20
// are 860; the first cuts are at 210 and 430 mm, as far into the 20 mm as out of them.
func TestNapkinsByHand(t *testing.T) {
	p := planOf(t, "[[block]]\nname = 'acorn'\nprint = '45 x 45 mm'\n[[item]]\nname = 'napkin'\nsize = '20 x 20 cm'\nborder = '20 mm'\n"+
		"pieces = '3 x 4'\napart = '20 mm'\nquantity = 2\n[[item.pass]]\nblock = 'acorn'\ngap = '12 mm'\n")
	ip := p.Items[0]
	if size := ip.WholeCloth().Size(); size != (geometry.Size{W: 640, H: 860}) {
		t.Errorf("the cloth is %v", size)
	}
	across, down := ip.Cuts()
	if d := cmp.Diff([][]geometry.Length{{210, 430}, {210, 430, 650}}, [][]geometry.Length{across, down}); d != "" {
		t.Error(d)
	}
	if total := NewTotals(p); total.Pieces != 24 || total.Prints != 24*9 {
		t.Errorf("%d prints on %d pieces, want 216 on 24", total.Prints, total.Pieces)
	}
}

// TestTooManyOnPieces: more prints than a job may have, on all pieces together, are refused; with a
// piece fewer they are not.
func TestTooManyOnPieces(t *testing.T) {
	text := "[[block]]\nname = 'dot'\nprint = '2 x 2 mm'\n[[item]]\nname = 'napkin'\nsize = '20 x 20 cm'\nborder = '0 mm'\npieces = '%d x 1'\n[[item.pass]]\nblock = 'dot'\ngap = '0 mm'\n"
	if _, err := tryText(fmt.Sprintf(text, 21)); err == nil || !strings.Contains(err.Error(), "21 pieces have 210,000 prints together") {
		t.Errorf("210,000 prints: %v", err)
	}
	if _, err := tryText(fmt.Sprintf(text, 20)); err != nil {
		t.Error(err)
	}
}

// TestSlantedOnPieces: the papers say that a diagonal has no ticks there.
func TestSlantedOnPieces(t *testing.T) {
	text := "[[block]]\nname = 'dot'\nprint = '20 x 20 mm'\n[[item]]\nname = 'napkin'\nsize = '20 x 20 cm'\nborder = '5 mm'\n%s[[item.pass]]\nblock = 'dot'\ngap = '2 mm'\nrepeat = 'diagonal'\n"
	for pieces, want := range map[string]bool{"": false, "pieces = '2 x 1'\n": true} {
		notes := strings.Join(planOf(t, fmt.Sprintf(text, pieces)).Items[0].Passes[0].Notes, "; ")
		if strings.Contains(notes, "its slanted rows have no ticks") != want {
			t.Errorf("%q: %q", pieces, notes)
		}
	}
}

// TestPiecesOfALeftHand: the far row first, from the far right.
func TestPiecesOfALeftHand(t *testing.T) {
	ip := &ItemPlan{Item: &job.Item{Size: geometry.Size{W: 100, H: 50}, Pieces: job.Pieces{Columns: 2, Rows: 2, Apart: 10}}, hand: job.LeftHand}
	want := []geometry.Point{{X: 110, Y: 0}, {X: 0, Y: 0}, {X: 110, Y: 60}, {X: 0, Y: 60}}
	for i, p := range ip.Pieces() {
		if p.Number != i+1 || p.Rect.Min != want[i] {
			t.Errorf("piece %d at %v, want %v", p.Number, p.Rect.Min, want[i])
		}
	}
}
