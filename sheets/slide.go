package sheets

import (
	"slices"

	"catchplate/planner/plan"
	"catchplate/sheets/draw"
)

// worded is a part with the dials on cards and in tables by the names that they bear: while a lathe mills, the plan reads its cross slide as x, the vertical slide as y
// and the saddle as z. Noughts and cuts keep the letters, for they say where things are.
func worded(p *plan.Part) *plan.Part {
	out := *p
	out.Setups = slices.Clone(p.Setups)
	for i := range out.Setups {
		s := &out.Setups[i]
		if s.MachineKind != plan.OnSlide {
			continue
		}
		s.Operations = slices.Clone(s.Operations)
		for k := range s.Operations {
			wordDials(s, &s.Operations[k])
		}
	}
	return &out
}

func wordDials(s *plan.Setup, op *plan.Operation) {
	op.Card, op.Holes = slices.Clone(op.Card), slices.Clone(op.Holes)
	for i := range op.Card {
		op.Card[i].Dial = draw.DialName(s, op.Card[i].Dial)
	}
	for i := range op.Holes {
		h := &op.Holes[i]
		h.X.Dial, h.Y.Dial = draw.DialName(s, h.X.Dial), draw.DialName(s, h.Y.Dial)
	}
	if op.Steps != nil {
		t := *op.Steps
		t.AcrossDial, t.DepthDial = draw.DialName(s, t.AcrossDial), draw.DialName(s, t.DepthDial)
		op.Steps = &t
	}
}
