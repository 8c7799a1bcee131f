package sheets

import (
	"fmt"

	"catchplate/planner/plan"
)

// checkDrawing refuses flat shapes, rings and crossing features that lie nowhere.
func checkDrawing(d plan.Drawing) error {
	if err := checkFlat(d.Flat); err != nil {
		return err
	}
	if err := checkHoles(d.Beside); err != nil {
		return err
	}
	for _, r := range d.Rings {
		if !sane(r.XMM, r.YMM, r.DiameterMM, r.StartDeg) || r.DiameterMM < 0 {
			return fmt.Errorf("the ring of %s lies nowhere", r.Feature)
		}
	}
	for _, x := range d.Crossed {
		if !sane(x.Z0, x.Z1, x.AngleDeg, x.RadiusMM, x.FloorMM, x.WidthMM, x.AxisZ) || x.RadiusMM < 0 || x.WidthMM < 0 || x.Count < 0 || x.Count > mostLike {
			return fmt.Errorf("%s %s is not a shape: %+v", x.Kind, x.Feature, x)
		}
	}
	return nil
}

// mostLike is more like flats than any part has.
const mostLike = 100

// checkHeld refuses what holds flat work, and the holes beside an axis, that lie nowhere.
func checkHeld(s plan.Setup) error {
	for _, f := range []*plan.Flat{s.FlatBefore, s.FlatAfter} {
		if err := checkFlat(f); err != nil {
			return err
		}
	}
	if err := checkHoles(s.Beside); err != nil {
		return err
	}
	if !sane(s.AcrossDeg, s.CentreX, s.CentreY) {
		return fmt.Errorf("the work lies nowhere")
	}
	for i, c := range s.Clamps {
		if !sane(c.XMM, c.YMM, c.ToeMM, c.AngleDeg) {
			return fmt.Errorf("clamp %d lies nowhere", i+1)
		}
	}
	for _, p := range s.Presses {
		if !sane(p.XMM, p.YMM, p.AngleDeg, p.WidthMM) {
			return fmt.Errorf("a jaw lies nowhere")
		}
	}
	if b := s.Bed; b != nil {
		for _, u := range b.Under {
			if !sane(u.X0, u.Y0, u.X1, u.Y1) {
				return fmt.Errorf("what carries the work lies nowhere")
			}
		}
		if !sane(b.HeightMM, b.GapMM) {
			return fmt.Errorf("the bed has no height")
		}
	}
	if b := s.Balance; b != nil && !sane(b.RadiusMM, b.AngleDeg) {
		return fmt.Errorf("the counterweight lies nowhere")
	}
	return nil
}

func checkFlat(f *plan.Flat) error {
	if f == nil {
		return nil
	}
	for i, s := range f.Outline {
		if !sane(s.X0, s.Y0, s.X1, s.Y1, s.RadiusMM, s.CentreX, s.CentreY) || s.RadiusMM < 0 {
			return fmt.Errorf("edge %d of the outline is not a shape: %+v", i+1, s)
		}
	}
	for _, s := range f.Slots {
		if !sane(s.X0, s.Y0, s.X1, s.Y1, s.WidthMM, s.FromZ, s.ToZ) || s.WidthMM < 0 {
			return fmt.Errorf("the slot %s is not a shape", s.Feature)
		}
	}
	if !sane(f.BackZ, f.FrontZ) {
		return fmt.Errorf("a face lies nowhere")
	}
	return checkHoles(f.Holes)
}

func checkHoles(holes []plan.FlatHole) error {
	for _, h := range holes {
		if !sane(h.XMM, h.YMM, h.DiameterMM, h.FromZ, h.ToZ, h.SinkMM) || h.DiameterMM < 0 || h.SinkMM < 0 {
			return fmt.Errorf("hole %d of %s is not a shape", h.Number, h.Feature)
		}
	}
	return nil
}
