package process

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// sideEdges are the edges of the outline on a side of the rectangle around it that still stand in metal.
func (c *Context) sideEdges(s shape.Side) []int {
	var edges []int
	for i, on := range shape.SidesOf(c.Flat.Drawn) {
		if on == s && c.Flat.Left[i] > sizeNoise {
			edges = append(edges, i)
		}
	}
	return edges
}

// sides makes the tasks of the straight edges around a part: milled where a mill is owned and no file is asked for, else filed.
func (c *Context) sides() []Task {
	var tasks []Task
	for s := shape.Bottom; s <= shape.Left; s++ {
		edges := c.sideEdges(s)
		if len(edges) == 0 {
			continue
		}
		byFile := c.Bored[Sides] == ChainFile
		for _, i := range edges {
			byFile = byFile || c.Part.Outline.Edges[i].FinishFile
		}
		if byFile || !c.coordinates() || len(c.endMills()) == 0 {
			tasks = append(tasks, c.fileEdges(edges))
			continue
		}
		tasks = append(tasks, c.millEdge(s, edges))
	}
	return tasks
}

// edgeTask begins a task that brings edges of the outline to their places.
func (c *Context) edgeTask(edges []int, verb string, kind plan.Process, left float64) Task {
	names := c.edgeNames(edges)
	t := Task{Op: shape.Op{ID: strings.Join(names, "+") + "/" + verb, Feature: names[0], Process: kind, Stage: shape.Roughing, Z0: 0, Z1: c.Length, Flat: edgeCuts(edges, left)}}
	if left == 0 {
		t.Stage, t.Makes = shape.Finishing, names
		t.Tight = math.Inf(1)
		for _, i := range edges {
			if e := c.Part.Outline.Edges[i]; !c.datumEdge(i) {
				t.Tight = math.Min(t.Tight, float64(e.Off+e.On))
			}
		}
		if math.IsInf(t.Tight, 1) {
			t.Tight = 0 // it is where coordinates begin
		}
	}
	for _, i := range edges {
		t.Depth = math.Max(t.Depth, c.standing(i))
	}
	return t
}

// standing is the metal on an edge before anything has been cut: where the blank's corner stands over it, what it has there at most.
func (c *Context) standing(i int) float64 {
	if l := c.Flat.Left[i]; !math.IsInf(l, 1) {
		return l
	}
	most := 0.0
	for _, e := range c.Flat.Blank.Edges {
		_, _, off := c.Flat.Drawn.Edges[i].Nearest(e.X0, e.Y0)
		if most == 0 || off < most {
			most = off
		}
	}
	return most
}

// tightEnough says why an edge's limits cannot be held within so much either way; empty when they can.
func (c *Context) tightEnough(edges []int, within float64, how string) string {
	for _, i := range edges {
		e := c.Part.Outline.Edges[i]
		if room := math.Min(float64(e.Off), float64(e.On)); !c.datumEdge(i) && room < within-sizeNoise {
			return fmt.Sprintf("edge %s may lie %.3f off its place; %s is good for %.3f", e.Name, room, how, within)
		}
	}
	return ""
}

// dialDoubt is how far a milled edge may lie from where it is counted to: half a graduation, and what finding the datum adds (table of accuracies: 0.03 mm).
const dialDoubt = 0.03

func (c *Context) millEdge(s shape.Side, edges []int) Task {
	t := c.edgeTask(edges, "mill", plan.MillEdge, 0)
	if why := c.tightEnough(edges, c.graduationOff()/math.Sqrt2+dialDoubt, "milling by the dials"); why != "" {
		return t.orLacking(why)
	}
	left := c.Flat.SideLeft(s)
	long, wide := c.faceSpans(c.Flat)
	along := "x"
	if s == shape.Left || s == shape.Right {
		long, along = wide, "y"
	}
	for _, tool := range c.sideMills() {
		if !c.travels(along, long+tool.size+2*runClear) {
			continue
		}
		for _, e := range []partspec.End{partspec.Right, partspec.Left} {
			w := c.millWay(e, tool)
			width := tool.size * sideWidth
			high := c.sprung(math.Min(c.Length+through, tool.size), tool.size)
			w.Rate.DepthMM, w.DeepMM, w.ForceAt = high, c.Length+through, tool.size/2 // lighter passes take less of the thickness at once
			w.ForceN = c.milledForce(high, width+sawWithin, tool.size, w.Rate.FeedMM)
			w.Span = [2]float64{-through, c.Length + through}
			n := passes(left, width) + 1
			w.Minutes = minutesTrial + float64(n)*math.Ceil(c.Length/high)*((long+2*tool.size)/(w.Rate.FeedMM*w.Rate.RPM)+minutesAPass)
			w.Write = func(j Job) (plan.Operation, Done) { return c.writeEdge(s, edges, t, w, j) }
			t.Ways = append(t.Ways, w)
		}
	}
	return t.orLacking(fmt.Sprintf("milling the %s edge: the table does not go %.0f along %s; hold it the other way round, or write finish_by = \"file\"", c.namesOf(edges), long+2*runClear, along))
}

// travels reports whether the slide of a dial of the mill's table goes so far; where the workshop does not say, it does.
func (c *Context) travels(dial string, far float64) bool {
	d, ok := c.Mill.Dial(dial)
	return ok && (d.Travel == 0 || far <= float64(d.Travel)+sizeNoise)
}

// through is how far a milling cutter goes past the lower face, in mm. Common practice, no source.
const through = 1.0

// finishSide is the last cut on a milled edge.
const finishSide = 0.3

func (c *Context) writeEdge(s shape.Side, edges []int, t Task, w Way, j Job) (plan.Operation, Done) {
	names := c.namesOf(edges)
	p := c.page(j, t, w, "Mill the "+names+" edge")
	p.op.DepthMM = w.PassMM(j.Light)
	width := w.SizeMM * sideWidth
	p.tableZeros()
	top, below := j.Flat.Front, j.Flat.Back
	if w.End == partspec.Left {
		top, below = below, top
	}
	p.quillZero(top, "touch the face")
	level, levels := p.edgeLevels(math.Abs(top - below))
	across, along := "x", "y"
	if s == shape.Bottom || s == shape.Top {
		across, along = "y", "x"
	}
	ox, oy := s.Outward()
	out := ox + oy
	from, to := p.feedAlong(s, w, j.Flat)
	fromMarks, toMarks := p.along(along, from), p.along(along, to)
	left := j.Flat.SideLeft(s)
	place := s.Place(j.Flat.Drawn) + out*w.SizeMM/2
	cuts := p.sideCuts(left, width)
	done := 0.0
	for k, l := range cuts {
		marks := p.outside(across, place+out*l, out)
		done = (p.placeOf(across, marks) - place) * out
		name := passName(k+1, len(cuts))
		p.line(name, across, marks, fmt.Sprintf("%s left on the edge", p.both(math.Max(0, done), across)), "", false)
		for v := 1; v <= levels; v++ {
			q := level(v)
			label := name
			if levels > 1 {
				label = fmt.Sprintf("%s, level %d", name, v)
			}
			start := []plan.Reading{{Dial: across, Graduations: marks}, {Dial: along, Graduations: fromMarks}, {Dial: p.quill(), Graduations: q}}
			end := []plan.Reading{{Dial: across, Graduations: marks}, {Dial: along, Graduations: toMarks}, {Dial: p.quill(), Graduations: q}}
			p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: label, From: start, To: end})
		}
	}
	for v := 1; v <= levels; v++ {
		p.line(fmt.Sprintf("level %d", v), p.quill(), level(v), "the cutter's end", "", false)
	}
	p.line("run from", along, fromMarks, "clear of the work", "", false)
	p.line("run to", along, toMarks, "clear of the work", "", false)
	p.note("Feed against the cutter's turning, %s; come to every figure the same way.", p.c.locked())
	p.why("approached one way", "C-08")
	for _, i := range edges {
		if c.datumEdge(i) {
			p.why("coordinates begin here", "A-41")
			done = 0 // wherever the dial left it
		}
	}
	p.op.Checks = append(p.op.Checks, c.sideChecks(s, j.Flat)...)
	p.done.Flat = edgeCuts(edges, math.Max(0, done))
	return p.finish()
}

// edgeLevels are the counts of the levels at which an edge is milled, the last of which takes the cutter through.
func (p *page) edgeLevels(thick float64) (level func(v int) int64, levels int) {
	all, _ := p.sunk(thick+through, true)
	solid, _ := p.sunk(thick, true)
	levels = int(p.layersOf(solid, p.op.DepthMM))
	return func(v int) int64 {
		if v == levels {
			return all
		}
		return solid * int64(v) / int64(levels)
	}, levels
}

func (c *Context) namesOf(edges []int) string {
	var names []string
	for _, i := range edges {
		names = append(names, strings.ReplaceAll(c.Part.Outline.Edges[i].Name, "_", " "))
	}
	return strings.Join(names, ", ")
}

// feedAlong is where a pass along a side begins and ends, against the cutter's turning: the metal then lies on the left of its way as the spindle sees it.
func (p *page) feedAlong(s shape.Side, w Way, f shape.Flat) (from, to float64) {
	x0, y0, x1, y1 := f.Rim().Bounds()
	lo, hi := x0, x1
	if s == shape.Left || s == shape.Right {
		lo, hi = y0, y1
	}
	lo, hi = lo-w.SizeMM/2-runClear, hi+w.SizeMM/2+runClear
	forward := s == shape.Bottom || s == shape.Right
	if w.End == partspec.Left {
		forward = !forward
	}
	if forward {
		return lo, hi
	}
	return hi, lo
}

// sideCuts are what is left on an edge after each pass.
func (p *page) sideCuts(left, most float64) []float64 {
	if left <= finishSide {
		return []float64{0}
	}
	n := passes(left-finishSide, most)
	var cuts []float64
	for k := 1; k <= n; k++ {
		cuts = append(cuts, left-(left-finishSide)*float64(k)/float64(n))
	}
	return append(cuts, 0)
}

// outside is the count of a table's dial at a place, or the next one further out.
func (p *page) outside(dial string, place, out float64) int64 {
	g := radial(p.dial(dial))
	marks := (place - p.zero(dial).ReferenceMM) * p.sense(dial) / g
	if out*p.sense(dial) > 0 {
		return int64(math.Ceil(marks - markNoise))
	}
	return int64(math.Floor(marks + markNoise))
}

// placeOf is where a table's dial stands at a count.
func (p *page) placeOf(dial string, marks int64) float64 {
	return p.zero(dial).ReferenceMM + p.sense(dial)*float64(marks)*radial(p.dial(dial))
}

// sideChecks measures the part across once the opposite side is there too.
func (c *Context) sideChecks(s shape.Side, f shape.Flat) []plan.Check {
	other := s.Opposite()
	mine, theirs := c.allOn(s), c.allOn(other)
	if len(mine) == 0 || len(theirs) == 0 || f.SideLeft(other) > leastGraduation {
		return nil
	}
	return []plan.Check{c.check("across, from "+c.namesOf(theirs)+" to "+c.namesOf(mine), c.edgeNames(mine)[0], c.acrossSize(mine, theirs, math.Abs(s.Place(f.Drawn)-other.Place(f.Drawn))), outsideCheck)}
}

// leastGraduation is the most that may stand on an edge that counts as finished: rounding to a graduation leaves it.
const leastGraduation = 0.1

func (c *Context) allOn(s shape.Side) []int {
	var edges []int
	for i, on := range shape.SidesOf(c.Flat.Drawn) {
		if on == s {
			edges = append(edges, i)
		}
	}
	return edges
}

// acrossSize is the measure between opposite edges with what both may be off; a datum edge is off by nothing.
func (c *Context) acrossSize(a, b []int, nominal float64) partspec.Size {
	s := partspec.Size{Basis: "the edges' limits"}
	s.Value = units.Length(nominal)
	s.Low, s.High = s.Value, s.Value
	for _, edges := range [][]int{a, b} {
		off, on := units.Length(0), units.Length(0)
		for k, i := range edges {
			if e := c.Part.Outline.Edges[i]; k == 0 && !c.datumEdge(i) {
				off, on = e.Off, e.On
			}
		}
		s.Low, s.High = s.Low-off, s.High+on
	}
	return s
}
