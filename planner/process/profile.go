package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/numbers/steps"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// fileLeft is the height of the crests that steps leave for the file (rule C-18).
func (c *Context) fileLeft() float64 {
	if !c.Rules.Has("C-18") {
		return 0.05
	}
	if soft(c.Part.Material.Family) {
		return 0.1
	}
	return 0.08
}

// profile makes the tasks of a curved outside: roughed to its largest diameter, stepped, then filed.
func (c *Context) profile(i int, f *partspec.Profile) []Task {
	b := c.Blocks[i]
	z0, z1 := c.stretch(b)
	var tasks []Task
	if excess := c.stockRadius() - b.Greatest; excess > leaveRadius {
		r := b.Greatest + leaveRadius
		t := Task{Op: shape.Op{ID: f.ID() + "/rough", Feature: b.Name, Process: plan.TurnRough, Stage: shape.Roughing, Z0: z0, Z1: z1, Outer: solid.Const(z0, z1, r), Depth: excess - leaveRadius}}
		t.Ways = c.turnWays(i, t, turning{radius: r})
		tasks = append(tasks, t.orLacking(c.outsideLack(i)))
	}
	step := Task{Op: shape.Op{ID: f.ID() + "/steps", Feature: b.Name, Process: plan.Steps, Stage: shape.Roughing, Z0: b.Z0, Z1: b.Z1, Outer: b.Curve.Raise(0), Depth: b.Greatest - b.Least + leaveRadius}}
	file := Task{Op: shape.Op{ID: f.ID() + "/file", Feature: b.Name, Process: plan.FileProfile, Stage: shape.Finishing, Z0: b.Z0, Z1: b.Z1, Outer: b.Curve, Makes: []string{b.Name}}}
	for _, e := range ends() {
		for _, tool := range append(c.tools(partspec.RoundNose), c.tools(partspec.Grooving)...) {
			table, _, err := c.stepTable(b, f, tool, e, leaveRadius, c.stepsRunOn(i, e))
			if deep := c.stockRadius() - b.Greatest + deepest(table); err == nil && float64(tool.Reach) < deep { // a neighbour may still have the stock's diameter
				err = fmt.Errorf("it reaches %.1f deep, the steps go %.1f below the stock", float64(tool.Reach), deep)
			}
			if err != nil {
				step.Lacking = append(step.Lacking, fmt.Sprintf("%s with the %s: %v", f.Name, tool.Name, err))
				continue
			}
			rate := c.rate(cutGroove, 2*b.Greatest, tool)
			w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: b.Greatest, Span: c.stepSpan(i, e)}
			w.Minutes = float64(len(table.Cuts)) * (minutesAPass + fileStepDepth/(rate.FeedMM*rate.RPM))
			w.ForceN = c.force(bladeWidth(tool), rate.FeedMM)
			w.Write = func(j Job) (plan.Operation, Done) { return c.writeSteps(b, f, step, w, j, c.standingOn(i, j)) }
			step.Ways = append(step.Ways, w)
		}
		rate := c.rate(cutFinish, 2*b.Greatest, partspec.Tool{})
		for _, tool := range c.tools(partspec.Files) {
			w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: b.Greatest, ForceN: fileForce, Minutes: 2 + 2*math.Pi*b.Greatest*(b.Z1-b.Z0)*minutesFileArea, Span: [2]float64{b.Z0, b.Z1}}
			w.Write = func(j Job) (plan.Operation, Done) {
				p := c.page(j, file, w, fmt.Sprintf("File %s to its curve", f.Name))
				p.note("Blue the steps. File until the blue at the inner corner of every step just vanishes: those corners lie on the curve.")
				p.note("At most %.2f mm is to come off anywhere, square to the surface.", c.fileLeft())
				p.why("the crests are the file's, the inner corners are the witness", "C-18")
				p.op.DepthMM, p.op.FeedMM = c.fileLeft(), 0 // the hand feeds
				p.done.Outer = b.Curve
				return p.finish()
			}
			file.Ways = append(file.Ways, w)
		}
	}
	if len(step.Ways) > 0 {
		step.Lacking = nil
	}
	return append(tasks, step.orLacking(f.Name+": no round-nosed or grooving tool is owned"), file.orLacking(f.Name+": no file is owned"))
}

const (
	fileStepDepth = 1.0  // mean depth of a step, for its time
	fileForce     = 60.0 // N, a hand on a file. Common practice, no source
)

func bladeWidth(t partspec.Tool) float64 {
	if t.Kind == partspec.RoundNose {
		return 2 * float64(t.Radius)
	}
	return float64(t.Width)
}

// stepTable works the steps out in the frame of the slides: across is the distance from the datum end towards the headstock, depth is what the tool has gone in
// below the block's largest radius; the cross dial's nought lies above it. The steps run on level past the block's far end by runOn.
func (c *Context) stepTable(b shape.Block, f *partspec.Profile, tool partspec.Tool, e partspec.End, above, runOn float64) (steps.Table, steps.Request, error) {
	saddle, _ := c.Lathe.Dial("saddle")
	cross, _ := c.Lathe.Dial("cross")
	r := steps.Request{Curve: runningOn(c.stepCurve(b, f, e), runOn), LeftoverMM: c.fileLeft(),
		Across: steps.Axis{GraduationMM: float64(saddle.Graduation.Value), Reads: steps.ReadsTravel, OriginMM: 0},
		Depth:  steps.Axis{GraduationMM: float64(cross.Graduation.Value), Reads: steps.ReadsTravel, OriginMM: -above}}
	if cross.Reads == partspec.ReadsDiameter {
		r.Depth.Reads = steps.ReadsDiameter
	}
	// The saddle is read at the blade's headstock-side corner, half a width past its middle.
	r.Cutter, r.Across.OriginMM = steps.Cutter{Kind: steps.SquareEnd, WidthMM: float64(tool.Width), CornerRadiusMM: float64(tool.NoseRadius)}, -float64(tool.Width)/2
	if tool.Kind == partspec.RoundNose {
		r.Cutter, r.Across.OriginMM = steps.Cutter{Kind: steps.RoundNose, RadiusMM: float64(tool.Radius)}, -float64(tool.Radius)
	}
	table, err := steps.Fewest(r)
	return cutting(table), r, err
}

// deepest is how far the deepest step goes below the largest radius of the block.
func deepest(t steps.Table) float64 {
	deep := 0.0
	for _, cut := range t.Cuts {
		deep = max(deep, cut.DepthMM)
	}
	return deep
}

// stepCurve turns the profile into across and depth.
func (c *Context) stepCurve(b shape.Block, f *partspec.Profile, e partspec.End) steps.Curve {
	across := func(z units.Length) float64 { return math.Abs(float64(z) - c.endZ(e)) }
	depth := func(r units.Length) float64 { return b.Greatest - float64(r) }
	curve := steps.Curve{Left: c.beyond(b, e), Right: c.beyond(b, e.Other())}
	for _, s := range f.Segments {
		a0, d0, a1, d1 := across(s.Z0), depth(s.R0), across(s.Z1), depth(s.R1)
		if a1 < a0 {
			a0, d0, a1, d1 = a1, d1, a0, d0
		}
		if !s.Arc {
			curve.Segments = append(curve.Segments, steps.Line{FromAcrossMM: a0, FromDepthMM: d0, ToAcrossMM: a1, ToDepthMM: d1})
			continue
		}
		// Taking places from the end may round a quarter's end out of its circle.
		radius := math.Max(float64(s.Radius), math.Max(math.Abs(a0-across(s.CentreZ)), math.Abs(a1-across(s.CentreZ))))
		form := steps.Hollow
		if s.Convex {
			form = steps.Round
		}
		curve.Segments = append(curve.Segments, steps.Arc{CentreAcrossMM: across(s.CentreZ), CentreDepthMM: depth(s.CentreR), RadiusMM: radius, FromAcrossMM: a0, ToAcrossMM: a1, Form: form})
	}
	if e == partspec.Right {
		for i, j := 0, len(curve.Segments)-1; i < j; i, j = i+1, j-1 {
			curve.Segments[i], curve.Segments[j] = curve.Segments[j], curve.Segments[i]
		}
	}
	return curve
}

// runOn is how far steps go on past a block's end where a lower neighbour follows that may be turned from the other end: its shoulder lies where that end's
// face and the saddle's marks put it, and between there and the last step no sliver may stand. A wider one than the limits of lengths let come about. Ours, no source.
const runOn = 0.5

// stepsRunOn is how far the steps of a block go on past it, towards the headstock.
func (c *Context) stepsRunOn(i int, free partspec.End) float64 {
	k := i - 1
	if free == partspec.Left {
		k = i + 1
	}
	if k < 0 || k >= len(c.Blocks) || c.beyond(c.Blocks[i], free.Other()) != steps.Air {
		return 0
	}
	return math.Min(runOn, c.Blocks[k].Z1-c.Blocks[k].Z0)
}

// standingOn is stepsRunOn, or nothing where the neighbour is turned already.
func (c *Context) standingOn(i int, j Job) float64 {
	by := c.stepsRunOn(i, j.Free)
	edge, toChuck := c.Blocks[i].Z0, -1.0
	if j.Free == partspec.Left {
		edge, toChuck = c.Blocks[i].Z1, 1
	}
	past := edge + toChuck*by
	if by > 0 && j.Before.Outer.Greatest(math.Min(edge, past), math.Max(edge, past)) <= c.Blocks[i].Curve.Least(edge-faceLook, edge+faceLook)+sizeNoise {
		return 0
	}
	return by
}

// stepSpan is where stepping a block takes the tool's corner.
func (c *Context) stepSpan(i int, free partspec.End) [2]float64 {
	span := [2]float64{c.Blocks[i].Z0, c.Blocks[i].Z1}
	if free == partspec.Right {
		span[0] -= c.stepsRunOn(i, free)
	} else {
		span[1] += c.stepsRunOn(i, free)
	}
	return span
}

// runningOn is a curve that goes on level past its end towards the headstock.
func runningOn(curve steps.Curve, by float64) steps.Curve {
	if by <= 0 {
		return curve
	}
	end := stepPiece(curve.Segments[len(curve.Segments)-1])
	curve.Segments = append(curve.Segments, steps.Line{FromAcrossMM: end.ToAcrossMM, FromDepthMM: end.ToDepthMM, ToAcrossMM: end.ToAcrossMM + by, ToDepthMM: end.ToDepthMM})
	return curve
}

// beyond says what stands past one end of a block.
func (c *Context) beyond(b shape.Block, e partspec.End) steps.Beyond {
	at := b.Z0
	if e == partspec.Right {
		at = b.Z1
	}
	for _, other := range c.Blocks {
		if other.Z0 < at-sizeNoise && other.Z1 > at+sizeNoise { // a round on the edge of a block runs out into it
			return steps.Level
		}
		beside := e == partspec.Left && near(other.Z1, b.Z0) || e == partspec.Right && near(other.Z0, b.Z1)
		if !beside {
			continue
		}
		edge := b.Curve.Least(b.Z0, b.Z0+faceLook)
		if e == partspec.Right {
			edge = b.Curve.Least(b.Z1-faceLook, b.Z1)
		}
		switch {
		case other.Greatest > edge+sizeNoise:
			return steps.Wall
		case other.Greatest > edge-sizeNoise:
			return steps.Level
		}
		return steps.Air
	}
	return steps.Air
}

func (c *Context) writeSteps(b shape.Block, f *partspec.Profile, t Task, w Way, j Job, runOn float64) (plan.Operation, Done) {
	made := j.Before.Outer.Greatest(b.Z0, b.Z1)
	table, r, err := c.stepTable(b, f, w.Tool, j.Free, made-b.Greatest, runOn)
	p := c.page(j, t, w, fmt.Sprintf("Step the curve %s, %d cuts", f.Name, len(table.Cuts)))
	if err != nil { // it could be stepped from the size that roughing aims at; the size reached makes it impossible only by a slip of ours
		p.note("The step table cannot be made: %v", err)
		return p.finish()
	}
	p.crossZero(2*made, false, "touch the outside, "+p.diameter(made))
	p.saddleZero()
	cuts := inOrder(table)
	for _, cut := range cuts {
		floor, note := "", ""
		if cut.first {
			note = "take up backlash first"
		}
		if cut.resume { // the floor of the step can be measured there, if a count was lost
			floor = p.diameter(p.radiusAt(cut.DepthGrads))
		}
		p.cut(cut.label, at(-1, cut.AcrossGrads), at(cut.DepthGrads, cut.AcrossGrads), nil)
		p.line(cut.label, "saddle", cut.AcrossGrads, "", note, false)
		p.line(cut.label, "cross", cut.DepthGrads, floor, "", false)
	}
	p.op.Steps = p.stepData(table, r, cuts, math.Pi*(b.Greatest+b.Least))
	p.why("both dials go one way only", "C-08")
	p.done.Outer = p.stepped(table)
	return p.finish()
}
