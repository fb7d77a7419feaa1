package say

import (
	"strings"
	"testing"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile"
	"underlay/template/plan"
)

// TestIdlePaints: paints that nothing is printed in are told once there are passes.
func TestIdlePaints(t *testing.T) {
	const paints = "[[paint]]\nname = 'lake'\nlooks = 'navy'\n[[paint]]\nname = 'moss'\nlooks = '#5f7a3a'\n"
	const block = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[item]]\nname = 'floor cushion'\nsize = '50 x 50 cm'\nborder = '25 mm'\n"
	const pass = "[[item.pass]]\nblock = 'fern'\ngap = '1 mm'\n"
	for text, want := range map[string]string{
		paints + block + pass + "colours = ['moss']\n": "\n\n\"lake\": a paint that no pass or colourway here names.\n",
		paints + block + pass:                          "\n\n\"lake\" and \"moss\": paints that no pass or colourway here names.\n",
		paints + block:                                 "",
		block + pass:                                   "",
	} {
		j, err := jobfile.Read("nook.toml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		p, err := plan.New(j)
		if err != nil {
			t.Fatal(err)
		}
		if got := Fit(p); !strings.HasSuffix(got, want) || want == "" && strings.Contains(got, "no pass or colourway") {
			t.Errorf("says %q, want at its end %q", got, want)
		}
	}
}

func TestDabs(t *testing.T) {
	dab := func(colour string, part job.FacePart, size geometry.Length) job.Dab {
		return job.Dab{Colour: colour, Part: part, Size: size}
	}
	rest := dab("moss", job.TheRest, 0)
	for _, c := range []struct {
		dabs []job.Dab
		want string
	}{
		{[]job.Dab{dab("ochre", job.TheMiddle, 30), rest}, "dab ochre on the middle, 30 mm across, then moss on the rest"},
		{[]job.Dab{dab("ochre", job.TheMiddle, 30)}, "dab ochre on the middle, 30 mm across; the rest of the face stays without paint"},
		{[]job.Dab{dab("ochre", job.TheEdge, 26), dab("sand", job.TheMiddle, 60)}, "dab ochre along the edge, 26 mm wide, then sand on the middle, 60 mm across"}, // nothing is left
		{[]job.Dab{dab("ochre", job.TheMiddle, 30), dab("sand", job.TheMiddle, 50), rest}, "dab ochre on the middle, 30 mm across, then sand round that middle, out to 50 mm across, then moss on the rest"},
		{[]job.Dab{dab("ochre", job.TheCorners, 10), dab("sand", job.TheCorners, 20), rest}, "dab ochre on the corners, 10 mm from each point, then sand next to those corners, out to 20 mm from each point, then moss on the rest"},
		{[]job.Dab{dab("ochre", job.TheEdge, 4.5), dab("sand", job.TheEdge, 8), rest}, "dab ochre along the edge, 4.5 mm wide, then sand next to that edge, in to 8 mm, then moss on the rest"},
	} {
		block := &job.Block{Face: geometry.RectOutline(geometry.RectAround(geometry.Point{}, geometry.Size{W: 90, H: 60}))}
		if got := Dabs(geometry.UnitMM, &job.Pass{Block: block, Dabs: c.dabs}); got != c.want {
			t.Errorf("says %q\nwant %q", got, c.want)
		}
	}
	if got, want := DabPart(geometry.UnitInch, []job.Dab{dab("ochre", job.TheEdge, 25.4/4)}, 0), "along the edge, 1/4 in wide"; got != want {
		t.Errorf("says %q, want %q", got, want)
	}
}
