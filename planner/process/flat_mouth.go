package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/numbers/thread"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// followed is a bore of a flat part as a tool sees it that stands in it, whatever made it: a countersink or a tap finds its place by the hole itself.
// What is done there is told by the name of its own feature.
func (c *Context) followed(b *partspec.Bore, as partspec.FeatureHead, from partspec.End) spotted {
	h := asHoles(b)
	h.FeatureHead, h.From = as, from
	return spotted{Holes: h, by: partspec.LocatePunch, inHole: true, from: []partspec.End{from}, columns: []column{{0, c.Length}}, drillMM: float64(b.Diameter.Mid())}
}

// boreNamed is a bore of the part, with its centre.
func (c *Context) boreNamed(name string) (b *partspec.Bore, x, y float64) {
	b = c.Part.Feature(name).(*partspec.Bore)
	return b, float64(b.At.X.Value), float64(b.At.Y.Value)
}

// onSpindle are the ways of a task of turned work, as made for a place of a flat part that runs on the lathe's axis.
func (c *Context) onSpindle(t Task, x, y float64) []Way {
	none := func(shape.Op) *shape.FlatCut { return nil }
	return c.aboutPlace(t, x, y, none, func(Done) *shape.FlatCut { return nil }).Ways
}

// flatChamfer makes the task of breaking the mouth of a bore: by a countersink that stands in it, or on the lathe while it runs true there. Its cone is left out of
// the shape: it weakens nothing, and nothing is held by it.
func (c *Context) flatChamfer(f *partspec.Chamfer) Task {
	b, x, y := c.boreNamed(f.Edge.Feature)
	z, size := float64(f.Edge.Z), float64(f.Size.Mid())
	wide := size * math.Tan(f.Angle.Radians())
	end := f.Edge.End
	low, high := ordered(z, z+into(end)*size)
	t := Task{Op: shape.Op{ID: f.ID() + "/chamfer", Feature: f.Name, Process: plan.Chamfer, Stage: shape.Finishing, Inside: true, End: end, Z0: low, Z1: high,
		Makes: []string{f.Name}, Tight: float64(f.Size.Width()), Depth: wide, Spots: []shape.Spot{{X: x, Y: y, Radius: float64(f.Edge.R) + wide}}}}
	s := c.followed(b, f.FeatureHead, end)
	s.Sink = sinkOf(f, b)
	t.Ways = c.coneWays(s, t, plan.Countersink)
	if c.Lathe.Kind != "" {
		sub := c.centred(x, y)
		t.Ways = append(t.Ways, c.onSpindle(Task{Op: t.Op, Ways: sub.chamfer(f).Ways}, x, y)...)
	}
	return t.orLacking(fmt.Sprintf("%s: no countersink of %.0f degrees, Ø%.1f or larger, is owned, and no chamfer tool of %s nor a boring tool for a lathe", f.Name, 2*float64(f.Angle), 2*(float64(f.Edge.R)+wide), f.Angle))
}

// sinkOf is a chamfer as the countersink that cuts it: its diameter at the face, with the limits that the chamfer's size leaves it.
func sinkOf(f *partspec.Chamfer, b *partspec.Bore) *partspec.Sink {
	tan := units.Length(math.Tan(f.Angle.Radians()))
	d := b.Diameter.Value
	s := partspec.Size{Dimension: units.Dimension{Value: (d + 2*f.Size.Value*tan).Round(mouthDecimals), InInches: f.Size.InInches}, Low: d + 2*f.Size.Low*tan, High: d + 2*f.Size.High*tan, Basis: f.Size.Basis}
	return &partspec.Sink{Diameter: s, Angle: 2 * f.Angle}
}

// mouthDecimals is how finely the diameter of a cone's mouth is told: a hundredth of a micrometre is far below anything that is measured.
const mouthDecimals = 5

// flatThread makes the task of cutting the thread in a bore: with taps that are owned, or from the lead screw while the bore runs true on the lathe.
func (c *Context) flatThread(f *partspec.Thread) Task {
	_, x, y := c.boreNamed(f.On)
	t := Task{Op: shape.Op{ID: f.ID() + "/thread", Feature: f.Name, Process: plan.Thread, Stage: shape.Finishing, Inside: true, End: f.From, Z0: float64(f.Span.Left), Z1: float64(f.Span.Right),
		Makes: []string{f.Name}, Tight: c.threadTight(f), Depth: threadDepth(f), Spots: []shape.Spot{{X: x, Y: y, Radius: float64(f.Thread.Major) / 2}}}}
	ways, lack := c.tapsInto(f, t)
	t.Ways = ways
	if c.Lathe.Kind == "" {
		return t.orLacking(lack)
	}
	sub := c.centred(x, y)
	if room, need := sub.runOut(f); room < need {
		return t.orLacking(fmt.Sprintf("%s; %s: %.2f mm are left beyond the full thread, a single-point tool needs %.2f: shorten the thread, or bore deeper", lack, f.Name, room, need))
	}
	cut, why := sub.singlePoint(f, t)
	t.Ways = append(t.Ways, c.onSpindle(Task{Op: t.Op, Ways: cut}, x, y)...)
	return t.orLacking(lack + "; " + why)
}

// tapsInto lists the ways to tap a bore: under a spindle, or by hand at the bench; why there is none.
func (c *Context) tapsInto(f *partspec.Thread, t Task) (ways []Way, why string) {
	b, _, _ := c.boreNamed(f.On)
	if _, ok := c.taps(f.Thread); !ok || f.LeftHand {
		return nil, fmt.Sprintf("%s: no taps for %s are owned (tool \"taps\" { threads = [...] })", f.Name, f.Thread.Designation)
	}
	s := c.followed(b, f.FeatureHead, f.From)
	s.Thread = f
	face := c.endZ(f.From)
	far := math.Max(math.Abs(float64(f.Span.Left)-face), math.Abs(float64(f.Span.Right)-face))
	s.depth = float64(b.Depth.Mid())
	s.Through = far >= c.Length-sizeNoise
	deep := far
	if s.Through {
		deep += tapLead * float64(f.Thread.Pitch)
	} else if !b.Through {
		need, err := thread.BlindDepth(f.Thread, b.Diameter.Value, units.Length(far), thread.LeadPlug, true)
		if c.Rules.Has("A-29") && err == nil && s.depth < float64(need.Depth)-sizeNoise {
			return nil, fmt.Sprintf("%s: %s deep is too little for a plug tap, which needs %s (rule A-29)", f.On, b.Depth.Mid().Text(c.unit()), need.Depth.Text(c.unit()))
		}
	}
	return c.tapWays(s, t, deep), ""
}
