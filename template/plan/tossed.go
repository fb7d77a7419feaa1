package plan

import (
	"fmt"
	"math"
	"math/rand/v2"

	"underlay/geometry"
	"underlay/template/words"
)

// tossed strews prints over the area: places drawn at random from a seed, kept where they clear all
// others by the gap, until none can be added or there are as many as asked for. The gap is the plain
// cloth between true outlines. Prints stand upright, or are turned any way.
func tossed(surface) repeat {
	return repeat{
		ways: func(l layout) ([]way, error) {
			sites, err := l.toss()
			if err != nil {
				return nil, err
			}
			return []way{l.describeSingle(Choice{Gap: l.leastGap()}, sites)}, nil
		},
		order: byQuarter,
		notes: func(l layout, _ Choice) []string {
			return []string{fmt.Sprintf("strewn by seed %d: another seed strews them another way, the same one the same way again", l.pass.Toss.Seed)}
		},
	}
}

// mostStrewn is the most prints, times the corners of the face, that are strewn until no more find
// room; of a face that is turned any way, counted tenfold.
const mostStrewn = 20_000

const (
	// dartsAPrint are thrown for each print there may be room for, before what room is left is
	// searched place by place.
	dartsAPrint = 100
	// searchGrid is the part of the block by which that search goes on from place to place.
	searchGrid = 20
	// searchTurn is the step of the turns that are tried at each place.
	searchTurn = 15
)

// toss strews the prints of the pass. The error says that there is room for fewer than asked for, or
// for too many.
func (l layout) toss() ([]Site, error) {
	want, face := l.pass.Toss.Count, l.pass.Block.Face
	room := l.roomToToss()
	work := room
	if want > 0 {
		work = min(room, float64(want))
	}
	each := max(4, len(face.Corners()))
	if l.pass.Toss.AnyTurn {
		each *= 10
	}
	most := math.Floor(mostStrewn / float64(each))
	if work > most {
		return nil, fmt.Errorf("there is room for about %s prints, and at most %s of this block are strewn; write count = %s or less, or a larger block",
			words.PlainNumber(math.Ceil(work)), words.PlainNumber(most), words.PlainNumber(most))
	}
	t := newToss(l)
	for range int(dartsAPrint*room) + dartsAPrint {
		if t.full(want) {
			break
		}
		t.dart()
	}
	if room <= most {
		t.search(want)
	}
	if n := len(t.sites); n < want && n > 0 {
		return nil, fmt.Errorf("of %d prints %d find room, strewn by this seed; write count = %d, another seed, a smaller gap or a smaller block", want, n, n)
	}
	return t.sites, nil
}

// roomToToss estimates how many prints find room: strewn squares leave a little more than half of
// the cloth plain (the jamming limit of random sequential adsorption is 0.562 for squares and 0.547
// for discs, from memory), and the gap goes with the print.
func (l layout) roomToToss() float64 {
	size, gap := l.pass.Block.Size, l.pass.Gap.Across.Least
	each := l.pass.Block.Face.Area() + float64(gap*(size.W+size.H)+gap*gap)
	return 0.45 * float64(l.area.Rect.W()*l.area.Rect.H()) / each
}

// toss is prints being strewn. Those there are lie in square cells, so that only near ones are asked.
type toss struct {
	l       layout
	gap     geometry.Length
	inner   geometry.Length // radius about the middle of the face that lies in it; 0: none does
	outer   geometry.Length // radius about it that holds the face
	random  *rand.Rand
	turned  map[int]geometry.Outline // the face, by its turn in whole degrees
	sites   []Site
	outline []geometry.Outline // of each site
	side    geometry.Length    // of a cell: as far as prints reach to each other
	columns int
	cells   [][]int32 // row by row, with an empty one all round
	found   []int32   // what near returned last
}

func newToss(l layout) *toss {
	face := l.pass.Block.Face
	t := &toss{
		l: l, gap: l.pass.Gap.Across.Least, turned: map[int]geometry.Outline{},
		// A fixed second half: the seed alone decides.
		random: rand.New(rand.NewPCG(l.pass.Toss.Seed, 0x9e3779b97f4a7c15)),
	}
	if c, r, round := face.Round(); round {
		t.inner, t.outer = r-c.Norm(), r+c.Norm()
	}
	for _, c := range face.Corners() {
		t.outer = max(t.outer, c.Norm())
	}
	if p := face.Corners(); len(p) > 0 && p.Contains(geometry.Point{}) {
		t.inner = p.EdgeDistance(geometry.Point{})
	}
	t.side = 2*t.outer + t.gap
	size := l.area.Rect.Size()
	t.columns = int(size.W/t.side) + 3
	t.cells = make([][]int32, t.columns*(int(size.H/t.side)+3))
	return t
}

// full tells whether there are as many prints as asked for; 0: there is no end.
func (t *toss) full(want int) bool { return want > 0 && len(t.sites) >= want }

// dart tries a place at random.
func (t *toss) dart() {
	area := t.l.area.Rect
	at := geometry.Pt(area.Min.X+geometry.Length(t.random.Float64())*area.W(), area.Min.Y+geometry.Length(t.random.Float64())*area.H())
	turn := 0
	if t.l.pass.Toss.AnyTurn {
		turn = t.random.IntN(360)
	}
	near := t.near(at)
	if t.taken(at, near) == at.X && t.roomAt(at, near) && t.fits(at, turn, near) {
		t.add(at, turn)
	}
}

// search adds a print wherever there is room for one, on a fine grid from the corner of the area and
// on one from that of the item, in all turns it may have.
func (t *toss) search(want int) {
	size, area := t.l.pass.Block.Size, t.l.area.Rect
	step, last := geometry.Size{W: size.W / searchGrid, H: size.H / searchGrid}, 0
	if t.l.pass.Toss.AnyTurn {
		step, last = geometry.Size{W: 2 * step.W, H: 2 * step.H}, 360-searchTurn
	}
	for _, from := range []geometry.Point{area.Min, {}} {
		left, top := int(math.Ceil(float64((area.Min.X-from.X)/step.W))), int(math.Ceil(float64((area.Min.Y-from.Y)/step.H)))
		right, bottom := int(float64((area.Max.X-from.X)/step.W)), int(float64((area.Max.Y-from.Y)/step.H))
		for j := top; j <= bottom; j++ {
			for i := left; i <= right; i++ {
				if t.full(want) {
					return
				}
				at := from.Add(geometry.Pt(geometry.Length(i)*step.W, geometry.Length(j)*step.H))
				near := t.near(at)
				if on := t.taken(at, near); on > at.X {
					i = max(i, int(math.Ceil(float64((on-from.X)/step.W)))-1)
					continue
				}
				if !t.roomAt(at, near) {
					continue
				}
				for turn := 0; turn <= last; turn += searchTurn {
					if t.fits(at, turn, near) {
						t.add(at, turn)
						break
					}
				}
			}
		}
	}
}

// cell returns the cell of a point in the bounds of the area.
func (t *toss) cell(p geometry.Point) int {
	from := t.l.area.Rect.Min
	return (int((p.Y-from.Y)/t.side)+1)*t.columns + int((p.X-from.X)/t.side) + 1
}

// near returns the prints that may reach one at a point, those in the cells about it; good until it
// is asked again.
func (t *toss) near(p geometry.Point) []int32 {
	t.found = t.found[:0]
	cell := t.cell(p)
	for _, row := range []int{cell - t.columns, cell, cell + t.columns} {
		for _, in := range t.cells[row-1 : row+2] {
			for _, n := range in {
				if t.sites[n].Origin.Distance(p) < t.side {
					t.found = append(t.found, n)
				}
			}
		}
	}
	return t.found
}

// taken tells how far across, on from a point, no print has room in any turn, as its inner circle comes
// too near to that of another; the point itself where it does not.
func (t *toss) taken(p geometry.Point, near []int32) geometry.Length {
	reach := 2*t.inner + t.gap - geometry.Tolerance
	for _, n := range near {
		if d := p.Sub(t.sites[n].Origin); d.Norm() < reach {
			return p.X - d.X + geometry.Length(math.Sqrt(float64((reach-d.Y)*(reach+d.Y))))
		}
	}
	return p.X
}

// roomAt tells whether a print in some turn may have room at a point: its inner circle, which every
// turn covers, keeps the gap.
func (t *toss) roomAt(p geometry.Point, near []int32) bool {
	if t.inner <= 0 {
		return true
	}
	circle := geometry.CircleOutline(p, t.inner)
	for _, n := range near {
		if !circle.ClearOf(t.outline[n], t.gap) {
			return false
		}
	}
	return true
}

// fits tells whether a print lies on the area and keeps the gap from those near.
func (t *toss) fits(p geometry.Point, turn int, near []int32) bool {
	face, ok := t.turned[turn]
	if !ok {
		face = t.l.pass.Block.Face.Turn(geometry.Angle(turn))
		t.turned[turn] = face
	}
	print := face.Move(p)
	holds, known := t.l.area.holdsBox(print.Bounds())
	if known && !holds && turn == 0 && t.l.area.upright {
		return false
	}
	for _, n := range near {
		if !print.ClearOf(t.outline[n], t.gap) {
			return false
		}
	}
	return known && holds || t.l.area.surface.holds(t.l.area, print)
}

func (t *toss) add(p geometry.Point, turn int) {
	n := len(t.sites)
	s := Site{Origin: p, Turn: geometry.Angle(turn), key: geometry.Site{I: n}}
	t.sites, t.outline = append(t.sites, s), append(t.outline, t.turned[turn].Move(p))
	cell := t.cell(p)
	t.cells[cell] = append(t.cells[cell], int32(n))
}
