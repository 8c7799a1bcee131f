package replay

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/numbers/steps"
	"catchplate/planner/plan"
)

// stepCases are random curves, cutters and dials of workshop size: chains of lines and arcs, kinks and all.
type stepCases struct{ *rand.Rand }

func oneOf[T any](c stepCases, from ...T) T { return from[c.IntN(len(from))] }

// decimal has two decimals, as drawings do.
func (c stepCases) decimal(lo, hi float64) float64 {
	return math.Round((lo+c.Float64()*(hi-lo))*100) / 100
}

func (c stepCases) request(t *testing.T) steps.Request {
	axis := func() steps.Axis {
		return steps.Axis{GraduationMM: oneOf(c, 0.02, 0.025, 0.05, 0.0254, 0.1), Reads: steps.ReadsTravel, OriginMM: oneOf(c, 0, 0, 0, c.decimal(-5, 5), c.Float64())}
	}
	wide := c.decimal(1, 4)
	cutter := oneOf(c, steps.Cutter{Kind: steps.RoundNose, RadiusMM: oneOf(c, 0.4, 0.8, 1, 1.5, 2, 3)}, steps.Cutter{Kind: steps.SquareEnd, WidthMM: wide},
		steps.Cutter{Kind: steps.SquareEnd, WidthMM: wide, CornerRadiusMM: oneOf(c, 0.2, 0.4, wide/2)})
	return steps.Request{Curve: c.curve(t), Cutter: cutter, Across: axis(), Depth: axis(), LeftoverMM: oneOf(c, 0.05, 0.08, 0.1, 0.15, c.decimal(0.03, 0.3))}
}

// curve is one of the shop's own, or a chain.
func (c stepCases) curve(t *testing.T) steps.Curve {
	radius := c.decimal(3, 30)
	width := c.decimal(1, 2*math.Min(radius, 3.5))
	switch c.IntN(8) {
	case 0:
		return steps.ConcaveSeat(radius, width)
	case 1:
		return steps.Bead(radius, width)
	case 2:
		return steps.Neck(radius, width)
	case 3:
		round, hollow := c.decimal(1, 6), c.decimal(1, 6)
		curve, err := steps.Ogee(round, hollow, c.decimal(0.5, math.Min(4, hollow+round)))
		require.NoError(t, err)
		return curve
	}
	ends := []steps.Beyond{steps.Air, steps.Level, steps.Wall}
	return steps.Curve{Segments: c.chain(2 + c.IntN(3)), Left: oneOf(c, ends...), Right: oneOf(c, ends...)}
}

// chain joins lines and arcs anyhow.
func (c stepCases) chain(n int) (pieces []steps.Segment) {
	x, depth := c.decimal(-5, 5), c.decimal(-2, 2)
	for range n {
		to := x + c.decimal(0.5, 3)
		if c.IntN(2) == 0 {
			next := depth + c.decimal(-2, 2)
			pieces = append(pieces, steps.Line{FromAcrossMM: x, FromDepthMM: depth, ToAcrossMM: to, ToDepthMM: next})
			x, depth = to, next
			continue
		}
		arc := steps.Arc{RadiusMM: c.decimal(to-x, 20), FromAcrossMM: x, ToAcrossMM: to, Form: oneOf(c, steps.Round, steps.Hollow)}
		middle := c.decimal(to-arc.RadiusMM, x+arc.RadiusMM)
		arc.CentreAcrossMM = math.Min(math.Max(middle, to-arc.RadiusMM), x+arc.RadiusMM)
		arc.CentreDepthMM = depth - pieceDepth(asPiece(arc), x)
		pieces = append(pieces, arc)
		x, depth = to, pieceDepth(asPiece(arc), to)
	}
	return pieces
}

// asPiece is a piece of a curve as a plan tells it.
func asPiece(s steps.Segment) plan.StepPiece {
	if l, ok := s.(steps.Line); ok {
		return plan.StepPiece{FromAcrossMM: l.FromAcrossMM, FromDepthMM: l.FromDepthMM, ToAcrossMM: l.ToAcrossMM, ToDepthMM: l.ToDepthMM}
	}
	a := s.(steps.Arc)
	p := plan.StepPiece{FromAcrossMM: a.FromAcrossMM, ToAcrossMM: a.ToAcrossMM, RadiusMM: a.RadiusMM, CentreAcrossMM: a.CentreAcrossMM, CentreDepthMM: a.CentreDepthMM, Hollow: a.Form == steps.Hollow}
	p.FromDepthMM, p.ToDepthMM = pieceDepth(p, a.FromAcrossMM), pieceDepth(p, a.ToAcrossMM)
	return p
}

// asFigure is a table as a plan tells it, and the dials that it counts on.
func asFigure(r steps.Request, table steps.Table) (stepFigure, grid) {
	t := &plan.StepTable{Left: r.Curve.Left.String(), Right: r.Curve.Right.String(), LeftoverMM: r.LeftoverMM, WorstMM: table.WorstLeftoverMM, WitnessAcrossMM: table.WitnessAcrossMM,
		Cutter: plan.StepCutter{WidthMM: r.Cutter.WidthMM, NoseMM: r.Cutter.CornerRadiusMM}}
	if r.Cutter.Kind == steps.RoundNose {
		t.Cutter = plan.StepCutter{WidthMM: 2 * r.Cutter.RadiusMM, NoseMM: r.Cutter.RadiusMM}
	}
	for _, s := range r.Curve.Segments {
		t.Curve = append(t.Curve, asPiece(s))
	}
	for _, cut := range table.Cuts {
		t.Steps = append(t.Steps, plan.Step{AcrossMM: cut.AcrossMM, DepthMM: cut.DepthMM, CrestMM: cut.CrestAfterMM})
	}
	return stepFigure{t, t.Cutter.WidthMM/2 - t.Cutter.NoseMM, t.Cutter.NoseMM}, grid{r.Across.OriginMM, r.Depth.OriginMM, r.Across.GraduationMM, r.Depth.GraduationMM}
}

// The proof of every shortest table holds when it is looked over, chains of pieces and all. A table that says it needs one step more, and names one place more, is refuted.
func TestFewestIsLookedOver(t *testing.T) {
	c := stepCases{rand.New(rand.NewPCG(45, 6))}
	const wanted = 1000
	chains, caught := 0, 0
	for n := 0; n < wanted; {
		r := c.request(t)
		table, err := steps.Fewest(r)
		if err != nil || len(table.WitnessAcrossMM) < len(table.Cuts) {
			continue
		}
		n++
		if len(r.Curve.Segments) > 1 {
			chains++
		}
		f, g := asFigure(r, table)
		require.False(t, f.wrong(), "%+v", r)
		require.Empty(t, f.refuted(g), "%+v", r)

		k := c.IntN(len(table.WitnessAcrossMM) + 1)
		from, to := f.t.Curve[0].FromAcrossMM, f.t.Curve[len(f.t.Curve)-1].ToAcrossMM
		if k > 0 {
			from = table.WitnessAcrossMM[k-1]
		}
		if k < len(table.WitnessAcrossMM) {
			to = table.WitnessAcrossMM[k]
		}
		f.t.WitnessAcrossMM = slices.Insert(slices.Clone(table.WitnessAcrossMM), k, (from+to)/2)
		f.t.Steps = append(f.t.Steps, plan.Step{})
		if f.refuted(g) != "" {
			caught++
		}
	}
	assert.Greater(t, chains, wanted/3)
	assert.Greater(t, caught, wanted*98/100, "the others hang on a cut that touches the curve, which is left to rational numbers")
}
