package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// cone makes the tasks of an outside taper: turned down to its large end, then cut with the top slide swung.
func (c *Context) cone(i int, f *partspec.Taper) []Task {
	b := c.Blocks[i]
	z0, z1 := c.stretch(b)
	excess := c.stockRadius() - b.Greatest
	rough := Task{Op: shape.Op{ID: f.ID() + "/rough", Feature: b.Name, Process: plan.TurnRough, Stage: shape.Roughing, Z0: z0, Z1: z1,
		Outer: solid.Const(z0, z1, b.Greatest+leaveRadius), Depth: excess - leaveRadius}}
	var tasks []Task
	if rough.Depth > 0 {
		rough.Ways = c.turnWays(i, rough, turning{radius: b.Greatest + leaveRadius})
		tasks = append(tasks, rough.orLacking(c.outsideLack(i)))
	}
	t := Task{Op: shape.Op{ID: f.ID() + "/taper", Feature: b.Name, Process: plan.TaperTurn, Stage: shape.Finishing, Z0: b.Z0, Z1: b.Z1, Outer: b.Curve,
		Makes: append([]string{b.Name}, c.shoulders(i)...), Tight: float64(f.Large.Width()), Round: c.roundness(f.Large), Depth: min(excess, leaveRadius) + b.Greatest - b.Least}}
	if why := c.skinLack(b); why != "" {
		return append(tasks, t.orLacking(why))
	}
	end := f.LargeAt.Other() // the small end is free, so that the cone rises towards the headstock
	if c.slideReaches(f) {
		run := swing{z0: b.Z0, r0: b.Least, z1: b.Z1, r1: b.Greatest, title: taperTitle(f), check: c.taperCheck(f)}
		if end == partspec.Right {
			run.z0, run.z1 = b.Z1, b.Z0
		}
		if up := c.rise(i); end == partspec.Right && up[0] == 0 || end == partspec.Left && up[1] == 0 { // on past the large end, so that no corner is left there
			slope := (run.r1 - run.r0) / (run.z1 - run.z0)
			run.z1 += math.Copysign(c.coneOver(), run.z1-run.z0)
			run.r1 = run.r0 + slope*(run.z1-run.z0)
		}
		for _, tool := range c.tools(partspec.Turning) {
			if tool.Hand != "left" && c.clearTo(i, end, tool) {
				t.Ways = append(t.Ways, c.swungWay(t, end, tool, run))
			}
		}
	}
	why := fmt.Sprintf("%s: the small end must be free, with nothing higher between it and the end, and what is beside it %.2f lower on the diameter: a tool begins there", f.Name, 2*c.runIn(b, partspec.Tool{}))
	if !c.slideReaches(f) {
		why = fmt.Sprintf("%s, %.0f long and clear at both ends: the top slide does not travel that far", f.Name, b.Z1-b.Z0)
	}
	return append(tasks, t.orLacking(why))
}

// coneOver is how far a cone goes on past its large end: no farther than roughing has gone there, which stops at a mark of the saddle.
func (c *Context) coneOver() float64 {
	saddle, _ := c.Lathe.Dial("saddle")
	return math.Max(0, clearance-float64(saddle.Graduation.Value))
}

// clearTo reports whether nothing between a cone's small end and an end of the part stands higher than that small end: a tool comes from there, and begins beside it.
func (c *Context) clearTo(i int, e partspec.End, tool partspec.Tool) bool {
	b := c.Blocks[i]
	for k, other := range c.Blocks {
		beyond := e == partspec.Right && k > i || e == partspec.Left && k < i
		if beyond && other.Greatest > b.Least+sizeNoise {
			return false
		}
		if beside := beyond && (k == i+1 || k == i-1); beside && c.highBeside(other, e) > b.Least-c.runIn(b, tool)+sizeNoise {
			return false
		}
	}
	return true
}

// highBeside is how high a neighbour on the side of an end may stand beside a cone.
func (c *Context) highBeside(b shape.Block, e partspec.End) float64 {
	z := b.Z0
	if e == partspec.Left {
		z = b.Z1
	}
	high := b.Curve.Greatest(z-faceLook, z+faceLook)
	if b.Cylinder() && !b.AsSupplied {
		high = max(high, float64(b.Diameter.High)/2)
	}
	return high
}

// runIn is how much lower than a cone's small end the neighbour must be at which the tool begins: the cone goes on to there, and the corner that the dials place lies
// under it by what its nose rounds off. It begins clear of the corner between the two, or at the saddle's next mark, where roughing has left its allowance there.
func (c *Context) runIn(b shape.Block, tool partspec.Tool) float64 {
	saddle, _ := c.Lathe.Dial("saddle")
	slope := (b.Greatest - b.Least) / (b.Z1 - b.Z0)
	return noseShift(float64(tool.NoseRadius), math.Atan(slope)*180/math.Pi) + min(slope*clearance, slope*float64(saddle.Graduation.Value)+leaveRadius)
}

func taperTitle(f *partspec.Taper) string {
	if f.Named != "" {
		return fmt.Sprintf("Turn the %s taper %s", f.Named, f.Name)
	}
	return fmt.Sprintf("Turn the taper %s, %s a side", f.Name, f.HalfAngle)
}

// slideReaches reports whether the top slide travels the taper's length.
func (c *Context) slideReaches(f *partspec.Taper) bool {
	top, ok := c.Lathe.Dial("top")
	return ok && (top.Travel == 0 || float64(top.Travel) >= float64(f.Length.Mid())+2*clearance)
}

func (c *Context) taperCheck(f *partspec.Taper) func(*page) {
	return func(p *page) {
		kind := outsideCheck
		if f.Inside {
			kind = insideCheck
		}
		p.op.Checks = append(p.op.Checks, c.check(f.Name+", large end", f.Name, f.Large, kind))
		p.note("Try the angle in its mate or a gauge with blue before the last cut: more blue at the large end means the angle is too steep.")
	}
}

// taperBars are the boring bars that enter a hole of a radius and reach as deep as a cone in it.
func (c *Context) taperBars(h shape.Hole, radius float64) []partspec.Tool {
	return slices.DeleteFunc(slices.Clone(c.tools(partspec.Boring)), func(t partspec.Tool) bool {
		return float64(t.LeastBore) > 2*radius+sizeNoise || float64(t.Reach) < h.Depth
	})
}

func (c *Context) taperHole(h shape.Hole) Task {
	f := h.Feature.(*partspec.Taper)
	found := max(c.startRadius(h), c.drillSize(h, ChainTaper)/2)
	t := Task{Op: shape.Op{ID: f.ID() + "/taper", Feature: f.Name, Process: plan.TaperTurn, Stage: shape.Finishing, Inside: true, End: f.LargeAt, Z0: h.Z0, Z1: h.Z1, Inner: h.Curve,
		Makes: []string{f.Name}, Tight: float64(f.Large.Width()), Round: c.roundness(f.Large), Depth: float64(f.Large.Mid())/2 - found}}
	run := swing{z0: h.Z0, r0: float64(f.Large.Mid()) / 2, z1: h.Z1, r1: float64(f.Small.Mid()) / 2, inside: true, title: taperTitle(f), check: c.taperCheck(f)}
	if f.LargeAt == partspec.Right {
		run.z0, run.z1 = h.Z1, h.Z0
	}
	if c.slideReaches(f) {
		for _, tool := range c.taperBars(h, found) {
			t.Ways = append(t.Ways, c.swungWay(t, f.LargeAt, tool, run))
		}
	}
	return t.orLacking(fmt.Sprintf("%s: no boring bar owned enters Ø%.1f and reaches %.0f, or the top slide does not travel that far", f.Name, 2*found, h.Depth))
}
