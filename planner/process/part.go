package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// widestPart is the widest work that is parted on a small lathe; beyond it is sawn (rule C-31).
const widestPart = 40.0

// partedBeside is how far beside the cut the bar's diameter counts for the speed, in mm.
const partedBeside = 1.0

// longestParted is the longest piece, in diameters of its stock, that is parted off: with no centre to carry it a longer one whips (rule B-28), and is sawn with
// the spindle stopped.
const longestParted = 4.5

// Separation says how a part will leave its bar: by which tool, how wide the cut is and what is left on the face.
func Separation(shop *partspec.Workshop, part *partspec.Part, radiusMM, boreMM float64) (width, spare float64, sawn bool) {
	tooLong := float64(part.Length.Mid()) > longestParted*float64(part.Stock.Outside.Value)
	if t, ok := partingTool(shop, part, radiusMM, boreMM); ok && !tooLong {
		return float64(t.Width), 0.4, false
	}
	for _, t := range shop.Tools {
		if t.Kind == partspec.Saw {
			return math.Max(float64(t.Kerf), 1), 1.5, true
		}
	}
	return 1.5, 1.5, true
}

// partingTool finds a blade that reaches through the wall beside the bar, which has its own diameter still.
func partingTool(shop *partspec.Workshop, part *partspec.Part, radiusMM, boreMM float64) (partspec.Tool, bool) {
	bar, into := float64(part.Stock.EnvelopeDiameter())/2, math.Max(0, boreMM-clearance)
	for _, t := range shop.Tools {
		if t.Kind == partspec.Parting && float64(t.Reach) >= math.Max(radiusMM-boreMM+clearance, bar-into) && 2*radiusMM <= widestPart {
			return t, true
		}
	}
	return partspec.Tool{}, false
}

// heldBlock is the block at the bar's end.
func (c *Context) heldBlock() shape.Block {
	if c.Place.Held() == partspec.Left {
		return c.Blocks[0]
	}
	return c.Blocks[len(c.Blocks)-1]
}

// heldBore is the radius of the hole that the parting cut breaks into, 0 in solid metal.
func (c *Context) heldBore() float64 {
	r := float64(c.Part.Stock.Inside.Value) / 2
	for _, h := range c.Holes {
		if h.Through {
			r = math.Max(r, h.Radius)
		}
	}
	return r
}

// partRadius is the radius that a parting tool meets: the held block's when it is turned before, else the stock's.
func (c *Context) partRadius() float64 {
	i := 0
	if c.Place.Held() == partspec.Right {
		i = len(c.Blocks) - 1
	}
	if c.openTo(i, c.Place.Free) {
		return c.Blocks[i].Greatest
	}
	return c.stockRadius()
}

func (c *Context) partOff() Task {
	end, side := c.Place.BarEnd(c.Length), c.Place.BarSide(c.Length)
	keep := shape.Stretch{Z0: end, Z1: far}
	if c.Place.Held() == partspec.Right {
		keep = shape.Stretch{Z0: -far, Z1: end}
	}
	t := Task{Op: shape.Op{ID: "part_off", Feature: "part", Process: plan.PartOff, Stage: shape.Finishing, Z0: math.Min(end, side), Z1: math.Max(end, side), Keep: &keep, Depth: c.heldBlock().Greatest}}
	radius := c.partRadius()
	if tool, ok := partingTool(c.Shop, c.Part, radius, c.heldBore()); ok && !c.Place.ByHand {
		rate := c.rate(cutPart, 2*radius, tool)
		w := Way{End: c.Place.Free, Tool: tool, Ordinary: true, Rate: rate, ForceAt: c.stockRadius(), Span: [2]float64{t.Z0, t.Z1}} // the bar, where it is parted before it is turned
		w.Minutes = cutMinutes(radius-c.heldBore(), 1, rate) + minutesEdge
		w.ForceN = c.force(float64(tool.Width), rate.FeedMM)
		w.Write = func(j Job) (plan.Operation, Done) { return c.writePart(t, w, j) }
		t.Ways = []Way{w}
		return t
	}
	t.ID, t.Process = "saw_off", plan.SawOff
	for _, tool := range c.tools(partspec.Saw) {
		w := Way{End: c.Place.Free, Tool: tool, Ordinary: true, ForceAt: radius, Minutes: minutesSaw, Span: [2]float64{t.Z0, t.Z1}}
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeSaw(t, w, j) }
		t.Ways = append(t.Ways, w)
	}
	return t.orLacking(fmt.Sprintf("no parting tool owned reaches through %.1f mm and no saw is owned: the part cannot leave its bar", radius-c.heldBore()))
}

func (c *Context) writePart(t Task, w Way, j Job) (plan.Operation, Done) {
	// The blade stands to within a graduation of the saddle of its place, and may meet the whole bar there.
	w.Rate.diameter = 2 * j.Before.Outer.Greatest(t.Z0-partedBeside, t.Z1+partedBeside)
	p := c.page(j, t, w, "Part off")
	r := p.touch(t.Z0, t.Z1)
	p.crossZero(2*r, false, "touch the outside there, "+p.diameter(r))
	p.saddleZero()
	// The blade's headstock-side corner stands on the bar's side of the cut.
	s, reached := p.saddle(c.Place.BarSide(c.Length))
	bottom := math.Max(0, j.Before.Inner.Least(t.Z0, t.Z1)-clearance)
	if c.heldBore() == 0 {
		bottom = -pastMiddle
	}
	marks, _ := p.cross(bottom)
	p.cut("part", at(-1, s), at(marks, s), nil)
	p.line("blade at", "saddle", s, "the blade's headstock side", "", false)
	p.line("to", "cross", marks, "through", "", false)
	end := reached - p.toChuck()*float64(w.Tool.Width)
	if c.Place.Held() == partspec.Left {
		p.done.Keep = &[2]float64{end, far}
	} else {
		p.done.Keep = &[2]float64{-far, end}
	}
	p.note("Saddle locked, steady feed, never stop with the blade in the cut; let the piece fall on a rod or a tray.")
	p.why("everything that can be reached from this end is finished and measured", "A-17")
	p.why(fmt.Sprintf("%.1f is left for facing", c.Place.Spare), "A-17n")
	return p.finish()
}

// pastMiddle is how far a parting blade goes on past the axis: what it was touched on may be larger by its limits. Ours, no source.
const pastMiddle = 0.1

func (c *Context) writeSaw(t Task, w Way, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, "Saw off")
	p.saddleZero()
	end := c.Place.BarEnd(c.Length)
	low, high := end-sawWander, end+sawWander
	s, _ := p.saddle(c.Place.BarSide(c.Length))
	p.cut("saw", []plan.Reading{{Dial: "saddle", Graduations: s}}, []plan.Reading{{Dial: "saddle", Graduations: s}}, &plan.Measured{What: "position", LowMM: low, HighMM: high})
	p.done.Keep = keepFrom(c.Place.Held(), end)
	p.note("Spindle stopped, belt slack or gears out: scribe a line %s from nought with a tool point, and saw on the waste side.", p.both(math.Abs(end-j.DatumZ), "saddle"))
	p.why(fmt.Sprintf("wider than a small lathe parts (%.0f mm), or no blade reaches", widestPart), "C-31")
	p.why(fmt.Sprintf("%.1f is left for facing", c.Place.Spare), "A-17n")
	return p.finish()
}

// sawWander is how far a hand saw strays from its line. Common practice, no source.
const sawWander = 0.3
