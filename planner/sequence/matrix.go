package sequence

import (
	"cmp"
	"slices"
)

// matrixBound bounds the rest of a problem with a matrix of costs. Every operation left is entered once and left once, so the steps
// left are part of an assignment. Its prices are worked out once, for the whole problem; for a state the prices of what
// is left are summed, and to them is added the least reduced cost by which each operation left can still be entered, or
// left, whichever gives more. A last place, the end, closes the row: steps into it cost nothing.
type matrixBound struct {
	m        *model
	out, in  []int64  // prices of leaving and entering; the end is number n
	entering [][]step // operation (or end) -> feasible steps into it, by rising reduced cost
	leaving  [][]step
}

// step is one end of a step between operations, with its reduced cost.
type step struct {
	op   int
	cost int64
}

func newMatrixBound(m *model) *matrixBound {
	cost := m.stepMatrix()
	b := &matrixBound{m: m, entering: make([][]step, m.n+1), leaving: make([][]step, m.n+1)}
	b.out, b.in = assign(cost)
	for i, row := range cost {
		for j, c := range row {
			if c < forbiddenCost && i < m.n {
				reduced := c - b.out[i] - b.in[j]
				b.entering[j] = append(b.entering[j], step{i, reduced})
				b.leaving[i] = append(b.leaving[i], step{j, reduced})
			}
		}
	}
	byCost := func(x, y step) int { return cmp.Compare(x.cost, y.cost) }
	for i := range b.entering {
		slices.SortStableFunc(b.entering[i], byCost)
		slices.SortStableFunc(b.leaving[i], byCost)
	}
	return b
}

// stepMatrix returns the costs of all steps that some order can take; the last row and column are start and end.
func (m *model) stepMatrix() [][]int64 {
	cost := make([][]int64, m.n+1)
	for i := range cost {
		cost[i] = make([]int64, m.n+1)
		for j := range cost[i] {
			cost[i][j] = forbiddenCost
		}
	}
	for i := range m.n {
		if m.pred[i] == 0 {
			cost[m.n][i] = 0
		}
		if m.succ[i] == 0 {
			cost[i][m.n] = 0
		}
		for j := range m.n {
			if i != j && !m.pred[i].Has(j) && m.succ[i]&m.pred[j] == 0 {
				cost[i][j] = int64(m.change[i][j])
			}
		}
	}
	return cost
}

func (b *matrixBound) entries() int { return 0 }
func (b *matrixBound) spent() int   { return 0 }

func (b *matrixBound) rest(done Set, last int, _ int32) int32 {
	if last < 0 || done == b.m.full {
		return 0
	}
	left := b.m.full &^ done
	from, end := left.With(last), b.m.n
	sum := b.out[last] + b.in[end]
	in := least(b.entering[end], from, end)
	out := least(b.leaving[last], left, end)
	for s := left; s != 0; s = s.rest() {
		op := s.first()
		sum += b.out[op] + b.in[op]
		in += least(b.entering[op], from, end)
		out += least(b.leaving[op], left, end)
	}
	return int32(max(0, sum+max(in, out)))
}

// least returns the reduced cost of the cheapest step whose other end is in the set, or the end of the order.
func least(steps []step, in Set, end int) int64 {
	for _, s := range steps {
		if s.op == end || in.Has(s.op) {
			return s.cost
		}
	}
	return 0
}
