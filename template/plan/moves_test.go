package plan

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/job"
)

// TestStretchesMakeTheWholeCloth lays the stretches of random long cloths one after the other: they
// give the plan of the whole cloth, print by print, and every stretch is the same as the guide's,
// moved. The table takes so many periods and no more: e + k P + h <= T.
func TestStretchesMakeTheWholeCloth(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 7))
	seen := map[string]int{}
	for range 400 {
		repeat := []string{"straight", "brick", "half-drop", "honeycomb"}[r.IntN(4)]
		w, h := 30+r.IntN(40), 25+r.IntN(40)
		block := fmt.Sprintf("print = '%d x %d mm'", w, h)
		if repeat == "honeycomb" {
			block = fmt.Sprintf("shape = 'round'\nprint = '%d mm'", w)
		}
		long, short := 600+r.IntN(2400), 150+r.IntN(350)
		size := fmt.Sprintf("%d x %d mm", short, long)
		if r.IntN(2) == 0 {
			size = fmt.Sprintf("%d x %d mm", long, short)
		}
		extra := ""
		if repeat == "brick" || repeat == "half-drop" {
			extra = "step = '" + []string{"1/2", "1/3", "1/4"}[r.IntN(3)] + "'\n"
		}
		extra += "turns = " + []string{"['0']", "['0', '180']", "['0 180']", "['0 180', '180 0', '0 0']"}[r.IntN(4)] + "\n"
		if r.IntN(3) == 0 {
			extra += "order = 'rows'\n"
		}
		seats := ""
		if repeat == "straight" && r.IntN(2) == 0 {
			seats = "[[item.pass]]\nname = 'seeds'\nblock = 'seed'\nbetween = 'leaves'\n"
		} else if r.IntN(3) == 0 {
			seats = "[[item.pass]]\nname = 'seeds'\nblock = 'seed'\non = 'leaves'\noffset = '3 x -2 mm'\n"
		}
		if seats != "" && r.IntN(2) == 0 {
			seats += "[[item.pass]]\nname = 'dots'\nblock = 'seed'\non = 'seeds'\noffset = '1 x 1 mm'\n"
			seen["on seeds"]++
		}
		text := fmt.Sprintf("[[block]]\nname = 'leaf'\n%s\n[[block]]\nname = 'seed'\nprint = '8 x 8 mm'\n[[item]]\nname = 'curtain'\nsize = '%s'\nborder = '%d mm'\nTABLE\n"+
			"[[item.pass]]\nname = 'leaves'\nblock = 'leaf'\nrepeat = '%s'\ngap = '%d mm'\n%s%s", block, size, 5+r.IntN(20), repeat, 2+r.IntN(15), extra, seats)
		whole, err := tryText(strings.Replace(text, "TABLE", "", 1))
		if err != nil {
			continue
		}
		table := 250 + r.IntN(900)
		moved, err := tryText(strings.Replace(text, "TABLE", fmt.Sprintf("move-along = '%d mm'", table), 1))
		if err != nil {
			if !strings.Contains(err.Error(), "shorter than the plain end") {
				t.Fatalf("%v\n%s", err, text)
			}
			continue
		}
		ip := moved.Items[0]
		m := ip.Moves
		seen[repeat]++
		face := ip.Faces()[0].Laid()
		for i, p := range ip.Passes {
			checkStretches(t, text, whole.Items[0].Passes[i], p, face.Passes[i], m)
			if p.Pass.On == nil {
				continue
			}
			// It goes with the print that it is set on.
			stretches := map[geometry.Site]int{}
			for _, q := range ip.Passes[i-1].Prints {
				stretches[q.key] = q.Stretch
			}
			for _, q := range p.Prints {
				if stretches[q.key] != q.Stretch {
					t.Fatalf("print %d is in stretch %d, the one it is set on in %d\n%s", q.Number, q.Stretch, stretches[q.key], text)
				}
			}
		}
		c := ip.Passes[0].Choice()
		pass := ip.Passes[0].Pass
		border, pitch, row := c.Border.Left, c.Pitch.Across, pass.Place().W
		if m.Down {
			border, pitch, row = c.Border.Bottom, c.Pitch.Down, pass.Place().H
		}
		if length := border + m.Stretch + row; length > geometry.Length(table)+1e-6 {
			t.Fatalf("a stretch of %v, with the plain end and one more row %v, on a table of %d\n%s", m.Stretch, length, table, text)
		}
		// 12 periods hold whatever these steps and turns come to; one more row or column would not do
		// only where a period is one.
		if pass.Step == 0 && pass.Turns.Rows() == 1 && pass.Turns.Columns() == 1 && repeat == "straight" {
			if length := border + m.Stretch + pitch + row; length <= geometry.Length(table)-1e-6 {
				t.Fatalf("a stretch more, %v, goes on a table of %d\n%s", length, table, text)
			}
		}
	}
	for _, repeat := range []string{"straight", "brick", "half-drop", "honeycomb"} {
		if seen[repeat] < 20 {
			t.Errorf("%s: only %d cloths", repeat, seen[repeat])
		}
	}
}

// checkStretches holds a pass against the whole cloth's, and against the guide of one stretch.
func checkStretches(t *testing.T, text string, whole, p *PassPlan, laid FacePass, m *Moves) {
	t.Helper()
	type place struct{ x, y, turn int }
	at := func(q Print) place {
		return place{int(q.Origin.X*1000 + 0.5), int(q.Origin.Y*1000 + 0.5), int(q.Turn)}
	}
	want := map[place]bool{}
	for _, q := range whole.Prints {
		want[at(q)] = true
	}
	if len(p.Prints) != len(whole.Prints) {
		t.Fatalf("%d prints, %d on the whole cloth\n%s", len(p.Prints), len(whole.Prints), text)
	}
	byNumber := map[int]Print{}
	for i, q := range laid.Prints {
		if m.Times > 1 {
			byNumber[laid.First+i] = q
		}
	}
	last := 0
	for i, q := range p.Prints {
		if !want[at(q)] {
			t.Fatalf("print %d at %v is on no whole cloth\n%s", q.Number, q.Origin, text)
		}
		delete(want, at(q))
		if q.Number != p.First+i || q.Stretch < last || q.Stretch < 1 || q.Stretch > m.Times {
			t.Fatalf("print %d is in stretch %d after %d, of %d\n%s", q.Number, q.Stretch, last, m.Times, text)
		}
		last = q.Stretch
		if m.Times == 1 {
			continue
		}
		guide, ok := byNumber[p.NumberInStretch(q)]
		if !ok {
			t.Fatalf("print %d, %d in its stretch, is not on the guide\n%s", q.Number, p.NumberInStretch(q), text)
		}
		step := m.along(m.Stretch * geometry.Length(q.Stretch-1))
		if guide.Origin.Add(step).Distance(q.Origin) > 1e-6 || guide.Turn != q.Turn || guide.TouchDown.Add(step).Distance(q.TouchDown) > 1e-6 {
			t.Fatalf("print %d lies at %v, turned %v, corner %v; the guide's %d, moved by %v, at %v, %v, %v\n%s",
				q.Number, q.Origin, q.Turn, q.TouchDown, p.NumberInStretch(q), step, guide.Origin, guide.Turn, guide.TouchDown, text)
		}
	}
}

// TestMovedAlongByHand: a curtain of 600 x 3000 mm, fern of 90 mm, 25 mm apart: 25 rows, 75 mm plain. On
// 1200 mm go k periods of 115 mm where 75 + k 115 + 90 <= 1200: 9, which is 1035 mm. 25 rows are
// 9 + 9 + 7.
func TestMovedAlongByHand(t *testing.T) {
	p := planOf(t, "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'curtain'\nsize = '60 x 300 cm'\nborder = '40 mm'\nmove-along = '120 cm'\n[[item.pass]]\nblock = 'fern'\ngap = '25 mm'\n")
	m := p.Items[0].Moves
	if !m.Down || m.Lines != 9 || m.Times != 3 || m.Last != 7 || (m.Stretch-1035).Abs() > 1e-9 {
		t.Errorf("%+v", m)
	}
	face := p.Items[0].Faces()[0].Laid()
	if n := len(face.LaidOn()); n != 4 {
		t.Errorf("%d prints to lay the cloth on, want 4", n)
	}
	for _, o := range face.LaidOn() {
		// One pitch nearer than the first row, whose middle is 75 + 45 mm from the near edge.
		if y := o.Bounds().Centre().Y; (y - (3000 - 120 + 115)).Abs() > 1e-6 {
			t.Errorf("the row to lay on lies at %v", y)
		}
	}
	if b := face.FarEnd().Bounds(); (b.Min.Y - 2070).Abs() > 1e-6 {
		t.Errorf("the far end lies at %v in the last laying, want 2 x 1035", b.Min.Y)
	}
	if face.Passes[0].Pass.Order != job.CentreOut {
		t.Error("the order is another")
	}
}
