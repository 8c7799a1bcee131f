package replay

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// cutter is a tool of the workshop, with the size taken from its set.
type cutter struct {
	partspec.Tool
	size float64 // diameter of a tool that is one of a set
}

// shankWidth is how far a turning or boring tool reaches along the axis from its point. Common practice on small lathes, no source.
const shankWidth = 10.0

// countersinkDeg is the included angle of a countersink that does not give its own: that of metric countersunk heads (ISO 10642, from memory).
const countersinkDeg = 90.0

// cutterFor finds the tool of a cut: its own where it names one, else the operation's.
func (w *walk) cutterFor(op plan.Operation, cut plan.Cut) (cutter, error) {
	id, size := op.Tool.ID, op.Tool.SizeMM
	if cut.ToolID != "" {
		id, size = cut.ToolID, 0
	}
	if cut.ToolSizeMM > 0 {
		size = cut.ToolSizeMM
	}
	return findCutter(w.job.Workshop, id, size)
}

func findCutter(shop *partspec.Workshop, id string, size float64) (cutter, error) {
	for _, t := range shop.Tools {
		if t.ID() != id {
			continue
		}
		c := cutter{t, size}
		if !c.sized() {
			c.size = 0
			return c, nil
		}
		for _, s := range t.Sizes {
			if math.Abs(float64(s)-size) <= same {
				c.size = float64(s)
				return c, nil
			}
		}
		return cutter{}, fmt.Errorf("the workshop's %s has no size Ø%s", t.Name, mm(size))
	}
	return cutter{}, fmt.Errorf("the workshop has no tool %q", id)
}

// set reports whether the tool is one of a set of sizes that cut on the axis.
func (c cutter) set() bool {
	return c.Kind == partspec.CentreDrill || c.Kind == partspec.Drills || c.Kind == partspec.Reamers
}

// sized reports whether the tool is one of a set of diameters.
func (c cutter) sized() bool {
	switch c.Kind {
	case partspec.EndMill, partspec.BallNose, partspec.HoleSaw, partspec.Counterbores, partspec.Countersink:
		return true
	}
	return c.set()
}

// ball reports whether the tool's end is half a sphere.
func (c cutter) ball() bool { return c.Kind == partspec.BallNose }

// inside reports whether the tool cuts away from the axis. A chamfer tool does either; its cross dial tells.
func (c cutter) inside(outward bool) bool {
	switch c.Kind {
	case partspec.Boring, partspec.RecessTool:
		return true
	case partspec.ChamferTool, partspec.RoundNose:
		return outward
	}
	return false
}

// edge is the tool's cutting edge about its point; free is the side of the free end.
func (c cutter) edge(free solid.Side) (solid.Edge, bool) {
	switch c.Kind {
	case partspec.Turning, partspec.Boring:
		body := free // leads with its headstock side
		if c.Hand == "left" {
			body = -free
		}
		return solid.NoseEdge(float64(c.NoseRadius), plan.TrailDeg, shankWidth, body), true
	case partspec.Grooving, partspec.Parting, partspec.RecessTool:
		return solid.BladeEdge(float64(c.Width), float64(c.NoseRadius), free), true
	case partspec.RoundNose:
		return solid.RoundEdge(float64(c.Radius)), true
	case partspec.ChamferTool:
		return solid.VeeEdge(float64(c.Angle), plan.FormReachMM), true
	}
	return solid.Edge{}, false
}

// pointDeg is the included angle of an axial tool's end, 180 for a flat one.
func (c cutter) pointDeg() float64 {
	switch c.Kind {
	case partspec.Drills:
		return plan.DrillPointDeg
	case partspec.CentreDrill:
		return plan.CentreDrillDeg
	case partspec.Countersink:
		if c.Angle > 0 {
			return float64(c.Angle)
		}
		return countersinkDeg
	}
	return 180
}

// width is the tool's extent along the axis, and on which sides of its point: from is towards the headstock.
func (c cutter) width() (headstock, freeEnd float64) {
	switch c.Kind {
	case partspec.Turning:
		if c.Hand == "left" {
			return shankWidth, 0
		}
		return 0, shankWidth
	case partspec.Boring:
		return 0, shankWidth
	case partspec.Grooving, partspec.Parting, partspec.RecessTool:
		return 0, float64(c.Width)
	case partspec.RoundNose:
		return float64(c.Radius), float64(c.Radius)
	case partspec.ChamferTool:
		return plan.FormReachMM, plan.FormReachMM
	}
	return 0, 0
}
