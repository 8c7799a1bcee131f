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
	s.rims[e.name] = r
	return f
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
