package trace

import "math"

// solve solves the square system a x = b by Gauss's elimination with the largest pivot of each
// column (any handbook). It overwrites both; ok is false where the system has no one answer.
func solve(a [][]float64, b []float64) (x []float64, ok bool) {
	n := len(b)
	for c := range n {
		best := c
		for r := c + 1; r < n; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[best][c]) {
				best = r
			}
		}
		a[c], a[best] = a[best], a[c]
		b[c], b[best] = b[best], b[c]
		if pivot := math.Abs(a[c][c]); !(pivot > 1e-13) || math.IsInf(pivot, 0) {
			return nil, false
		}
		for r := c + 1; r < n; r++ {
			f := a[r][c] / a[c][c]
			for k := c; k < n; k++ {
				a[r][k] -= f * a[c][k]
			}
			b[r] -= f * b[c]
		}
	}
	for r := n - 1; r >= 0; r-- {
		for k := r + 1; k < n; k++ {
			b[r] -= a[r][k] * b[k]
		}
		b[r] /= a[r][r]
	}
	return b, true
}

// normal gathers a least-squares problem of n unknowns, an equation at a time.
type normal struct {
	a [][]float64
	b []float64
}

func newNormal(n int) *normal {
	m := &normal{b: make([]float64, n)}
	for range n {
		m.a = append(m.a, make([]float64, n))
	}
	return m
}

// add puts in the equation row · x = value, which counts so much.
func (m *normal) add(row []float64, value, weight float64) {
	for i, v := range row {
		for k, u := range row {
			m.a[i][k] += weight * v * u
		}
		m.b[i] += weight * v * value
	}
}

// solve returns the x with the least squares.
func (m *normal) solve() ([]float64, bool) { return solve(m.a, m.b) }
