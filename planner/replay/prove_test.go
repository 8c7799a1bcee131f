package replay

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestBushIsProved(t *testing.T) {
	proof := proves(t, bush(t))
	assert.Equal(t, 14, proof.Cuts)
	assert.NotEmpty(t, proof.Clauses)
}

func BenchmarkProve(b *testing.B) {
	good := bush(&testing.T{})
	p := good.plan()
	b.ReportAllocs()
	for b.Loop() {
		if _, failures := Prove(good.job, p); len(failures) > 0 {
			b.Fatal(failures)
		}
	}
}
