package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// turning is what a turning way aims at.
type turning struct {
	radius  float64
	size    *partspec.Size // limits of the diameter; nil when metal is left
	leave   float64        // left on shoulders
	faceOut bool           // the shoulder is faced outward in the last pass
}

// turnWays lists how a block can be turned from either end.
func (c *Context) turnWays(i int, t Task, g turning) []Way {
	var ways []Way
	for _, e := range ends() {
		if c.openTo(i, e) {
			ways = append(ways, c.knifeWays(i, t, g, e)...)
		} else {
			ways = append(ways, c.bladeWays(i, t, g, e)...)
		}
	}
	return ways
}

// openTo reports whether nothing between a block and an end stands higher than the block.
func (c *Context) openTo(i int, e partspec.End) bool {
	for k := range c.Blocks {
		beyond := k > i
		if e == partspec.Left {
			beyond = k < i
		}
		if beyond && c.higher(k, i) {
			return false
		}
	}
	return true
}

func (c *Context) knifeWays(i int, t Task, g turning, e partspec.End) []Way {
	var ways []Way
	for _, tool := range c.tools(partspec.Turning) {
		if tool.Hand == "left" {
			continue
		}
		kind := cutRough
		if g.size != nil && t.Depth <= leaveRadius { // with more to come off it is roughing too, and goes at that speed
			kind = cutFinish
		}
		rate, skin := c.rate(kind, 2*(g.radius+t.Depth), tool), c.onSkin(g.radius+t.Depth)
		if skin {
			rate = c.underSkin(rate)
		}
		n := passes(t.Depth, rate.DepthMM)
		w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: g.radius + t.Depth, Span: c.knifeSpan(i, t, e)}
		w.Minutes = cutMinutes(t.Z1-t.Z0, n, rate)
		if g.size != nil && float64(g.size.Width()) <= trialWidth {
			w.Minutes += minutesTrial
		}
		w.deep(c, t.Depth+DepthSlack)
		if skin {
			w.throughSkin(c)
		}
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeTurn(i, t, w, g, j) }
		ways = append(ways, w)
	}
	return ways
}

// knifeSpan is where a knife tool goes: over the block, and past its edge where a lower neighbour follows.
func (c *Context) knifeSpan(i int, t Task, e partspec.End) [2]float64 {
	span := [2]float64{t.Z0, t.Z1}
	if !c.lowerBeyond(i, e) {
		return span
	}
	if e == partspec.Right {
		span[0] -= clearance
	} else {
		span[1] += clearance
	}
	return span
}

// clearance is how far the tool starts and stops away from metal.
const clearance = 1.0

// title says whether a block is roughed or brought to size.
func (g turning) title(b shape.Block) string {
	if g.size == nil {
		return "Rough the " + called(b.Feature.Head())
	}
	return fmt.Sprintf("Turn the %s to %s", called(b.Feature.Head()), g.size.Drawn())
}

func (c *Context) writeTurn(i int, t Task, w Way, g turning, j Job) (plan.Operation, Done) {
	b := c.Blocks[i]
	p := c.page(j, t, w, g.title(b))
	before := c.surfaceBefore(i, t, j)
	nearZ, farZ := t.Z1, t.Z0
	farUp := c.rise(i)[0]
	if j.Free == partspec.Left {
		nearZ, farZ = t.Z0, t.Z1
		farUp = c.rise(i)[1]
	}
	in := c.inTheWay(i, nearZ, g, j)
	if in > 0 { // it comes over that, from off the end
		nearZ, before = c.endZ(j.Free), math.Max(before, in)
	}
	p.crossZero(2*before, false, "touch the outside there, "+p.diameter(before))
	p.saddleZero()
	corner := c.filletAt(b.Name, j.Free.Other())
	stop, stopZ := p.saddleShort(farZ - p.toChuck()*math.Max(corner, g.leave*farUp))
	if g.size != nil && farUp > 0 && corner == 0 { // a shoulder that is brought to its place lies as near to it as marks come, on either side
		stop, stopZ = p.saddle(farZ)
	}
	if farUp == 0 && c.lowerBeyond(i, j.Free) {
		stop, stopZ = p.saddle(farZ + p.toChuck()*clearance) // past the edge, so that the tool's nose leaves no corner there
	}
	last := aim{}
	if g.size != nil {
		last = p.aimAt(c.aimedWithin(*g.size))
	} else {
		last.marks, last.radius = p.cross(g.radius)
	}
	if g.size != nil && in == 0 {
		nearZ = c.inTheClear(i, j, nearZ, last.radius)
	}
	start, startZ := p.saddle(nearZ - p.toChuck()*(clearance+c.filletBeside(i, j.Free)))
	deepest := p.dialled()
	if round := c.rimRound; round > 0 { // a sawn rim is no size to count to: the last cut goes by measuring, whatever the limits
		if g.size != nil {
			last = p.byMeasuring(c.aimedWithin(*g.size))
		}
		first := round
		if first < last.radius+rimRange/2 {
			first = last.radius
		}
		if before > first+rimRange/2 {
			p.cutRound(before, first, last.radius, start, stop)
			before = first
			deepest = math.Max(deepest/2, deepest-rimRange/2) // the diameters measured, there and at last, may lie so much beside those that are counted
		}
	}
	if c.onSkin(before) {
		before, deepest = p.underSkin(before, last.radius, deepest, start, stop)
	}
	p.turnPasses(g, before, deepest, last, start, stop)
	stands := p.both(math.Abs(stopZ-p.j.DatumZ), "saddle") + " from the face"
	if farUp > 0 {
		stands = "shoulder " + stands
	}
	p.line("stop at", "saddle", stop, stands, "", false)
	p.done.Outer = solid.Const(math.Min(startZ, stopZ), math.Max(startZ, stopZ), last.radius)
	if g.faceOut && farUp > 0 && corner == 0 {
		p.faceShoulder(j, last, stop, stopZ)
	}
	p.turnWords(g)
	if g.size != nil {
		p.op.Checks = append(p.op.Checks, c.check(b.Name+", diameter", b.Name, *g.size, outsideCheck))
	}
	return p.finish()
}

// turnPasses are the cuts from a radius to the last, each as deep at the most as is told, from one place along the work to another.
func (p *page) turnPasses(g turning, before, deepest float64, last aim, start, stop int64) {
	n := passes(before-last.radius, deepest)
	if before-last.radius < sizeNoise { // cutting all round has brought it there
		n = 0
	}
	for k := 1; k <= n; k++ {
		marks, r := p.cross(before + (last.radius-before)*float64(k)/float64(n))
		var m *plan.Measured
		note := ""
		if k == n {
			marks, r, m = last.marks, last.radius, last.measure
		}
		if k == n-1 && last.measure != nil {
			note = "stop and measure: what is left now sets the last cut"
		}
		name := passName(k, n)
		if g.size == nil {
			name = fmt.Sprintf("rough %d", k)
		}
		p.cut(name, at(marks, start), at(marks, stop), m)
		p.line(name, "cross", marks, p.diameter(r), note, m != nil)
	}
}

// inTheClear is the edge before which a finishing pass over a block begins: its own, or that of neighbours towards the free end that still stand higher than its last cut
// goes. They come down to that with it, where that leaves them their own size.
func (c *Context) inTheClear(i int, j Job, nearZ, radius float64) float64 {
	step := 1
	if j.Free == partspec.Left {
		step = -1
	}
	for k := i + step; k >= 0 && k < len(c.Blocks); k += step {
		b := c.Blocks[k]
		if !b.Cylinder() || b.AsSupplied || float64(b.Diameter.Mid())/2 > radius-sizeNoise || c.surfaceBefore(k, Task{Op: shape.Op{Z0: b.Z0, Z1: b.Z1}}, j) <= radius+sizeNoise {
			break
		}
		nearZ = b.Z1
		if j.Free == partspec.Left {
			nearZ = b.Z0
		}
	}
	return nearZ
}

// inTheWay is the radius of a curve towards the free end that stands higher than the block will, where the tool would begin before the block's near end: no higher than the
// block when all is done, but not yet cut so far; 0 for none.
func (c *Context) inTheWay(i int, nearZ float64, g turning, j Job) float64 {
	most := g.radius
	if g.size != nil {
		most = float64(g.size.High) / 2
	}
	from, to := nearZ+clearance, c.Length
	if j.Free == partspec.Left {
		from, to = 0, nearZ-clearance
	}
	in := 0.0
	for k, b := range c.Blocks {
		if _, curve := b.Feature.(*partspec.Profile); curve && k != i {
			in = math.Max(in, j.Before.Outer.Greatest(math.Max(from, b.Z0), math.Min(to, b.Z1)))
		}
	}
	if in <= most+sizeNoise {
		return 0
	}
	return in
}

// lowerBeyond reports whether the neighbour on the headstock's side stands no higher, or there is none: then the tool runs on past the edge.
func (c *Context) lowerBeyond(i int, free partspec.End) bool {
	k := i - 1
	if free == partspec.Left {
		k = i + 1
	}
	if k < 0 || k >= len(c.Blocks) { // the end of the part; at the bar's end the stretch goes on past it anyway
		return !c.Place.OnBar() || free.Other() != c.Place.Held()
	}
	return !c.shoulder(k, i)
}

// surfaceBefore is the radius that a block has now, between what roughing may have left on its shoulders, and off what the saddle, that stops at a mark, leaves.
func (c *Context) surfaceBefore(i int, t Task, j Job) float64 {
	up, name := c.rise(i), c.Blocks[i].Name
	left := math.Max(leaveFace*up[0], c.filletAt(name, partspec.Left)) + up[0]*faceLook
	right := math.Max(leaveFace*up[1], c.filletAt(name, partspec.Right)) + up[1]*faceLook
	d, _ := c.Lathe.Dial("saddle")
	short := math.Min(float64(d.Graduation.Value), (t.Z1-t.Z0-left-right)/4)
	return j.Before.Outer.Greatest(t.Z0+left+short, t.Z1-right-short)
}

// faceShoulder faces the shoulder outward with the last diameter setting (rule A-12).
func (p *page) faceShoulder(j Job, last aim, stop int64, stopZ float64) {
	out := j.Before.Outer.Greatest(stopZ-clearance, stopZ+clearance)
	marks, _ := p.cross(out + clearance)
	p.cut("shoulder", at(last.marks, stop), at(marks, stop), nil)
	p.note("Wind the tool straight out at the shoulder: one pass faces it.")
	p.why("the shoulder is faced with the last diameter setting, so that there is no step", "A-12")
}

func (p *page) turnWords(g turning) {
	if g.size == nil {
		p.why("0.5 on diameter is left for finishing", "A-05")
		return
	}
	if p.c.Rules.Has("C-09") {
		p.note("The cross dial reads %s.", reads(p.dial("cross")))
	}
	p.note("Come to every figure inward, never back on to it.")
	p.why("approached one way", "C-08")
}
