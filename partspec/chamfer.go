package partspec

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
)

var chamferShape = shapeOf{attrs: []attr{need("edge", kindWord), need("size", kindSize), may("angle", kindAngle), may("note", kindText)}}

// defaultChamferAngle is from the axis, when none is written.
const defaultChamferAngle = 45 * units.Degree

// chamfer builds a cone that breaks an outer edge.
func (s *shaper) chamfer(e *entry) Feature {
	f := &Chamfer{FeatureHead: s.head(e), Size: s.size(e, "size", useEdge), Angle: s.chamferAngle(e)}
	r, ok := s.rim(e)
	if !ok || e.broken {
		return nil
	}
	if !r.Convex {
		s.c.fail(e, e.at("edge"), fmt.Sprintf("%s is a corner, not an edge", e.text("edge")),
			"A chamfer breaks an edge that stands out; a corner can have a fillet.")
		return nil
	}
	f.Edge = r.Edge
	if cone, ok := s.done[r.Feature].(*Taper); ok && f.risesOn(cone) && math.Tan(cone.HalfAngle.Radians()) > steepCone*math.Tan(f.Angle.Radians()) {
		s.c.fail(e, e.at("edge"), fmt.Sprintf("%s hardly stands out: the taper rises on from it by %s", e.text("edge"), cone.HalfAngle),
			"A chamfer of %s and the cone meet far from the edge, at no sure place. Say angle = %s or more, or leave it out: sharp edges are broken with a file anyway.", f.Angle,
			steeper(cone.HalfAngle))
		return nil
	}
	s.rims[e.name] = r
	return f
}

// steepCone is how steeply a taper may rise on from a chamfer at its end, as a share of the chamfer's own slope: the chamfer then comes out at most twice as long as
// it is drawn. Ours, no source.
const steepCone = 0.5

// steeper is the least angle, in whole degrees, of a chamfer at the end of a cone.
func steeper(cone units.Angle) units.Angle {
	return units.Angle(math.Ceil(math.Atan(math.Tan(cone.Radians())/steepCone)*180/math.Pi)) * units.Degree
}

// risesOn reports whether the cone leads away from the edge: from its small end outside, from its large end in a hole.
func (f *Chamfer) risesOn(cone *Taper) bool {
	return (f.Edge.Axial == cone.LargeAt) != cone.Inside
}

func (s *shaper) chamferAngle(e *entry) units.Angle {
	if !e.known("angle") {
		return defaultChamferAngle
	}
	angle := e.angle("angle")
	if angle < 1 || angle > 89 {
		s.c.fail(e, e.at("angle"), "A chamfer has no such angle",
			"It is counted from the axis, from 1 to 89 degrees; 45 when none is written.")
	}
	return angle
}

// radial is how far the chamfer reaches across the axis.
func (f *Chamfer) radial() units.Length {
	return f.Size.Value * units.Length(math.Tan(f.Angle.Radians()))
}
