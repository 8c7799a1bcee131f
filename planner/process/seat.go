package process

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/numbers/steps"
	"catchplate/planner/parallel"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// saddle is a seat, as figures.
type saddle struct {
	*partspec.Seat
	side                 *partspec.SideSeat // across the side of round work; nil for one across an end or a face
	radius, depth, axisZ float64
	end                  float64 // place of the face that the depth is counted from; of a side the radius
	middle               float64 // of the pipe's axis, along the dial across it
	low, high            float64 // how far the end's metal reaches from there, by that dial
	from, to             float64 // and along the pipe, by the other dial's places
}

func (c *Context) saddleOf(f *partspec.Seat) saddle {
	s := saddle{Seat: f, radius: float64(f.Radius.Mid()), depth: float64(f.Depth), axisZ: float64(f.AxisZ), end: c.endZ(f.On)}
	if c.Part.Flat() {
		s.layFlat(shape.DrawnRegion(c.Part.Outline))
		return s
	}
	half := math.Max(float64(f.Across)/2, c.endRadius(f.On))
	s.low, s.high, s.from, s.to = -half, half, -half, half
	return s
}

// endRadius is that of the outside at an end.
func (c *Context) endRadius(e partspec.End) float64 {
	z := c.endZ(e)
	for _, b := range c.Blocks {
		if near(b.Z0, z) || near(b.Z1, z) {
			left, right := b.Curve.At(z)
			if math.IsNaN(left) {
				return right
			}
			return left
		}
	}
	return 0
}

// hollow is how deep below the end face the seat lies at a distance from the plane of the pipe's axis.
func (s saddle) hollow(off float64) float64 {
	return math.Sqrt(math.Max(0, s.radius*s.radius-off*off)) - s.radius + s.depth
}

// crownZ is where the crown of the seat lies.
func (s saddle) crownZ() float64 { return s.end + into(s.On)*s.depth }

// under is how deep the seat lies at most within a radius about a place.
func (s saddle) under(x, y, within float64) float64 {
	return math.Max(0, s.hollow(math.Max(0, math.Abs(s.Beside(units.Length(x), units.Length(y)))-within)))
}

// seat makes the tasks of a seat: the line that says which way round, the seat itself (swung, or in steps), and the file.
func (c *Context) seat(f *partspec.Seat) []Task {
	s := c.saddleOf(f)
	if c.Part.Flat() {
		return c.flatSeat(s)
	}
	cut := Task{Op: shape.Op{ID: f.ID() + "/steps", Feature: f.Name, Process: plan.SeatSteps, Stage: shape.Finishing, End: f.On, Makes: []string{f.Name}, Tight: float64(f.Radius.Width()), Depth: s.depth}}
	cut.Z0, cut.Z1 = ordered(s.end, s.crownZ())
	mark := Task{Op: shape.Op{ID: f.ID() + "/mark", Feature: f.Name, Process: plan.MarkOut, Stage: shape.Roughing, End: f.On, Z0: s.end, Z1: s.end}}
	for _, tool := range c.tools(partspec.Scriber) {
		w := Way{Machine: partspec.Bench, End: f.On, Tool: tool, Minutes: minutesMarkOut}
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeSeatMark(s, mark, w, j) }
		mark.Ways = append(mark.Ways, w)
		break
	}
	mark = mark.orLacking(f.Name + ": no scriber is owned to mark which way round the seat lies (tool \"scriber\")")
	if c.Bench.Kind == "" {
		mark.Ways, mark.Lacking = nil, []string{f.Name + ": no bench is owned to mark which way round the seat lies"}
	}
	swing := cut
	swing.ID, swing.Process = f.ID()+"/swing", plan.BoreHead
	swung, whyNot := c.swung(s, swing)
	if len(swung) > 0 {
		swing.Ways = swung
		return []Task{mark, swing}
	}
	if !f.Finish {
		cut.Lacking = append(whyNot, f.Name+`: to have it stepped on the mill and filed instead, write finish_by = "file"`)
		return []Task{mark, cut}
	}
	stepped, lacking := c.steppedSeat(s, cut)
	cut.Ways = stepped
	if len(stepped) == 0 {
		cut.Lacking = append(whyNot, lacking...)
	}
	return []Task{mark, cut, c.fileSeat(s, cut)}
}

func (c *Context) writeSeatMark(s saddle, t Task, w Way, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Scribe the line of the pipe's axis for %s", s.Name))
	p.op.RPM = 0
	p.note("Scribe a line across the %s face through its middle, %.0f degrees from the part's X axis, and down the rim at both ends: it says which way round the part goes from here on.", s.On, float64(s.Angle))
	p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: "the pipe's axis", At: &plan.Place{By: "scribed line", WithinMM: c.markError()}})
	p.why("the line fixes which way round the holes and the seat lie to each other", "A-38")
	return p.finish()
}

// seatSides are the dials of an upright seat: across the pipe's axis, and along it. ok is false where the axis lies along neither slide.
func (s saddle) seatSides() (across, along string, ok bool) {
	const square = 0.01 // degrees, far finer than work is set round
	if s.side != nil {  // the work lies along the table
		return "x", "y", true
	}
	switch turn := math.Mod(math.Mod(float64(s.Angle), 180)+180, 180); {
	case math.Abs(turn-90) < square:
		return "x", "y", true
	case turn < square || turn > 180-square:
		return "y", "x", true
	}
	return "", "", false
}

// leftover is what the steps may leave for the file.
func (c *Context) seatLeft(f *partspec.Seat) float64 {
	if f.Leftover > 0 {
		return float64(f.Leftover)
	}
	return c.fileLeft()
}

// steppedSeat lists the cutters that step a seat, work upright, each with its table.
func (c *Context) steppedSeat(s saddle, t Task) (ways []Way, lacking []string) {
	if !c.coordinates() {
		return nil, []string{s.Name + ": no mill with dials x, y and quill (or z) is owned to step it on"}
	}
	across, _, ok := s.seatSides()
	if !ok {
		return nil, []string{fmt.Sprintf("%s: stepped, the pipe's axis must lie along a slide of the mill; draw it at 0 or 90 degrees and turn the holes instead (it is at %.1f)", s.Name, float64(s.Angle))}
	}
	kinds := []partspec.ToolKind{partspec.BallNose, partspec.EndMill}
	waysOf, lackingOf := make([][]Way, len(kinds)), make([][]string, len(kinds))
	parallel.Each(len(kinds), func(i int) { waysOf[i], lackingOf[i] = c.steppedBy(s, t, kinds[i], across) })
	ways, lacking = slices.Concat(waysOf...), slices.Concat(lackingOf...)
	if len(ways)+len(lacking) == 0 {
		lacking = []string{s.Name + ": no ball nose and no end mill is owned to step it with"}
	}
	return ways, lacking
}

// steppedBy lists those of one kind: the widest that serve.
func (c *Context) steppedBy(s saddle, t Task, kind partspec.ToolKind, across string) (ways []Way, lacking []string) {
	tried := 0
	for _, cutter := range c.widestFirst(kind) {
		if tried == seatCutters {
			break
		}
		if why := c.tallBeside(s, cutter.sizeMM); why != "" {
			lacking = append(lacking, why)
			continue
		}
		r := c.seatRequest(s, kind, cutter.sizeMM, across)
		table, err := c.Memo.fewest(fmt.Sprintf("%s %s %g %g %g %g", s.Name, kind, cutter.sizeMM, r.Across.GraduationMM, r.Depth.GraduationMM, r.MostDepthMM), r)
		if err != nil {
			lacking = append(lacking, fmt.Sprintf("%s by a %s of Ø%.1f: %v", s.Name, toolText(cutter.tool, cutter.sizeMM), cutter.sizeMM, err))
			continue
		}
		tried++
		low, high := c.leastMetal(s)
		table = trimmed(table, func(cut steps.Cut) bool { return idleStep(cut, r.Cutter, low, high) })
		ways = append(ways, c.seatWays(s, t, cutter.tool, cutter.sizeMM, r, table)...)
	}
	return ways, lacking
}

// seatCutters is how many cutters of a kind are tried: the widest that serve need the fewest cuts.
const seatCutters = 2

// cutter is one size of a set of cutters.
type cutter struct {
	tool   partspec.Tool
	sizeMM float64
}

// widestFirst lists the sizes owned of a kind of cutter.
func (c *Context) widestFirst(kind partspec.ToolKind) []cutter {
	var list []cutter
	for _, tool := range c.tools(kind) {
		for _, size := range tool.Sizes {
			list = append(list, cutter{tool, float64(size)})
		}
	}
	slices.SortStableFunc(list, func(a, b cutter) int { return cmp.Compare(b.sizeMM, a.sizeMM) })
	return list
}

// seatRequest is the curve of a seat in the frame of the mill's slides: across from the part's axis, depth from the end face into the metal.
func (c *Context) seatRequest(s saddle, kind partspec.ToolKind, d float64, across string) steps.Request {
	half := float64(s.Across) / 2
	from, to := math.Max(-half, s.low-edgeSpare), math.Min(half, s.high+edgeSpare)
	side, _ := c.Mill.Dial(across)
	down, _ := depthDial(c.Mill)
	axis := func(d partspec.Dial) steps.Axis {
		return steps.Axis{GraduationMM: radial(d), Reads: steps.ReadsTravel}
	}
	r := steps.Request{LeftoverMM: c.seatLeft(s.Seat), Across: axis(side), Depth: axis(down), MostDepthMM: c.lightMill(kind, d), Cutter: steps.Cutter{Kind: steps.SquareEnd, WidthMM: d},
		Curve: steps.Curve{Left: beyondSeat(from, s.low), Right: beyondSeat(-to, -s.high), Segments: []steps.Segment{steps.Arc{CentreDepthMM: s.depth - s.radius, RadiusMM: s.radius, FromAcrossMM: from, ToAcrossMM: to, Form: steps.Hollow}}}}
	if kind == partspec.BallNose {
		r.Cutter = steps.Cutter{Kind: steps.RoundNose, RadiusMM: d / 2}
	}
	return r
}

// edgeSpare is how far past a drawn edge the steps go on: farther than an edge's limits let it stand out. Ours, no source.
const edgeSpare = 0.3

// beyondSeat is what lies beyond an end of the curve where the metal ends at a place: nothing, or the face, which stays.
func beyondSeat(end, metal float64) steps.Beyond {
	if metal < end-sizeNoise {
		return steps.Level
	}
	return steps.Air
}

// leastMetal is how far the part reaches to both sides of the pipe's axis at the least, as far as the seat goes.
func (c *Context) leastMetal(s saddle) (low, high float64) {
	low, high = s.low, s.high
	if c.Part.Flat() || s.side != nil {
		return low, high // its edges are cut to their places, or to the next mark outside; a side has none
	}
	z0, z1 := ordered(s.end, s.crownZ())
	half := float64(s.Across) / 2
	for _, b := range c.Blocks {
		if b.Z0 < z1 && b.Z1 > z0 && b.Cylinder() && !b.AsSupplied {
			half = math.Min(half, float64(b.Diameter.Low)/2)
		}
	}
	return -half, half
}

// idleStep reports whether a step hangs over an edge so far that it may take nothing off a part that reaches from one place to another.
func idleStep(cut steps.Cut, c steps.Cutter, low, high float64) bool {
	over := math.Max(cut.AcrossMM-high, low-cut.AcrossMM)
	if over <= 0 {
		return cut.DepthMM <= 0
	}
	if c.Kind != steps.RoundNose {
		return over >= c.WidthMM/2 || cut.DepthMM <= 0
	}
	return over >= c.RadiusMM || cut.DepthMM <= c.RadiusMM-math.Sqrt(c.RadiusMM*c.RadiusMM-over*over)
}

// CutsSeat reports whether a task cuts a seat to its shape.
func CutsSeat(p *partspec.Part, t Task) bool {
	_, seat := p.Feature(t.Feature).(*partspec.Seat)
	return seat && (t.Process == plan.SeatSteps || t.Process == plan.BoreHead)
}
