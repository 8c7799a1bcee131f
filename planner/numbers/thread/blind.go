package thread

import (
	"fmt"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// TapLead is the last tap that goes down a blind hole.
type TapLead string

// The taps, by the length of their lead.
const (
	LeadTaper  TapLead = "taper"
	LeadSecond TapLead = "second"
	LeadPlug   TapLead = "plug"
)

// leadPitches are the pitches of lead of each tap.
var leadPitches = map[TapLead]units.Length{LeadTaper: 8, LeadSecond: 4, LeadPlug: 2}

// Blind is how deep to drill a blind tapped hole.
type Blind struct {
	Depth units.Length `json:"depth_mm"` // at full diameter
	Point units.Length `json:"point_mm"` // the cone beyond it
	Floor units.Length `json:"floor_mm"` // least metal to leave under the point
}

// pointLength is how far the cone of a 118 degree drill goes beyond its full
// diameter, in diameters (trade rule C-30).
const pointLength = 0.3

// BlindDepth is the drilled depth for a full thread of that depth: room for the
// last tap's lead and one pitch, and at least a quarter more below M6, a fifth
// to M12, 15 % above; one diameter more where chips cannot be cleared. The floor
// to leave is half the drill, at least 1 mm.
func BlindDepth(t tables.Thread, drill, full units.Length, last TapLead, chipsCleared bool) (Blind, error) {
	lead, ok := leadPitches[last]
	if !ok {
		return Blind{}, fmt.Errorf("the last tap is taper, second or plug, not %q", last)
	}
	if !(full > 0 && full <= units.MaxLength) || !(drill > 0 && drill < t.Major) {
		return Blind{}, fmt.Errorf("a blind thread needs a depth above 0 and a drill under %s", t.Major)
	}
	more := units.Length(1.15)
	switch {
	case t.Major < 6:
		more = 1.25
	case t.Major <= 12:
		more = 1.20
	}
	depth := max(full+(lead+1)*t.Pitch, more*full)
	if !chipsCleared {
		depth += t.Major
	}
	return Blind{
		Depth: depth.Round(3), Point: (pointLength * drill).Round(3),
		Floor: max(drill/2, 1).Round(3),
	}, nil
}

// Fits says whether the hole stays in metal of that thickness under the surface
// that is drilled, with the floor left.
func (b Blind) Fits(thickness units.Length) bool {
	return (b.Depth + b.Point + b.Floor).Round(3) <= thickness
}
