package process

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/shape"
)

// layFlat lays a seat on the face of a flat part, in the frame of the table's dials: x counts the other way when the back is up.
func (s *saddle) layFlat(drawn plane.Region) {
	x0, y0, x1, y1 := drawn.Bounds()
	s.middle = float64(s.Middle.Value)
	s.low, s.high, s.from, s.to = y0-s.middle, y1-s.middle, x0, x1
	if s.AlongY() {
		s.low, s.high, s.from, s.to = x0-s.middle, x1-s.middle, y0, y1
		if s.On == partspec.Left {
			s.low, s.high = -s.high, -s.low
		}
	}
}

// meanLength is how long the seat is along its pipe, on the mean: of a round end as long as its area is wide.
func (s saddle) meanLength() float64 {
	if s.low != s.from || s.high != s.to { // a flat part's face, or a side
		return s.to - s.from
	}
	return float64(s.Across) * math.Pi / 4
}

// endNow is where the face that a seat is cut in now lies.
func (p *page) endNow(s saddle) float64 {
	switch {
	case !p.c.Part.Flat():
		return s.end
	case s.On == partspec.Left:
		return p.j.Flat.Back
	}
	return p.j.Flat.Front
}

// flatSeat makes the tasks of a seat in a face of a flat part: stepped on the mill, and filed.
func (c *Context) flatSeat(s saddle) []Task {
	cut := Task{Op: shape.Op{ID: s.ID() + "/steps", Feature: s.Name, Process: plan.SeatSteps, Stage: shape.Finishing, End: s.On, Makes: []string{s.Name}, Tight: float64(s.Radius.Width()), Depth: s.depth,
		Flat: &shape.FlatCut{Seats: []shape.Trough{{Feature: s.Name, On: s.On, AlongY: s.AlongY(), Middle: float64(s.Middle.Value), Radius: s.radius, Across: float64(s.Across), Depth: s.depth}}}}}
	cut.Z0, cut.Z1 = ordered(s.end, s.crownZ())
	if !s.Finish {
		cut.Lacking = []string{s.Name + `: no holding stands a flat part on edge for a boring head to swing its seat; to have it stepped on the mill and filed, write finish_by = "file"`}
		return []Task{cut}
	}
	for _, f := range c.Part.Features {
		if other, ok := f.(*partspec.Seat); ok && other != s.Seat {
			cut.Lacking = []string{s.Name + ": a flat part with a seat in each face is not planned: nothing holds it by a face that one has hollowed; make it of two parts"}
			return []Task{cut}
		}
	}
	cut.Ways, cut.Lacking = c.steppedSeat(s, cut)
	if len(cut.Ways) > 0 {
		cut.Lacking = nil
	}
	return []Task{cut, c.fileSeat(s, cut)}
}
