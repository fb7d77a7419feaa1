package trace

import (
	"math"
	"testing"
)

// everywhere is all of an opening.
func everywhere(int, int) bool { return true }

// TestTonesWorkedByHand: six tenths of the pixels at 1, three at 1/3 and one at 0.6, counted on
// s / (s + 1) at 0.5, 0.25 and 0.375. Between the classes {1/3} and {0.6, 1} the variance is
// 0.3 x 0.7 x (0.4821 - 0.25)² = 0.01132; between {1/3, 0.6} and {1} it is
// 0.4 x 0.6 x (0.5 - 0.28125)² = 0.01148, which is more: Otsu's threshold lies above 0.6.
func TestTonesWorkedByHand(t *testing.T) {
	e := &opening{w: 100, h: 10}
	for i := range 1000 {
		switch n := i % 10; {
		case n < 6:
			e.light = append(e.light, 1)
		case n < 9:
			e.light = append(e.light, 1.0/3)
		default:
			e.light = append(e.light, 0.6)
		}
	}
	got := e.tones(everywhere)
	if math.Abs(got.ground-1) > 0.002 || math.Abs(got.print-1.0/3) > 0.002 || got.spread > 0.001 || !got.clear() {
		t.Errorf("%+v", got)
	}
	if got.inked(0.7) || !got.inked(0.6) || !got.inked(0.2) {
		t.Errorf("half is %v", got.half())
	}

	// The same the other way round: what is lighter than the ground is the print.
	for i, s := range e.light {
		e.light[i] = 1 / s
	}
	got = e.tones(everywhere)
	if math.Abs(got.ground-1) > 0.002 || math.Abs(got.print-3) > 0.02 || !got.inked(2.5) || got.inked(1.5) {
		t.Errorf("%+v", got)
	}
}

// TestLightIsEvened: the light of a lamp beside the sheet and a soft shade, with a dark square on it;
// evened, the ground is within one hundredth of 1, but next to the shade.
func TestLightIsEvened(t *testing.T) {
	o := &opening{w: int(openingWidth) * coarse, h: int(openingHeight) * coarse}
	square := func(x, y int) bool { return x > 200 && x < 440 && y > 300 && y < 560 }
	for i := range o.w * o.h {
		x, y := i%o.w, i/o.w
		fx, fy := float64(x)/float64(o.w)-0.3, float64(y)/float64(o.h)-0.8
		light := 0.8 / (1 + fx*fx + fy*fy)
		light *= 1 - 0.3/(1+math.Exp(-(float64(x)-300)/30))
		if square(x, y) {
			light *= 0.15
		}
		o.light = append(o.light, light)
	}
	_, e, tones, err := o.inside()
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(tones.print-0.15) > 0.02 || math.Abs(tones.ground-1) > 0.01 {
		t.Errorf("%+v", tones)
	}
	var worst float64
	for i, s := range e.light {
		if !square(i%o.w, i/o.w) {
			worst = max(worst, math.Abs(s-1))
		}
	}
	if worst > 0.05 {
		t.Errorf("the ground is off by %v", worst)
	}
	bounds, err := e.rough(tones)
	if err != nil || math.Abs(float64(bounds.W())-239.0/coarse) > 0.3 || math.Abs(float64(bounds.H())-259.0/coarse) > 0.3 {
		t.Errorf("the print is %v, %v", bounds, err)
	}
}

// TestSharpened: an edge that is smeared stays where it is; a line that is smeared to less than half
// comes back.
func TestSharpened(t *testing.T) {
	const w, deviation = 200, 4.0
	smeared := func(of func(x float64) float64) []float32 {
		var row []float32
		for range 40 {
			for x := range w {
				var sum, weight float64
				for d := -20.0; d <= 20; d += 0.5 {
					k := math.Exp(-d * d / 2 / deviation / deviation)
					sum, weight = sum+k*of(float64(x)+d), weight+k
				}
				row = append(row, float32(sum/weight))
			}
		}
		return row
	}
	step := sharpened(smeared(func(x float64) float64 { return map[bool]float64{true: 1}[x >= 99.75] }), w, deviation)[20*w:]
	if step[99] > 0.5 || step[100] < 0.5 {
		t.Errorf("the edge has moved: %v", step[97:103])
	}
	line := smeared(func(x float64) float64 { return map[bool]float64{true: 1}[math.Abs(x-100) < 2.5] })
	if before, after := line[20*w+100], sharpened(line, w, deviation)[20*w+100]; before > 0.5 || after < before+0.1 {
		t.Errorf("the line was %v and is %v", before, after)
	}
}

// TestKept: specks are left out, a border of dots is not.
func TestKept(t *testing.T) {
	big := blob{dark: true, n: 400 * 2000, in: -1}
	dot := blob{dark: true, n: 400 * 3 / 2, in: -1}
	dust := blob{dark: true, n: noise - 1, in: -1}
	pinhole := blob{n: 5, in: 0}
	hole := blob{n: 500, in: 0}
	all := []blob{big, dot, dust, pinhole, hole}
	kept, specks := keptOf(all)
	if !kept[0] || kept[1] || kept[2] || !kept[3] || kept[4] || specks != 1 {
		t.Errorf("kept %v, %d specks", kept, specks)
	}
	for range 20 {
		all = append(all, dot)
	}
	if kept, specks := keptOf(all); !kept[1] || !kept[len(all)-1] || specks != 0 {
		t.Errorf("a border of dots: kept %v, %d specks", kept, specks)
	}
}
