package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
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

	partial bool // a pass on the way to the next step
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
			out = append(out, numbered{Cut: cut, label: fmt.Sprintf("run %d, step %d", n+1, len(out)+1), first: k == 0,
				resume: last || (k+1)%resumeEvery == 0 && k+1+resumeEvery/2 < len(cuts)})
		}
	}
	return out
}

// stepData is the table as the plan keeps it.
func (p *page) stepData(t steps.Table, r steps.Request, cuts []numbered, lengthMM float64) *plan.StepTable {
	d := &plan.StepTable{Cutter: plan.StepCutter{WidthMM: r.Cutter.WidthMM, NoseMM: r.Cutter.CornerRadiusMM}, AcrossDial: "saddle", DepthDial: "cross", AcrossLeft: true,
		LeftoverMM: r.LeftoverMM, WorstMM: t.WorstLeftoverMM, CrestBeforeMM: t.CrestBeforeMM,
		ConstantCount: len(t.ConstantStep.Cuts), ConstantMarks: t.ConstantStep.StepGrads, EqualCount: t.EqualStepsCount, CustomCount: t.CustomarySteps, Why: t.Why}
	if r.Cutter.Kind == steps.RoundNose {
		d.Cutter = plan.StepCutter{WidthMM: 2 * r.Cutter.RadiusMM, NoseMM: r.Cutter.RadiusMM}
	}
	d.Left, d.Right, d.WitnessAcrossMM = r.Curve.Left.String(), r.Curve.Right.String(), t.WitnessAcrossMM
	d.ProvenFewest = t.ProvenFewest && len(t.WitnessAcrossMM) >= len(t.Cuts) // what was ruled out by search alone nobody can look over
	d.Along = p.tool.Kind == partspec.Turning
	for _, s := range r.Curve.Segments {
		d.Curve = append(d.Curve, stepPiece(s))
	}
	for i, c := range cuts {
		if c.first {
			d.Runs = append(d.Runs, plan.StepRun{First: i + 1})
		}
		d.Runs[len(d.Runs)-1].Last = i + 1
		step := plan.Step{Label: c.label, AcrossMM: c.AcrossMM, DepthMM: c.DepthMM, CrestMM: c.CrestAfterMM, Partial: c.partial}
		if c.partial {
			step.CrestMM = 0
		}
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
		p := plan.StepPiece{FromAcrossMM: s.FromAcrossMM, ToAcrossMM: s.ToAcrossMM, RadiusMM: s.RadiusMM, CentreAcrossMM: s.CentreAcrossMM, CentreDepthMM: s.CentreDepthMM, Hollow: s.Form == steps.Hollow}
		p.FromDepthMM, p.ToDepthMM = pieceDepth(p, s.FromAcrossMM), pieceDepth(p, s.ToAcrossMM)
		return p
	}
	return plan.StepPiece{} // Segment is closed over lines and arcs
}

// pieceDepth is the depth of a piece at a place across.
func pieceDepth(p plan.StepPiece, across float64) float64 {
	if p.RadiusMM == 0 {
		return p.FromDepthMM + (p.ToDepthMM-p.FromDepthMM)*(across-p.FromAcrossMM)/(p.ToAcrossMM-p.FromAcrossMM)
	}
	off := across - p.CentreAcrossMM
	half := math.Sqrt(max(0, p.RadiusMM*p.RadiusMM-off*off))
	if p.Hollow {
		return p.CentreDepthMM + half
	}
	return p.CentreDepthMM - half
}
