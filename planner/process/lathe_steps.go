package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/numbers/steps"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// fileStepDepth is the mean depth of a step that is plunged, for its time.
const fileStepDepth = 1.0

// steppers are the tools that step an outside curve: a round nose or a blade is plunged, a knife is fed along.
func (c *Context) steppers() []partspec.Tool {
	tools := append(c.tools(partspec.RoundNose), c.tools(partspec.Grooving)...)
	for _, t := range c.tools(partspec.Turning) {
		if t.Hand != "left" {
			tools = append(tools, t)
		}
	}
	return tools
}

func bladeWidth(t partspec.Tool) float64 {
	if t.Kind == partspec.RoundNose {
		return 2 * float64(t.Radius)
	}
	return float64(t.Width)
}

// stepWay is the way to step a curve with a tool from an end, or why there is none. The step table counts from so much above the block's largest radius.
func (c *Context) stepWay(b shape.Block, f *partspec.Profile, t Task, tool partspec.Tool, e partspec.End, above float64) (Way, error) {
	if tool.Kind == partspec.Turning {
		if err := c.knifeClear(b, f, e); err != nil {
			return Way{}, err
		}
	}
	table, r, err := c.stepTable(b, f, tool, e, above, c.lower(b))
	if err != nil {
		return Way{}, err
	}
	deep := c.stockRadius() - b.Greatest + deepest(table) // a neighbour may still have the stock's diameter
	if tool.Kind != partspec.Turning && float64(tool.Reach) < deep {
		return Way{}, fmt.Errorf("it reaches %.1f deep, the steps go %.1f below the stock", float64(tool.Reach), deep)
	}
	w := Way{End: e, Tool: tool, Ordinary: true, ForceAt: b.Greatest, Span: c.stepSpan(b, table, r, e)}
	if tool.Kind == partspec.Turning {
		c.fedAlong(&w, b, table, t)
	} else {
		w.Rate = c.rate(cutGroove, 2*b.Greatest, tool)
		w.Minutes = float64(len(table.Cuts)) * (minutesAPass + fileStepDepth/(w.Rate.FeedMM*w.Rate.RPM))
		w.ForceN = c.force(bladeWidth(tool), w.Rate.FeedMM)
	}
	return w, nil
}

// roughed is how far above its largest radius roughing leaves a block: what it aims at, with metal on to a graduation of the cross dial set on the stock.
func (c *Context) roughed(b shape.Block) float64 {
	excess := c.stockRadius() - b.Greatest
	if excess <= leaveRadius {
		return excess
	}
	cross, _ := c.Lathe.Dial("cross")
	g := radial(cross)
	return excess - g*math.Floor((excess-leaveRadius)/g+markNoise)
}

// stepSpan is where a tool goes that steps a block: it may hang over an end of it, with its outermost cut as near to the end as leaves no more than allowed. The
// table is made anew from the size that roughing has reached, and that cut may then lie a graduation farther out.
func (c *Context) stepSpan(b shape.Block, t steps.Table, r steps.Request, e partspec.End) [2]float64 {
	if len(t.Cuts) == 0 {
		return [2]float64{b.Z0, b.Z1}
	}
	over := cutterHalf(r.Cutter) + r.Across.GraduationMM
	near, far := t.Cuts[0].AcrossMM-over, t.Cuts[len(t.Cuts)-1].AcrossMM+over
	if e == partspec.Right {
		near, far = c.Length-near, c.Length-far
	}
	return [2]float64{min(b.Z0, near, far), max(b.Z1, near, far)}
}

// cutterHalf is half the width of a cutter.
func cutterHalf(c steps.Cutter) float64 { return max(c.RadiusMM, c.WidthMM/2) }

// stepTable works the steps out in the frame of the slides: across is the distance from the datum end towards the headstock, depth is what the tool has gone in
// below the block's largest radius; the cross dial's nought lies above it. Where the tool hangs over a neighbour that stands lower, and would cut it, it stays off it.
func (c *Context) stepTable(b shape.Block, f *partspec.Profile, tool partspec.Tool, e partspec.End, above float64, stands beyond) (steps.Table, steps.Request, error) {
	r := c.stepRequest(b, f, tool, e, above, stands)
	key := fmt.Sprintf("%s %s %v %g %v %g", f.Name, tool.ID(), e, above, stands, f.Segments[0].Z0)
	table, err := c.Memo.fewest(key, r)
	if err == nil && c.staysOff(b, table, &r, e) {
		table, err = c.Memo.fewest(key+" off", r)
	}
	if err == nil {
		err = c.cornersFit(r, c.stepCurve(b, f, e))
	}
	return cutting(table), r, err
}

func (c *Context) stepRequest(b shape.Block, f *partspec.Profile, tool partspec.Tool, e partspec.End, above float64, stands beyond) steps.Request {
	saddle, _ := c.Lathe.Dial("saddle")
	cross, _ := c.Lathe.Dial("cross")
	r := steps.Request{Curve: c.stepCurve(b, f, e), Cutter: latheCutter(b, tool), LeftoverMM: c.fileLeft(),
		Across: steps.Axis{GraduationMM: float64(saddle.Graduation.Value), Reads: steps.ReadsTravel},
		Depth:  steps.Axis{GraduationMM: float64(cross.Graduation.Value), Reads: steps.ReadsTravel, OriginMM: -above}}
	if cross.Reads == partspec.ReadsDiameter {
		r.Depth.Reads = steps.ReadsDiameter
	}
	if stands[e] && tool.Kind != partspec.Turning { // a knife comes from there
		r.Curve.Segments = slices.Insert(r.Curve.Segments, 0, steps.Segment(goesOn(stepPiece(r.Curve.Segments[0]), false)))
	}
	if stands[e.Other()] {
		r.Curve.Segments = append(r.Curve.Segments, goesOn(stepPiece(r.Curve.Segments[len(r.Curve.Segments)-1]), true))
	}
	r.Across.OriginMM = -cutterHalf(r.Cutter) // the saddle is read at the headstock side of blade, nose or knife
	return r
}

// beyond tells at which ends of a block, by partspec.End, metal stands past it that is to go, no more than to the block's own end: steps go on over it, so that no sliver is
// left between the block and its neighbour.
type beyond [partspec.Right + 1]bool

// lower is where the neighbours of a block, as drawn, stand no higher than its ends.
func (c *Context) lower(b shape.Block) beyond {
	var at beyond
	for _, e := range ends() {
		_, ok := c.beside(b, e)
		at[e] = ok && c.beyond(b, e) != steps.Wall
	}
	return at
}

// besideNow is where, of those, metal does stand, or may: a face on the headstock's side that was turned already, from the other end, lies off by what the length may be.
func (c *Context) besideNow(b shape.Block, j Job) beyond {
	at := c.lower(b)
	left, right := j.Before.Outer.Greatest(b.Z0-runOn, b.Z0), j.Before.Outer.Greatest(b.Z1, b.Z1+runOn)
	at[partspec.Left] = at[partspec.Left] && (j.Free == partspec.Right || left > endRadius(b, partspec.Left)+sizeNoise)
	at[partspec.Right] = at[partspec.Right] && (j.Free == partspec.Left || right > endRadius(b, partspec.Right)+sizeNoise)
	return at
}

// runOn is how far steps go on past a block's end where a neighbour follows that may be turned from the other end: its shoulder lies where that end's face and the
// saddle's marks put it, and between there and the last step no sliver may stand. A wider one than the limits of lengths let come about. Ours, no source.
const runOn = 0.5

// goesOn is the level stretch by which steps go on past an end of a curve.
func goesOn(end plan.StepPiece, after bool) steps.Line {
	if after {
		return steps.Line{FromAcrossMM: end.ToAcrossMM, FromDepthMM: end.ToDepthMM, ToAcrossMM: end.ToAcrossMM + runOn, ToDepthMM: end.ToDepthMM}
	}
	return steps.Line{FromAcrossMM: end.FromAcrossMM - runOn, FromDepthMM: end.FromDepthMM, ToAcrossMM: end.FromAcrossMM, ToDepthMM: end.FromDepthMM}
}

// cornersFit says whether a tool's nose is too round for a corner between the curve as drawn and a finished neighbour level with its end: what stays in it lies beside
// the curve, and is not filed.
func (c *Context) cornersFit(r steps.Request, drawn steps.Curve) error {
	nose, most := max(r.Cutter.RadiusMM, r.Cutter.CornerRadiusMM), float64(c.Part.InnerCorner)
	first, last := stepPiece(drawn.Segments[0]), stepPiece(drawn.Segments[len(drawn.Segments)-1])
	tucked := r.Curve.Left == steps.Level && rises(first, false) || r.Curve.Right == steps.Level && rises(last, true)
	if tucked && nose > most+sizeNoise {
		return fmt.Errorf("its nose of %g would stay in the corner at the foot of the curve; %g may (inner_corner)", nose, most)
	}
	return nil
}

// rises reports whether a piece of a curve stands up from its end, so that it makes a corner with what is level with that end.
func rises(p plan.StepPiece, atEnd bool) bool {
	const look = 0.01 // of its length
	across, depth := p.FromAcrossMM+look*(p.ToAcrossMM-p.FromAcrossMM), p.FromDepthMM
	if atEnd {
		across, depth = p.ToAcrossMM-look*(p.ToAcrossMM-p.FromAcrossMM), p.ToDepthMM
	}
	return depth-pieceDepth(p, across) > look*(p.ToAcrossMM-p.FromAcrossMM)*cornerSlope
}

// cornerSlope is the slope from which on a curve makes a corner with a level neighbour, not a tangent. Ours, no source: about 3 degrees.
const cornerSlope = 0.05

// latheCutter is a lathe tool as a step table knows it. A knife that is fed along from off the end clears what a blade would that reaches from its nose past that end.
func latheCutter(b shape.Block, t partspec.Tool) steps.Cutter {
	switch t.Kind {
	case partspec.RoundNose:
		return steps.Cutter{Kind: steps.RoundNose, RadiusMM: float64(t.Radius)}
	case partspec.Turning:
		return steps.Cutter{Kind: steps.SquareEnd, WidthMM: math.Ceil(b.Z1-b.Z0) + 2*float64(t.NoseRadius) + knifeBeyond, CornerRadiusMM: float64(t.NoseRadius)}
	}
	return steps.Cutter{Kind: steps.SquareEnd, WidthMM: float64(t.Width), CornerRadiusMM: float64(t.NoseRadius)}
}

// deepest is how far the deepest step goes below the largest radius of the block.
func deepest(t steps.Table) float64 {
	deep := 0.0
	for _, cut := range t.Cuts {
		deep = max(deep, cut.DepthMM)
	}
	return deep
}

// stepCurve turns the profile into across and depth.
func (c *Context) stepCurve(b shape.Block, f *partspec.Profile, e partspec.End) steps.Curve {
	across := func(z units.Length) float64 { return float64(z) } // a centre may lie past the end
	if e == partspec.Right {
		across = func(z units.Length) float64 { return c.Length - float64(z) }
	}
	depth := func(r units.Length) float64 { return b.Greatest - float64(r) }
	curve := steps.Curve{Left: c.beyond(b, e), Right: c.beyond(b, e.Other())}
	for _, s := range f.Segments {
		a0, d0, a1, d1 := across(s.Z0), depth(s.R0), across(s.Z1), depth(s.R1)
		if a1 < a0 {
			a0, d0, a1, d1 = a1, d1, a0, d0
		}
		if !s.Arc {
			curve.Segments = append(curve.Segments, steps.Line{FromAcrossMM: a0, FromDepthMM: d0, ToAcrossMM: a1, ToDepthMM: d1})
			continue
		}
		// Taking places from the end may round a quarter's end out of its circle.
		radius := math.Max(float64(s.Radius), math.Max(math.Abs(a0-across(s.CentreZ)), math.Abs(a1-across(s.CentreZ))))
		form := steps.Hollow
		if s.Convex {
			form = steps.Round
		}
		curve.Segments = append(curve.Segments, steps.Arc{CentreAcrossMM: across(s.CentreZ), CentreDepthMM: depth(s.CentreR), RadiusMM: radius, FromAcrossMM: a0, ToAcrossMM: a1, Form: form})
	}
	if e == partspec.Right {
		for i, j := 0, len(curve.Segments)-1; i < j; i, j = i+1, j-1 {
			curve.Segments[i], curve.Segments[j] = curve.Segments[j], curve.Segments[i]
		}
	}
	return curve
}

// beyond says what stands past one end of a block.
func (c *Context) beyond(b shape.Block, e partspec.End) steps.Beyond {
	at := b.Z0
	if e == partspec.Right {
		at = b.Z1
	}
	for _, other := range c.Blocks {
		if other.Z0 < at-sizeNoise && other.Z1 > at+sizeNoise { // a round on the edge of a block runs out into it
			return steps.Level
		}
		beside := e == partspec.Left && near(other.Z1, b.Z0) || e == partspec.Right && near(other.Z0, b.Z1)
		if !beside {
			continue
		}
		switch edge := endRadius(b, e); {
		case other.Greatest > edge+sizeNoise:
			return steps.Wall
		case other.Greatest > edge-sizeNoise:
			return steps.Level
		}
		return steps.Air
	}
	return steps.Air
}

// endRadius is the radius of a block at its very end.
func endRadius(b shape.Block, e partspec.End) float64 {
	if e == partspec.Right {
		r, _ := b.Curve.At(b.Z1)
		return r
	}
	_, r := b.Curve.At(b.Z0)
	return r
}

// staysOff puts level faces beside the curve where a neighbour stands lower than its end and a cut of the table, hanging over it, would cut it; it reports whether it has.
func (c *Context) staysOff(b shape.Block, t steps.Table, r *steps.Request, e partspec.End) bool {
	changed := false
	for _, side := range ends() {
		other, ok := c.beside(b, side)
		face, out, across := &r.Curve.Left, -1.0, stepPiece(r.Curve.Segments[0]).FromAcrossMM
		if side != e {
			face, out, across = &r.Curve.Right, 1, stepPiece(r.Curve.Segments[len(r.Curve.Segments)-1]).ToAcrossMM
		}
		cuts := func(cut steps.Cut) bool {
			return overhang(cut, r.Cutter, across, out) > b.Greatest-other.Greatest+sizeNoise
		}
		if ok && *face == steps.Air && slices.ContainsFunc(t.Cuts, cuts) {
			*face, changed = steps.Level, true
		}
	}
	return changed
}

// overhang is how deep a cut goes past a place across, to the side that out points to: minus infinity where it does not reach it.
func overhang(cut steps.Cut, cutter steps.Cutter, across, out float64) float64 {
	nose := max(cutter.RadiusMM, cutter.CornerRadiusMM)
	flat := cutterHalf(cutter) - nose
	switch past := (across - cut.AcrossMM) * out; { // how far the place lies beyond the middle of the cutter
	case past <= flat:
		return cut.DepthMM
	case past < flat+nose:
		return cut.DepthMM - nose + math.Sqrt((nose-past+flat)*(nose+past-flat))
	}
	return math.Inf(-1)
}

// beside is the block that touches another at an end.
func (c *Context) beside(b shape.Block, e partspec.End) (shape.Block, bool) {
	for _, other := range c.Blocks {
		if e == partspec.Left && near(other.Z1, b.Z0) || e == partspec.Right && near(other.Z0, b.Z1) {
			return other, true
		}
	}
	return shape.Block{}, false
}

func (c *Context) writeSteps(b shape.Block, f *partspec.Profile, t Task, w Way, j Job) (plan.Operation, Done) {
	made := j.Before.Outer.Greatest(b.Z0, b.Z1)
	if w.Tool.Kind == partspec.Turning { // it comes over all that lies before the curve
		made = j.Before.Outer.Greatest(min(b.Z0, c.endZ(j.Free)), max(b.Z1, c.endZ(j.Free)))
	}
	table, r, err := c.stepTable(b, f, w.Tool, j.Free, made-b.Greatest, c.besideNow(b, j))
	p := c.page(j, t, w, fmt.Sprintf("Step the curve %s", f.Name))
	if err != nil { // it could be stepped from the size that roughing aims at; the size reached makes it impossible only by a slip of ours
		p.note("The step table cannot be made: %v", err)
		return p.finish()
	}
	p.crossZero(2*made, false, "touch the outside, "+p.diameter(made))
	p.saddleZero()
	table = trimmed(table, p.idle)
	cuts := inOrder(table)
	p.op.Title = fmt.Sprintf("Step the curve %s, %d cuts", f.Name, len(table.Cuts))
	if w.Tool.Kind == partspec.Turning {
		cuts = p.alongCuts(cuts)
	} else {
		p.plungeCuts(cuts)
	}
	p.op.Steps = p.stepData(table, r, cuts, math.Pi*(b.Greatest+b.Least))
	p.why("both dials go one way only", "C-08")
	return p.finish()
}

// plungeCuts writes the steps of a tool that is plunged.
func (p *page) plungeCuts(cuts []numbered) {
	for _, cut := range cuts {
		p.cut(cut.label, at(-1, cut.AcrossGrads), at(cut.DepthGrads, cut.AcrossGrads), nil)
		p.stepLines(cut)
		p.sweeps(p.plunged(), cut.AcrossGrads, cut.AcrossGrads, cut.DepthGrads)
	}
}

// idle reports whether a cut finds no metal on the work as it is before the first: what is turned beside a curve may have run on over its edge.
func (p *page) idle(cut steps.Cut) bool {
	at := solid.Point{Z: p.positionAt(cut.AcrossGrads), R: p.radiusAt(cut.DepthGrads)}
	edge, from := p.plunged(), at
	if p.tool.Kind == partspec.Turning {
		edge, from.Z = p.knife(), p.j.DatumZ-p.toChuck()*clearance
	}
	return !solid.Lost(p.j.Before, p.j.Before.TurnTo(edge.Sweep(from, at)), idleDepth).Any()
}

// idleDepth is less than any cut, and more than places may differ that should agree.
const idleDepth = 100 * solid.Noise

// stepLines are the two lines of a step on the card.
func (p *page) stepLines(cut numbered) {
	floor, note := "", ""
	if cut.first {
		note = "take up backlash first"
	}
	if cut.resume { // the floor of the step can be measured there, if a count was lost
		floor = p.diameter(p.radiusAt(cut.DepthGrads))
	}
	p.line(cut.label, "saddle", cut.AcrossGrads, "", note, false)
	p.line(cut.label, "cross", cut.DepthGrads, floor, "", false)
}
