package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// A seat across the side of round work is stepped like one across an end, with the work lying along the table: x goes across the pipe, y along it, and depth is counted
// from the crown of the round, where the side is highest.

// sideSaddle is such a seat as figures. The middles of its limits are aimed at, and the width follows from them.
func (c *Context) sideSaddle(f *partspec.SideSeat) (s saddle, ok bool) {
	seat := f.Seat
	s = saddle{Seat: &seat, side: f, radius: float64(f.Radius.Mid()), depth: math.Min(float64(f.Sunk.Mid()), float64(f.Radius.Mid())), axisZ: float64(f.Z.Mid()), middle: float64(f.Z.Mid())}
	half := math.Sqrt(s.depth * (2*s.radius - s.depth))
	seat.Across = units.Length(2 * half)
	s.end, ok = c.outsideAt(s.middle-half, s.middle+half)
	s.low, s.high = -c.Length, c.Length // the side goes on to both sides of the hollow
	s.to = s.end
	if floor := s.end - s.depth; floor > 0 { // no farther along the pipe than the round is wide at the hollow's floor
		s.to = math.Sqrt(s.end*s.end - floor*floor)
	}
	s.from = -s.to
	return s, ok
}

// sideSeat makes the tasks of a seat across the side: stepped, and filed.
func (c *Context) sideSeat(f *partspec.SideSeat) []Task {
	s, ok := c.sideSaddle(f)
	half := float64(s.Across) / 2
	cut := crossTask(f, "steps", plan.SeatSteps, s.middle-half, s.middle+half)
	cut.Stage, cut.Makes, cut.Tight, cut.Depth, cut.Place = shape.Finishing, []string{f.Name}, float64(f.Radius.Width()), s.depth, float64(f.Z.Width())/2
	switch {
	case !ok:
		cut.Lacking = []string{f.Name + ": the outside is no plain cylinder all along it"}
		return []Task{cut}
	case !f.Finish:
		cut.Lacking = []string{f.Name + `: no head swings a seat across a side; to have it stepped on the mill and filed, write finish_by = "file"`}
		return []Task{cut}
	}
	cut.Ways, cut.Lacking = c.steppedSeat(s, cut)
	if len(cut.Ways) > 0 {
		cut.Lacking = nil
	}
	cut.Over = c.besideSide(s)
	return []Task{cut, c.fileSeat(s, cut)}
}

// besideSide is the stretch along the axis that the widest cutter that is owned comes over: what is turned there is turned first, so that nothing stands in its way.
func (c *Context) besideSide(s saddle) *shape.Stretch {
	wide := 0.0
	for _, kind := range []partspec.ToolKind{partspec.BallNose, partspec.EndMill} {
		for _, cutter := range c.widestFirst(kind) {
			if c.tallBeside(s, cutter.sizeMM) == "" {
				wide = math.Max(wide, cutter.sizeMM)
			}
		}
	}
	reach := float64(s.Across)/2 + wide/2
	return &shape.Stretch{Z0: s.middle - reach, Z1: s.middle + reach}
}

// tallBeside says what stands higher than a side beside a hollow in it, in the way of a cutter so wide; empty where nothing does.
func (c *Context) tallBeside(s saddle, d float64) string {
	if s.side == nil {
		return ""
	}
	reach := float64(s.Across)/2 + d/2 + toolBeside
	for _, b := range c.Blocks {
		if b.Greatest > s.end+sizeNoise && b.Z0 < s.middle+reach && b.Z1 > s.middle-reach {
			return fmt.Sprintf("%s: a cutter of Ø%.1f would meet %s, which stands higher beside it", s.Name, d, b.Name)
		}
	}
	if bar := c.Place.BarSide(c.Length); c.Place.OnBar() && (c.Place.Free == partspec.Right && bar > s.middle-reach || c.Place.Free == partspec.Left && bar < s.middle+reach) {
		return fmt.Sprintf("%s: a cutter of Ø%.1f would meet the bar that the part is still on", s.Name, d)
	}
	return ""
}

// toolBeside is how far a cutter keeps from a shoulder that it passes.
const toolBeside = 0.5

// sideWays lays the work for a cutter: its side up, either end free.
func (c *Context) sideWays(s saddle, like Way) []Way {
	reach := float64(s.Across)/2 + like.SizeMM/2
	like.ForceAt = s.end
	var ways []Way
	for _, w := range c.crossWays(float64(s.Angle), false, s.middle-reach, s.middle+reach) {
		like.Across, like.AcrossDeg, like.End, like.Span = true, w.AcrossDeg, w.End, w.Span
		like.Off = c.roundOff(s.middle) + c.fromFace(float64(s.side.ZFrom), w.End)
		ways = append(ways, like)
	}
	return ways
}

// sideSeatWords tell how deep the hollow is, and how that is measured: over a pin of the pipe's size that lies in it.
func (p *page) sideSeatWords(s saddle) {
	c := p.c
	p.note("Deepest line %s below the crown of the round, so that the hollow is %s wide along the part: 2 sqrt(d (2R - d)) with R %s.", p.both(s.depth, p.quill()), units.Length(float64(s.Across)).Round(2).Text(c.unit()), s.Radius.Value.Text(c.unit()))
	low, high := float64(s.side.Sunk.Low), float64(s.side.Sunk.High)
	over := func(deep float64) units.Length { return units.Length(2*s.end - deep + 2*s.radius).Round(2) }
	p.op.Checks = append(p.op.Checks, plan.Check{What: s.Name + ", over the pipe that lies in it and the far side of the round", Feature: s.Name,
		Limits: fmt.Sprintf("%s to %s, with the round at Ø%s", over(high).Text(c.unit()), over(low).Text(c.unit()), units.Length(2*s.end).Round(2).Text(c.unit())), When: "before release",
		IfLarge: "go on to depth", IfSmall: "the pipe lies deeper by as much"})
}

// sideSeatNotes tell how the steps lie on the work.
func (p *page) sideSeatNotes(across, along string, middle int64) {
	p.note("The steps lie to both sides of the seat's middle, which stands %d marks from nought on the %s (%s).", middle, p.c.millDial(across), p.lineOf("", across, middle, "", "", false).Reading)
	p.note("Passes go along the pipe's axis, square to the part's, by the %s; feed one way, against the teeth, and wind back in the air.", p.c.millSlide(along))
	p.why("the round is finished before it is crossed", "A-22")
}
