package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// What roughing leaves (rule A-05), on radius and on a shoulder.
const (
	leaveRadius = 0.25
	leaveFace   = 0.2
)

// outsides makes the tasks of the outside blocks.
func (c *Context) outsides() []Task {
	var tasks []Task
	for i, b := range c.Blocks {
		if b.AsSupplied {
			continue
		}
		switch f := b.Feature.(type) {
		case *partspec.Spigot:
			tasks = append(tasks, c.cylinder(i)...)
		case *partspec.Taper:
			tasks = append(tasks, c.cone(i, f)...)
		case *partspec.Profile:
			tasks = append(tasks, c.profile(i, f)...)
		}
	}
	return tasks
}

// stretch is a block's run along the axis with what lies beyond it: at the bar's end it goes on past the parting cut.
func (c *Context) stretch(b shape.Block) (z0, z1 float64) {
	z0, z1 = b.Z0, b.Z1
	if !c.Place.OnBar() {
		return z0, z1
	}
	if side := c.Place.BarSide(c.Length); c.Place.Held() == partspec.Left && b.Z0 == 0 {
		z0 = side
	} else if c.Place.Held() == partspec.Right && near(b.Z1, c.Length) {
		z1 = side
	}
	return z0, z1
}

func (c *Context) cylinder(i int) []Task {
	b := c.Blocks[i]
	z0, z1 := c.stretch(b)
	rise := c.rise(i)
	excess := c.Stock.Outer.Greatest(b.Z0, b.Z1) - b.Greatest
	var tasks []Task
	if excess <= 0 {
		return []Task{{Op: shape.Op{ID: b.Feature.Head().ID() + "/turn", Feature: b.Name, Process: plan.TurnFinish, Z0: z0, Z1: z1},
			Lacking: []string{fmt.Sprintf("%s: the stock is Ø%.2f there, with nothing to turn off Ø%.2f; write as_supplied = true if it stays", b.Name, 2*(b.Greatest+excess), 2*b.Greatest)}}}
	}
	if c.Split && excess > leaveRadius {
		t := Task{Op: shape.Op{ID: b.Feature.Head().ID() + "/rough", Feature: b.Name, Process: plan.TurnRough, Stage: shape.Roughing, Z0: z0, Z1: z1,
			Outer: solid.Const(z0+leaveFace*rise[0], z1-leaveFace*rise[1], b.Greatest+leaveRadius), Depth: excess - leaveRadius}}
		t.Ways = c.turnWays(i, t, turning{radius: b.Greatest + leaveRadius, leave: leaveFace})
		tasks = append(tasks, t.orLacking(c.outsideLack(i)))
	}
	t := Task{Op: shape.Op{ID: b.Feature.Head().ID() + "/turn", Feature: b.Name, Process: plan.TurnFinish, Stage: shape.Finishing, Z0: z0, Z1: z1,
		Outer: solid.Const(z0, z1, b.Greatest), Makes: append([]string{b.Name}, c.shoulders(i)...), Tight: float64(b.Diameter.Width()), Round: c.roundness(b.Diameter), Depth: excess}}
	if len(tasks) > 0 {
		t.Depth = leaveRadius
	}
	size := b.Diameter
	if why := c.unmeasurable(b.Name, size, outsideCheck); why != "" {
		return append(tasks, t.orLacking(why))
	}
	t.Ways = c.turnWays(i, t, turning{radius: b.Greatest, size: &size, faceOut: true})
	return append(tasks, t.orLacking(c.outsideLack(i)))
}

// orLacking says why a task has no way, where nothing nearer was found.
func (t Task) orLacking(why string) Task {
	if len(t.Ways) == 0 && len(t.Lacking) == 0 {
		t.Lacking = append(t.Lacking, why)
	}
	return t
}

func (c *Context) stockRadius() float64 { return float64(c.Part.Stock.EnvelopeDiameter()) / 2 }

// roundness is what a surface may be out of round, in radius: what the part asks, or half the diameter's tolerance.
func (c *Context) roundness(d partspec.Size) float64 {
	if c.Part.Roundness > 0 {
		return float64(c.Part.Roundness)
	}
	return float64(d.Width()) / 2
}

// levelStep is how much higher, in radius, a cone may begin than the cylinder it falls away from: drawn sizes that differ by their limits alone make no shoulder.
// Ours, no source.
const levelStep = 0.02

// rise tells on which sides (left, right) the neighbour stands higher than the block: 1 or 0.
func (c *Context) rise(i int) [2]float64 {
	var up [2]float64
	if i > 0 && c.shoulder(i-1, i) {
		up[0] = 1
	}
	if i+1 < len(c.Blocks) && c.shoulder(i+1, i) {
		up[1] = 1
	}
	return up
}

// higher reports whether block k stands higher than block i, by more than a cone may.
func (c *Context) higher(k, i int) bool {
	return c.Blocks[k].Greatest > c.mostBeside(k, i)
}

// mostBeside is how high block k may be without standing higher than block i.
func (c *Context) mostBeside(k, i int) float64 {
	most := c.Blocks[i].Greatest + sizeNoise
	if c.Blocks[k].Least < c.Blocks[k].Greatest-levelStep {
		most += levelStep
	}
	return most
}

// shoulder reports whether a neighbour of a block stands higher than it where a tool would run on past the block's edge: a curve may rise only beyond.
func (c *Context) shoulder(neighbour, i int) bool {
	other := c.Blocks[neighbour]
	z0, z1 := other.Z0, math.Min(other.Z1, other.Z0+clearance+faceLook)
	if neighbour < i {
		z0, z1 = math.Max(other.Z0, other.Z1-clearance-faceLook), other.Z1
	}
	return other.Curve.Greatest(z0, z1) > c.mostBeside(neighbour, i)
}

// shoulders names the plane faces that turning a block also makes: where a neighbour stands higher.
func (c *Context) shoulders(i int) []string {
	var names []string
	up := c.rise(i)
	if up[0] > 0 {
		names = append(names, c.Blocks[i].Name+".left", c.Blocks[i-1].Name+".right")
	}
	if up[1] > 0 {
		names = append(names, c.Blocks[i].Name+".right", c.Blocks[i+1].Name+".left")
	}
	return names
}

func (c *Context) outsideLack(i int) string {
	b := c.Blocks[i]
	return fmt.Sprintf("%s (Ø%.2f, %.1f long) lies between larger diameters and no grooving or parting tool owned reaches %.1f mm deep: add one, or allow the other end to be worked",
		b.Name, 2*b.Greatest, b.Z1-b.Z0, c.stockRadius()-b.Greatest)
}

func reads(d partspec.Dial) string {
	if d.Reads == partspec.ReadsDiameter {
		return "diameter (what comes off the diameter)"
	}
	return "radius (half of what comes off the diameter)"
}

// called is a feature as people call it: "flange rim", and "flange" for a flange of that very name.
func called(h partspec.FeatureHead) string {
	if h.Name == h.Word {
		return h.Name
	}
	return h.Word + " " + h.Name
}
