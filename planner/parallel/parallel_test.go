package parallel

import (
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestEveryJobIsDoneOnce(t *testing.T) {
	for _, n := range []int{0, 1, 2, 100} {
		done := make([]atomic.Int32, n)
		Each(n, func(i int) { done[i].Add(1) })
		for i := range done {
			assert.EqualValues(t, 1, done[i].Load(), "job %d of %d", i, n)
		}
	}
}

func TestAPanicReachesTheCallerWhenAllIsDone(t *testing.T) {
	var done atomic.Int32
	assert.Panics(t, func() {
		Each(10, func(i int) {
			if i == 3 {
				panic("a slip")
			}
			done.Add(1)
		})
	})
	assert.EqualValues(t, 9, done.Load())
}

func TestJobsMayHaveJobs(t *testing.T) {
	var done atomic.Int32
	Each(8, func(int) { Each(8, func(int) { done.Add(1) }) })
	assert.EqualValues(t, 64, done.Load())
}
