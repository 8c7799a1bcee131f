package partspec_test

import (
	"testing"

	"catchplate/partspec"
)

// BenchmarkExamples reads the example folder, workshop and all parts.
func BenchmarkExamples(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if job, _, found := partspec.Load([]string{"../examples/tide-gauge"}); job == nil {
			b.Fatal(found)
		}
	}
}
