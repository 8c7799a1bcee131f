package replay

import (
	"math"
	"slices"
	"sort"
)

// columnOf is the drawn column that a round hole belongs to.
func (f *flatWalk) columnOf(t taken) (column, bool) {
	if !t.centre {
		return column{}, false
	}
	x, y, _ := t.centred(0)
	for _, c := range f.drawn.columns {
		if cx, cy := c.place(); math.Hypot(x-cx, y-cy) <= c.widest()/2 {
			return c, true
		}
	}
	return column{}, false
}

// checkColumn holds what was made round one place: at every height the largest round has the drawn size and lies where it may, and no other round looks
// out of it.
func (f *flatWalk) checkColumn(c column, levels []float64, back, front float64) {
	var mine []taken
	for _, t := range f.work.taken {
		if d, ok := f.columnOf(t); ok && d.name == c.name {
			mine = append(mine, t)
		}
	}
	for _, r := range c.rounds {
		levels = append(slices.Clone(levels), r.levels(back, front)...)
	}
	slices.Sort(levels)
	levels = kinks(c, mine, levels, back, front)
	for i := 1; i < len(levels); i++ {
		// All is straight between two levels, or both the corner made and the one allowed are round: what holds at both holds between.
		for _, z := range [2]float64{levels[i-1] + offSurface, levels[i] - offSurface} {
			if !f.checkColumnAt(c, mine, z, back, front) {
				return
			}
		}
	}
}

// checkColumnAt is checkColumn at one height.
func (f *flatWalk) checkColumnAt(c column, mine []taken, z, back, front float64) bool {
	least, most := 0.0, 0.0
	for _, r := range c.rounds {
		least, most = math.Max(least, r.least(z, back, front)), math.Max(most, r.most(z, back, front))
	}
	var last taken
	made := 0.0
	for _, t := range mine {
		if _, _, r := t.centred(z); t.z0 < z && z < t.z1 && r > made {
			last, made = t, r
		}
	}
	if made < least-2*offSurface {
		f.failOp("most metal", "%s is Ø%s at %s from the back; at least Ø%s is drawn", c.name, mm(2*made), mm(z-back), mm(2*least))
		return false
	}
	if widest := made + last.over; widest > most+2*offSurface {
		f.fail(f.place(last.key.setup, last.key.op), "least metal", "%s is Ø%s at %s from the back; at most Ø%s is drawn", c.name, mm(2*widest), mm(z-back), mm(2*most))
		return false
	}
	return made == 0 || f.checkLies(c, last, mine, z, made)
}

// checkLies holds that a hole lies where it may, and that what was made there before does not look out of it.
func (f *flatWalk) checkLies(c column, last taken, mine []taken, z, made float64) bool {
	x, y, _ := last.centred(z)
	if !c.lies(last, x, y, c.ring > 0 && f.oneSetting(c)) {
		cx, cy := c.place()
		f.fail(f.place(last.key.setup, last.key.op), "place", "%s may lie %s, %s from its place, within %s more; that is more than is drawn", c.name, mm(x-cx), mm(y-cy), mm(last.off))
		return false
	}
	for _, t := range mine {
		if t.z0 >= z || t.z1 <= z || t.key == last.key || t.mouth || last.mouth { // where a cone and its hole meet, each looks out of the other
			continue
		}
		tx, ty, r := t.centred(z)
		if out := math.Hypot(tx-x, ty-y) + r + t.over + f.apart(t, last) - made; out > same && r < made-same {
			f.fail(f.place(t.key.setup, t.key.op), "place", "%s: what was drilled first may look out of it by %s", c.name, mm(out))
			return false
		}
	}
	return true
}

// oneSetting reports whether all holes of the ring that a column belongs to were placed in one setting.
func (f *flatWalk) oneSetting(c column) bool {
	setup := -1
	for _, other := range f.drawn.columns {
		if other.rounds[0].hole.feature != c.rounds[0].hole.feature {
			continue
		}
		x, y := other.place()
		t, ok := f.holeAt(x, y)
		if !ok || setup >= 0 && t.leader().setup != setup {
			return false
		}
		setup = t.leader().setup
	}
	return true
}

// apart is how far two rounds may lie from each other by the errors of their places: what both share in one setting does not count, nor what one had off when the
// other was set by it.
func (f *flatWalk) apart(a, b taken) float64 {
	if a.leader() == b.leader() {
		return 0
	}
	sa, sb := a.leader().setup, b.leader().setup
	switch {
	case sa == sb && a.mark != b.mark:
		return 0 // the drill goes where its spot leads it
	case sa == sb:
		return math.Max(0, a.off-a.shared) + math.Max(0, b.off-b.shared)
	case f.setBy(sa, b):
		return math.Max(f.centreError(), a.off-b.off)
	case f.setBy(sb, a):
		return math.Max(f.centreError(), b.off-a.off)
	}
	return a.off + b.off
}

// setBy reports whether a setting was set by a hole.
func (f *flatWalk) setBy(setup int, by taken) bool {
	k, ok := f.about[setup]
	return ok && k == by.leader()
}

// kinks adds to levels the heights between two of them at which one round, drawn or made, becomes wider than another: between two heights of what comes back the widest
// of each is straight.
func kinks(c column, mine []taken, levels []float64, back, front float64) []float64 {
	var radii []func(z float64) float64
	for _, r := range c.rounds {
		radii = append(radii, func(z float64) float64 { return r.least(z, back, front) }, func(z float64) float64 { return r.most(z, back, front) })
	}
	for _, t := range mine {
		radii = append(radii, func(z float64) float64 {
			if z <= t.z0 || z >= t.z1 {
				return 0
			}
			_, _, r := t.centred(z)
			return r
		})
	}
	all := append([]float64(nil), levels...)
	for i := 1; i < len(levels); i++ {
		low, high := levels[i-1]+offSurface, levels[i]-offSurface
		for k, a := range radii {
			for _, b := range radii[:k] {
				if from, to := a(low)-b(low), a(high)-b(high); from*to < 0 {
					all = append(all, low+(high-low)*from/(from-to))
				}
			}
		}
	}
	sort.Float64s(all)
	return all
}
