package holding

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/process"
	"catchplate/planner/rules"
)

// A dividing head that stands upright has its axis along the mill's spindle: the table is set off by the radius of a ring and stands still, the work is turned from hole to
// hole. For all that grips it is a chuck that stands on the table; what is its own: nothing is clocked but its axis, so that the work lies off by what it runs out.

// indexes reports whether a dividing head that stands upright turns the work under the spindle.
func (m Mount) indexes() bool { return m.Head != nil && !m.Across }

// onUpright lists the ways in which finished cylinders are gripped on a dividing head that stands upright: on the circle that has the holes of all rings best, and on that
// of each ring where it has its own better.
func (s Shop) onUpright(h partspec.Holding) []Mount {
	rings := s.rings()
	if !h.Upright || len(rings) == 0 {
		return nil
	}
	settings := []Mount{indexedFrom(h, slices.Concat(rings...))}
	for _, angles := range rings {
		if m := indexedFrom(h, angles); m.worstPast(angles) < settings[0].worstPast(angles) {
			settings = append(settings, m)
		}
	}
	var mounts []Mount
	for _, m := range s.uprightChuck(chuckOf(h), partspec.Mill) {
		m.Minutes, m.RunOut = s.minutes(h), s.runOut(m.Holding, m.Packed)
		m.Turning = s.centreError()
		m.Locate = m.Turning + m.RunOut/2
		for _, set := range settings {
			m.Head, m.AskewDeg = set.Head, set.AskewDeg
			mounts = append(mounts, m)
		}
	}
	return mounts
}

// rings are the directions of the holes of every ring that a dividing head is to turn to.
func (s Shop) rings() (list [][]float64) {
	for _, f := range s.Part.Features {
		if ring, ok := f.(*partspec.Holes); ok && ring.Locate == partspec.LocateHead {
			list = append(list, process.Directions(ring))
		}
	}
	return list
}

// indexedFrom is how a head is set for some directions, the first of them at its nought.
func indexedFrom(h partspec.Holding, angles []float64) Mount {
	return Mount{Head: headFor(h, angles), AskewDeg: math.Round(angles[0]*1e6) / 1e6}
}

// worstPast is how far off some directions the nearest counts turn the work at worst, in degrees.
func (m Mount) worstPast(angles []float64) float64 {
	worst := 0.0
	for _, deg := range angles {
		worst = math.Max(worst, math.Abs(m.past(deg)))
	}
	return worst
}

// indexed is how far from their places the holes of a ring are drilled, since a dividing head counts whole holes and the table whole graduations; what that is round the
// circle goes among the facts.
func (s Shop) indexed(c *rules.Case, m Mount, t process.Task) float64 {
	ring, ok := s.Part.Feature(t.Feature).(*partspec.Holes)
	if !ok {
		return 0
	}
	worst := 0.0
	_, stations := s.Stations(*m.Head, m.AskewDeg, ring)
	c.CountAllow, c.Counted = t.Place, m.Head.Circle
	for i, at := range stations {
		c.CountOff = math.Max(c.CountOff, math.Abs(at.PastMM))
		dx, dy := math.Abs(at.X-float64(ring.Places[i].X.Value)), math.Abs(at.Y-float64(ring.Places[i].Y.Value))
		if t.Zone {
			worst = math.Max(worst, math.Hypot(dx, dy))
		} else {
			worst = math.Max(worst, math.Max(dx, dy))
		}
	}
	return worst
}

// howIndexed tells how a dividing head is stood up, and which way it counts.
func (m Mount) howIndexed() []string {
	round := "clockwise"
	if m.Free == partspec.Left {
		round = "anticlockwise"
	}
	how := []string{
		"Dividing head bolted down upright, its axis along the mill's spindle: an indicator swung by the spindle over a true face in its chuck, within 0.02 over 100; " + clearOfBody,
		m.howCounted(),
		fmt.Sprintf("At 0 the direction %s of the drawing points along the x slide to where the spindle stands over the ring; counting on turns the work %s as seen from above. Lock the head's spindle before every hole.", inDegrees(m.AskewDeg), round),
	}
	if m.Head.Ratio > 1 {
		how = append(how, "Sector arms: one stays against the hole marked 0, the other is opened over as many holes beyond it as the line says, not counting the one marked 0.")
	}
	return how
}

// howUnderSpindle tells how the spindle is brought over the axis that the work turns about.
func (m Mount) howUnderSpindle() []string {
	return []string{
		"Find the head's axis: sweep the bore of its spindle, or a bar that turns true in it, with an indicator in the mill's spindle until it reads the same all round; x and y are set there.",
		fmt.Sprintf("The work may run out by %.2f (full reading) as the head is turned; the ring lies off by half of that.", m.RunOut),
	}
}
