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

// bore makes the task of boring a hole to a diameter; size is nil when a reamer follows.
func (c *Context) bore(h shape.Hole, d float64, size *partspec.Size) Task {
	found := c.openedTo(h) / 2
	t := Task{Op: shape.Op{ID: h.Feature.Head().ID() + "/bore", Feature: h.Name, Process: plan.BoreOut, Stage: shape.Roughing, Inside: true, Depth: d/2 - found}}
	if size != nil {
		t.Stage, t.Tight, t.Round = shape.Finishing, float64(size.Width()), c.roundness(*size)
		t.Makes = []string{h.Name}
		if !h.Through {
			t.Makes = append(t.Makes, h.Name+"."+h.From.Other().String())
		}
	}
	if size != nil {
		if why := c.unmeasurable(h.Name, *size, insideCheck); why != "" {
			return t.orLacking(why)
		}
	}
	for _, tool := range c.bars(h) {
		for _, e := range mouths(h) {
			stop := c.endZ(e) + into(e)*h.Depth
			if h.Through {
				stop = c.through(e, overrun)
			}
			if t.Inner.Empty() {
				t.Z0, t.Z1 = math.Min(stop, c.endZ(e)), math.Max(stop, c.endZ(e))
				t.Inner = solid.Const(t.Z0, t.Z1, d/2)
			}
			rate := c.rate(cutBore, d, tool)
			w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: d / 2, Span: [2]float64{t.Z0, t.Z1}}
			w.Minutes = cutMinutes(math.Abs(stop-c.endZ(e)), passes(t.Depth, rate.DepthMM)+1, rate)
			if size != nil && float64(size.Width()) <= trialWidth {
				w.Minutes += minutesTrial
			}
			if h.Flat && len(c.straightBars(h)) == 0 {
				w.Minutes += cutMinutes(d/2, int(math.Ceil(pointLength(2*found)/c.layer(tool, rate.DepthMM))), rate)
			}
			w.deep(c, t.Depth+DepthSlack)
			w.Write = func(j Job) (plan.Operation, Done) { return c.writeBore(h, t, w, d, size, j) }
			t.Ways = append(t.Ways, w)
		}
	}
	return t.orLacking(fmt.Sprintf("no boring bar owned enters and reaches %s", h.Name))
}

func (c *Context) writeBore(h shape.Hole, t Task, w Way, d float64, size *partspec.Size, j Job) (plan.Operation, Done) {
	title := fmt.Sprintf("Bore %s true for the reamer", h.Name)
	if size != nil {
		title = "Bore " + h.Name + aimedAt(*size)
	}
	p := c.page(j, t, w, title)
	mouth := c.endZ(w.End)
	found := p.wallRadius(h, t, w.End)
	p.crossZero(2*found, true, "touch the wall of the hole, "+p.diameter(found))
	p.saddleZero()
	start, _ := p.saddle(mouth - into(w.End)*clearance)
	stopZ := mouth + into(w.End)*h.Depth
	if h.Through {
		stopZ = c.boreEnd(w.End, j)
	}
	stop, reachedZ := p.saddleShort(stopZ)
	var depthM *plan.Measured
	if !h.Through {
		depthM, stop, reachedZ = p.depthAim(h, w.End, stop, reachedZ)
	}
	last := aim{}
	if size != nil {
		last = p.aimAt(float64(size.Low), float64(size.High))
	} else {
		last.marks, last.radius = p.cross(d / 2)
	}
	n := passes(last.radius-found, p.dialled())
	cone := p.coneFrom(found, w.End, reachedZ)
	if n == 1 && (last.measure != nil || cone != reachedZ) {
		n = 2 // one to measure from, or to face the floor within, one to finish
	}
	above, _ := p.saddleShort(cone)
	for k := 1; k <= n; k++ {
		if k == n && cone != reachedZ {
			_, r := p.cross(found + (last.radius-found)*float64(n-1)/float64(n))
			p.layers(r, above, stop, w.End)
		}
		marks, r := p.cross(found + (last.radius-found)*float64(k)/float64(n))
		var m *plan.Measured
		if k == n {
			marks, r, m = last.marks, last.radius, last.measure
		}
		note := ""
		if k == n-1 && last.measure != nil {
			note = "stop and measure: what is left now sets the last cut"
		}
		down := stop
		if k < n && cone != reachedZ {
			down = above
		}
		p.cut(passName(k, n), at(marks, start), at(marks, down), m)
		p.line(passName(k, n), "cross", marks, p.diameter(r), note, m != nil)
	}
	if h.Through {
		p.line("run to", "saddle", stop, "past the far end", "", false)
	} else {
		p.line("stop at", "saddle", stop, "depth "+p.both(math.Abs(reachedZ-mouth), "saddle"), "", depthM != nil)
		if cone == reachedZ {
			p.floor(last, stop, reachedZ, w.End, j, depthM)
		}
	}
	p.done.Inner = solid.Const(math.Min(reachedZ, mouth-into(w.End)*clearance), math.Max(reachedZ, mouth-into(w.End)*clearance), last.radius)
	p.boreWords(h, size)
	return p.finish()
}

func (p *page) boreWords(h shape.Hole, size *partspec.Size) {
	p.note("The cross dial grows outward here, away from the axis.")
	if size == nil {
		p.why("the reamer follows a hole that boring has made true", "A-28")
		return
	}
	if float64(size.Width()) <= trialWidth {
		p.note("Repeat the last pass at the same setting until nothing more comes off, then measure.")
		p.why("dials give differences, not sizes", "C-15")
	}
	p.op.Checks = append(p.op.Checks, p.c.check(h.Name+", diameter", h.Name, *size, insideCheck))
	if !h.Through {
		b := h.Feature.(*partspec.Bore)
		p.op.Checks = append(p.op.Checks, p.c.check(h.Name+", depth", h.Name, b.Depth, depthCheck))
	}
}

// wallRadius is the radius of the hole that is there before: at the mouth of a blind one, at its narrowest over the stretch of a through one.
func (p *page) wallRadius(h shape.Hole, t Task, e partspec.End) float64 {
	if !h.Through {
		return p.mouthRadius(p.c.endZ(e), into(e))
	}
	z0, z1 := p.j.Before.Ends()
	return p.j.Before.Inner.Least(math.Max(t.Z0, z0), math.Min(t.Z1, z1))
}

// mouthRadius is the radius of the hole just inside a face.
func (p *page) mouthRadius(mouth, dir float64) float64 {
	return p.j.Before.Inner.Least(math.Min(mouth, mouth+dir*faceLook), math.Max(mouth, mouth+dir*faceLook))
}

// boreEnd is where a through bore stops: past the parting place on a bar, else past the metal.
func (c *Context) boreEnd(e partspec.End, j Job) float64 {
	z0, z1 := j.Before.Ends()
	end := z1
	if e == partspec.Right {
		end = z0
	}
	limit := c.through(e, overrun)
	if (limit-end)*into(e) > 0 {
		return end + into(e)*overrun
	}
	return limit
}

// coneFrom is where the bottom of a hole begins to be narrower than its wall, as a drill's point leaves it: its floor, where the hole goes on or is open as wide.
func (p *page) coneFrom(wall float64, e partspec.End, floor float64) float64 {
	mouth := p.c.endZ(e)
	if !p.narrow(wall, mouth, floor) {
		return floor
	}
	near, far := mouth, floor // halved until they are one place: as fine as a saddle is set
	for range coneHalvings {
		if middle := (near + far) / 2; p.narrow(wall, mouth, middle) {
			far = middle
		} else {
			near = middle
		}
	}
	return near
}

// coneHalvings finds the drill's shoulder in a hole of a metre to a micrometre.
const coneHalvings = 20

// narrow reports whether a hole is narrower than its wall somewhere between two places.
func (p *page) narrow(wall, z0, z1 float64) bool {
	return p.j.Before.Inner.Least(math.Min(z0, z1)+sizeNoise, math.Max(z0, z1)-sizeNoise) < wall-floorWiden
}

// floorWiden is less than a bore is widened by before its floor is faced.
const floorWiden = 0.05

// layers faces the cone that a drill's point has left down to a floor, each layer from the middle, where the point has been, out to the wall.
func (p *page) layers(wall float64, from, floor int64, e partspec.End) {
	step := int64(math.Round(p.c.layer(p.tool, p.most) / float64(p.dial("saddle").Graduation.Value)))
	bottom := p.positionAt(floor)
	middle, _ := p.cross(math.Max(0, p.j.Before.Inner.Least(bottom-faceLook, bottom+faceLook)-faceLook))
	out, _ := p.cross(wall)
	p.line("roughing stops at", "saddle", from, "where the drill's cone begins", "", false)
	p.line("each layer from", "cross", middle, "the middle of the hole", "wind back in the air", false)
	p.line("each layer to", "cross", out, "the wall", "", false)
	for now, k := from, 1; now < floor; k++ {
		now = min(floor, now+step)
		name := fmt.Sprintf("layer %d", k)
		p.cut(name, at(middle, now), at(out, now), nil)
		p.line(name, "saddle", now, "depth "+p.both(math.Abs(p.positionAt(now)-p.c.endZ(e)), "saddle"), "", false)
	}
	p.note("The cone that the drill left is faced away in layers, before the last pass along the wall: the saddle to each figure with the tool in the middle, then outward.")
	p.why("a drill's point leaves a cone; a floor is faced from its middle outward, and the wall is finished after it", "A-26")
}

// layer is how deep a layer of a floor is, in whole graduations of the saddle: with the round that the nose left in the corner of the one before, a pass as deep as most.
func (c *Context) layer(bar partspec.Tool, most float64) float64 {
	d, _ := c.Lathe.Dial("saddle")
	g := float64(d.Graduation.Value)
	return g * max(1, math.Floor((most-float64(bar.NoseRadius))/g+markNoise))
}

// depthAim finds the saddle setting for a blind hole's floor.
func (p *page) depthAim(h shape.Hole, e partspec.End, stop int64, reached float64) (*plan.Measured, int64, float64) {
	b := h.Feature.(*partspec.Bore)
	mouth := p.c.endZ(e)
	g := float64(p.dial("saddle").Graduation.Value)
	if float64(b.Depth.Width()) >= 2*g-sizeNoise {
		marks, z := p.saddle(mouth + into(e)*float64(b.Depth.Mid()))
		return nil, marks, z
	}
	lo, hi := mouth+into(e)*float64(b.Depth.Low), mouth+into(e)*float64(b.Depth.High)
	return &plan.Measured{What: "position", LowMM: math.Min(lo, hi), HighMM: math.Max(lo, hi)}, stop, mouth + into(e)*float64(b.Depth.Mid())
}

// floor faces the bottom of a blind hole from its wall inward; where its depth is crept up to by measuring, from the hole in its middle outward, so that the
// tool stands in the clear when the saddle is moved.
func (p *page) floor(last aim, stop int64, reachedZ float64, e partspec.End, j Job, m *plan.Measured) {
	inner := j.Before.Inner.Least(math.Min(reachedZ, reachedZ+into(e)*faceLook), math.Max(reachedZ, reachedZ+into(e)*faceLook))
	marks, _ := p.cross(math.Max(0, inner-faceLook))
	if m != nil {
		p.cut("floor", at(marks, stop), at(last.marks, stop), m)
		p.note("Measure the depth, set the saddle for what is left with the tool in the middle, and wind it outward to the wall: one pass faces the floor.")
		return
	}
	p.cut("floor", at(last.marks, stop), at(marks, stop), nil)
	p.note("At the depth, wind the tool inward: one pass faces the floor.")
}

func (c *Context) ream(h shape.Hole) Task {
	tool, d, _ := c.sized(partspec.Reamers, float64(h.Diameter.Low), float64(h.Diameter.High))
	t := Task{Op: shape.Op{ID: h.Feature.Head().ID() + "/ream", Feature: h.Name, Process: plan.Ream, Stage: shape.Finishing, Inside: true,
		Makes: []string{h.Name}, Tight: float64(h.Diameter.Width()), Round: c.roundness(h.Diameter), Depth: reamLeave(d) / 2}}
	for _, e := range mouths(h) {
		end := c.endZ(e) + into(e)*h.Depth
		if h.Through {
			end = c.through(e, overrun)
		}
		if t.Inner.Empty() {
			t.Z0, t.Z1 = math.Min(end, c.endZ(e)), math.Max(end, c.endZ(e))
			t.Inner = solid.Const(t.Z0, t.Z1, d/2)
		}
		rate := c.rate(cutReam, d, tool)
		w := Way{End: e, Tool: tool, SizeMM: d, Ordinary: true, Rate: rate, ForceAt: d / 4, Span: [2]float64{t.Z0, t.Z1}}
		w.Minutes = math.Abs(end-c.endZ(e))/(rate.FeedMM*rate.RPM) + minutesADrill + minutesTrial
		w.ForceN = c.openingForce(d-reamLeave(d), []float64{d}, rate.FeedMM)
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeReam(h, t, w, d, end, j) }
		t.Ways = append(t.Ways, w)
	}
	return t
}

func (c *Context) writeReam(h shape.Hole, t Task, w Way, d, end float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Ream %s to %s", h.Name, h.Diameter.Drawn()))
	p.op.Zeros = append(p.op.Zeros, plan.Zero{Dial: "tailstock", ReferenceMM: c.endZ(w.End), How: "the reamer's end is level with the face"})
	marks, reached := p.tailstock(end, h.Through)
	p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: "ream", From: tailAt(0), To: tailAt(marks), ToolSizeMM: d, ToolID: w.Tool.ID()})
	p.line("ream", "tailstock", marks, "to the full depth", "never turn it backwards", false)
	p.done.Inner = solid.Const(math.Min(reached, c.endZ(w.End)), math.Max(reached, c.endZ(w.End)), d/2)
	p.note("Plenty of oil on steel; withdraw while it turns forward.")
	p.why(fmt.Sprintf("%.2f is left for the reamer on diameter", reamLeave(d)), "A-27")
	p.op.Checks = append(p.op.Checks, c.check(h.Name+", diameter", h.Name, h.Diameter, insideCheck))
	return p.finish()
}

// aimedAt ends a title with the size as the drawing writes it; where nobody wrote it, as for the core of a thread, with the limits, for the aim lies
// between them.
func aimedAt(s partspec.Size) string {
	if s.Written != "" || s.Low == s.High {
		return " to " + s.Drawn()
	}
	return ", " + units.Limits{Low: s.Low, High: s.High}.Text(s.Unit())
}
