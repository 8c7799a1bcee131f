package holding

import (
	"math"
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
func (s Shop) Mask(m Mount, task int) []int {
	var mask []int
	z0, z1 := m.Z0, m.Z1
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
	c.Cuts = s.cuts(m, t, way)
	c.Capacity = s.capacity(m)
	s.support(&c, m, t, way, light)
	s.demand(&c, m, t, way, light)
	return c
}

// Judge measures a case at a moment of the work and asks the rules.
func (s Shop) Judge(m Mount, task int, facts rules.Case, done func(int) bool) ([]rules.Verdict, Figures) {
	c, f := facts, Figures{LeastN: facts.LeastN, MostN: facts.FirmN}
	f.WorkingN = math.Min(math.Max(c.LeastN, c.LightN), c.FirmN)
	c.Gone = s.gone(m, done) || m.Centre && !s.mouthOpen(m, done)
	if !c.Gone {
		c.Finished, c.Tight = s.finish(m, done)
		c.Thread = s.threadOn(m, done)
		s.squeeze(&c, &f, m, s.Tasks[task], s.body(done), done)
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
		return parted
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
	if m.Inside || m.Glue != NoGlue {
		return s.cutsInside(m, t)
	}
	if t.Inside && t.Process != plan.Face {
		return m.Plug || m.Centre
	}
	if m.Centre && t.Process == plan.Face {
		return true
	}
	front := m.Z1
	if m.Free == partspec.Left {
		front = m.Z0
	}
	if t.Keep != nil && t.Process == plan.Face {
		return t.End != m.Free
	}
	if m.Free == partspec.Right {
		return way.Span[0] < front+s.clearOf(m, t)
	}
	return way.Span[1] > front-s.clearOf(m, t)
}

// clearOf is the clearance a cut keeps from the jaws: a shoulder that sits on them keeps none of its own side.
func (s Shop) clearOf(m Mount, t process.Task) float64 {
	if m.Stop && t.Process != plan.Groove && t.Process != plan.PartOff {
		return -jawNoise
	}
	return jawClearance
}

// jawNoise lets a block that begins where the jaws end count as clear of them.
const jawNoise = 1e-6

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
	if m.Inside || m.Glue != NoGlue {
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

// support fills in stick-out and bending.
func (s Shop) support(c *rules.Case, m Mount, t process.Task, way process.Way, light float64) {
	if m.Inside || m.Glue != NoGlue {
		return
	}
	front, tip := m.Z1, s.Length
	if m.Free == partspec.Left {
		front, tip = m.Z0, 0
	}
	c.StickOut = math.Abs(tip - front)
	lo, hi := span(front, tip)
	sections, thinnest := s.sections(lo, hi)
	c.Body = 2 * thinnest
	if t.Tight <= 0 || t.Stage != shape.Finishing || t.Inside || t.Keep != nil {
		return
	}
	mid := (way.Span[0] + way.Span[1]) / 2
	from := math.Abs(mid - front)
	if m.Free == partspec.Left {
		sections = reverse(sections)
	}
	depth := math.Min(way.Rate.DepthMM*light, t.Depth)
	last := way.ForceN * light * finishShare(depth)
	shaft := mechanics.Shaft{Sections: sections, Tailstock: m.Centre, ModulusMPa: s.Part.Material.ModulusGPa.Low * 1000}
	if d, err := shaft.Deflection(last/2, math.Min(from, c.StickOut)); err == nil {
		c.Deflect, c.Allow = d.AtForceMM, t.Tight/4
	}
}

// finishShare is the last pass's part of the force: it is no deeper than a tenth of a millimetre when the work is measured and crept to size.
func finishShare(depth float64) float64 {
	if depth <= lastPass {
		return 1
	}
	return lastPass / depth
}

const lastPass = 0.1

func reverse(s []mechanics.Section) []mechanics.Section {
	r := make([]mechanics.Section, len(s))
	for i := range s {
		r[len(s)-1-i] = s[i]
	}
	return r
}

// sections describes the finished part between two places for bending: the finished shape bends most, so it bounds every moment of the work.
func (s Shop) sections(lo, hi float64) ([]mechanics.Section, float64) {
	var out []mechanics.Section
	thinnest := math.Inf(1)
	at := lo
	for _, b := range s.Blocks {
		z0, z1 := math.Max(b.Z0, at), math.Min(b.Z1, hi)
		if b.Z0 > at {
			z0 = b.Z0
		}
		if z1 <= z0 {
			continue
		}
		bore := 0.0
		for _, h := range s.Holes {
			if h.Z0 < z1 && h.Z1 > z0 {
				bore = math.Max(bore, h.Radius)
			}
		}
		out = append(out, mechanics.Section{LengthMM: z1 - z0, OutsideDiameterMM: 2 * b.Least, BoreMM: 2 * bore})
		thinnest = math.Min(thinnest, b.Least)
		at = z1
	}
	if len(out) == 0 {
		r := s.gripRadius()
		return []mechanics.Section{{LengthMM: math.Max(hi-lo, 1), OutsideDiameterMM: 2 * r}}, r
	}
	if gap := hi - lo - total(out); gap > 0 {
		r := s.gripRadius()
		out = append([]mechanics.Section{{LengthMM: gap, OutsideDiameterMM: 2 * r}}, out...)
	}
	return out, thinnest
}

func total(sections []mechanics.Section) float64 {
	sum := 0.0
	for _, s := range sections {
		sum += s.LengthMM
	}
	return sum
}

func mm(v float64) string {
	return strings.TrimSuffix(strings.TrimRight(formatMM(v), "0"), ".")
}

// Hollow reports whether the part has any hole.
func (s Shop) Hollow() bool { return len(s.Holes) > 0 || s.Part.Stock.Inside.Value > 0 }
