package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/planner/numbers/steps"
	"catchplate/planner/plan"
	"catchplate/planner/tables"
)

// resumeEvery is how many steps lie between two places at which a person may stop, check and resume: few enough to cut again after a
// miscount. Common practice, no source.
const resumeEvery = 8

// numbered is a cut of a step table with the label that its lines on the card carry.
type numbered struct {
	steps.Cut
	label  string
	first  bool // of its run
	resume bool
}

// inOrder lists the cuts as they are cut: run after run, in each of which both dials go one way. Steps are numbered through all runs.
func inOrder(t steps.Table) []numbered {
	var out []numbered
	for n, run := range t.Runs {
		cuts := t.Cuts[min(run.First, run.Last) : max(run.First, run.Last)+1]
		if run.First > run.Last {
			cuts = slices.Clone(cuts)
			slices.Reverse(cuts)
		}
		for k, cut := range cuts {
			last := k == len(cuts)-1
			out = append(out, numbered{cut, fmt.Sprintf("run %d, step %d", n+1, len(out)+1), k == 0, last || (k+1)%resumeEvery == 0 && k+1+resumeEvery/2 < len(cuts)})
		}
	}
	return out
}

// stepData is the table as the plan keeps it.
func (p *page) stepData(t steps.Table, r steps.Request, cuts []numbered, lengthMM float64) *plan.StepTable {
	d := &plan.StepTable{Cutter: plan.StepCutter{WidthMM: r.Cutter.WidthMM, NoseMM: r.Cutter.CornerRadiusMM}, AcrossDial: "saddle", DepthDial: "cross", AcrossLeft: true,
		LeftoverMM: r.LeftoverMM, WorstMM: t.WorstLeftoverMM, CrestBeforeMM: t.CrestBeforeMM, ProvenFewest: t.ProvenFewest,
		ConstantCount: len(t.ConstantStep.Cuts), ConstantMarks: t.ConstantStep.StepGrads, EqualCount: t.EqualStepsCount, CustomCount: t.CustomarySteps, Why: t.Why}
	if r.Cutter.Kind == steps.RoundNose {
		d.Cutter = plan.StepCutter{WidthMM: 2 * r.Cutter.RadiusMM, NoseMM: r.Cutter.RadiusMM}
	}
	for _, s := range r.Curve.Segments {
		d.Curve = append(d.Curve, stepPiece(s))
	}
	for i, c := range cuts {
		if c.first {
			d.Runs = append(d.Runs, plan.StepRun{First: i + 1})
		}
		d.Runs[len(d.Runs)-1].Last = i + 1
		step := plan.Step{Label: c.label, AcrossMM: c.AcrossMM, DepthMM: c.DepthMM, CrestMM: c.CrestAfterMM}
		if c.resume {
			step.Stop = p.diameter(p.radiusAt(c.DepthGrads))
		}
		d.Steps = append(d.Steps, step)
	}
	rate := float64(steps.FilingSteelMM3PerMin)
	if soft(p.c.Part.Material.Family) {
		rate = steps.FilingBrassMM3PerMin
	}
	if least, most, err := t.FilingMinutes(lengthMM, rate); err == nil {
		d.FileLeastMinutes, d.FileMostMinutes = least, most
	}
	return d
}

// soft reports whether a metal files easily.
func soft(family tables.Family) bool { return family == "brass" || family == "aluminium" }

// stepPiece is a piece of a stepped curve as data.
func stepPiece(s steps.Segment) plan.StepPiece {
	switch s := s.(type) {
	case steps.Line:
		return plan.StepPiece{FromAcrossMM: s.FromAcrossMM, FromDepthMM: s.FromDepthMM, ToAcrossMM: s.ToAcrossMM, ToDepthMM: s.ToDepthMM}
	case steps.Arc:
		out := -1.0 // the side of the centre on which the arc lies, in depth
		if s.Form == steps.Hollow {
			out = 1
		}
		depth := func(across float64) float64 {
			off := across - s.CentreAcrossMM
			return s.CentreDepthMM + out*math.Sqrt(max(0, s.RadiusMM*s.RadiusMM-off*off))
		}
		return plan.StepPiece{FromAcrossMM: s.FromAcrossMM, FromDepthMM: depth(s.FromAcrossMM), ToAcrossMM: s.ToAcrossMM, ToDepthMM: depth(s.ToAcrossMM),
			RadiusMM: s.RadiusMM, CentreAcrossMM: s.CentreAcrossMM, CentreDepthMM: s.CentreDepthMM, Hollow: s.Form == steps.Hollow}
	}
	return plan.StepPiece{} // Segment is closed over lines and arcs
}
