package steps

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bits is a set of sample points.
type bits [16]uint64

const mostSamples = 64 * len(bits{})

func (b *bits) set(i int)         { b[i/64] |= 1 << (i % 64) }
func (b bits) less(c bits) bits   { return b.each(c, func(x, y uint64) uint64 { return x &^ y }) }
func (b bits) within(c bits) bool { return b.less(c) == bits{} }

func (b bits) each(c bits, f func(x, y uint64) uint64) bits {
	for i := range b {
		b[i] = f(b[i], c[i])
	}
	return b
}

// Every subset of every admissible cut, the shallower ones at each reading included, is tried with one cut fewer than the table has: none
// may bring all sample points within the leftover; and what is refused, all of them together do not. Admission and cover are decided by the oracle. Samples lie evenly, and one between any
// two ends of covers, so that a gap between samples cannot hide a shorter table.
func TestNoShorterTableByBruteForce(t *testing.T) {
	c := newCases(7)
	several := noShorter(t, c, 240, func(r *Request, n int) {
		if n%2 == 0 {
			c.bridgeHollow(r)
		}
	})
	assert.NotZero(t, several, "no case needed the search")
}

// The same for curves of more than one piece, and such as stand between faces: ogees, beads, a straight that runs into an arc with and without a corner.
func TestNoShorterTableOfChainsByBruteForce(t *testing.T) {
	c := newCases(8)
	noShorter(t, c, 240, func(r *Request, n int) { r.Curve = c.joined(n) })
}

// noShorter tries so many random cases, each turned to what it is to be, and returns how many have more cuts than witnesses.
func noShorter(t *testing.T, c cases, wanted int, turn func(r *Request, n int)) (several int) {
	t.Helper()
	solved, refused := 0, 0
	for solved < wanted {
		r := c.request()
		r.Across = Axis{GraduationMM: pick(c, 0.2, 0.25, 0.5), Reads: ReadsTravel, OriginMM: c.decimalBetween(-1, 1)}
		r.Depth = Axis{GraduationMM: pick(c, 0.05, 0.1), Reads: ReadsTravel, OriginMM: c.decimalBetween(-1, 1)}
		r.LeftoverMM = c.decimalBetween(0.08, 0.4)
		turn(&r, solved)
		table, err := Fewest(r)
		j, fault := newJob(r)
		if err != nil && fault == nil {
			refused++
			require.NotEmpty(t, j.places)
			all, covers := admissible(r, betweenEnds(t, j))
			for _, c := range covers {
				all = all.less(c)
			}
			require.NotZero(t, all, "%+v\nrefused: %v", r, err)
		}
		if err != nil || len(table.Cuts) > 6 {
			continue
		}
		solved++
		require.True(t, table.ProvenFewest)
		if len(table.WitnessAcrossMM) < len(table.Cuts) {
			several++
		}
		all, covers := admissible(r, betweenEnds(t, j))
		require.False(t, coverable(all, covers, len(table.Cuts)-1), "%+v\n%d cuts", r, len(table.Cuts))
		require.True(t, coverable(all, covers, len(table.Cuts)), "%+v\n%d cuts", r, len(table.Cuts))
	}
	t.Logf("%d cases, %d of them with more cuts than witnesses; %d refused", solved, several, refused)
	return several
}

// bridgeHollow makes the request one where cuts cover on both sides of what they leave: a flat over a hollow, nearly as wide as can be.
func (c cases) bridgeHollow(r *Request) {
	radius := c.decimalBetween(10, 60)
	widest := 2 * math.Sqrt(2*radius*r.LeftoverMM)
	r.Curve = pick(c, ConcaveSeat, Neck)(radius, c.decimalBetween(widest/2, 3*widest))
	r.Cutter = Cutter{Kind: SquareEnd, WidthMM: c.decimalBetween(widest/2, widest)}
}

// betweenEnds returns a point between every two neighbouring ends of covers. Only where to look is taken from the solver.
func betweenEnds(t *testing.T, j *job) []float64 {
	t.Helper()
	r := j.request
	var ends, points []float64
	for _, parts := range j.feeler.cover(j.places, r.LeftoverMM).parts {
		for _, p := range parts {
			ends = append(ends, p.a, p.b)
		}
	}
	slices.Sort(ends)
	from, to := measured(r, r.LeftoverMM)
	for n := 1; n < len(ends); n++ {
		if x := (ends[n-1] + ends[n]) / 2; x > from && x < to {
			points = append(points, x)
		}
	}
	require.Less(t, len(points), mostSamples*3/4)
	return points
}

// admissible lists what each admissible cut covers of the samples. Cuts that cover no more than another are left out.
func admissible(r Request, extra []float64) (all bits, covers []bits) {
	from, to := measured(r, r.LeftoverMM)
	samples := append([]float64(nil), extra...)
	for n := mostSamples - len(extra); len(samples) < mostSamples; {
		k := float64(len(samples)-len(extra)) / float64(n-1)
		samples = append(samples, from*(1-k)+to*k)
	}
	limits := make([]float64, len(samples))
	for n, x := range samples {
		limits[n] = heightAtDistance(r, x)
		all.set(n)
	}
	left, _ := segmentEnds(r.Curve.Segments[0])
	_, right := segmentEnds(r.Curve.Segments[len(r.Curve.Segments)-1])
	half := halfWidth(r.Cutter)
	for i := math.Floor((left - half - r.Across.OriginMM) / r.Across.GraduationMM); ; i++ {
		c := Cut{AcrossMM: r.Across.OriginMM + i*r.Across.GraduationMM}
		if c.AcrossMM > right+half {
			break
		}
		if r.Curve.Left == Wall && c.AcrossMM-half < left-oracleTieMM || r.Curve.Right == Wall && c.AcrossMM+half > right+oracleTieMM {
			continue
		}
		for _, depth := range depths(r, c) {
			c.DepthMM = depth
			var b bits
			for n, x := range samples {
				if edge(r.Cutter, x-c.AcrossMM)-depth <= limits[n]+oracleSlackMM {
					b.set(n)
				}
			}
			covers = keepWidest(covers, b)
		}
	}
	return all, covers
}

// depths returns the two deepest admissible depths on graduations for a cut, found by going deeper until it passes the curve.
func depths(r Request, c Cut) []float64 {
	const top, bottom = -40.0, 40.0 // beyond every random curve
	k := math.Floor((top - r.Depth.OriginMM) / r.Depth.GraduationMM)
	clear := func(k float64) bool {
		c.DepthMM = r.Depth.OriginMM + k*r.Depth.GraduationMM
		return passes(r, c) == 0
	}
	if !clear(k) || clear(k+math.Floor((bottom-top)/r.Depth.GraduationMM)) {
		return nil // never meets the curve
	}
	for step := math.Pow(2, 12); step >= 1; step /= 2 {
		for clear(k + step) {
			k += step
		}
	}
	return []float64{r.Depth.OriginMM + k*r.Depth.GraduationMM, r.Depth.OriginMM + (k-1)*r.Depth.GraduationMM}
}

func heightAtDistance(r Request, x float64) float64 {
	segs := metal(r)
	lo := math.Inf(-1)
	for _, s := range r.Curve.Segments {
		if from, to := segmentEnds(s); x >= from-oracleTieMM && x <= to+oracleTieMM {
			lo = math.Max(lo, segmentHeight(s, math.Min(math.Max(x, from), to)))
		}
	}
	hi := lo + 60
	for range 60 {
		if mid := (lo + hi) / 2; distanceTo(segs, r, x, mid) <= r.LeftoverMM {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

func keepWidest(covers []bits, b bits) []bits {
	var kept []bits
	for _, c := range covers {
		if b.within(c) {
			return covers
		}
		if !c.within(b) {
			kept = append(kept, c)
		}
	}
	return append(kept, b)
}

// coverable reports whether n of the covers make up all: every subset is tried, but for those that leave out the first point still
// missing.
func coverable(all bits, covers []bits, n int) bool {
	if all == (bits{}) {
		return true
	}
	if n == 0 {
		return false
	}
	word := 0
	for all[word] == 0 {
		word++
	}
	lowest := all[word] & -all[word]
	for _, c := range covers {
		if c[word]&lowest != 0 && coverable(all.less(c), covers, n-1) {
			return true
		}
	}
	return false
}
