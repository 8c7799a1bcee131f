package replay

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
)

const (
	// mostBend is the most that roughing may bend the work (rule C-29), and bendShare the share of a diameter's tolerance that finishing may (B-28).
	mostBend  = 0.1
	bendShare = 0.25
	// creep is the depth of the last passes of a size that is crept up to by measuring.
	creep = 0.1
	// slender is the free length over the diameter beyond which work must be supported (rule B-28).
	slender = 5.0
)

// checkBend holds, when a setup's cuts are known, that the work is stiff enough where it is cut without a centre.
func (w *walk) checkBend() {
	g := w.setup.Grip
	if w.setup.Tailstock || g.Inside || g.Kind == "centres" {
		return
	}
	for _, l := range w.loads {
		if l.axial {
			continue
		}
		bend, ok := w.bend(l, l.force.PassiveN)
		if ok && bend > mostBend+figure {
			w.fail(l.at, "bending", "cut %q bends the work by %s mm; at most %s (rule C-29)", l.name, mm(bend), mm(mostBend))
		}
	}
	if long, thick := w.standsOut(), 2*w.thickest(); thick > 0 && long > slender*thick+same {
		w.failOp("stick-out", "%s stands out of the grip, over %g times its Ø%s, with no centre (rule B-28)", mm(long), slender, mm(thick))
	}
}

// standsOut is how far the work stands out of the grip: all of it where it turns, of lying work what tools press on. Work that is only sawn off stands still.
func (w *walk) standsOut() float64 {
	if turns := func(op plan.Operation) bool { return op.Process != plan.SawOff }; !slices.ContainsFunc(w.setup.Operations, turns) {
		return 0
	}
	if !w.setup.Across {
		return w.free() * (w.endOf(w.mounted) - w.jawFace())
	}
	long := 0.0
	for _, p := range w.pushes {
		long = math.Max(long, w.free()*(p.level[0]-w.jawFace()))
	}
	return long
}

// thickest is the greatest radius of the work outside the grip, the piece of bar from which it is parted included.
func (w *walk) thickest() float64 {
	a, b, body := w.jawFace(), w.freeZ(), w.body
	if n := len(w.trace); w.parted && n > 1 {
		body = w.trace[n-2].body
	}
	return body.Outer.Greatest(math.Min(a, b), math.Max(a, b))
}

// bend is how far a force at a load's place bends the work, as it is after the cut, out of the grip.
func (w *walk) bend(l load, forceN float64) (float64, bool) {
	a, b := w.jawFace(), l.z
	lo, hi := math.Min(a, b), math.Max(a, b)
	if hi-lo <= same || w.free()*(b-a) <= 0 {
		return 0, false
	}
	var sections []mechanics.Section
	for _, p := range l.body.Outer.Clip(lo, hi).Pieces() {
		bore := math.Max(0, l.body.Inner.Greatest(p.Z0, p.Z1))
		r0, r1 := p.R0, p.R1
		if p.Radius > 0 { // an arc: as thin as at its thin end
			r0 = math.Min(r0, r1)
			r1 = r0
		}
		for _, s := range mechanics.Cone(p.Z1-p.Z0, 2*r0, 2*r1, 2*bore) {
			if s.OutsideDiameterMM > s.BoreMM+same {
				sections = append(sections, s)
			}
		}
	}
	if w.free() < 0 {
		for i, k := 0, len(sections)-1; i < k; i, k = i+1, k-1 {
			sections[i], sections[k] = sections[k], sections[i]
		}
	}
	total := 0.0
	for _, s := range sections {
		total += s.LengthMM
	}
	shaft := mechanics.Shaft{Sections: sections, ModulusMPa: w.part.Material.ModulusGPa.Middle() * 1000}
	d, err := shaft.Deflection(forceN, total)
	return d.AtForceMM, err == nil
}

// checkFinishBend holds each outside diameter's tolerance against the bending of the cut that made it.
func (w *walk) checkFinishBend() {
	for _, f := range w.part.Features {
		s, ok := f.(*partspec.Spigot)
		if !ok || s.AsSupplied {
			continue
		}
		setup, op := w.madeBy(w.cylinderAt(s.Name, float64(s.Span.Left), float64(s.Span.Right), false))
		l, ok := w.lastLoad(setup, op)
		if !ok {
			continue
		}
		w.setup = w.plan.Setups[setup]
		if w.setup.Tailstock || w.setup.Grip.Inside || w.setup.Grip.Kind == "centres" {
			continue
		}
		if bend, ok := w.bend(l, l.lightN()); ok && bend > bendShare*float64(s.Diameter.Width())+figure {
			w.fail(w.place(setup, op), "bending", "the last cut bends the work by %s mm; %s allows %s (rule B-28)", mm(bend), s.ID(), mm(bendShare*float64(s.Diameter.Width())))
		}
	}
}

// lightN is the force square to the work of a load's last pass: that of a size crept up to is a light one.
func (l load) lightN() float64 {
	if l.measured && l.deep > creep {
		return l.force.PassiveN * creep / l.deep
	}
	return l.force.PassiveN
}

func (w *walk) lastLoad(setup, op int) (load, bool) {
	for i := len(w.all) - 1; i >= 0; i-- {
		if l := w.all[i]; l.setup == setup && l.op == op {
			return l, true
		}
	}
	return load{}, false
}
