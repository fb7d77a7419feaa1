package jobfile

import (
	"math"
	"strconv"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// mostPieces is the most pieces that a cloth may have.
const mostPieces = 10_000

// checkPieces reads how many of an item lie on one cloth, and how far apart; shaped tells whether
// its size is known.
func checkPieces(s section, it *job.Item, shaped bool) {
	e, apart := s.key("pieces"), s.key("apart")
	pieces, ok := e.grid(`"3 x 4"`)
	if apart.given() {
		if !s.has("pieces") {
			apart.say(`is the cloth between pieces that are cut apart, and this item is one; add pieces = "3 x 4", or leave apart out`)
			return
		}
		if pieces.Apart, ok = apart.notNegative("20 mm"); !ok {
			return
		}
	}
	if !ok || !shaped || !pieces.Several() {
		return
	}
	if s.key("move-along").given() {
		e.say("a cloth of pieces is laid on its guide whole, and move-along is for one too long for that; take move-along out, and where the cloth is longer than your table write fewer pieces and a larger quantity")
		return
	}
	cloth := pieces.Cloth(it.Size)
	if max(cloth.W, cloth.H) > longest+geometry.Tolerance {
		most := func(n int, side geometry.Length) string {
			return strconv.Itoa(min(n, max(1, int((longest+pieces.Apart)/(side+pieces.Apart)))))
		}
		e.say("they make a cloth of %s by %s, longer than 50 m; write at most %s, and a larger quantity",
			s.r.show(cloth.W), s.r.show(cloth.H), words.Quote(most(pieces.Columns, it.Size.W)+" x "+most(pieces.Rows, it.Size.H)))
		return
	}
	if it.Quantity > mostItems/pieces.Count() {
		s.key("quantity").say("%d cloths of %d pieces are more than %s pieces; write a quantity of %d or less",
			it.Quantity, pieces.Count(), words.PlainNumber(mostItems), mostItems/pieces.Count())
		return
	}
	it.Pieces = pieces
}

// grid reads how many across and how many down.
func (e entry) grid(example string) (job.Pieces, bool) {
	var text string
	switch v := e.value().(type) {
	case nil:
		return job.Pieces{}, false
	case string:
		text = v
	case int64, float64:
		e.wrong(words.Shown(e.node.Source)+" is one number", example+", so many across x so many down")
		return job.Pieces{}, false
	default:
		e.wrongKind(example)
		return job.Pieces{}, false
	}
	parts := strings.Split(strings.NewReplacer("X", "x", "×", "x", "*", "x", "by", "x").Replace(text), "x")
	if len(parts) != 2 {
		e.say("%s is not how many across x how many down; write such as %s", words.Quote(text), example)
		return job.Pieces{}, false
	}
	var n [2]int
	for i, part := range parts {
		f, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
		switch {
		case err != nil || f != math.Trunc(f) || math.Abs(f) > 1e9:
			e.say("%s is not two whole numbers; write how many across x how many down, such as %s", words.Quote(text), example)
		case f < 1:
			e.say("%s has none on one side; write two whole numbers from 1, such as %s", words.Quote(text), example)
		default:
			n[i] = int(f)
			continue
		}
		return job.Pieces{}, false
	}
	if n[0]*n[1] > mostPieces {
		e.say("%s are more than %s pieces on one cloth; write fewer, and a larger quantity", words.Quote(text), words.PlainNumber(mostPieces))
		return job.Pieces{}, false
	}
	if n == [2]int{1, 1} {
		e.say("%s is one piece, which is a cloth of its own; leave pieces out, or write such as %s", words.Quote(text), example)
		return job.Pieces{}, false
	}
	return job.Pieces{Columns: n[0], Rows: n[1]}, true
}
