package look_test

import (
	"bytes"
	"testing"

	"underlay/paper"
	"underlay/paper/pdf"
	"underlay/template/look"
	"underlay/template/plan"
)

// BenchmarkLook times a look of a face whose block has a picture, from the plan to the packed PDF, and
// says how large that is.
func BenchmarkLook(b *testing.B) {
	for _, c := range []struct {
		name         string
		across, down int
		pass         string
	}{
		{"25", 5, 5, "gap = '1 mm'\ncolours = ['olive']"},
		{"1000", 25, 40, "gap = '1 mm'\ncolours = ['olive']"},
		{"10000", 100, 100, "gap = '1 mm'\ncolours = ['olive']"},
		{"10000-three-dabs", 100, 100, "gap = '1 mm'\ndabs = [{ colour = 'olive', middle = '4 mm' }, { colour = 'teal', corners = '2 mm' }, { colour = 'tan' }]"},
		{"100000", 250, 400, "gap = '1 mm'\ncolours = ['olive']"},
	} {
		b.Run(c.name, func(b *testing.B) { benchmarkLook(b, many(b, c.across, c.down, c.pass), false) })
	}
	shade := planned(b, "[[block]]\nname = 'pebble'\nprint = '20 x 20 mm'\n"+
		"[[item]]\nname = 'lampshade'\nshape = 'cone'\ntop = '18 cm'\nbottom = '32 cm'\nheight = '24 cm'\nborder = '12 mm'\n"+
		"[[item.pass]]\nblock = 'pebble'\ngap = '1 mm'\ncolours = ['olive']\n")
	shade.Job.Blocks[0].Picture = whorls(400, 400)
	b.Run("shade-standing", func(b *testing.B) { benchmarkLook(b, shade, true) })
}

func benchmarkLook(b *testing.B, p *plan.Plan, standing bool) {
	face := p.Items[0].Faces()[0]
	draw := look.Flat
	if standing {
		draw = look.Standing
	}
	var file bytes.Buffer
	for b.Loop() {
		file.Reset()
		page := onPage(draw(p.Job, face, look.First(face), box))
		if err := pdf.Write(&file, pdf.Document{Parts: []paper.Part{{Name: "look", Pages: []paper.Page{page}}}}); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(face.Count()), "prints")
	b.ReportMetric(float64(file.Len()), "bytes")
}
