package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/shape"
)

// flatTasks lists every task of a flat part: faces, edges, bores, holes and slots, and the sharp edges last.
func (c *Context) flatTasks() []Task {
	tasks := c.millFaces()
	tasks = append(tasks, c.sawSides()...)
	tasks = append(tasks, c.sides()...)
	tasks = append(tasks, c.shapedEdges()...)
	for _, f := range c.Part.Features {
		switch f := f.(type) {
		case *partspec.Bore:
			tasks = append(tasks, c.flatBore(f)...)
		case *partspec.Holes:
			tasks = append(tasks, c.pattern(f)...)
		case *partspec.Slot:
			tasks = append(tasks, c.flatSlot(f))
		case *partspec.Chamfer:
			tasks = append(tasks, c.flatChamfer(f))
		case *partspec.Thread:
			tasks = append(tasks, c.flatThread(f))
		case *partspec.Seat:
			tasks = append(tasks, c.seat(f)...)
		default:
			tasks = append(tasks, Task{Op: shape.Op{ID: f.Head().ID() + "/cut", Feature: f.Head().Name, Process: plan.MillSlot},
				Lacking: []string{fmt.Sprintf("%s: a %s is not planned on a flat part; bores, their threads and chamfers, holes and slots are", f.Head().Name, f.Head().Word)}})
		}
	}
	tasks = append(tasks, c.deburr()...)
	for _, t := range tasks {
		for i := range t.Ways {
			if t.Ways[i].DeepMM == 0 { // its depth is not chosen, so that nothing makes it lighter
				t.Ways[i].SureN = t.Ways[i].ForceN
			}
		}
	}
	return tasks
}

// What a blank has beyond the part (rule A-40): on a sawn edge of plate or sheet, and next to a large bore, where the metal keeps the web stiff.
const (
	sawnPlate = 2.0
	sawnSheet = 1.0
	sheetMost = 3.0 // thickness up to which it counts as sheet
	webSpare  = 4.0
)

func sawnSpare(thickness float64) float64 {
	if thickness <= sheetMost {
		return sawnSheet
	}
	return sawnPlate
}

// FlatBlank lays the stock around a flat part: what it has too much is shared between opposite sides and faces, but none is put on a side that is left as
// supplied. why says that it cannot be laid so.
func FlatBlank(p *partspec.Part, mill partspec.Machine) (f shape.Flat, why string) {
	drawn, thick := shape.DrawnRegion(p.Outline), float64(p.Length.Mid())
	if p.Stock.Kind == partspec.Casting {
		metal := float64(p.Stock.Metal)
		f = shape.Flat{Drawn: drawn, Back: -metal, Front: float64(p.Length.Value) + metal}
		for range drawn.Edges {
			f.Left = append(f.Left, metal)
		}
		return f, ""
	}
	spare := sawnSpare(float64(p.Stock.Thickness.Value))
	x0, y0, x1, y1 := drawn.Bounds()
	left, right, whyX := shared(p, shape.Left, shape.Right, float64(p.Stock.Width.Value), x1-x0, spare)
	bottom, top, whyY := shared(p, shape.Bottom, shape.Top, float64(p.Stock.Length.Value), y1-y0, spare)
	dx, _ := mill.Dial("x")
	dy, _ := mill.Dial("y")
	dz, _ := depthDial(mill)
	if len(p.Outline.Datum) > 0 { // else the piece is set by its middle
		left, right = wholly(left, right, dx)
		bottom, top = wholly(bottom, top, dy)
	}
	back, front, whyZ := facesOf(p, thick, float64(dz.Graduation.Value))
	for _, w := range []string{whyX, whyY, whyZ} {
		if w != "" {
			return f, w
		}
	}
	return shape.FlatStock(drawn, plane.Rectangle(x0-left, y0-bottom, x1+right, y1+top), back, front), ""
}

// shared shares what a piece is too long between its two sides.
func shared(p *partspec.Part, low, high shape.Side, have, need, spare float64) (atLow, atHigh float64, why string) {
	keepLow, keepHigh := suppliedSide(p, low), suppliedSide(p, high)
	if have == 0 {
		return spare * share(!keepLow), spare * share(!keepHigh), ""
	}
	over := have - need
	switch {
	case over < -sizeNoise:
		return 0, 0, fmt.Sprintf("the stock is %.1f wide where the part is %.1f", have, need)
	case keepLow && keepHigh && over > sizeNoise:
		return 0, 0, fmt.Sprintf("both edges are to stay as supplied, but the stock is %.1f wide and the part %.1f", have, need)
	case keepLow:
		return 0, over, ""
	case keepHigh:
		return over, 0, ""
	}
	return over / 2, over / 2, ""
}

// wholly shares anew so that the lower side has whole graduations of a dial: where the blank lies is free, and the dial then comes out on the edge.
func wholly(low, high float64, d partspec.Dial) (float64, float64) {
	g := radial(d)
	if g <= 0 || high == 0 {
		return low, high
	}
	whole := math.Floor(low/g+markNoise) * g
	return whole, high + low - whole
}

func share(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// suppliedSide reports whether every edge on a side is the stock's own.
func suppliedSide(p *partspec.Part, s shape.Side) bool {
	any := false
	for i, on := range shape.SidesOf(shape.DrawnRegion(p.Outline)) {
		if on == s {
			any = true
			if !p.Outline.Edges[i].AsSupplied {
				return false
			}
		}
	}
	return any
}

// facesOf is where the stock's faces lie: as much comes off one as off the other, in whole graduations of the dial that it will be set by.
func facesOf(p *partspec.Part, thick, graduation float64) (back, front float64, why string) {
	if p.Stock.FacesAsSupplied {
		return 0, thick, ""
	}
	over := float64(p.Stock.Thickness.Value) - thick
	if over < -sizeNoise {
		return 0, 0, fmt.Sprintf("the stock is %.2f thick where the part is %.2f", float64(p.Stock.Thickness.Value), thick)
	}
	below := over / 2
	if graduation > 0 {
		below = math.Floor(below/graduation+markNoise) * graduation
	}
	return -below, thick + over - below, ""
}

// edgeNames are the names of edges of the outline, in its order.
func (c *Context) edgeNames(edges []int) []string {
	var names []string
	for _, i := range edges {
		names = append(names, "edge."+c.Part.Outline.Edges[i].Name)
	}
	return names
}

// datumEdge reports whether coordinates begin at an edge.
func (c *Context) datumEdge(i int) bool {
	for _, name := range c.Part.Outline.Datum {
		if name == c.Part.Outline.Edges[i].Name {
			return true
		}
	}
	return false
}

// runs groups the edges that lie on no side of the rectangle around the outline into stretches of neighbours; edges as supplied are left out.
func (c *Context) runs() [][]int {
	sides := shape.SidesOf(c.Flat.Drawn)
	n := len(sides)
	start := 0
	for i, s := range sides {
		if s != shape.Inner {
			start = i
			break
		}
	}
	var runs [][]int
	open := false
	for k := range n {
		i := (start + k) % n
		if sides[i] != shape.Inner || c.Part.Outline.Edges[i].AsSupplied {
			open = false
			continue
		}
		if !open {
			runs, open = append(runs, nil), true
		}
		runs[len(runs)-1] = append(runs[len(runs)-1], i)
	}
	return runs
}

// edgeCuts bring edges to where so much is left on them.
func edgeCuts(edges []int, left float64) *shape.FlatCut {
	cut := &shape.FlatCut{}
	for _, i := range edges {
		cut.Edges = append(cut.Edges, shape.EdgeCut{Edge: i, Left: left})
	}
	return cut
}

// benchWays is a way at the bench with a tool, either face up.
func (c *Context) benchWays(tool partspec.Tool, minutes float64, write func(w Way, j Job) (plan.Operation, Done)) []Way {
	if c.Bench.Kind == "" {
		return nil
	}
	w := Way{Machine: partspec.Bench, End: partspec.Right, Tool: tool, Minutes: minutes, Marked: true, Ordinary: true}
	w.Write = func(j Job) (plan.Operation, Done) { return write(w, j) }
	return []Way{w}
}

// deburr breaks all sharp edges once everything is cut.
func (c *Context) deburr() []Task {
	if !c.Rules.Has("A-18") {
		return nil
	}
	t := Task{Op: shape.Op{ID: "edges/deburr", Feature: "part", Process: plan.Deburr, Stage: shape.Finishing, Z1: c.Length}}
	for _, files := range c.tools(partspec.Files) {
		t.Ways = append(t.Ways, c.benchWays(files, minutesDeburr, func(w Way, j Job) (plan.Operation, Done) {
			p := c.handPage(j, t, w, "Break all sharp edges")
			p.note("A touch of a fine file along every edge, a larger drill turned by hand in the mouth of every hole.")
			p.why("burrs cut hands, and tip the part by their own height where it is bolted down", "A-18")
			return p.finish()
		})...)
	}
	return []Task{t.orLacking("no bench with files is owned to break the edges with")}
}

const minutesDeburr = 3.0

// handPage writes an operation that no spindle does.
func (c *Context) handPage(j Job, t Task, w Way, title string) *page {
	p := c.page(j, t, w, title)
	p.op.Tool.Text = toolText(w.Tool, 0)
	p.op.RPM, p.op.WantedRPM, p.op.Why = 0, 0, nil
	return p
}
