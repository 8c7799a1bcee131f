package partspec

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// checkHeads asks about clearance holes over which no hexagon head of their screw turns: it meets what stands on the face, a fillet or the rim. Counterbored and
// countersunk holes have the room that is drawn.
func (s *shaper) checkHeads() {
	for _, e := range s.entries {
		f, ok := s.done[e.name].(*Holes)
		if !ok || e.broken || f.Screw == "" || f.Sink != nil {
			continue
		}
		t, err := tables.FindThread(f.Screw)
		if err != nil || t.HexAF == 0 {
			continue
		}
		head := t.HexAF * hexagonCornersPerFlats / 2
		room, what := s.headRoom(f)
		if room < head-sameLength {
			s.c.report(question(e.head(), fmt.Sprintf("Do the heads of the screws in %s find room?", e.title()),
				"A hexagon of %s is %s across corners and needs %s from the hole's centre; %s is %s from it.",
				t.Designation, s.shown(2*head), s.shown(head), what, s.shown(max(0, room))))
		}
	}
}

// headRoom is the clear radius around the holes on the roomier of their two faces, and what ends it.
func (s *shaper) headRoom(f *Holes) (room units.Length, what string) {
	if s.flat {
		return s.flatRoom(f)
	}
	for _, end := range []End{Left, Right} {
		if r, w := s.faceRoom(f, end); r > room || what == "" {
			room, what = r, w
		}
	}
	return room, what
}

func (s *shaper) flatRoom(f *Holes) (room units.Length, what string) {
	room = units.Length(math.Inf(1))
	if s.part.Outline == nil {
		return room, ""
	}
	for _, p := range f.Places {
		if inside, edge := s.part.Outline.nearestEdge(p.X.Value, p.Y.Value); inside < room {
			room, what = inside, fmt.Sprintf("the edge %q", edge.Name)
		}
	}
	return room, what
}

// faceRoom is the clear radius on the face at one end of the holes: to the rim outward, and inward to what stands on the face and the fillet at its foot.
func (s *shaper) faceRoom(f *Holes, end End) (units.Length, string) {
	r, own := f.ring(), f.largest()
	z := f.Span.At(end)
	rim := radiusBeside(s.outsidePieces(), z, end.Other()) - (r.outer - own)
	stands := radiusBeside(s.outsidePieces(), z, end)
	what := "what stands on the face"
	for _, e := range s.entries {
		if fillet, ok := s.done[e.name].(*Fillet); ok && !fillet.Edge.Convex && !fillet.Edge.Inside && (fillet.Edge.Z-z).Abs() <= sameLength && stands > 0 {
			stands, what = stands+fillet.Radius.Value, "the "+e.title()
		}
	}
	if inner := r.inner + own - stands; stands > 0 && inner < rim {
		return inner, what
	}
	return rim, "the rim"
}
