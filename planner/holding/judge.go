package holding

import (
	"math"
	"slices"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// Mask is the tasks on which a verdict about a task in a mount depends: those that make, cut or thin what is gripped.
func (s Shop) Mask(m Mount, task int, way process.Way, tender bool) []int {
	var mask []int
	z0, z1 := m.Z0, m.Z1
	if tender { // everything from the jaws to the cut
		z0, z1 = min(z0, way.Span[0]), max(z1, way.Span[1])
	}
	for i, t := range s.Tasks {
		separates := t.Process == plan.PartOff || t.Process == plan.SawOff
		if i == task {
			continue
		}
		if separates || t.MakesSurface(m.Surface) || t.Touches(z0, z1) || m.Centre && (t.Inside || t.Process == plan.Face) || m.Glue == GlueFace && t.End == m.Free.Other() && t.Process == plan.Face {
			mask = append(mask, i)
		}
	}
	return mask
}

// Figures is what was found out about a grip.
type Figures struct {
	LeastN, MostN, WorkingN float64
	LobeMM, LimitMM         float64
	StressMPa               float64
	Trust                   string
	Wall                    float64
	Case                    rules.Case
}

// Facts are what a case has at every moment of the work. light is how deep a pass goes, as a part of the ordinary depth.
func (s Shop) Facts(m Mount, task int, way process.Way, light float64) rules.Case {
	t := s.Tasks[task]
	c := rules.Case{Holding: m.Holding, Surface: m.Surface, Op: t.Op, Diameter: 2 * m.Radius, Length: m.Z1 - m.Z0, JawLength: jawLength(m.Holding), Packed: m.Packed, Through: m.Stop, Centre: m.Centre, Plug: m.Plug, Threaded: m.Threaded,
		Hexagon: s.Part.Stock.Kind == partspec.Hexagon && (m.Surface == "stock" || s.supplied(m.Surface)), Largest: float64(s.Part.Stock.EnvelopeDiameter())}
	if t.Process != plan.Drill && t.Process != plan.Ream {
		c.PassDepth = math.Min(way.Rate.DepthMM, t.Depth) * light
	}
	c.Cuts = s.cuts(m, t, way)
	c.Capacity = s.capacity(m)
	s.support(&c, m, t, way, light)
	s.demand(&c, m, t, way, light)
	return c
}

// Judge measures a case at a moment of the work and asks the rules.
func (s Shop) Judge(m Mount, task int, way process.Way, light float64, facts rules.Case, done func(int) bool) ([]rules.Verdict, Figures) {
	c, f := facts, Figures{LeastN: facts.LeastN, MostN: facts.FirmN}
	f.WorkingN = math.Min(math.Max(c.LeastN, c.LightN), c.FirmN)
	c.Gone = s.gone(m, done) || m.Centre && (!s.mouthOpen(m, done) || !s.centred(m, done))
	if !c.Gone {
		c.Finished, c.Tight = s.finish(m, done)
		c.Thread = s.threadOn(m, done)
		body := s.body(done)
		s.squeeze(&c, &f, m, s.Tasks[task], body, done)
		if c.Tender {
			s.bend(&c, body, m, s.Tasks[task], way, light)
		}
	}
	f.Case = c
	return s.Rules.Judge(c), f
}

// body is the work once the tasks done have been carried out; while it hangs on its bar nothing is kept away.
func (s Shop) body(done func(int) bool) solid.Body {
	key := uint64(0)
	for i := range s.Tasks {
		if done(i) {
			key |= 1 << i
		}
	}
	if b, ok := s.bodies[key]; ok {
		return b
	}
	b := s.Stock
	for i, t := range s.Tasks {
		if done(i) {
			b = t.Apply(b)
		}
	}
	s.bodies[key] = b
	return b
}

// gone reports whether the surface to hold by is not there.
func (s Shop) gone(m Mount, done func(int) bool) bool {
	parted := !s.Place.OnBar()
	if m.Between {
		for i, t := range s.Tasks {
			parted = parted || done(i) && (t.Process == plan.PartOff || t.Process == plan.SawOff)
		}
		return !parted
	}
	made := m.Surface == "stock" || s.supplied(m.Surface)
	lost := false
	for i, t := range s.Tasks {
		if !done(i) {
			continue
		}
		if t.Process == plan.PartOff || t.Process == plan.SawOff {
			parted = true
		}
		if t.MakesSurface(m.Surface) || t.Feature == m.Surface && t.Process == plan.TurnRough && !m.Inside {
			made = true
		}
		if m.RawUntil && t.Keep == nil && !t.Inside && t.Touches(m.Z0, m.Z1) {
			lost = true
		}
	}
	if m.Surface == "stock" && s.Place.OnBar() {
		return parted || lost
	}
	return !parted || !made || lost
}

func (s Shop) supplied(name string) bool {
	for _, b := range s.Blocks {
		if b.Name == name {
			return b.AsSupplied
		}
	}
	return false
}

// cuts reports whether a task takes away what is gripped, or brings its tool into the jaws.
func (s Shop) cuts(m Mount, t process.Task, way process.Way) bool {
	if m.Between {
		return s.cutsBetween(m, t, way)
	}
	if m.Inside || m.Glue != NoGlue {
		return s.cutsInside(m, t)
	}
	if t.Inside && t.Process != plan.Face {
		return m.Plug || m.Centre
	}
	if m.Centre && (t.Process == plan.Face || t.Process == plan.PartOff) {
		return true // the centre is in the way, or would pinch the blade; a saw is used with the spindle stopped
	}
	front := m.Z1
	if m.Free == partspec.Left {
		front = m.Z0
	}
	if t.Keep != nil && t.Process == plan.Face {
		return t.End != m.Free
	}
	if m.Free == partspec.Right {
		return way.Span[0] < front+jawClearance
	}
	return way.Span[1] > front-jawClearance
}

// cutsInside is cuts for work held from a bore or by glue: the bore, and the face towards the headstock, are covered.
func (s Shop) cutsInside(m Mount, t process.Task) bool {
	if t.Process == plan.Face || t.Process == plan.Chamfer {
		if t.End != m.Free {
			return t.Process == plan.Face || t.Inside
		}
		return t.Inside && m.Inside
	}
	if m.Glue == GlueFace {
		return false
	}
	return t.Inside
}

// capacity says why a size does not go into a holding.
func (s Shop) capacity(m Mount) string {
	if m.Between && s.Lathe.BetweenCentres > 0 && s.Length > float64(s.Lathe.BetweenCentres) {
		return mm(s.Length) + " long is over the " + mm(float64(s.Lathe.BetweenCentres)) + " between the lathe's centres"
	}
	if m.Between || m.Inside || m.Glue != NoGlue {
		return ""
	}
	d, h := 2*m.Radius, m.Holding
	switch {
	case h.Largest > 0 && d > float64(h.Largest):
		return "Ø" + mm(d) + " is over its " + mm(float64(h.Largest))
	case d < float64(h.Smallest):
		return "Ø" + mm(d) + " is under its " + mm(float64(h.Smallest))
	}
	return ""
}

// finish tells whether the surface gripped is at size now, and its tolerance.
func (s Shop) finish(m Mount, done func(int) bool) (bool, float64) {
	for i, t := range s.Tasks {
		if done(i) && t.MakesSurface(m.Surface) {
			return true, t.Tight
		}
	}
	return false, 0
}

func (s Shop) threadOn(m Mount, done func(int) bool) bool {
	if m.Inside {
		return false
	}
	for i, t := range s.Tasks {
		f, ok := s.Part.Feature(t.Feature).(*partspec.Thread)
		if ok && done(i) && !f.Inside && f.On == m.Surface && t.Touches(m.Z0, m.Z1) {
			return true
		}
	}
	return false
}

// support fills in stick-out and bending. The finished shape bends most: what passes with it passes always. What passes only while metal is still there is
// tender, and is measured anew at each moment.
func (s Shop) support(c *rules.Case, m Mount, t process.Task, way process.Way, light float64) {
	if m.Inside || m.Glue != NoGlue {
		return
	}
	s.bend(c, s.end, m, t, way, light)
	if s.Rules.Has("B-28") && c.TooSlender() != "" {
		c.Tender = true
		s.bend(c, s.Stock, m, t, way, light)
	}
}

// bend measures how far a cut stands out from the jaws, on what diameter, and how much that bends, for a shape of the work.
func (s Shop) bend(c *rules.Case, body solid.Body, m Mount, t process.Task, way process.Way, light float64) {
	front, cut := m.Z1, way.Span[1]
	if m.Free == partspec.Left {
		front, cut = m.Z0, way.Span[0]
	}
	if t.Process == plan.PartOff { // the whole piece hangs out and turns
		cut = s.freeEnd(m.Free)
	}
	if m.Centre {
		s.bendBetween(c, body, m, t, way, light)
		return
	}
	c.StickOut, c.Body, c.Deflect, c.Allow = math.Abs(cut-front), 0, 0, 0
	shaft := mechanics.Shaft{Sections: sections(body, front, cut), ModulusMPa: s.Part.Material.ModulusGPa.Low * 1000}
	d, err := shaft.Deflection(1, c.StickOut)
	if err != nil || d.AtForceMM <= 0 {
		return
	}
	c.Body = asStiff(c.StickOut, d.AtForceMM, shaft.ModulusMPa)
	if t.Tight <= 0 || t.Stage != shape.Finishing || t.Inside || t.Keep != nil {
		return
	}
	depth := math.Min(way.Rate.DepthMM*light, t.Depth)
	last := way.Force(light) * finishShare(depth)
	shaft.Tailstock = m.Centre
	if d, err := shaft.Deflection(last/2, c.StickOut); err == nil {
		c.Deflect, c.Allow = d.AtForceMM, t.Tight/4
	}
}

// bendBetween is bend for work that a centre carries at its free end: the cut bends it most at its middle.
func (s Shop) bendBetween(c *rules.Case, body solid.Body, m Mount, t process.Task, way process.Way, light float64) {
	front, tip := m.Z1, s.Length
	if m.Free == partspec.Left {
		front, tip = m.Z0, 0
	}
	if m.Between {
		front = s.Length - tip
	}
	c.StickOut, c.Body, c.Deflect, c.Allow = math.Abs(tip-front), 0, 0, 0
	shaft := mechanics.Shaft{Sections: sections(body, front, tip), OnCentre: m.Between, Tailstock: true, ModulusMPa: s.Part.Material.ModulusGPa.Low * 1000}
	d, err := shaft.Deflection(1, c.StickOut/2)
	if err != nil || d.AtForceMM <= 0 {
		return
	}
	// A plain bar on two centres bends F L^3/48EI at its middle.
	c.Body = asStiff(c.StickOut, d.AtForceMM*48/3, shaft.ModulusMPa)
	if t.Tight <= 0 || t.Stage != shape.Finishing || t.Inside || t.Keep != nil {
		return
	}
	last := way.Force(light) * finishShare(math.Min(way.Rate.DepthMM*light, t.Depth))
	at := math.Min(c.StickOut, math.Max(0, math.Abs((way.Span[0]+way.Span[1])/2-front)))
	if d, err := shaft.Deflection(last/2, at); err == nil {
		c.Deflect, c.Allow = d.AtForceMM, t.Tight/4
	}
}

// asStiff is the diameter of a plain bar that bends as much at its end under one newton: d^4 = 64 L^3 / (3 pi E f).
func asStiff(lengthMM, bendMM, modulusMPa float64) float64 {
	return math.Pow(64*math.Pow(lengthMM, 3)/(3*math.Pi*modulusMPa*bendMM), 0.25)
}

// sections describes a shape for bending, from the jaws outwards.
func sections(body solid.Body, front, cut float64) []mechanics.Section {
	lo, hi := span(front, cut)
	var out []mechanics.Section
	for _, p := range body.Outer.Clip(lo, hi).Pieces() {
		bore := math.Max(0, body.Inner.Greatest(p.Z0, p.Z1))
		out = append(out, mechanics.Section{LengthMM: p.Z1 - p.Z0, OutsideDiameterMM: 2 * math.Min(p.R0, p.R1), BoreMM: 2 * bore})
	}
	if front > cut {
		slices.Reverse(out)
	}
	return out
}

// finishShare is the last pass's part of the force: it is no deeper than a tenth of a millimetre when the work is measured and crept to size.
func finishShare(depth float64) float64 {
	if depth <= lastPass {
		return 1
	}
	return lastPass / depth
}

const lastPass = 0.1

func mm(v float64) string {
	return strings.TrimSuffix(strings.TrimRight(formatMM(v), "0"), ".")
}

// Hollow reports whether the part has any hole.
func (s Shop) Hollow() bool { return len(s.Holes) > 0 || s.Part.Stock.Inside.Value > 0 }
