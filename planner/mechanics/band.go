package mechanics

import "math"

// A bandMatrix is a square matrix whose entries lie within reach of the diagonal, reach rows below and reach above.
// Rows carry another reach of room to the right for what row exchanges bring in; where that is no less than the whole row
// (reach = n-1 and not far below), the matrix is stored whole.
type bandMatrix struct {
	n, reach int
	width    int // entries kept of each row
	whole    bool
	entries  []float64
}

func newBandMatrix(n, reach int) *bandMatrix {
	reach = min(reach, n-1)
	m := &bandMatrix{n: n, reach: reach, width: 3*reach + 1}
	if m.width >= n {
		m.width, m.whole = n, true
	}
	m.entries = make([]float64, n*m.width)
	return m
}

// index is where the entry at row, col is kept.
func (m *bandMatrix) index(row, col int) int {
	if m.whole {
		return row*m.width + col
	}
	return row*m.width + col - row + m.reach
}

func (m *bandMatrix) at(row, col int) *float64 { return &m.entries[m.index(row, col)] }

// add adds v to the entry at row, col.
func (m *bandMatrix) add(row, col int, v float64) { *m.at(row, col) += v }

// fix replaces an equation by "unknown[row] = value"; the caller puts the value on the right-hand side.
func (m *bandMatrix) fix(row int) {
	for col := max(0, row-m.reach); col <= min(m.n-1, row+m.reach); col++ {
		*m.at(row, col) = 0
	}
	*m.at(row, row) = 1
}

// down is the way from an entry to the one below it.
func (m *bandMatrix) down() int {
	if m.whole {
		return m.width
	}
	return m.width - 1
}

// solve overwrites right with the solution and the matrix with its factors, by elimination with row exchange.
// It returns false for a singular matrix. Cost: n reach^2.
func (m *bandMatrix) solve(right []float64) bool {
	for c := 0; c < m.n; c++ {
		lastRow, lastCol := min(m.n-1, c+m.reach), min(m.n-1, c+2*m.reach)
		pivot := m.pivot(c, lastRow)
		if *m.at(pivot, c) == 0 {
			return false
		}
		if pivot != c {
			m.exchange(pivot, c, lastCol)
			right[pivot], right[c] = right[c], right[pivot]
		}
		m.eliminate(c, lastRow, lastCol, right)
	}
	for c := m.n - 1; c >= 0; c-- {
		row := m.row(c, c, min(m.n-1, c+2*m.reach))
		for k := 1; k < len(row); k++ {
			right[c] -= row[k] * right[c+k]
		}
		right[c] /= row[0]
	}
	return true
}

// row is the stretch of a row between two columns.
func (m *bandMatrix) row(r, firstCol, lastCol int) []float64 {
	start := m.index(r, firstCol)
	return m.entries[start : start+lastCol-firstCol+1]
}

// pivot is the row with the largest entry of column c, from c down.
func (m *bandMatrix) pivot(c, lastRow int) int {
	best, largest := c, 0.0
	for r, i := c, m.index(c, c); r <= lastRow; r, i = r+1, i+m.down() {
		if v := math.Abs(m.entries[i]); v > largest {
			best, largest = r, v
		}
	}
	return best
}

func (m *bandMatrix) exchange(p, q, lastCol int) {
	a, b := m.row(p, q, lastCol), m.row(q, q, lastCol)
	for k := range a {
		a[k], b[k] = b[k], a[k]
	}
}

// eliminate clears column c below the diagonal.
func (m *bandMatrix) eliminate(c, lastRow, lastCol int, right []float64) {
	pivotRow := m.row(c, c, lastCol)
	for r := c + 1; r <= lastRow; r++ {
		row := m.row(r, c, lastCol)
		if row[0] == 0 {
			continue
		}
		f := row[0] / pivotRow[0]
		for k := range row {
			row[k] -= f * pivotRow[k]
		}
		right[r] -= f * right[c]
	}
}
