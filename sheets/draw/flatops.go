package draw

import (
	"math"
	"strings"

	"catchplate/planner/plan"
)

// flatMark is where one or more operations on flat work cut.
type flatMark struct {
	key     string
	targets []target
	lines   []string
}

// flatOperations finds ways for the labels of all operations from where they cut to above the work, and draws the arrows of feeds. What has no place
// in the sketch is named in the legend.
func (c *Canvas) flatOperations(sc *flatScene, held Box) (marks []mark, unmarked []string) {
	var all []flatMark
	for _, op := range sc.s.Operations {
		key, targets := sc.place(op)
		text := opText(op)
		if tag := patternTag(drawnHoles(sc.p), op.Feature); tag != "" {
			text += " " + tag
		}
		if len(targets) == 0 {
			unmarked = append(unmarked, text)
			continue
		}
		i := 0
		for i < len(all) && all[i].key != key {
			i++
		}
		if i == len(all) {
			all = append(all, flatMark{key: key, targets: targets})
		}
		all[i].lines = append(all[i].lines, text)
		c.feeds(sc, op)
	}
	ways := leaderWays{start: held.Top - flatLabelsOff, left: held.Left - leaderSpread/2, right: held.Right + leaderSpread/2, keep: &sc.keep}
	for _, m := range all {
		mk := ways.mark(m.targets, m.lines)
		mk.bold = true
		marks = append(marks, mk)
	}
	return marks, unmarked
}

// place is where an operation works: at holes, at a slot, on edges, on the face, on the outline.
func (sc *flatScene) place(op plan.Operation) (key string, targets []target) {
	for _, holes := range [][]plan.FlatHole{sc.after.Holes, drawnHoles(sc.p)} {
		for _, h := range holes {
			if h.Feature == op.Feature {
				targets = append(targets, target{sc.v.at(h.XMM, h.YMM), reachOf(h, sc.v.scale)})
			}
		}
		if len(targets) > 0 {
			return op.Feature, targets
		}
	}
	for _, s := range sc.after.Slots {
		if s.Feature == op.Feature {
			return op.Feature, []target{{sc.v.at(s.X0, s.Y0), s.WidthMM / 2 * sc.v.scale}, {sc.v.at(s.X1, s.Y1), s.WidthMM / 2 * sc.v.scale}}
		}
	}
	for _, s := range sc.after.Seats {
		if s.Feature == op.Feature {
			return op.Feature, sc.seatTargets(s)
		}
	}
	for _, x := range sc.p.Drawing.Crossed {
		if x.Feature == op.Feature {
			return op.Feature, sc.crossedTargets(x)
		}
	}
	if op.Process == plan.MillFace || strings.HasPrefix(op.Feature, "face") {
		return "face", sc.faceTargets()
	}
	if edges := sc.edgesOf(op); len(edges) > 0 {
		for _, e := range edges {
			key += e.Name + " "
			targets = append(targets, sc.edgeTargets(e)...)
		}
		return key, targets
	}
	if op.Process == plan.MarkOut || op.Process == plan.Deburr {
		for _, e := range sc.after.Outline {
			targets = append(targets, sc.edgeTargets(e)...)
		}
		return "outline", targets
	}
	return "", nil
}

// edgesOf are the edges of the work as it leaves this holding that an operation is about.
func (sc *flatScene) edgesOf(op plan.Operation) []plan.OutlineSegment {
	var out []plan.OutlineSegment
	add := func(name string) {
		if e, ok := named(sc.after.Outline, name); ok && name != "" {
			out = append(out, e)
		}
	}
	for _, e := range op.Edges {
		add(e.Edge)
	}
	if len(out) == 0 {
		add(op.Feature[strings.LastIndex(op.Feature, ".")+1:])
	}
	return out
}

// edgeTargets are places along an edge that a label may point at.
func (sc *flatScene) edgeTargets(e plan.OutlineSegment) []target {
	var out []target
	for _, share := range []float64{0.5, 0.35, 0.65, 0.2, 0.8} {
		p, _ := sc.v.onSegment(e, share)
		out = append(out, target{p: p})
	}
	return out
}

// crossedTargets are places on the end of turned work where what crosses its axis is cut.
func (sc *flatScene) crossedTargets(x plan.Crossed) []target {
	var out []target
	_, _, r, _ := extent(sc.after.Outline)
	if sideSeat(x) {
		for _, deg := range []float64{0, 15, -15} {
			a, far := (x.AngleDeg+deg)*math.Pi/180, (max(x.FloorMM, 0)+roundOver(x))/2
			out = append(out, target{p: sc.v.at(far*math.Cos(a), far*math.Sin(a))})
		}
		return out
	}
	for _, share := range []float64{0.8, 0.65} {
		for _, deg := range []float64{45, 135, 60, 120, 30, 150} {
			a := (x.AngleDeg + deg) * math.Pi / 180
			out = append(out, target{p: sc.v.at(share*r*math.Cos(a), share*r*math.Sin(a))})
		}
	}
	return out
}

// faceTargets are places on the face, in the upper half first, where there is metal.
func (sc *flatScene) faceTargets() []target {
	var out []target
	for _, up := range []float64{0.25, 0.4, 0.6} {
		for _, over := range []float64{0.3, 0.7, 0.5, 0.2, 0.8} {
			p := Point{sc.box.Left + over*sc.box.Width(), sc.box.Top + up*sc.box.Height()}
			free := true
			for _, r := range sc.keep.circles {
				free = free && math.Hypot(r.Centre.X-p.X, r.Centre.Y-p.Y) > r.Radius+1
			}
			if free {
				out = append(out, target{p: p})
			}
		}
	}
	return out
}

const (
	feedOff   = 3.2 // from an edge to the arrow of the cutter's way along it
	feedLong  = 12.0
	mostFeeds = 6
)

// feeds draws heavy arrows for the way of a mill's cutter over the work.
func (c *Canvas) feeds(sc *flatScene, op plan.Operation) {
	switch op.Process {
	case plan.MillEdge:
		for _, e := range sc.edgesOf(op) {
			c.edgeFeed(sc, op, e)
		}
	case plan.MillFace, plan.Face:
		c.faceFeeds(sc, op)
	case plan.SeatSteps, plan.BoreHead:
		c.seatFeed(sc, op)
	}
}

// seatFeed draws the way of the cutter over a seat beside the work, where nothing hides it.
func (c *Canvas) seatFeed(sc *flatScene, op plan.Operation) {
	for _, cut := range op.Cuts {
		way, ok := tableWay(cut)
		if !ok {
			continue
		}
		p := Point{(sc.box.Left + sc.box.Right) / 2, sc.box.Bottom + feedOff}
		if way.X == 0 {
			p = Point{sc.box.Right + feedOff, (sc.box.Top + sc.box.Bottom) / 2}
		}
		tip, tail := stepBy(p, way, feedLong/2), stepBy(p, way, -feedLong/2)
		c.shaft(tip, tail)
		sc.fed = true
		sc.keep.line(tip, tail)
		return
	}
}

func (c *Canvas) edgeFeed(sc *flatScene, op plan.Operation, e plan.OutlineSegment) {
	for _, cut := range op.Cuts {
		way, ok := tableWay(cut)
		if !ok {
			continue
		}
		p, out := sc.v.onSegment(e, 0.5)
		p = stepBy(p, out, feedOff)
		tip, tail := stepBy(p, way, feedLong/2), stepBy(p, way, -feedLong/2)
		c.shaft(tip, tail)
		sc.fed = true
		sc.keep.line(tip, tail)
		return
	}
}

// faceFeeds draws one arrow for each row of passes over a face, in the order of their rows.
func (c *Canvas) faceFeeds(sc *flatScene, op plan.Operation) {
	type row struct {
		way   Point
		count int64
	}
	var rows []row
	for _, cut := range op.Cuts {
		way, ok := tableWay(cut)
		if !ok {
			continue
		}
		r := row{way, countOf(cut.From, across(way))}
		seen := false
		for _, o := range rows {
			seen = seen || o == r
		}
		if !seen && len(rows) < mostFeeds {
			rows = append(rows, r)
		}
	}
	if len(rows) == 0 {
		return
	}
	low, high := rows[0].count, rows[0].count
	for _, r := range rows {
		low, high = min(low, r.count), max(high, r.count)
	}
	for _, r := range rows {
		share := 0.5
		if high > low {
			share = 0.25 + 0.5*float64(r.count-low)/float64(high-low)
		}
		p := Point{sc.box.Left + sc.box.Width()/2, sc.box.Bottom - share*sc.box.Height()}
		if r.way.X == 0 {
			p = Point{sc.box.Left + share*sc.box.Width(), sc.box.Top + sc.box.Height()/2}
		}
		tip, tail := stepBy(p, r.way, feedLong/2), stepBy(p, r.way, -feedLong/2)
		c.shaft(tip, tail)
		sc.fed = true
		sc.keep.line(tip, tail)
	}
}

// across is the dial that moves from row to row when the cutter goes along way.
func across(way Point) string {
	if way.X != 0 {
		return "y"
	}
	return "x"
}

func countOf(readings []plan.Reading, dial string) int64 {
	for _, r := range readings {
		if r.Dial == dial {
			return r.Graduations
		}
	}
	return 0
}

// tableWay is the cutter's way over the work on paper: x counts to the right and y upwards, however the part lies.
func tableWay(cut plan.Cut) (Point, bool) {
	for _, from := range cut.From {
		for _, to := range cut.To {
			if from.Dial != to.Dial || from.Graduations == to.Graduations {
				continue
			}
			sign := 1.0
			if to.Graduations < from.Graduations {
				sign = -1
			}
			switch from.Dial {
			case "x":
				return Point{sign, 0}, true
			case "y":
				return Point{0, -sign}, true
			}
		}
	}
	return Point{}, false
}
