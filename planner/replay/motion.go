package replay

import (
	"math"

	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// motion is one movement of a tool, rebuilt from its readings, and the bound of the metal it leaves.
type motion struct {
	cutter
	key      cutKey
	name     string
	measured float64 // width of the range in which measuring ends it; 0 = the dials do
	from, to solid.Point
	counts   map[string][2]int64 // dial: count at the beginning and the end
	inside   bool
	outer    solid.Curve // what is left lies inside this,
	inner    solid.Curve // and outside this; one of the two is empty
	static   solid.Curve // the same where the tool stands at the beginning
	head     float64     // the place nearest to the headstock that the tool reaches
}

// along reports whether the tool moves more along the axis than across it.
func (m motion) along() bool { return math.Abs(m.to.Z-m.from.Z) >= math.Abs(m.to.R-m.from.R) }

// across reports whether the tool goes straight across the axis, or not at all.
func (m motion) across() bool { return math.Abs(m.to.Z-m.from.Z) <= same }

// apply takes the motion's metal off.
func (m motion) apply(b solid.Body) solid.Body { return take(b, m.outer, m.inner) }

func take(b solid.Body, outer, inner solid.Curve) solid.Body {
	if !outer.Empty() {
		b = b.TurnTo(outer)
	}
	if !inner.Empty() {
		b = b.BoreTo(inner)
	}
	return b
}

// stand is where the slides stand.
type stand struct {
	z, r, top        float64
	hasZ, hasR, hasT bool
}

// read puts the slides where the readings say, leaving the others where they are.
func (w *walk) read(s stand, readings []plan.Reading) (stand, bool) {
	for _, rd := range readings {
		z, ok := w.zeros[rd.Dial]
		if !ok {
			w.failOp("zero", "the %s dial is read but was never set to nought with this tool", rd.Dial)
			return s, false
		}
		travel := float64(rd.Graduations) * z.graduation
		switch rd.Dial {
		case "cross":
			s.r, s.hasR = z.reference-travel, true
			if z.Outward {
				s.r = z.reference + travel
			}
		case "saddle", "tailstock":
			s.z, s.hasZ = z.reference-w.free()*travel, true
		case "top":
			s.top, s.hasT = travel, true
		}
	}
	return s, true
}

// rebuild makes the motion of a cut; last is the one before it in the same operation.
func (w *walk) rebuild(op plan.Operation, cut plan.Cut, key cutKey, last motion) (motion, bool) {
	tool, err := w.cutterFor(op, cut)
	if err != nil {
		w.failOp("tool", "%v", err)
		return motion{}, false
	}
	from, ok := w.read(stand{}, cut.From)
	if !ok {
		return motion{}, false
	}
	to, ok := w.read(from, cut.To)
	if !ok {
		return motion{}, false
	}
	m := motion{cutter: tool, key: key, name: cut.Name, counts: countsOf(cut)}
	if tool.set() {
		from.r, from.hasR, to.r, to.hasR = 0, true, 0, true
	}
	if !from.hasZ || !from.hasR {
		w.failOp("readings", "cut %q: both slides must be read, along and across the axis", cut.Name)
		return motion{}, false
	}
	m.from = solid.Point{Z: from.z, R: from.r}
	m.to = solid.Point{Z: to.z, R: to.r}
	w.topSlide(&m, op, from, to)
	m.stay(last)
	w.endMeasured(&m, cut, key)
	w.sweep(&m)
	return m, true
}

// topSlide adds the travel of the top slide, which goes towards the headstock and, set over by a positive angle, away from the axis.
func (w *walk) topSlide(m *motion, op plan.Operation, from, to stand) {
	a := op.TopSlideDeg * math.Pi / 180
	travel := to.top - from.top
	m.to.Z -= w.free() * travel * math.Cos(a)
	m.to.R += travel * math.Sin(a)
}

// stay leaves a slide where the last cut has left it when its dial has not been moved since: where that cut ended by measuring, that is not where
// the reading alone would have it.
func (m *motion) stay(last motion) {
	if m.unmoved(last, "cross") {
		if math.Abs(m.to.R-m.from.R) <= same {
			m.to.R = last.to.R
		}
		m.from.R = last.to.R
	}
	if m.unmoved(last, "saddle") {
		if m.across() {
			m.to.Z = last.to.Z
		}
		m.from.Z = last.to.Z
	}
}

// unmoved reports whether a dial, and the top slide with it, stands where the last cut left it.
func (m motion) unmoved(last motion, dial string) bool {
	c, ok := m.counts[dial]
	before, had := last.counts[dial]
	return ok && had && c[0] == before[1] && m.counts["top"][0] == last.counts["top"][1]
}

// endMeasured puts the place that is measured where this world has it. What stands still in the movement stands there from its beginning.
func (w *walk) endMeasured(m *motion, cut plan.Cut, key cutKey) {
	if cut.ToMeasure == nil {
		return
	}
	v := w.world.value(key, *cut.ToMeasure)
	m.measured = math.Abs(cut.ToMeasure.HighMM - cut.ToMeasure.LowMM)
	switch cut.ToMeasure.What {
	case "diameter":
		if math.Abs(m.from.R-m.to.R) <= same {
			m.from.R = v / 2
		}
		m.to.R = v / 2
	case "position", "length":
		if cut.ToMeasure.What == "length" {
			v = w.lengthToPosition(v)
		}
		if math.Abs(m.from.Z-m.to.Z) <= same {
			m.from.Z = v
		}
		m.to.Z = v
	default:
		w.failOp("measure", "cut %q is measured as %q: expected diameter, position or length", cut.Name, cut.ToMeasure.What)
	}
}

// lengthToPosition is where the free end must lie for a length from the other end.
func (w *walk) lengthToPosition(length float64) float64 {
	z0, z1 := w.body.Ends()
	if w.free() > 0 {
		return z0 + length
	}
	return z1 - length
}

// sweep finds what the tool leaves on its way.
func (w *walk) sweep(m *motion) {
	free := solid.Side(w.free())
	z := m.from.Z
	if w.free()*(m.to.Z-z) < 0 {
		z = m.to.Z
	}
	m.head = z
	if m.set() {
		m.inside = true
		m.inner = solid.Drill(z, m.size, m.pointDeg(), free)
		m.static = solid.Drill(m.from.Z, m.size, m.pointDeg(), free)
		return
	}
	headstock, _ := m.width()
	m.head -= w.free() * headstock
	edge, cuts := m.edge(free)
	if !cuts {
		return
	}
	if m.inside = m.cutter.inside(w.zeros["cross"].Outward); m.inside {
		m.inner, m.static = edge.SweepInside(m.from, m.to), edge.SweepInside(m.from, m.from)
		return
	}
	m.outer, m.static = edge.Sweep(m.from, m.to), edge.Sweep(m.from, m.from)
}

// countsOf pairs the counts at the beginning and the end of a cut, for each dial.
func countsOf(cut plan.Cut) map[string][2]int64 {
	counts := map[string][2]int64{}
	for _, rd := range cut.From {
		counts[rd.Dial] = [2]int64{rd.Graduations, rd.Graduations}
	}
	for _, rd := range cut.To {
		c, ok := counts[rd.Dial]
		if !ok {
			c[0] = rd.Graduations
		}
		c[1] = rd.Graduations
		counts[rd.Dial] = c
	}
	return counts
}
