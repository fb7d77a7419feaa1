package picture

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

// Six greys, worked by hand by Otsu's formula, between = n0 n1 (m0 - m1)^2, n counts and m means:
//
//	grey   0  1  2  3  4  5      36 pixels, 78 in all (the sum of grey x count)
//	count  8  7  2  6  9  4      sum of greys 0 + 7 + 4 + 18 + 36 + 20 = 85
//
//	up to 0: 8 x 28 x (0/8 - 85/28)^2      = 224 x 9.2156  = 2064.3
//	up to 1: 15 x 21 x (7/15 - 78/21)^2    = 315 x 10.5470 = 3322.3
//	up to 2: 17 x 19 x (11/17 - 74/19)^2   = 323 x 10.5474 = 3406.8
//	up to 3: 23 x 13 x (29/23 - 56/13)^2   = 299 x 9.2831  = 2775.7
//	up to 4: 32 x 4 x (65/32 - 20/4)^2     = 128 x 8.8135  = 1128.1
//
// The best is up to 2.
func TestOtsuByHand(t *testing.T) {
	h := [256]int{8, 7, 2, 6, 9, 4}
	if got := Otsu(h); got != 2 {
		t.Errorf("up to %d", got)
	}
	for name, c := range map[string]struct {
		greys map[int]int
		want  uint8
	}{
		"two greys: in the middle": {map[int]int{10: 5, 200: 5}, 104}, // 10 to 199 part them alike
		"neighbours":               {map[int]int{10: 5, 11: 5}, 10},
		"one grey":                 {map[int]int{77: 5}, 0},
		"none":                     {nil, 0},
		"black and white":          {map[int]int{0: 1, 255: 1}, 127},
		"few dark ones":            {map[int]int{30: 1, 240: 100_000}, 134},
	} {
		var h [256]int
		for g, n := range c.greys {
			h[g] = n
		}
		if got := Otsu(h); got != c.want {
			t.Errorf("%s: up to %d, want %d", name, got, c.want)
		}
	}
}

// No other threshold parts greys better: each is tried, in whole numbers.
func TestOtsuAgainstEveryThreshold(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		var h [256]int
		for range 1 + r.IntN(40) {
			h[r.IntN(256)] += r.IntN(1_000_000)
		}
		// between is n0 n1 (m0 - m1)^2 as a fraction: (s0 n1 - s1 n0)^2 / (n0 n1).
		between := func(t int) *big.Rat {
			var n0, n1, s0, s1 int64
			for g, n := range h {
				if g <= t {
					n0, s0 = n0+int64(n), s0+int64(g*n)
				} else {
					n1, s1 = n1+int64(n), s1+int64(g*n)
				}
			}
			if n0 == 0 || n1 == 0 {
				return new(big.Rat)
			}
			mul := func(a, b int64) *big.Int { return new(big.Int).Mul(big.NewInt(a), big.NewInt(b)) }
			d := new(big.Int).Sub(mul(s0, n1), mul(s1, n0))
			return new(big.Rat).SetFrac(d.Mul(d, d), mul(n0, n1))
		}
		got := Otsu(h)
		best := new(big.Rat)
		for t := range 255 {
			if b := between(t); b.Cmp(best) > 0 {
				best = b
			}
		}
		// To the rounding of floating point.
		most, _ := best.Float64()
		if is, _ := between(int(got)).Float64(); is < most*(1-1e-9) {
			t.Errorf("up to %d: %g, but there is one of %g", got, is, most)
		}
	}
}
