// Package photograph makes photographs up, for tests: a flat sheet as a camera sees it that stands
// somewhere above it. It shares no code and no formula with what measures them: rays go from the
// camera's pinhole through each pixel, bent by the lens, down to the sheet.
package photograph

import "math"

type vector struct{ x, y, z float64 }

func (a vector) add(b vector) vector  { return vector{a.x + b.x, a.y + b.y, a.z + b.z} }
func (a vector) mul(k float64) vector { return vector{a.x * k, a.y * k, a.z * k} }
func (a vector) dot(b vector) float64 { return a.x*b.x + a.y*b.y + a.z*b.z }
func (a vector) unit() vector         { return a.mul(1 / math.Sqrt(a.dot(a))) }
func (a vector) cross(b vector) vector {
	return vector{a.y*b.z - a.z*b.y, a.z*b.x - a.x*b.z, a.x*b.y - a.y*b.x}
}

// Camera is where a camera stands and how it is made. The sheet lies in the plane z = 0, x to the
// right and y down in millimetres; the camera is above it, at negative z.
type Camera struct {
	W, H   int     // pixels
	Focal  float64 // from the pinhole to the sensor, in pixels
	K1, K2 float64 // Brown's radial terms, by the angle's tangent
	LookX, LookY,
	Distance float64 // from the pinhole to the point of the sheet in the picture's middle
	Aslant, // degrees from straight above,
	Toward, // leaning this way,
	Turn float64 // and turned round the way it looks
}

// axes returns the pinhole, and the picture's right, down and forward.
func (c Camera) axes() (eye, right, down, forward vector) {
	const degree = math.Pi / 180
	sa, ca := math.Sincos(c.Aslant * degree)
	st, ct := math.Sincos(c.Toward * degree)
	forward = vector{sa * ct, sa * st, ca}
	eye = vector{c.LookX, c.LookY, 0}.add(forward.mul(-c.Distance))
	x := vector{1, 0, 0}
	r := x.add(forward.mul(-x.dot(forward))).unit()
	d := forward.cross(r)
	s, k := math.Sincos(c.Turn * degree)
	return eye, r.mul(k).add(d.mul(s)), r.mul(-s).add(d.mul(k)), forward
}

// onSheet returns a function that tells the point of the sheet that is seen at a point of the picture.
func (c Camera) onSheet() func(u, v float64) (x, y float64) {
	eye, right, down, forward := c.axes()
	return func(u, v float64) (float64, float64) {
		xd, yd := (u-float64(c.W)/2)/c.Focal, (v-float64(c.H)/2)/c.Focal
		xu, yu := xd, yd
		for range 6 {
			r2 := xu*xu + yu*yu
			k := 1 + c.K1*r2 + c.K2*r2*r2
			xu, yu = xd/k, yd/k
		}
		ray := forward.add(right.mul(xu)).add(down.mul(yu))
		t := -eye.z / ray.z
		return eye.x + t*ray.x, eye.y + t*ray.y
	}
}

// InPicture returns where a point of the sheet is seen.
func (c Camera) InPicture(x, y float64) (u, v float64) {
	eye, right, down, forward := c.axes()
	to := vector{x, y, 0}.add(eye.mul(-1))
	xu, yu := to.dot(right)/to.dot(forward), to.dot(down)/to.dot(forward)
	r2 := xu*xu + yu*yu
	k := 1 + c.K1*r2 + c.K2*r2*r2
	return float64(c.W)/2 + c.Focal*xu*k, float64(c.H)/2 + c.Focal*yu*k
}

// Framed moves the camera near enough that the corners of a part of the sheet just keep a share of
// the picture away from its edges, and looks at a point that centres them.
func (c Camera) Framed(left, top, right, foot, clear float64) Camera {
	c.LookX, c.LookY = (left+right)/2, (top+foot)/2
	fits := func(d float64) (float64, float64, bool) {
		c.Distance = d
		lu, hu, lv, hv := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
		for _, p := range [][2]float64{{left, top}, {right, top}, {right, foot}, {left, foot}} {
			u, v := c.InPicture(p[0], p[1])
			lu, hu, lv, hv = min(lu, u), max(hu, u), min(lv, v), max(hv, v)
		}
		w, h := float64(c.W)*(1-2*clear), float64(c.H)*(1-2*clear)
		return (lu + hu) / 2, (lv + hv) / 2, hu-lu <= w && hv-lv <= h
	}
	for range 6 {
		near, far := 100.0, 5000.0
		for range 40 {
			d := (near + far) / 2
			if _, _, ok := fits(d); ok {
				far = d
			} else {
				near = d
			}
		}
		u, v, _ := fits(far)
		c.LookX, c.LookY = c.onSheet()(u, v)
	}
	return c
}

// Scale returns how many pixels a millimetre of the sheet has at a point, where it has the fewest: of
// all ways from there.
func (c Camera) Scale(x, y float64) float64 {
	least := math.Inf(1)
	u, v := c.InPicture(x, y)
	for i := range 36 {
		s, k := math.Sincos(float64(i) * math.Pi / 36)
		a, b := c.InPicture(x+k/10, y+s/10)
		least = min(least, math.Hypot(a-u, b-v)*10)
	}
	return least
}

// Finer returns the same camera with so many times the pixels each way.
func (c Camera) Finer(times float64) Camera {
	c.W, c.H, c.Focal = int(float64(c.W)*times), int(float64(c.H)*times), c.Focal*times
	return c
}

// Light is how the sheet is lit, and what the camera makes of it.
type Light struct {
	White     float64 // what white paper in full light comes to, 0 to 1 of the sensor's light
	FallX     float64 // light gained or lost from the picture's one edge to the other, a share
	FallY     float64
	Vignette  float64 // light lost in the corners, a share
	Shade     float64 // light lost in a shade with a soft edge across the sheet, a share
	ShadeX    float64 // where its edge is, in millimetres,
	ShadeTurn float64 // which way, degrees
	ShadeSoft float64 // and how soft, in millimetres
	Blur      float64 // pixels, a standard deviation
	Motion    float64 // pixels, the length of a smear
	MotionWay float64 // degrees
	Noise     float64 // of 255, a standard deviation
}
