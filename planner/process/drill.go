package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

func (c *Context) drill(h shape.Hole, chain Chain, d float64) Task {
	t := Task{Op: shape.Op{ID: h.Feature.Head().ID() + "/drill", Feature: h.Name, Process: plan.Drill, Stage: shape.Roughing, Inside: true, Depth: d/2 - c.startRadius(h)}}
	if chain == ChainDrill {
		t.Stage, t.Makes, t.Tight, t.Round = shape.Finishing, []string{h.Name}, float64(h.Diameter.Width()), c.roundness(h.Diameter)
	}
	set, _, _ := c.sized(partspec.Drills, d, d)
	if c.Rules.Has("A-02") && c.startRadius(h) == 0 && len(c.tools(partspec.CentreDrill)) == 0 {
		return t.orLacking(fmt.Sprintf("drilling %s from solid: no centre drill is owned to spot it with", h.Name))
	}
	if _, ok := c.Lathe.Dial("tailstock"); !ok {
		return t.orLacking(fmt.Sprintf("drilling %s: the lathe has no tailstock dial to drill by", h.Name))
	}
	for _, e := range mouths(h) {
		tip := c.drillTip(h, e, d)
		depth := math.Abs(tip - c.endZ(e))
		if t.Inner.Empty() {
			t.Inner = solid.Drill(tip, d, plan.DrillPointDeg, shank(e))
			t.Z0, t.Z1 = math.Min(tip, c.endZ(e)), math.Max(tip, c.endZ(e))
		}
		tail, _ := c.Lathe.Dial("tailstock")
		if tail.Travel > 0 && depth > float64(tail.Travel) {
			t.Lacking = append(t.Lacking, fmt.Sprintf("drilling %s %.0f deep: the tailstock travels %.0f", h.Name, depth, float64(tail.Travel)))
			continue
		}
		w := Way{End: e, Tool: set, SizeMM: d, Ordinary: true, ForceAt: d / 4, Span: [2]float64{math.Min(tip, c.endZ(e)), math.Max(tip, c.endZ(e))}}
		steps := c.drillSteps(h, d)
		w.Rate = c.drillRate("", d, set, steps)
		tube := 2 * math.Max(0, c.Stock.Inner.Least(h.Z0, h.Z1)) // what other drills leave may come later: each is reckoned as if it went first
		for _, s := range steps {
			w.ForceN = math.Max(w.ForceN, c.openingForce(tube, []float64{s}, w.Rate.FeedMM))
			r := c.drillRate("", s, set, steps)
			w.Minutes += depth/(r.FeedMM*r.RPM) + minutesADrill + pecks(depth, s)*minutesAPeck
		}
		if c.Rules.Has("A-02") && c.startRadius(h) == 0 {
			w.Minutes += minutesADrill
		}
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeDrill(h, t, w, steps, tip, j) }
		t.Ways = append(t.Ways, w)
	}
	return t
}

func (c *Context) drillTip(h shape.Hole, e partspec.End, d float64) float64 {
	point := d / 2 / math.Tan(units.Angle(plan.DrillPointDeg/2).Radians())
	switch {
	case h.Through && c.Place.OnBar() && e == c.Place.Free:
		return c.Place.BarSide(c.Length) + into(e)*(overrun+1+point)
	case h.Through:
		return c.through(e, overrun+1+point)
	case h.Flat || c.Bored[h.Name] == ChainTaper:
		return c.endZ(e) + into(e)*(h.Depth-floorShort)
	}
	return c.endZ(e) + into(e)*(h.Depth+point)
}

func shank(e partspec.End) solid.Side {
	if e == partspec.Right {
		return solid.TowardsPlus
	}
	return solid.TowardsMinus
}

const minutesAPeck = 0.1

// pecks is how often a drill is withdrawn to clear (rule C-05).
func pecks(depth, d float64) float64 {
	if depth <= 3*d {
		return 0
	}
	return math.Ceil((depth - 3*d) / d)
}

// drillSteps are the drills of a chain, rising (rule A-25).
func (c *Context) drillSteps(h shape.Hole, d float64) []float64 {
	return c.drillStepsFrom(math.Max(0, 2*c.startRadius(h)-c.stillToCome(h)), d)
}

// drillStepsFrom are the drills that open a hole from one diameter, 0 for solid metal, to another.
func (c *Context) drillStepsFrom(at, d float64) []float64 {
	if d <= 8 || !c.Rules.Has("A-25") {
		return []float64{d}
	}
	var owned []float64
	for _, t := range c.tools(partspec.Drills) {
		for _, s := range t.Sizes {
			owned = append(owned, float64(s))
		}
	}
	slices.Sort(owned)
	next := math.Max(math.Min(8, d*pilotShare+2), at+drillStep)
	if at == 0 {
		next = math.Min(8, math.Max(4, d*pilotShare))
	}
	o := opening{c: c, owned: owned, to: d, rests: map[float64]drills{}}
	return o.quickest(at, next).steps
}

// opening looks for the drills that open a hole to a diameter.
type opening struct {
	c     *Context
	owned []float64
	to    float64
	rests map[float64]drills // what follows best after a drill
}

// drills are drills that follow each other, and the time they take.
type drills struct {
	steps   []float64
	minutes float64
}

// after is what best follows a drill. It hangs on nothing else, so that each is worked out once.
func (o opening) after(d float64) drills {
	rest, ok := o.rests[d]
	if !ok {
		rest = o.quickest(d, d+drillStep)
		o.rests[d] = rest
	}
	return rest
}

// quickest are the drills that open a hole from a diameter, the first no larger than next and each later one no more than a step larger than the one before: of
// those within a little of the largest that may follow, the ones that take the least time.
func (o opening) quickest(at, next float64) drills {
	last := drills{[]float64{o.to}, minutesADrill + o.c.drillMinutes(o.to)}
	if at >= o.to-drillStep {
		return last
	}
	i, found := slices.BinarySearch(o.owned, next)
	if found {
		i++
	}
	best := drills{minutes: math.Inf(1)}
	for k := i - 1; k >= 0 && (o.owned[k] > next-drillNear || k == i-1); k-- {
		d := o.owned[k]
		if d <= at || d >= o.to {
			break
		}
		rest := o.after(d)
		if total := minutesADrill + o.c.drillMinutes(d) + rest.minutes; total < best.minutes-sizeNoise {
			best = drills{append([]float64{d}, rest.steps...), total}
		}
	}
	if best.steps == nil {
		return last
	}
	return best
}

// drillNear is how much smaller than the largest that may follow a drill of a chain may be, when it is quicker: a smaller one may run at a higher step.
const drillNear = 1.0

// drillMinutes is the time that a drill takes for 10 mm.
func (c *Context) drillMinutes(d float64) float64 {
	tool, _, _ := c.sized(partspec.Drills, d, d)
	on := c.Lathe.Kind
	for _, m := range []partspec.Machine{c.Mill, c.Drill} {
		if on == "" {
			on = m.Kind
		}
	}
	if on == partspec.Lathe {
		on = ""
	}
	r := c.rateOn(on, cutDrill, d, tool)
	return 10 / (r.FeedMM * math.Max(1, r.RPM))
}

// pilotShare is a pilot's part of the final diameter; drillStep the most a light lathe drives at once (rule A-25).
const (
	pilotShare = 0.3
	drillStep  = 6.0
)

// drillRate is the rate of one drill of a chain: the whole chain runs at the feed that its finest drill bears, as the sheet gives one.
func (c *Context) drillRate(on partspec.MachineKind, d float64, tool partspec.Tool, steps []float64) Rate {
	return c.capped(Rate{kind: cutDrill, diameter: d, tool: tool, on: on, least: slices.Min(steps)})
}
