package motif_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/motif"
)

// BenchmarkOf times a print of 90 x 90 mm: of a picture as a phone takes it, at the detail of a page
// that shows a cushion at 1 : 3 and of one at true size; one in dabs; mere noise; and the stand-in.
func BenchmarkOf(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	phone, grain := pictured(blots(r, 1800, 1800)), pictured(noise(r, 1800, 1800))
	for _, block := range []*job.Block{phone, grain} {
		block.Size = geometry.Size{W: 90, H: 90}
		block.Face = geometry.RectOutline(geometry.RectAround(geometry.Point{}, block.Size))
	}
	plain := *phone
	plain.Picture = nil
	dabs := []job.Dab{{Part: job.TheMiddle, Size: 30}, {Part: job.TheRest}}
	for _, c := range []struct {
		name   string
		block  *job.Block
		dabs   []job.Dab
		detail geometry.Length
	}{
		{"picture", phone, nil, 0.12}, {"picture", phone, nil, 0.04}, {"dabs", phone, dabs, 0.12},
		{"noise", grain, nil, 0.12}, {"stand-in", &plain, nil, 0.12}, {"stand-in-dabs", &plain, dabs, 0.12},
	} {
		b.Run(fmt.Sprintf("%s/%g", c.name, float64(c.detail)), func(b *testing.B) {
			points := 0
			for b.Loop() {
				points = 0
				for _, p := range motif.Of(c.block, c.dabs, c.detail) {
					for _, piece := range p.Path {
						points += 1 + len(piece.Steps)
					}
				}
			}
			b.ReportMetric(float64(points), "points")
		})
	}
}
