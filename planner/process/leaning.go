package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// Holes square to a seat lean: the axis of each crosses that of the pipe. Set over by its tilt about the pipe's direction a hole stands upright in the plane of the pipe's
// axis, under the lowest line of the hollow, so that holes with one tilt are drilled in one setting.

// leaning makes the tasks of a pattern of holes square to a seat: for each tilt drilled, then tapped in the same setting.
func (c *Context) leaning(f *partspec.Holes) []Task {
	s, lacking := c.spotted(f)
	lacking = append(lacking, c.noTilt(f)...)
	if s.reamMM > 0 {
		lacking = append(lacking, fmt.Sprintf("%s: its limits want a reamer, and holes square to a seat are drilled to size or tapped: write limits that a drill is trusted with", f.Name))
	}
	if len(lacking) > 0 {
		return []Task{{Op: shape.Op{ID: f.ID() + "/drill", Feature: f.Name, Process: plan.Drill}, Lacking: lacking}}
	}
	var tasks []Task
	lines := c.lines(s)
	for i, l := range lines {
		verb := func(v string) string {
			if len(lines) == 1 {
				return v
			}
			return fmt.Sprintf("%s_%d", v, i+1)
		}
		tasks = append(tasks, c.drillLine(l, verb("drill"), i == len(lines)-1))
		if s.Thread != nil {
			tasks = append(tasks, c.tapLine(l, verb("tap"), i == len(lines)-1))
		}
	}
	return tasks
}

// noTilt says what is lacking to set the work over for a pattern.
func (c *Context) noTilt(f *partspec.Holes) (lacking []string) {
	seat, most, owned := c.Part.Feature(f.SquareTo).(*partspec.Seat), 0.0, 0.0
	for _, at := range f.Places {
		most = math.Max(most, float64(seat.Tilt(at)))
	}
	for _, h := range c.Shop.Holdings {
		if h.Kind == partspec.TiltingPlate {
			owned = math.Max(owned, float64(h.TiltsTo))
		}
	}
	switch {
	case owned == 0:
		lacking = append(lacking, fmt.Sprintf(`%s: square to %s its holes lean by up to %.2f degrees, and nothing is owned that holds work tilted: a holding "tilting_plate" with its sine_length would do; or direction = "axis"`, f.Name, f.SquareTo, most))
	case owned < most:
		lacking = append(lacking, fmt.Sprintf("%s: its holes lean by up to %.2f degrees, and the tilting plate owned is set over by %.0f at most", f.Name, most, owned))
	}
	if !c.coordinates() {
		lacking = append(lacking, fmt.Sprintf("%s: holes square to a seat want a mill with dials x, y and quill (or z)", f.Name))
	}
	if c.endBroken(f.From) {
		lacking = append(lacking, fmt.Sprintf("%s: the work is found by the sharp edges of the rim's end; leave the chamfer or the fillet there out", f.Name))
	}
	return lacking
}

// endBroken reports whether the outer edge of an end is not that of a plain cylinder long enough to be found by.
func (c *Context) endBroken(e partspec.End) bool {
	const least = 2.0
	z0, z1 := ordered(c.endZ(e), c.endZ(e)+into(e)*least)
	if _, plain := c.outsideAt(z0, z1); !plain {
		return true
	}
	for _, f := range c.Part.Features {
		var edge partspec.Edge
		switch f := f.(type) {
		case *partspec.Chamfer:
			edge = f.Edge
		case *partspec.Fillet:
			edge = f.Edge
		default:
			continue
		}
		for _, b := range c.Blocks {
			if b.Name == edge.Feature && edge.End == e && (near(b.Z0, c.endZ(e)) || near(b.Z1, c.endZ(e))) {
				return true
			}
		}
	}
	return false
}

// lineTask begins a task for holes that lean alike. Each takes room from its mouth to where it comes out.
func (c *Context) lineTask(l lined, verb string, kind plan.Process, diameter float64) Task {
	t := c.holesTask(l.spotted, verb, kind, diameter, 0)
	t.End, t.Zone, t.About = l.lean.From, true, 0
	sin, cos := math.Sincos(l.lean.Deg * math.Pi / 180)
	for i := range t.Spots {
		t.Spots[i].Radius = diameter/2/cos + l.thick()*sin/cos
	}
	return t
}

// lineWay is the way in which holes that lean alike are worked by a tool that goes so much further than through.
func (c *Context) lineWay(l lined, diameter, further float64, follows bool) Way {
	w := Way{Machine: partspec.Mill, End: l.lean.From, Lean: &l.lean, Off: wander(follows)}
	x, y := c.dialOf("x"), c.dialOf("y")
	w.Off += math.Hypot(radial(x), radial(y)) / 2
	_, tip := l.through(diameter/2, further+1, l.lean.Deg)
	mouth := l.seat.end
	w.Span[0], w.Span[1] = ordered(tip, mouth)
	return w
}

// drillLine spots and drills holes that lean alike out of the hollow.
func (c *Context) drillLine(l lined, verb string, last bool) Task {
	t := c.lineTask(l, verb, plan.Drill, l.drillMM)
	t.Depth = l.drillMM / 2
	if l.Thread == nil {
		t.Stage, t.Tight = shape.Finishing, float64(l.Diameter.Width())
		if last {
			t.Makes = []string{l.Name}
		}
	}
	steps := c.drillStepsFrom(0, l.drillMM)
	past := overrun + 1 + pointLength(l.drillMM)
	w := c.lineWay(l, l.drillMM, past, false)
	w.Tool, w.SizeMM, w.ForceAt = l.drill, l.drillMM, l.drillMM/4
	w.Rate = c.drillRate(w.Machine, l.drillMM, l.drill, steps)
	w.ForceN, w.ThrustN = c.drillsForce(steps, w.Rate.FeedMM), c.drillsThrust(steps, w.Rate.FeedMM)
	w.SureN = w.ForceN
	deep, _ := l.through(l.drillMM/2, 0, l.lean.Deg)
	for range len(steps) + 1 {
		w.Minutes += minutesADrill + float64(len(l.Places))*(minutesAPlace+(deep+past)/(w.Rate.FeedMM*w.Rate.RPM)+pecks(deep+past, l.drillMM)*minutesAPeck)
	}
	w.Write = func(j Job) (plan.Operation, Done) { return c.writeLine(l, t, w, steps, j) }
	t.Ways = []Way{w}
	return t
}

func (c *Context) writeLine(l lined, t Task, w Way, steps []float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Drill %s, %s, square to %s, %s mm", l.Name, l.inWords(), l.SquareTo, units.Decimal(l.drillMM, 3)))
	p.beginLine(l)
	if c.Rules.Has("A-02") {
		tool := c.tools(partspec.CentreDrill)[0]
		size := float64(tool.Sizes[0])
		p.eachOfLine(l, tool, size, "spot", math.Min(size, steps[0])/2/math.Tan(units.Angle(plan.CentreDrillDeg/2).Radians()), false, "a centre for the drill")
		p.why("a long drill bends at the start; the spot holds it true", "A-02")
	}
	deg := j.Setup.Tilt.Degrees()
	deep, _ := l.through(l.drillMM/2, 0, deg)
	for _, d := range steps {
		tool, size, _ := c.sized(partspec.Drills, d, d)
		p.eachOfLine(l, tool, size, units.Decimal(d, 3)+" mm drill", deep+overrun+1+pointLength(d), true, p.drillSpeed(d))
	}
	if pecks(deep, l.drillMM) > 0 && c.Rules.Has("C-05") {
		p.note("Clear the chips at 3 drill diameters, then at every further diameter.")
		p.why("deep for its diameter", "C-05")
	}
	if len(steps) > 1 {
		p.why("the web of a large drill only pushes: smaller ones go first", "A-25")
	}
	p.note("Let the drill stand out at least %s: a drill chuck of Ø%s then clears the flanks of the hollow at full depth.", units.Length(math.Ceil(deep+overrun+1+pointLength(l.drillMM)+l.seat.radius-math.Sqrt(math.Max(0, l.seat.radius*l.seat.radius-drillChuckMM*drillChuckMM/4))+1)), units.Decimal(drillChuckMM, 0))
	if deg > 0 {
		p.note("The drill comes out on a slope of %s°: ease the feed to a quarter there, or it runs off and snatches; stand clear of it.", units.Decimal(deg, 1))
	}
	p.note("Touch off anew with every tool: their lengths differ.")
	p.why("the drill meets the hollow square to it, and runs off on neither side", "A-38n")
	p.setOver(l)
	if t.Stage == shape.Finishing {
		p.op.Checks = append(p.op.Checks, c.check(l.Name+", diameter", l.Name, l.Diameter, insideCheck))
	}
	p.lineDone(l, l.drillMM, "")
	return p.finish()
}

// drillChuckMM is the chuck that holds a drill in a small mill's spindle. Common practice, no source.
const drillChuckMM = 40.0

// setOver says what packing the tilt rests on, and what it is off by at the holes.
func (p *page) setOver(l lined) {
	t := p.j.Setup.Tilt
	off := (t.Degrees() - l.lean.Deg) * math.Pi / 180
	if t.RiseMM == 0 && off == 0 {
		return
	}
	p.why(fmt.Sprintf("%s wanted, packing of %s over %s gives %s: over the hole's length that is %s",
		units.Decimal(l.lean.Deg, 3)+"°", units.Decimal(t.RiseMM, 2), units.Decimal(t.SineMM, 2), units.Decimal(t.Degrees(), 3)+"°", units.Length(math.Ceil(math.Abs(off)*l.thick()*1000)/1000)), "C-37")
}

// beginLine sets the dials to nought and lists the places.
func (p *page) beginLine(l lined) {
	p.tableZeros()
	p.why("each place is counted from one nought, always coming up in the same direction", "C-08")
	deg := p.j.Setup.Tilt.Degrees()
	_, z := l.axis(deg)
	p.quillZero(tidyMM(z-l.seat.radius), "the tool's point just touches the lowest line of the hollow, clear of its holes")
	for i, at := range l.Places {
		st := p.overDials(l.place(i, deg))
		p.op.Holes = append(p.op.Holes, plan.HoleLine{Number: l.numbers[i], XMM: tidyMM(float64(at.X.Value)), YMM: tidyMM(float64(at.Y.Value)), X: st.x, Y: st.y})
	}
}

// eachOfLine takes one tool down every hole of a line, so deep below the hollow.
func (p *page) eachOfLine(l lined, tool partspec.Tool, size float64, name string, deep float64, through bool, note string) {
	q := p.quill()
	marks, reached := p.sunk(deep, through)
	p.line(name, q, marks, p.both(reached, q)+" below the hollow", note, false)
	for i := range l.Places {
		cut := p.plunge(fmt.Sprintf("hole %d, %s", l.numbers[i], name), p.overDials(l.place(i, p.j.Setup.Tilt.Degrees())), marks, 0, 0)
		cut.ToolID, cut.ToolSizeMM = tool.ID(), size
		p.op.Cuts = append(p.op.Cuts, cut)
	}
}

// lineDone notes the holes of a line as they now are.
func (p *page) lineDone(l lined, diameter float64, thread string) {
	for i := range l.Places {
		h := p.hole(l.spotted, i, l.lean.From, diameter)
		h.Number, h.Thread = l.numbers[i], thread
		p.done.Beside = append(p.done.Beside, h)
	}
}

// tapLine taps holes that lean alike, in the setting that drilled them: no guide stands on a hollow.
func (c *Context) tapLine(l lined, verb string, last bool) Task {
	th := l.Thread.Thread
	d := float64(th.Major)
	t := c.lineTask(l, verb, plan.Tap, d)
	t.Stage, t.Place, t.Depth = shape.Finishing, 0, threadDepth(l.Thread)
	if last {
		t.Makes = []string{l.Name}
	}
	lead := tapLead * float64(th.Pitch)
	w := c.lineWay(l, d, lead, true)
	w.Tool, _ = c.taps(th)
	w.SizeMM = d
	w.Rate = Rate{Why: "by hand", Text: "turned by hand", FeedMM: float64(th.Pitch), on: w.Machine}
	w.ForceAt, w.ForceN = d/2, c.force(t.Depth, float64(th.Pitch)/4)
	w.SureN = w.ForceN
	w.Minutes = minutesADrill + float64(len(l.Places))*(minutesATapHole+minutesAPlace)
	w.Write = func(j Job) (plan.Operation, Done) { return c.writeTapLine(l, t, w, lead, j) }
	t.Ways = []Way{w}
	return t
}

func (c *Context) writeTapLine(l lined, t Task, w Way, lead float64, j Job) (plan.Operation, Done) {
	name := l.Thread.Thread.Designation
	p := c.page(j, t, w, fmt.Sprintf("Tap %s %s, %s, square to %s", l.Name, name, l.inWords(), l.SquareTo))
	p.op.Tool.Text = name + " taps"
	p.beginLine(l)
	deep, _ := l.through(float64(l.Thread.Thread.Major)/2, 0, j.Setup.Tilt.Degrees())
	p.eachOfLine(l, w.Tool, w.SizeMM, "tap", deep+lead, true, "counted, not fed: the tap draws itself in")
	for i := range p.op.Cuts {
		p.op.Cuts[i].ToolID, p.op.Cuts[i].ToolSizeMM = "", 0
	}
	p.note("Taper, or second tap alone where it can pass through; back off every half turn. It starts in the hollow and ends on a slope: feel for the last threads.")
	p.why("taper first, plug last, started square", "A-30")
	p.op.Checks = append(p.op.Checks, plan.Check{What: name + " threads", Feature: l.Name, Limits: "the screw runs in without shake", When: "before release",
		IfLarge: "it shakes: the thread is scrap", IfSmall: "run the plug tap through again"})
	p.lineDone(l, l.drillMM, name)
	return p.finish()
}
