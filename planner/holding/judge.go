package holding

import (
	"math"
	"math/bits"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/solid"
)

// Mask is the tasks on which a verdict about a task in a mount depends: those that make, cut or thin what is gripped, and of a ring that is squeezed
// those that settle its length; of a disc on the jaw steps those that settle how wide it is.
func (s Shop) Mask(m Mount, task int, way process.Way, tender bool) []int {
	if s.Part.Flat() {
		return s.flatMask(m, task)
	}
	var mask []int
	z0, z1 := m.Z0, m.Z1
	if tender { // everything from the jaws to the cut
		z0, z1 = min(z0, way.Span[0]), max(z1, way.Span[1])
	}
	ring := s.squeezable(m)
	for i, t := range s.Tasks {
		separates := t.Process == plan.PartOff || t.Process == plan.SawOff
		if i == task {
			continue
		}
		if separates || s.isSeat(i) || m.Machine != "" && m.Surface == "stock" && s.trues(i) || ring && t.Process == plan.Face || m.Step && !t.Inside || t.MakesSurface(m.Surface) || t.Touches(z0, z1) || m.Centre && (t.Inside || t.Process == plan.Face) || (m.Glue == GlueFace || m.Stop) && t.End == m.Free.Other() && t.Process == plan.Face {
			mask = append(mask, i)
		}
	}
	return mask
}

// squeezable reports whether a hole is, or will be, within what is gripped, be it only the pilot of one.
func (s Shop) squeezable(m Mount) bool {
	if s.Stock.Inner.Greatest(m.Z0, m.Z1) > 0 {
		return true
	}
	for _, t := range s.Tasks {
		if t.Inside && t.Touches(m.Z0, m.Z1) {
			return true
		}
	}
	return false
}

// Figures is what was found out about a grip.
type Figures struct {
	LeastN, MostN, WorkingN float64
	LobeMM, LimitMM         float64
	StressMPa, YieldShare   float64
	Trust                   string
	Wall                    float64
	Ring                    mechanics.RingGrip   // what the jaws press on; no jaws for none
	Sure                    mechanics.Confidence // of the error, on flat work
	Case                    rules.Case
}

// Facts are what a case has at every moment of the work. light is how deep a pass goes, as a part of the ordinary depth.
func (s Shop) Facts(m Mount, task int, way process.Way, light float64) rules.Case {
	if s.Part.Flat() {
		return s.flatFacts(m, task, way, light)
	}
	if m.Machine != "" {
		return s.tableFacts(m, task, way, light)
	}
	t := s.Tasks[task]
	c := rules.Case{Holding: m.Holding, Surface: m.Surface, Op: t.Op, Diameter: 2 * m.Radius, Length: m.Z1 - m.Z0, JawLength: jawLength(m.Holding), Packed: m.Packed, Through: m.Stop, Centre: m.Centre, Plug: m.Plug, Threaded: m.Threaded, Split: m.Split, Wall: math.Inf(1),
		Hexagon: s.Part.Stock.Kind == partspec.Hexagon && (m.Surface == "stock" || s.supplied(m.Surface)), Largest: s.wide}
	if t.Process != plan.Drill && t.Process != plan.Ream {
		c.PassDepth = math.Min(way.Rate.DepthMM*light, max(t.Depth, way.DeepMM))
		c.PassDepth = max(c.PassDepth, way.SkinMM)
	}
	c.Length -= s.edged(m)
	c.Disc = s.disc(m)
	c.Cuts = s.cuts(m, t, way)
	if c.Capacity = s.capacity(m); c.Capacity == "" {
		c.Capacity = s.outOfTravel(m, way)
	}
	if s.Part.Seen != nil {
		c.Offset, c.Interrupted = s.offset(m), !t.Inside
	}
	s.support(&c, m, t, way, light)
	s.demand(&c, m, t, way, light)
	return c
}

// disc reports whether the work stands out no more than the diameter it ends up with, what is still to be faced off its free end included.
func (s Shop) disc(m Mount) bool {
	return math.Abs(s.rawFree(m.Free)-m.front()) <= s.wide
}

// rawFree is the farthest that the work reaches at a free end: the stock's own end there, or where the piece is cut off its bar.
func (s Shop) rawFree(free partspec.End) float64 {
	if s.Place.OnBar() && free != s.Place.Free {
		return s.freeEnd(free) + inward(free)*s.Place.Spare
	}
	z0, z1 := s.Stock.Ends()
	if free == partspec.Right {
		return z1
	}
	return z0
}

// edgeMM is how far past the drawn edge of a surface its chamfer may reach, in mm: what a grip loses to graduations.
const edgeMM = 0.5

// edged is how much of the surface gripped its chamfers, round edges and grooves take, or may take before it is let go.
func (s Shop) edged(m Mount) float64 {
	sum := 0.0
	if m.Inside || m.Surface == "stock" {
		return sum
	}
	for _, f := range s.Part.Features {
		switch f.(type) {
		case *partspec.Chamfer, *partspec.Fillet, *partspec.Groove:
			if lost := s.lostTo(f.Head().Name, m); lost > 0 {
				sum += lost + edgeMM
			}
		}
	}
	return sum
}

// lostTo is how much of a grip along the axis the tasks of a feature take from the outside.
func (s Shop) lostTo(feature string, m Mount) float64 {
	most := 0.0
	for _, t := range s.Tasks {
		if t.Feature == feature && !t.Inside {
			most = max(most, min(t.Z1, m.Z1)-max(t.Z0, m.Z0))
		}
	}
	return most
}

// Judge measures a case at a moment of the work and asks the rules.
func (s Shop) Judge(m Mount, task int, way process.Way, light float64, facts rules.Case, done func(int) bool) ([]rules.Verdict, Figures) {
	f := s.measure(m, task, way, light, facts, done)
	return s.Rules.Judge(f.Case), f
}

// Allows is Judge where only the answer is wanted.
func (s Shop) Allows(m Mount, task int, way process.Way, light float64, facts rules.Case, done func(int) bool) bool {
	return s.Rules.Allows(s.measure(m, task, way, light, facts, done).Case)
}

// measure fills in what the moment decides.
func (s Shop) measure(m Mount, task int, way process.Way, light float64, facts rules.Case, done func(int) bool) Figures {
	if s.Part.Flat() {
		return s.flatMeasure(m, task, way, light, facts, done)
	}
	c, f := facts, Figures{LeastN: facts.LeastN, MostN: facts.FirmN}
	f.WorkingN = math.Min(math.Max(c.LeastN, c.LightN), c.FirmN)
	c.Lost = s.absent(m, done)
	c.Gone = c.Lost != ""
	s.afterSeat(&c, m, done)
	if !c.Gone {
		c.Finished, c.Tight = s.finish(m, done)
		c.Thread = s.threadOn(m, done)
		t := s.Tasks[task]
		if m.Step {
			now := s.body(done)
			c.Largest = 2 * now.Outer.Greatest(now.Ends())
		}
		after := func(i int) bool { return done(i) || i == task && t.Keep == nil }
		s.squeeze(&c, &f, m, t, s.body(after))
		if c.Tender { // how far it may stand out goes by the work that the cut finds, how far it bends by what the last pass leaves
			left := c
			s.bend(&left, stage{s.body(after), s.key(after)}, m, t, way, light)
			s.bend(&c, stage{s.body(done), s.key(done)}, m, t, way, light)
			c.Deflect = left.Deflect
		}
	}
	f.Case = c
	return f
}

// body is the work once the tasks done have been carried out; while it hangs on its bar nothing is kept away.
func (s Shop) body(done func(int) bool) solid.Body {
	return s.bodyOf(s.key(done))
}

// bodyOf is the body of a set of tasks: the last of them is carried out on what the others leave.
func (s Shop) bodyOf(key uint64) solid.Body {
	if key == 0 {
		return s.Stock
	}
	b, ok := s.bodies[key]
	if !ok {
		last := bits.Len64(key) - 1
		b = s.Tasks[last].Apply(s.bodyOf(key &^ (1 << last)))
		s.bodies[key] = b
	}
	return b
}

// key names a set of tasks.
func (s Shop) key(done func(int) bool) uint64 {
	key := uint64(0)
	for i := range s.Tasks {
		if done(i) {
			key |= 1 << i
		}
	}
	return key
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
	if m.Centre && (t.Process == plan.Face || t.Process == plan.PartOff || t.Process == plan.Die) {
		return true // the centre is in the way, or would pinch the blade; a saw is used with the spindle stopped; a die comes on over the end
	}
	front := m.front()
	if t.Keep != nil && t.Process == plan.Face {
		return t.End != m.Free || math.Abs(s.freeEnd(t.End)-front) < jawClearance+float64(s.Part.Length.Width())/2
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
		return t.Inside && m.Inside || s.hitsWasher(m, t)
	}
	if m.Glue == GlueFace {
		return false
	}
	return t.Inside
}

// hitsWasher reports whether a cut at the free end comes upon the screw and washer that hold the work on a mandrel from in front.
func (s Shop) hitsWasher(m Mount, t process.Task) bool {
	return m.Washer > 0 && (t.Process == plan.Face || t.Outer.Least(t.Z0, t.Z1) < m.Washer+jawClearance)
}

// capacity says why a size does not go into a holding.
func (s Shop) capacity(m Mount) string {
	if long := s.tooLong(m); long != "" {
		return long
	}
	if m.Between || m.Inside && m.Glue == NoGlue || m.Glue == GlueFace {
		return ""
	}
	d, h := 2*m.Radius, m.Holding
	if e := s.throw(); e > 0 {
		switch widest := s.wide; {
		case s.Lathe.Swing > 0 && widest > float64(s.Lathe.Swing):
			return "it swings Ø" + mm(widest) + ", over the lathe's " + mm(float64(s.Lathe.Swing))
		case d-2*e < float64(h.Smallest):
			return "the jaw that the work is drawn to stands " + mm(m.Radius-e) + " from the axis, under half of its smallest"
		}
		d += 2 * e // as far out as the other jaw of the pair stands
	}
	switch {
	case h.Largest > 0 && d > float64(h.Largest):
		return "Ø" + mm(d) + " is over its " + mm(float64(h.Largest))
	case d < float64(h.Smallest):
		return "Ø" + mm(d) + " is under its " + mm(float64(h.Smallest))
	}
	return ""
}

// knurlTight is what a knurl counts as: a surface that bare jaws would spoil.
const knurlTight = 0.05

// finish tells whether the surface gripped is at size now, and its tolerance.
func (s Shop) finish(m Mount, done func(int) bool) (bool, float64) {
	for i, f := range s.of {
		if k, ok := f.(*partspec.Knurl); ok && k.On == m.Surface && done(i) {
			return true, knurlTight
		}
	}
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
		f, ok := s.of[i].(*partspec.Thread)
		if ok && !f.Inside && f.On == m.Surface && done(i) && t.Touches(m.Z0, m.Z1) {
			return true
		}
	}
	return false
}

func mm(v float64) string {
	return strings.TrimSuffix(strings.TrimRight(formatMM(v), "0"), ".")
}

// Hollow reports whether the part has any hole.
func (s Shop) Hollow() bool { return len(s.Holes) > 0 || s.Part.Stock.Inside.Value > 0 }
