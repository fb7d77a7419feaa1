// Package cores spreads work over the machine's processor cores.
package cores

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Each calls work for every number below n, on all cores, and returns when all are done. They are
// begun in rising order: one may wait for what an earlier one does.
func Each(n int, work func(i int)) {
	var begun atomic.Int64
	var group sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		group.Go(func() {
			for i := int(begun.Add(1)) - 1; i < n; i = int(begun.Add(1)) - 1 {
				work(i)
			}
		})
	}
	group.Wait()
}
