package replay

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/tables"
)

// Holes that are spotted through from another part are held against that part's holes, not against coordinates: the drill that spots leans in them, and what
// registers the two parts shifts, once while they are spotted and once more when they are screwed together.

// spotThrough follows the spotting of a pattern through its mate. It is hand work on the face that the other part lies on.
func (w *walk) spotThrough(op plan.Operation, f *partspec.Holes) {
	c, err := findCutter(w.job.Workshop, op.Tool.ID, op.Tool.SizeMM)
	switch {
	case err != nil || c.Kind != partspec.Drills:
		w.failOp("match", "%q is no drill of the workshop; the holes of %s are spotted by one", op.Tool.ID, f.Match)
		return
	case c.size > float64(f.Mate.Diameter.Low)+same:
		w.failOp("match", "a drill of Ø%s does not pass the holes of %s, which may be Ø%s", mm(c.size), f.Match, mm(float64(f.Mate.Diameter.Low)))
	case (w.free() < 0) != (f.From == partspec.Left):
		w.failOp("match", "%s lies on the %s end while it is spotted through; the other is free", f.Match.Part, f.From)
	}
	if _, again := w.spotted[f.Name]; again {
		w.failOp("match", "%s is spotted twice", f.ID())
	}
	if w.spotted == nil {
		w.spotted = map[string]float64{}
	}
	w.spotted[f.Name] = c.size
	lean := (float64(f.Mate.Diameter.High) - c.size) / 2
	shift := 2 * w.mateShift(f) // once when they are spotted, and once more when they are screwed together
	if f.Mate.Flush != nil {
		shift /= 2 // then nothing holds edges but the screws
	}
	if apart := lean + shift + spotWander(); apart > float64(f.Mate.Room)+figure {
		w.failOp("match", "a hole of %s may lie %s from the one of %s that it is spotted through; its screw has %s", f.ID(), mm(apart), f.Match, mm(float64(f.Mate.Room)))
	}
	seen := map[[2]float64]bool{}
	for _, cut := range op.Cuts {
		w.checkThrough(op, f, cut)
		if cut.At != nil {
			seen[[2]float64{cut.At.XMM, cut.At.YMM}] = true
		}
	}
	if len(seen) != len(f.Places) {
		w.failOp("match", "%d of %d holes of %s are spotted", len(seen), len(f.Places), f.ID())
	}
}

// checkThrough holds that a tool on a matched hole is set by its spot, at its drawn place, and claims no less error than that has.
func (w *walk) checkThrough(op plan.Operation, f *partspec.Holes, cut plan.Cut) {
	size, done := w.spotted[f.Name]
	switch {
	case cut.At == nil || cut.At.By != byMate && (op.Process != plan.Tap || cut.At.By != byHole):
		w.failOp("match", "cut %q is not set by its spot: %s is drawn spotted through from %s", cut.Name, f.ID(), f.Match)
		return
	case !done:
		w.failOp("match", "cut %q is set by a spot, and nothing has been spotted through from %s", cut.Name, f.Match)
		return
	}
	near := math.Inf(1)
	for _, at := range f.Places {
		near = math.Min(near, math.Hypot(cut.At.XMM-float64(at.X.Value), cut.At.YMM-float64(at.Y.Value)))
	}
	if near > figure {
		w.failOp("match", "cut %q stands at %s, %s; no hole of %s is drawn there", cut.Name, mm(cut.At.XMM), mm(cut.At.YMM), f.ID())
	}
	lean := (float64(f.Mate.Diameter.High) - size) / 2
	if need := lean + w.mateShift(f) + float64(f.Mate.Spread) + w.markError(); cut.At.By == byMate && cut.At.WithinMM < need-figure {
		w.failOp("located", "cut %q is said to lie within %s of its place; spotted through from %s it does within %s", cut.Name, mm(cut.At.WithinMM), f.Match, mm(need))
	}
}

// matchedHoles is a feature as a pattern that is spotted through from another; nil for anything else.
func matchedHoles(f partspec.Feature) *partspec.Holes {
	if h, ok := f.(*partspec.Holes); ok && h.Mate != nil {
		return h
	}
	return nil
}

// checkMatched holds that all cuts of an operation on a matched pattern are set by its spots.
func (w *walk) checkMatched(op plan.Operation, f partspec.Feature) {
	if h := matchedHoles(f); h != nil {
		for _, cut := range op.Cuts {
			w.checkThrough(op, h, cut)
		}
	}
}

// checkRegistered holds, on turned work, that what registers the other part is there to size when the holes are spotted.
func (w *walk) checkRegistered(f *partspec.Holes) {
	there := false
	switch r := w.part.Feature(f.Mate.Register).(type) {
	case *partspec.Bore:
		d := 2 * w.body.Inner.Greatest(middleOf(r.Span))
		there = d >= float64(r.Diameter.Low)-same && d <= float64(r.Diameter.High)+same
	case *partspec.Spigot:
		d := 2 * w.body.Outer.Greatest(middleOf(r.Span))
		there = d >= float64(r.Diameter.Low)-same && d <= float64(r.Diameter.High)+same
	}
	if !there {
		w.failOp("match", "%s, which registers %s, is not to size yet", f.Mate.Register, f.Match.Part)
	}
}

// middleOf is a short stretch at the middle of a span, clear of the edges broken at its ends.
func middleOf(s partspec.Span) (z0, z1 float64) {
	z := float64(s.Left+s.Right) / 2
	return z - offSurface, z + offSurface
}

// checkRegistered holds the same on flat work: it can be a bore, or its datum edges.
func (f *flatWalk) checkRegistered(h *partspec.Holes) {
	if h.Mate.Flush != nil {
		if !f.datumReady(0) || !f.datumReady(1) {
			f.failOp("match", "its datum edges, which %s is laid flush with, are not to size yet", h.Match.Part)
		}
		return
	}
	r, _ := f.part.Feature(h.Mate.Register).(*partspec.Bore)
	there := false
	if r != nil {
		if t, ok := f.holeAt(float64(r.At.X.Value), float64(r.At.Y.Value)); ok {
			_, _, radius := t.centred((f.work.back + f.work.front) / 2)
			there = 2*radius >= float64(r.Diameter.Low)-same && 2*radius <= float64(r.Diameter.High)+same
		}
	}
	if !there {
		f.failOp("match", "%s, which registers %s, is not to size yet", h.Mate.Register, h.Match.Part)
	}
}

// checkMates holds that the plan names every pattern that must be there before the part is spotted through from it, and no other.
func checkMates(r *record, part *partspec.Part, p plan.Part) {
	var drawn []plan.Mate
	for _, f := range part.Features {
		if h := matchedHoles(f); h != nil {
			m := plan.Mate{Part: h.Match.Part, Feature: h.Match.Feature, For: h.Name, Rule: "A-33"}
			if lies := h.Mate.Flush; lies != nil {
				for i, name := range lies.Here {
					m.Flush = append(m.Flush, plan.FlushEdge{Edge: name, On: lies.There[i]})
				}
				m.Over = lies.Over
			}
			drawn = append(drawn, m)
		}
	}
	same := func(a, b plan.Mate) bool {
		return a.Part == b.Part && a.Feature == b.Feature && a.For == b.For && a.Rule == b.Rule && a.Over == b.Over && slices.Equal(a.Flush, b.Flush)
	}
	if !slices.EqualFunc(drawn, p.Mates, same) {
		r.fail(where{}, "match", "the patterns of other parts that it wants to be there are not those that are drawn")
	}
}

// spotWander is how far a drill lands from the spot that leads it.
func spotWander() float64 { return float64(tables.PlaceError(tables.ByDrill)) }
