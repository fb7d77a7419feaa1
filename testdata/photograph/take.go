package photograph

import (
	"bytes"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"runtime"
	"sync"
)

// Sheet is how much light a flat scene gives back, 0 to 1, in its own frame in millimetres.
type Sheet func(x, y float64) float64

// Take takes a photograph, with so many rays a side in each pixel.
func Take(s Sheet, c Camera, l Light, rays int, r *rand.Rand) *image.Gray {
	// The sheet's points at the corners of all pixels; between them, rays go in proportion.
	onSheet := c.onSheet()
	type spot struct{ x, y float64 }
	corners := make([]spot, (c.W+1)*(c.H+1))
	rows(c.H+1, func(y int) {
		for x := range c.W + 1 {
			px, py := onSheet(float64(x), float64(y))
			corners[y*(c.W+1)+x] = spot{px, py}
		}
	})
	seen := make([]float64, c.W*c.H)
	st, ct := math.Sincos(l.ShadeTurn * math.Pi / 180)
	diagonal := math.Hypot(float64(c.W), float64(c.H)) / 2
	rows(c.H, func(y int) {
		for x := range c.W {
			nw, ne := corners[y*(c.W+1)+x], corners[y*(c.W+1)+x+1]
			sw, se := corners[(y+1)*(c.W+1)+x], corners[(y+1)*(c.W+1)+x+1]
			var sum float64
			for i := range rays * rays {
				u, v := (float64(i%rays)+0.5)/float64(rays), (float64(i/rays)+0.5)/float64(rays)
				sum += s((nw.x*(1-u)+ne.x*u)*(1-v)+(sw.x*(1-u)+se.x*u)*v, (nw.y*(1-u)+ne.y*u)*(1-v)+(sw.y*(1-u)+se.y*u)*v)
			}
			if l.Shade > 0 {
				sum *= 1 - l.Shade/(1+math.Exp(-((nw.x*ct+nw.y*st)-l.ShadeX)/max(l.ShadeSoft, 0.1)))
			}
			fx, fy := float64(x)/float64(c.W)-0.5, float64(y)/float64(c.H)-0.5
			off := math.Hypot(float64(x)-float64(c.W)/2, float64(y)-float64(c.H)/2) / diagonal
			seen[y*c.W+x] = sum / float64(rays*rays) * l.White * (1 + l.FallX*fx + l.FallY*fy) * (1 - l.Vignette*off*off)
		}
	})
	seen = smear(blurred(seen, c.W, l.Blur), c.W, l.Motion, l.MotionWay)
	img := image.NewGray(image.Rect(0, 0, c.W, c.H))
	const steps = 1 << 14
	var values [steps + 1]float64
	for i := range values {
		values[i] = encoded(float64(i) / steps)
	}
	for i, v := range seen {
		img.Pix[i] = uint8(min(max(values[int(min(max(v, 0), 1)*steps)]*255+l.Noise*r.NormFloat64()+0.5, 0), 255))
	}
	return img
}

// rows calls f for every row, on all cores.
func rows(n int, f func(y int)) {
	var wait sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for k := range workers {
		wait.Go(func() {
			for y := k; y < n; y += workers {
				f(y)
			}
		})
	}
	wait.Wait()
}

// encoded is the value a camera writes for a light (IEC 61966-2-1, sRGB).
func encoded(light float64) float64 {
	light = min(max(light, 0), 1)
	if light <= 0.0031308 {
		return 12.92 * light
	}
	return 1.055*math.Pow(light, 1/2.4) - 0.055
}

// blurred smears by the normal law.
func blurred(of []float64, w int, deviation float64) []float64 {
	if deviation <= 0 {
		return of
	}
	reach := int(math.Ceil(3 * deviation))
	kernel, sum := make([]float64, 2*reach+1), 0.0
	for i := range kernel {
		d := float64(i-reach) / deviation
		kernel[i] = math.Exp(-d * d / 2)
		sum += kernel[i]
	}
	h := len(of) / w
	pass := func(of []float64, across bool) []float64 {
		out := make([]float64, len(of))
		rows(h, func(y int) {
			for x := range w {
				var v float64
				for i, k := range kernel {
					px, py := x, y
					if across {
						px = min(max(x+i-reach, 0), w-1)
					} else {
						py = min(max(y+i-reach, 0), h-1)
					}
					v += k * of[py*w+px]
				}
				out[y*w+x] = v / sum
			}
		})
		return out
	}
	return pass(pass(of, true), false)
}

// smear moves the camera while the picture is taken.
func smear(of []float64, w int, length, way float64) []float64 {
	if length <= 0 {
		return of
	}
	s, c := math.Sincos(way * math.Pi / 180)
	h := len(of) / w
	out := make([]float64, len(of))
	const steps = 5
	rows(h, func(y int) {
		for x := range w {
			for i := range steps {
				d := length * (float64(i)/(steps-1) - 0.5)
				out[y*w+x] += between(of, w, float64(x)+d*c, float64(y)+d*s) / steps
			}
		}
	})
	return out
}

// between returns a value between pixels, counted from the middle of the first.
func between(of []float64, w int, x, y float64) float64 {
	h := len(of) / w
	x, y = min(max(x, 0), float64(w-1)-1e-9), min(max(y, 0), float64(h-1)-1e-9)
	i, k := int(x), int(y)
	fx, fy := x-float64(i), y-float64(k)
	o := k*w + i
	return (of[o]*(1-fx)+of[o+1]*fx)*(1-fy) + (of[o+w]*(1-fx)+of[o+w+1]*fx)*fy
}

// Coloured puts three photographs of one scene, in red, green and blue light, together.
func Coloured(red, green, blue *image.Gray) *image.RGBA {
	out := image.NewRGBA(red.Rect)
	for i := range red.Pix {
		copy(out.Pix[4*i:], []uint8{red.Pix[i], green.Pix[i], blue.Pix[i], 255})
	}
	return out
}

// Saved is a picture as it comes out of a JPEG file of that quality.
func Saved(img *image.Gray, quality int) (*image.Gray, []byte, error) {
	var file bytes.Buffer
	if err := jpeg.Encode(&file, img, &jpeg.Options{Quality: quality}); err != nil {
		return nil, nil, err
	}
	back, err := jpeg.Decode(bytes.NewReader(file.Bytes()))
	if err != nil {
		return nil, nil, err
	}
	return back.(*image.Gray), file.Bytes(), nil
}

// Raster is a page as rendered, so many pixels to the millimetre; At is how white it is at a point
// of the page, 0 to 1, between pixels in proportion.
type Raster struct {
	Img   *image.Gray
	Scale float64
}

func (r Raster) At(x, y float64) float64 {
	b := r.Img.Bounds()
	px, py := x*r.Scale-0.5, y*r.Scale-0.5
	if px < 0 || py < 0 || px >= float64(b.Dx()-1) || py >= float64(b.Dy()-1) {
		return 1
	}
	i, k := int(px), int(py)
	fx, fy := px-float64(i), py-float64(k)
	p := r.Img.Pix[k*r.Img.Stride+i:]
	q := p[r.Img.Stride:]
	return ((float64(p[0])*(1-fx)+float64(p[1])*fx)*(1-fy) + (float64(q[0])*(1-fx)+float64(q[1])*fx)*fy) / 255
}
