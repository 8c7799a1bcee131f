package process

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/tables"
)

// What hand work leaves and takes. The saw's figures are rule A-40's; the minutes are ours.
const (
	sawWithin     = 0.5
	sawLeaves     = 1.5
	sawMost       = 4.0 // metal on an edge from which on it is sawn rather than milled or filed away
	cornerUnsawn  = 6.0 // radius of a corner under which there is too little to saw off
	minutesSawMM  = 0.06
	minutesFileMM = 0.15
	handThickness = 4.0 // thickness that the minutes are for
)

// PlainSides reports whether the outline is a plain rectangle: a saw, which stops at an edge's ends, then leaves no corner of the blank standing.
func (c *Context) PlainSides() bool {
	return !slices.Contains(shape.SidesOf(c.Flat.Drawn), shape.Inner)
}

// sawSides saws the blank down on the sides where it has much too much.
func (c *Context) sawSides() []Task {
	if c.Flat.Blank.Empty() {
		return nil
	}
	if !c.PlainSides() {
		return nil // the saw would have to follow the outline; the cutter runs past it
	}
	var edges, wide []int
	length := 0.0
	for i, on := range shape.SidesOf(c.Flat.Drawn) {
		if on == shape.Inner || c.Part.Outline.Edges[i].AsSupplied || c.Flat.Left[i] <= sawMost {
			continue
		}
		length += c.Flat.Drawn.Edges[i].Length()
		if c.nearBore(i) {
			wide = append(wide, i)
		} else {
			edges = append(edges, i)
		}
	}
	if len(edges)+len(wide) == 0 {
		return nil
	}
	t := c.edgeTask(append(append([]int(nil), edges...), wide...), "saw", plan.Saw, sawnPlate)
	t.ID = "blank/saw"
	spare := sawnSpare(float64(c.Part.Stock.Thickness.Value))
	t.Flat = edgeCuts(edges, spare)
	t.Flat.Edges = append(t.Flat.Edges, edgeCuts(wide, webSpare).Edges...)
	return []Task{c.sawn(t, length, "Saw the blank")}
}

// sawn gives a sawing task its ways.
func (c *Context) sawn(t Task, length float64, title string) Task {
	for _, saw := range c.tools(partspec.Saw) {
		minutes := minutesSaw + minutesSawMM*length*float64(c.Part.Stock.Thickness.Value)/handThickness
		t.Ways = append(t.Ways, c.benchWays(saw, minutes, func(w Way, j Job) (plan.Operation, Done) {
			p := c.handPage(j, t, w, title)
			for _, e := range t.Flat.Edges {
				p.op.Edges = append(p.op.Edges, plan.EdgeLeft{Edge: c.Part.Outline.Edges[e.Edge].Name, LeftMM: tidyMM(e.Left), WithinMM: sawWithin})
			}
			p.note("Clamp the plate close to the saw, a board under it; saw on the waste side of the line.")
			p.why(fmt.Sprintf("a saw wanders: %s is left to clean up", units.Length(t.Flat.Edges[0].Left).Text(c.unit())), "A-40")
			if len(t.Flat.Edges) > 1 && t.Flat.Edges[len(t.Flat.Edges)-1].Left == webSpare {
				p.why(fmt.Sprintf("%s is left by the bore, so that its web stays thick until it is made", units.Length(webSpare).Text(c.unit())), "A-34")
			}
			return p.finish()
		})...)
	}
	return t.orLacking("no bench with a saw is owned to cut the outline with")
}

// Outlined and Sides name the outline's shaped edges and its straight sides among the features that chains are chosen for.
const (
	Outlined = "the outline"
	Sides    = "the sides"
)

// OutlineChains are the ways to finish an outline: the rim of a round part is turned, or filed like any other shape.
func (c *Context) OutlineChains() []Chain {
	for _, run := range c.runs() {
		if c.rimOf(run) {
			return []Chain{ChainTurn, ChainFile}
		}
	}
	if len(c.askew()) > 0 {
		return []Chain{ChainAskew, ChainFile}
	}
	return []Chain{ChainFile}
}

// shapedEdges makes the tasks of arcs, slopes and edges that stand back: turned where they are the rim of a round part, else marked out, sawn and filed.
func (c *Context) shapedEdges() []Task {
	var tasks []Task
	runs, milled := c.runs(), []int(nil)
	if c.Bored[Outlined] == ChainAskew {
		runs, milled = c.askewRuns()
	}
	for _, run := range runs {
		if c.rimOf(run) && c.Bored[Outlined] != ChainFile {
			tasks = append(tasks, c.turnRim(run)...)
			continue
		}
		tasks = append(tasks, c.markEdges(run)...)
		tasks = append(tasks, c.sawRun(run)...)
		if slices.Contains(milled, run[0]) {
			tasks = append(tasks, c.millAskew(run[0]))
		} else {
			tasks = append(tasks, c.fileEdges(run))
		}
	}
	return tasks
}

// sawRun saws near a stretch of the outline, unless it is but a small corner.
func (c *Context) sawRun(run []int) []Task {
	if len(run) == 1 && c.Flat.Drawn.Edges[run[0]].IsArc() && c.Flat.Drawn.Edges[run[0]].Radius < cornerUnsawn || c.Flat.Blank.Empty() {
		return nil
	}
	length := 0.0
	for _, i := range run {
		length += c.Flat.Drawn.Edges[i].Length()
	}
	return []Task{c.sawn(c.edgeTask(run, "saw", plan.Saw, sawLeaves), length, "Saw near the "+c.namesOf(run)+" edge")}
}

// markEdges scribes a stretch of the outline from the datum edges.
func (c *Context) markEdges(run []int) []Task {
	scribers := c.tools(partspec.Scriber)
	t := c.edgeTask(run, "mark", plan.MarkOut, 1)
	t.Flat = nil
	if len(scribers) == 0 {
		return []Task{t.orLacking("no scriber is owned to mark the outline out with")}
	}
	t.Ways = c.benchWays(scribers[0], minutesMarkOut+minutesAMark*float64(len(run)), func(w Way, j Job) (plan.Operation, Done) {
		p := c.handPage(j, t, w, "Mark out the "+c.namesOf(run)+" edge")
		for _, i := range run {
			e := c.Flat.Drawn.Edges[i]
			if e.IsArc() {
				p.note("Dividers set to %s about the centre of the %s edge, %s.", units.Length(e.Radius).Text(c.unit()), c.Part.Outline.Edges[i].Name, c.markedFrom(e.CX, e.CY))
				continue
			}
			p.note("A line from %s, %s to %s, %s.", units.Length(tidyMM(e.X0)).Text(c.unit()), units.Length(tidyMM(e.Y0)).Text(c.unit()), units.Length(tidyMM(e.X1)).Text(c.unit()), units.Length(tidyMM(e.Y1)).Text(c.unit()))
		}
		if datum := c.Part.Outline.Datum; len(datum) > 0 {
			p.note("Measure everything from the %s edges.", strings.Join(datum, " and "))
		}
		p.note("Dot the line lightly with a punch, so that half of each dot is left when it is filed.")
		if len(c.Part.Outline.Datum) > 0 {
			p.why("marks and dial zeros want one corner", "A-41")
		}
		return p.finish()
	})
	return []Task{t.orLacking("no bench is owned to mark the outline out on")}
}

// markedFrom tells where a place is marked: by its coordinates, or of a part without datum edges, whose coordinates begin at its centre, from that.
func (c *Context) markedFrom(x, y float64) string {
	if len(c.Part.Outline.Datum) > 0 {
		return fmt.Sprintf("at X %s, Y %s", units.Length(tidyMM(x)).Text(c.unit()), units.Length(tidyMM(y)).Text(c.unit()))
	}
	if math.Hypot(x, y) < sizeNoise {
		return "at the middle of the piece, or the middle of the bore that is there"
	}
	return fmt.Sprintf("%s right of and %s above the middle of the piece", units.Length(tidyMM(x)).Text(c.unit()), units.Length(tidyMM(y)).Text(c.unit()))
}

// fileEdges files edges to their line, or to a gauge where the limits ask for it.
func (c *Context) fileEdges(edges []int) Task {
	t := c.edgeTask(edges, "file", plan.FileEdge, 0)
	within, how := c.fileWithin(edges)
	if why := c.tightEnough(edges, within, how); why != "" {
		return t.orLacking(why)
	}
	if left := c.leftToFile(edges); left > sawMost {
		return t.orLacking(fmt.Sprintf("%s stand on the %s edge, too much to file away, and the saw does not follow round its corners: saw the piece nearer to size, and write its width and length so",
			units.Length(left).Text(c.unit()), c.namesOf(edges)))
	}
	length := 0.0
	for _, i := range edges {
		length += c.Flat.Drawn.Edges[i].Length()
	}
	for _, file := range c.tools(partspec.Files) {
		minutes := minutesEdge + minutesFileMM*length*c.Length/handThickness
		t.Ways = append(t.Ways, c.benchWays(file, minutes, func(w Way, j Job) (plan.Operation, Done) {
			p := c.handPage(j, t, w, "File the "+c.namesOf(edges)+" edge "+how)
			for _, i := range edges {
				p.op.Edges = append(p.op.Edges, plan.EdgeLeft{Edge: c.Part.Outline.Edges[i].Name, WithinMM: within})
			}
			if c.standsBeyond(edges, j.Flat) {
				p.note("File right along the piece, past the ends of the edge: what stands there is waste.")
			}
			p.note("Draw-file the last of it; square to the face by a square.")
			p.op.Checks = append(p.op.Checks, c.edgeChecks(edges, j.Flat)...)
			p.done.Flat = edgeCuts(edges, 0)
			return p.finish()
		})...)
		break
	}
	return t.orLacking("no bench with files is owned")
}

// standsBeyond reports whether a corner of the blank still stands beyond the end of a side: a file takes it down to the side's line.
func (c *Context) standsBeyond(edges []int, f shape.Flat) bool {
	sides, n := shape.SidesOf(f.Drawn), len(f.Left)
	for _, i := range edges {
		for _, k := range []int{(i + 1) % n, (i + n - 1) % n} {
			if sides[i] != shape.Inner && sides[k] == shape.Inner && f.Left[k] > sizeNoise {
				return true
			}
		}
	}
	return false
}

// leftToFile is what a straight side of an outline with other edges between has on it, which no saw takes off before (see PlainSides).
func (c *Context) leftToFile(edges []int) float64 {
	most := 0.0
	for _, i := range edges {
		if on := shape.SidesOf(c.Flat.Drawn)[i]; on != shape.Inner && !c.PlainSides() && !c.Flat.Blank.Empty() {
			most = math.Max(most, c.Flat.Left[i])
		}
	}
	return most
}

// fileWithin is how near to its place a file brings edges, and by what: to the scribed line where that is enough, else to a gauge.
func (c *Context) fileWithin(edges []int) (within float64, how string) {
	line := c.markError() + float64(tables.PlaceError(tables.ByFileToLine))
	if c.tightEnough(edges, line, "") == "" && len(c.tools(partspec.Scriber)) > 0 {
		return line, "to its line"
	}
	return float64(tables.PlaceError(tables.ByFileToGauge)), "to a gauge"
}

// edgeChecks measures filed edges: straight ones across the part, arcs by a gauge, and the web beside a bore that shares the arc's centre.
func (c *Context) edgeChecks(edges []int, f shape.Flat) []plan.Check {
	var list []plan.Check
	seen := map[shape.Side]bool{}
	for _, i := range edges {
		if s := shape.SidesOf(f.Drawn)[i]; s != shape.Inner && !seen[s] {
			seen[s] = true
			list = append(list, c.sideChecks(s, f)...)
		}
		if e := f.Drawn.Edges[i]; e.IsArc() {
			list = append(list, c.arcCheck(i, f))
		}
	}
	return list
}

// drawnWeb is the web between an arc of the outline and a hole about its centre, as drawn.
func (c *Context) drawnWeb(edge int, h shape.Round) float64 {
	for _, f := range c.Part.Features {
		if b, ok := f.(*partspec.Bore); ok && b.At != nil && nearPlace(*b.At, h.X, h.Y) {
			return c.Flat.Drawn.Edges[edge].Radius - float64(b.Diameter.Mid())/2
		}
	}
	return 0
}

func (c *Context) arcCheck(i int, f shape.Flat) plan.Check {
	e, drawn := f.Drawn.Edges[i], c.Part.Outline.Edges[i]
	for _, h := range f.Holes {
		if web := c.drawnWeb(i, h); near(math.Hypot(h.X-e.CX, h.Y-e.CY), 0) && web > 0 && !e.Hollow {
			s := partspec.Size{Basis: "the edge's limits"}
			s.Value = units.Length(web)
			s.Low, s.High = s.Value-drawn.Off, s.Value+drawn.On
			return c.check("web between the bore and the "+drawn.Name+" edge", "edge."+drawn.Name, s, outsideCheck)
		}
	}
	return plan.Check{What: "radius of the " + drawn.Name + " edge", Feature: "edge." + drawn.Name, LowMM: e.Radius - float64(drawn.Off), HighMM: e.Radius + float64(drawn.On),
		Limits: "R" + units.Length(e.Radius).Text(c.unit()) + ", no light under a gauge or template", When: "before release", IfLarge: "file on", IfSmall: "stop: metal cannot be put back"}
}
