// Package parallel runs jobs that share nothing they write on all processors.
//
// In: a count of jobs, and the job. Out: nothing but what the jobs wrote, each in its own place, so that the outcome does not hang on
// which was first. A job that panics panics in the caller, who then deals with it as with any other.
package parallel

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
)

// Each does the jobs 0 to n-1, as many at once as there are processors, and returns when all are done.
func Each(n int, do func(i int)) {
	if n == 1 {
		do(0)
		return
	}
	var (
		wait  sync.WaitGroup
		first sync.Once
		broke error
	)
	room := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i := range n {
		room <- struct{}{}
		wait.Go(func() {
			defer func() {
				if r := recover(); r != nil {
					first.Do(func() { broke = fmt.Errorf("%v\n%s", r, debug.Stack()) })
				}
				<-room
			}()
			do(i)
		})
	}
	wait.Wait()
	if broke != nil {
		panic(broke)
	}
}
