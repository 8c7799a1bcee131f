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

func (c *Context) writeDrill(h shape.Hole, t Task, w Way, steps []float64, tip float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Drill %s, %s mm", h.Name, units.Decimal(w.SizeMM, 3)))
	face := c.endZ(w.End)
	p.op.Zeros = append(p.op.Zeros, plan.Zero{Dial: "tailstock", ReferenceMM: face, How: "the drill's point just touches the face"})
	if c.Rules.Has("A-02") && c.startRadius(h) == 0 {
		p.spot(steps[0])
	}
	for _, s := range steps {
		at := tip
		if !h.Through && s < w.SizeMM {
			// A smaller drill's point is shorter: its full diameter stops where the last one's does, or short of the floor.
			at = tip - into(w.End)*(w.SizeMM-s)/2/math.Tan(units.Angle(plan.DrillPointDeg/2).Radians())
		}
		name := units.Decimal(s, 3) + " mm drill"
		marks, _ := p.tailstock(at, h.Through)
		tool, size, _ := c.sized(partspec.Drills, s, s)
		p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: name, From: tailAt(0), To: tailAt(marks), ToolSizeMM: size, ToolID: tool.ID()})
		p.line(name, "tailstock", marks, "point "+p.both(float64(marks)*float64(p.dial("tailstock").Graduation.Value), "tailstock")+" deep", p.drillSpeed(s), false)
		reached := face + into(w.End)*float64(marks)*float64(p.dial("tailstock").Graduation.Value)
		p.done.Inner = solid.Upper(solid.Drill(reached, s, plan.DrillPointDeg, shank(w.End)), p.done.Inner)
	}
	if n := pecks(math.Abs(tip-face), w.SizeMM); n > 0 && c.Rules.Has("C-05") {
		p.note("Clear the chips at 3 drill diameters, then at every further diameter.")
		p.why("deep for its diameter", "C-05")
	}
	if len(steps) > 1 {
		p.why("the web of a large drill only pushes: smaller ones go first", "A-25")
	}
	p.why("drawn depths are of the full diameter; the point needs 0.3 diameters more", "C-30")
	if t.Stage == shape.Finishing {
		p.op.Checks = append(p.op.Checks, c.check(h.Name+", diameter", h.Name, h.Diameter, insideCheck))
	}
	return p.finish()
}

// drillSpeed is the speed of one drill of the chain that the operation drills with, under the same caps.
func (p *page) drillSpeed(d float64) string {
	r := p.rate
	r.diameter = d
	return fmt.Sprintf("%s rev/min", units.Decimal(p.c.capped(r, p.j.Caps...).RPM, 0))
}

// spot starts the hole with a centre drill, no wider than the first drill.
func (p *page) spot(first float64) {
	for _, tool := range p.c.tools(partspec.CentreDrill) {
		for _, s := range tool.Sizes {
			d := math.Min(float64(s), first)
			depth := d / 2 / math.Tan(units.Angle(plan.CentreDrillDeg/2).Radians())
			marks := p.whole(depth / float64(p.dial("tailstock").Graduation.Value))
			p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: "spot", From: tailAt(0), To: tailAt(marks), ToolSizeMM: float64(s), ToolID: tool.ID()})
			p.line("spot", "tailstock", marks, "a centre for the drill", "", false)
			p.why("a long drill bends at the start; the spot holds it true", "A-02")
			return
		}
	}
}

func tailAt(marks int64) []plan.Reading {
	return []plan.Reading{{Dial: "tailstock", Graduations: marks}}
}

// tailstock gives the count for a depth from the face; a through hole is drilled at least as far, a blind one no further.
func (p *page) tailstock(z float64, through bool) (int64, float64) {
	g := float64(p.dial("tailstock").Graduation.Value)
	travel := (z - p.zero("tailstock").ReferenceMM) * p.toChuck() / g
	marks := p.whole(travel)
	if through && float64(marks) < travel-markNoise {
		marks++
	}
	return marks, p.zero("tailstock").ReferenceMM + p.toChuck()*float64(marks)*g
}
