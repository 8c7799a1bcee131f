package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// centres makes the tasks of the centre holes that a slender part gets in its ends, so that a tailstock or two centres can carry it.
func (c *Context) centres() []Task {
	var tasks []Task
	for _, e := range ends() {
		if c.Centred[e] {
			tasks = append(tasks, c.centreHole(e))
		}
	}
	return tasks
}

// CentreID is the id of the task that makes the centre hole in an end.
func CentreID(e partspec.End) string { return "centre." + e.String() }

// centreReach is how deep a centre drill's cone goes for its size.
func centreReach(sizeMM float64) float64 {
	return sizeMM / 2 / math.Tan(units.Angle(plan.CentreDrillDeg/2).Radians())
}

func (c *Context) centreHole(e partspec.End) Task {
	t := Task{Op: shape.Op{ID: CentreID(e), Feature: "face." + e.String(), Process: plan.Spot, Stage: shape.Finishing, Inside: true, End: e, Makes: []string{CentreID(e)}}}
	if _, ok := c.Lathe.Dial("tailstock"); !ok {
		return t.orLacking("the lathe has no tailstock dial to drill a centre by")
	}
	for _, tool := range c.tools(partspec.CentreDrill) {
		size, ok := c.centreSize(e, tool)
		if !ok {
			continue
		}
		tip := c.endZ(e) + into(e)*centreReach(size)
		t.Z0, t.Z1 = math.Min(tip, c.endZ(e)), math.Max(tip, c.endZ(e))
		t.Inner = solid.Drill(tip, size, plan.CentreDrillDeg, shank(e))
		rate := c.rate(cutDrill, size, tool)
		w := Way{End: e, Tool: tool, SizeMM: size, Ordinary: true, Rate: rate, Minutes: minutesADrill, ForceAt: size / 4, ForceN: c.drillForce(size, rate.FeedMM), Span: [2]float64{t.Z0, t.Z1}}
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeCentre(t, w, tip, j) }
		t.Ways = append(t.Ways, w)
	}
	return t.orLacking("a slender part wants a centre hole, and no centre drill is owned that leaves metal round it")
}

// centreShare is the most that a centre hole's mouth may be of the finished end's diameter, so that a rim stands round the cone. Common practice, no source.
const centreShare = 0.5

// centreSize is the largest of a centre drill's sizes that an end has room for.
func (c *Context) centreSize(e partspec.End, tool partspec.Tool) (sizeMM float64, ok bool) {
	end := c.Blocks[0]
	if e == partspec.Right {
		end = c.Blocks[len(c.Blocks)-1]
	}
	face := end.Z0
	if e == partspec.Right {
		face = end.Z1
	}
	across := 2 * end.Curve.Greatest(face-faceNoise, face+faceNoise)
	for _, s := range tool.Sizes {
		if size := float64(s); size <= centreShare*across+sizeNoise && size > sizeMM {
			sizeMM, ok = size, true
		}
	}
	return sizeMM, ok
}

// TakesCentre reports whether some centre drill owned leaves a rim on the finished end.
func (c *Context) TakesCentre(e partspec.End) bool {
	for _, tool := range c.tools(partspec.CentreDrill) {
		if _, ok := c.centreSize(e, tool); ok {
			return true
		}
	}
	return false
}

func (c *Context) writeCentre(t Task, w Way, tip float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Centre-drill the %s end", t.End))
	p.op.Zeros = append(p.op.Zeros, plan.Zero{Dial: "tailstock", ReferenceMM: c.endZ(t.End), How: "the point just touches the face"})
	marks, reached := p.tailstock(tip, false)
	p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: "centre", From: tailAt(0), To: tailAt(marks), ToolSizeMM: w.SizeMM, ToolID: w.Tool.ID()})
	p.line("centre", "tailstock", marks, "a seat for the centre", "", false)
	p.done.Inner = solid.Drill(reached, w.SizeMM, plan.CentreDrillDeg, shank(t.End))
	p.note("This centre hole stays in the finished end. If the drawing forbids it, leave a pip to be cut off.")
	p.why("the part is slender: a centre will carry this end", "B-28")
	return p.finish()
}
