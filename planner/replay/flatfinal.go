package replay

import (
	"fmt"
	"math"
	"sort"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

// checkFinished holds the finished work against the drawing.
func (f *flatWalk) checkFinished() {
	f.at = where{}
	back, front, ok := f.work.faces()
	if !ok {
		f.failOp("finished part", "nothing is left")
		return
	}
	if low, high := float64(f.part.Length.Low), float64(f.part.Length.High); front-back < low-same || front-back > high+same {
		f.failOp("size", "it is %s thick; %s to %s is drawn", mm(front-back), mm(low), mm(high))
	}
	levels := f.levelsOf(back, front)
	f.checkStanding(levels)
	f.checkEaten(levels, back, front)
	for _, c := range f.drawn.columns {
		f.checkColumn(c, levels, back, front)
	}
	for _, s := range f.drawn.slots {
		f.checkSlot(s, levels, back, front)
	}
	f.checkMade(back, front)
	f.checkTapped()
	f.checkFaceSeats()
	f.checkPlaces()
}

// levelsOf are the heights between the faces at which work or drawing change.
func (f *flatWalk) levelsOf(back, front float64) []float64 {
	all := f.work.levels()
	for _, c := range f.drawn.columns {
		for _, r := range c.rounds {
			if r.through {
				continue
			}
			for _, deep := range []float64{float64(r.depth.Low), float64(r.depth.High)} {
				if r.from == partspec.Left {
					all = append(all, back+deep)
				} else {
					all = append(all, front-deep)
				}
			}
		}
	}
	for _, s := range f.drawn.slots {
		if s.through {
			continue
		}
		for _, deep := range []float64{float64(s.depth.Low), float64(s.depth.High)} {
			if s.from == partspec.Left {
				all = append(all, back+deep)
			} else {
				all = append(all, front-deep)
			}
		}
	}
	sort.Float64s(all)
	kept := []float64{back}
	for _, z := range all {
		if z-kept[len(kept)-1] > same && z < front-same {
			kept = append(kept, z)
		}
	}
	return append(kept, front)
}

// checkStanding holds that nothing stands out of the outline by more than its limits, whatever the errors of place.
func (f *flatWalk) checkStanding(levels []float64) {
	last := ""
	for i := 1; i < len(levels); i++ {
		z := (levels[i-1] + levels[i]) / 2
		var gone []plane.Set
		for _, t := range f.work.taken {
			if !t.centre && t.z0 < z && z < t.z1 {
				gone = append(gone, t.at(z, -t.off))
			}
		}
		left := plane.Common([]plane.Set{f.work.stock, plane.Around(f.drawn.most)}, gone)
		if len(left) == 0 {
			continue
		}
		x, y := left[0].At(0.5)
		name, far := f.edgeNear(x, y)
		if text := fmt.Sprintf("%s mm of metal may be left too much beyond %s, at %s, %s", mm(far), name, mm(x), mm(y)); text != last {
			f.failOp("most metal", "%s", text)
			last = text
		}
	}
}

// edgeNear names the edge of the outline nearest to a place outside it, and how far off it is beyond its limit.
func (f *flatWalk) edgeNear(x, y float64) (name string, far float64) {
	far = math.Inf(1)
	for i, e := range f.drawn.outline.Edges {
		if _, _, d := e.Nearest(x, y); d < far {
			name, far = f.part.Outline.Edges[i].Name, d
		}
	}
	return name, far
}

// checkEaten holds that nothing that was taken, whatever the errors of place, comes into metal that the drawing wants.
func (f *flatWalk) checkEaten(levels []float64, back, front float64) {
	for _, t := range f.work.taken {
		if _, inColumn := f.columnOf(t); inColumn {
			continue // held against what is drawn round its place
		}
		for i := 1; i < len(levels); i++ {
			z := (levels[i-1] + levels[i]) / 2
			if z <= t.z0 || z >= t.z1 {
				continue
			}
			bad := plane.Common([]plane.Set{t.at(z, t.off), f.drawn.least}, f.slotsAt(z, back, front))
			if len(bad) == 0 {
				continue
			}
			x, y := bad[0].At(0.5)
			name, deep := f.edgeNear(x, y)
			f.fail(f.place(t.key.setup, t.key.op), "least metal", "it may cut metal that is drawn, at %s, %s, %s from the %s, %s from the back", mm(x), mm(y), mm(deep), name, mm(z-back))
			break
		}
	}
}

// slotsAt are the drawn slots at a height, as wide and as long as they may be.
func (f *flatWalk) slotsAt(z, back, front float64) []plane.Set {
	var all []plane.Set
	for _, s := range f.drawn.slots {
		if s.through || s.under(z, back, front) <= float64(s.depth.High)+same {
			c := s.path
			c.Radius = s.high + s.within
			all = append(all, c)
		}
	}
	return all
}

func (s drawnSlot) under(z, back, front float64) float64 {
	if s.from == partspec.Left {
		return z - back
	}
	return front - z
}

// checkSlot holds a slot's width, and that all of it is open to its depth.
func (f *flatWalk) checkSlot(s drawnSlot, levels []float64, back, front float64) {
	low := s.path
	low.Radius = s.low - same
	for i := 1; i < len(levels); i++ {
		z := (levels[i-1] + levels[i]) / 2
		if !s.through && s.under(z, back, front) > float64(s.depth.Low)-same {
			continue
		}
		if left := plane.Common([]plane.Set{low}, f.work.gone(z)); len(left) > 0 {
			f.failOp("most metal", "%s is not open at %s from the back", s.name, mm(z-back))
			return
		}
	}
	if w := f.slotWidth(s); w > 2*s.high+same {
		f.failOp("least metal", "%s is %s wide; at most %s is drawn", s.name, mm(w), mm(2*s.high))
	}
}

// slotWidth is the width over all passes along a slot.
func (f *flatWalk) slotWidth(s drawnSlot) float64 {
	long := s.path.Length()
	if long <= same {
		return 0
	}
	ox, oy := (s.path.Y1-s.path.Y0)/long, -(s.path.X1-s.path.X0)/long
	left, right := 0.0, 0.0
	for _, t := range f.work.taken {
		g, ok := t.swath.(swept)
		if !ok || !s.path.Grown(s.within+same).Has(g.path.X0, g.path.Y0) || !s.path.Grown(s.within+same).Has(g.path.X1, g.path.Y1) || g.path.Radius > s.high+same {
			continue
		}
		for _, p := range [][2]float64{{g.path.X0, g.path.Y0}, {g.path.X1, g.path.Y1}} {
			d := (p[0]-s.path.X0)*ox + (p[1]-s.path.Y0)*oy
			left, right = math.Max(left, g.path.Radius-d), math.Max(right, g.path.Radius+d)
		}
	}
	return left + right
}

// checkMade holds that every edge and both faces were cut, unless the drawing leaves them as supplied.
func (f *flatWalk) checkMade(back, front float64) {
	z := (back + front) / 2
	for i, e := range f.part.Outline.Edges {
		if made := f.edgeMade(i, z); made == e.AsSupplied {
			if made {
				f.failOp("finished part", "%s is cut; the drawing leaves it as supplied", e.Name)
			} else {
				f.failOp("finished part", "%s is never cut to its place", e.Name)
			}
		}
	}
	backMade, frontMade := false, false
	for _, t := range f.work.taken {
		if t.centre {
			continue
		}
		backMade = backMade || math.Abs(t.z1-back) <= same
		frontMade = frontMade || math.Abs(t.z0-front) <= same
	}
	supplied := f.part.Stock.FacesAsSupplied
	for _, face := range []struct {
		name string
		made bool
	}{{"back", backMade}, {"front", frontMade}} {
		if face.made && supplied {
			f.failOp("finished part", "the %s is cut; the drawing leaves it as supplied", face.name)
		} else if !face.made && !supplied {
			f.failOp("finished part", "the %s is never cut", face.name)
		}
	}
}

// edgeMade reports whether a tool has run just outside the middle of an edge.
func (f *flatWalk) edgeMade(i int, z float64) bool {
	e, drawn := f.drawn.outline.Edges[i], f.part.Outline.Edges[i]
	x, y := e.At(0.5)
	ox, oy := e.Outward(0.5)
	for _, t := range f.work.taken {
		if t.centre || t.z0 >= z || t.z1 <= z {
			continue
		}
		if out := float64(drawn.On) + t.off*f.wide(t, i) + edgeBeside; t.at(z, 0).Has(x+out*ox, y+out*oy) {
			return true
		}
	}
	return false
}

// edgeBeside is how far outside an edge the tool that made it is looked for: beyond all rounding, less than the radius of any cutter.
const edgeBeside = 0.05

// wide is what an error counts of at an edge: for hand work its own, else one.
func (f *flatWalk) wide(t taken, edge int) float64 {
	switch g := t.swath.(type) {
	case trimmed:
		return g.sure[edge]
	case strip:
		return g.sure
	case alongside:
		return g.sure
	}
	return 1
}

// checkTapped holds that every thread has been tapped.
func (f *flatWalk) checkTapped() {
	for _, c := range f.drawn.columns {
		for _, t := range c.tapped {
			if !f.tapped[t.hole] {
				f.failOp("finished part", "the thread of %s is never cut", c.name)
			}
		}
	}
}

// tellFlat writes down what has been proved.
func tellFlat(r *record, p plan.Part, part *partspec.Part, movements, worlds int) {
	r.hold("finished part", "its rim, faces, holes and slots lie between the least and the most metal of the drawing, wherever within their errors the places are found, at %s of what is reached by measuring", counted(worlds, "corner", ""))
	r.hold("cuts", "%s rebuilt from pose, tool and dial readings, or from what saw and file are said to leave; each removes metal and stays out of drawn metal", counted(movements, "movement", ""))
	r.hold("grips", "in %s what is gripped or clamped is there and carried, stays %s mm clear of every tool, and holds against the cuts", counted(len(p.Setups), "setup", ""), mm(clearance))
	r.hold("dials", "every nought has a surface or a mark to be set on; cards, tables of holes and readings agree")
	r.hold("speeds", "every speed is a step of its machine and below its caps")
	for _, f := range part.Features {
		if s, ok := f.(*partspec.Seat); ok {
			r.hold("milled", "%s is cut to its curve by passes that go nowhere past it and leave no more than the file takes; no machine holds the work after it", s.ID())
		}
	}
	if n := len(part.Relations); n > 0 {
		r.hold("relations", "%s through the chain of setups", counted(n, "drawn relation", "hold"))
	}
}
