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

// Chain is how a hole is brought to size.
type Chain string

// The chains. Each begins with what drilling it needs.
const (
	ChainDrill Chain = "drill" // drilled to size
	ChainBore  Chain = "bore"  // bored to size
	ChainReam  Chain = "ream"  // reamed, bored true before when its place matters
	ChainTaper Chain = "taper" // an inside taper
)

// Chains lists the chains that the tools owned allow for a hole, and why the others fall out.
func (c *Context) Chains(h shape.Hole) (chains []Chain, lacking []string) {
	if _, ok := h.Feature.(*partspec.Taper); ok {
		return []Chain{ChainTaper}, nil
	}
	for _, chain := range []Chain{ChainDrill, ChainReam, ChainBore} {
		if why := c.chainLack(h, chain); why != "" {
			lacking = append(lacking, why)
			continue
		}
		chains = append(chains, chain)
	}
	return chains, lacking
}

// drillGrade is the narrowest tolerance, as a part of IT12 at the hole's size, that a drill is trusted with (rule A-26).
func (c *Context) chainLack(h shape.Hole, chain Chain) string {
	d := 2 * h.Radius
	switch chain {
	case ChainDrill:
		if c.Rules.Has("A-26n") && float64(h.Diameter.Width()) < drillWidth(d) {
			return fmt.Sprintf("drilling %s to size: a drill is trusted with %.2f, the limits are %.3f apart", h.Name, drillWidth(d), float64(h.Diameter.Width()))
		}
		if c.related(h.Name) || h.Flat {
			return fmt.Sprintf("drilling %s to size: its place or its floor matters", h.Name)
		}
		if _, _, ok := c.sized(partspec.Drills, float64(h.Diameter.Low), float64(h.Diameter.High)); !ok {
			return fmt.Sprintf("drilling %s to size: no drill owned between %.2f and %.2f", h.Name, float64(h.Diameter.Low), float64(h.Diameter.High))
		}
	case ChainReam:
		if _, ok := c.Lathe.Dial("tailstock"); !ok {
			return fmt.Sprintf("reaming %s: the lathe has no tailstock dial", h.Name)
		}
		if h.Flat {
			return fmt.Sprintf("reaming %s: a reamer leaves no flat floor", h.Name)
		}
		if _, _, ok := c.sized(partspec.Reamers, float64(h.Diameter.Low), float64(h.Diameter.High)); !ok {
			return fmt.Sprintf("reaming %s: no reamer owned between %.3f and %.3f", h.Name, float64(h.Diameter.Low), float64(h.Diameter.High))
		}
		if !c.reamable(h) {
			return fmt.Sprintf("reaming %s: no drill owned leaves %.2f for the reamer, and no boring bar enters", h.Name, reamLeave(d))
		}
	case ChainBore:
		if why := c.unmeasurable(h.Name, h.Diameter, insideCheck); why != "" {
			return "boring " + why
		}
		if len(c.bars(h)) == 0 {
			return fmt.Sprintf("boring %s: no boring bar owned enters Ø%.2f and reaches %.1f (a bar may stand out 4 times its diameter): %s", h.Name, c.openedTo(h), c.reachInto(h), c.barWanted(h))
		}
	}
	return ""
}

// drillWidth is the least width of limits that a drill is trusted with: it cuts 0.05 to 0.15 over. From memory of handbook practice.
func drillWidth(d float64) float64 { return 0.1 + 0.004*d }

// reamLeave is the metal left for a reamer on diameter (rule A-27).
func reamLeave(d float64) float64 {
	switch {
	case d <= 5:
		return 0.15
	case d <= 20:
		return 0.25
	}
	return 0.4
}

// related reports whether a relation binds a surface.
func (c *Context) related(name string) bool {
	for _, r := range c.Part.Relations {
		if r.Of.Feature == name || r.To.Feature == name {
			return true
		}
	}
	return false
}

// startRadius is the radius of the hole that is there before, from the stock or from a deeper hole.
func (c *Context) startRadius(h shape.Hole) float64 {
	r := math.Max(0, c.Stock.Inner.Least(h.Z0, h.Z1))
	for _, other := range c.Holes {
		deeper := other.Through || other.From == h.From && other.Depth > h.Depth
		if other.Name != h.Name && deeper && other.Radius < h.Radius {
			r = math.Max(r, other.Radius)
		}
	}
	return r
}

// boreLeave is what drilling leaves for boring on diameter; floorShort how far a drill's point stays off a flat floor.
const (
	boreLeave  = 0.5
	floorShort = 0.3
)

// drillSize is the drill a chain ends with, or 0 when the hole that is there is wide enough already.
func (c *Context) drillSize(h shape.Hole, chain Chain) float64 {
	d := 2 * h.Radius
	if chain == ChainDrill {
		_, s, _ := c.sized(partspec.Drills, float64(h.Diameter.Low), float64(h.Diameter.High))
		return s
	}
	if h.Flat && c.startRadius(h) > 0 {
		return 0 // a drill's cone would have to be bored out of the floor again
	}
	most := d - boreLeave
	if chain == ChainReam && !c.boredFirst(h) {
		most = d - reamLeave(d)/2
	}
	best := 0.0
	for _, t := range c.tools(partspec.Drills) {
		for _, s := range t.Sizes {
			if v := float64(s); v <= most+sizeNoise && v > best {
				best = v
			}
		}
	}
	if best <= 2*c.startRadius(h) {
		return 0
	}
	return best
}

// openedTo is the diameter that a boring bar finds.
func (c *Context) openedTo(h shape.Hole) float64 {
	return math.Max(2*c.startRadius(h), c.drillSize(h, ChainBore))
}

// barRoom is the part of a hole's diameter that a boring bar fills at most, so that chips get past it. Common practice, no source.
const barRoom = 0.8

// barWanted says which boring bar would do.
func (c *Context) barWanted(h shape.Hole) string {
	least, most := c.reachInto(h)/4, barRoom*c.openedTo(h)
	switch {
	case math.Ceil(least) == math.Floor(most):
		return fmt.Sprintf("a bar of Ø%.0f would do", math.Floor(most))
	case math.Ceil(least) > most:
		return "none that goes in is stiff enough; open it by a larger drill or a reamer, or bore it from both ends"
	}
	return fmt.Sprintf("a bar of Ø%.0f to Ø%.0f would do", math.Ceil(least), math.Floor(most))
}

// boredFirst reports whether a reamed hole is bored true before (rule A-28): its place is bound to another surface, and a bar enters.
func (c *Context) boredFirst(h shape.Hole) bool {
	return c.Rules.Has("A-28") && c.related(h.Name) && len(c.bars(h)) > 0
}

func (c *Context) reamable(h shape.Hole) bool {
	if c.boredFirst(h) {
		return true
	}
	d := 2 * h.Radius
	left := d - math.Max(c.drillSize(h, ChainReam), 2*c.startRadius(h))
	return left <= mostReam && left > 0
}

// mostReam is the most a reamer is asked to take on diameter (rule A-27: never over 0.8).
const mostReam = 0.8

// reachInto is how far a boring bar stands into the work for a hole.
func (c *Context) reachInto(h shape.Hole) float64 {
	if h.Through && c.Place.OnBar() {
		return h.Depth + c.Place.Spare + overrun
	}
	if h.Through {
		return h.Depth + 2*overrun
	}
	return h.Depth
}

// overrun is how far a through hole is cut past the end.
const overrun = 0.6

// bars lists the boring bars that can bore a hole, stiffest first.
func (c *Context) bars(h shape.Hole) []partspec.Tool {
	var bars []partspec.Tool
	open := c.openedTo(h)
	if h.Flat { // a drill's point leaves the bottom no wider than the hole that goes on, which may still want its last cut
		open = 2*c.startRadius(h) - c.stillToCome(h)
	}
	for _, t := range c.tools(partspec.Boring) {
		reach := float64(t.Reach)
		if c.Rules.Has("C-06") {
			reach = math.Min(reach, 4*float64(t.BarDiameter))
		}
		if float64(t.LeastBore) <= open+sizeNoise && reach >= c.reachInto(h) {
			bars = append(bars, t)
		}
	}
	slices.SortStableFunc(bars, func(a, b partspec.Tool) int { return int(math.Copysign(1, float64(b.BarDiameter-a.BarDiameter))) })
	return bars[:min(1, len(bars))]
}

// stillToCome is what the deeper hole in a hole's bottom may still lack of its diameter: it is bored or reamed to size later, unless it is drilled so.
func (c *Context) stillToCome(h shape.Hole) float64 {
	for _, other := range c.Holes {
		if other.Name != h.Name && other.Radius == c.startRadius(h) && c.chainLack(other, ChainDrill) != "" {
			return boreLeave
		}
	}
	return 0
}

// hole makes the tasks of one hole by the chain chosen for it.
func (c *Context) hole(h shape.Hole) []Task {
	if h.AsSupplied {
		return nil
	}
	chain, ok := c.Bored[h.Name]
	if !ok {
		_, lacking := c.Chains(h)
		return []Task{{Op: shape.Op{ID: h.Feature.Head().ID() + "/bore", Feature: h.Name, Process: plan.BoreOut, Inside: true, Z0: h.Z0, Z1: h.Z1}, Lacking: lacking}}
	}
	var tasks []Task
	if d := c.drillSize(h, chain); d > 0 {
		tasks = append(tasks, c.drill(h, chain, d))
	}
	switch chain {
	case ChainBore:
		tasks = append(tasks, c.bore(h, 2*h.Radius, &h.Diameter))
	case ChainReam:
		if c.boredFirst(h) {
			tasks = append(tasks, c.bore(h, 2*h.Radius-reamLeave(2*h.Radius), nil))
		}
		tasks = append(tasks, c.ream(h))
	case ChainTaper:
		tasks = append(tasks, c.taperHole(h))
	}
	return tasks
}

// mouths are the ends a hole can be worked from.
func mouths(h shape.Hole) []partspec.End {
	if h.Through {
		e := ends()
		return e[:]
	}
	return []partspec.End{h.From}
}

// into is the direction into the work from an end: +1 from the left.
func into(e partspec.End) float64 {
	if e == partspec.Left {
		return 1
	}
	return -1
}

// through is where a through cut from an end stops: past the parting place while the part hangs on its bar, else past the far end.
func (c *Context) through(e partspec.End, past float64) float64 {
	if c.Place.OnBar() && e == c.Place.Free {
		return c.Place.BarEnd(c.Length) + into(e)*past
	}
	return c.stockEnd(e.Other()) + into(e)*past
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
		for _, s := range steps {
			w.ForceN = math.Max(w.ForceN, c.drillForce(s, w.Rate.FeedMM))
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
	steps, _ := c.quickestDrills(owned, at, next, d)
	return steps
}

// quickestDrills are the drills that open a hole, the first no larger than next and each later one no more than a step larger than the one before: of those within
// a little of the largest that may follow, the ones that take the least time.
func (c *Context) quickestDrills(owned []float64, at, next, d float64) (steps []float64, minutes float64) {
	last := []float64{d}
	cost := minutesADrill + c.drillMinutes(d)
	if at >= d-drillStep {
		return last, cost
	}
	i, found := slices.BinarySearch(owned, next)
	if found {
		i++
	}
	best := math.Inf(1)
	for k := i - 1; k >= 0 && (owned[k] > next-drillNear || k == i-1); k-- {
		if owned[k] <= at || owned[k] >= d {
			break
		}
		rest, more := c.quickestDrills(owned, owned[k], owned[k]+drillStep, d)
		if total := minutesADrill + c.drillMinutes(owned[k]) + more; total < best-sizeNoise {
			steps, best = append([]float64{owned[k]}, rest...), total
		}
	}
	if steps == nil {
		return last, cost
	}
	return steps, best
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

func (c *Context) writeDrill(h shape.Hole, t Task, w Way, steps []float64, tip float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Drill %s, %s mm", h.Name, units.Decimal(w.SizeMM, 3)))
	face := c.endZ(w.End)
	p.op.Zeros = append(p.op.Zeros, plan.Zero{Dial: "tailstock", ReferenceMM: face, How: "the drill's point just touches the face"})
	if c.Rules.Has("A-02") && c.startRadius(h) == 0 {
		p.spot(steps[0])
	}
	for _, s := range steps {
		at := tip
		if !h.Through && s < w.SizeMM {
			// A smaller drill's point is shorter: its full diameter stops where the last one's does, or short of the floor.
			at = tip - into(w.End)*(w.SizeMM-s)/2/math.Tan(units.Angle(plan.DrillPointDeg/2).Radians())
		}
		name := units.Decimal(s, 3) + " mm drill"
		marks, _ := p.tailstock(at, h.Through)
		tool, size, _ := c.sized(partspec.Drills, s, s)
		p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: name, From: tailAt(0), To: tailAt(marks), ToolSizeMM: size, ToolID: tool.ID()})
		p.line(name, "tailstock", marks, "point "+p.both(float64(marks)*float64(p.dial("tailstock").Graduation.Value), "tailstock")+" deep", p.drillSpeed(s), false)
		reached := face + into(w.End)*float64(marks)*float64(p.dial("tailstock").Graduation.Value)
		p.done.Inner = solid.Upper(solid.Drill(reached, s, plan.DrillPointDeg, shank(w.End)), p.done.Inner)
	}
	if n := pecks(math.Abs(tip-face), w.SizeMM); n > 0 && c.Rules.Has("C-05") {
		p.note("Clear the chips at 3 drill diameters, then at every further diameter.")
		p.why("deep for its diameter", "C-05")
	}
	if len(steps) > 1 {
		p.why("the web of a large drill only pushes: smaller ones go first", "A-25")
	}
	p.why("drawn depths are of the full diameter; the point needs 0.3 diameters more", "C-30")
	if t.Stage == shape.Finishing {
		p.op.Checks = append(p.op.Checks, c.check(h.Name+", diameter", h.Name, h.Diameter, insideCheck))
	}
	return p.finish()
}

// drillRate is the rate of one drill of a chain: the whole chain runs at the feed that its finest drill bears, as the sheet gives one.
func (c *Context) drillRate(on partspec.MachineKind, d float64, tool partspec.Tool, steps []float64) Rate {
	return c.capped(Rate{kind: cutDrill, diameter: d, tool: tool, on: on, least: slices.Min(steps)})
}

// drillSpeed is the speed of one drill of the chain that the operation drills with, under the same caps.
func (p *page) drillSpeed(d float64) string {
	r := p.rate
	r.diameter = d
	return fmt.Sprintf("%s rev/min", units.Decimal(p.c.capped(r, p.j.Caps...).RPM, 0))
}

// spot starts the hole with a centre drill, no wider than the first drill.
func (p *page) spot(first float64) {
	for _, tool := range p.c.tools(partspec.CentreDrill) {
		for _, s := range tool.Sizes {
			d := math.Min(float64(s), first)
			depth := d / 2 / math.Tan(units.Angle(plan.CentreDrillDeg/2).Radians())
			marks := p.whole(depth / float64(p.dial("tailstock").Graduation.Value))
			p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: "spot", From: tailAt(0), To: tailAt(marks), ToolSizeMM: float64(s), ToolID: tool.ID()})
			p.line("spot", "tailstock", marks, "a centre for the drill", "", false)
			p.why("a long drill bends at the start; the spot holds it true", "A-02")
			return
		}
	}
}

func tailAt(marks int64) []plan.Reading {
	return []plan.Reading{{Dial: "tailstock", Graduations: marks}}
}

// tailstock gives the count for a depth from the face; a through hole is drilled at least as far, a blind one no further.
func (p *page) tailstock(z float64, through bool) (int64, float64) {
	g := float64(p.dial("tailstock").Graduation.Value)
	travel := (z - p.zero("tailstock").ReferenceMM) * p.toChuck() / g
	marks := p.whole(travel)
	if through && float64(marks) < travel-markNoise {
		marks++
	}
	return marks, p.zero("tailstock").ReferenceMM + p.toChuck()*float64(marks)*g
}
