package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/solid"
)

// checkMilling holds at once what must be true of a pass of a seat, a flat or a slot.
func (w *walk) checkMilling(op plan.Operation, f partspec.Feature, a aside) {
	switch f := f.(type) {
	case *partspec.Seat:
		w.checkSeatPass(w.viewOf(f), a)
	case *partspec.SideSeat:
		w.checkSidePass(op, f, a)
	case *partspec.Flat:
		k, ok := flatAt(f, a.pose)
		if !ok {
			w.failOp("pose", "%s is cut across the axis at %s degrees or a like one; the spindle stands at %s", f.ID(), mm(float64(f.Angle)), mm(a.pose.deg))
		}
		w.checkFlatTurned(f, directionOf(f, k), a)
		w.checkLevel(op, a)
	case *partspec.Slot:
		if !a.pose.across || !a.pose.looks(float64(f.Angle)) {
			w.failOp("pose", "%s is cut across the axis at %s degrees; the spindle stands at %s", f.ID(), mm(float64(f.Angle)), mm(a.pose.deg))
		}
		w.checkLevel(op, a)
	}
	w.checkRim(op, a.pass, 2*a.radius)
	w.checkWayIn(a)
}

// flatAt is which of a feature's like flats a pose looks at, from 0.
func flatAt(f *partspec.Flat, p pose) (int, bool) {
	best := 0
	for k := range max(1, f.Count) {
		if turnBetween(p.deg, directionOf(f, k)) < turnBetween(p.deg, directionOf(f, best)) {
			best = k
		}
	}
	return best, p.across && p.looks(directionOf(f, best))
}

// directionOf is where one of a feature's like flats looks.
func directionOf(f *partspec.Flat, k int) float64 {
	return float64(f.Angle) + 360*float64(k)/float64(max(1, f.Count))
}

// level is how high the metal under a pass stands that moves over a flat or a slot: the surface, or what earlier passes have left along all of its way.
func (w *walk) level(a aside) float64 {
	lo, hi := math.Min(a.from[0], a.to[0])-a.radius, math.Max(a.from[0], a.to[0])+a.radius
	high := w.body.Outer.Greatest(lo, hi)
	left := high
	for _, old := range w.milled {
		if old.key == a.key || !old.pose.across || !sameTurn(old.pose.deg, a.pose.deg) {
			continue
		}
		path := old.path()
		if path.Off(a.from[0], a.from[1]) <= old.radius-a.radius+same && path.Off(a.to[0], a.to[1]) <= old.radius-a.radius+same {
			left = math.Min(left, old.to[2])
		}
	}
	return left
}

// checkLevel holds that a pass over a flat or a slot is no deeper than the operation says, and takes metal.
func (w *walk) checkLevel(op plan.Operation, a aside) {
	deep := w.level(a) - a.to[2]
	w.removing[a.key] = w.removing[a.key] || deep > same
	if deep > op.DepthMM+w.slackRadius+figure {
		w.failOp("depth of cut", "cut %q is %s deep, the operation says at most %s", a.name, mm(deep), mm(op.DepthMM))
	}
}

// checkWayIn holds that a pass which moves over the table begins in the clear, or where one before it has been, or goes straight down with a cutter that can.
func (w *walk) checkWayIn(a aside) {
	if _, moves := a.slot(); !moves || a.Kind == partspec.FlyCutter || a.Kind == partspec.BoringHead {
		return
	}
	if w.standsClear(a) {
		return
	}
	for _, old := range w.milled {
		if old.key != a.key && old.pose == a.pose && old.path().Off(a.from[0], a.from[1]) <= old.radius-a.radius+same && a.pose.up()*(old.to[2]-a.from[2]) <= same {
			return
		}
	}
	if a.Kind == partspec.EndMill || a.Kind == partspec.BallNose {
		if plungeable(w.level(a), a) {
			return
		}
	}
	w.failOp("way in", "cut %q begins in metal, at %s, %s", a.name, mm(a.from[0]), mm(a.from[1]))
}

// plungeable reports whether an end mill may sink straight in where a pass begins: no deeper than it is wide. It must be one that cuts over its middle.
func plungeable(level float64, a aside) bool {
	return a.pose.up()*level-a.pose.up()*a.from[2] <= 2*a.radius+same
}

// standsClear reports whether a tool stands beside the work where a pass begins.
func (w *walk) standsClear(a aside) bool {
	z0, z1 := w.body.Ends()
	if !a.pose.across {
		rho := math.Hypot(a.from[0], a.from[1])
		if rho-a.radius >= w.body.Outer.Greatest(z0, z1) {
			return true
		}
		b := ringOf(w.body, rho, a.radius)
		if a.pose.up() > 0 {
			return b.Keep(a.from[2]+same, solid.Far).Empty()
		}
		return b.Keep(-solid.Far, a.from[2]-same).Empty()
	}
	lo, hi := a.from[0]-a.radius, a.from[0]+a.radius
	if hi <= z0+same || lo >= z1-same {
		return true
	}
	r := w.body.Outer.Greatest(lo, hi)
	if a.from[2] >= r-same {
		return true
	}
	return math.Abs(a.from[1])-a.radius >= math.Sqrt(math.Max(0, r*r-math.Max(0, a.from[2])*math.Max(0, a.from[2])))-same
}

// checkMilled holds, when all is done, that every seat, flat and slot is there as drawn.
func (w *walk) checkMilled(least solid.Body) {
	for _, f := range w.part.Features {
		switch f := f.(type) {
		case *partspec.Seat:
			w.finishSeat(w.viewOf(f))
		case *partspec.SideSeat:
			w.finishSeat(w.sideView(f))
		case *partspec.Flat:
			for k := range max(1, f.Count) {
				w.finishFlat(f, k, least)
			}
		case *partspec.Slot:
			w.finishSlot(f, least)
		}
	}
}

// passesOf are the passes of a feature, of one of its like flats.
func (w *walk) passesOf(feature string, k int) (list []aside) {
	for _, a := range w.milled {
		if a.feature != feature {
			continue
		}
		if f, ok := w.part.Feature(feature).(*partspec.Flat); ok {
			if at, _ := flatAt(f, a.pose); at != k {
				continue
			}
		}
		list = append(list, a)
	}
	return list
}

// finishFlat holds one flat: its plane at the drawn distance over all of its length and width, and nothing cut beyond.
func (w *walk) finishFlat(f *partspec.Flat, k int, least solid.Body) {
	list := w.passesOf(f.Name, k)
	if len(list) == 0 {
		w.fail(where{}, "finished part", "%s is never cut at %s degrees", f.ID(), mm(directionOf(f, k)))
		return
	}
	left, right := w.laidOn(f.On, f.Span, list)
	off := w.generalOf(right - left)
	lo, hi := w.toTheEnds(f.Span, left-off, right+off)
	var done []plane.Set
	for _, a := range list {
		if a.to[2] < float64(f.Distance.Low)-same {
			w.fail(a.at, "least metal", "cut %q goes to %s from the axis; %s is drawn %s to %s", a.name, mm(a.to[2]), f.ID(), mm(float64(f.Distance.Low)), mm(float64(f.Distance.High)))
		}
		if a.to[2] <= float64(f.Distance.High)+same {
			done = append(done, a.path())
		}
		w.checkBeside(a, lo, hi, least)
	}
	r := w.body.Outer.Greatest(left+same, right-same)
	half := math.Sqrt(math.Max(0, r*r-float64(f.Distance.High)*float64(f.Distance.High)))
	z0, z1 := w.body.Ends()
	target := plane.Rectangle(math.Max(left+off, z0), -half, math.Min(right-off, z1), half).Figure()
	if rim := plane.Common([]plane.Set{target}, done); len(rim) > 0 {
		w.fail(list[len(list)-1].at, "most metal", "%s is not cut all over: metal stands at %s along the axis, %s to the side", f.ID(), mm(rim[0].X0), mm(rim[0].Y0))
	}
}

// laidOn lays a stretch from that end of the feature it is cut in that suits the passes better: the drawing, as it is read, does not say from which end it is measured.
func (w *walk) laidOn(on string, span partspec.Span, list []aside) (left, right float64) {
	left, right = float64(span.Left), float64(span.Right)
	a, b, ok := spanOfNamed(w.part.Feature(on))
	if !ok {
		return left, right
	}
	reach := [2]float64{math.Inf(1), math.Inf(-1)}
	for _, p := range list {
		reach[0] = math.Min(reach[0], math.Min(p.from[0], p.to[0])-p.radius)
		reach[1] = math.Max(reach[1], math.Max(p.from[0], p.to[0])+p.radius)
	}
	outer := w.drawing(lengthsOf(w.part)).outer
	best, shift := math.Inf(1), 0.0
	for _, z := range []float64{a, b} {
		by := outer.at(z).at - z
		if off := math.Min(math.Abs(reach[0]-left-by), math.Abs(reach[1]-right-by)); off < best {
			best, shift = off, by
		}
	}
	return left + shift, right + shift
}

// checkBeside holds that a pass across the axis takes nothing before or beyond a stretch of it. A stretch that the drawing takes to the end of the part goes as far as the part
// does, however long it came out.
func (w *walk) checkBeside(a aside, lo, hi float64, least solid.Body) {
	z0, z1 := math.Min(a.from[0], a.to[0])-a.radius-a.within, math.Max(a.from[0], a.to[0])+a.radius+a.within
	for _, s := range [2][2]float64{{z0, math.Min(lo, z1)}, {math.Max(hi, z0), z1}} {
		if s[1]-s[0] <= same {
			continue
		}
		if stands := least.Outer.Greatest(s[0]+same, s[1]-same); stands > a.to[2]+same {
			w.fail(a.at, "least metal", "cut %q goes %s mm deep into the metal between %s and %s", a.name, mm(stands-a.to[2]), mm(s[0]), mm(s[1]))
			return
		}
	}
}

// toTheEnds widens the bounds of a stretch that is drawn to an end of the part.
func (w *walk) toTheEnds(span partspec.Span, lo, hi float64) (float64, float64) {
	if float64(span.Left) <= same {
		lo = -solid.Far
	}
	if float64(span.Right) >= float64(w.part.Length.Value)-same {
		hi = solid.Far
	}
	return lo, hi
}

// finishSlot holds a slot along the outside: its width, depth, length and place.
func (w *walk) finishSlot(f *partspec.Slot, least solid.Body) {
	list := w.passesOf(f.Name, 0)
	if len(list) == 0 {
		w.fail(where{}, "finished part", "%s is never cut", f.ID())
		return
	}
	at := list[len(list)-1].at
	left, right := w.laidOn(f.On, f.Span, list)
	off := w.generalOf(right - left)
	lo, hi := w.toTheEnds(f.Span, left-off, right+off)
	r := w.body.Outer.Greatest(left+same, right-same)
	floor := [2]float64{r - float64(f.Depth.High), r - float64(f.Depth.Low)}
	var done []plane.Set
	low, high, within := math.Inf(1), math.Inf(-1), 0.0
	for _, a := range list {
		if a.to[2] < floor[0]-same {
			w.fail(a.at, "least metal", "cut %q goes %s deep; %s is drawn %s to %s", a.name, mm(r-a.to[2]), f.ID(), mm(float64(f.Depth.Low)), mm(float64(f.Depth.High)))
		}
		if a.to[2] <= floor[1]+same {
			done = append(done, a.path())
		}
		low, high = math.Min(low, math.Min(a.from[1], a.to[1])-a.radius), math.Max(high, math.Max(a.from[1], a.to[1])+a.radius)
		within = math.Max(within, a.within)
		w.checkBeside(a, lo, hi, least)
	}
	if wide := high - low; wide < float64(f.Width.Low)-same || wide > float64(f.Width.High)+same {
		w.fail(at, "size", "%s comes out %s wide, drawn %s to %s", f.ID(), mm(wide), mm(float64(f.Width.Low)), mm(float64(f.Width.High)))
	}
	turned := 0.0
	for _, a := range list {
		turned = math.Max(turned, math.Abs(asideBy(r, float64(f.Angle), a.pose)))
	}
	if aside := math.Abs(high+low)/2 + within + turned; aside > w.generalOf(2*r)+figure {
		w.fail(at, "place", "%s may lie %s beside the axis, drawn within %s", f.ID(), mm(aside), mm(w.generalOf(2*r)))
	}
	half := float64(f.Width.Low) / 2
	z0, z1 := math.Max(left+off, -half), math.Min(right-off, float64(w.part.Length.Value)+half)
	target := plane.Capsule{X0: z0 + half, Y0: (low + high) / 2, X1: z1 - half, Y1: (low + high) / 2, Radius: half - figure}
	if rim := plane.Common([]plane.Set{target}, done); len(rim) > 0 {
		w.fail(at, "most metal", "%s is not cut to its depth over all of its length and width: metal stands at %s along the axis", f.ID(), mm(rim[0].X0))
	}
}
