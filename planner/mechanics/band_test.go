package mechanics

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Any banded system: put the solution back and get the right-hand side. The entries make zero pivots likely.
func TestBandSolveSatisfiesItsEquations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, reach := rapid.IntRange(1, 30).Draw(t, "n"), rapid.IntRange(0, 8).Draw(t, "reach")
		m := newBandMatrix(n, reach)
		full := make([][]float64, n)
		for row := range full {
			full[row] = make([]float64, n)
			for col := max(0, row-m.reach); col <= min(n-1, row+m.reach); col++ {
				full[row][col] = float64(rapid.IntRange(-3, 3).Draw(t, "entry"))
				m.add(row, col, full[row][col])
			}
		}
		right := make([]float64, n)
		for i := range right {
			right[i] = float64(rapid.IntRange(-9, 9).Draw(t, "right"))
		}
		x := append([]float64(nil), right...)
		if !m.solve(x) {
			return
		}
		size := 1.0
		for _, v := range x {
			size = max(size, v, -v)
		}
		if size > 1e9 {
			return // singular but for rounding
		}
		for row := range full {
			sum := 0.0
			for col, v := range full[row] {
				sum += v * x[col]
			}
			assert.InDelta(t, right[row], sum, 1e-9*size)
		}
	})
}

func TestBandSolveReportsSingular(t *testing.T) {
	m := newBandMatrix(2, 1)
	m.add(0, 0, 1)
	m.add(1, 0, 1)
	assert.False(t, m.solve([]float64{1, 2}))
}
