package holding

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// stage names a shape of the work, so that what it bends by is worked out once: the finished work, the stock, or the work after a set of tasks.
type stage struct {
	body solid.Body
	key  uint64
}

// Keys of the two shapes that are no set of tasks.
const (
	endKey uint64 = math.MaxUint64 - iota
	stockKey
)

// support fills in stick-out and bending. The finished shape bends most: what passes with it passes always. What passes only while metal is still there is
// tender, and is measured anew at each moment.
func (s Shop) support(c *rules.Case, m Mount, t process.Task, way process.Way, light float64) {
	if m.Inside || m.Glue == GlueBore {
		return
	}
	s.bend(c, stage{s.end, endKey}, m, t, way, light)
	if s.Part.Seen != nil {
		return // one task takes a pin from thick to slim: its last pass meets the finished shape
	}
	if s.Rules.Has("B-28") && c.TooSlender() != "" {
		c.Tender = true
		s.bend(c, stage{s.Stock, stockKey}, m, t, way, light)
	}
}

// bend measures how far a cut stands out from the jaws (or between its supports), on what diameter, and how much that bends, for a shape of the work.
func (s Shop) bend(c *rules.Case, st stage, m Mount, t process.Task, way process.Way, light float64) {
	r := s.reach(m, t, way)
	c.StickOut, c.Body, c.Deflect, c.Allow = r.length(), 0, 0, 0
	middle, stiffness := c.StickOut, 1.0
	if m.Centre { // a plain bar on two centres bends F L^3/48EI at its middle, one that stands out F L^3/3EI at its end
		middle, stiffness = c.StickOut/2, 48.0/3
	}
	unit := s.flex(st, r, middle)
	if unit <= 0 {
		return
	}
	c.Body = asStiff(c.StickOut, unit*stiffness, s.modulus())
	if t.Tight <= 0 || t.Stage != shape.Finishing || t.Inside || t.Keep != nil {
		return
	}
	last := way.Force(light)
	if t.Tight <= crept {
		last *= finishShare(math.Min(way.Rate.DepthMM*light, t.Depth))
	}
	c.Deflect, c.Allow = last/2*s.flex(st, r, r.at), t.Tight/4
	if s.Part.Seen != nil {
		c.Allow = min(c.Allow, mostBend)
	}
}

// stretch is a length of work that may bend: from the jaws or the driving centre to the cut or the tailstock, and where the cut is on it.
type stretch struct {
	front, tip       float64
	at               float64 // from front
	between, centred bool
}

func (r stretch) length() float64 { return math.Abs(r.tip - r.front) }

// reach is the stretch that a cut in a mount may bend.
func (s Shop) reach(m Mount, t process.Task, way process.Way) stretch {
	r := stretch{front: m.Z1, tip: way.Span[1], between: m.Between, centred: m.Centre}
	if m.Free == partspec.Left {
		r.front, r.tip = m.Z0, way.Span[0]
	}
	if m.Centre || t.Process == plan.PartOff { // up to the centre; or the whole piece hangs out and turns
		r.tip = s.freeEnd(m.Free)
	}
	if m.Between {
		r.front = s.Length - r.tip
	}
	r.at = r.length()
	if m.Centre {
		r.at = min(r.at, max(0, math.Abs((way.Span[0]+way.Span[1])/2-r.front)))
	}
	return r
}

func (s Shop) modulus() float64 { return s.Part.Material.ModulusGPa.Low * 1000 }

// flex is what a stretch bends under one newton at a place, mm; 0 where nothing can be reckoned. Answers are kept.
func (s Shop) flex(st stage, r stretch, at float64) float64 {
	r.at = at
	key := flexKey{st.key, r}
	if f, ok := s.flexes[key]; ok {
		return f
	}
	shaft := mechanics.Shaft{Sections: sections(st.body, r.front, r.tip), OnCentre: r.between, Tailstock: r.centred, ModulusMPa: s.modulus()}
	there := 0.0
	for _, section := range shaft.Sections {
		there += section.LengthMM
	}
	f := 0.0
	if d, err := shaft.Deflection(1, math.Min(at, there)); err == nil { // a tool may run out past the end; lengths that are added up may fall short by rounding
		f = d.AtForceMM
	}
	s.flexes[key] = f
	return f
}

type flexKey struct {
	shape uint64
	stretch
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
		r0, r1 := p.R0, p.R1
		if p.Radius > 0 {
			r0 = math.Min(r0, r1)
			r1 = r0
		}
		out = append(out, mechanics.Cone(p.Z1-p.Z0, 2*r0, 2*r1, 2*bore)...)
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

// mostBend is the most that any cut may bend the work, in mm (rule C-29).
const mostBend = 0.1

// crept is the tolerance up to which a diameter is crept up to by measuring, whatever the dial (rule C-15); wider ones may be cut to the dial in one deep pass, which
// tells on a slim pin that is turned from thick metal about an offset axis.
const crept = 0.05
