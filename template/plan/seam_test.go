package plan

import (
	"testing"

	"underlay/geometry"
	"underlay/template/internal/oracle"
	"underlay/template/job"
)

// TestZonesOverAConesSeam: a print across the seam lies on both edges of the flat shade, and is
// left out for a zone at either. Each zone is set over what a print reaches over the one edge,
// seen at the other.
func TestZonesOverAConesSeam(t *testing.T) {
	block := rectBlock(30, 30)
	tried := 0
	for _, centre := range []job.Centring{job.OnPrint, job.OnJoint} {
		pass := newPass(block, "straight", 2)
		pass.CentreAcross = centre
		item := coneItem(120, 240, 180, 10)
		ip, err := tryPlan(item, job.RightHand, pass)
		if err != nil {
			t.Fatal(err)
		}
		flat := ip.Area.Flat
		// The prints as they lie on the cloth: also one way round farther, both ways.
		copies := func(p Print) []oracle.Shape {
			var all []oracle.Shape
			for _, turn := range []geometry.Angle{-flat.Angle, 0, flat.Angle} {
				at := p.Origin.Sub(flat.Apex).Turn(turn).Add(flat.Apex)
				all = append(all, oracle.OutlineAt(block, at, (p.Turn+turn).Normal()))
			}
			return all
		}
		for _, p := range ip.Passes[0].Prints {
			if !p.Seam {
				continue
			}
			for _, turn := range []geometry.Angle{-flat.Angle, flat.Angle} {
				at := p.Origin.Sub(flat.Apex).Turn(turn).Add(flat.Apex)
				zone := geometry.RectAround(at, geometry.Size{W: 8, H: 8})
				square := &job.Block{Shape: job.RectangleFace, Size: zone.Size(), Face: geometry.RectOutline(geometry.RectAround(geometry.Point{}, zone.Size()))}
				over := func(q Print) bool {
					for _, s := range copies(q) {
						if s.Apart(oracle.OutlineAt(square, at, 0)) < -1e-6 {
							return true
						}
					}
					return false
				}
				want := 0
				for _, q := range ip.Passes[0].Prints {
					if !over(q) {
						want++
					}
				}
				zoned := *item
				zoned.Zones = []job.Zone{{Name: "label", Rect: zone}}
				got, err := tryPlan(&zoned, job.RightHand, pass)
				if err != nil {
					t.Fatal(err)
				}
				for _, c := range got.Passes[0].Choices {
					if taken := ip.Passes[0].Choice(); c.Across == taken.Across && c.Down == taken.Down && c.Count != want {
						t.Errorf("zone at %v: %d prints, by hand %d", at, c.Count, want)
					}
				}
				for _, q := range got.Passes[0].Prints {
					if over(q) {
						t.Errorf("zone at %v: the print at %v lies on it", at, q.Origin)
					}
				}
				tried++
			}
		}
	}
	if tried < 4 {
		t.Errorf("only %d zones", tried)
	}
}
