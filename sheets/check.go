package sheets

import (
	"fmt"
	"math"

	"catchplate/planner/plan"
)

// mostMM is beyond any part: a larger figure is a fault of the plan, and no sketch could show it.
const mostMM = 1e6

// checkFigures refuses a plan whose shapes are not finite or run backwards: nothing could be drawn of it.
func checkFigures(p *plan.Plan) error {
	for _, part := range p.Parts {
		if err := checkSection(part.Drawing.Section); err != nil {
			return fmt.Errorf("drawing of %s: %w", part.Name, err)
		}
		if err := checkDrawing(part.Drawing); err != nil {
			return fmt.Errorf("drawing of %s: %w", part.Name, err)
		}
		for _, d := range part.Drawing.Dims {
			if !sane(d.Z0, d.Z1, d.R, d.X0, d.Y0, d.X1, d.Y1) {
				return fmt.Errorf("drawing of %s: dimension %q lies nowhere", part.Name, d.Text)
			}
		}
		for _, s := range part.Setups {
			if err := checkSetup(s); err != nil {
				return fmt.Errorf("%s, holding %d: %w", part.Name, s.Number, err)
			}
		}
	}
	return nil
}

func checkSetup(s plan.Setup) error {
	if s.FreeEnd != "left" && s.FreeEnd != "right" {
		return fmt.Errorf("the free end is %q, not left or right", s.FreeEnd)
	}
	if g := s.Grip; !sane(g.FromZ, g.ToZ, g.RadiusMM, s.StickOutMM) {
		return fmt.Errorf("the grip lies nowhere")
	}
	if err := checkHeld(s); err != nil {
		return err
	}
	for _, op := range s.Operations {
		for _, z := range op.Zeros {
			if !sane(z.ReferenceMM) {
				return fmt.Errorf("operation %d: a zero of the %s dial lies nowhere", op.Number, z.Dial)
			}
		}
		if err := checkSteps(op); err != nil {
			return fmt.Errorf("operation %d: %w", op.Number, err)
		}
	}
	if err := checkSection(s.Before); err != nil {
		return fmt.Errorf("shape before: %w", err)
	}
	if err := checkSection(s.After); err != nil {
		return fmt.Errorf("shape after: %w", err)
	}
	return nil
}

func checkSteps(op plan.Operation) error {
	t := op.Steps
	if t == nil {
		return nil
	}
	for _, r := range stepRows(op) {
		if r.across.Dial == "" || r.depth.Dial == "" {
			return fmt.Errorf("the card has no lines for the step %q", r.step.Label)
		}
	}
	if !sane(t.WorstMM, t.Cutter.WidthMM, t.Cutter.NoseMM) || t.WorstMM < 0 || t.Cutter.NoseMM < 0 || t.Cutter.WidthMM < 2*t.Cutter.NoseMM {
		return fmt.Errorf("the cutter or the crests of the step table have no size")
	}
	for i, p := range t.Curve {
		if !sane(p.FromAcrossMM, p.FromDepthMM, p.ToAcrossMM, p.ToDepthMM, p.RadiusMM, p.CentreAcrossMM, p.CentreDepthMM) || p.ToAcrossMM <= p.FromAcrossMM || p.RadiusMM < 0 {
			return fmt.Errorf("piece %d of the stepped curve is not a shape: %+v", i+1, p)
		}
	}
	for _, s := range t.Steps {
		if !sane(s.AcrossMM, s.DepthMM, s.CrestMM) {
			return fmt.Errorf("%s lies nowhere", s.Label)
		}
	}
	return nil
}

func checkSection(s plan.Section) error {
	for _, curve := range [][]plan.Segment{s.Outer, s.Inner} {
		for i, seg := range curve {
			if !sane(seg.Z0, seg.R0, seg.Z1, seg.R1, seg.RadiusMM, seg.CentreZ, seg.CentreR) || seg.R0 < 0 || seg.R1 < 0 || seg.RadiusMM < 0 {
				return fmt.Errorf("segment %d is not a shape: %+v", i+1, seg)
			}
			if seg.Z1 < seg.Z0 {
				return fmt.Errorf("segment %d runs backwards, from %g to %g", i+1, seg.Z0, seg.Z1)
			}
		}
	}
	return nil
}

func sane(figures ...float64) bool {
	for _, f := range figures {
		if math.IsNaN(f) || math.Abs(f) > mostMM {
			return false
		}
	}
	return true
}
