package process

import (
	"fmt"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// pilotOf is the deeper bore of a flat part that a counterbore stands round; nil when there is none.
func (c *Context) pilotOf(f *partspec.Bore) *partspec.Bore {
	var widest *partspec.Bore
	for _, other := range c.Part.Features {
		b, ok := other.(*partspec.Bore)
		if !ok || b == f || b.At == nil || !nearPlace(*b.At, float64(f.At.X.Value), float64(f.At.Y.Value)) {
			continue
		}
		deeper := b.Through || b.From == f.From && b.Depth.Value > f.Depth.Value
		if deeper && (widest == nil || b.Diameter.Value > widest.Diameter.Value) {
			widest = b
		}
	}
	return widest
}

// SunkLack says why a bore with a flat floor is not counterbored round the hole that is there; empty when it is.
func (c *Context) SunkLack(f *partspec.Bore) string {
	if c.pilotOf(f) == nil {
		return fmt.Sprintf("counterboring %s: no deeper bore at its place leads the tool", f.Name)
	}
	if len(c.sunkBore(f).Ways) == 0 {
		return "counterboring " + c.noSink(f.Name, f.Diameter)
	}
	return ""
}

// sunkBore makes the task of counterboring round the bore that is there: with a piloted tool that follows it, or with an end mill that is set by dials.
func (c *Context) sunkBore(f *partspec.Bore) Task {
	led := c.followed(c.pilotOf(f), f.FeatureHead, f.From)
	led.Sink = &partspec.Sink{Diameter: f.Diameter, Depth: f.Depth}
	set := led
	set.by, set.inHole = partspec.LocateDial, false
	t := c.holesTask(led, "counterbore", plan.Counterbore, float64(f.Diameter.Mid()), float64(f.Depth.Mid()))
	t.ID, t.End, t.Stage, t.Makes = f.ID()+"/counterbore", f.From, shape.Finishing, []string{f.Name}
	t.Tight, t.Depth = min(float64(f.Depth.Width()), float64(f.Diameter.Width())), (float64(f.Diameter.Mid())-led.drillMM)/2
	t.Ways = c.sinkWays(led, t, partspec.Counterbores)
	if c.coordinates() {
		t.Ways = append(t.Ways, c.sinkWays(set, t, partspec.EndMill)...)
	}
	return t
}
