package replay

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// checkStepTable holds the table of a stepped curve, which the sheet prints beside the card: its places are those of the cuts, its cutter is the tool, its curve is one line
// as round as the drawing has it, and the crests that it tells are those that its steps leave. What the steps take off the work is proved by the cuts themselves. Last it
// looks the proof over that there are no fewer steps.
func (w *walk) checkStepTable(op plan.Operation) {
	t := op.Steps
	if t == nil || w.known.curves.has(stepsKey(op)) {
		return
	}
	g, ok := w.gridOf(op)
	if !ok || !w.checkStepCutter(op) || !w.checkStepCurve(op) {
		return
	}
	f := stepFigure{t, t.Cutter.WidthMM/2 - t.Cutter.NoseMM, t.Cutter.NoseMM}
	if f.wrong() {
		w.failOp("step table", "its curve is no chain of lines and arcs that join, between air, level faces and walls")
		return
	}
	if !w.checkCrests(f) {
		return
	}
	if t.ProvenFewest {
		if why := f.refuted(g); why != "" {
			w.failOp("step table", "that no table has fewer than %d steps is not so: %s", t.Count(), why)
			return
		}
	}
	w.known.curves.add(stepsKey(op))
}

func stepsKey(op plan.Operation) string { return "steps of " + op.ID }

// grid is where the two dials can put the cutter: at whole graduations from one step.
type grid struct {
	across, depth         float64 // a place of the cutter on both
	acrossGrad, depthGrad float64
}

// gridOf holds that every step of a table is a cut, at the places that its readings tell, and no cut of a run is left out of the table.
func (w *walk) gridOf(op plan.Operation) (grid, bool) {
	t := op.Steps
	across, ok1 := w.machine.Dial(t.AcrossDial)
	depth, ok2 := w.machine.Dial(t.DepthDial)
	if !ok1 || !ok2 || len(t.Steps) == 0 {
		w.failOp("step table", "it has no steps, or counts on dials that %s has not: %q and %q", w.machine.Name, t.AcrossDial, t.DepthDial)
		return grid{}, false
	}
	g := grid{t.Steps[0].AcrossMM, t.Steps[0].DepthMM, graduationOf(across), graduationOf(depth)}
	var first map[string][2]int64
	for _, s := range t.Steps {
		i := slices.IndexFunc(op.Cuts, func(c plan.Cut) bool { return c.Name == s.Label })
		if i < 0 {
			w.failOp("step table", "%q is none of the cuts", s.Label)
			return g, false
		}
		counts := countsOf(op.Cuts[i])
		if first == nil {
			first = counts
		}
		off := math.Abs(s.AcrossMM - g.across - float64(counts[t.AcrossDial][1]-first[t.AcrossDial][1])*g.acrossGrad)
		if down := math.Abs(s.DepthMM - g.depth - float64(counts[t.DepthDial][1]-first[t.DepthDial][1])*g.depthGrad); math.Max(off, down) > same {
			w.failOp("step table", "%q does not lie where its readings put it beside the first", s.Label)
			return g, false
		}
	}
	steps := slices.DeleteFunc(slices.Clone(op.Cuts), func(c plan.Cut) bool { return len(runOf(c)) < 3 || runOf(c)[:3] != "run" })
	if len(steps) != len(t.Steps) {
		w.failOp("step table", "it has %d steps, the cuts are %d", len(t.Steps), len(steps))
		return g, false
	}
	return g, true
}

// checkStepCutter holds that the cutter of a table is the tool. A knife that is fed along stands for a blade as wide as it goes.
func (w *walk) checkStepCutter(op plan.Operation) bool {
	c, err := findCutter(w.job.Workshop, op.Tool.ID, op.Tool.SizeMM)
	if err != nil {
		return true // told where the tool is looked for
	}
	wide, nose := float64(c.Width), float64(c.NoseRadius)
	switch c.Kind {
	case partspec.RoundNose:
		wide, nose = 2*float64(c.Radius), float64(c.Radius)
	case partspec.EndMill:
		wide, nose = c.size, 0
	case partspec.BallNose:
		wide, nose = c.size, c.size/2
	case partspec.Turning:
		wide = op.Steps.Cutter.WidthMM
	}
	if math.Abs(wide-op.Steps.Cutter.WidthMM) > same || math.Abs(nose-op.Steps.Cutter.NoseMM) > same || op.Steps.Along != (c.Kind == partspec.Turning) {
		w.failOp("step table", "its cutter is %s wide with a nose of %s; that is not %s", mm(op.Steps.Cutter.WidthMM), mm(op.Steps.Cutter.NoseMM), c.Name)
		return false
	}
	return true
}

// checkStepCurve holds that the arcs of a table's curve are those of the drawing.
func (w *walk) checkStepCurve(op plan.Operation) bool {
	var drawn []float64
	switch f := w.part.Feature(op.Feature).(type) {
	case *partspec.Profile:
		for _, s := range f.Segments {
			if s.Arc {
				drawn = append(drawn, float64(s.Radius))
			}
		}
	case *partspec.Fillet:
		drawn = append(drawn, float64(f.Radius.Mid()))
	case *partspec.Seat:
		drawn = append(drawn, float64(f.Radius.Mid()), float64(f.Radius.Value))
	case *partspec.SideSeat:
		drawn = append(drawn, float64(f.Radius.Mid()))
	default:
		return true // that it is stepped at all is refused elsewhere
	}
	for _, p := range op.Steps.Curve {
		if p.RadiusMM != 0 && !slices.ContainsFunc(drawn, func(r float64) bool { return math.Abs(r-p.RadiusMM) <= same }) {
			w.failOp("step table", "its curve has an arc of R%s, and the drawing has none", mm(p.RadiusMM))
			return false
		}
	}
	return true
}

// checkCrests holds the crests that a table tells: each between two steps is no lower than the metal that both leave, none is higher than the worst, and that is no more
// than may be left.
func (w *walk) checkCrests(f stepFigure) bool {
	steps := slices.DeleteFunc(slices.Clone(f.t.Steps), func(s plan.Step) bool { return s.Partial })
	slices.SortStableFunc(steps, func(a, b plan.Step) int { return cmpFloat(a.AcrossMM, b.AcrossMM) })
	for i, s := range steps {
		if s.CrestMM > f.t.WorstMM+figure || s.CrestMM < 0 {
			w.failOp("step table", "the crest at %q is %s, and the worst is said to be %s", s.Label, mm(s.CrestMM), mm(f.t.WorstMM))
			return false
		}
		if i+1 == len(steps) {
			break
		}
		if left := f.crest(s, steps[i+1]); left > s.CrestMM+figure {
			w.failOp("step table", "between %q and %q %s is left, not %s", s.Label, steps[i+1].Label, mm(left), mm(s.CrestMM))
			return false
		}
	}
	if f.t.CrestBeforeMM > f.t.WorstMM+figure || f.t.WorstMM > f.t.LeftoverMM+same {
		w.failOp("step table", "the worst crest, %s, is not the highest, or more than the %s that may be left", mm(f.t.WorstMM), mm(f.t.LeftoverMM))
		return false
	}
	return true
}

func cmpFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
