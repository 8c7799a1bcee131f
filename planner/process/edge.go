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

// chamfer makes the task of breaking an edge by a cone.
func (c *Context) chamfer(f *partspec.Chamfer) Task {
	e := f.Edge
	z, r, size := float64(e.Z), float64(e.R), float64(f.Size.Mid())
	drop := size * math.Tan(f.Angle.Radians())
	dir := 1.0 // towards the metal
	if e.Axial == partspec.Left {
		dir = -1
	}
	t := Task{Op: shape.Op{ID: f.ID() + "/chamfer", Feature: f.Name, Process: plan.Chamfer, Stage: shape.Finishing, Inside: e.Inside, End: e.Axial.Other(),
		Z0: math.Min(z, z+dir*size), Z1: math.Max(z, z+dir*size), Makes: []string{f.Name}, Tight: float64(f.Size.Width()), Depth: drop}}
	if e.Inside {
		t.Inner = solid.Line(z, r+drop, z+dir*size, r)
	} else {
		t.Outer = solid.Line(z, r-drop, z+dir*size, r)
	}
	for _, end := range ends() {
		t.Ways = append(t.Ways, c.veeWays(f, t, end, drop)...)
		t.Ways = append(t.Ways, c.swungWays(f, t, end, drop, dir)...)
	}
	return t.orLacking(fmt.Sprintf("no chamfer tool of %s is owned, and no knife or boring tool reaches the edge with the top slide swung", f.Angle))
}

// veeWays breaks an edge with a vee tool of the chamfer's own angle, fed straight in.
func (c *Context) veeWays(f *partspec.Chamfer, t Task, end partspec.End, drop float64) []Way {
	var ways []Way
	facesFree := t.End == end
	if !facesFree && !c.roomBeyond(f, drop) || c.veeFouls(f, drop) {
		return nil
	}
	for _, tool := range c.tools(partspec.ChamferTool) {
		if math.Abs(float64(tool.Angle-f.Angle)) > angleNoise {
			continue
		}
		rate := c.rate(cutGroove, 2*float64(f.Edge.R), tool)
		w := Way{End: end, Tool: tool, Ordinary: facesFree, Rate: rate, ForceAt: float64(f.Edge.R), Span: [2]float64{t.Z0 - veeHalf, t.Z1 + veeHalf}}
		w.Minutes = minutesEdge + drop/(rate.FeedMM*rate.RPM)
		w.ForceN = c.force(float64(f.Size.Mid()), rate.FeedMM)
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeVee(f, t, w, drop, j) }
		ways = append(ways, w)
	}
	return ways
}

// veeHalf is how far a chamfer tool reaches to each side of its point. Common practice, no source.
const veeHalf = 6.0

// A vee tool starts edgeStart graduations clear of what it was touched on, and edgeClear mm clear of the edge. Common practice, no source.
const (
	edgeStart = 5
	edgeClear = 0.1
)

// angleNoise lets two angles that differ only by how they were written count as one.
const angleNoise = 1e-6

// roomBeyond reports whether a vee's other edge hangs in clearance air over a lower neighbour: never over an end face, which is where the jaws are.
func (c *Context) roomBeyond(f *partspec.Chamfer, drop float64) bool {
	if f.Edge.Inside {
		return false
	}
	for _, b := range c.Blocks {
		beside := f.Edge.Axial == partspec.Right && near(b.Z1, float64(f.Edge.Z)) || f.Edge.Axial == partspec.Left && near(b.Z0, float64(f.Edge.Z))
		if beside {
			return b.Greatest < float64(f.Edge.R)-drop && b.Z1-b.Z0 > 2*float64(f.Size.Mid())
		}
	}
	return false
}

// veeFouls reports whether a vee's flank, as far as it reaches, would run into a higher block beside the edge's own.
func (c *Context) veeFouls(f *partspec.Chamfer, drop float64) bool {
	if f.Edge.Inside {
		return false
	}
	z, tip := float64(f.Edge.Z), float64(f.Edge.R)-drop
	for _, b := range c.Blocks {
		off := math.Max(b.Z0-z, z-b.Z1)
		if b.Name != f.Edge.Feature && off > 0 && off < veeHalf+clearance && b.Greatest > tip+off*math.Tan(f.Angle.Radians()) {
			return true
		}
	}
	return false
}

func (c *Context) writeVee(f *partspec.Chamfer, t Task, w Way, drop float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, c.chamferTitle(f))
	z, r := float64(f.Edge.Z), float64(f.Edge.R)
	tip := r - drop
	made := p.touch(t.Z0, t.Z1)
	if f.Edge.Inside {
		made = j.Before.Inner.Least(t.Z0, t.Z1)
	}
	p.crossZero(2*made, f.Edge.Inside, "touch the edge's own surface, "+p.diameter(made))
	if f.Edge.Inside {
		tip = r + drop
	}
	p.saddleZero()
	p.op.DepthMM = math.Min(p.op.DepthMM, math.Ceil(100*(drop+forceSlack))/100)
	s, reachedZ := p.saddle(z)
	marks, reachedR := p.cross(tip)
	start := int64(-edgeStart)
	if !f.Edge.Inside { // clear of the edge, which may stand higher than what the dial was set on
		clear, _ := p.cross(j.Before.Outer.Greatest(t.Z0, t.Z1) + edgeClear)
		start = min(start, clear)
	}
	p.cut("chamfer", at(start, s), at(marks, s), nil)
	p.line("point at", "saddle", s, "the edge's face", "", false)
	p.line("in to", "cross", marks, "chamfer "+p.both(float64(f.Size.Mid()), "cross"), "", false)
	dir := t.Z0 + t.Z1 - 2*z
	side := math.Copysign(1, dir)
	tan := math.Tan(f.Angle.Radians())
	reach := math.Abs(r-reachedR) / tan
	if over := j.Before.Outer.Greatest(t.Z0, t.Z1) - reachedR; !f.Edge.Inside && over > 0 { // a surface that rises on is cut until the cone meets it
		reach = math.Max(reach, math.Min(over/tan, 2*reach))
	}
	cone := solid.Line(reachedZ, reachedR, reachedZ+side*reach, reachedR+math.Copysign(reach*tan, r-reachedR))
	if f.Edge.Inside {
		p.done.Inner = cone
	} else {
		p.done.Outer = cone
	}
	p.why("edges are broken before the work is let go", "A-12")
	return p.finish()
}

// chamferTitle names a chamfer by its edge as the file does.
func (c *Context) chamferTitle(f *partspec.Chamfer) string {
	end := f.Edge.End.String()
	if c.Part.Flat() {
		end = faceWord(f.Edge.End)
	}
	return fmt.Sprintf("Chamfer the edge %s.%s, %s at %s", f.Edge.Feature, end, p0(c, f.Size), f.Angle)
}

func p0(c *Context, s partspec.Size) string { return s.Value.Text(c.unit()) }

// swungWays breaks an edge that faces the free end by swinging the top slide.
func (c *Context) swungWays(f *partspec.Chamfer, t Task, end partspec.End, drop, dir float64) []Way {
	if _, ok := c.Lathe.Dial("top"); t.End != end || !ok {
		return nil
	}
	z, r, size := float64(f.Edge.Z), float64(f.Edge.R), float64(f.Size.Mid())
	run := swing{z0: z, r0: r - drop, z1: z + dir*size, r1: r, inside: f.Edge.Inside, title: c.chamferTitle(f)}
	kind, tools := partspec.Turning, c.tools(partspec.Turning)
	if f.Edge.Inside {
		kind, tools = partspec.Boring, c.tools(partspec.Boring)
		run.r0 = r + drop
	}
	var ways []Way
	for _, tool := range tools {
		if tool.Hand == "left" || kind == partspec.Boring && float64(tool.LeastBore) > 2*r {
			continue
		}
		ways = append(ways, c.swungWay(t, end, tool, run))
	}
	return ways
}

// swing is a straight cut by the top slide, from (z0, r0) nearer the free end to (z1, r1).
type swing struct {
	z0, r0, z1, r1 float64
	inside         bool
	title          string
	check          func(p *page)
}

// offLine is how much deeper than reckoned a swung cut may go, in radius: where it begins beside a face that was turned from the other end, that face lies off by what
// the length may be.
func (c *Context) offLine(s swing, free partspec.End) float64 {
	if s.z0 == c.endZ(free) {
		return 0
	}
	return math.Abs((s.r1-s.r0)/(s.z1-s.z0)) * c.lengthSlack(free)
}

func (s swing) angle() float64 {
	return math.Atan2(math.Abs(s.r1-s.r0), math.Abs(s.z1-s.z0)) * 180 / math.Pi
}
func (s swing) length() float64 { return math.Hypot(s.r1-s.r0, s.z1-s.z0) }

// metal is how much a body has over the cut's line, in radius, from where the tool starts. At the line's end it is not looked for nearer than a mark of the saddle, which
// is how far before that roughing may have stopped.
func (s swing) metal(b solid.Body, startZ, mark float64) float64 {
	over, sign := b.Outer, 1.0
	if s.inside {
		over, sign = b.Inner, -1
	}
	most, slope := 0.0, (s.r1-s.r0)/(s.z1-s.z0)
	end := s.z1 - math.Copysign(math.Min(mark, math.Abs(s.z1-s.z0)/2), s.z1-s.z0)
	for _, p := range over.Clip(math.Min(startZ, end), math.Max(startZ, end)).Pieces() {
		at := []float64{p.Z0, p.Z1}
		if p.IsArc() { // an arc stands farthest out where it runs along the line
			for _, side := range []float64{-1, 1} {
				if z := p.CentreZ + side*p.Radius*slope/math.Hypot(1, slope); p.Z0 < z && z < p.Z1 {
					at = append(at, z)
				}
			}
		}
		for _, z := range at {
			most = math.Max(most, sign*(p.At(z)-s.r0-slope*(z-s.z0)))
		}
	}
	return most
}

func (c *Context) swungWay(t Task, end partspec.End, tool partspec.Tool, run swing) Way {
	kind := cutFinish
	if run.inside {
		kind = cutBore
	}
	rate := c.rate(kind, 2*math.Max(run.r0, run.r1), tool)
	w := Way{End: end, Tool: tool, Ordinary: true, Rate: rate, ForceAt: math.Max(run.r0, run.r1),
		Span: [2]float64{math.Min(t.Z0, math.Min(run.z0, run.z1)), math.Max(t.Z1, math.Max(run.z0, run.z1))}}
	w.Minutes = minutesSlideSet + cutMinutes(run.length(), passes(t.Depth, rate.DepthMM), rate)
	w.deep(c, t.Depth+DepthSlack)
	w.Write = func(j Job) (plan.Operation, Done) { return c.writeSwung(t, w, run, j) }
	return w
}

// noseShift is how far the sharp corner that a dial places must go past a line at an angle to the axis, in radius, so that the nose of radius
// n touches the line: n (1 + tan a - 1/cos a).
func noseShift(n, angleDeg float64) float64 {
	a := units.Angle(angleDeg).Radians()
	return n * (1 + math.Tan(a) - 1/math.Cos(a))
}

func (c *Context) writeSwung(t Task, w Way, run swing, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, run.title)
	outward := run.inside
	rising := run.r1 > run.r0 // away from the axis as it goes to the headstock
	p.op.TopSlideDeg = run.angle()
	if !rising {
		p.op.TopSlideDeg = -run.angle()
	}
	if run.inside {
		before := p.mouthRadius(run.z0, math.Copysign(1, run.z1-run.z0))
		p.crossZero(2*before, outward, "touch the wall of the hole, "+p.diameter(before))
	} else {
		before := p.touch(math.Min(run.z0, run.z1), math.Max(run.z0, run.z1))
		p.crossZero(2*before, outward, "touch the outside, "+p.diameter(before))
	}
	p.saddleZero()
	p.op.Zeros = append(p.op.Zeros, plan.Zero{Dial: "top", How: "wound back to the start of the cut"})
	sign := 1.0
	if run.inside {
		sign = -1
	}
	shift := noseShift(float64(w.Tool.NoseRadius), run.angle())
	// The cut starts clearance of the work by one millimetre along its own direction.
	lead := clearance * math.Cos(units.Angle(run.angle()).Radians())
	s, startZ := p.saddle(run.z0 - math.Copysign(lead, run.z1-run.z0))
	slope := (run.r1 - run.r0) / (run.z1 - run.z0)
	startR := run.r0 + slope*(startZ-run.z0) - sign*shift
	if out := startZ - p.toChuck()*clearance; !run.inside && j.Before.Outer.Greatest(math.Min(startZ, out), math.Max(startZ, out)) > startR+sizeNoise {
		s, startZ = p.saddleShort(run.z0) // it would cut what stands beside: it begins at the last mark before the cone
		startR = run.r0 + slope*(startZ-run.z0) - shift
	}
	along := int64(math.Floor((math.Abs(run.z1-startZ))/math.Cos(units.Angle(run.angle()).Radians())/float64(p.dial("top").Graduation.Value) + markNoise))
	last, reachedR := p.cross(startR)
	depth := run.metal(j.Before, startZ, float64(p.dial("saddle").Graduation.Value))
	off := p.c.offLine(run, j.Free)
	n := passes(depth, math.Max(p.dialled()-off, p.dialled()/2))
	p.op.DepthMM = math.Min(p.op.DepthMM, math.Ceil(100*(depth/float64(n)+off+forceSlack))/100)
	for k := 1; k <= n; k++ {
		back := sign * depth * float64(n-k) / float64(n)
		marks, r := last, reachedR
		if k < n {
			marks, r = p.cross(startR + back)
		}
		from := append(at(marks, s), plan.Reading{Dial: "top", Graduations: 0})
		to := append(at(marks, s), plan.Reading{Dial: "top", Graduations: along})
		p.cut(passName(k, n), from, to, nil)
		p.line(passName(k, n), "cross", marks, "start at "+p.diameter(r), "", false)
	}
	p.line("start at", "saddle", s, "clearance of the work", "saddle locked", false)
	p.line("along", "top", along, p.both(run.length(), "top")+" of cone", "", false)
	end := t.Z1 // where a cone is led on past its end, it goes no further than whole marks of the top slide take it
	if run.z1 < run.z0 {
		end = t.Z0
	}
	if reach := startZ + math.Copysign(float64(along)*float64(p.dial("top").Graduation.Value)*math.Cos(units.Angle(run.angle()).Radians()), run.z1-run.z0); (reach-end)*(run.z1-run.z0) > 0 {
		end = reach
	}
	cone := solid.Line(run.z0, run.r0+reachedR-startR, end, run.r0+slope*(end-run.z0)+reachedR-startR)
	if run.inside {
		p.done.Inner = cone
	} else {
		p.done.Outer = cone
	}
	p.note("Swing the top slide %s from the axis; set it with an indicator along a true bar: %.3f of rise for 25 of slide travel.", units.Angle(run.angle()).DegreesMinutes(), 25*math.Sin(units.Angle(run.angle()).Radians()))
	p.note("Tool exactly at centre height: a cone cut off centre comes out curved.")
	p.why("a short cone is cut by the top slide", "C-22")
	if run.check != nil {
		run.check(p)
	}
	return p.finish()
}
