package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// longestBlade is the longest neck that is turned with a blade: beyond it the other end is the place to work from. Ours, no source.
const longestBlade = 20.0

// bladeWays lists how a block behind a larger one is cut with a grooving or parting tool, plunging side by side.
func (c *Context) bladeWays(i int, t Task, g turning, e partspec.End) []Way {
	var ways []Way
	if t.Z1-t.Z0 > longestBlade {
		return nil
	}
	for _, tool := range c.blades() {
		width := float64(tool.Width)
		if float64(tool.Reach) < c.stockRadius()-g.radius || width > c.Blocks[i].Z1-c.Blocks[i].Z0-2*g.leave {
			continue
		}
		rate := c.rate(cutGroove, 2*(g.radius+t.Depth), tool)
		n := math.Ceil((t.Z1 - t.Z0) / (width * bladeStep))
		over := c.over(i, e)
		w := Way{End: e, Tool: tool, Rate: rate, ForceAt: g.radius + t.Depth, Span: [2]float64{t.Z0 - over[0], t.Z1 + over[1]}}
		w.Minutes = cutMinutes(t.Depth, int(n), rate) + cutMinutes(t.Z1-t.Z0, 1, rate)
		w.ForceN = c.force(width, rate.FeedMM)
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeBlade(i, t, w, g, j) }
		ways = append(ways, w)
	}
	return ways
}

// over is how far a blade goes on past a block's edges (left, right) where no higher neighbour follows, so that no sliver stands between what is left on that one's
// shoulder and this block, nor at the part's end on the headstock's side, whose face was turned from there and lies off by what the length may be.
func (c *Context) over(i int, free partspec.End) [2]float64 {
	var over [2]float64
	for side, k := range []int{i - 1, i + 1} {
		switch {
		case k >= 0 && k < len(c.Blocks):
			if c.Blocks[k].Greatest <= c.Blocks[i].Greatest {
				over[side] = bladeOver
			}
		case (side == 0) == (free == partspec.Right) && c.lowerBeyond(i, free):
			over[side] = clearance
		}
	}
	return over
}

// bladeOver is a little more than roughing leaves on a shoulder.
const bladeOver = leaveFace + 0.1

// bladeStep is how far, of its width, a blade moves between plunges.
const bladeStep = 0.8

func (c *Context) blades() []partspec.Tool {
	return append(c.tools(partspec.Grooving), c.tools(partspec.Parting)...)
}

func (c *Context) writeBlade(i int, t Task, w Way, g turning, j Job) (plan.Operation, Done) {
	b := c.Blocks[i]
	p := c.page(j, t, w, fmt.Sprintf("%s with the %s", g.title(b), toolText(w.Tool, 0)))
	before := c.surfaceBefore(i, t, j)
	p.crossZero(2*before, false, "touch the outside there, "+p.diameter(before))
	p.saddleZero()
	up, over := c.rise(i), c.over(i, j.Free)
	z0 := t.Z0 - over[0] + math.Max(g.leave*up[0], c.filletAt(b.Name, partspec.Left))
	z1 := t.Z1 + over[1] - math.Max(g.leave*up[1], c.filletAt(b.Name, partspec.Right))
	p.bladeTo(p.bladeBetween(z0, z1, float64(w.Tool.Width)), g, float64(w.Tool.Width), "")
	p.op.DepthMM = math.Min(p.op.DepthMM, math.Ceil(100*(t.Depth+forceSlack))/100)
	p.note("The saddle's figure is for the corner of the blade nearest to the headstock.")
	p.why("the diameter lies behind a larger one: a blade reaches it without turning the work round", "A-46")
	if g.size != nil {
		p.op.Checks = append(p.op.Checks, c.check(b.Name+", diameter", b.Name, *g.size, outsideCheck))
	}
	return p.finish()
}

// bladeTo plunges side by side at counts of the saddle and then takes one pass along the bottom.
func (p *page) bladeTo(counts []int64, g turning, width float64, label string) {
	last := aim{}
	if g.size != nil {
		last = p.aimAt(float64(g.size.Low), float64(g.size.High))
	} else {
		last.marks, last.radius = p.cross(g.radius)
	}
	shy, shyR := p.cross(last.radius + bladeLeave)
	plunge := func(name string, s int64, depth int64, m *plan.Measured) {
		p.cut(name, at(-1, s), at(depth, s), m)
	}
	if len(counts) == 1 {
		p.line(label+"plunge at", "saddle", counts[0], "", "", false)
		plunge(label+"plunge", counts[0], last.marks, last.measure)
	} else {
		for k, s := range counts {
			depth, m := shy, (*plan.Measured)(nil)
			if k == len(counts)-1 { // the last one goes to the bottom, and the pass along it starts from there
				depth, m = last.marks, last.measure
			}
			plunge(fmt.Sprintf("%splunge %d", label, k+1), s, depth, m)
			p.line(fmt.Sprintf("%splunge %d", label, k+1), "saddle", s, "", "", false)
		}
		p.line(label+"plunges to", "cross", shy, p.diameter(shyR), "all but the last", false)
		p.cut(label+"along the bottom", at(last.marks, counts[len(counts)-1]), at(last.marks, counts[0]), last.measure)
	}
	p.line(label+"bottom", "cross", last.marks, p.diameter(last.radius), "", last.measure != nil)
	a, b := p.positionAt(counts[0]), p.positionAt(counts[len(counts)-1])
	lo, hi := math.Min(a, b), math.Max(a, b)
	if p.j.Free == partspec.Right {
		hi += width
	} else {
		lo -= width
	}
	p.done.Outer = p.done.Outer.Join(solid.Const(lo, hi, last.radius))
}

// bladeLeave is what plunging leaves for the pass along the bottom, on radius.
const bladeLeave = 0.1

// widened is how many graduations of the saddle a blade is moved along to cut a width, which comes nearest to it so.
func widened(wide, blade, graduation float64) int64 {
	return max(0, int64(math.Round((wide-blade)/graduation)))
}

// bladePlaces are the saddle counts of the blade's headstock-side corner, from the headstock outwards, so that the blade cuts z0 to z1 as wide as marks let it: a groove's
// width counts before its place.
func (p *page) bladePlaces(z0, z1, width float64) []int64 {
	first, _ := p.bladeCorners(z0, z1, width)
	a, _ := p.saddleShort(first)
	return p.bladeSteps(a, a-widened(z1-z0, width, float64(p.dial("saddle").Graduation.Value)), width)
}

// bladeBetween are the same counts where the faces on both sides count, each as near to its place as marks come.
func (p *page) bladeBetween(z0, z1, width float64) []int64 {
	first, last := p.bladeCorners(z0, z1, width)
	a, _ := p.saddle(first)
	z, _ := p.saddle(last)
	return p.bladeSteps(a, min(a, z), width)
}

// bladeCorners are where the blade's headstock-side corner stands first, at the headstock's side, and last.
func (p *page) bladeCorners(z0, z1, width float64) (first, last float64) {
	if p.j.Free == partspec.Left {
		return z1, z0 + width
	}
	return z0, z1 - width
}

// bladeSteps are counts from one to another, outwards, a share of the blade's width apart.
func (p *page) bladeSteps(from, to int64, width float64) []int64 {
	step := int64(math.Max(1, math.Floor(width*bladeStep/float64(p.dial("saddle").Graduation.Value))))
	var counts []int64
	for s := from; s > to; s -= step {
		counts = append(counts, s)
	}
	return append(counts, to)
}
