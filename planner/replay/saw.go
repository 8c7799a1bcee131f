package replay

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

// saw parts the work by hand: what stays is on the free side of the cut, whose face on that side is where the measured place says, or a kerf from
// the saddle's reading, which is its headstock side.
func (w *walk) saw(op plan.Operation, key cutKey) {
	c, err := findCutter(w.job.Workshop, op.Tool.ID, op.Tool.SizeMM)
	if err != nil || c.Kind != partspec.Saw {
		w.failOp("tool", "%q is no saw of the workshop", op.Tool.ID)
		return
	}
	if len(op.Cuts) != 1 {
		w.failOp("cuts", "sawing off is one cut; here are %d", len(op.Cuts))
		return
	}
	cut := op.Cuts[0]
	s, ok := w.read(stand{}, cut.To)
	if !ok || !s.hasZ {
		w.failOp("readings", "the place of the saw cut is not read")
		return
	}
	face := s.z + w.free()*float64(c.Kerf)
	if q := cut.ToMeasure; q != nil {
		if face < q.LowMM-sawGuide || face > q.HighMM+sawGuide {
			w.failOp("measure", "the saw is set to leave the work at %s, and it is to end between %s and %s", mm(face), mm(q.LowMM), mm(q.HighMM))
		}
		face = w.world.value(key, *q)
	}
	z0, z1 := w.body.Ends()
	if face <= z0+same || face >= z1-same {
		w.failOp("parting", "the saw cut at %s is beyond the work, which reaches from %s to %s", mm(face), mm(z0), mm(z1))
		return
	}
	if away := w.free() * (face - w.free()*float64(c.Kerf) - w.jawFace()); away < -same {
		w.failOp("clearance", "the saw cut reaches %s mm into what grips the work", mm(-away))
	}
	if w.free() > 0 {
		w.body = w.body.Keep(face, z1)
	} else {
		w.body = w.body.Keep(z0, face)
	}
	w.parted = true
	w.motion++
}

// sawGuide is how far the saddle's reading may lie beside the place that is measured when the work is sawn off: a saw is started by a line that the
// saddle scribes, to half a millimetre at best. Common practice, no source.
const sawGuide = 0.5
