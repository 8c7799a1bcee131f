package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
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
	if why := c.skinLack(b); why != "" {
		return append(tasks, step.orLacking(why))
	}
	for _, e := range ends() {
		for _, tool := range c.steppers() {
			w, err := c.stepWay(b, f, step, tool, e, c.roughed(b))
			if err != nil {
				step.Lacking = append(step.Lacking, fmt.Sprintf("%s with the %s: %v", f.Name, tool.Name, err))
				continue
			}
			w.Write = func(j Job) (plan.Operation, Done) { return c.writeSteps(b, f, step, w, j) }
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
	return append(tasks, step.orLacking(f.Name+": no tool that steps is owned: a round-nosed or grooving tool, or a right-hand knife tool"), file.orLacking(f.Name+": no file is owned"))
}

const fileForce = 60.0 // N, a hand on a file. Common practice, no source
