package replay

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

// errorShare is the share of a tolerance that the error of measuring may be at worst (rule E-01: a tenth wanted, a quarter the floor).
const errorShare = 0.25

// checkMeasured holds that a place reached by measuring can be measured: an instrument of the workshop takes it, finely enough for its range.
func (w *walk) checkMeasured(cut plan.Cut, m motion) { w.checkMeasurable(cut, m.inside) }

// checkMeasurable is checkMeasured for a size inside or outside.
func (w *walk) checkMeasurable(cut plan.Cut, inside bool) {
	q := cut.ToMeasure
	if q == nil {
		return
	}
	if !(q.LowMM < q.HighMM) {
		w.failOp("measure", "cut %q is to end between %s and %s: there is nothing between", cut.Name, mm(q.LowMM), mm(q.HighMM))
		return
	}
	w.checkGuide(cut)
	size := q.HighMM
	if q.What == "position" {
		z0, z1 := w.body.Ends()
		size = z1 - z0
	}
	for _, i := range w.job.Workshop.Instruments {
		if takes(i, q.What, inside) && inRange(i, size) && float64(i.Uncertainty()) <= errorShare*(q.HighMM-q.LowMM)+same {
			return
		}
	}
	w.failOp("measure", "no instrument of the workshop takes a %s of %s finely enough for a range of %s (rule E-01)", q.What, mm(size), mm(q.HighMM-q.LowMM))
}

// takes reports whether a kind of instrument takes a kind of size.
func takes(i partspec.Instrument, what string, inside bool) bool {
	switch i.Kind {
	case partspec.Caliper:
		return true
	case partspec.Micrometer:
		return !inside || what != "diameter"
	case partspec.BoreGauge, partspec.PlugGauge:
		return inside && what == "diameter"
	case partspec.DepthMicrometer, partspec.Rule, partspec.DialIndicator:
		return what != "diameter"
	}
	return false
}

func inRange(i partspec.Instrument, size float64) bool {
	return size >= float64(i.Smallest)-same && (i.Largest == 0 || size <= float64(i.Largest)+same)
}
