package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

// tops are the faces that a tool's end can touch.
func (f *flatWalk) tops(p pose) []found {
	back, front, ok := f.work.faces()
	switch {
	case !ok:
		return nil
	case p.up() > 0:
		return []found{{at: front}}
	}
	return []found{{at: back}}
}

// edges are the straight edges of the work square to a dial of the table, and the middle between the outermost two.
func (f *flatWalk) edges(_ pose, axis int) []found {
	back, front, ok := f.work.faces()
	if !ok {
		return nil
	}
	var all []found
	low, high := found{at: math.Inf(1)}, found{at: math.Inf(-1)}
	for _, e := range f.work.outer((back + front) / 2) {
		a, b, along := e.X0, e.X1, e.Y1-e.Y0
		if axis == 1 {
			a, b, along = e.Y0, e.Y1, e.X1-e.X0
		}
		if e.IsArc() || math.Abs(a-b) > same || math.Abs(along) < leastTouch {
			continue
		}
		edge := found{at: a, off: f.edgeOff(e)}
		if f.unplaced() {
			edge.off = 0
		}
		all = append(all, edge)
		if a < low.at {
			low = edge
		}
		if a > high.at {
			high = edge
		}
	}
	if len(all) > 1 {
		all = append(all, found{at: (low.at + high.at) / 2, off: (low.off + high.off) / 2})
	}
	return all
}

// unplaced reports whether nothing has a place yet on a part whose coordinates begin at no edge: those of a disc begin where its first hole is made, and its rim is
// made about that.
func (f *flatWalk) unplaced() bool {
	if len(f.part.Outline.Datum) > 0 {
		return false
	}
	for _, t := range f.work.taken {
		if t.centre && !t.mark && t.key.setup < f.setup.Number-1 {
			return false
		}
	}
	return true
}

// leastTouch is the shortest edge that an edge finder or a tool's shank touches. Common practice, no source.
const leastTouch = 3.0

// rawOff is how far a raw edge may lie from where the stock's size has it: sawn or sheared to about a millimetre (common practice, no source).
const rawOff = 0.5

// edgeOff is how far an edge of the work may lie from its place in the part's coordinates.
func (f *flatWalk) edgeOff(e plane.Edge) float64 {
	x, y := e.At(0.5)
	for i, d := range f.drawn.outline.Edges {
		if _, _, off := d.Nearest(x, y); f.drawn.datum[i] && off <= figure {
			return 0 // coordinates begin there
		}
	}
	for i := len(f.work.taken) - 1; i >= 0; i-- {
		t := f.work.taken[i]
		if t.centre {
			continue
		}
		for _, r := range t.at((f.work.back+f.work.front)/2, 0).Rim() {
			if _, _, off := r.Nearest(x, y); off <= figure {
				return f.sureOf(t, e)
			}
		}
	}
	if f.asSupplied(x, y) {
		return 0
	}
	return rawOff
}

// sureOf is how far an edge that something made may lie from its place: of hand work, that of the edges of the outline that run along it.
func (f *flatWalk) sureOf(t taken, e plane.Edge) float64 {
	var g trimmed
	switch by := t.swath.(type) {
	case strip:
		return by.sure
	case alongside:
		return by.sure
	case trimmed:
		g = by
	default:
		return t.off
	}
	x, y := e.At(0.5)
	ox, oy := e.Outward(0.5)
	off := 0.0
	for i, d := range g.outline.Edges {
		dx, dy := outwardAt(d, x, y)
		if px, py, far := d.Nearest(x, y); ox*dx+oy*dy > 1-same && math.Abs(far-math.Abs(g.moved[i])) <= figure || !d.IsArc() && ox*dx+oy*dy > 1-same && math.Abs((x-px)*dx+(y-py)*dy-g.moved[i]) <= figure {
			off = math.Max(off, g.sure[i])
		}
	}
	return off
}

// outwardAt is the direction away from the metal of an edge where a place lies square to it.
func outwardAt(e plane.Edge, x, y float64) (ox, oy float64) {
	r := math.Hypot(x-e.CX, y-e.CY)
	if !e.IsArc() || r <= same {
		return e.Outward(0.5)
	}
	if e.Hollow {
		r = -r
	}
	return (x - e.CX) / r, (y - e.CY) / r
}

// asSupplied reports whether a place lies on an edge that the drawing leaves as the stock has it.
func (f *flatWalk) asSupplied(x, y float64) bool {
	for i, e := range f.drawn.outline.Edges {
		if _, _, off := e.Nearest(x, y); f.part.Outline.Edges[i].AsSupplied && off <= figure {
			return true
		}
	}
	return false
}

// centres are the holes that an indicator can sweep.
func (f *flatWalk) centres(pose) []centre {
	var all []centre
	for _, t := range f.work.taken {
		if x, y, r := t.centred((math.Max(t.z0, f.work.back) + math.Min(t.z1, f.work.front)) / 2); t.centre && !t.mark && r >= leastSwept {
			all = append(all, centre{x, y, t.off})
		}
	}
	for _, e := range f.drawn.outline.Edges { // a disc's rim
		if e.IsArc() && !e.Hollow && f.arcMade(e) {
			all = append(all, centre{e.CX, e.CY, 0})
		}
	}
	return all
}

// leastSwept is the smallest radius of a hole that an indicator's stylus sweeps. Common practice, no source.
const leastSwept = 3.0

// arcMade reports whether the work has an arc of the outline at its place.
func (f *flatWalk) arcMade(want plane.Edge) bool {
	x, y := want.At(0.5)
	for _, e := range f.work.outer((f.work.back + f.work.front) / 2) {
		if _, _, off := e.Nearest(x, y); e.IsArc() && off <= figure {
			return true
		}
	}
	return false
}

// markOut puts punch marks on the work: each at a line of the table, from edges that are there.
func (f *flatWalk) markOut(op plan.Operation) {
	f.motion++
	if len(op.Holes) == 0 && len(op.Cuts) == 0 {
		f.lined(op)
		return // lines only: what is cut to them says so itself
	}
	for _, axis := range []int{0, 1} {
		if matchedHoles(f.part.Feature(op.Feature)) == nil && !f.datumReady(axis) {
			f.failOp("order", "marks are measured from an edge that is not there yet")
			return
		}
	}
	back, front, _ := f.work.faces()
	for c, cut := range op.Cuts {
		if cut.At == nil {
			f.failOp("readings", "mark %q has no place", cut.Name)
			continue
		}
		f.checkAt(*cut.At)
		f.removing[cutKey{f.setup.Number - 1, f.opIndex(op), c}] = true
		if _, bored := f.holeAt(cut.At.XMM, cut.At.YMM); !bored && !f.work.solidAt(plane.Round(cut.At.XMM, cut.At.YMM, markWide), (back+front)/2) {
			f.failOp("located", "mark %q at %s, %s lies on no metal", cut.Name, mm(cut.At.XMM), mm(cut.At.YMM))
		}
		f.punched = append(f.punched, mark2{cut.At.XMM, cut.At.YMM, f.setup.FreeEnd})
	}
	for _, h := range op.Holes {
		if !f.punchedAt(h.XMM, h.YMM) {
			f.failOp("table", "hole %d is said to lie at %s, %s, and no mark is made there", h.Number, mm(h.XMM), mm(h.YMM))
		}
	}
	f.checkChords(op)
}

// markWide is the radius of solid metal that a punch mark wants. Common practice, no source.
const markWide = 1.0

func (f *flatWalk) opIndex(op plan.Operation) int {
	for i, o := range f.setup.Operations {
		if o.ID == op.ID {
			return i
		}
	}
	return -1
}

// punchedAt reports whether there is a mark at a place of the face that is free: one on the other face is not seen.
func (f *flatWalk) punchedAt(x, y float64) bool {
	for _, m := range f.punched {
		if m.on == f.setup.FreeEnd && math.Hypot(m.x-x, m.y-y) <= figure {
			return true
		}
	}
	return false
}

// datumReady reports whether what coordinates along an axis are measured from is there: the datum edge, or on a disc anything.
func (f *flatWalk) datumReady(axis int) bool {
	needed := false
	for i, e := range f.drawn.outline.Edges {
		ox, oy := e.Outward(0.5)
		if !f.drawn.datum[i] || e.IsArc() || axis == 0 && math.Abs(ox) < math.Abs(oy) || axis == 1 && math.Abs(oy) < math.Abs(ox) {
			continue
		}
		needed = true
		x, y := e.At(0.5)
		for _, r := range f.work.outer((f.work.back + f.work.front) / 2) {
			if _, _, off := r.Nearest(x, y); off <= figure {
				return true
			}
		}
	}
	return !needed
}

// checkPlaced holds that a spindle's place taken from the work is there: a mark, or a hole.
func (f *flatWalk) checkPlaced(cut plan.Cut, m pass) {
	if cut.At == nil {
		return
	}
	switch cut.At.By {
	case byPunch, byScribe, byMate:
		if !f.punchedAt(cut.At.XMM, cut.At.YMM) {
			f.failOp("located", "cut %q stands at a %s at %s, %s; none was made there on the face that is free", cut.Name, cut.At.By, mm(cut.At.XMM), mm(cut.At.YMM))
		}
	case byHole:
		if h, ok := f.holeAt(cut.At.XMM, cut.At.YMM); !ok {
			f.failOp("located", "cut %q stands in a hole at %s, %s; there is none", cut.Name, mm(cut.At.XMM), mm(cut.At.YMM))
		} else if !led(m.Kind) && cut.At.WithinMM < h.off-figure {
			f.failOp("located", "cut %q stands in a hole that may lie %s off its place; it says %s", cut.Name, mm(h.off), mm(cut.At.WithinMM))
		}
	}
}

// led reports whether a tool is led by the hole that it stands in, so that it has no place of its own: it is then taken to lie where that hole does.
func led(k partspec.ToolKind) bool {
	return k == partspec.Taps || k == partspec.Countersink || k == partspec.Counterbores
}
