package mechanics

import "math"

// A bandMatrix is a square matrix whose entries lie within reach of the diagonal, reach rows below and reach above.
// Rows carry another reach of room to the right for what row exchanges bring in. With reach = n-1 it is a full matrix.
type bandMatrix struct {
	n, reach int
	entries  []float64
}

func newBandMatrix(n, reach int) *bandMatrix {
	reach = min(reach, n-1)
	return &bandMatrix{n, reach, make([]float64, n*(3*reach+1))}
}

func (m *bandMatrix) at(row, col int) *float64 {
	return &m.entries[row*(3*m.reach+1)+col-row+m.reach]
}

// add adds v to the entry at row, col.
func (m *bandMatrix) add(row, col int, v float64) { *m.at(row, col) += v }

// fix replaces an equation by "unknown[row] = value"; the caller puts the value on the right-hand side.
func (m *bandMatrix) fix(row int) {
	for col := max(0, row-m.reach); col <= min(m.n-1, row+m.reach); col++ {
		*m.at(row, col) = 0
	}
	*m.at(row, row) = 1
}

// solve overwrites right with the solution and the matrix with its factors, by elimination with row exchange.
// It returns false for a singular matrix. Cost: n reach^2.
func (m *bandMatrix) solve(right []float64) bool {
	for c := 0; c < m.n; c++ {
		lastRow, lastCol := min(m.n-1, c+m.reach), min(m.n-1, c+2*m.reach)
		pivot := c
		for r := c + 1; r <= lastRow; r++ {
			if math.Abs(*m.at(r, c)) > math.Abs(*m.at(pivot, c)) {
				pivot = r
			}
		}
		if *m.at(pivot, c) == 0 {
			return false
		}
		if pivot != c {
			for k := c; k <= lastCol; k++ {
				p, q := m.at(pivot, k), m.at(c, k)
				*p, *q = *q, *p
			}
			right[pivot], right[c] = right[c], right[pivot]
		}
		m.eliminate(c, lastRow, lastCol, right)
	}
	for c := m.n - 1; c >= 0; c-- {
		for k := c + 1; k <= min(m.n-1, c+2*m.reach); k++ {
			right[c] -= *m.at(c, k) * right[k]
		}
		right[c] /= *m.at(c, c)
	}
	return true
}

func (m *bandMatrix) eliminate(c, lastRow, lastCol int, right []float64) {
	width := lastCol - c + 1
	pivot := *m.at(c, c)
	base := c*(3*m.reach+1) + m.reach
	pivotRow := m.entries[base : base+width]
	for r := c + 1; r <= lastRow; r++ {
		start := r*(3*m.reach+1) + c - r + m.reach
		row := m.entries[start : start+width]
		if row[0] == 0 {
			continue
		}
		f := row[0] / pivot
		for k := range row {
			row[k] -= f * pivotRow[k]
		}
		right[r] -= f * right[c]
	}
}
