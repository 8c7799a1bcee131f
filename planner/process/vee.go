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

// vee is a vee groove as it is cut: its middle is plunged with a blade, then its two flanks are brought out to their angle.
type vee struct {
	f           *partspec.Groove
	left, right float64 // where the flanks leave the bottom
	bottom, top float64 // radius of the bottom, and of the surface that the groove is cut in
	flankDeg    float64 // of both flanks, from the axis
	off         float64 // how far along the axis the width's limits let a flank stand from its drawn place
}

const (
	// flankStep is how far, along the axis, one pass brings a flank out. Ours, no source.
	flankStep = 0.4
	// formLeave is what a blade leaves on radius for a form tool to clean up. Ours, no source.
	formLeave = 0.2
	// narrowBottom is the widest bottom that a form tool is led along from flank to flank. Ours, no source.
	narrowBottom = 0.3
)

func (c *Context) newVee(f *partspec.Groove) vee {
	middle, b := float64(f.Span.Left+f.Span.Right)/2, float64(f.BottomWidth)
	return vee{f: f, left: middle - b/2, right: middle + b/2, bottom: float64(f.Bottom.Mid()) / 2, top: c.surfaceAt(f), flankDeg: 90 - float64(f.Angle)/2,
		off: float64(min(f.Width.High-f.Width.Value, f.Width.Value-f.Width.Low)) / 2}
}

func (v vee) width() float64 { return v.right - v.left }
func (v vee) depth() float64 { return v.top - v.bottom }

// widthText is the width at the surface with its limits.
func (v vee) widthText(c *Context) string {
	return units.Limits{Low: v.f.Width.Low, High: v.f.Width.High}.Text(c.unit())
}

// rise is how much a flank rises for a step along the axis.
func (v vee) rise() float64 { return math.Tan(units.Angle(v.flankDeg).Radians()) }

// run is how far along the axis a flank goes.
func (v vee) run() float64 { return v.depth() / v.rise() }

// flank is the line of one flank.
func (v vee) flank(e partspec.End) solid.Curve {
	if e == partspec.Left {
		return solid.Line(v.left-v.run(), v.top, v.left, v.bottom)
	}
	return solid.Line(v.right, v.bottom, v.right+v.run(), v.top)
}

// vee makes the tasks of a vee groove: the middle, then the flanks. A form tool of the flanks' own angle makes both at once; without one the blade that has
// cut the middle is fed in along each flank with the top slide set over.
func (c *Context) vee(f *partspec.Groove) []Task {
	v := c.newVee(f)
	middle, whole := c.veeMiddle(v), true
	if len(middle.Ways) == 0 {
		middle, whole = c.veeOpened(v), false
	}
	var tasks []Task
	if len(middle.Ways) > 0 {
		tasks = append(tasks, middle)
	}
	formed := c.veeFormed(v, whole)
	switch {
	case len(formed.Ways) > 0:
		return append(tasks, formed)
	case whole:
		return append(tasks, c.veeFlank(v, partspec.Left), c.veeFlank(v, partspec.Right))
	}
	formed.Lacking = append([]string{c.veeLack(v)}, formed.Lacking...)
	return []Task{formed}
}

func (v vee) task(id string, s shape.Stage, z0, z1 float64, outer solid.Curve) Task {
	t := Task{Op: shape.Op{ID: v.f.ID() + "/" + id, Feature: v.f.Name, Process: plan.Groove, Stage: s, Z0: z0, Z1: z1, Outer: outer, Depth: v.depth()}}
	if s == shape.Finishing {
		t.Makes = []string{v.f.Name}
	}
	return t
}

// veeLack says why a vee cannot be cut with the tools owned. Knife tools are no way out: their shank is far wider than the bottom of any vee.
func (c *Context) veeLack(v vee) string {
	narrowest := math.Inf(1)
	for _, t := range c.blades() {
		narrowest = math.Min(narrowest, float64(t.Width))
	}
	owned := "no grooving or parting tool is owned"
	if !math.IsInf(narrowest, 1) {
		owned = fmt.Sprintf("the narrowest grooving or parting tool owned is %s wide", units.Decimal(narrowest, 2))
	}
	saddle, _ := c.Lathe.Dial("saddle")
	for _, t := range c.veeBlades(v) {
		if float64(t.Width) <= v.width()+sizeNoise {
			owned = fmt.Sprintf("the %s would go in, but the saddle places it to %s only, and the width's limits let it stand %s off", t.Name, units.Decimal(float64(saddle.Graduation.Value), 3), units.Decimal(v.off, 3))
		}
	}
	blade := ""
	if v.width() > 0 {
		blade = fmt.Sprintf("a grooving tool well under %s wide that reaches %s, or ", units.Decimal(v.width(), 2), units.Decimal(c.besideGroove(v.f)-v.bottom, 2))
	}
	return fmt.Sprintf("%s: no blade goes to its bottom, %s wide and %s down, to be fed in along the flanks (%s), and the shank of a knife tool does not go into a vee: add %sa form tool, chamfer with angle = %s",
		v.f.Name, units.Decimal(v.width(), 2), units.Decimal(v.depth(), 2), owned, blade, units.Decimal(v.flankDeg, 3))
}

// onDial is the place that the saddle can be set to nearest to z, with nought on an end's face.
func (c *Context) onDial(z float64, free partspec.End) float64 {
	saddle, _ := c.Lathe.Dial("saddle")
	g := float64(saddle.Graduation.Value)
	if g <= 0 {
		return z
	}
	return c.endZ(free) + math.Round((z-c.endZ(free))/g)*g
}

// veeBlades are the blades that reach the bottom of a vee, beside whatever stands next to it.
func (c *Context) veeBlades(v vee) []partspec.Tool {
	var found []partspec.Tool
	for _, t := range c.blades() {
		if float64(t.Reach) >= c.besideGroove(v.f)-v.bottom {
			found = append(found, t)
		}
	}
	return found
}

// bladeRun is where a blade plunges the middle of a vee. Where it has no graduation of the saddle to spare between the flanks it is one plunge, as near to the
// middle as the dial lets it; not ok when that cuts into a flank by more than the limits let it.
func (c *Context) bladeRun(v vee, tool partspec.Tool, free partspec.End) (z0, z1 float64, ok bool) {
	saddle, _ := c.Lathe.Dial("saddle")
	w, g := float64(tool.Width), float64(saddle.Graduation.Value)
	if w+2*g <= v.width() {
		return v.left + g/2, v.right - g/2, true
	}
	corner := (v.left + v.right - w) / 2 // of the blade, on the headstock's side
	if free == partspec.Left {
		corner += w
	}
	z0 = c.onDial(corner, free)
	if free == partspec.Left {
		z0 -= w
	}
	return z0, z0 + w, z0 >= v.left-v.off && z0+w <= v.right+v.off
}

// veeMiddle is the middle of a vee, plunged to its bottom with a blade no wider than that.
func (c *Context) veeMiddle(v vee) Task {
	t := v.task("middle", shape.Roughing, v.left, v.right, solid.Const(v.left, v.right, v.bottom))
	t.Tight, t.Round = float64(v.f.Bottom.Width()), c.roundness(v.f.Bottom)
	for _, tool := range c.veeBlades(v) {
		if float64(tool.Width) > v.width()+sizeNoise {
			continue
		}
		rate := c.rate(cutGroove, 2*v.top, tool)
		n := math.Max(1, math.Ceil(v.width()/(float64(tool.Width)*bladeStep)))
		for _, e := range ends() {
			z0, z1, ok := c.bladeRun(v, tool, e)
			if !ok {
				continue
			}
			w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: v.top, Span: [2]float64{v.left, v.right}}
			w.Minutes = cutMinutes(v.depth(), int(n), rate) + cutMinutes(v.width(), 1, rate)
			w.ForceN = c.force(float64(tool.Width), rate.FeedMM)
			w.Write = func(j Job) (plan.Operation, Done) { return c.writeMiddle(v, t, w, z0, z1, j) }
			t.Ways = append(t.Ways, w)
		}
	}
	return t
}

func (c *Context) writeMiddle(v vee, t Task, w Way, z0, z1 float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Plunge the middle of the vee %s", v.f.Name))
	before := j.Before.Outer.Greatest(t.Z0, t.Z1)
	p.crossZero(2*before, false, "touch the outside there, "+p.diameter(before))
	p.saddleZero()
	size := v.f.Bottom
	p.bladeTo(p.bladePlaces(z0, z1, float64(w.Tool.Width)), turning{radius: v.bottom, size: &size}, float64(w.Tool.Width), "")
	p.note("The saddle's figure is for the corner of the blade nearest to the headstock.")
	p.why("the middle of a vee is opened before its flanks, so that they are light cuts", veeRule)
	p.op.Checks = append(p.op.Checks, c.check(v.f.Name+", diameter at the bottom", v.f.Name, size, outsideCheck))
	return p.finish()
}

// veeRule is the rule by which the middle of a vee comes before its flanks.
const veeRule = "A-15"
