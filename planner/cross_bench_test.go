package planner_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"catchplate/planner"
)

// A part with a seat, a tapped ring and several holdings, planned and proved.
func BenchmarkSaddle(b *testing.B) {
	job := workedJob(b, "saddle")
	b.ReportAllocs()
	for b.Loop() {
		_, failures := planner.Proved(job, planner.Options{})
		require.Empty(b, failures)
	}
}
