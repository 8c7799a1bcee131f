package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// checkReach holds that the tool gets to where it cuts.
func (w *walk) checkReach(m motion, before solid.Body) {
	switch m.Kind {
	case partspec.Boring, partspec.RecessTool:
		w.checkBar(m, before)
	case partspec.Parting, partspec.Grooving, partspec.RoundNose:
		if !m.inside {
			w.checkBlade(m, before)
		}
	case partspec.Drills:
		w.checkDrillStart(m, before)
	case partspec.Reamers:
		w.checkReamer(m, before)
	}
	w.checkTailstock(m)
}

// checkBar holds that a bar enters the hole, and reaches.
func (w *walk) checkBar(m motion, before solid.Body) {
	mouth := w.endOf(before)
	deep := w.free() * (mouth - m.head)
	lo, hi := math.Min(m.head, mouth), math.Max(m.head, mouth)
	if deep <= same {
		return
	}
	hole := w.entered(m, before, lo, hi)
	if need := math.Max(float64(m.LeastBore), float64(m.BarDiameter)); hole < need-same {
		w.failOp("reach", "%s needs a hole of Ø%s to enter; it is Ø%s", m.Name, mm(need), mm(hole))
	}
	if most := m.overhang(); most > 0 && deep > most+same {
		w.failOp("reach", "cut %q stands %s out, %s mm of bar; at most %s (rule C-06)", m.name, mm(deep), mm(float64(m.BarDiameter)), mm(most))
	}
	if reach := float64(m.Reach); reach > 0 && deep > reach+same {
		w.failOp("reach", "cut %q goes %s into the hole; %s reaches %s", m.name, mm(deep), m.Name, mm(reach))
	}
	if back := float64(m.LeastBore) - math.Min(m.from.R, m.to.R); m.Kind == partspec.Boring && !m.along() && back > hole/2+same {
		w.failOp("reach", "cut %q faces in to Ø%s: the back of %s then stands at %s from the axis, the hole leaves %s", m.name, mm(2*math.Min(m.from.R, m.to.R)), m.Name, mm(back), mm(hole/2))
	}
	if depth := float64(m.Depth); depth > 0 {
		if off := solid.Lost(before, w.body, same).Inside; off > depth+same {
			w.failOp("reach", "cut %q is %s deep; %s cuts %s deep", m.name, mm(off), m.Name, mm(depth))
		}
	}
}

// overhang is the most that a bar may stand out (rule C-06: four diameters of steel, six of carbide); 0 where its diameter is not given.
func (c cutter) overhang() float64 {
	if c.Carbide {
		return 6 * float64(c.BarDiameter)
	}
	return 4 * float64(c.BarDiameter)
}

// entered is the diameter of the hole that a bar enters between two places. In front of it, where the point of the drill has left a cone, it cuts its
// own way; facing a floor, it stands before what it cuts.
func (w *walk) entered(m motion, before solid.Body, lo, hi float64) float64 {
	if !m.along() {
		before = w.body
	}
	front := pointZone(m)
	if w.free() > 0 {
		lo = math.Min(lo+front, hi-same)
	} else {
		hi = math.Max(hi-front, lo+same)
	}
	return 2 * before.Inner.Least(lo+same/2, hi-same/2)
}

// A drill's point is 0.3 of its diameter long (rule C-30), and stops a little short of a floor that is bored.
const (
	pointShare = 0.3
	pointSpare = 0.5
)

// pointZone is how far before the end of a bored hole the cone of a drill may lie.
func pointZone(m motion) float64 { return pointShare*2*math.Max(m.from.R, m.to.R) + pointSpare }

// endOf is the end of a body on the free side.
func (w *walk) endOf(b solid.Body) float64 {
	z0, z1 := b.Ends()
	if w.free() > 0 {
		return z1
	}
	return z0
}

// checkBlade holds that a blade is long enough to reach from the surface to its depth.
func (w *walk) checkBlade(m motion, before solid.Body) {
	reach := float64(m.Reach)
	if reach == 0 {
		return
	}
	headstock, freeEnd := m.width()
	a := math.Min(m.from.Z, m.to.Z) - math.Max(headstock, freeEnd) - same
	b := math.Max(m.from.Z, m.to.Z) + math.Max(headstock, freeEnd) + same
	surface := before.Outer.Greatest(a, b)
	deep := surface - math.Max(0, math.Min(m.from.R, m.to.R))
	if deep > reach+same {
		w.failOp("reach", "cut %q goes %s below the surface; %s reaches %s", m.name, mm(deep), m.Name, mm(reach))
	}
}

// checkDrillStart holds that a drill finds a hole or a centre to start in: on a plain face it wanders.
func (w *walk) checkDrillStart(m motion, before solid.Body) {
	if w.hole(before) <= same {
		w.failOp("start", "a drill of Ø%s starts on a plain face: spot it first", mm(m.size))
	}
}

// hole is the radius of the hole in the free end.
func (w *walk) hole(b solid.Body) float64 {
	z := w.endOf(b)
	left, right := b.Inner.At(z)
	if w.free() > 0 {
		return left
	}
	return right
}

// checkReamer holds that a reamer follows a hole for its whole length.
func (w *walk) checkReamer(m motion, before solid.Body) {
	z0, z1 := before.Ends()
	lo, hi := m.head, z1
	if w.free() < 0 {
		lo, hi = z0, m.head
	}
	lo, hi = math.Max(lo, z0), math.Min(hi, z1)
	if hi-lo > same && before.Inner.Least(lo+same, hi-same) <= same {
		w.failOp("start", "a reamer of Ø%s has no hole to follow", mm(m.size))
	}
}

// checkTailstock holds that nothing has to pass where a centre stands.
func (w *walk) checkTailstock(m motion) {
	if !w.setup.Tailstock {
		return
	}
	if m.set() {
		w.failOp("tailstock", "the tailstock's centre supports the work: a %s cannot be held in it", m.Kind)
		return
	}
	if !m.inside && m.outer.Least(-solid.Far, solid.Far) < w.hole(w.body)-same && w.free()*(m.head-w.freeZ()) >= -same {
		w.failOp("tailstock", "cut %q goes down to Ø%s, where the centre is", m.name, mm(2*m.to.R))
	}
}

// checkStart holds, before an operation, that its tool is of a kind that can do it.
func (w *walk) checkStart(op plan.Operation) {
	c, err := findCutter(w.job.Workshop, op.Tool.ID, op.Tool.SizeMM)
	if err != nil {
		w.failOp("tool", "%v", err)
		return
	}
	if !suits(op.Process, c.Kind) {
		w.failOp("tool", "a %s does not %s", c.Kind, op.Process)
	}
	if n := len(op.Cuts); n > 0 && c.set() {
		if last := op.Cuts[n-1]; last.ToolSizeMM > 0 && math.Abs(last.ToolSizeMM-op.Tool.SizeMM) > figure {
			w.failOp("tool", "it is to be done with Ø%s, and its last cut with Ø%s", mm(op.Tool.SizeMM), mm(last.ToolSizeMM))
		}
	}
}

// suits reports whether a kind of tool does a kind of work.
func suits(p plan.Process, k partspec.ToolKind) bool {
	kinds := map[plan.Process][]partspec.ToolKind{
		plan.Face:       {partspec.Turning, partspec.Boring},
		plan.Spot:       {partspec.CentreDrill},
		plan.Drill:      {partspec.Drills},
		plan.BoreOut:    {partspec.Boring},
		plan.Ream:       {partspec.Reamers},
		plan.TurnRough:  {partspec.Turning, partspec.Grooving, partspec.Parting, partspec.RoundNose},
		plan.TurnFinish: {partspec.Turning, partspec.Grooving, partspec.Parting, partspec.RoundNose},
		plan.Groove:     {partspec.Grooving, partspec.Parting, partspec.RoundNose, partspec.Turning, partspec.ChamferTool},
		plan.Recess:     {partspec.RecessTool, partspec.Boring},
		plan.Chamfer:    {partspec.ChamferTool, partspec.Turning, partspec.Boring},
		plan.Fillet:     {partspec.Turning, partspec.RoundNose, partspec.Boring, partspec.Grooving, partspec.Parting},
		plan.TaperTurn:  {partspec.Turning, partspec.Boring},
		plan.Steps:      {partspec.RoundNose, partspec.Grooving, partspec.Parting, partspec.Turning},
		plan.PartOff:    {partspec.Parting},
		plan.SawOff:     {partspec.Saw},

		plan.MarkOut:     {partspec.Scriber},
		plan.Counterbore: {partspec.Counterbores, partspec.EndMill},
		plan.Countersink: {partspec.Countersink},
		plan.BoreHead:    {partspec.BoringHead},
		plan.SawHole:     {partspec.HoleSaw},
		plan.SeatSteps:   {partspec.EndMill, partspec.BallNose},
		plan.MillFace:    {partspec.EndMill, partspec.FlyCutter},
		plan.MillEdge:    {partspec.EndMill},
		plan.MillFlat:    {partspec.EndMill, partspec.FlyCutter},
		plan.MillSlot:    {partspec.EndMill},
	}
	for _, ok := range kinds[p] {
		if ok == k {
			return true
		}
	}
	return false
}
