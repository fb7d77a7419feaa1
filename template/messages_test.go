package template

import (
	"strings"
	"testing"
	"underlay/template/internal/messages"
	"underlay/template/jobfile"
	"underlay/template/plan"
)

// hopelessJobs are jobs that can be read, and of which something cannot be worked out or drawn:
// one for each thing that can be said of them, with what it is.
func hopelessJobs() [][2]string {
	block := func(name, size string) string {
		return "[[block]]\nname = '" + name + "'\nprint = '" + size + "'\n"
	}
	item := func(size, border string) string {
		return "[[item]]\nname = 'cushion'\nsize = '" + size + "'\nborder = '" + border + "'\n"
	}
	pass := func(block, rest string) string {
		return "[[item.pass]]\nblock = '" + block + "'\n" + rest
	}
	const gap = "gap = '1 mm'\n"
	const shade = "[[item]]\nname = 'lampshade'\nshape = 'drum'\naround = '300 mm'\nheight = '180 mm'\nborder = '10 mm'\n"
	const cone = "[[item]]\nname = 'lampshade'\nshape = 'cone'\ntop = '15 cm'\nbottom = '25 cm'\nheight = '18 cm'\nborder = '10 mm'\n"
	fern, acorn, wave := block("fern", "90 x 90 mm"), block("acorn", "30 x 30 mm"), block("wave", "60 x 40 mm")
	dot := block("dot", "1 x 1 mm")
	return [][2]string{
		{"too wide and too high", fern + item("100 x 110 mm", "20 mm") + pass("fern", gap)},
		{"too wide", fern + item("100 x 500 mm", "20 mm") + pass("fern", gap)},
		{"too high", fern + item("500 x 100 mm", "20 mm") + pass("fern", gap)},
		{"in inches", "units = 'in'\n" + fern + item("4 x 30 in", "1 in") + pass("fern", gap)},
		{"in inches, rounded so that it will do", "units = 'in'\n" + fern + item("80.3 x 30.1 mm", "5 mm") + pass("fern", gap)},
		{"not with that centring", fern + item("110 x 500 mm", "5 mm") + pass("fern", gap+"centre-across = 'joint'\n")},
		{"nowhere whole", fern + "[[item]]\nname = 'stool top'\nshape = 'round'\nsize = '100 mm'\nborder = '4 mm'\n" + pass("fern", gap)},
		{"zones everywhere", fern + item("20 x 20 cm", "10 mm") + "[[item.keep-clear]]\nname = 'pocket'\nat = '90 x 0 mm'\nsize = '20 x 200 mm'\n" +
			"[[item.keep-clear]]\nname = 'patch'\nat = '0 x 90 mm'\nsize = '200 x 20 mm'\n" + pass("fern", gap)},
		{"too many", dot + item("2 x 2 m", "0 mm") + pass("dot", "gap = '0 mm'\n")},
		{"far too many", dot + item("20 x 20 m", "0 mm") + pass("dot", "gap = '0 mm'\n")},
		{"too many together", dot + item("400 x 400 mm", "0 mm") + pass("dot", "gap = '0 mm'\n") + pass("dot", "gap = '0 mm'\nname = 'again'\n")},
		{"too many on all pieces", dot + item("400 x 400 mm", "0 mm") + "pieces = '3 x 4'\n" + pass("dot", "gap = '0 mm'\n")},
		{"too wide for a piece", fern + item("100 x 500 mm", "20 mm") + "pieces = '3 x 4'\n" + pass("fern", gap)},
		{"no openings", fern + acorn + item("100 x 500 mm", "4 mm") + pass("fern", gap) + pass("acorn", "between = 'fern'\n")},
		{"no openings at the edges either", fern + acorn + item("100 x 100 mm", "4 mm") + pass("fern", gap) + pass("acorn", "between = 'fern'\nopen-edges = true\n")},
		{"beside the cloth", fern + acorn + item("20 x 20 cm", "50 mm") + pass("fern", gap) + pass("acorn", "on = 'fern'\noffset = '90 x 0 mm'\n")},
		{"no room inside the frame", fern + acorn + item("230 x 230 mm", "20 mm") + pass("fern", gap+"repeat = 'frame'\n") + pass("acorn", gap)},
		{"frame closed inside", fern + acorn + item("221 x 221 mm", "20 mm") + pass("fern", gap+"repeat = 'frame'\n") + pass("acorn", gap)},
		{"frame wider than the cloth", fern + item("110 x 500 mm", "20 mm") + pass("fern", gap+"repeat = 'frame'\n")},
		{"frame whose corner blocks are too large", fern + acorn + item("200 x 500 mm", "20 mm") + pass("acorn", gap+"repeat = 'frame'\ncorner = 'fern'\n")},
		{"frame whose corner blocks are too small", fern + acorn + item("500 x 500 mm", "20 mm") + pass("fern", gap+"repeat = 'frame'\ncorner = 'acorn'\n")},
		{"frame with one print along the top", fern + item("200 x 500 mm", "20 mm") + pass("fern", gap+"repeat = 'frame'\n")},
		{"frame on itself, down", fern + item("500 x 180 mm", "20 mm") + pass("fern", gap+"repeat = 'frame'\nsides = ['top', 'bottom']\n")},
		{"frame on itself, across", fern + item("180 x 500 mm", "20 mm") + pass("fern", gap+"repeat = 'frame'\nsides = ['left', 'right']\n")},
		{"rings too small", fern + "[[item]]\nname = 'stool top'\nshape = 'round'\nsize = '100 mm'\nborder = '20 mm'\n" + pass("fern", gap+"repeat = 'rings'\n")},
		{"one, where it has no room", fern + item("100 x 100 mm", "10 mm") + pass("fern", "repeat = 'one'\n")},
		{"one, with a zone in the middle", fern + item("50 x 50 cm", "10 mm") + "[[item.keep-clear]]\nname = 'pocket'\nat = '200 x 200 mm'\nsize = '20 x 200 mm'\n" +
			pass("fern", "repeat = 'one'\n")},
		{"corners on each other", fern + item("190 x 500 mm", "10 mm") + pass("fern", "repeat = 'corners'\n")},
		{"places in the way", fern + item("50 x 50 cm", "10 mm") + "[[item.keep-clear]]\nname = 'pocket'\nat = '200 x 200 mm'\nsize = '20 x 200 mm'\n" +
			pass("fern", "repeat = 'placed'\nat = ['100 x 100 mm', '30 x 20 mm', '200 x 200 mm', '150 x 120 mm', '0 x 600 mm', '400 x 400 mm turned 30']\n")},
		{"places in the way, in inches", "units = 'in'\n" + fern + item("50 x 50 cm", "10 mm") + pass("fern", "repeat = 'placed'\nat = ['30 x 20 mm']\n")},
		{"place off a shade", fern + cone + pass("fern", "repeat = 'placed'\nat = ['0 x 0 mm', '200 x 50 mm']\n")},
		{"too few find room, tossed", fern + item("30 x 30 cm", "10 mm") + pass("fern", gap+"repeat = 'tossed'\ncount = 9\n")},
		{"too many to toss", dot + item("2 x 2 m", "10 mm") + pass("dot", gap+"repeat = 'tossed'\n")},
		{"shade too narrow", block("wide", "400 x 40 mm") + shade + pass("wide", gap)},
		{"shade, half-drop", block("half", "160 x 40 mm") + shade + pass("half", gap+"repeat = 'half-drop'\n")},
		{"shade, turns", block("half", "160 x 160 mm") + shade + pass("half", gap+"turns = ['0 180']\n")},
		{"shade, half-drop and turns", block("third", "90 x 90 mm") + shade + pass("third", gap+"repeat = 'half-drop'\nturns = ['0 180 180 0']\n")},
		{"cone too low", block("tall", "30 x 170 mm") + cone + pass("tall", gap)},
		{"shade, third-drop", block("third", "120 x 40 mm") + shade + pass("third", gap+"repeat = 'half-drop'\nstep = '1/3'\n")},
		{"shade, third-drop and turns", block("sixth", "70 x 70 mm") + shade + pass("sixth", gap+"repeat = 'half-drop'\nstep = '1/3'\nturns = ['0 180']\n")},
		{"shade, turns between", block("fifth", "50 x 50 mm") + block("dash", "5 x 5 mm") + shade + pass("fifth", "gap = '8 mm'\n") +
			pass("dash", "between = 'fifth'\nturns = ['0 90']\n")},
		{"two at once", fern + wave + item("100 x 100 mm", "10 mm") + pass("fern", gap) +
			"[[item]]\nname = 'runner'\nsize = '50 x 900 mm'\nborder = '10 mm'\n" + pass("wave", gap)},
		{"one after the other", fern + acorn + item("100 x 100 mm", "10 mm") + pass("fern", gap) + pass("acorn", "between = 'fern'\n") +
			pass("acorn", "name = 'third'\non = 'acorn'\n")},
		{"no pass", fern + item("50 x 50 cm", "25 mm")},
		{"too many sheets", "[paper]\nsize = 'A6'\n" + fern + item("8 x 8 m", "25 mm") + pass("fern", gap)},
		{"too many sheets of edges", "[paper]\nsize = 'A6'\nextent = 'edges'\n" + fern + item("50 x 50 m", "25 mm") + pass("fern", "gap = '10 m'\n")},
		{"roll too narrow", "[paper]\nsize = 'roll 80 mm'\n" + fern + item("50 x 50 cm", "25 mm") + pass("fern", gap)},
		{"no room on the swatch", acorn + block("large", "300 x 300 mm") + item("50 x 50 cm", "25 mm") + pass("acorn", gap) + pass("large", gap)},
		{"swatch too long", "[paper]\nsize = 'one sheet'\n" + block("bough", "5.1 x 0.1 m") + item("6 x 1 m", "25 mm") + pass("bough", gap)},
		{"one sheet too long, in inches", "units = 'in'\n[paper]\nsize = 'one sheet'\n" + fern + item("50 x 1 m", "25 mm") + pass("fern", "gap = '5 m'\n")},
		{"one sheet too long", "[paper]\nsize = 'one sheet'\n" + fern + item("50 x 1 m", "25 mm") + pass("fern", "gap = '5 m'\n")},
	}
}

// TestPlanMessages compares what is said about jobs that cannot be worked out or drawn with
// testdata/bad/plan-messages.txt.
func TestPlanMessages(t *testing.T) {
	var got strings.Builder
	for _, j := range hopelessJobs() {
		name, text := j[0], j[1]
		job, err := jobfile.Read("nook.toml", []byte(text))
		if err != nil {
			t.Errorf("%s: the job cannot be read: %v", name, err)
			continue
		}
		plan, err := plan.New(job)
		if err == nil {
			_, _, err = Document(plan, Parts())
		}
		if err == nil {
			t.Errorf("%s: the job is drawn", name)
			continue
		}
		got.WriteString("# " + name + "\n" + err.Error() + "\n\n")
		messages.Check(t, "nook.toml", err)
		messages.Words(t, err.Error())
	}
	messages.Golden(t, "plan-messages.txt", got.String())
}
