package draw

import (
	"math"

	"catchplate/planner/plan"
)

// view carries a place of the part to paper: z along the axis to x, the radius to y. The axis lies at y = 0.
type view struct {
	scale   float64
	mirror  bool    // the part's left end points to the right
	originZ float64 // this z stands at x = 0
}

func (v view) x(z float64) float64 {
	if v.mirror {
		return -(z - v.originZ) * v.scale
	}
	return (z - v.originZ) * v.scale
}

// at is the place of (z, r) in the upper half; a negative r lies in the lower.
func (v view) at(z, r float64) Point { return Point{v.x(z), -r * v.scale} }

// half is the side of the axis that is drawn.
type half float64

const (
	upper half = 1
	lower half = -1
)

// curve goes along segments; it starts at the first one's beginning.
func (v view) curve(segments []plan.Segment, side half) []Step {
	var steps []Step
	for i, s := range segments {
		if i > 0 {
			if from := v.at(s.Z0, float64(side)*s.R0); from != steps[len(steps)-1].To {
				steps = append(steps, Step{To: from})
			}
		}
		steps = append(steps, v.step(s, side))
	}
	return steps
}

func (v view) step(s plan.Segment, side half) Step {
	to := v.at(s.Z1, float64(side)*s.R1)
	if s.RadiusMM == 0 {
		return Step{To: to}
	}
	from, centre := v.at(s.Z0, float64(side)*s.R0), v.at(s.CentreZ, float64(side)*s.CentreR)
	return Step{To: to, Radius: s.RadiusMM * v.scale, Centre: centre, Clockwise: cross(centre, from, to) > 0}
}

// metal draws the cut metal of a section, if any, on one side of the axis: filled, with an edge everywhere but along the axis.
func (c *Canvas) metal(class Class, v view, s plan.Section, side half) {
	if len(s.Outer) == 0 {
		return
	}
	c.Path(v.region(class, s, side))
	c.rim(v, s, side)
	for _, run := range bored(s.Inner) {
		first := run[0]
		c.Path(Path{Class: Outline, Start: v.at(first.Z0, float64(side)*first.R0), Steps: v.curve(run, side)})
	}
}

// region is the cut metal itself.
func (v view) region(class Class, s plan.Section, side half) Path {
	first := s.Outer[0]
	p := Path{Class: class, Start: v.at(first.Z0, float64(side)*first.R0), Steps: v.curve(s.Outer, side), Closed: true}
	inner := reversed(s.Inner)
	p.Steps = append(p.Steps, Step{To: v.at(inner[0].Z0, float64(side)*inner[0].R0)})
	p.Steps = append(p.Steps, v.curve(inner, side)...)
	return p
}

// rim draws the outer edge with both end faces down to the bore, or to the axis.
func (c *Canvas) rim(v view, s plan.Section, side half) {
	start, end := s.Inner[0], s.Inner[len(s.Inner)-1]
	c.edgeRound(v, s.Outer, side, start.R0, end.R1)
}

// skin draws the outer edge with both end faces down to the axis, as seen from outside.
func (c *Canvas) skin(v view, s plan.Section, side half) { c.edgeRound(v, s.Outer, side, 0, 0) }

func (c *Canvas) edgeRound(v view, outer []plan.Segment, side half, startR, endR float64) {
	first, last := outer[0], outer[len(outer)-1]
	steps := []Step{{To: v.at(first.Z0, float64(side)*first.R0)}}
	steps = append(steps, v.curve(outer, side)...)
	steps = append(steps, Step{To: v.at(last.Z1, float64(side)*endR)})
	c.Path(Path{Class: Outline, Start: v.at(first.Z0, float64(side)*startR), Steps: steps})
}

// bored gives the runs of an inner curve that lie off the axis, with the faces that close them.
func bored(inner []plan.Segment) [][]plan.Segment {
	var runs [][]plan.Segment
	var run []plan.Segment
	for i, s := range inner {
		if s.R0 == 0 && s.R1 == 0 {
			if len(run) > 0 {
				runs = append(runs, append(run, plan.Segment{Z0: s.Z0, Z1: s.Z0}))
			}
			run = nil
			continue
		}
		if len(run) == 0 && i > 0 {
			run = append(run, plan.Segment{Z0: s.Z0, Z1: s.Z0})
		}
		run = append(run, s)
	}
	if len(run) > 0 {
		runs = append(runs, run)
	}
	return runs
}

// reversed is the same curve, walked from right to left.
func reversed(segments []plan.Segment) []plan.Segment {
	out := make([]plan.Segment, 0, len(segments))
	for i := len(segments) - 1; i >= 0; i-- {
		s := segments[i]
		s.Z0, s.R0, s.Z1, s.R1 = s.Z1, s.R1, s.Z0, s.R0
		out = append(out, s)
	}
	return out
}

// solid makes a section fit to draw: it gives a section without an inner curve one along the axis.
func solid(s plan.Section) (plan.Section, bool) {
	if len(s.Outer) == 0 {
		return s, false
	}
	if len(s.Inner) == 0 {
		s.Inner = []plan.Segment{{Z0: s.Outer[0].Z0, Z1: s.Outer[len(s.Outer)-1].Z1}}
	}
	return s, true
}

// edge is a circle of the part that shows as a line across it.
type edge struct{ z, r float64 }

// edges are the circles where a curve turns a corner, its two ends among them. Where one segment runs smoothly into the next there is none.
func edges(segments []plan.Segment) []edge {
	var out []edge
	for i, s := range segments {
		if i == 0 {
			out = append(out, edge{s.Z0, s.R0})
		} else if before := segments[i-1]; !smooth(before, s) {
			out = append(out, edge{s.Z0, max(before.R1, s.R0)})
		}
	}
	if n := len(segments); n > 0 {
		out = append(out, edge{segments[n-1].Z1, segments[n-1].R1})
	}
	return out
}

// smoothDeg is the turn up to which two segments are taken to run into one another.
const smoothDeg = 6.0

func smooth(a, b plan.Segment) bool {
	if a.R1 != b.R0 || a.Z1 != b.Z0 {
		return false
	}
	turn := math.Abs(direction(a, a.Z1, a.R1) - direction(b, b.Z0, b.R0))
	return min(turn, 2*math.Pi-turn) < smoothDeg*math.Pi/180
}

// direction is the angle at which a segment passes through one of its ends.
func direction(s plan.Segment, z, r float64) float64 {
	dz, dr := s.Z1-s.Z0, s.R1-s.R0
	if s.RadiusMM != 0 {
		tz, tr := -(r - s.CentreR), z-s.CentreZ
		if tz*dz+tr*dr < 0 {
			tz, tr = -tz, -tr
		}
		dz, dr = tz, tr
	}
	return math.Atan2(dr, dz)
}

// radiusAt is the greatest radius of a curve at z, 0 where the curve is not.
func radiusAt(segments []plan.Segment, z float64) float64 { return greatest(segments, z, z) }

// greatest is the greatest radius of a curve between two places, its ends included.
func greatest(segments []plan.Segment, from, to float64) float64 {
	most := 0.0
	for _, s := range segments {
		if part, ok := clipSegment(s, from, to); ok {
			most = max(most, part.R0, part.R1)
			if s.RadiusMM != 0 && s.CentreZ > part.Z0 && s.CentreZ < part.Z1 && s.CentreR < s.R0 {
				most = max(most, s.CentreR+s.RadiusMM)
			}
		}
	}
	return most
}

// clip keeps what lies between two places.
func clip(s plan.Section, from, to float64) plan.Section {
	return plan.Section{Outer: clipCurve(s.Outer, from, to), Inner: clipCurve(s.Inner, from, to), Near: clipCurve(s.Near, from, to)}
}

func clipCurve(segments []plan.Segment, from, to float64) []plan.Segment {
	var out []plan.Segment
	for _, s := range segments {
		if part, ok := clipSegment(s, from, to); ok && (part.Z1 > part.Z0 || s.Z0 == s.Z1) {
			out = append(out, part)
		}
	}
	return out
}

// clipSegment keeps the part of a segment between two places; false when there is none.
func clipSegment(s plan.Segment, from, to float64) (plan.Segment, bool) {
	if s.Z1 < from || s.Z0 > to {
		return s, false
	}
	whole := s
	if s.Z0 < from {
		s.Z0, s.R0 = from, radiusOn(whole, from)
	}
	if s.Z1 > to {
		s.Z1, s.R1 = to, radiusOn(whole, to)
	}
	return s, true
}

// radiusOn is the radius of a segment at a place along it.
func radiusOn(s plan.Segment, z float64) float64 {
	if s.Z1 == s.Z0 {
		return s.R1
	}
	if s.RadiusMM == 0 {
		return s.R0 + (s.R1-s.R0)*(z-s.Z0)/(s.Z1-s.Z0)
	}
	rise := math.Sqrt(max(0, s.RadiusMM*s.RadiusMM-(z-s.CentreZ)*(z-s.CentreZ)))
	if s.R0+s.R1 < 2*s.CentreR {
		rise = -rise
	}
	return s.CentreR + rise
}
