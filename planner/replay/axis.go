package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
)

// Work about an offset axis is replayed after all that lies about the main one has been proved: as cuts on the finished work as it swings about the offset axis
// (partspec.Part.SeenFrom). Where that axis lies is not taken from the plan's words but from what the clock is to read when the work is set over.

// byAxis splits a part's plan at the first setup that is set over.
func byAxis(p plan.Part) (main, over plan.Part) {
	main, over = p, p
	for i, s := range p.Setups {
		if s.Axis != "" || s.SwingLowMM != 0 || s.SwingHighMM != 0 || s.ThrowMM != 0 {
			main.Setups, over.Setups = p.Setups[:i:i], p.Setups[i:]
			return main, over
		}
	}
	over.Setups = nil
	return main, over
}

// proveAxes proves a part with an offset axis: what lies about the main one, then what is turned about the other.
func proveAxes(r *record, job *partspec.Job, part *partspec.Part, p plan.Part) plan.Proof {
	main, over := byAxis(p)
	if len(over.Setups) == 0 {
		r.fail(where{}, "finished part", "it has eccentrics, and is never set over for them")
		return plan.Proof{}
	}
	if len(main.Setups) == 0 {
		r.fail(where{}, "order", "it is set over before anything about its main axis is made")
		return plan.Proof{}
	}
	proof := proveTurned(r, job, part, main, 1)
	for _, axis := range part.Axes {
		seen := part.SeenFrom(axis)
		checkFollows(r, main, over)
		if len(over.Setups) > 1 {
			r.fail(where{setup: over.Setups[1].Number}, "set over", "it is set over a second time, and nothing makes the throw point the same way again")
		}
		for i := range over.Setups {
			checkSetOver(r, job, seen, &over.Setups[i])
		}
		view := over
		view.Stock = plan.Stock{Kind: seen.Stock.Kind.String(), OutsideMM: float64(seen.Stock.Outside.Value), LengthMM: float64(seen.Length.Value), RightZ: float64(seen.Length.Value)}
		view.Setups = nil
		for _, s := range over.Setups {
			s.Grip.RadiusMM += float64(axis.Offset.Value) // as far out as the jaws of the pair stand
			view.Setups = append(view.Setups, s)
		}
		told := len(r.clauses)
		turned := proveTurned(r, job, seen, view, len(main.Setups)+1)
		proof.Cuts += turned.Cuts
		for i := told; i < len(r.clauses); i++ {
			r.clauses[i].Name += ", set over"
		}
	}
	if len(r.failures) == 0 {
		a := part.Axes[0]
		r.hold("eccentrics", "%s about the axis %s, %s mm off, cut to size in work set over by a clock that swings %s to %s mm", counted(len(a.Features), "feature", ""), a.Name, mm(float64(a.Offset.Value)), mm(over.Setups[0].SwingLowMM), mm(over.Setups[0].SwingHighMM))
	}
	proof.Clauses = r.clauses
	return proof
}

// checkFollows holds that the two halves of the plan make one row of operations.
func checkFollows(r *record, main, over plan.Part) {
	ids, last := map[string]bool{}, 0
	for _, s := range main.Setups {
		for _, op := range s.Operations {
			ids[op.ID], last = true, op.Number
		}
	}
	for _, s := range over.Setups {
		for _, op := range s.Operations {
			if ids[op.ID] {
				r.fail(where{s.Number, op.ID}, "order", "it is done about the main axis too")
			}
			if op.Number <= last {
				r.fail(where{s.Number, op.ID}, "order", "operation %d comes after %d", op.Number, last)
			}
		}
	}
}

// clockOff is what the finest clock of the workshop can be wrong by; not ok where there is none with so much travel.
func clockOff(w *partspec.Workshop, swing float64) (off float64, ok bool) {
	for _, i := range w.Instruments {
		if i.Kind != partspec.DialIndicator || i.Largest > 0 && float64(i.Largest) < swing-same {
			continue
		}
		if !ok || float64(i.Resolution) < off {
			off, ok = float64(i.Resolution), true
		}
	}
	return off, ok
}

// checkSetOver holds how the work is set over: by the swing of a clock on its round outside, twice the throw (plane geometry), whose limits keep the drawn ones
// whatever the clock is wrong by; in jaws that meet it squarely; and no faster than what is off balance lets it run.
func checkSetOver(r *record, job *partspec.Job, seen *partspec.Part, s *plan.Setup) {
	at, e := where{setup: s.Number}, seen.Seen.From.Offset
	if s.Axis != seen.Seen.From.Name {
		r.fail(at, "set over", "it is set over for the axis %q; what is left to cut lies about %q", s.Axis, seen.Seen.From.Name)
	}
	off, ok := clockOff(job.Workshop, s.SwingHighMM)
	if !ok {
		r.fail(at, "set over", "the workshop has no clock that swings by %s", mm(s.SwingHighMM))
	}
	if !(s.SwingLowMM < s.SwingHighMM) || (s.SwingLowMM-off)/2 < float64(e.Low)-same || (s.SwingHighMM+off)/2 > float64(e.High)+same {
		r.fail(at, "set over", "a swing of %s to %s sets it over by %s to %s; the throw is drawn %s to %s", mm(s.SwingLowMM), mm(s.SwingHighMM), mm((s.SwingLowMM-off)/2), mm((s.SwingHighMM+off)/2), mm(float64(e.Low)), mm(float64(e.High)))
	}
	throw := (s.SwingLowMM + s.SwingHighMM) / 4
	if math.Abs(s.ThrowMM-float64(e.Value)) > figure || s.CentreY != 0 || s.CentreX < (s.SwingLowMM-off)/2-same || s.CentreX > (s.SwingHighMM+off)/2+same {
		r.fail(at, "set over", "the place %s, %s is said to run true; the clock brings %s, 0 there, by a throw of %s", mm(s.CentreX), mm(s.CentreY), mm(throw), mm(s.ThrowMM))
	}
	if s.HoldingKind != string(partspec.FourJaw) || s.Grip.Kind != "jaws" || s.Grip.Inside {
		r.fail(at, "set over", "a %s cannot be set over by a throw", s.HoldingKind)
	}
	checkSetOverGrip(r, job, seen, s)
	checkShaking(r, seen, s)
}

// jawWide is the width of a small chuck's jaws, where the workshop does not say. Common practice, no source.
const jawWide = 8.0

// checkSetOverGrip holds what the jaws meet: a cylinder about the main axis, packed where it is finished to a tight size, with room for the clock.
func checkSetOverGrip(r *record, job *partspec.Job, seen *partspec.Part, s *plan.Setup) {
	at, base := where{setup: s.Number}, seen.Seen.Base
	on, ok := base.Feature(s.Grip.Surface).(*partspec.Spigot)
	if !ok {
		r.fail(at, "grip", "%q is no cylinder about the main axis", s.Grip.Surface)
		return
	}
	if math.Abs(2*s.Grip.RadiusMM-float64(on.Diameter.Mid())) > figureRadius {
		r.fail(at, "grip", "%s is Ø%s, the plan grips Ø%s", on.ID(), mm(float64(on.Diameter.Mid())), mm(2*s.Grip.RadiusMM))
	}
	if !on.AsSupplied && float64(on.Diameter.Width()) < tight && s.Grip.Packing == "" {
		r.fail(at, "bare jaws", "hard jaws without packing would grip %s, finished to %s mm (rule B-37)", on.ID(), mm(float64(on.Diameter.Width())))
	}
	width := jawWide
	for _, h := range job.Workshop.Holdings {
		if h.Name == s.Holding && h.JawWidth > 0 {
			width = float64(h.JawWidth)
		}
		if low := float64(h.Smallest); h.Name == s.Holding && 2*s.Grip.RadiusMM-2*s.ThrowMM < low-same {
			r.fail(at, "capacity", "one jaw stands %s from the axis, %s closes to %s", mm(s.Grip.RadiusMM-s.ThrowMM), h.Name, mm(low/2))
		}
	}
	if s.ThrowMM > width/2+same {
		r.fail(at, "grip", "the pair of jaws across the throw is %s wide and would press %s beside its middle", mm(width), mm(s.ThrowMM))
	}
	lo, hi := math.Min(s.Grip.FromZ, s.Grip.ToZ), math.Max(s.Grip.FromZ, s.Grip.ToZ)
	for _, f := range base.Features {
		left, right, ok := lostOf(f)
		if ok && left < hi-same && right > lo+same {
			r.fail(at, "grip", "%s lies between the jaws", f.Head().ID())
		}
	}
}

// lostOf is the stretch of the outside that an edge, a groove or a thread takes from a grip.
func lostOf(f partspec.Feature) (left, right float64, ok bool) {
	switch f := f.(type) {
	case *partspec.Chamfer:
		long := float64(f.Size.High) * math.Max(1, 1/math.Tan(f.Angle.Radians()))
		return float64(f.Edge.Z) - long, float64(f.Edge.Z) + long, true
	case *partspec.Fillet:
		return float64(f.Edge.Z - f.Radius.High), float64(f.Edge.Z + f.Radius.High), true
	case *partspec.Groove:
		return float64(f.Span.Left), float64(f.Span.Right), true
	case *partspec.Thread:
		return float64(f.Span.Left), float64(f.Span.Right), true
	}
	return 0, 0, false
}

// shakingMost is the force by which work that is off balance may shake a small lathe, N (rule B-09; the force is ours).
const shakingMost = 30.0

// balanceLeft is what nobody can balance away, kg mm (rule B-09). Ours, no source.
const balanceLeft = 2.0

// checkShaking holds every speed against the work's own metal at the throw; the jaws make it more, never less.
func checkShaking(r *record, seen *partspec.Part, s *plan.Setup) {
	e, mass := float64(seen.Seen.From.Offset.Value), 0.0
	for _, f := range seen.Stock.Features {
		if p, ok := f.(*partspec.Spigot); ok {
			radius := float64(p.Diameter.Low)/2 - e
			mass += math.Pi * radius * radius * float64(p.Span.Right-p.Span.Left) * seen.Material.DensityKgM3 * 1e-9
		}
	}
	cap, err := mechanics.Unbalance{KGMM: math.Max(balanceLeft, mass*e)}.SpeedCapRPM(shakingMost)
	for _, op := range s.Operations {
		if err != nil || op.RPM > cap*(1+figure) {
			r.fail(where{s.Number, op.ID}, "balance", "at %.0f a minute what is off balance shakes with more than %.0f N; %.0f is the most (rule B-09)", op.RPM, shakingMost, cap)
		}
	}
}

// own turns the outside radius and the wall of work as it is seen from an offset axis into its own radius and the least wall that it has anywhere round.
func (w *walk) own(radius, wall float64) (float64, float64) {
	if w.part.Seen == nil {
		return radius, wall
	}
	e := float64(w.part.Seen.From.Offset.Value)
	if wall >= radius { // solid
		return radius - e, radius - e
	}
	return radius - e, wall - 2*e
}
