package steps

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ordinary is the stated set of 100 cases of workshop kind: ten curves, each with five round noses or dials and five square ends. In the last two
// of each five the graduation is close to the leftover.
func ordinary(t testing.TB) []ordinaryCase {
	ogee, err := Ogee(12, 9, 7)
	require.NoError(t, err)
	curves := []struct {
		name string
		Curve
	}{
		{"seat R45 x 40", ConcaveSeat(45, 40)}, {"seat R30 x 30", ConcaveSeat(30, 30)}, {"seat R57 x 40", ConcaveSeat(57, 40)},
		{"back R45 x 40", ConvexArc(45, 40)}, {"back R25 x 20", ConvexArc(25, 20)}, {"half round R8", ConvexArc(8, 16)},
		{"quarter round R6", QuarterRound(6)}, {"neck R20 x 16", Neck(20, 16)}, {"ogee R12 R9 x 7", ogee}, {"cone 30 x 7", Cone(30, 7)},
	}
	dials := []struct{ graduation, leftover float64 }{{0.02, 0.05}, {0.025, 0.08}, {0.0254, 0.1}, {0.05, 0.05}, {0.025, 0.03}}
	var all []ordinaryCase
	for _, c := range curves {
		for n, d := range dials {
			dial := Axis{GraduationMM: d.graduation, Reads: ReadsTravel}
			for _, cutter := range []Cutter{
				{Kind: RoundNose, RadiusMM: []float64{2, 3, 1.5, 2, 2.5}[n]},
				{Kind: SquareEnd, WidthMM: []float64{2, 2.5, 2, 3, 2}[n], CornerRadiusMM: []float64{0, 0.4, 0.2, 0.8, 0.4}[n]},
			} {
				all = append(all, ordinaryCase{
					name:    fmt.Sprintf("%s, %v %d", c.name, cutter.Kind, n),
					close:   n >= 3,
					Request: Request{Curve: c.Curve, Cutter: cutter, Across: dial, Depth: dial, LeftoverMM: d.leftover},
				})
			}
		}
	}
	return all
}

type ordinaryCase struct {
	name  string
	close bool
	Request
}

func TestNeverMoreCutsThanEqualSteps(t *testing.T) {
	all := ordinary(t)
	require.Len(t, all, 100)
	compared := 0
	for _, c := range all {
		table, err := Fewest(c.Request)
		require.NoError(t, err, c.name)
		assert.True(t, table.ProvenFewest, c.name)
		for _, equal := range []int{table.EqualStepsCount, len(table.ConstantStep.Cuts), table.CustomarySteps} {
			if equal > 0 {
				compared++
				assert.LessOrEqual(t, len(table.Cuts), equal, c.name)
			}
		}
	}
	assert.Greater(t, compared, 200)
}

// BenchmarkOrdinary reports the median of cuts over cuts by the best equal steps (with each kind of cutter, and where the graduation is
// close to the leftover) and over quarter-millimetre steps.
func BenchmarkOrdinary(b *testing.B) {
	all := ordinary(b)
	ratios := map[string][]float64{}
	for b.Loop() {
		clear(ratios)
		for _, c := range all {
			table, err := Fewest(c.Request)
			require.NoError(b, err)
			n := float64(len(table.Cuts))
			if equal := table.EqualStepsCount; equal > 0 {
				name := "round/equal"
				if c.Cutter.Kind == SquareEnd {
					name = "square/equal"
				}
				ratios[name] = append(ratios[name], n/float64(equal))
				if c.close {
					ratios["close/equal"] = append(ratios["close/equal"], n/float64(equal))
				}
				ratios["all/equal"] = append(ratios["all/equal"], n/float64(equal))
			}
			if constant := len(table.ConstantStep.Cuts); constant > 0 {
				ratios["all/constant"] = append(ratios["all/constant"], n/float64(constant))
			}
			if usual := table.CustomarySteps; usual > 0 {
				ratios["all/quarter-mm"] = append(ratios["all/quarter-mm"], n/float64(usual))
			}
		}
	}
	for name, r := range ratios {
		slices.Sort(r)
		b.ReportMetric(r[len(r)/2], name)
		b.ReportMetric(float64(len(r)), name+"-cases")
	}
}

// BenchmarkSeat is the time for the seat of 40 mm on 0.02 dials, comparisons included. The aim is under 5 ms.
func BenchmarkSeat(b *testing.B) {
	r := seat()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Fewest(r); err != nil {
			b.Fatal(err)
		}
	}
}
