package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// reamHoles reams the holes of a pattern. The reamer follows the drilled holes.
func (c *Context) reamHoles(s spotted) Task {
	t := c.holesTask(s, "ream", plan.Ream, s.reamMM, s.depth)
	t.Stage, t.Makes, t.Tight, t.Depth = shape.Finishing, []string{s.Name}, float64(s.Diameter.Width()), reamLeave(s.reamMM)/2
	tool, _, _ := c.sized(partspec.Reamers, s.reamMM, s.reamMM)
	deep := s.depth
	if s.Through {
		deep = s.thick() + overrun
	}
	for _, w := range c.holeWays(s, true) {
		w.Tool, w.SizeMM, w.ForceAt = tool, s.reamMM, s.reamMM/4
		w.Rate = c.rateOn(w.Machine, cutReam, s.reamMM, tool)
		w.ForceN = c.openingForce(s.reamMM-reamLeave(s.reamMM), []float64{s.reamMM}, w.Rate.FeedMM)
		w.SureN = w.ForceN
		w.Span = s.span(w.End, deep)
		w.Minutes = minutesADrill + float64(len(s.Places))*(minutesAPlace+minutesTrial/2+deep/(w.Rate.FeedMM*w.Rate.RPM))
		w.Write = func(j Job) (plan.Operation, Done) {
			p := c.page(j, t, w, fmt.Sprintf("Ream %s to %s: %s", s.Name, s.Diameter.Drawn(), holesInWords(len(s.Places))))
			p.begin(s, w)
			p.eachHole(s, w, tool, s.reamMM, units.Decimal(s.reamMM, 3)+" mm reamer", deep, s.Through, "never turn it backwards")
			p.note("Plenty of oil on steel; withdraw while it turns forward.")
			p.why(fmt.Sprintf("%.2f is left for the reamer on diameter; it follows the %s hole", s.reamMM-s.drillMM, s.opened()), "A-27")
			p.op.Checks = append(p.op.Checks, c.check(s.Name+", diameter", s.Name, s.Diameter, insideCheck))
			p.holesDone(s, w.End, s.reamMM)
			return p.finish()
		}
		t.Ways = append(t.Ways, w)
	}
	return t
}

// opened says what made the hole that the reamer follows.
func (s spotted) opened() string {
	if s.bored {
		return "bored"
	}
	return "drilled"
}

// sinkHoles widens the mouths of a pattern: counterbores with a piloted tool or an end mill, countersinks.
func (c *Context) sinkHoles(s spotted) Task {
	if s.Sink.Angle > 0 {
		return c.countersink(s)
	}
	deep := float64(s.Sink.Depth.Mid())
	t := c.holesTask(s, "counterbore", plan.Counterbore, float64(s.Sink.Diameter.Value), deep)
	t.Stage, t.Tight, t.Depth = shape.Finishing, float64(s.Sink.Depth.Width()), (float64(s.Sink.Diameter.Value)-s.drillMM)/2
	t.Ways = append(c.sinkWays(s, t, partspec.Counterbores), c.sinkWays(s, t, partspec.EndMill)...)
	return t.orLacking(c.noSink(s.Name, s.Sink.Diameter))
}

// sinkWays lists the ways to counterbore with a kind of tool: one with a pilot follows the hole that is there, an end mill goes where the dials put it.
func (c *Context) sinkWays(s spotted, t Task, kind partspec.ToolKind) []Way {
	tool, size, ok := c.sized(kind, float64(s.Sink.Diameter.Low), float64(s.Sink.Diameter.High))
	if !ok || kind == partspec.EndMill && s.marked() {
		return nil
	}
	var ways []Way
	deep := float64(s.Sink.Depth.Mid())
	for _, w := range c.holeWays(s, kind == partspec.Counterbores) {
		w.Tool, w.SizeMM, w.ForceAt = tool, size, size/2
		w.Rate = c.rateOn(w.Machine, cutCounterbore, size, tool)
		w.ForceN = c.force((size-s.drillMM)/2, w.Rate.FeedMM)
		w.SureN = w.ForceN
		w.Span = s.span(w.End, deep)
		w.Minutes = minutesADrill + float64(len(s.Places))*(minutesAPlace+minutesTrial/2+deep/(w.Rate.FeedMM*w.Rate.RPM))
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeCounterbore(s, t, w, deep, j) }
		ways = append(ways, w)
	}
	return ways
}

// noSink says that nothing owned cuts a counterbore of a diameter, and what would.
func (c *Context) noSink(name string, d partspec.Size) string {
	text := fmt.Sprintf("%s: no counterbore and no end mill owned between %.2f and %.2f (an end mill serves by dials only): tool \"counterbores\" { sizes = [%s] } would do", name, float64(d.Low), float64(d.High), units.Decimal(float64(d.Value), 3))
	if near := c.nearestSink(float64(d.Value)); near > 0 {
		text += fmt.Sprintf(", or diameter = %s where the screw's head leaves it room", units.Decimal(near, 3))
	}
	return text
}

// nearestSink is the next larger size of the counterbores and end mills owned; 0 when there is none.
func (c *Context) nearestSink(over float64) float64 {
	best := 0.0
	for _, kind := range []partspec.ToolKind{partspec.Counterbores, partspec.EndMill} {
		for _, t := range c.tools(kind) {
			if size, ok := leastOver(t, over); ok && (best == 0 || size < best) {
				best = size
			}
		}
	}
	return best
}

func (c *Context) writeCounterbore(s spotted, t Task, w Way, deep float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Counterbore %s, Ø%s, %s deep: %s", s.Name, units.Decimal(w.SizeMM, 3), s.Sink.Depth.Value.Text(c.unit()), holesInWords(len(s.Places))))
	p.begin(s, w)
	p.eachHole(s, w, w.Tool, w.SizeMM, "counterbore", deep, false, "the pilot in the hole, oil")
	p.why("the pilot finds the hole that is there", "A-44")
	p.sinkDone(s, w)
	return p.finish()
}

// countersink widens the mouths with a cone.
func (c *Context) countersink(s spotted) Task {
	d := s.Sink.Diameter
	mouth := (float64(d.Mid()) - s.drillMM) / 2 / math.Tan(s.Sink.Angle.Radians()/2)
	t := c.holesTask(s, "countersink", plan.Countersink, float64(d.Value), mouth)
	t.Stage, t.Tight, t.Depth = shape.Finishing, float64(d.Width()), (float64(d.Value)-s.drillMM)/2
	t.Ways = c.coneWays(s, t, "")
	return t.orLacking(fmt.Sprintf("%s: no countersink of %.0f degrees, Ø%.1f or larger, is owned", s.Name, float64(s.Sink.Angle), float64(d.High)))
}

// coneWays lists the ways to widen mouths with a countersink, as a process of its own where the task is not that.
func (c *Context) coneWays(s spotted, t Task, as plan.Process) []Way {
	var ways []Way
	d := s.Sink.Diameter
	deep := float64(d.Mid()) / 2 / math.Tan(s.Sink.Angle.Radians()/2) // of the cone's point
	for _, tool := range c.tools(partspec.Countersink) {
		size, ok := leastOver(tool, float64(d.High))
		if !ok || math.Abs(float64(tool.Angle-s.Sink.Angle)) > sameAngle {
			continue
		}
		for _, w := range c.holeWays(s, true) {
			w.Process, w.Tool, w.SizeMM, w.ForceAt = as, tool, size, float64(d.Value)/2
			w.Rate = c.rateOn(w.Machine, cutCountersink, float64(d.Value), tool)
			w.ForceN = c.force((float64(d.Value)-s.drillMM)/2, w.Rate.FeedMM)
			w.SureN = w.ForceN
			w.Span = s.span(w.End, deep)
			w.Minutes = minutesADrill + float64(len(s.Places))*(minutesAPlace+minutesEdge)
			w.Write = func(j Job) (plan.Operation, Done) {
				p := c.page(j, t, w, fmt.Sprintf("Countersink %s to Ø%s: %s", s.Name, d.Value.Text(c.unit()), holesInWords(len(s.Places))))
				p.begin(s, w)
				p.touchBeside()
				p.eachHole(s, w, tool, size, "countersink", deep, false, "try the screw's head in the first one")
				p.why("countersunk once the hole is there, and followed by it", "A-44")
				p.sinkDone(s, w)
				return p.finish()
			}
			ways = append(ways, w)
		}
	}
	return ways
}

// touchBeside tells how a cone, whose point would hang in the air over the hole, is touched off.
func (p *page) touchBeside() {
	for i := range p.op.Zeros {
		if p.op.Zeros[i].Dial == p.quill() && p.quill() != "" {
			p.op.Zeros[i].How = "the countersink's point just touches the face, beside the hole"
		}
	}
}

// sameAngle is how near two included angles are called the same, in degrees: a drawn 90 and a tool's 90.
const sameAngle = 0.1

// leastOver is the smallest size of a set that is no smaller than so much: the nearest to the mouth stays clear of jaws and clamps.
func leastOver(t partspec.Tool, mm float64) (float64, bool) {
	for _, s := range t.Sizes {
		if float64(s) >= mm-sizeNoise {
			return float64(s), true
		}
	}
	return 0, false
}

func (p *page) sinkDone(s spotted, w Way) {
	for i := range s.Places {
		h := p.hole(s, i, w.End, s.drillMM)
		h.SinkMM = float64(s.Sink.Diameter.Value)
		p.done.Beside = append(p.done.Beside, h)
	}
}

// tapHoles taps the holes of a pattern: under the spindle that drilled them, or by hand at the bench.
func (c *Context) tapHoles(s spotted) Task {
	th := s.Thread
	full := float64(th.Length.Value)
	t := c.holesTask(s, "tap", plan.Tap, float64(th.Thread.Major), full)
	deep := full
	if s.Through {
		t = c.holesTask(s, "tap", plan.Tap, float64(th.Thread.Major), 0)
		deep = s.thick() + tapLead*float64(th.Thread.Pitch)
	}
	t.Stage, t.Makes, t.Place = shape.Finishing, []string{s.Name}, 0
	t.Depth = threadDepth(th)
	t.Ways = c.tapWays(s, t, deep)
	return t
}

// tapWays lists the ways to tap holes so deep from their face.
func (c *Context) tapWays(s spotted, t Task, deep float64) []Way {
	th := s.Thread
	tool, _ := c.taps(th.Thread)
	ways := c.holeWays(s, true)
	for _, e := range s.from {
		if c.Bench.Kind != "" {
			ways = append(ways, Way{Machine: partspec.Bench, End: e, Marked: true})
		}
	}
	for i, w := range ways {
		w.Tool, w.SizeMM = tool, float64(th.Thread.Major)
		if t.Process != plan.Tap {
			w.Process = plan.Tap
		}
		w.Rate = Rate{Why: "by hand", Text: "turned by hand", FeedMM: float64(th.Thread.Pitch), on: w.Machine}
		w.ForceAt, w.ForceN = float64(th.Thread.Major)/2, c.force(t.Depth, float64(th.Thread.Pitch)/4)
		w.SureN = w.ForceN
		w.Span = s.span(w.End, deep)
		w.Minutes = minutesADrill + float64(len(s.Places))*minutesATapHole
		if w.Machine == partspec.Bench { // the tap is set square with a guide at every hole
			w.Minutes += float64(len(s.Places)) * minutesAPlace
		}
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeTaps(s, t, w, deep, j) }
		ways[i] = w
	}
	return ways
}

// tapLead is the lead of a second tap, in pitches: what must come out of a through hole (handbook practice, from memory).
const tapLead = 4

func (c *Context) writeTaps(s spotted, t Task, w Way, deep float64, j Job) (plan.Operation, Done) {
	name := s.Thread.Thread.Designation
	p := c.page(j, t, w, fmt.Sprintf("Tap %s %s: %s", s.Name, name, holesInWords(len(s.Places))))
	p.op.Tool.Text = name + " taps"
	p.begin(s, w)
	marks, reached := int64(0), deep
	if q := p.quill(); q != "" {
		marks, reached = p.sunk(deep, s.Through)
		p.line("tap", q, marks, p.both(reached, q)+" below the face", "counted, not fed: the tap draws itself in", false)
	}
	for i := range s.Places {
		st := p.over(s, w, i)
		if w.Marked {
			st.place.By, st.place.WithinMM = "hole", 0
		}
		top := p.faceNow(s.columns[i].entry(w.End), w.End)
		p.op.Cuts = append(p.op.Cuts, p.plunge(fmt.Sprintf("hole %d, tap", i+1), st, marks, top+into(w.End)*reached, top+into(w.End)*(reached+p.stopWithin(s.Through))))
	}
	if s.Through {
		p.note("Taper, or second tap alone where it can pass through; back off every half turn.")
	} else {
		p.note("Taper, second, then plug tap; back off every half turn, and clear the chips.")
		p.why(fmt.Sprintf("drilled %s deeper than the full thread: the tap's lead and the chips need room", units.Length(s.depth-deep).Round(2).Text(c.unit())), "A-29")
	}
	if w.Machine == partspec.Bench {
		p.note("Set the tap square with a guide block or a square from two sides after the first turns.")
	}
	p.why("taper first, plug last, started square", "A-30")
	p.op.Checks = append(p.op.Checks, plan.Check{What: name + " threads", Feature: s.Name, Limits: "the screw runs in without shake", When: "before release",
		IfLarge: "it shakes: the thread is scrap", IfSmall: "run the plug tap through again"})
	for i := range s.Places {
		h := p.hole(s, i, w.End, s.drillMM)
		h.Thread = name
		p.done.Beside = append(p.done.Beside, h)
	}
	return p.finish()
}
