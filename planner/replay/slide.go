package replay

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/tables"
)

// What a vertical slide on a lathe's cross slide bears (rule B-32): the largest milling cutter in steel and in soft metal, and the deepest pass as a part of its
// diameter.
const (
	slideSteel = 10.0
	slideSoft  = 16.0
	slideShare = 1.0 / 4
)

// onSlide reports whether the setup at hand stands on a vertical slide, the cutter in the lathe's spindle.
func (w *walk) onSlide() bool { return w.setup.MachineKind == plan.OnSlide }

// findSlide finds the lathe and the slide of a setup, and puts them together as a mill: the cross slide's dial is x, the slide's y, the saddle's z.
func (w *walk) findSlide() bool {
	for _, l := range w.job.Workshop.Machines {
		if l.Name != w.setup.Machine || l.Kind != partspec.Lathe {
			continue
		}
		for _, h := range w.job.Workshop.Holdings {
			if h.Name == w.setup.Holding && h.Kind == partspec.VerticalSlide && w.setup.HoldingKind == string(h.Kind) {
				return w.putTogether(l, h)
			}
		}
		w.failOp("holding", "the workshop has no vertical slide called %q, and %q is none", w.setup.Holding, w.setup.HoldingKind)
		return false
	}
	w.failOp("machine", "the workshop has no lathe called %q to mill in", w.setup.Machine)
	return false
}

// putTogether makes the mill of a lathe and a slide. Without a dial on each of its three ways nothing can be set.
func (w *walk) putTogether(l partspec.Machine, h partspec.Holding) bool {
	m := partspec.Machine{Kind: partspec.Mill, Name: l.Name, PowerKW: l.PowerKW, Speeds: l.Speeds, SlowestSpeed: l.SlowestSpeed, FastestSpeed: l.FastestSpeed}
	for _, way := range []struct{ axis, dial string }{{dialX, "cross"}, {dialZ, "saddle"}} {
		d, ok := l.Dial(way.dial)
		if !ok {
			w.failOp("machine", "%s has no %s dial to mill by", l.Name, way.dial)
			return false
		}
		d.Name = way.axis
		m.Dials = append(m.Dials, d)
	}
	y := h.Dial
	y.Name = dialY
	m.Dials = append(m.Dials, y)
	w.machine = m
	return true
}

// slidePlay is how far the slide may let the work lie off: its own figure, or the table's; 0 on all else.
func (w *walk) slidePlay() float64 {
	switch {
	case !w.onSlide():
		return 0
	case w.holding.RunOut > 0:
		return float64(w.holding.RunOut)
	}
	return float64(tables.PlaceError(tables.BySlide))
}

// checkOnSlide holds a milling cutter on a vertical slide against what that bears (rule B-32): its size, the depth of its pass where one is known, and a collet to hold it.
func (w *walk) checkOnSlide(m pass, deep float64) {
	if !w.onSlide() || m.Kind != partspec.EndMill && m.Kind != partspec.BallNose && m.Kind != partspec.FlyCutter {
		return
	}
	collets := false
	for _, h := range w.job.Workshop.Holdings {
		collets = collets || h.Kind == partspec.Collets
	}
	if !collets {
		w.failOp("slide", "cut %q: no collet is owned to hold a milling cutter in the spindle of %s (rule B-32)", m.name, w.machine.Name)
	}
	most := slideSteel
	if f := w.part.Material.Family; f == tables.FamilyAluminium || f == tables.FamilyBrass {
		most = slideSoft
	}
	if d := 2 * m.radius; d > most+same {
		w.failOp("slide", "cut %q: a cutter of Ø%s on a vertical slide; %s is the most in this metal (rule B-32)", m.name, mm(d), mm(most))
	}
	if deep > slideShare*2*m.radius+m.measured+w.slackPlace+w.slackRadius+figure {
		w.failOp("slide", "cut %q is %s deep on a vertical slide; a quarter of the cutter, %s, is the most (rule B-32)", m.name, mm(deep), mm(slideShare*2*m.radius))
	}
}
