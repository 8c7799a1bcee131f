package holding

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/numbers/dividing"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
)

// A dividing head lies on the mill's table, its axis along x, and carries a chuck. For all that grips it is that chuck; what is its own: it turns the work between
// operations, so that all round the axis is cut in one setting, and nothing stands under the work but its jaws.

// headed reports whether a chuck stands on a dividing head.
func headed(h partspec.Holding) bool { return len(h.Plates) > 0 || len(h.Direct) > 0 }

// chuckOf is the chuck that a dividing head carries.
func chuckOf(h partspec.Holding) partspec.Holding {
	h.Kind = partspec.ThreeJaw
	if h.Jaws == 4 {
		h.Kind = partspec.FourJaw
	}
	return h
}

// onHead lists the ways in which finished cylinders are gripped on a dividing head, clear of all that is cut across in directions that it turns to.
func (s Shop) onHead(h partspec.Holding) []Mount {
	angles := s.acrossDegrees()
	if len(angles) == 0 || !s.Rules.Has("C-24d") {
		return nil
	}
	head := headFor(h, angles)
	var mounts []Mount
	for _, m := range s.onOutside(chuckOf(h)) {
		m.Machine, m.Across, m.AcrossDeg, m.Head = partspec.Mill, true, angles[0], head
		m.RunOut = s.runOut(m.Holding, m.Packed)
		m.Along = s.edgeError() + m.RunOut/2 // the round runs out about the axis that it is turned on
		m.Locate = math.Sqrt2 * m.Along
		if m, ok := s.clearOfCuts(m); ok {
			mounts = append(mounts, m)
		}
	}
	return mounts
}

// clearOfCuts shortens a grip to the stretch that nothing is cut on.
func (s Shop) clearOfCuts(m Mount) (Mount, bool) {
	for _, b := range s.Blocks {
		if b.Name != m.Surface {
			continue
		}
		z0, z1 := s.clearOf(m, b)
		front := m.front()
		long := jawLength(m.Holding)
		if m.Free == partspec.Right {
			m.Z1 = math.Min(m.Z1, z1)
			m.Z0 = math.Max(math.Max(z0, b.Z0), m.Z1-long)
		} else {
			m.Z0 = math.Max(m.Z0, z0)
			m.Z1 = math.Min(math.Min(z1, b.Z1), m.Z0+long)
		}
		if m.Stop && m.front() != front {
			m.Stop = false // its shoulder stands off the jaws
		}
		return m, !m.Step && m.Z1-m.Z0 >= viceLeast
	}
	return m, false
}

// headFor is how a head is set for some angles: by the plate on its spindle where that has them all, else on the circle of holes that has them best.
func headFor(h partspec.Holding, angles []float64) *plan.Dividing {
	turns := make([]float64, len(angles))
	for i, a := range angles {
		turns[i] = a - angles[0]
	}
	set := plan.Dividing{Ratio: 1, HeightMM: float64(h.Height)}
	off := math.Inf(1)
	if len(h.Direct) > 0 {
		set.Circle, off = dividing.Head{Ratio: 1, Circles: h.Direct}.Best(turns)
	}
	if h.Ratio > 0 && off > 0 {
		if circle, by := (dividing.Head{Ratio: h.Ratio, Circles: h.Plates}).Best(turns); by < off {
			set.Ratio, set.Circle = h.Ratio, circle
		}
	}
	return &set
}

// sameDeg is finer than work is set round by hand, in degrees.
const sameDeg = 0.01

// turnsTo reports whether a direction can be made to look up: the one that does, or on a dividing head any that lies near a hole; how near it must be the rules say.
func (m Mount) turnsTo(deg float64) bool {
	if m.Head == nil {
		return math.Abs(m.AcrossDeg-deg) < sameDeg
	}
	return math.Abs(m.past(deg)) <= mostPastDeg
}

// mostPastDeg is how far off its direction nothing is ever cut: past the coarsest general tolerance of an angle.
const mostPastDeg = 3.0

// past is how far past a direction, in degrees, the nearest count of a dividing head turns the work.
func (m Mount) past(deg float64) float64 {
	_, off := dividing.Head{Ratio: m.Head.Ratio, Circles: []int{m.Head.Circle}}.Count(m.Head.Circle, deg-m.AcrossDeg-m.AskewDeg) // the one lying, the other upright
	return off
}

// counted is how far off its place what a task makes is drilled because a dividing head counts whole holes; what that is round the axis goes among the facts.
func (s Shop) counted(c *rules.Case, m Mount, t process.Task, way process.Way) float64 {
	switch {
	case m.swings() && t.Rim > 0:
		off := math.Abs(m.past(way.AcrossDeg)) * math.Pi / 180 * t.Rim
		c.CountOff, c.CountAllow, c.Counted = off, t.Aside, m.Head.Circle
		if t.Middle {
			c.CountOff += m.Locate
		}
		if pressesDown(t) {
			return off
		}
	case m.indexes():
		return s.indexed(c, m, t)
	}
	return 0
}

// headCapacity says why work does not go under a dividing head's axis.
func (s Shop) headCapacity(m Mount) string {
	if r := float64(s.Part.Stock.EnvelopeDiameter()) / 2; r+headRoomMM > m.Head.HeightMM {
		return fmt.Sprintf("Ø%s swings over the table under an axis %s high: it wants %s", mm(2*r), mm(m.Head.HeightMM), mm(r+headRoomMM))
	}
	return ""
}

// headRoomMM is what stays between the table and work that turns over it. Common practice, no source.
const headRoomMM = 2.0

// overhung is a cut on work that stands out of a dividing head's chuck: a cutter pushes across and along, and turns the work; a drill presses it down, and what it turns
// with tips it too.
func (s Shop) overhung(d *mechanics.GripDemand, m Mount, t process.Task, way process.Way, force float64) {
	far := way.Span[0]
	if m.Free == partspec.Right {
		far = way.Span[1]
	}
	d.OverhangMM = math.Abs(math.Max(0, math.Min(s.Length, far)) - (m.Z0+m.Z1)/2) // the cutter runs out further than the metal
	d.FeedN, d.PassiveN = force, 0
	if pressesDown(t) {
		d.MainN, d.FeedN, d.PassiveN = 0, 0, way.ThrustN
		if way.ThrustN > 0 {
			d.OverhangMM += force * way.ForceAt / way.ThrustN
		}
	}
}

// swings reports whether a dividing head that lies carries the work: it turns over the table, and stands out of the chuck.
func (m Mount) swings() bool { return m.Head != nil && m.Across }

// Swings tells the same outside.
func (m Mount) Swings() bool { return m.swings() }

// howOnHead tells how a dividing head is set up, and which way it counts.
func (m Mount) howOnHead() []string {
	return []string{
		"Dividing head bolted down, its axis level and along the x slide: an indicator along a true bar in its chuck, from above and from the side, within 0.02 over 100.",
		m.howCounted(),
		fmt.Sprintf("At 0 the direction %s of the drawing looks up; counting on turns the work clockwise as seen from the right end. Lock the spindle before every cut.", inDegrees(m.AcrossDeg)),
	}
}

// howCounted tells what a dividing head counts by, and from where.
func (m Mount) howCounted() string {
	if m.Head.Ratio == 1 {
		return fmt.Sprintf("It counts by the plate of %d notches on its spindle, the crank's worm out of gear, the pin in the notch marked 0. Every count is from that nought, never from the place before.", m.Head.Circle)
	}
	return fmt.Sprintf("It counts by a crank with %d turns for one of the work, the pin on the circle of %d holes, in the one marked 0. Every count is from that nought, never from the place before; the crank always comes up turning the same way, and when it has gone past, back it half a turn and come again.", m.Head.Ratio, m.Head.Circle)
}

func inDegrees(deg float64) string { return mm(math.Round(deg*1e4)/1e4) + "°" }

// clearBelow is the clear height under work in a dividing head's chuck.
func (m Mount) clearBelow(widest float64) *plan.Bed {
	return &plan.Bed{Kind: "jaws", GapMM: math.Floor((m.Head.HeightMM-widest)*10) / 10}
}
