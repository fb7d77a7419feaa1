package cores

import (
	"sync/atomic"
	"testing"
)

func TestEachOnceAndNoneWaitsForALaterOne(t *testing.T) {
	for _, n := range []int{0, 1, 2, 1000} {
		times := make([]atomic.Int32, n)
		done := make([]chan struct{}, n)
		for i := range done {
			done[i] = make(chan struct{})
		}
		Each(n, func(i int) {
			if i > 0 {
				<-done[i-1] // for ever, were a later one begun first on every core
			}
			times[i].Add(1)
			close(done[i])
		})
		for i := range times {
			if times[i].Load() != 1 {
				t.Errorf("%d of %d is done %d times", i, n, times[i].Load())
			}
		}
	}
}
