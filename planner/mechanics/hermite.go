package mechanics

// An element holds the integrals of products of the four cubic Hermite shapes (value and slope at either end) over one
// piece of the wall: shape x shape, slope x slope, bend x bend, and shape a x bend b.
type element struct {
	values, slopes, bends, mixed [4][4]float64
}

// hermite is the element of length 1 (standard integrals of the cubic Hermite polynomials).
var hermite = element{
	values: [4][4]float64{
		{156. / 420, 22. / 420, 54. / 420, -13. / 420},
		{22. / 420, 4. / 420, 13. / 420, -3. / 420},
		{54. / 420, 13. / 420, 156. / 420, -22. / 420},
		{-13. / 420, -3. / 420, -22. / 420, 4. / 420},
	},
	slopes: [4][4]float64{
		{36. / 30, 3. / 30, -36. / 30, 3. / 30},
		{3. / 30, 4. / 30, -3. / 30, -1. / 30},
		{-36. / 30, -3. / 30, 36. / 30, -3. / 30},
		{3. / 30, -1. / 30, -3. / 30, 4. / 30},
	},
	bends: [4][4]float64{
		{12, 6, -12, 6},
		{6, 4, -6, 2},
		{-12, -6, 12, -6},
		{6, 2, -6, 4},
	},
	mixed: [4][4]float64{ // -slopes plus the end values of shape x slope
		{-36. / 30, -3./30 - 1, 36. / 30, -3. / 30},
		{-3. / 30, -4. / 30, 3. / 30, 1. / 30},
		{36. / 30, 3. / 30, -36. / 30, 3./30 + 1},
		{-3. / 30, 1. / 30, 3. / 30, -4. / 30},
	},
}

// scaled returns the integrals for a piece of length l, mm.
func (e element) scaled(l float64) element {
	power := [4]float64{1, l, 1, l}
	for a := range 4 {
		for b := range 4 {
			s := power[a] * power[b]
			e.values[a][b] *= s * l
			e.slopes[a][b] *= s / l
			e.bends[a][b] *= s / (l * l * l)
			e.mixed[a][b] *= s / l
		}
	}
	return e
}

// secondDerivative of a field at node i: the mean of the two cubics that meet there. The field's value and slope are
// unknowns field and field+1 of the four at each node.
func secondDerivative(nodes, x []float64, i, field int) float64 {
	sum, count := 0.0, 0.0
	if i > 0 {
		_, end := endBends(nodes[i]-nodes[i-1], x[4*(i-1)+field:], x[4*i+field:])
		sum += end
		count++
	}
	if i+1 < len(nodes) {
		start, _ := endBends(nodes[i+1]-nodes[i], x[4*i+field:], x[4*(i+1)+field:])
		sum += start
		count++
	}
	return sum / count
}

// endBends are the second derivatives at both ends of a cubic of length l with value and slope a at its start, b at its end.
func endBends(l float64, a, b []float64) (start, end float64) {
	rise := 6 * (b[0] - a[0]) / (l * l)
	return rise - (4*a[1]+2*b[1])/l, (2*a[1]+4*b[1])/l - rise
}
