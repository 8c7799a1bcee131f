package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/tables"
)

// across is a hole square to the axis, ready to be drilled: how high the outside stands there and how far down its full diameter goes.
type across struct {
	*partspec.CrossHole
	spotted        // tools and thread, as for a pattern of one
	z, top, bottom float64
}

// crossHole makes the tasks of a hole across the axis.
func (c *Context) crossHole(f *partspec.CrossHole) []Task {
	a, lacking := c.acrossOf(f)
	d := a.drillMM
	drill := crossTask(f, "drill", plan.Drill, a.z-d/2, a.z+d/2)
	if len(lacking) > 0 {
		drill.Lacking = lacking
		return []Task{drill}
	}
	marked := !c.coordinates()
	var tasks []Task
	if marked {
		tasks = append(tasks, c.markCross(a))
	}
	if c.wantsFlat(a) {
		tasks = append(tasks, c.spotFace(a))
	}
	tasks = append(tasks, c.drillCross(a, drill, marked))
	if a.reamMM > 0 {
		tasks = append(tasks, c.reamCross(a, marked))
	}
	if a.CrossHole.Thread != nil {
		tasks = append(tasks, c.tapCross(a))
	}
	if a.bottom < c.insideAt(a.z-d/2, a.z+d/2) {
		tasks = append(tasks, c.deburrInside(f, a.z-d/2, a.z+d/2)...)
	}
	return tasks
}

// acrossOf looks a cross hole through: its tools by the ways of a pattern, its metal by the drawn outside and the bore it ends in.
func (c *Context) acrossOf(f *partspec.CrossHole) (a across, lacking []string) {
	like := &partspec.Holes{FeatureHead: f.FeatureHead, Make: f.Make, Diameter: f.Diameter, Thread: f.Thread, Screw: f.Screw, Through: f.Through || f.Into != "", Depth: f.Depth, From: partspec.Right}
	a = across{CrossHole: f, spotted: spotted{Holes: like}, z: float64(f.Z.Mid())}
	r := float64(f.Diameter.High) / 2
	top, ok := c.outsideAt(a.z-r, a.z+r)
	if !ok {
		lacking = append(lacking, fmt.Sprintf("%s: the outside is no plain cylinder where it enters; give it a spigot or a flat there (rule A-31)", f.Name))
	}
	a.top = top
	bore := c.insideAt(a.z-r, a.z+r)
	a.spotted.columns = []column{{-top, top}}
	if !like.Through { // the floor under it is the far wall, or the bore
		a.spotted.columns = []column{{bore, top}}
	}
	lacking = append(lacking, c.holeTools(&a.spotted)...)
	rd := a.drillMM / 2
	for _, tool := range []float64{rd, a.reamMM / 2} {
		if tool > 0 {
			lacking = append(lacking, c.grazes(a, tool)...)
		}
	}
	switch {
	case f.Through:
		a.bottom = -top - overrun
	case f.Into != "" && bore <= rd:
		lacking = append(lacking, fmt.Sprintf("%s: the bore %s is Ø%.2f, no wider than the hole that ends in it; drill it through", f.Name, f.Into, 2*bore))
	case f.Into != "":
		a.bottom = math.Sqrt(bore*bore-rd*rd) - overrun
		if a.bottom-pointLength(a.drillMM) < -bore+1 {
			lacking = append(lacking, fmt.Sprintf("%s: the drill's point would reach the far wall of %s before its full diameter is through; drill it right through, or smaller", f.Name, f.Into))
		}
	default:
		a.bottom = top - float64(f.Depth.Mid())
	}
	if c.Rules.Has("A-02") && len(c.tools(partspec.CentreDrill)) == 0 {
		lacking = append(lacking, fmt.Sprintf("drilling %s: no centre drill is owned to spot it with", f.Name))
	}
	if !c.coordinates() && (c.Drill.Kind == "" && c.Mill.Kind == "" || c.Bench.Kind == "" || len(c.tools(partspec.Scriber)) == 0) {
		lacking = append(lacking, fmt.Sprintf("%s: neither a mill with dials x, y and quill (or z), nor a bench, a scriber and a drilling machine are owned to drill it across with", f.Name))
	}
	return a, lacking
}

// turned is a cross hole on the round as it stands, which lies off the drawn one by what a graduation leaves.
func (a across) turned(j Job) across {
	a.top = crownNow(a.z-a.drillMM/2, a.z+a.drillMM/2, j)
	return a
}

// grazes says which groove a hole of radius r enters with so little room that the drill may come down on the groove's edge, wherever within its limits the hole lies.
func (c *Context) grazes(a across, r float64) []string {
	off := c.acrossPlace(a)
	for _, f := range c.Part.Features {
		g, ok := f.(*partspec.Groove)
		if !ok || g.On != a.On {
			continue
		}
		left, right := a.z-r-float64(g.Span.Left), float64(g.Span.Right)-a.z-r
		if least := math.Min(left, right); math.Max(left, right) > -2*r && least > -sizeNoise && (least < off || g.Angle != 0) {
			return []string{fmt.Sprintf("%s: it enters groove %s and may lie %.2f off, where the drill comes down on the groove's edge (rule A-31): write a square groove at least %.2f wide about it, or one narrower than the hole", a.Name, g.Name, off, 2*(r+off))}
		}
	}
	return nil
}

// wantsFlat reports whether a hole is too wide for the round that it enters to be spotted on the crown: over a quarter of its diameter, and no small hole on a
// crown that a centre drill's point stands on (rule A-31).
func (c *Context) wantsFlat(a across) bool {
	small := a.drillMM <= smallOnCrown+sizeNoise && a.drillMM <= shareOnCrown*2*a.top
	return c.Rules.Has("A-31") && a.drillMM > 2*a.top/4 && !small
}

// A small hole is started on the crown with no flat: one of up to 3, and of up to a third of the round. A centre drill's point is then narrow beside the crown. The
// exception is the rule's; its figures are common practice, no source.
const (
	smallOnCrown = 3.0
	shareOnCrown = 1.0 / 3
)

// acrossPlace is how far a cross hole may lie from its place: along the axis by its limits, to the side by the general tolerance of the width that it
// is in the middle of.
func (c *Context) acrossPlace(a across) float64 {
	along := float64(a.Z.Width()) / 2
	d, err := tables.ISO2768(c.Part.General, tables.GeneralLength, units.Length(2*a.top))
	if err != nil {
		return along
	}
	return math.Min(along, float64(d.Upper))
}

// fromFace is how far the face at z, that a place is measured from, may lie off when it is counted from the free end's face, where the dial is set: nothing when they are one, or
// when it is a shoulder that looks that way and so was cut from there by dial; else half the tolerance of the length.
func (c *Context) fromFace(z float64, free partspec.End) float64 {
	if c.counted(z) == free {
		return 0
	}
	return float64(c.Part.Length.Width()) / 2
}

// counted is the end from whose face a face lies where it does: itself, or for a shoulder the end that it looks at.
func (c *Context) counted(z float64) partspec.End {
	switch {
	case z <= sizeNoise:
		return partspec.Left
	case z >= c.Length-sizeNoise:
		return partspec.Right
	}
	var before, after float64
	for _, b := range c.Blocks {
		if b.Z0 < z-sizeNoise && b.Z1 >= z-sizeNoise {
			before = b.Greatest
		}
		if b.Z1 > z+sizeNoise && b.Z0 <= z+sizeNoise {
			after = b.Greatest
		}
	}
	if before < after {
		return partspec.Left
	}
	return partspec.Right
}

func (c *Context) markCross(a across) Task {
	t := crossTask(a.CrossHole, "mark", plan.MarkOut, a.z, a.z)
	tool := c.tools(partspec.Scriber)[0]
	for _, e := range ends() {
		w := Way{Machine: partspec.Bench, End: e, Tool: tool, Minutes: minutesMarkOut}
		w.Write = func(j Job) (plan.Operation, Done) {
			p := c.page(j, t, w, fmt.Sprintf("Mark out %s on the crown", a.CrossHole.Name))
			p.op.RPM = 0
			p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: "mark", At: &plan.Place{XMM: tidyMM(a.z), By: "scribed line", WithinMM: c.markError()}})
			p.note("In a vee block, a line along the crown at centre height and one round it %s from the %s face; punch where they cross.", units.Length(math.Abs(a.z-c.endZ(partspec.Left))).Text(c.unit()), partspec.Left)
			p.why("the drill starts in the mark, on the exact crown", "A-31")
			return p.finish()
		}
		t.Ways = append(t.Ways, w)
	}
	return t
}

// spotFace cuts a flat for the drill with an end mill no wider than the hole.
func (c *Context) spotFace(a across) Task {
	d := a.drillMM
	t := crossTask(a.CrossHole, "spot_face", plan.MillFlat, a.z-d/2, a.z+d/2)
	t.Rim, t.Aside = a.top, c.acrossAside(a)
	tool, size, ok := c.sized(partspec.EndMill, d/2, d)
	for _, e := range c.tools(partspec.EndMill) {
		for _, v := range e.Sizes {
			if m := float64(v); m <= d+sizeNoise && m > size {
				tool, size, ok = e, m, true
			}
		}
	}
	deep := a.top - math.Sqrt(math.Max(0, a.top*a.top-size*size/4))
	t.Depth = deep
	if ok && c.coordinates() {
		for _, w := range c.crossWays(float64(a.CrossHole.Angle), false, t.Z0, t.Z1) {
			w.Tool, w.SizeMM, w.Rate, w.ForceAt = tool, size, c.millRate(size, deep, tool), a.top
			w.ForceN = c.millForce(partspec.EndMill, size, deep)
			w.SureN = w.ForceN
			w.Minutes = minutesADrill + minutesAPlace + deep/(w.Rate.FeedMM*w.Rate.RPM)
			w.Write = func(j Job) (plan.Operation, Done) {
				a := a.turned(j)
				p := c.page(j, t, w, fmt.Sprintf("Spot-face the crown for %s", a.CrossHole.Name))
				p.beginAcross(w, a.top, "the end mill just touches the crown")
				s := p.overAxis(w, a.z, 0)
				marks, reached := p.sunk(deep, true)
				cut := p.plunge("spot face", s, marks, 0, 0)
				p.op.Cuts = append(p.op.Cuts, cut)
				p.standLines(s, "over the hole")
				p.line("spot face", p.quill(), marks, p.both(reached, p.quill())+" deep, a full circle", "", false)
				p.why(fmt.Sprintf("the hole is over a quarter of Ø%s: a drill would run off the round", units.Decimal(2*a.top, 2)), "A-31")
				return p.finish()
			}
			t.Ways = append(t.Ways, w)
		}
	}
	return t.orLacking(fmt.Sprintf("%s is over a quarter of the Ø%.1f it enters and wants a flat first: an end mill of Ø%.1f or less, on a mill with dials (rule A-31)", a.CrossHole.Name, 2*a.top, d))
}

// drillCross spots the crown and drills.
func (c *Context) drillCross(a across, t Task, marked bool) Task {
	t.Depth, t.Place = a.drillMM/2, c.acrossPlace(a)
	t.Rim, t.Aside = a.top, c.acrossAside(a)
	if a.reamMM == 0 && a.CrossHole.Thread == nil {
		t.Stage, t.Makes, t.Tight = shape.Finishing, []string{a.CrossHole.Name}, float64(a.CrossHole.Diameter.Width())
	}
	steps := c.drillStepsFrom(0, a.drillMM)
	deep := a.top - a.bottom + pointLength(a.drillMM)
	for _, w := range c.crossWays(float64(a.CrossHole.Angle), marked, t.Z0, t.Z1) {
		w.Tool, w.SizeMM, w.ForceAt = a.drill, a.drillMM, a.drillMM/4
		w.Off += wander(false) + c.fromFace(float64(a.CrossHole.ZFrom), w.End)
		w.Rate = c.drillRate(w.Machine, a.drillMM, a.drill, steps)
		w.ForceN, w.ThrustN = c.drillsForce(steps, w.Rate.FeedMM), c.drillsThrust(steps, w.Rate.FeedMM)
		w.SureN = w.ForceN
		w.Minutes = float64(len(steps)+1)*minutesADrill + minutesAPlace
		for _, d := range steps {
			w.Minutes += deep / (w.Rate.FeedMM * c.drillRate(w.Machine, d, a.drill, steps).RPM)
		}
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeCross(a, t, w, steps, j) }
		t.Ways = append(t.Ways, w)
	}
	return t
}

func (c *Context) writeCross(a across, t Task, w Way, steps []float64, j Job) (plan.Operation, Done) {
	a = a.turned(j)
	p := c.page(j, t, w, fmt.Sprintf("Drill %s across, %s mm", a.CrossHole.Name, units.Decimal(a.drillMM, 3)))
	p.beginAcross(w, a.top, "the tool's point just touches the crown")
	s := p.overAxis(w, a.z, 0)
	if !c.wantsFlat(a) && c.Rules.Has("A-02") {
		tool := c.tools(partspec.CentreDrill)[0]
		size := float64(tool.Sizes[0])
		p.sink(s, tool, size, "spot", math.Min(size, steps[0])/2/math.Tan(units.Angle(plan.CentreDrillDeg/2).Radians()), a.top, false, "")
		p.why("spotted on the exact crown with a short stiff drill", "A-31")
	}
	through := a.spotted.Through
	for _, d := range steps {
		tool, size, _ := c.sized(partspec.Drills, d, d)
		p.sink(s, tool, size, units.Decimal(d, 3)+" mm drill", a.top-a.bottom+pointLength(a.drillMM), a.top, through, p.drillSpeed(d))
	}
	p.standLines(s, "over the hole")
	if through {
		p.note("Ease the feed where the point breaks into the bore or out of the far side: a quarter of the usual.")
		p.why("a drill that enters a void has one lip loaded and wanders", "A-35")
	}
	if p.quill() != "" {
		p.note("Touch off anew with every tool: their lengths differ.")
	}
	if t.Stage == shape.Finishing {
		p.op.Checks = append(p.op.Checks, c.check(a.CrossHole.Name+", diameter", a.CrossHole.Name, a.CrossHole.Diameter, insideCheck))
	}
	return p.finish()
}

// sink is a tool straight down at a place, so deep below a height.
func (p *page) sink(s stand, tool partspec.Tool, size float64, name string, deep, top float64, through bool, note string) {
	marks, reached := int64(0), deep
	if q := p.quill(); q != "" {
		marks, reached = p.sunk(deep, through)
		p.line(name, q, marks, p.both(reached, q)+" below the crown", note, false)
	} else {
		p.note("%s: until its end is %s below the crown, by the machine's own stop.", named(name, note), p.both(reached, ""))
	}
	cut := p.plunge(name, s, marks, top-reached, top-reached-p.stopWithin(through))
	cut.ToolID, cut.ToolSizeMM = tool.ID(), size
	p.op.Cuts = append(p.op.Cuts, cut)
}

func (c *Context) reamCross(a across, marked bool) Task {
	t := crossTask(a.CrossHole, "ream", plan.Ream, a.z-a.reamMM/2, a.z+a.reamMM/2)
	t.Stage, t.Makes, t.Tight, t.Depth = shape.Finishing, []string{a.CrossHole.Name}, float64(a.CrossHole.Diameter.Width()), reamLeave(a.reamMM)/2
	t.Rim, t.Aside = a.top, c.acrossAside(a)
	tool, _, _ := c.sized(partspec.Reamers, a.reamMM, a.reamMM)
	for _, w := range c.crossWays(float64(a.CrossHole.Angle), marked, t.Z0, t.Z1) {
		w.Tool, w.SizeMM, w.ForceAt = tool, a.reamMM, a.reamMM/4
		w.Rate = c.rateOn(w.Machine, cutReam, a.reamMM, tool)
		w.ForceN = c.openingForce(a.reamMM-reamLeave(a.reamMM), []float64{a.reamMM}, w.Rate.FeedMM)
		w.SureN = w.ForceN
		w.Minutes = minutesADrill + minutesTrial
		w.Write = func(j Job) (plan.Operation, Done) {
			a := a.turned(j)
			p := c.page(j, t, w, fmt.Sprintf("Ream %s across to %s", a.CrossHole.Name, a.CrossHole.Diameter.Drawn()))
			p.beginAcross(w, a.top, "the reamer's end is level with the crown")
			s := p.overAxis(w, a.z, 0)
			p.sink(s, tool, a.reamMM, "ream", a.top-a.bottom, a.top, a.spotted.Through, "")
			p.standLines(s, "over the hole")
			p.why(fmt.Sprintf("%.2f is left for the reamer on diameter; it follows the drilled hole", a.reamMM-a.drillMM), "A-27")
			p.op.Checks = append(p.op.Checks, c.check(a.CrossHole.Name+", diameter", a.CrossHole.Name, a.CrossHole.Diameter, insideCheck))
			return p.finish()
		}
		t.Ways = append(t.Ways, w)
	}
	return t
}

// tapCross taps a hole across the axis, under the spindle or by hand at the bench.
func (c *Context) tapCross(a across) Task {
	th := a.CrossHole.Thread
	d := float64(th.Thread.Major)
	t := crossTask(a.CrossHole, "tap", plan.Tap, a.z-d/2, a.z+d/2)
	t.Stage, t.Makes, t.Depth = shape.Finishing, []string{a.CrossHole.Name}, float64(th.Thread.Major-th.Thread.MinorInt)/2
	t.Rim, t.Aside = a.top, c.acrossAside(a)
	tool, _ := c.taps(th.Thread)
	deep := float64(th.Length.Value)
	if a.spotted.Through {
		deep = a.top - a.bottom + tapLead*float64(th.Thread.Pitch)
		if bore := c.insideAt(a.z-d/2, a.z+d/2); !a.CrossHole.Through && bore > 0 {
			deep = math.Min(deep, a.top+bore-1) // short of the far wall
		}
	}
	var ways []Way
	if c.coordinates() {
		ways = c.crossWays(float64(a.CrossHole.Angle), false, t.Z0, t.Z1)
	}
	if c.Bench.Kind != "" {
		for _, e := range ends() {
			ways = append(ways, Way{Machine: partspec.Bench, End: e, Marked: true, Minutes: minutesAPlace})
		}
	}
	for _, w := range ways {
		w.Tool, w.SizeMM = tool, d
		w.Rate = Rate{Why: "by hand", Text: "turned by hand", FeedMM: float64(th.Thread.Pitch), on: w.Machine}
		w.ForceAt, w.ForceN = d/2, c.force(t.Depth, float64(th.Thread.Pitch)/4)
		w.SureN = w.ForceN
		w.Minutes += minutesADrill + minutesATapHole
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeTapCross(a, t, w, deep, j) }
		t.Ways = append(t.Ways, w)
	}
	return t.orLacking(fmt.Sprintf("%s: neither a bench nor a mill with dials is owned to tap it at", a.CrossHole.Name))
}

func (c *Context) writeTapCross(a across, t Task, w Way, deep float64, j Job) (plan.Operation, Done) {
	a = a.turned(j)
	name := a.CrossHole.Thread.Thread.Designation
	p := c.page(j, t, w, fmt.Sprintf("Tap %s %s", a.CrossHole.Name, name))
	p.op.Tool.Text = name + " taps"
	p.beginAcross(w, a.top, "the tap's end is level with the crown")
	s := p.overAxis(w, a.z, 0)
	if w.Marked {
		s.place.By, s.place.WithinMM = "hole", 0
	}
	p.sink(s, w.Tool, w.SizeMM, "tap", deep, a.top, a.spotted.Through, "")
	p.op.Cuts[0].ToolID, p.op.Cuts[0].ToolSizeMM = "", 0
	p.standLines(s, "over the hole")
	p.why("taper first, plug last, started square", "A-30")
	p.op.Checks = append(p.op.Checks, plan.Check{What: name + " thread", Feature: a.CrossHole.Name, Limits: "the screw runs in without shake", When: "before release",
		IfLarge: "it shakes: the thread is scrap", IfSmall: "run the plug tap through again"})
	return p.finish()
}
