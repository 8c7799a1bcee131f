package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

// ChainAskew mills the slanting edges of an outline, the work turned round on the table; its other edges that lie on no side are filed.
const ChainAskew Chain = "askew"

// askewLeast is the shortest slanting edge that work is set round for, in mm: a pointer finds the direction of a shorter line no better than a protractor. Ours, no source.
const askewLeast = 10.0

// askew lists the straight edges on no side of the rectangle around a part that an end mill can run past.
func (c *Context) askew() []int {
	if !c.coordinates() || len(c.sideMills()) == 0 || !c.owns(partspec.TableClamps) || c.Mill.Kind != partspec.Mill || c.Slide != nil {
		return nil
	}
	var edges []int
	for _, run := range c.runs() {
		for _, i := range run {
			if tools, _ := c.askewCutters(i); len(tools) > 0 && !c.Part.Outline.Edges[i].FinishFile {
				edges = append(edges, i)
			}
		}
	}
	return edges
}

func (c *Context) owns(kind partspec.HoldingKind) bool {
	return slices.ContainsFunc(c.Shop.Holdings, func(h partspec.Holding) bool { return h.Kind == kind })
}

// askewCutters are the end mills that run past a slanting edge without touching what is to stay beyond its ends, each with its run.
func (c *Context) askewCutters(edge int) (tools []millingCutter, runs [][2]float64) {
	e := c.Flat.Drawn.Edges[edge]
	if e.IsArc() || math.Min(math.Abs(e.X1-e.X0), math.Abs(e.Y1-e.Y0)) < sizeNoise || e.Length() < askewLeast {
		return nil, nil
	}
	for _, tool := range c.sideMills() {
		run := c.askewRun(e, tool.size/2)
		path := AskewPath(e, 0, tool.size/2, run)
		if !plane.Meet(path.Grown(-askewNoise), c.Flat.Drawn.Figure()) && c.travels("x", path.Length()) {
			tools, runs = append(tools, tool), append(runs, run)
		}
	}
	return tools, runs
}

// askewNoise keeps the cutter's own edge from counting as metal that it touches, in mm.
const askewNoise = 1e-4

// AskewPath is the way of a cutter past a slanting edge with so much left on it, from so far before its beginning to so far beyond its end.
func AskewPath(e plane.Edge, left, radius float64, run [2]float64) plane.Capsule {
	ox, oy := e.Outward(0)
	ux, uy := (e.X1-e.X0)/e.Length(), (e.Y1-e.Y0)/e.Length()
	out := left + radius
	return plane.Capsule{X0: e.X0 + out*ox - run[0]*ux, Y0: e.Y0 + out*oy - run[0]*uy, X1: e.X1 + out*ox + run[1]*ux, Y1: e.Y1 + out*oy + run[1]*uy, Radius: radius}
}

// askewRun is how far beyond the ends of an edge a cutter stands clear of the blank.
func (c *Context) askewRun(e plane.Edge, radius float64) (run [2]float64) {
	blank := c.Flat.Rim().Figure()
	run = [2]float64{radius + runClear, radius + runClear}
	for k := range run {
		for range askewSteps {
			p := AskewPath(e, 0, radius, run)
			x, y := p.X0, p.Y0
			if k == 1 {
				x, y = p.X1, p.Y1
			}
			if !plane.Meet(plane.Round(x, y, radius+runClear), blank) {
				break
			}
			run[k] += askewStep
		}
	}
	return run
}

// A cutter's run beyond an edge is looked for in steps of so many mm, so many at most: farther than any table of a small mill goes.
const (
	askewStep  = 2.0
	askewSteps = 200
)

// askewDeg is the direction of an edge as work is set round to it, from above -90 to 90 degrees.
func askewDeg(e plane.Edge) float64 {
	deg := math.Atan2(e.Y1-e.Y0, e.X1-e.X0) * 180 / math.Pi
	for deg > 90 {
		deg -= 180
	}
	for deg <= -90 {
		deg += 180
	}
	return math.Round(deg*askewParts) / askewParts
}

// askewParts is how finely the direction of an edge is told: to a ten-thousandth of a degree.
const askewParts = 1e4

// askewRuns splits stretches of the outline so that every edge that is milled askew stands alone.
func (c *Context) askewRuns() (runs [][]int, milled []int) {
	milled = c.askew()
	for _, run := range c.runs() {
		var open []int
		for _, i := range run {
			if slices.Contains(milled, i) {
				runs, open = appendRun(runs, open), nil
				runs = append(runs, []int{i})
				continue
			}
			open = append(open, i)
		}
		runs = appendRun(runs, open)
	}
	return runs, milled
}

func appendRun(runs [][]int, run []int) [][]int {
	if len(run) == 0 {
		return runs
	}
	return append(runs, run)
}

// millAskew makes the task of milling a slanting edge to its line or to a gauge, the work turned round and clamped to the table by its face.
func (c *Context) millAskew(edge int) Task {
	edges := []int{edge}
	t := c.edgeTask(edges, "mill", plan.MillEdge, 0)
	within, how := c.fileWithin(edges)
	if why := c.tightEnough(edges, within, how); why != "" {
		return t.orLacking(why)
	}
	e := c.Flat.Drawn.Edges[edge]
	left := sawLeaves + sawWithin
	if c.Flat.Blank.Empty() {
		left = c.Flat.Left[edge]
	}
	tools, runs := c.askewCutters(edge)
	for i, tool := range tools {
		long := AskewPath(e, 0, tool.size/2, runs[i]).Length()
		width := tool.size * sideWidth
		high := c.sprung(math.Min(c.Length+through, tool.size), tool.size)
		w := c.millWay(partspec.Right, tool) // its line is scribed on the front, and must be seen
		w.Marked, w.AskewDeg, w.Run, w.Off = true, askewDeg(e), runs[i], 0
		w.Rate.DepthMM, w.DeepMM, w.ForceAt = high, c.Length+through, tool.size/2
		w.ForceN = c.milledForce(high, width+sawWithin, tool.size, w.Rate.FeedMM)
		w.Span = [2]float64{-through, c.Length + through}
		w.Minutes = minutesTrial + float64(len(askewCuts(left, width)))*math.Ceil(c.Length/high)*(long/(w.Rate.FeedMM*w.Rate.RPM)+minutesAPass)
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeAskew(edge, t, w, left, within, how, j) }
		t.Ways = append(t.Ways, w)
	}
	return t
}

// askewCuts are what is left on an edge after each pass: of the pass before the last so much that the last one shows what the line or the gauge still wants.
func askewCuts(left, most float64) []float64 {
	var cuts []float64
	for n, k := passes(left-finishSide, most), 1; k <= n; k++ {
		cuts = append(cuts, left-(left-finishSide)*float64(k)/float64(n))
	}
	return append(cuts, 0)
}

func (c *Context) writeAskew(edge int, t Task, w Way, left, within float64, how string, j Job) (plan.Operation, Done) {
	name := c.Part.Outline.Edges[edge].Name
	p := c.page(j, t, w, "Mill the "+c.namesOf([]int{edge})+" edge "+how+", the work turned round")
	p.op.DepthMM = w.PassMM(j.Light)
	top, below := j.Flat.Front, j.Flat.Back
	if w.End == partspec.Left {
		top, below = below, top
	}
	p.quillZero(top, "touch the face")
	level, levels := p.edgeLevels(math.Abs(top - below))
	cuts := askewCuts(left, w.SizeMM*sideWidth)
	for k, l := range cuts {
		for v := 1; v <= levels; v++ {
			label := passName(k+1, len(cuts))
			if levels > 1 {
				label = fmt.Sprintf("%s, level %d", label, v)
			}
			at := []plan.Reading{{Dial: p.quill(), Graduations: level(v)}}
			p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: label, From: at, To: at, Along: &plan.Along{EdgeLeft: plan.EdgeLeft{Edge: name, LeftMM: tidyMM(l), WithinMM: within}, BeforeMM: w.Run[0], BeyondMM: w.Run[1]}})
		}
	}
	for v := 1; v <= levels; v++ {
		p.line(fmt.Sprintf("level %d", v), p.quill(), level(v), "the cutter's end", "", false)
	}
	p.note("Bring the cutter up until it just touches the sawn edge, call the y dial nought there, and cut in passes of at most %s until about %s stands over the line.", units.Length(w.SizeMM*sideWidth).Text(c.unit()), units.Length(finishSide).Text(c.unit()))
	p.note("Last pass: %s, at both ends of the edge; advance by the dial what is still wanting. Feed against the cutter's turning, with x alone; y stays locked.", map[bool]string{true: "until half of each punched dot is left", false: "until no light shows at the gauge"}[how == "to its line"])
	p.why("an edge that lies along the table is milled straight from end to end, and square to the face", "A-40")
	p.op.Checks = append(p.op.Checks, c.edgeChecks([]int{edge}, j.Flat)...)
	p.done.Flat = edgeCuts([]int{edge}, 0)
	return p.finish()
}

// AskewHow tells how work that lies front up is set round so that a direction of it lies along the table's x: by the line itself, and by a datum edge along which the
// table is moved both ways at once.
func AskewHow(p *partspec.Part, deg float64) []string {
	how := []string{fmt.Sprintf("Turn the work %s, so that the scribed line of the edge lies along the table's travel: a pointer in the spindle stands over the line at both ends while x is moved.", TurnedText(deg))}
	for _, name := range p.Outline.Datum {
		if e, ok := p.Outline.Edge(name); ok && e.Y0 == e.Y1 {
			sin, cos := math.Sincos(deg * math.Pi / 180)
			how = append(how, fmt.Sprintf("Prove it along the %s edge: move x by %s and y by %s, which is %s along it; an indicator against the edge stands where it stood.", name,
				shortMM(askewProof*math.Abs(cos)), shortMM(askewProof*math.Abs(sin)), shortMM(askewProof)))
		}
	}
	return how
}

// askewProof is the length of an edge that an angle is proved over, in mm. Common practice, no source.
const askewProof = 50.0

func shortMM(mm float64) string { return units.Length(mm).Round(2).String() }

// TurnedText says which way and how far work is turned on the table for a direction of it to lie along x, as seen from the spindle with its front up.
func TurnedText(deg float64) string {
	way := "anticlockwise"
	if deg > 0 {
		way = "clockwise"
	}
	return fmt.Sprintf("%s° %s", units.Decimal(math.Abs(deg), 2), way)
}
