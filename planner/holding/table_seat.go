package holding

import (
	"cmp"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
)

// Suits reports whether a way of working is done in this pose on this machine.
func (m Mount) Suits(w process.Way) bool {
	if m.Free != w.End || m.Machine != w.Machine || m.Across != w.Across || m.indexes() != w.Indexed || !m.leansAs(w) {
		return false
	}
	return m.indexes() || m.AskewDeg == w.AskewDeg && (!m.Across || m.turnsTo(w.AcrossDeg))
}

// seatLoss is how much of a stretch along the axis seats and what is cut across have taken away at some place round it.
func (s Shop) seatLoss(m Mount, done func(int) bool) float64 {
	var gaps [][2]float64
	for i, t := range s.Tasks {
		if !done(i) || !s.isSeat(i) && !t.Cross || s.missed(m, i, done) {
			continue
		}
		if low, high := max(t.Z0, m.Z0), min(t.Z1, m.Z1); low < high {
			gaps = append(gaps, [2]float64{low, high})
		}
	}
	slices.SortFunc(gaps, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	loss, end := 0.0, m.Z0
	for _, g := range gaps {
		loss += max(0, g[1]-max(end, g[0]))
		end = max(end, g[1])
	}
	return loss
}

// missed reports whether three jaws go past what a task has cut across the surface gripped: a single flat, so narrow that it lies between two of them.
func (s Shop) missed(m Mount, task int, done func(int) bool) bool {
	f, ok := s.of[task].(*partspec.Flat)
	if !ok || f.Count > 1 || m.Inside || m.Machine != "" || m.Jaws() != 3 {
		return false
	}
	for i, t := range s.Tasks {
		if done(i) && t.Cross && t.Feature != f.Name && t.Z0 < m.Z1 && m.Z0 < t.Z1 {
			return false
		}
	}
	half := math.Acos(min(1, float64(f.Distance.Low)/m.Radius)) + math.Asin(min(1, float64(m.Holding.JawWidth)/2/m.Radius))
	return half <= math.Pi/3
}

// FlatBetweenJaws is the flat on the surface gripped that is to lie between two jaws; no name when there is none.
func (s Shop) FlatBetweenJaws(m Mount, done func(int) bool) string {
	for i, t := range s.Tasks {
		if done(i) && t.Cross && t.Z0 < m.Z1 && m.Z0 < t.Z1 && s.missed(m, i, done) {
			return t.Feature
		}
	}
	return ""
}

// SeatedEnd reports whether an end has its seat cut: no longer a face to sit, to be glued or to be clamped on.
func (s Shop) SeatedEnd(e partspec.End, done func(int) bool) bool {
	for i := range s.Tasks {
		if s.isSeat(i) && done(i) && s.of[i].(*partspec.Seat).On == e {
			return true
		}
	}
	return false
}

// afterSeat takes from a grip what a seat has taken from the surface, and tells whether lengths would be taken from where it was cut.
func (s Shop) afterSeat(c *rules.Case, m Mount, done func(int) bool) {
	if !s.sunk {
		return
	}
	c.Hollow = m.Machine == "" && c.Op.Process != plan.PartOff && c.Op.Process != plan.SawOff && s.SeatedEnd(m.Free, done)
	loss := s.seatLoss(m, done)
	if loss == 0 && !s.SeatedEnd(m.Free.Other(), done) {
		return
	}
	c.Length -= loss
	back := m.Free.Other()
	if s.SeatedEnd(back, done) {
		if m.Stop || m.Glue == GlueFace {
			c.Through = false
		}
		if m.Glue == GlueFace || m.Holding.Kind == partspec.StubMandrel && !m.Threaded || s.bolted(m) {
			c.Gone = true // its face is a hollow now
		}
		if m.Glue == GlueBore {
			c.DriveNmm *= math.Max(0, 1-loss/(m.Z1-m.Z0))
		}
	}
}

// bolted reports whether a mount draws the work against a plate by a bolt through its bore.
func (s Shop) bolted(m Mount) bool {
	return m.Holding.Kind == partspec.AnglePlate || m.Holding.Kind == partspec.TableClamps && m.Inside
}

// isSeat reports whether a task cuts a seat.
func (s Shop) isSeat(task int) bool {
	_, ok := s.of[task].(*partspec.Seat)
	return ok && s.Tasks[task].Z0 != s.Tasks[task].Z1
}

// faced reports whether an end is a plane face: cut, or never to be cut.
func (s Shop) faced(e partspec.End, done func(int) bool) bool {
	for i, t := range s.Tasks {
		if t.Process == plan.Face && t.End == e {
			return done(i)
		}
	}
	return !s.rawEnd(e)
}
