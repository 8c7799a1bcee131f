package replay

import (
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// checkBench holds what a plan says of work at the bench: it is held by hand, or in the bench vice.
func (w *walk) checkBench() {
	if w.setup.Grip.Kind != "bench" || w.setup.Tailstock {
		w.failOp("grip", "at the bench work is held by the bench: not by %q", w.setup.Grip.Kind)
	}
}

// checkOnTable holds what a plan says of what carries work on a machine's table.
func (w *walk) checkOnTable() {
	if w.setup.Tailstock {
		w.failOp("grip", "a %s has no tailstock", w.setup.MachineKind)
	}
	if bed := w.setup.Bed; bed != nil {
		switch bed.Kind {
		case "parallels", "backing board", "plate", "jaws", jawSteps:
		default:
			w.failOp("grip", "it lies on %q: expected parallels, a backing board, a plate, jaws or jaw steps", bed.Kind)
		}
	}
	if g, firm := w.setup.Grip, float64(w.holding.GripFirm); g.Kind == "vice" || g.Kind == "vee" {
		if g.Kind == "vice" && g.Jaws != jawsOfVice {
			w.failOp("grip", "a vice has %d jaws, not %d", jawsOfVice, g.Jaws)
		}
		if firm > 0 && g.WorkingN > firm*(1+figure) {
			w.failOp("grip force", "%.0f N; %s gives at most %.0f", g.WorkingN, w.holding.Name, firm)
		}
		if g.MostN != 0 && w.lastN() > g.MostN*(1+figure) {
			w.failOp("grip force", "%.0f N is more than the %.0f that the work stands", w.lastN(), g.MostN)
		}
	}
}

// checkLying holds that round work which lies in a vice or a vee block is gripped on a cylinder that is there, and that the vice opens as wide.
func (w *walk) checkLying() {
	if !w.offLathe() || !w.setup.Across {
		w.failOp("grip", "round work in a %s lies across, on a mill or a drilling machine", w.setup.Grip.Kind)
		return
	}
	if d, most := 2*w.setup.Grip.RadiusMM, float64(w.holding.Opening); most > 0 && d > most+same {
		w.failOp("capacity", "Ø%s is gripped; %s opens to %s", mm(d), w.holding.Name, mm(most))
	}
	w.checkGripped()
}

// checkClamped holds that work drawn down on the table stands on a plane face, and that what draws it down has metal to press on: straps on its top, or a screw
// through a bush in its bore.
func (w *walk) checkClamped() {
	if !w.offLathe() {
		w.failOp("grip", "turned work is clamped down on a mill or a drilling machine only")
		return
	}
	if w.setup.Grip.Inside {
		w.checkBolted()
		return
	}
	if n := len(w.setup.Clamps); n == 0 || w.holding.Clamps > 0 && n > w.holding.Clamps {
		w.failOp("grip", "%d clamps; %s has %d", n, w.holding.Name, w.holding.Clamps)
	}
	for i, c := range w.setup.Clamps {
		w.checkStrap(i+1, c)
	}
}

// checkStrap holds that a toe presses on metal that goes down to the bed below it, and not on a hole.
func (w *walk) checkStrap(n int, c plan.Clamp) {
	if most := float64(w.holding.ClampForce); most > 0 && c.ForceN > most*(1+figure) {
		w.failOp("grip force", "clamp %d presses with %.0f N; %s gives %.0f", n, c.ForceN, w.holding.Name, most)
	}
	rho, r := math.Hypot(c.XMM, c.YMM), c.ToeMM/2
	under := ringOf(w.body, rho, r)
	z0, z1 := w.body.Ends()
	whole := under.Outer.Least(z0+same, z1-same) >= rho+r-2*same && math.Max(0, under.Inner.Greatest(z0+same, z1-same)) <= math.Max(0, rho-r)+2*same
	if u0, u1 := under.Ends(); !whole || !under.Whole() || u0 > z0+same || u1 < z1-same {
		w.failOp("grip", "clamp %d presses at %s, %s, where the metal does not go down solid to the bed (rule B-07)", n, mm(c.XMM), mm(c.YMM))
	}
	for _, key := range w.holeOrder {
		h := w.holes[key]
		x, y := h.over()
		if !h.pose.across && math.Hypot(c.XMM-x, c.YMM-y) < r+h.widest()+h.off {
			w.failOp("grip", "clamp %d presses on hole %d of %s", n, h.number, h.id)
		}
	}
}

// leastBush is the length of bore that a close bush wants, and leastSeatFace how much of a face must be left round a bore to stand on, in radius. Common practice,
// no source.
const (
	leastBush     = 4.0
	leastSeatFace = 2.0
)

// checkBolted holds that the bore is there, that a bush is made for it, and that the end on the table is a face to stand on.
func (w *walk) checkBolted() {
	g := w.setup.Grip
	lo, hi := w.grip()
	z0, z1 := w.body.Ends()
	lo, hi = math.Max(lo, z0), math.Min(hi, z1)
	t := touching{w.body.Inner, g.RadiusMM, true}.found(lo, hi)
	if w.contact = t.length(lo, hi); w.contact < leastBush {
		w.failOp("grip", "a bush in Ø%s touches over %s mm; %s is needed", mm(2*g.RadiusMM), mm(w.contact), mm(leastBush))
	}
	made := false
	for _, h := range w.plan.MakeFirst {
		made = made || h.ForSetup == w.setup.Number && strings.HasPrefix(h.ID, "bush")
	}
	if !made {
		w.failOp("grip", "no bush is made to hold it by its bore")
	}
	down := z0
	if w.free() < 0 {
		down = z1
	}
	foot := w.body.Keep(down-offSurface, down+offSurface)
	if face := foot.Outer.Least(-solid.Far, solid.Far) - math.Max(0, foot.Inner.Greatest(-solid.Far, solid.Far)); face < leastSeatFace {
		w.failOp("grip", "it stands on a face %s wide all round; %s is needed", mm(face), mm(leastSeatFace))
	}
	for _, f := range w.part.Features {
		if s, ok := f.(*partspec.Seat); ok && (s.On == partspec.Left) == (w.free() > 0) && len(w.passesOf(s.Name, 0)) > 0 {
			w.failOp("grip", "it stands on the end that %s is cut across", s.ID())
		}
	}
}
