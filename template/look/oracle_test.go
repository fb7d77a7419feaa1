package look_test

import (
	"math"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/job"
	"underlay/template/plan"
)

// oracle says what colour a place of a cloth has from where the prints lie and the source pictures,
// and knows nothing of paths.
type oracle struct {
	face  plan.FacePlan
	ink   func(pass *job.Pass, inFace geometry.Point) paper.Ink
	slack geometry.Length // nearer to an edge of paint than this it does not say
}

// at returns the ink of a place; sure is false where it is too near an edge.
func (o oracle) at(p geometry.Point) (ink paper.Ink, sure bool) {
	for i := len(o.face.Passes) - 1; i >= 0; i-- {
		pass := o.face.Passes[i]
		for k := len(pass.Prints) - 1; k >= 0; k-- {
			for _, site := range o.everywhere(pass.Prints[k]) {
				q := p.Sub(site.Origin).Turn(-site.Turn)
				painted, sure := o.painted(site.Block, q)
				if !sure {
					return paper.Ink{}, false
				}
				if painted {
					return o.ink(pass.Pass, q), true
				}
			}
		}
	}
	return paper.Grey(255), true
}

// everywhere lists where a print lies: on a shade also a whole way round from there.
func (o oracle) everywhere(print plan.Print) []plan.Site {
	all := []plan.Site{print.Site}
	item := o.face.Item
	if !item.Item.Shape.Shade() {
		return all
	}
	for _, way := range []float64{-1, 1} {
		s := print.Site
		if flat := item.Area.Flat; flat != nil {
			turn := flat.Angle * geometry.Angle(way)
			s.Origin = s.Origin.Sub(flat.Apex).Turn(turn).Add(flat.Apex)
			s.Turn += turn
		} else {
			s.Origin.X += item.Area.Cloth.W() * geometry.Length(way)
		}
		all = append(all, s)
	}
	return all
}

// painted tells whether a place of a face has paint by the picture of its print.
func (o oracle) painted(b *job.Block, q geometry.Point) (painted, sure bool) {
	box := b.Face.Bounds()
	m := b.Picture.Mask
	first := true
	for i := range 25 {
		near := q.Add(geometry.Pt(o.slack*geometry.Length((i+7)/8)/3, 0).Turn(geometry.Angle(i * 45)))
		x := int(math.Floor(float64((near.X - box.Min.X) / box.W() * geometry.Length(m.W))))
		y := int(math.Floor(float64((near.Y - box.Min.Y) / box.H() * geometry.Length(m.H))))
		if is := m.At(x, y) > 127; first {
			painted, first = is, false
		} else if is != painted {
			return false, false
		}
	}
	return painted, true
}
