package holding

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
)

// clockRoom is how much of the round outside a clock wants in front of the jaws, in mm. Common practice, no source.
const clockRoom = 3.0

// bareFrom is the tolerance from which on hard jaws may grip a finished surface without packing (rule B-37).
const bareFrom = 0.2

// throw is how far the axis that the part is seen from lies beside its main one; 0 for a part that is seen from that.
func (s Shop) throw() float64 {
	if s.Part.Seen == nil {
		return 0
	}
	return float64(s.Part.Seen.From.Offset.Value)
}

// setOver lists grips in the four-jaw, set over until the offset axis runs true: on every plain cylinder about the main one, either end outward.
func (s Shop) setOver() []Mount {
	var mounts []Mount
	for _, h := range s.Shop.Holdings {
		if h.Kind != partspec.FourJaw {
			continue
		}
		for _, f := range s.Part.Seen.Base.Features {
			on, ok := f.(*partspec.Spigot)
			if !ok || !s.plain(on) {
				continue
			}
			for _, free := range []partspec.End{partspec.Left, partspec.Right} {
				if m, ok := s.setOverOn(h, on, free); ok && s.pinStands(free) {
					m.ID = m.name()
					mounts = append(mounts, m)
				}
			}
		}
	}
	return mounts
}

// pinStands reports whether the spigot about the offset axis, if there is one, stands at an end.
func (s Shop) pinStands(e partspec.End) bool {
	for _, f := range s.Part.Seen.From.Features {
		if pin, ok := f.(*partspec.Spigot); ok {
			return s.endsAt(pin, e)
		}
	}
	return true
}

// plain reports whether nothing is cut in a cylinder.
func (s Shop) plain(on *partspec.Spigot) bool {
	for _, f := range s.Part.Seen.Base.Features {
		switch f := f.(type) {
		case *partspec.Thread:
			if f.On == on.Name {
				return false
			}
		case *partspec.Groove:
			if f.On == on.Name {
				return false
			}
		}
	}
	return true
}

func (s Shop) setOverOn(h partspec.Holding, on *partspec.Spigot, free partspec.End) (Mount, bool) {
	left := s.Part.Feature(on.Name).(*partspec.Spigot) // what the eccentrics leave of it
	m := Mount{Holding: h, Free: free, Surface: on.Name, Radius: float64(on.Diameter.Mid()) / 2, Packed: float64(on.Diameter.Width()) < bareFrom, CentreX: s.throw(),
		About: s.Part.Seen.From.Name, RunOut: s.runOut(h, false)}
	m.Minutes = s.minutes(h) + packing(m.Packed) + setOverMinutes
	edge := s.edgeOf(on)
	back, front := float64(left.Span.At(free.Other()))+inward(free)*edge, float64(left.Span.At(free))
	if left.Span.At(free) == on.Span.At(free) { // no eccentric stands in front, on which to clock before it is cut
		front -= inward(free) * max(edge, clockRoom)
	} else {
		front -= inward(free) * (jawClearance + edgeMM)
	}
	long := min(jawLength(h), (front-back)*inward(free))
	if long <= 0 || !s.endsAt(on, free.Other()) {
		return m, false
	}
	if long < (front-back)*inward(free) { // as far in as it goes
		front = back + inward(free)*long
	}
	m.Z0, m.Z1 = span(back, front)
	m.Stop = edge == 0 && left.Span.At(free.Other()) == on.Span.At(free.Other()) // its end sits on the jaw steps
	return m, true
}

// setOverMinutes is what it takes to set work over beside clocking it. Ours, no source.
const setOverMinutes = 7.0

// endsAt reports whether a cylinder is the part's last towards an end.
func (s Shop) endsAt(on *partspec.Spigot, e partspec.End) bool {
	return math.Abs(float64(on.Span.At(e))-s.freeEnd(e)) < edgeMM
}

// edgeOf is how much of a cylinder its broken and rounded edges take, in all.
func (s Shop) edgeOf(on *partspec.Spigot) float64 {
	most := 0.0
	for _, f := range s.Part.Seen.Base.Features {
		switch f := f.(type) {
		case *partspec.Chamfer:
			if f.Edge.Feature == on.Name {
				most = max(most, float64(f.Size.High)*max(1, 1/math.Tan(f.Angle.Radians()))+edgeMM)
			}
		case *partspec.Fillet:
			if f.Edge.Feature == on.Name {
				most = max(most, float64(f.Radius.High)+edgeMM)
			}
		}
	}
	return most
}

// offset is what the rules are told of work that is set over.
func (s Shop) offset(m Mount) *rules.OffsetFacts {
	b := s.offBalance(m)
	f := &rules.OffsetFacts{Throw: s.throw(), JawHalf: or(float64(m.Holding.JawWidth), usualJawWidth) / 2, MostRPM: b.MostRPM, Slowest: float64(s.Lathe.SlowestSpeed)}
	if len(s.Lathe.Speeds) > 0 {
		f.Slowest = float64(s.Lathe.Speeds[0])
	}
	f.Clock, f.Needs = s.clock()
	return f
}

// Clock is the dial indicator that reads most finely, and what its reading can be wrong by; not ok where none is owned.
func Clock(w *partspec.Workshop) (best partspec.Instrument, offMM float64, ok bool) {
	for _, i := range w.Instruments {
		if i.Kind == partspec.DialIndicator && (!ok || i.Resolution < best.Resolution) {
			best, ok = i, true
		}
	}
	return best, float64(best.Resolution), ok
}

// clock says what stands against clocking the throw: no clock, one whose travel is too short, or limits that it does not read.
func (s Shop) clock() (owned bool, needs string) {
	best, off, ok := Clock(s.Shop)
	e := s.Part.Seen.From.Offset
	switch {
	case !ok:
		return false, ""
	case best.Largest > 0 && 2*e.High > best.Largest:
		return true, fmt.Sprintf("the clock swings by %s, and %s has %s of travel", (2 * e.High).Text(units.InMM), best.Name, best.Largest.Text(units.InMM))
	case 2*float64(e.Width()) < 4*off:
		return true, fmt.Sprintf("the throw's limits are %s apart, and a clock that reads %s does not keep them", e.Width().Text(units.InMM), best.Resolution.Text(units.InMM))
	}
	return true, ""
}

// offBalance is how work that is set over runs: its whole metal at the throw, and the jaws along it, one out and one in.
func (s Shop) offBalance(m Mount) plan.Balance {
	e := s.throw()
	mass := s.baseVolume() * s.Part.Material.DensityKgM3 * kgPerM3ToMM3
	weights := []mechanics.Weight{{MassKG: mass, XMM: -e}, {MassKG: 2 * jawMass, XMM: -e}}
	b, _ := balance(weights, 0, 0, 1)
	b.LeftOverKgMM, b.WeightKg, b.RadiusMM, b.AngleDeg = math.Max(leastLeft, b.UnbalanceKgMM), 0, 0, 0
	b.MostRPM = mostRPM(b.LeftOverKgMM)
	b.MassKg, b.UnbalanceKgMM, b.LeftOverKgMM = round3(b.MassKg), round3(b.UnbalanceKgMM), round3(b.LeftOverKgMM)
	return b
}

// baseVolume is the metal about the main axis, eccentrics uncut, in cubic mm, on the high side.
func (s Shop) baseVolume() float64 {
	sum := 0.0
	for _, f := range s.Part.Stock.Features {
		if p, ok := f.(*partspec.Spigot); ok {
			r := float64(p.Diameter.High)/2 - s.throw()
			sum += math.Pi * r * r * float64(p.Span.Right-p.Span.Left)
		}
	}
	return sum
}

// SetOver fills in how a setup sets the work over, and by what the clock shows it.
func (s Shop) SetOver(m Mount, setup *plan.Setup) {
	if s.Part.Seen == nil {
		return
	}
	e := s.Part.Seen.From.Offset
	_, off, _ := Clock(s.Shop)
	b := s.offBalance(m)
	setup.Axis, setup.ThrowMM, setup.Balance = s.Part.Seen.From.Name, tidyMM(float64(e.Value)), &b
	if !s.Rules.Has("E-08e") {
		return
	}
	setup.SwingLowMM, setup.SwingHighMM = tidyMM(2*float64(e.Low)+off), tidyMM(2*float64(e.High)-off)
	u := units.InMM
	if s.Part.Inches {
		u = units.InInch
	}
	swing := units.Length(2 * e.Value).Round(3).Text(u)
	setup.How = append([]string{
		fmt.Sprintf("Jaws on %s, Ø%s; draw the work over along one pair of jaws, towards jaw 1, by the throw of %s.", m.Surface, units.Length(2*m.Radius).Round(3).Text(u), e.Value.Text(u)),
		fmt.Sprintf("Clock the round outside in front of the jaws: in one turn by hand the pointer swings by twice the throw, %s, and anything from %.3f to %.3f mm keeps the throw within its limits. Move the pair by half of what is wanting.", swing, setup.SwingLowMM, setup.SwingHighMM),
		"Set the other pair by the clock at its two jaws until it reads alike there; then see the swing again. Clock along the work too: it lies parallel to the bed.",
	}, setup.How[1:]...)
}

// truly turns the outside radius and the wall of work as it is seen from an offset axis into its own radius and the least wall that it has anywhere round.
func (s Shop) truly(outer, wall float64) (float64, float64) {
	if wall >= outer { // solid
		return outer - s.throw(), wall
	}
	return outer - s.throw(), wall - 2*s.throw()
}
