package rules

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// pairs gives an arc for every ordered pair of operations that holds.
func pairs(w Work, holds func(a, b shape.Op) (bool, partspec.End)) []Arc {
	var arcs []Arc
	for i, a := range w.Ops {
		for j, b := range w.Ops {
			if i == j {
				continue
			}
			if ok, end := holds(a, b); ok {
				arcs = append(arcs, Arc{Before: i, After: j, End: end})
			}
		}
	}
	return arcs
}

func indexOf(w Work, o shape.Op) int {
	for i := range w.Ops {
		if w.Ops[i].ID == o.ID {
			return i
		}
	}
	return -1
}

// turned reports whether an operation cuts an outside diameter.
func turned(o shape.Op) bool {
	switch o.Process {
	case plan.TurnRough, plan.TurnFinish:
		return true
	}
	return false
}

// firstCut reports whether an operation is the first that brings its block down from the stock.
func firstCut(w Work, o shape.Op) bool {
	if o.Process == plan.TurnRough {
		return true
	}
	if o.Process != plan.TurnFinish {
		return false
	}
	for _, other := range w.Ops {
		if other.Process == plan.TurnRough && other.Feature == o.Feature {
			return false
		}
	}
	return true
}

func outsideTaper(o shape.Op) bool { return o.Process == plan.TaperTurn && !o.Inside }

// inWay reports whether what roughing left where a is finished stands in the way of the tool that begins beside it to finish b. A knurl does not wait for its
// neighbours (rule A-14).
func inWay(w Work, a, b shape.Op) bool {
	finish := a.Process == plan.TurnFinish || outsideTaper(a)
	if !finish || b.Stage != shape.Finishing || knurled(w.Part, b) || math.Max(a.Z0-b.Z1, b.Z0-a.Z1) > besideTool {
		return false
	}
	for _, r := range w.Ops {
		if r.Process == plan.TurnRough && r.Feature == a.Feature {
			return greatest(r) > least(b)-besideTool*slope(b)
		}
	}
	return false
}

// besideTool is how far before a surface the tool that turns it begins, mm. Common practice, no source.
const besideTool = 1.0

// levelStep is how much higher, in radius, a cone may begin than the cylinder it falls away from: drawn sizes that differ by their limits alone make no shoulder.
// Ours, no source.
const levelStep = 0.02

// roughLeft is what roughing may leave on radius (rule A-05).
const roughLeft = 0.25

// outboard reports whether a lies nearer to the free end than b and is not larger, but for what roughing leaves on it.
func outboard(a, b shape.Op, free partspec.End) bool {
	nearer := a.Z0 >= b.Z1
	if free == partspec.Left {
		nearer = a.Z1 <= b.Z0
	}
	size, most := greatest(a), greatest(b)
	if a.Process == plan.TurnRough {
		size -= roughLeft
	}
	if slopes(a) {
		most += levelStep
	}
	return nearer && size <= most
}

// slopes reports whether what an operation leaves outside falls away to one side.
func slopes(o shape.Op) bool { return least(o) < greatest(o)-levelStep }

func greatest(o shape.Op) float64 {
	z0, z1, ok := o.Outer.Domain()
	if !ok {
		return 0
	}
	return o.Outer.Greatest(z0, z1)
}

// slope is how much an outside cone rises for each millimetre of its length; 0 for a cylinder.
func slope(o shape.Op) float64 {
	if o.Z1 <= o.Z0 {
		return 0
	}
	return (greatest(o) - least(o)) / (o.Z1 - o.Z0)
}

// least is the least radius of what an outside operation leaves.
func least(o shape.Op) float64 {
	z0, z1, ok := o.Outer.Domain()
	if !ok {
		return 0
	}
	return o.Outer.Least(z0, z1)
}

// widest is the radius of what an inside operation leaves.
func widest(o shape.Op) float64 {
	z0, z1, ok := o.Inner.Domain()
	if !ok {
		return 0
	}
	return o.Inner.Greatest(z0, z1)
}

// rank is the place of an operation in the order diameter, groove or corner, edge; 0 for what has no place in it.
func rank(w Work, o shape.Op) int {
	if _, edge := w.Part.Feature(o.Feature).(*partspec.Fillet); edge && o.Process != plan.Fillet { // an edge rounded by steps and file
		return 3
	}
	switch o.Process {
	case plan.TurnFinish, plan.BoreOut, plan.Ream, plan.TaperTurn, plan.FileProfile:
		return 1
	case plan.Groove, plan.Recess, plan.Fillet:
		return 2
	case plan.Chamfer:
		return 3
	}
	return 0
}

func threading(o shape.Op) bool {
	return o.Process == plan.Thread || o.Process == plan.Tap || o.Process == plan.Die
}

// meet reports whether two operations work in or against the same stretch of the axis, and where both have places beside it, at one of
// them or in one feature.
func meet(a, b shape.Op) bool {
	if a.Z0 > b.Z1 || a.Z1 < b.Z0 {
		return false
	}
	if !beside(a) || !beside(b) || a.Feature == b.Feature {
		return true
	}
	for _, s := range a.Spots {
		for _, o := range b.Spots {
			if math.Hypot(s.X-o.X, s.Y-o.Y) <= s.Radius+o.Radius {
				return true
			}
		}
	}
	return false
}

// runsOutIn reports whether an operation cuts a groove or a recess, on what a thread is on, that begins within a pitch of where the thread ends: the tool runs out in it.
func runsOutIn(w Work, threading, o shape.Op) bool {
	t, ok := w.Part.Feature(threading.Feature).(*partspec.Thread)
	if !ok || o.Process != plan.Groove && o.Process != plan.Recess || onOf(w.Part, o.Feature) != t.On {
		return false
	}
	pitch := float64(t.Thread.Pitch)
	return o.Z0 <= threading.Z1+pitch && o.Z1 >= threading.Z0-pitch
}

// onOf is the surface that a feature is cut in, or empty.
func onOf(p *partspec.Part, feature string) string {
	switch f := p.Feature(feature).(type) {
	case *partspec.Recess:
		return f.On
	case *partspec.Groove:
		return f.On
	case *partspec.Thread:
		return f.On
	case *partspec.Knurl:
		return f.On
	case *partspec.Chamfer:
		return f.Edge.Feature
	case *partspec.Fillet:
		return f.Edge.Feature
	}
	return ""
}

// boundElsewhere reports whether a relation binds what an operation makes to a surface that cannot be reached, in the ordinary way, while the part hangs on its bar:
// the two may have to be finished together later, and what is cut in such a surface waits with it.
func boundElsewhere(w Work, o shape.Op) bool {
	if on := onOf(w.Part, o.Feature); on != "" {
		for _, made := range w.Ops {
			if made.MakesSurface(on) && made.Stage == shape.Finishing && made.Feature != o.Feature && boundElsewhere(w, made) {
				return true
			}
		}
	}
	for _, r := range w.Part.Relations {
		for _, pair := range [][2]partspec.Surface{{r.Of, r.To}, {r.To, r.Of}} {
			if o.Stage != shape.Finishing || !o.MakesSurface(pair[0].String()) {
				continue
			}
			for i, other := range w.Ops {
				if other.Stage == shape.Finishing && other.MakesSurface(pair[1].String()) && !w.FromEnd(i, w.Free) {
					return true
				}
			}
		}
	}
	return false
}

// knurled reports whether what an operation makes carries a knurl of its own.
func knurled(p *partspec.Part, o shape.Op) bool {
	for _, f := range p.Features {
		if k, ok := f.(*partspec.Knurl); ok && o.MakesSurface(k.On) {
			return true
		}
	}
	return false
}
