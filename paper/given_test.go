package paper

import (
	"math/rand/v2"

	"underlay/geometry"
)

func randomPoint(r *rand.Rand, within geometry.Length) geometry.Point {
	return geometry.Pt(within*geometry.Length(r.Float64()), within*geometry.Length(r.Float64()))
}
