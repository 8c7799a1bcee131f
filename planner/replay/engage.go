package replay

import (
	"math"
	"sort"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
)

// teethOfMill are those of an end mill that nobody counted: two, as those have that cut slots and sink in. Common practice, no source. The feed is given a
// revolution; a cutter with more teeth takes less with each.
const teethOfMill = 2.0

// engaged is how deep, along the spindle, and how wide a milling cutter cuts at once.
func (w *walk) engaged(a aside) (deep, wide float64) {
	switch f := w.part.Feature(a.feature).(type) {
	case *partspec.Seat, *partspec.SideSeat:
		v, _ := w.seatOf(f)
		return w.engagedInSeat(v, v.sees(a))
	case *partspec.Flat, *partspec.Slot:
		return w.level(a) - a.to[2], 2 * a.radius
	}
	return 0, 0
}

// engagedInSeat looks at the steps before: how wide the stretch is where they have left metal under the cutter, and how deep it stands.
func (w *walk) engagedInSeat(v seatView, p seatPass) (deep, wide float64) {
	if p.lies {
		return v.t1 - v.t0, 2 * p.radius
	}
	if now := &w.engaging; now.key == p.key && now.from == p.from && now.to == p.to {
		return now.deep, now.wide
	}
	defer func() { w.engaging = engagement{p.key, p.from, p.to, deep, wide} }()
	lo, hi := p.s-p.radius, p.s+p.radius
	cuts := []float64{lo, hi}
	var before []groove
	passes := w.seatPasses(v)
	for i := range passes {
		old := &passes[i]
		if old.key == p.key || old.lies || math.Abs(old.s-p.s) >= old.radius+p.radius {
			continue
		}
		g := groove{old.s - old.radius, old.s + old.radius, old.q}
		before = append(before, g)
		for _, at := range []float64{g.from, g.to} {
			if at > lo && at < hi {
				cuts = append(cuts, at)
			}
		}
	}
	sort.Float64s(cuts)
	for i := 1; i < len(cuts); i++ {
		mid, floor := (cuts[i-1]+cuts[i])/2, 0.0
		for _, g := range before {
			if g.from < mid && mid < g.to && g.floor > floor {
				floor = g.floor
			}
		}
		if floor < p.q-same && v.s0 < mid && mid < v.s1 {
			wide += cuts[i] - cuts[i-1]
			deep = math.Max(deep, p.q-floor)
		}
	}
	return deep, wide
}

// engagement is what was found of the pass looked at last: a check and a force both ask.
type engagement struct {
	key        cutKey
	from, to   place
	deep, wide float64
}

// groove is what a pass leaves, seen along it: from where to where, and how deep its floor lies.
type groove struct{ from, to, floor float64 }

// millPush is the force of a tooth where its chip is thickest: over the whole width where the cutter is buried to its middle, less where it only takes a strip.
func (w *walk) millPush(feedMM float64, a aside, p push) (push, bool) {
	deep, wide := w.engaged(a)
	if deep <= same || wide <= same {
		return p, false
	}
	share := math.Min(wide/(2*a.radius), 0.5)
	return w.toothPush(deep, 2*feedMM/teethOfMill*math.Sqrt(share*(1-share)), a, p)
}

// swungPush is the force of a boring head's or a fly-cutter's single tooth.
func (w *walk) swungPush(feedMM float64, a aside, p push) (push, bool) {
	deep := 0.0
	if f, ok := w.part.Feature(a.feature).(*partspec.Seat); ok {
		v := w.viewOf(f)
		q, last := v.sees(a).q, -a.radius // its rim then just touches the end face
		for _, old := range w.seatPasses(v) {
			if old.key != a.key && old.swung {
				last = math.Max(last, old.q)
			}
		}
		deep = q - last
	}
	if deep <= same {
		return p, false
	}
	return w.toothPush(deep, feedMM, a, p)
}

// toothPush is the force of one tooth by Kienzle's law.
func (w *walk) toothPush(deep, chip float64, a aside, p push) (push, bool) {
	mat := w.part.Material
	f, err := mechanics.CuttingForce(mechanics.Cut{KC11MPa: mat.Kc11MPa, MC: mat.Mc, DepthMM: deep, FeedMM: chip, EdgeAngleDeg: edgeAngle, WearFactor: wear})
	if err != nil {
		w.failOp("force", "%v", err)
		return p, false
	}
	p.mainN, p.radius, p.sideN = f.MainN, a.radius, f.MainN
	return p, true
}
