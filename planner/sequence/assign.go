package sequence

// forbiddenCost stands for a step that cannot be taken: above any sum of costs, and small enough to be added without overflow.
const forbiddenCost = int64(1) << 50

// assign solves the assignment problem: the cheapest way to give every row a column of its own. It returns prices of rows and
// columns with rows[i] + columns[j] <= cost[i][j] for all i and j, whose sum is the cost of the cheapest assignment (the
// dual of the problem). The method is that of shortest augmenting paths (Kuhn, Munkres), in O(n^3).
func assign(cost [][]int64) (rows, columns []int64) {
	n := len(cost)
	rows, columns = make([]int64, n), make([]int64, n)
	rowOf := make([]int, n) // column -> row, or -1
	for j := range rowOf {
		rowOf[j] = -1
	}
	for i := range n {
		augment(cost, rows, columns, rowOf, i)
	}
	return rows, columns
}

// augment brings row start into the assignment along a cheapest path of reassignments, and moves the prices along it.
func augment(cost [][]int64, rows, columns []int64, rowOf []int, start int) {
	n := len(cost)
	slack := make([]int64, n) // cheapest reduced cost by which column j was reached
	from := make([]int, n)    // the column before it on that path, or -1
	seen := make([]bool, n)
	for j := range slack {
		slack[j], from[j] = 4*forbiddenCost, -1
	}
	row, column := start, -1
	for row >= 0 {
		next, step := -1, 4*forbiddenCost
		for j := range n {
			if seen[j] {
				continue
			}
			if c := cost[row][j] - rows[row] - columns[j]; c < slack[j] {
				slack[j], from[j] = c, column
			}
			if slack[j] < step {
				next, step = j, slack[j]
			}
		}
		rows[start] += step
		for j := range n {
			if seen[j] {
				rows[rowOf[j]] += step
				columns[j] -= step
			} else {
				slack[j] -= step
			}
		}
		seen[next] = true
		column, row = next, rowOf[next]
	}
	for column >= 0 {
		before := from[column]
		if before >= 0 {
			rowOf[column] = rowOf[before]
		} else {
			rowOf[column] = start
		}
		column = before
	}
}
