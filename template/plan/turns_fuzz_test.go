package plan

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
	"underlay/geometry"
	"underlay/template/internal/messages"
	"underlay/template/internal/oracle"
	"underlay/template/internal/sample"
	"underlay/template/job"
	"underlay/template/jobfile"
)

// notATurn is what the maker wrote, in quotes, as a message repeats it: it may hold anything.
var notATurn = regexp.MustCompile(`(?m): turns: .* is not a quarter turn;`)

// FuzzTurns writes any text into the rows of turns: they are refused in plain words, or every
// print is turned as its row and column say, never mirrored.
func FuzzTurns(f *testing.F) {
	f.Add("0", uint16(0))
	f.Add("0 90\n270 180", uint16(1))
	f.Add("0 180\n180 0", uint16(7))
	f.Add("90 270 90°\n0\t180 0", uint16(38))
	f.Add("90", uint16(200))
	f.Add("0 90 180", uint16(1234))
	f.Add("45", uint16(3))
	f.Add("0 90\n0", uint16(4))
	f.Add("", uint16(5))
	f.Add("-90 360 1e2 ９０", uint16(6))
	f.Fuzz(func(t *testing.T, turns string, choice uint16) {
		if len(turns) > 600 {
			return
		}
		rows := strings.Split(strings.ToValidUTF8(turns, "?"), "\n")
		text := sample.Turned(rows, int(choice))
		job, err := jobfile.Read("nook.toml", []byte(text))
		want, good := quarterTurns(rows)
		if err != nil {
			messages.Check(t, "nook.toml", err)
			messages.Words(t, notATurn.ReplaceAllString(err.Error(), ""))
			if good && !mayRefuse(text, want) {
				t.Fatalf("good turns are refused: %v\n%s", err, text)
			}
			return
		}
		pass := job.Items[0].Passes[0]
		if !good || !slices.EqualFunc(pass.Turns, want, slices.Equal) {
			t.Fatalf("turns %q are read as %v, want %v, %v", rows, pass.Turns, want, good)
		}
		p, err := New(job)
		if err != nil {
			messages.Check(t, "nook.toml", err)
			return
		}
		t.Log(text)
		ip := p.Items[0]
		oracle.CheckPlaces(t, ip.Item, ip.Passes[0].Pass, placesOf(ip.Passes[0]))
		checkTurned(t, ip, ip.Passes[0])
		checkField(t, ip.Item, ip.Passes[0])
	})
}

// quarterTurns reads rows of turns as a job file has them: as many in every row, 50 at the
// most each way.
func quarterTurns(rows []string) (job.Turns, bool) {
	one := regexp.MustCompile(`^(0|90|180|270)°?$`)
	var turns job.Turns
	for _, r := range rows {
		var row []int
		for _, word := range strings.Fields(r) {
			var turn int
			if !one.MatchString(word) {
				return nil, false
			}
			fmt.Sscan(strings.TrimSuffix(word, "°"), &turn)
			row = append(row, turn)
		}
		if len(row) == 0 || len(row) > 50 || len(turns) > 0 && len(row) != len(turns[0]) {
			return nil, false
		}
		turns = append(turns, row)
	}
	return turns, len(turns) <= 50
}

// mayRefuse tells whether a job with good turns can be refused: another key of it does not go
// with its repeat or item, or hexagons on their side would not close up.
func mayRefuse(text string, turns job.Turns) bool {
	plain := text[:strings.Index(text, "turns = ")]
	j, err := jobfile.Read("nook.toml", []byte(plain))
	if err != nil {
		return true
	}
	pass := *j.Items[0].Passes[0]
	pass.Turns = turns
	if pass.Repeat == "honeycomb" {
		return pass.Block.Shape == "hexagon" && turns.AnyAside()
	}
	return false
}

// share is how far the k-th row, or column, of a repeat is moved along, as a part of the pitch.
func movedBy(p *job.Pass, k float64) float64 {
	step := p.Step
	if p.Repeat == "honeycomb" {
		step = 0.5
	}
	return k*step - math.Floor(k*step+1e-9)
}

// cell is the place of a print in its repeat, read off from where it lies, and the turn that
// comes on top of the job's.
type cell struct {
	column, row int
	extra       float64
}

// cellsOf reads off in which column and row of its lattice each print lies, counted from the
// first that have prints; round a drum columns count from the seam.
func cellsOf(t *testing.T, ip *ItemPlan, p *PassPlan) []cell {
	t.Helper()
	if ip.Area.Flat != nil {
		return cellsOnCone(ip, p)
	}
	c, pass, centre := p.Choice(), p.Pass, ip.Area.Centre()
	half := map[job.Centring]float64{job.OnJoint: 0.5}
	turn := 0.0
	if pass.Repeat == "diagonal" {
		turn = float64(pass.GridTurn)
	}
	sin, cos := math.Sincos(-turn * math.Pi / 180)
	cells := make([]cell, len(p.Prints))
	low := cell{column: math.MaxInt, row: math.MaxInt}
	for i, print := range p.Prints {
		x, y := float64(print.Origin.X-centre.X), float64(print.Origin.Y-centre.Y)
		u := (x*cos-y*sin)/float64(c.Pitch.Across) - half[c.Across]
		v := (x*sin+y*cos)/float64(c.Pitch.Down) - half[c.Down]
		column, row := math.Round(u), math.Round(v)
		switch pass.Repeat {
		case "brick", "honeycomb":
			column = math.Round(u - movedBy(pass, row))
			u -= movedBy(pass, row)
		case "half-drop":
			row = math.Round(v - movedBy(pass, column))
			v -= movedBy(pass, column)
		}
		if math.Abs(u-column) > 1e-5 || math.Abs(v-row) > 1e-5 {
			t.Fatalf("print %d at %v is off its lattice", print.Number, print.Origin)
		}
		if ip.Item.Shape == "drum" {
			column = math.Floor(float64(print.Origin.X/c.Pitch.Across) + 1e-6)
			low.column = 0
		}
		cells[i] = cell{int(column), int(row), turn}
		low.column, low.row = min(low.column, int(column)), min(low.row, int(row))
	}
	for i := range cells {
		cells[i].column, cells[i].row = cells[i].column-low.column+1, cells[i].row-low.row+1
	}
	return cells
}

// cellsOnCone reads off the rows of a cone laid flat by how far prints are from its centre, and
// the columns by the angle from its left edge, at which the first begins. The tops of all
// point to the centre.
func cellsOnCone(ip *ItemPlan, p *PassPlan) []cell {
	c := p.Choice()
	radius := func(print Print) float64 { return float64(print.Origin.Distance(ip.Area.Flat.Apex)) }
	first := math.Inf(1)
	for _, print := range p.Prints {
		first = math.Min(first, radius(print))
	}
	cells := make([]cell, len(p.Prints))
	whole := float64(ip.Area.Flat.Angle)
	for i, print := range p.Prints {
		d := print.Origin.Sub(ip.Area.Flat.Apex)
		a := math.Atan2(float64(d.X), float64(d.Y)) * 180 / math.Pi
		cells[i] = cell{
			column: int(math.Floor((a+whole/2)/whole*float64(c.Columns)+1e-6)) + 1,
			row:    int(math.Round((radius(print)-first)/float64(c.Pitch.Down))) + 1,
			extra:  -a,
		}
	}
	return cells
}

// checkTurned holds every print of a lattice to the turn that the job has for its column and
// row.
func checkTurned(t *testing.T, ip *ItemPlan, p *PassPlan) {
	t.Helper()
	turns := p.Pass.Turns
	if p.Pass.Seated() || !p.Pass.Repeat.Lattice() || ip.Area.Flat != nil && p.Pass.Repeat == "half-drop" || len(p.Prints) > 1000 {
		return
	}
	cells := cellsOf(t, ip, p)
	// Where what fits depends on the turns there may be no first column, or row, that would be
	// the first with its turn as well; then they are counted from a later one.
	later := cell{column: p.Prints[0].Column - cells[0].column, row: p.Prints[0].Row - cells[0].row}
	if later.column < 0 || later.row < 0 || later.column >= len(turns[0]) || later.row >= len(turns) || later != (cell{}) && sameTurned(p) {
		t.Fatalf("print %d is in column %d, row %d, and named %d, %d", p.Prints[0].Number, cells[0].column, cells[0].row, p.Prints[0].Column, p.Prints[0].Row)
	}
	for i, c := range cells {
		column, row := c.column+later.column, c.row+later.row
		line := turns[(row-1)%len(turns)]
		want := float64(line[(column-1)%len(line)]) + c.extra
		print := p.Prints[i]
		if print.Column != column || print.Row != row {
			t.Fatalf("print %d is in column %d, row %d, and named %d, %d", print.Number, column, row, print.Column, print.Row)
		}
		if d := math.Remainder(float64(print.Turn)-want, 360); math.Abs(d) > 1e-6 {
			t.Fatalf("print %d in column %d, row %d is turned by %v, want %v", print.Number, column, row, print.Turn, want)
		}
	}
}

// sameTurned tells whether the block covers the same cloth in all turns of its pass.
func sameTurned(p *PassPlan) bool {
	b, turns := p.Pass.Block, p.Pass.Turns
	switch b.Shape {
	case "round":
		return true
	case "rectangle":
		return b.Size.W == b.Size.H || turns.AllAside() || !turns.AnyAside()
	case "hexagon":
		return turns.AllAside() || !turns.AnyAside()
	}
	for _, row := range turns {
		for _, turn := range row {
			if turn != turns[0][0] {
				return false
			}
		}
	}
	return true
}

// checkField works out how many prints a straight repeat of blocks of one size holds on a
// rectangle, and the border they leave: n = floor((A + g) / p), (A - n p + g) / 2.
func checkField(t *testing.T, item *job.Item, p *PassPlan) {
	t.Helper()
	pass := p.Pass
	size := pass.Block.Size
	mixed := pass.Turns.AnyAside() && !pass.Turns.AllAside()
	if item.Shape != "rectangle" || len(item.Zones) > 0 || pass.Repeat != "straight" || mixed && size.W != size.H {
		return
	}
	if pass.Turns.AllAside() {
		size.W, size.H = size.H, size.W
	}
	along := func(room, face, gap, border geometry.Length) (int, geometry.Length) {
		n := math.Floor(float64((room + gap + 1e-6) / (face + gap)))
		return int(n), border + (room-geometry.Length(n)*(face+gap)+gap)/2
	}
	b := item.Border
	columns, left := along(item.Size.W-b.Left-b.Right, size.W, pass.Gap.Across.Least, b.Left)
	rows, top := along(item.Size.H-b.Top-b.Bottom, size.H, pass.Gap.Down.Least, b.Top)
	c := p.Choice()
	if c.Columns != columns || c.Rows != rows || len(p.Prints) != columns*rows {
		t.Fatalf("%d columns, %d rows and %d prints, want %d and %d", c.Columns, c.Rows, len(p.Prints), columns, rows)
	}
	if math.Abs(float64(c.Border.Left-left)) > oracle.Slack || math.Abs(float64(c.Border.Top-top)) > oracle.Slack {
		t.Fatalf("border %v, want %v left and %v above", c.Border, left, top)
	}
}
