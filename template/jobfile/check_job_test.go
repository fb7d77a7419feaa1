package jobfile

import (
	"math"
	"os"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/internal/messages"
	"underlay/template/internal/repo"
	"underlay/template/job"
	"underlay/template/picture"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// sameJob compares jobs, but for where their parts were written: lengths within the
// tolerance of every fit.
func sameJob(a, b *job.Job) string {
	return cmp.Diff(a, b,
		cmp.AllowUnexported(geometry.Outline{}),
		cmp.Comparer(func(x, y *picture.Picture) bool { return x == y }),
		cmp.Comparer(func(x, y geometry.Length) bool { return math.Abs(float64(x-y)) <= float64(geometry.Tolerance) }),
		cmpopts.IgnoreFields(job.Job{}, "Source", "File"),
		cmpopts.IgnoreFields(job.Item{}, "Line"),
		cmpopts.IgnoreFields(job.Pass{}, "Line"),
		cmpopts.IgnoreFields(job.Paint{}, "Line"),
		cmpopts.IgnoreFields(job.Place{}, "Line"))
}

func rectangle(w, h geometry.Length) geometry.Outline {
	return geometry.RectOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: w, H: h}))
}

// TestExampleAsRead checks the larger example against what it says, by hand.
func TestExampleAsRead(t *testing.T) {
	data, err := os.ReadFile(repo.Path(t, "examples", "reading-nook.toml"))
	if err != nil {
		t.Fatal(err)
	}
	got, err := ReadWith("reading-nook.toml", data, examplePictures)
	if err != nil {
		t.Fatal(err)
	}
	shown := func(name string) *picture.Picture {
		p, err := examplePictures(name)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	fern := &job.Block{Name: "fern", Shape: "rectangle", Size: geometry.Size{W: 90, H: 90},
		Face: rectangle(90, 90), Wood: rectangle(98, 98), Picture: shown("fern.png")}
	wave := &job.Block{Name: "wave", Shape: "rectangle", Size: geometry.Size{W: 60, H: 40}, Face: rectangle(60, 40), Picture: shown("wave.png")}
	for _, b := range []*job.Block{fern, wave} {
		b.Inked = b.Picture.Mask.Share()
	}
	pass := func(name string, b *job.Block, gap geometry.Length, colour string) *job.Pass {
		return &job.Pass{Name: name, Block: b, Repeat: "straight",
			Gap:  job.Gaps{Across: job.Gap{Least: gap, Most: gap}, Down: job.Gap{Least: gap, Most: gap}},
			Step: 0.5, GridTurn: 45, CentreAcross: job.OnBest, CentreDown: job.OnBest,
			Turns: [][]int{{0}}, Colours: []string{colour}, Order: job.CentreOut, Tops: "out"}
	}
	item := func(w, h geometry.Length) geometry.Outline {
		return geometry.RectOutline(geometry.RectAt(geometry.Point{}, geometry.Size{W: w, H: h}))
	}
	want := &job.Job{
		Title: "Reading nook", Units: geometry.UnitMM,
		Paper: job.Paper{Stock: stock(t, "A4"), Margin: 7, Overlap: 12, Reach: 25, LeastReach: 25,
			Extent: job.FullExtent, Passes: job.PassesTogether, Lines: job.FineLines},
		Printing: job.Printing{Hand: job.RightHand},
		Blocks:   []*job.Block{fern, wave},
		Paints:   []job.Paint{{Name: "moss", Looks: paper.Ink{R: 0x5f, G: 0x7a, B: 0x3a}}, {Name: "pond blue", Looks: paper.Ink{R: 0x3f, G: 0x7a, B: 0x94}}},
		Items: []*job.Item{
			{Name: "floor cushion", Shape: "rectangle", Size: geometry.Size{W: 500, H: 500}, Outline: item(500, 500),
				Border: geometry.EvenEdges(25), Hem: 12, Quantity: 6, Faces: []string{"front", "back"},
				Passes: []*job.Pass{pass("fern", fern, 1, "moss")}},
			{Name: "bench runner", Shape: "rectangle", Size: geometry.Size{W: 350, H: 1200}, Outline: item(350, 1200),
				Border: geometry.EvenEdges(20), Hem: 10, Quantity: 1, Faces: []string{""},
				Passes: []*job.Pass{pass("waves", wave, -0.5, "pond blue")}},
		},
	}
	if d := sameJob(want, got); d != "" {
		t.Error(d)
	}
	at := []int{got.Items[0].Line, got.Items[0].Passes[0].Line, got.Items[1].Line, got.Items[1].Passes[0].Line}
	lines := strings.Split(string(data), "\n")
	for i, want := range []string{"[[item]]", "[[item.pass]]", "[[item]]", "[[item.pass]]"} {
		if l := strings.TrimSpace(lines[at[i]-1]); l != want {
			t.Errorf("line %d is %q, not %s", at[i], l, want)
		}
	}
	if got.File != "reading-nook.toml" {
		t.Errorf("the file is called %q", got.File)
	}
}

// everything is a job that uses every key.
const everything = `
title = "Reading nook"
units = "in"

[paper]
size = "one sheet"
margin = "0 mm"
overlap = "0 mm"
extent = "edges"
passes = "apart"
lines = "strong"
reach = "1 in"

[printer]
across = "179.2 mm"
down = "248.9 mm"

[printing]
hand = "left"
seconds-a-print = 75
seconds-a-colour = 40.5
paint-cover = "0.09 l/m²"

[[paint]]
name = "moss"
looks = "#5f7a3a"

[[block]]
name = "fern"
print = "90 x 60 mm"
wood = "98 x 70 mm"
wood-offset = "-1 x 2 mm"
inked = 0.55

[[block]]
name = "pebble"
shape = "round"
print = "60 x 60 mm"
wood = "66 mm"
inked = 1

[[block]]
name = "comb"
shape = "hexagon"
print = "60 x 69.28 mm"
wood = "70 mm"

[[block]]
name = "acorn"
shape = "outline"
outline = ["10 x 10 mm", "100 x 10 mm", "55 x 90 mm", "10 x 10 mm"]
print = "90 x 80 mm"
wood = "90 x 80 mm"

[[item]]
name = "floor cushion"
size = "50 x 60 cm"
border = ["25 mm", "20 mm", "30 mm", "20 mm"]
hem = "12 mm"
quantity = 6
faces = ["front", "back"]

  [[item.keep-clear]]
  name = "pocket"
  at = "30 x 300 mm"
  size = "120 x 140 mm"

  [[item.pass]]
  name = "ground"
  block = "fern"
  face = "front"
  gap = "0.5 mm to 3 mm"
  gap-down = "2 mm"
  centre-across = "print"
  centre-down = "joint"
  turns = ["0 180", "180 0"]
  colours = ["moss", "ochre"]
  order = "rows"

  [[item.pass]]
  name = "openings"
  block = "pebble"
  face = "front"
  between = "ground"
  open-edges = true
  turns = ["90"]

  [[item.pass]]
  name = "fill"
  block = "acorn"
  face = "front"
  on = "ground"
  offset = "1 x -1 mm"

  [[item.pass]]
  name = "bricks"
  block = "fern"
  face = "back"
  repeat = "brick"
  gap-across = "1 mm"
  gap-down = "-0.5 mm"
  step = "1/3"
  dabs = [{ colour = "ochre", middle = "3 cm" }, { colour = "teal", corners = "12 mm" }, { colour = "sand", edge = "1/4 in" }, { colour = "moss" }]

  [[item.pass]]
  name = "steep"
  block = "fern"
  repeat = "diagonal"
  lap = "0.5 mm"
  grid-turn = "30"

  [[item.pass]]
  name = "edge"
  block = "fern"
  repeat = "frame"
  gap = "1 mm"
  sides = ["bottom", "top"]
  tops = "in"

  [[item.pass]]
  block = "comb"
  repeat = "honeycomb"
  gap = "1 mm"

[[item]]
name = "stool top"
shape = "round"
size = "40 cm"
border = "25 mm"

  [[item.pass]]
  block = "fern"
  repeat = "rings"
  gap = "1 mm"
  rings = 2

[[item]]
name = "pennant"
shape = "outline"
outline = ["10 x 0 cm", "50 x 0 cm", "30 x 30 cm"]
border = "10 mm"

[[item]]
name = "lampshade"
shape = "drum"
diameter = "25 cm"
height = "20 cm"
lap = "1 cm"
border = "10 mm"

[[item]]
name = "tall shade"
shape = "drum"
around = "80 cm"
height = "30 cm"
border = ["10 mm", "0 mm", "20 mm", "0 mm"]

[[item]]
name = "sloping shade"
shape = "cone"
top = "15 cm"
bottom = "30 cm"
height = "20 cm"
border = "10 mm"

  [[item.pass]]
  block = "fern"
  repeat = "half-drop"
  gap = "1 mm to 8 mm"
  step = 0.25
`

func TestEverything(t *testing.T) {
	j := readJob(t, everything)
	high := geometry.Length(60 * 2 / math.Sqrt(3))
	size := func(w, h geometry.Length) geometry.Size { return geometry.Size{W: w, H: h} }
	at := func(r geometry.Rect, p geometry.Point) geometry.Rect { return r.Move(p) }
	around := func(w, h geometry.Length) geometry.Rect { return geometry.RectAround(geometry.Point{}, size(w, h)) }
	fern := &job.Block{Name: "fern", Shape: "rectangle", Size: size(90, 60), Face: rectangle(90, 60),
		Wood: geometry.RectOutline(at(around(98, 70), geometry.Pt(-1, 2))), WoodOffset: geometry.Pt(-1, 2), Inked: 0.55}
	pebble := &job.Block{Name: "pebble", Shape: "round", Size: size(60, 60),
		Face: geometry.CircleOutline(geometry.Point{}, 30), Wood: geometry.CircleOutline(geometry.Point{}, 33), Inked: 1}
	comb := &job.Block{Name: "comb", Shape: "hexagon", Size: size(60, high), Face: geometry.HexagonOutline(around(60, high)),
		Wood: geometry.HexagonOutline(around(70, high*70/60))}
	acorn := &job.Block{Name: "acorn", Shape: "outline", Size: size(90, 80),
		Face: geometry.PolygonOutline(geometry.Polygon{{X: -45, Y: -40}, {X: 45, Y: -40}, {X: 0, Y: 40}}),
		Wood: rectangle(90, 80)}
	even := func(least, most geometry.Length) job.Gaps {
		return job.Gaps{Across: job.Gap{Least: least, Most: most}, Down: job.Gap{Least: least, Most: most}}
	}
	pass := func(name string, b *job.Block, repeat job.Repeat, change func(*job.Pass)) *job.Pass {
		p := &job.Pass{Name: name, Block: b, Repeat: repeat, Gap: even(1, 1), Step: 0.5, GridTurn: 45,
			CentreAcross: job.OnBest, CentreDown: job.OnBest, Turns: [][]int{{0}}, Order: job.CentreOut, Tops: "out"}
		change(p)
		return p
	}
	plain := func(*job.Pass) {}
	ground := pass("ground", fern, "straight", func(p *job.Pass) {
		p.Face, p.Gap = "front", job.Gaps{Across: job.Gap{Least: 0.5, Most: 3}, Down: job.Gap{Least: 2, Most: 2}}
		p.CentreAcross, p.CentreDown = job.OnPrint, job.OnJoint
		p.Turns, p.Order, p.Colours = [][]int{{0, 180}, {180, 0}}, job.RowByRow, []string{"moss", "ochre"}
	})
	round := math.Pi * 250
	item := func(o geometry.Outline, border geometry.Edges, it job.Item) *job.Item {
		it.Outline, it.Border, it.Size = o, border, o.Bounds().Size()
		if it.Quantity == 0 {
			it.Quantity = 1
		}
		if it.Faces == nil {
			it.Faces = []string{""}
		}
		return &it
	}
	upright := func(w, h geometry.Length) geometry.Outline {
		return geometry.RectOutline(geometry.RectAt(geometry.Point{}, size(w, h)))
	}
	want := &job.Job{
		Title: "Reading nook", Units: geometry.UnitInch,
		Paper:    job.Paper{Stock: stock(t, "one sheet"), Reach: 25.4, LeastReach: 25.4, Extent: job.EdgesExtent, Passes: job.PassesApart, Lines: job.StrongLines},
		Printer:  job.Printer{Across: 179.2, Down: 248.9},
		Printing: job.Printing{Hand: job.LeftHand, SecondsAPrint: 75, SecondsAColour: 40.5, PaintCover: 90, HasSecondsPrint: true, HasSecondsColour: true, HasPaintCover: true},
		Paints:   []job.Paint{{Name: "moss", Looks: paper.Ink{R: 0x5f, G: 0x7a, B: 0x3a}}},
		Blocks:   []*job.Block{fern, pebble, comb, acorn},
		Items: []*job.Item{
			item(upright(500, 600), geometry.Edges{Top: 25, Right: 20, Bottom: 30, Left: 20}, job.Item{
				Name: "floor cushion", Shape: "rectangle", Hem: 12, Quantity: 6, Faces: []string{"front", "back"},
				Zones: []job.Zone{{Name: "pocket", Rect: geometry.RectAt(geometry.Pt(30, 300), size(120, 140))}},
				Passes: []*job.Pass{
					ground,
					pass("openings", pebble, "straight", func(p *job.Pass) {
						p.Face, p.Gap, p.Between, p.OpenEdges, p.Turns = "front", job.Gaps{}, ground, true, [][]int{{90}}
					}),
					pass("fill", acorn, "straight", func(p *job.Pass) {
						p.Face, p.Gap, p.On, p.Offset = "front", job.Gaps{}, ground, geometry.Pt(1, -1)
					}),
					pass("bricks", fern, "brick", func(p *job.Pass) {
						p.Face, p.Gap, p.Step = "back", job.Gaps{Across: job.Gap{Least: 1, Most: 1}, Down: job.Gap{Least: -0.5, Most: -0.5}}, 1.0/3
						p.Colours = []string{"ochre", "teal", "sand", "moss"}
						p.Dabs = []job.Dab{{Colour: "ochre", Part: job.TheMiddle, Size: 30}, {Colour: "teal", Part: job.TheCorners, Size: 12}, {Colour: "sand", Part: job.TheEdge, Size: 6.35}, {Colour: "moss", Part: job.TheRest}}
					}),
					pass("steep", fern, "diagonal", func(p *job.Pass) { p.Gap, p.GridTurn = even(-0.5, -0.5), 30 }),
					pass("edge", fern, "frame", func(p *job.Pass) { p.Sides, p.Tops = job.Sides{job.BottomSide, job.TopSide}, job.TopsIn }),
					pass("comb", comb, "honeycomb", plain),
				}}),
			item(geometry.CircleOutline(geometry.Pt(200, 200), 200), geometry.EvenEdges(25), job.Item{
				Name: "stool top", Shape: "round",
				Passes: []*job.Pass{pass("fern", fern, "rings", func(p *job.Pass) { p.Rings = 2 })}}),
			item(geometry.PolygonOutline(geometry.Polygon{{X: 0, Y: 0}, {X: 400, Y: 0}, {X: 200, Y: 300}}), geometry.EvenEdges(10),
				job.Item{Name: "pennant", Shape: "outline"}),
			item(upright(geometry.Length(round), 200), geometry.Edges{Top: 10, Bottom: 10},
				job.Item{Name: "lampshade", Shape: "drum", Shade: job.Shade{Top: 250, Bottom: 250, Height: 200, Lap: 10}}),
			item(upright(800, 300), geometry.Edges{Top: 10, Bottom: 20},
				job.Item{Name: "tall shade", Shape: "drum", Shade: job.Shade{Top: 800 / math.Pi, Bottom: 800 / math.Pi, Height: 300, Lap: 0}}),
			item(geometry.Outline{}, geometry.Edges{Top: 10, Bottom: 10},
				job.Item{Name: "sloping shade", Shape: "cone", Shade: job.Shade{Top: 150, Bottom: 300, Height: 200, Lap: 0},
					Passes: []*job.Pass{pass("fern", fern, "half-drop", func(p *job.Pass) { p.Gap, p.Step = even(1, 8), 0.25 })}}),
		},
	}
	if d := sameJob(want, j); d != "" {
		t.Error(d)
	}
	if j.Items[0].Passes[1].Between != j.Items[0].Passes[0] || j.Items[0].Passes[0].Block != j.Blocks[0] {
		t.Error("names do not lead to the things themselves")
	}
}

// TestEveryKeyIsRead leaves a word no key knows in every key of the job above: each must be
// noticed.
func TestEveryKeyIsRead(t *testing.T) {
	lines := strings.Split(everything, "\n")
	for i, line := range lines {
		key, _, ok := strings.Cut(line, " = ")
		if !ok {
			continue
		}
		changed := append([]string(nil), lines...)
		changed[i] = key + ` = { wrong = "kind" }`
		_, err := Read("nook.toml", []byte(strings.Join(changed, "\n")))
		if err == nil {
			t.Errorf("%s is not read", line)
			continue
		}
		messages.Check(t, line, err)
		p := err.(job.Problems)
		if p[0].Line != i+1 && !strings.Contains(line, "name") {
			t.Errorf("%q: the first problem is in line %d, not %d: %v", line, p[0].Line, i+1, err)
		}
		if len(p) > 1 && !strings.Contains(line, "name") && !strings.Contains(line, "faces") {
			t.Errorf("%q: more is said than one thing:\n%v", line, err)
		}
	}
}
