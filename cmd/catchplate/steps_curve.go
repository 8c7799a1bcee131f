package main

import (
	"math"

	"catchplate/planner/numbers/steps"
	"catchplate/planner/plan"
)

// stepShape is a form of curve that the steps command takes.
type stepShape struct {
	flag, name string
	origin     string   // where across and depth are nought
	needs      []string // the flags that give its size
	curve      func(f stepsFlags) (steps.Curve, error)
}

// stepShapes lists the forms, one flag each.
var stepShapes = []stepShape{
	{"concave", "A hollow", "the centre line, at the bottom", []string{"radius", "width"}, func(f stepsFlags) (steps.Curve, error) {
		return f.beside(steps.ConcaveSeat(f.radius.mm(), f.width.mm())), nil
	}},
	{"convex", "A round", "the centre line, at the crown", []string{"radius", "width"}, func(f stepsFlags) (steps.Curve, error) {
		return f.beside(steps.ConvexArc(f.radius.mm(), f.width.mm())), nil
	}},
	{"quarter-round", "A quarter round", "where the round leaves the face", []string{"radius"}, func(f stepsFlags) (steps.Curve, error) { return steps.QuarterRound(f.radius.mm()), nil }},
	{"cone", "A slope", "its shallow end", []string{"width", "drop"}, func(f stepsFlags) (steps.Curve, error) {
		return f.beside(steps.Cone(f.width.mm(), f.drop.mm())), nil
	}},
	{"ogee", "An ogee", "its shallow end", []string{"radius", "hollow", "drop"}, func(f stepsFlags) (steps.Curve, error) {
		return steps.Ogee(f.radius.mm(), f.hollow.mm(), f.drop.mm())
	}},
}

// shape is the form that was asked for.
func (f stepsFlags) shape() stepShape {
	for i, asked := range []bool{f.concave, f.convex, f.quarterRound, f.cone, f.ogee} {
		if asked {
			return stepShapes[i]
		}
	}
	return stepShape{}
}

// beside says what lies past the ends of a curve: air, or finished faces with --faces.
func (f stepsFlags) beside(c steps.Curve) steps.Curve {
	if f.faces {
		c.Left, c.Right = steps.Level, steps.Level
	}
	return c
}

// given are the sizes of the curve, by flag.
func (f stepsFlags) given() map[string]bool {
	return map[string]bool{"radius": f.radius.set, "width": f.width.set, "hollow": f.hollow.set, "drop": f.drop.set}
}

// checkShape refuses sizes that the form does not have, or lacks.
func (f stepsFlags) checkShape() error {
	s, given := f.shape(), f.given()
	for _, flag := range s.needs {
		if !given[flag] {
			return wrongUse("--%s wants --%s", s.flag, flag)
		}
		delete(given, flag)
	}
	for _, flag := range []string{"radius", "width", "hollow", "drop"} {
		if given[flag] {
			return wrongUse("--%s is no size of --%s", flag, s.flag)
		}
	}
	if f.faces && (f.quarterRound || f.ogee) {
		return wrongUse("--faces belongs to --concave, --convex and --cone: beside a quarter round and an ogee the faces stay in any case")
	}
	if r, w := f.radius.mm(), f.width.mm(); (f.concave || f.convex) && (r <= 0 || w <= 0 || w > 2*r) {
		return wrongUse("--radius %s and --width %s make no arc: give a radius above nought, and a width above nought and no more than twice the radius", inMM(r), inMM(w))
	}
	return nil
}

// pieces are a curve's pieces for the sketch.
func pieces(c steps.Curve) []plan.StepPiece {
	var out []plan.StepPiece
	for _, s := range c.Segments {
		switch s := s.(type) {
		case steps.Line:
			out = append(out, plan.StepPiece{FromAcrossMM: s.FromAcrossMM, FromDepthMM: s.FromDepthMM, ToAcrossMM: s.ToAcrossMM, ToDepthMM: s.ToDepthMM})
		case steps.Arc:
			depth := func(x float64) float64 {
				off := x - s.CentreAcrossMM
				half := math.Sqrt(math.Max(0, s.RadiusMM*s.RadiusMM-off*off))
				if s.Form == steps.Hollow {
					return s.CentreDepthMM + half
				}
				return s.CentreDepthMM - half
			}
			out = append(out, plan.StepPiece{FromAcrossMM: s.FromAcrossMM, FromDepthMM: depth(s.FromAcrossMM), ToAcrossMM: s.ToAcrossMM, ToDepthMM: depth(s.ToAcrossMM),
				RadiusMM: s.RadiusMM, CentreAcrossMM: s.CentreAcrossMM, CentreDepthMM: s.CentreDepthMM, Hollow: s.Form == steps.Hollow})
		}
	}
	return out
}
