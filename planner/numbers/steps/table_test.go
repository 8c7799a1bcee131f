package steps

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A seat is cut in two runs, each from the edge to the bottom; a back in two, from the crown outwards; a cone in one.
func TestRunsGoDeeperOneWay(t *testing.T) {
	r := seat()
	for _, c := range []struct {
		curve Curve
		want  []Run
	}{
		{ConcaveSeat(45, 40), []Run{{0, 24, 1, 1}, {48, 25, -1, 1}}},
		{ConvexArc(45, 40), []Run{{27, 0, -1, 1}, {28, 51, 1, 1}}},
		{Cone(20, 4), []Run{{0, 24, 1, 1}}},
		{Cone(20, -4), []Run{{24, 0, -1, 1}}},
		{Cone(5, 0), []Run{{0, 5, 1, 0}}},
	} {
		r.Curve = c.curve
		table, err := Fewest(r)
		require.NoError(t, err)
		assert.Equal(t, c.want, table.Runs)
	}
}

func TestCheckFindsEveryCorruption(t *testing.T) {
	r := seat()
	for want, corrupt := range map[string]func(*Table){
		"cut 3: the cutter passes the curve":        func(t *Table) { t.Cuts[2].DepthGrads++; t.Cuts[2].DepthMM = -3.58 },
		"cut 3: the millimetres do not agree":       func(t *Table) { t.Cuts[2].DepthGrads-- },
		"the cuts leave more than 0.05 mm":          func(t *Table) { t.Cuts = append(t.Cuts[:10], t.Cuts[11:]...) },
		"cut 2: not farther across":                 func(t *Table) { t.Cuts[1] = t.Cuts[0] },
		"the runs hold 48 cuts, the table 49":       func(t *Table) { t.Runs[1].Last++ },
		"run 1: the depth dial turns back":          func(t *Table) { t.Runs[0].Last++ },
		"run 2 points outside the table":            func(t *Table) { t.Runs[1].First++ },
		"the table has no cuts":                     func(t *Table) { t.Cuts = nil },
		"covers 2 witnesses":                        func(t *Table) { t.WitnessAcrossMM[7] = t.WitnessAcrossMM[6] + 0.01 },
		"there are 50 witnesses for 49 cuts":        func(t *Table) { t.WitnessAcrossMM = append(t.WitnessAcrossMM, 100) },
		"the leftover said, 0.04, is not the worst": func(t *Table) { t.WorstLeftoverMM = 0.04 },
		"the crest after cut 5 is not 0.01":         func(t *Table) { t.Cuts[4].CrestAfterMM = 0.01 },
		"the table is said to be proved and is not": func(t *Table) {
			c := t.ConstantStep
			t.Cuts, t.Runs, t.WorstLeftoverMM = c.Cuts, c.Runs, c.WorstLeftoverMM
		},
	} {
		table, err := Fewest(r)
		require.NoError(t, err)
		require.NoError(t, table.Check(r))
		corrupt(&table)
		assert.ErrorContains(t, table.Check(r), want, want)
	}
}

// After the roughing passes no finishing plunge is deeper than the most depth per cut, and each pass stays off the curve.
func TestRoughingLeavesFinishingCutsOfWorkshopDepth(t *testing.T) {
	c := newCases(11)
	for tried := 0; tried < 200; {
		r := c.request()
		r.MostDepthMM, r.StockAboveMM = c.decimalBetween(0.4, 2), c.decimalBetween(0, 3)
		table, err := Fewest(r)
		if err != nil {
			continue
		}
		tried++
		top := math.Inf(-1)
		for _, s := range r.Curve.Segments {
			from, to := segmentEnds(s)
			top = max(top, segmentHeight(s, from), segmentHeight(s, to))
			if a, ok := s.(Arc); ok && a.Form == Round && from <= a.CentreAcrossMM && a.CentreAcrossMM <= to {
				top = max(top, a.RadiusMM-a.CentreDepthMM)
			}
		}
		deepest := func(across float64) float64 { // how deep the stock has been cut there
			depth := -top - r.StockAboveMM
			for _, p := range table.Rough.Passes {
				if p.FromMM <= across && across <= p.ToMM {
					depth = max(depth, p.DepthMM)
				}
			}
			return depth
		}
		for _, cut := range table.Cuts {
			require.LessOrEqual(t, cut.DepthMM-deepest(cut.AcrossMM), r.MostDepthMM+oracleSlackMM, "%+v\n%+v", r, cut)
		}
		for _, p := range table.Rough.Passes {
			for _, x := range []float64{p.FromMM, (p.FromMM + p.ToMM) / 2, p.ToMM} {
				require.Zero(t, passes(r, Cut{AcrossMM: x, DepthMM: p.DepthMM + table.Rough.LeaveMM/2}), "%+v\n%+v", r, p)
			}
		}
	}
}

// The area left is that of thin slices between the edge and the curve.
func TestLeftoverArea(t *testing.T) {
	c := newCases(13)
	const slices = 20000
	for tried := 0; tried < 50; {
		r := c.request()
		table, err := Fewest(r)
		if err != nil {
			continue
		}
		tried++
		area := 0.0
		for _, s := range r.Curve.Segments {
			from, to := segmentEnds(s)
			for n := range slices {
				x := from + (to-from)*(float64(n)+0.5)/slices
				top := math.Inf(1)
				for _, cut := range table.Cuts {
					top = min(top, edge(r.Cutter, x-cut.AcrossMM)-cut.DepthMM)
				}
				if !math.IsInf(top, 1) {
					area += (top - segmentHeight(s, x)) * (to - from) / slices
				}
			}
		}
		const sliceError = 0.01 // jumps of sharp steps and ends at a quarter turn fall within slices
		assert.InDelta(t, area, table.LeftoverAreaMM2, sliceError*(1+area), "%+v", r)
	}
}

func TestFilingMinutes(t *testing.T) {
	table := Table{LeftoverAreaMM2: 0.75}
	least, most, err := table.FilingMinutes(24, FilingSteelMM3PerMin)
	require.NoError(t, err)
	assert.Equal(t, 0.15, least)
	assert.Equal(t, 0.6, most)
	_, _, err = table.FilingMinutes(0, FilingSteelMM3PerMin)
	assert.Error(t, err)
}

// A diameter-reading dial moves the slide by half of what it says: the same table as on a travel dial of half the graduation.
func TestDiameterDial(t *testing.T) {
	r := seat()
	r.Depth = Axis{GraduationMM: 0.04, Reads: ReadsDiameter}
	table, err := Fewest(r)
	require.NoError(t, err)
	plain, err := Fewest(seat())
	require.NoError(t, err)
	assert.Equal(t, plain.Cuts, table.Cuts)
}

// Inch dials stand at exact places: 0.001 in is 0.0254 mm.
func TestInchDial(t *testing.T) {
	r := seat()
	r.Across.GraduationMM = 0.0254
	table, err := Fewest(r)
	require.NoError(t, err)
	assert.NoError(t, table.Check(r))
	for _, c := range table.Cuts {
		assert.Equal(t, math.Round(float64(c.AcrossGrads)*254)/10000, c.AcrossMM)
	}
}

// Moving the zero of both dials by whole graduations moves the readings and nothing else.
func TestTouchOffElsewhere(t *testing.T) {
	r := seat()
	plain, err := Fewest(r)
	require.NoError(t, err)
	r.Across.OriginMM, r.Depth.OriginMM = -20, -4.7
	moved, err := Fewest(r)
	require.NoError(t, err)
	require.Len(t, moved.Cuts, len(plain.Cuts))
	for n, c := range moved.Cuts {
		assert.Equal(t, plain.Cuts[n].AcrossGrads+1000, c.AcrossGrads)
		assert.Equal(t, plain.Cuts[n].DepthGrads+235, c.DepthGrads)
		assert.InDelta(t, plain.Cuts[n].CrestAfterMM, c.CrestAfterMM, tieMM)
	}
}

// Past 45 degrees the depth dial leads in the constant table, and the cuts say so.
func TestAxesSwapPast45Degrees(t *testing.T) {
	r := seat()
	r.Curve = QuarterRound(10)
	table, err := Fewest(r)
	require.NoError(t, err)
	require.Len(t, table.ConstantStep.Zones, 2)
	assert.False(t, table.ConstantStep.Zones[0].DepthLeads)
	assert.True(t, table.ConstantStep.Zones[1].DepthLeads)
	first, last := table.Cuts[0], table.Cuts[len(table.Cuts)-1]
	assert.False(t, first.Steep)
	assert.True(t, last.Steep)
}

// A tie: on a 3-4-5 cone, sharp steps of 0.04 by 0.03 leave exactly 0.024. Allowed exactly that, the table takes it.
func TestLeftoverMetToTheLastDecimal(t *testing.T) {
	r := Request{Curve: Cone(0.4, 0.3), Cutter: Cutter{Kind: SquareEnd, WidthMM: 1}, LeftoverMM: 0.024,
		Across: Axis{GraduationMM: 0.04, Reads: ReadsTravel, OriginMM: 0.5}, Depth: Axis{GraduationMM: 0.03, Reads: ReadsTravel}}
	table, err := Fewest(r)
	require.NoError(t, err)
	assert.Len(t, table.Cuts, 10)
	assert.InDelta(t, 0.024, table.WorstLeftoverMM, tieMM)
	assert.NoError(t, table.Check(r))
	r.LeftoverMM = 0.0239
	_, err = Fewest(r)
	assert.Error(t, err)
}

// Work may be to size already where the first and last cuts would go: the part of the table that is left says no more than its own witnesses do.
func TestPartOfATableSaysWhatItsOwnWitnessesDo(t *testing.T) {
	r := seat()
	whole, err := Fewest(r)
	require.NoError(t, err)
	require.Len(t, whole.WitnessAcrossMM, 49)
	part := whole.Part(2, 45)
	assert.Equal(t, whole.Cuts[2:46], part.Cuts)
	assert.Equal(t, whole.WitnessAcrossMM[2:46], part.WitnessAcrossMM)
	assert.Equal(t, []Run{{0, 22, 1, 1}, {43, 23, -1, 1}}, part.Runs)
	assert.True(t, part.ProvenFewest)
	assert.False(t, part.Mirrored, "two cuts are gone on the left and three on the right")
	assert.Contains(t, part.Why, "two of 44 chosen points of the curve, so no table is shorter than 44")
	assert.Equal(t, whole, whole.Part(0, 48))
	assert.Empty(t, whole.Part(49, 48).Cuts)

	whole.WitnessAcrossMM = whole.WitnessAcrossMM[1:] // as after a proof by search
	part = whole.Part(1, 48)
	assert.False(t, part.ProvenFewest)
	assert.Contains(t, part.Why, "No table has fewer than 47 cuts; whether 48 is the fewest was not settled.")
}
