package thread

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// The in-feeds of trade rule C-28: the first cut is 0.1 to 0.25, the last ones
// 0.025 to 0.05, and the last two go straight in.
const (
	firstLeast units.Length = 0.1
	firstMost  units.Length = 0.25
	lastLeast  units.Length = 0.025
	// firstShare is the share of the depth that the first cut takes, within its
	// bounds (ours).
	firstShare = 0.25
	// slideSlack is how much less than the half angle the top slide is swung, so
	// that the trailing flank is shaved too: 29.5 degrees for a 60 degree thread.
	slideSlack units.Angle = 0.5
	// straightCuts is the number of cuts at the end that go straight in.
	straightCuts = 2
	maxInfeeds   = 500
)

// Infeeds is how to cut a thread with a single point.
type Infeeds struct {
	Depth      units.Length   `json:"depth_mm"`       // radial
	SlideAngle units.Angle    `json:"slide_deg"`      // top slide from square to the axis
	AlongSlide units.Length   `json:"along_slide_mm"` // the same depth fed by the top slide
	Passes     []units.Length `json:"passes_mm"`      // radial depth reached by each pass
	Straight   int            `json:"straight"`       // so many last passes go straight in
	Spring     int            `json:"spring"`         // then so many without more in-feed
	Undercut   units.Limits   `json:"undercut_width"`
	BelowRoot  units.Limits   `json:"undercut_below_root"`
	Rule       string         `json:"rule"`
	Source     string         `json:"source"`
}

// ScrewcutExternal plans the in-feeds for a bolt's thread: radial depth 0.6134 P
// for 60 degrees, 0.6403 P for Whitworth, 0.6 P for BA. The cuts keep the area of
// the chip equal: depth after cut i is first x sqrt(i), until a cut would be
// below 0.025.
func ScrewcutExternal(t tables.Thread) (Infeeds, error) { return infeeds(t, t.Depth) }

// ScrewcutInternal plans them for a nut's thread, from the bored minor diameter.
func ScrewcutInternal(t tables.Thread) (Infeeds, error) {
	return infeeds(t, ((t.Major - t.MinorInt) / 2).Round(4))
}

func infeeds(t tables.Thread, depth units.Length) (Infeeds, error) {
	if !(depth > 0) || !(t.Pitch > 0) {
		return Infeeds{}, fmt.Errorf("a thread without a pitch cannot be screwcut")
	}
	angle := t.AngleDeg/2 - slideSlack
	passes := passDepths(depth)
	return Infeeds{
		Depth: depth, SlideAngle: angle,
		AlongSlide: (depth / units.Length(math.Cos(angle.Radians()))).Round(3),
		Passes:     passes, Straight: min(straightCuts, len(passes)), Spring: 1,
		Undercut:  units.Limits{Low: (1.5 * t.Pitch).Round(2), High: (2.5 * t.Pitch).Round(2)},
		BelowRoot: units.Limits{Low: 0.1, High: 0.4},
		Rule:      "C-28", Source: "depth by the thread's form; equal chip area, plane geometry",
	}, nil
}

// passDepths lists the radial depth after each pass, ending at depth exactly.
func passDepths(depth units.Length) []units.Length {
	first := min(depth, firstMost, max(firstLeast, firstShare*depth))
	var passes []units.Length
	reached := units.Length(0)
	for i := 1; reached < depth && i <= maxInfeeds; i++ {
		next := first * units.Length(math.Sqrt(float64(i)))
		next = max(next, reached+lastLeast).Round(3)
		if depth-next < lastLeast {
			next = depth
		}
		passes = append(passes, next)
		reached = next
	}
	return passes
}
