package partspec

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
)

// onSide reports whether a seat names an outside feature of a turned part, across whose side it lies, and not an end.
func (s *shaper) onSide(e *entry) bool {
	on := e.text("on")
	if s.flat || on == "left" || on == "right" {
		return false
	}
	for _, other := range s.entries {
		if other.name == on {
			return true
		}
	}
	return false
}

// sideSeat is a seat across the side of a cylinder: its pipe crosses the part's axis at a right angle, so far from it that the hollow is as deep as it is drawn.
func (s *shaper) sideSeat(e *entry, seat *Seat) Feature {
	f := &SideSeat{Seat: *seat}
	switch {
	case e.has("across"):
		s.c.fail(e, e.at("across"), "across belongs to a seat across an end", "Across a side the width follows from the radius and the depth: leave it out.")
	case !e.has("depth"):
		s.c.fail(e, e.head(), fmt.Sprintf("%s lacks depth", e.title()), "Write depth = 5: how deep its deepest line lies below the surface.")
	}
	on := s.outer1(e)
	f.Sunk = s.size(e, "depth", useLength)
	if on == nil || e.broken || s.bodyless {
		e.broken = true
		return nil
	}
	f.Side, f.Depth = on.entry.name, f.Sunk.Value
	if under, ok := s.done[f.Side].(*Spigot); !ok || under.AsSupplied && s.part.Stock.Kind == Hexagon {
		s.c.fail(e, e.at("on"), fmt.Sprintf("%s is no cylinder", capital(on.entry.title())), "A seat is cut across the side of a turned spigot or flange; on hexagon bar, cut it across an end, or turn a spigot there.")
		return nil
	}
	if s.sidePlace(e, f, on) {
		s.sideMetal(e, f, on)
	}
	if e.broken {
		return nil
	}
	return f
}

// sidePlace puts the pipe's axis on its feature and finds how wide the hollow is there: half of it is sqrt(d (2R - d)).
func (s *shaper) sidePlace(e *entry, f *SideSeat, on *outside) bool {
	start, towards, ok := s.startOn(e, on)
	if !ok {
		e.broken = true
		return false
	}
	r, d := f.Radius.Value, f.Depth
	if d > r+sameLength {
		s.c.fail(e, e.at("depth"), fmt.Sprintf("%s is sunk deeper than half of its pipe", e.title()), "A pipe of radius %s goes in sideways no deeper than that: write a smaller depth.%s", s.shown(r), s.wrongUnit(d, r))
		return false
	}
	at := Size{Dimension: units.Dimension{InInches: s.part.Inches}, Range: e.head()}
	middle := on.span.Length() / 2
	if e.has("at") {
		at.Range, middle = e.at("at"), e.length("at")
	}
	at.Value = middle.Round(positionDecimals)
	at = s.general(e, "at", at, useLength)
	f.ZFrom, f.Z = start, at
	f.Z.Value, f.Z.Low, f.Z.High = start+at.Value, start+at.Low, start+at.High
	if towards == Left {
		f.Z.Value, f.Z.Low, f.Z.High = start-at.Value, start-at.High, start-at.Low
	}
	half := units.Length(math.Sqrt(float64(d * (2*r - d))))
	f.AxisZ, f.Across = f.Z.Value.Round(positionDecimals), (2 * half).Round(positionDecimals)
	if f.AxisZ-half < on.span.Left-sameLength || f.AxisZ+half > on.span.Right+sameLength {
		s.c.fail(e, e.head(), fmt.Sprintf("%s runs off %s", e.title(), on.entry.title()), "The hollow takes from %s to %s, the %s lies from %s to %s, from the left end: move it, or cut it less deep.%s",
			s.shown((f.AxisZ - half).Round(positionDecimals)), s.shown((f.AxisZ + half).Round(positionDecimals)), on.entry.word, s.shown(on.span.Left), s.shown(on.span.Right), s.wrongUnit(at.Value, on.span.Length()))
		return false
	}
	return !e.broken
}

// Hollowed is the stretch of the part's axis over which a seat across its side has cut the surface.
func (f *SideSeat) Hollowed() Span { return Span{f.AxisZ - f.Across/2, f.AxisZ + f.Across/2} }

// sideMetal holds that there is metal where the seat is cut, that some stays under it, and that nothing beside it stands in the pipe's way.
func (s *shaper) sideMetal(e *entry, f *SideSeat, on *outside) {
	surface := on.piece().at(Left)
	_, hollow := over(s.insidePieces(), f.Hollowed())
	floor := surface - f.Depth
	switch {
	case hollow > 0 && floor <= hollow+sameLength:
		s.c.fail(e, e.at("depth"), fmt.Sprintf("%s breaks into the bore", e.title()), "The wall there is %s thick: write less.%s", s.shown(surface-hollow), s.wrongUnit(f.Depth, surface-hollow))
		return
	case floor <= -surface+sameLength:
		s.c.fail(e, e.at("depth"), fmt.Sprintf("%s cuts the part in two", e.title()), "The %s is %s across: write less.%s", on.entry.word, s.shown(2*surface), s.wrongUnit(f.Depth, 2*surface))
		return
	case surface+floor < surface*leastUnderSeat:
		s.c.report(question(e.head(), fmt.Sprintf("Is enough left under %s?", e.title()), "%s of %s stays there. A hollow that leaves less than a quarter bends under the cut.", s.shown(surface+floor), s.shown(2*surface)))
	}
	axis := float64(floor + f.Radius.Value) // of the pipe, above the part's axis
	for _, p := range s.outsidePieces() {
		_, most := p.extremes()
		beside := max(p.span.Left-f.AxisZ, f.AxisZ-p.span.Right)
		off := math.Hypot(max(0, float64(beside)), max(0, axis-float64(most)))
		if p.name != f.Side && most > surface+sameLength && units.Length(off) < f.Radius.Value-sameLength {
			s.c.fail(e, e.head(), fmt.Sprintf("The pipe of %s runs into %s", e.title(), s.entryOf(p.name).title()), "It stands %s higher and begins %s beside the pipe's axis: move the seat away from it.", s.shown(most-surface), s.shown(beside))
			return
		}
	}
}

// leastUnderSeat is the share of a round's radius that should be left under a hollow in its side. Common practice, no source.
const leastUnderSeat = 0.5

// checkSideSeats: what else is cut in the side where a seat lies leaves it the surface that its depth is counted from, and metal under it.
func (s *shaper) checkSideSeats() {
	for i, e := range s.entries {
		f, ok := s.done[e.name].(*SideSeat)
		if !ok || e.broken {
			continue
		}
		for k, other := range s.entries {
			if _, both := s.done[other.name].(*SideSeat); k == i || other.broken || both && k > i {
				continue
			}
			s.besideSideSeat(e, f, other)
		}
	}
}

// besideSideSeat judges one other cut.
func (s *shaper) besideSideSeat(e *entry, f *SideSeat, other *entry) {
	in := f.Hollowed()
	meets := func(span Span) bool { _, meet := common(in, span); return meet }
	fail := func(say string) {
		s.c.fail(e, e.head(), fmt.Sprintf("%s and %s meet", capital(other.title()), e.title()), "%s", say)
	}
	switch g := s.done[other.name].(type) {
	case *Groove:
		if meets(g.Span) {
			fail("The seat's depth is counted from a whole cylinder: move one along the axis.")
		}
	case *Thread:
		if g.On == f.Side && meets(g.Span) {
			fail("A seat lies across a whole cylinder, not across a thread: move one along the axis.")
		}
	case *Knurl:
		if g.On == f.Side && meets(g.Span) {
			fail("A seat lies across a whole cylinder, not across a knurl: move one along the axis.")
		}
	case *Chamfer:
		if s.onSurface(f, g.Edge, g.Size.Value) {
			fail("A seat lies across a whole cylinder: move it along the axis.")
		}
	case *Fillet:
		if s.onSurface(f, g.Edge, g.Radius.Value) {
			fail("A seat lies across a whole cylinder: move it along the axis.")
		}
	case *Holes:
		for _, at := range g.Places {
			sin, cos := math.Sincos(f.Angle.Radians())
			if up := units.Length(float64(at.X.Value)*cos + float64(at.Y.Value)*sin); meets(g.Span) && up+g.largest() > s.sideOf(f)-f.Depth-sameLength {
				fail("The hole runs out in the hollow: cut that less deep, or turn one of them.")
				return
			}
		}
	case *CrossHole:
		r := g.largest()
		if meets(Span{g.Z.Value - r, g.Z.Value + r}) && (!g.Through || g.Thread != nil) {
			fail("Through a seat goes a plain hole right through the part; of others no depth can be counted from a hollow: write through = true, or move it along the axis.")
		}
	case *Flat:
		for k := range max(1, g.Count) {
			if turn := g.Angle + units.Angle(360*k/max(1, g.Count)); meets(g.Span) && s.undercut(f, turn, g.Distance.Value) {
				fail("Cut it on the other side, less deep, or move one along the axis.")
				return
			}
		}
	case *Slot:
		if meets(g.Span) && s.undercut(f, g.Angle, s.sideOf(f)-g.Depth.Value) {
			fail("Cut it on the other side, less deep, or move one along the axis.")
		}
	case *SideSeat:
		if meets(g.Hollowed()) && s.undercut(f, g.Angle, s.sideOf(f)-g.Depth) {
			fail("Cut it on the other side, less deep, or move one along the axis.")
		}
	}
}

// onSurface reports whether an edge, broken or filled over so much of the axis, lies in the surface that a seat is cut in.
func (s *shaper) onSurface(f *SideSeat, edge Edge, axial units.Length) bool {
	_, meet := common(f.Hollowed(), Span{edge.Z - axial, edge.Z + axial})
	return meet && !edge.Inside && edge.R <= s.sideOf(f)+sameLength
}

// sideOf is the radius of the surface that a seat is cut in.
func (s *shaper) sideOf(f *SideSeat) units.Length {
	_, most := over(s.outsidePieces(), f.Hollowed())
	return most
}

// undercut reports whether a cut in some direction, down to so far from the axis, takes the surface away that a seat is counted from, or leaves nothing between the two.
func (s *shaper) undercut(f *SideSeat, turn units.Angle, floor units.Length) bool {
	opposite := math.Abs(math.Remainder(float64(turn-f.Angle), 360)) >= 90-1e-6
	return !opposite || floor <= 0 || s.sideOf(f)-f.Depth <= 0
}
