package plan

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/job"
)

// soMany is a job of one pass, to ask for numbers of prints in.
type soMany struct {
	shape  string // of the item, with its sizes
	print  geometry.Size
	face   string // shape of the block
	gap    string // lines of the pass
	repeat string
	more   string // lines of the pass
}

func (j soMany) text(more string) string {
	return fmt.Sprintf("[[block]]\nname = 'fern'\nshape = '%s'\nprint = '%v x %v mm'\n[[item]]\nname = 'cushion'\nborder = '20 mm'\n%s\n[[item.pass]]\nblock = 'fern'\nrepeat = '%s'\n%s\n%s\n%s\n",
		j.face, float64(j.print.W), float64(j.print.H), j.shape, j.repeat, j.gap, j.more, more)
}

func (j soMany) choice(t *testing.T, more string) Choice {
	t.Helper()
	p, err := tryText(j.text(more))
	if err != nil {
		return Choice{}
	}
	return p.Items[0].Passes[0].Choice()
}

// randomSoMany makes jobs of every lattice on flat cloth and round a drum.
func randomSoMany(rng *rand.Rand) soMany {
	j := soMany{print: geometry.Size{W: geometry.Length(30 + rng.IntN(60)), H: geometry.Length(30 + rng.IntN(60))}, face: "rectangle"}
	j.repeat = []string{"straight", "straight", "brick", "half-drop", "honeycomb"}[rng.IntN(5)]
	j.gap = fmt.Sprintf("gap = '%v mm'", rng.IntN(4))
	if j.repeat == "honeycomb" {
		j.face, j.print.H = "round", j.print.W
	}
	j.shape = fmt.Sprintf("size = '%d x %d mm'", 300+rng.IntN(300), 300+rng.IntN(300))
	switch rng.IntN(4) {
	case 0:
		j.shape = fmt.Sprintf("shape = 'drum'\naround = '%d mm'\nheight = '%d mm'", 500+rng.IntN(400), 250+rng.IntN(200))
	case 1:
		if j.repeat == "straight" || j.repeat == "brick" {
			j.more = "turns = ['0 90']"
		}
	}
	return j
}

// TestExactly asks for every number of prints up to those that fit: there are just as many, in the
// middle, with the gap as it is and the rest plain; with a range the gap opens as far as it may.
func TestExactly(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 40 {
		j := randomSoMany(rng)
		drum := strings.Contains(j.shape, "drum")
		most := j.choice(t, "").counts()
		for n := 1; n <= most.Across; n++ {
			m := 1 + rng.IntN(max(1, most.Down))
			more := fmt.Sprintf("across = %d\ndown = %d", n, m)
			p, err := tryText(j.text(more))
			if err != nil {
				// A matrix of turns two wide, or columns moved by halves, take an even number round.
				if drum && n%2 == 1 {
					continue
				}
				// One alone has no place in what is moved; one gap that grows round a drum grows down it too.
				if strings.Contains(err.Error(), "= 2 or more") || drum && j.repeat == "honeycomb" {
					continue
				}
				t.Errorf("%s: %v", j.text(more), err)
				continue
			}
			pass := p.Items[0].Passes[0]
			c := pass.Choice()
			if got := c.counts(); got != (job.Counts{Across: n, Down: m}) {
				t.Errorf("%d across and %d down for %s", got.Across, got.Down, j.text(more))
			}
			if !drum && (c.Gap.Across != pass.Pass.Gap.Across.Least || c.Gap.Down != pass.Pass.Gap.Down.Least) {
				t.Errorf("the gap is %v: %s", c.Gap, j.text(more))
			}
			if b := c.Border; j.more == "" && j.repeat == "straight" && !near(b.Top, b.Bottom) {
				t.Errorf("borders %v: %s", b, j.text(more))
			}
		}
	}
}

// TestExactlyByHand opens a gap by hand: 450 printable, 3 of 90 leave 180 for two gaps, 4 leave 90
// for three; a range to 40 takes 40 and 30, gap-even the less of the two.
func TestExactlyByHand(t *testing.T) {
	j := soMany{shape: "size = '50 x 50 cm'", print: geometry.Size{W: 90, H: 90}, face: "rectangle", repeat: "straight"}
	for _, c := range []struct {
		more         string
		across, down geometry.Length
		left, top    geometry.Length
	}{
		{"gap = '1 mm'\nacross = 3\ndown = 4", 1, 1, 114, 68.5},
		{"gap = '1 mm to 40 mm'\nacross = 3\ndown = 4", 40, 100.0 / 3, 75, 20},
		{"gap = '1 mm to 40 mm'\nacross = 3\ndown = 4\ngap-even = true", 100.0 / 3, 100.0 / 3, (500 - 270 - 200.0/3) / 2, 20},
		{"gap = '1 mm to 40 mm'\nacross = 1\ndown = 4\ngap-even = true", 100.0 / 3, 100.0 / 3, 205, 20},
		{"gap = '1 mm to 40 mm'\nacross = 1\ndown = 1\ngap-even = true", 1, 1, 205, 205},
	} {
		got := j.choice(t, c.more)
		if !near(got.Gap.Across, c.across) || !near(got.Gap.Down, c.down) || !near(got.Border.Left, c.left) || !near(got.Border.Top, c.top) {
			t.Errorf("%s: gap %v, border %v", c.more, got.Gap, got.Border)
		}
	}
}

// TestNotSoMany asks for more than fit. Each thing that is said to do is put into the job, and does.
func TestNotSoMany(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 4))
	item := regexp.MustCompile(`make the item ([0-9.]+)(?: mm)? (×|round and) ([0-9.]+) mm`)
	gap := regexp.MustCompile(`the gap at most ([0-9.]+) mm( across| down)?`)
	block := regexp.MustCompile(`the block at most ([0-9.]+)(?: × ([0-9.]+))? mm`)
	tried := map[string]int{}
	for range 60 {
		j := randomSoMany(rng)
		if strings.Contains(j.gap, "'0 mm'") {
			j.gap = "gap = '9 mm'"
		}
		drum := strings.Contains(j.shape, "drum")
		most := j.choice(t, "").counts()
		if most.Across == 0 {
			continue
		}
		asked := fmt.Sprintf("across = %d", most.Across+1+rng.IntN(2))
		if drum {
			asked = fmt.Sprintf("across = %d", 2*(most.Across/2+1))
		}
		if rng.IntN(2) == 0 {
			asked = fmt.Sprintf("down = %d", most.Down+1)
		}
		_, err := tryText(j.text(asked))
		if err == nil {
			continue // another way of centring, with fewer prints, has them
		}
		var problems job.Problems
		if !errors.As(err, &problems) || !strings.Contains(problems[0].Text, "cannot be had") {
			t.Errorf("%s is taken, or refused so: %v", j.text(asked), err)
			continue
		}
		text := problems[0].Text
		try := func(what string, k soMany) {
			t.Helper()
			tried[what]++
			if _, err := tryText(k.text(asked)); err != nil {
				t.Errorf("%s\n%s\nand with %s so:\n%s\n%v", j.text(asked), text, what, k.text(asked), err)
			}
		}
		if m := item.FindStringSubmatch(text); m != nil {
			k := j
			k.shape = fmt.Sprintf("size = '%s x %s mm'", m[1], m[3])
			if drum {
				k.shape = fmt.Sprintf("shape = 'drum'\naround = '%s mm'\nheight = '%s mm'", m[1], m[3])
			}
			try("cloth", k)
		} else {
			t.Errorf("no cloth is named for %s: %s", j.text(asked), text)
		}
		if m := gap.FindStringSubmatch(text); m != nil {
			k := j
			k.gap = fmt.Sprintf("gap = '%s mm'", m[1])
			if m[2] != "" {
				k.gap = fmt.Sprintf("%s\ngap-%s = '%s mm'", j.gap, strings.TrimSpace(m[2]), m[1])
			}
			try("gap", k)
		}
		if m := block.FindStringSubmatch(text); m != nil {
			k := j
			fmt.Sscan(m[1], &k.print.W)
			if m[2] == "" {
				m[2] = m[1]
			}
			fmt.Sscan(m[2], &k.print.H)
			try("block", k)
		}
	}
	if len(tried) < 3 || tried["gap"] < 5 || tried["block"] < 30 {
		t.Errorf("too few were tried: %v", tried)
	}
}

// TestWanted puts what so many prints would take into the job: then there are just as many; and with
// a hair less cloth, more block or more gap fewer.
func TestWanted(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 5))
	found := map[string]int{}
	for range 60 {
		j := randomSoMany(rng)
		drum := strings.Contains(j.shape, "drum")
		p, err := tryText(j.text(""))
		if err != nil {
			continue
		}
		most := p.Items[0].Passes[0].Choice().counts()
		n := job.Counts{Across: max(1, most.Across-1+rng.IntN(3)), Down: max(1, most.Down-1+rng.IntN(3))}
		if drum {
			n.Across = 2 * (n.Across/2 + 1)
		}
		w, _ := p.Items[0].Passes[0].Wanted(n)
		check := func(what string, k soMany, want job.Counts) {
			t.Helper()
			found[what]++
			if got := k.choice(t, "").counts(); !got.Meet(want) {
				t.Errorf("%v wanted, %s in\n%s\ngive %v in all\n%s", want, what, j.text(""), got, k.text(""))
			}
		}
		fewer := func(what string, k soMany, across bool) {
			t.Helper()
			got := k.choice(t, "").counts()
			if across && got.Across >= n.Across || !across && got.Down >= n.Down {
				t.Errorf("%v wanted, a hair beyond the %s in\n%s\ngives %v still\n%s", n, what, j.text(""), got, k.text(""))
			}
		}
		const hair = 0.01
		if w.Cloth == nil {
			// Of a face turned both ways one more may fit as soon as so many do.
			if j.more == "" {
				t.Errorf("no cloth for %v: %s", n, j.text(""))
			}
		} else {
			cloth := func(lessW, lessH geometry.Length) soMany {
				k := j
				k.shape = fmt.Sprintf("size = '%.6f x %.6f mm'", float64(w.Cloth.W-lessW), float64(w.Cloth.H-lessH))
				if drum {
					k.shape = fmt.Sprintf("shape = 'drum'\naround = '%.6f mm'\nheight = '%.6f mm'", float64(w.Cloth.W-lessW), float64(w.Cloth.H-lessH))
				}
				return k
			}
			check("cloth", cloth(0, 0), n)
			fewer("cloth", cloth(hair, 0), true)
			fewer("cloth", cloth(0, hair), false)
		}
		if a, d := w.GapAcross, w.GapDown; a != nil && d != nil {
			gap := func(across, down geometry.Length) soMany {
				k := j
				k.gap = fmt.Sprintf("gap-across = '%.6f mm'\ngap-down = '%.6f mm'", float64(across), float64(down))
				if j.repeat == "honeycomb" {
					k.gap = fmt.Sprintf("gap = '%.6f mm'", float64(across))
				}
				return k
			}
			most := func(g *GapSpan) geometry.Length {
				if g.Endless() {
					return g.Least + 7
				}
				return g.Most
			}
			check("least gap", gap(a.Least, d.Least), n)
			check("most gap", gap(most(a), most(d)), n)
			check("gap between", gap((a.Least+most(a))/2, (d.Least+most(d))/2), n)
			beyond := gap(most(a)+hair, most(d)+hair).choice(t, "").counts()
			if !a.Endless() && !d.Endless() && beyond.Across >= n.Across && beyond.Down >= n.Down {
				t.Errorf("%v wanted, a hair more gap gives %v still: %s", n, beyond, j.text(""))
			}
		}
		if w.Block != nil {
			block := func(more geometry.Length) soMany {
				k := j
				k.print = geometry.Size{W: w.Block.W + more, H: w.Block.H + more}
				return k
			}
			check("block", block(0), n)
			if got := block(hair).choice(t, "").counts(); got.Across >= n.Across && got.Down >= n.Down {
				t.Errorf("%v wanted, a hair more block gives %v still: %s", n, got, j.text(""))
			}
		}
	}
	for _, what := range []string{"cloth", "least gap", "block"} {
		if found[what] < 20 {
			t.Errorf("%s found %d times only", what, found[what])
		}
	}
}
