package template

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/guide"
	"underlay/template/internal/messages"
	"underlay/template/internal/oracle"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
	"underlay/template/words"
)

// notATurn is what the maker wrote, in quotes, as a message repeats it: it may hold anything.
var notATurn = regexp.MustCompile(`(?m): turns: .* is not a quarter turn;`)

// FuzzTurns writes any text into the rows of turns: they are refused in plain words, or every
// print is turned as its row and column say, never mirrored, and drawn so.
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
		text := turnsJob(rows, int(choice))
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
		plan, err := plan.New(job)
		if err != nil {
			messages.Check(t, "nook.toml", err)
			return
		}
		t.Log(text)
		ip := plan.Items[0]
		oracle.CheckPlaces(t, ip.Item, ip.Passes[0].Pass, placesOf(ip.Passes[0]))
		checkTurned(t, ip, ip.Passes[0])
		checkField(t, ip.Item, ip.Passes[0])
		checkDrawnTurns(t, plan)
	})
}

// turnsJob writes a job with rows of turns; the rest of it follows from a number.
func turnsJob(rows []string, choice int) string {
	pick := func(list ...string) string {
		k := choice % len(list)
		choice /= len(list)
		return list[k]
	}
	repeat := pick("straight", "brick", "half-drop", "honeycomb", "diagonal", "straight")
	block := pick(
		"shape = 'outline'\noutline = ['0 x 0 mm', '30 x 0 mm', '30 x 30 mm', '20 x 30 mm', '0 x 8 mm']",
		"shape = 'outline'\noutline = ['0 x 0 mm', '24 x 6 mm', '20 x 36 mm', '7 x 20 mm']",
		"shape = 'hexagon'\nprint = '30 mm'", "print = '30 x 30 mm'", "print = '21 x 34 mm'", "shape = 'round'\nprint = '28 mm'",
	)
	item := pick("size = '300 x 260 mm'", "shape = 'round'\nsize = '290 mm'", "shape = 'drum'\naround = '401 mm'\nheight = '190 mm'",
		"shape = 'cone'\ntop = '130 mm'\nbottom = '240 mm'\nheight = '160 mm'",
		"shape = 'outline'\noutline = ['0 x 0 mm', '290 x 40 mm', '280 x 250 mm', '150 x 160 mm', '20 x 250 mm']")
	gap := pick("1 mm", "0 mm", "13.5 mm")
	border := pick("12 mm", "0 mm", "20.5 mm")
	list := make([]string, len(rows))
	for i, r := range rows {
		list[i] = words.TOML(r)
	}
	return fmt.Sprintf("[[block]]\nname = 'leaf'\n%s\n[[item]]\nname = 'cover'\n%s\nborder = '%s'\n"+
		"[[item.pass]]\nblock = 'leaf'\nrepeat = '%s'\ngap = '%s'\nturns = [%s]\n",
		block, item, border, repeat, gap, strings.Join(list, ", "))
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
func cellsOf(t *testing.T, ip *plan.ItemPlan, p *plan.PassPlan) []cell {
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
func cellsOnCone(ip *plan.ItemPlan, p *plan.PassPlan) []cell {
	c := p.Choice()
	radius := func(print plan.Print) float64 { return float64(print.Origin.Distance(ip.Area.Flat.Apex)) }
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
func checkTurned(t *testing.T, ip *plan.ItemPlan, p *plan.PassPlan) {
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
func sameTurned(p *plan.PassPlan) bool {
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
func checkField(t *testing.T, item *job.Item, p *plan.PassPlan) {
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

// checkDrawnTurns looks at the guide: one arrow on every print, and it points where the top of
// the block is; and a face with corners drawn as it was cut, turned and not mirrored.
func checkDrawnTurns(t *testing.T, plan *plan.Plan) {
	t.Helper()
	ip := plan.Items[0]
	drawing := guide.Draw(plan.Job, ip.Faces()[0])
	type arrow struct{ from, to geometry.Point }
	var arrows []arrow
	faces := map[[2]int][][]geometry.Point{}
	cellAt := func(p geometry.Point) [2]int {
		return [2]int{int(math.Round(float64(p.X))), int(math.Round(float64(p.Y)))}
	}
	for _, f := range drawing.Fills {
		// An arrow is a wedge of four corners: its tip, a barb, the notch between the barbs, a barb.
		if path := f.Path(); f.Role.Kind == guide.RoleArrow && len(path) == 1 && len(path[0].Steps) == 3 {
			steps := path[0].Steps
			arrows = append(arrows, arrow{steps[0].To.Add(steps[2].To).Mul(0.5), path[0].Start})
		}
	}
	for _, s := range drawing.Strokes {
		for _, piece := range s.Path() {
			if piece.Closed && len(piece.Steps) > 0 && !piece.Steps[0].Curved {
				points := []geometry.Point{piece.Start}
				for _, step := range piece.Steps {
					points = append(points, step.To)
				}
				faces[cellAt(points[0])] = append(faces[cellAt(points[0])], points)
			}
		}
	}
	for _, print := range ip.Passes[0].Prints {
		s := oracle.OutlineAt(ip.Passes[0].Pass.Block, print.Origin, print.Turn)
		low, high := s.Bounds()
		sin, cos := math.Sincos(float64(print.Turn) * math.Pi / 180)
		found := 0
		for _, a := range arrows {
			mid := a.from.Add(a.to).Mul(0.5)
			x, y := float64(mid.X), float64(mid.Y)
			if x < low[0] || x > high[0] || y < low[1] || y > high[1] || !s.Covers(x, y) {
				continue
			}
			found++
			d := a.to.Sub(a.from)
			if n := float64(d.Norm()); math.Abs(float64(d.X)/n-sin) > 1e-6 || math.Abs(float64(d.Y)/n+cos) > 1e-6 {
				t.Fatalf("print %d is turned by %v, and its arrow points %v", print.Number, print.Turn, d)
			}
		}
		if found != 1 && !print.Seam {
			t.Fatalf("print %d has %d arrows", print.Number, found)
		}
		if s.Ring == nil {
			continue
		}
		first := geometry.Pt(geometry.Length(s.Ring[0][0]), geometry.Length(s.Ring[0][1]))
		if !drawnAs(s, faces, cellAt(first)) {
			t.Fatalf("print %d is not drawn with its corners at %v", print.Number, s.Ring)
		}
	}
}

// drawnAs tells whether one of the drawn outlines has the corners of s, in their order.
func drawnAs(s oracle.Shape, faces map[[2]int][][]geometry.Point, at [2]int) bool {
	for x := at[0] - 1; x <= at[0]+1; x++ {
		for y := at[1] - 1; y <= at[1]+1; y++ {
			for _, points := range faces[[2]int{x, y}] {
				same := len(points) == len(s.Ring)-1
				for i := 0; same && i < len(points); i++ {
					same = math.Hypot(float64(points[i].X)-s.Ring[i][0], float64(points[i].Y)-s.Ring[i][1]) < 1e-4
				}
				if same {
					return true
				}
			}
		}
	}
	return false
}
