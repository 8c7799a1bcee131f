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
	f            *partspec.Groove
	left, right  float64 // where the flanks leave the bottom
	bottom, top  float64 // radius of the bottom, and of the surface that the groove is cut in
	flankDeg     float64 // of both flanks, from the axis
	off          float64 // how far along the axis a flank may stand from its drawn place
	widestCutter float64 // that goes down to the bottom
}

// flankStep is how far, along the axis, one pass brings a flank out. Ours, no source.
const flankStep = 0.4

func (c *Context) newVee(f *partspec.Groove) vee {
	middle, b := float64(f.Span.Left+f.Span.Right)/2, float64(f.BottomWidth)
	return vee{f: f, left: middle - b/2, right: middle + b/2, bottom: float64(f.Bottom.Mid()) / 2, top: c.surfaceAt(f), flankDeg: 90 - float64(f.Angle)/2,
		off: float64(min(f.Width.High-f.Width.Value, f.Width.Value-f.Width.Low)) / 2, widestCutter: b}
}

// rise is how much a flank rises for a step along the axis.
func (v vee) rise() float64 { return math.Tan(units.Angle(v.flankDeg).Radians()) }

// run is how far along the axis a flank goes.
func (v vee) run() float64 { return (v.top - v.bottom) / v.rise() }

func (v vee) curve() solid.Curve {
	return solid.Line(v.left-v.run(), v.top, v.left, v.bottom).Join(solid.Const(v.left, v.right, v.bottom)).Join(solid.Line(v.right, v.bottom, v.right+v.run(), v.top))
}

// vee makes the tasks of a vee groove: the middle, then the flanks. A form tool of the flanks' own angle makes both at once; without one the blade that has
// cut the middle is fed in along each flank with the top slide set over.
func (c *Context) vee(f *partspec.Groove) []Task {
	v := c.newVee(f)
	middle := c.veeMiddle(v)
	for _, tool := range c.tools(partspec.ChamferTool) {
		if math.Abs(float64(tool.Angle)-v.flankDeg) <= angleNoise {
			return append(middle, c.veeFormed(v, len(middle) > 0 && middle[0].Stage == shape.Roughing))
		}
	}
	if len(middle) == 0 || len(middle[0].Ways) == 0 || middle[0].Depth < v.top-v.bottom-sizeNoise {
		return []Task{{Op: v.op("groove", shape.Finishing), Lacking: []string{c.veeLack(v)}}}
	}
	return append(middle, c.veeFlank(v, partspec.Left), c.veeFlank(v, partspec.Right))
}

func (v vee) op(id string, s shape.Stage) shape.Op {
	return shape.Op{ID: v.f.ID() + "/" + id, Feature: v.f.Name, Process: plan.Groove, Stage: s, Z0: float64(v.f.Span.Left), Z1: float64(v.f.Span.Right), Outer: v.curve(),
		Tight: float64(v.f.Bottom.Width()), Depth: v.top - v.bottom}
}

func (c *Context) veeLack(v vee) string {
	narrowest := math.Inf(1)
	for _, t := range c.blades() {
		narrowest = math.Min(narrowest, float64(t.Width))
	}
	owned := "no grooving or parting tool is owned"
	if !math.IsInf(narrowest, 1) {
		owned = fmt.Sprintf("the narrowest grooving tool owned is %.2f wide", narrowest)
	}
	return fmt.Sprintf("%s: its bottom is %.2f wide and %.2f deep; %s, and the shank of a knife tool does not go into it: add a grooving tool at most %.2f wide that reaches %.2f, or a form tool, chamfer with angle = %s",
		v.f.Name, v.right-v.left, v.top-v.bottom, owned, v.right-v.left, c.besideGroove(v.f)-v.bottom, units.Decimal(v.flankDeg, 3))
}
