package replay

import (
	"math"

	"catchplate/partspec"
)

// findMachine finds the setup's machine in the workshop.
func (w *walk) findMachine() bool {
	if w.onSlide() {
		return w.findSlide()
	}
	for _, m := range w.job.Workshop.Machines {
		if m.Name == w.setup.Machine && string(m.Kind) == w.setup.MachineKind {
			w.machine = m
			return w.fits()
		}
	}
	w.failOp("machine", "the workshop has no %s called %q", w.setup.MachineKind, w.setup.Machine)
	return false
}

// fits holds the work against the machine's capacity; what the workshop does not give is not checked.
func (w *walk) fits() bool {
	z0, z1 := w.body.Ends()
	across := 2 * w.body.Outer.Greatest(z0, z1)
	if swing := float64(w.machine.Swing); swing > 0 && across > swing {
		w.failOp("machine", "the work is %s across, %s swings %s", mm(across), w.machine.Name, mm(swing))
	}
	if w.setup.Grip.Kind == "jaws" { // what goes back through the spindle is not between the centres
		lo, hi := w.grip()
		if w.free() > 0 {
			z0 = math.Max(z0, lo)
		} else {
			z1 = math.Min(z1, hi)
		}
	}
	if between := float64(w.machine.BetweenCentres); w.setup.Tailstock && between > 0 && z1-z0 > between {
		w.failOp("machine", "the work is %s long, %s takes %s between centres", mm(z1-z0), w.machine.Name, mm(between))
	}
	return true
}

// findHolding finds the setup's holding in the workshop.
func (w *walk) findHolding() bool {
	if w.atBench() {
		return true // nothing holds it but the bench vice, or a hand
	}
	for _, h := range w.job.Workshop.Holdings {
		if h.Name == w.setup.Holding && string(h.Kind) == w.setup.HoldingKind {
			w.holding = h
			return true
		}
	}
	w.failOp("holding", "the workshop has no %s called %q", w.setup.HoldingKind, w.setup.Holding)
	return false
}

// hard reports whether a holding grips with hard jaws, which mark what they grip.
func hard(k partspec.HoldingKind) bool {
	return k == partspec.ThreeJaw || k == partspec.FourJaw || k == partspec.DividingHead || k == partspec.TiltingPlate
}

// capacity holds the gripped diameter against what the holding takes.
func (w *walk) capacity() {
	g, h := w.setup.Grip, w.holding
	d := 2 * g.RadiusMM
	if len(h.Sizes) > 0 && g.Kind == "collet" {
		for _, s := range h.Sizes {
			if d <= float64(s)+colletOver && d >= float64(s)-float64(h.SizeRange)-same {
				return
			}
		}
		w.failOp("capacity", "no collet closes on Ø%s", mm(d))
		return
	}
	low, high := float64(h.Smallest), float64(h.Largest)
	if g.Inside && g.Kind == "jaws" {
		if h.InsideLargest == 0 {
			w.failOp("capacity", "%s does not grip from inside", h.Name)
			return
		}
		low, high = float64(h.InsideSmallest), float64(h.InsideLargest)
	}
	if d < low-same || high > 0 && d > high+same {
		w.failOp("capacity", "Ø%s is gripped; %s takes %s to %s", mm(d), h.Name, mm(low), mm(high))
	}
}

// colletOver is how much larger than its size the work may be that a collet still closes on truly, mm (rule B-05; collet catalogue p. 1115, DIN 6499).
const colletOver = 0.025

// through holds stock that reaches back through the spindle against its bore.
func (w *walk) through(lo, hi float64) {
	bore := float64(w.machine.SpindleBore)
	z0, z1 := w.body.Ends()
	behind := lo - z0
	if w.free() < 0 {
		behind = z1 - hi
	}
	across := 2 * w.body.Outer.Greatest(z0, lo)
	if w.free() < 0 {
		across = 2 * w.body.Outer.Greatest(hi, z1)
	}
	if bore > 0 && behind > float64(w.holding.JawLength)+deepChuck && across > bore {
		w.failOp("capacity", "%s of Ø%s reaches back behind the jaws; the spindle's bore is %s", mm(behind), mm(across), mm(bore))
	}
}

// deepChuck is how much work fits behind the jaws of a chuck whose spindle it does not enter. Common practice, no source.
const deepChuck = 30.0

// jawFace is the place where the grip ends on the free end's side.
func (w *walk) jawFace() float64 {
	lo, hi := w.grip()
	if w.free() > 0 {
		return hi
	}
	return lo
}

// grip is the gripped stretch.
func (w *walk) grip() (lo, hi float64) {
	g := w.setup.Grip
	return math.Min(g.FromZ, g.ToZ), math.Max(g.FromZ, g.ToZ)
}

// freeZ is the work's end on the free side.
func (w *walk) freeZ() float64 {
	z0, z1 := w.body.Ends()
	if w.free() > 0 {
		return z1
	}
	return z0
}
