package replay

import (
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// askewFigure is how far the ends of an edge may lie off the table's travel for the angle that the plan tells, in mm: the rounding of that angle.
const askewFigure = 1e-3

// checkAskew holds that only work clamped to a mill's table is turned round on it, and that nothing is then counted by the table's dials.
func (f *flatWalk) checkAskew() {
	s := f.setup
	if s.AskewDeg == 0 {
		return
	}
	if s.MachineKind != string(partspec.Mill) || s.HoldingKind != string(partspec.TableClamps) {
		f.failOp("pose", "it is turned round by %s degrees: only work clamped to a mill's table is", mm(s.AskewDeg))
	}
	for _, op := range s.Operations {
		for _, cut := range op.Cuts {
			if cut.Along == nil {
				f.fail(where{s.Number, op.ID}, "pose", "cut %q is counted by dials, and the work lies askew", cut.Name)
				return
			}
		}
	}
}

// lined notes the edges whose lines are scribed, each by the operation that is named after it.
func (f *flatWalk) lined(op plan.Operation) {
	if name, ok := strings.CutPrefix(op.Feature, "edge."); ok && f.datumReady(0) && f.datumReady(1) {
		f.lines[name] = f.free()
	}
}

// rebuildAlong makes the movement of a cutter past an edge that lies along the table: beside the edge by its radius and what is left, brought there by the edge's line.
func (f *flatWalk) rebuildAlong(op plan.Operation, cut plan.Cut, key cutKey) (pass, bool) {
	tool, err := f.cutterFor(op, cut)
	if err != nil {
		f.failOp("tool", "%v", err)
		return pass{}, false
	}
	a := *cut.Along
	i := f.edgeNamed(a.Edge)
	if i < 0 || f.drawn.outline.Edges[i].IsArc() || op.Process != plan.MillEdge || cut.At != nil || cut.ToMeasure != nil {
		f.failOp("edges", "cut %q goes along %q: expected an edge that is milled, straight in the outline, and nothing else that says where", cut.Name, a.Edge)
		return pass{}, false
	}
	e := f.drawn.outline.Edges[i]
	long := e.Length()
	ux, uy := (e.X1-e.X0)/long, (e.Y1-e.Y0)/long
	sin, cos := math.Sincos(f.setup.AskewDeg * math.Pi / 180)
	if off := math.Abs(ux*sin-uy*cos) * long; f.setup.AskewDeg == 0 || off > askewFigure {
		f.failOp("pose", "%s does not lie along the table's x: its ends lie %s off", a.Edge, mm(off))
		return pass{}, false
	}
	if f.lines[a.Edge] != f.free() {
		f.failOp("located", "%s has no line on the face that looks at the spindle, by which it could be set round and milled", a.Edge)
	}
	if !(a.WithinMM >= mostFileSure) || math.IsInf(a.WithinMM, 0) || !(a.LeftMM >= 0 && a.LeftMM <= f.reach()) || !(math.Min(a.BeforeMM, a.BeyondMM) >= 0 && math.Max(a.BeforeMM, a.BeyondMM) <= f.reach()+tool.size+askewRoom) {
		f.failOp("edges", "%s is to be left %s on within %s, the cutter going %s and %s beyond it; to a gauge at best within %s", a.Edge, mm(a.LeftMM), mm(a.WithinMM), mm(a.BeforeMM), mm(a.BeyondMM), mm(mostFileSure))
		return pass{}, false
	}
	m := pass{cutter: tool, key: key, name: cut.Name, pose: f.poseFor(op), counts: countsOf(cut), radius: tool.size / 2, within: a.WithinMM, by: byLine}
	m.from, m.to = place{math.NaN(), math.NaN(), math.NaN()}, place{}
	if !f.readMill(&m.from, cut.From) {
		return pass{}, false
	}
	m.to = m.from
	if !f.readMill(&m.to, cut.To) || math.IsNaN(m.from[2]) || !math.IsNaN(m.from[0]) || !math.IsNaN(m.from[1]) {
		f.failOp("readings", "cut %q goes along an edge: the dial along the spindle alone is read", cut.Name)
		return pass{}, false
	}
	ox, oy := e.Outward(0)
	out := a.LeftMM + m.radius
	m.from[0], m.from[1] = e.X0+out*ox-a.BeforeMM*ux, e.Y0+out*oy-a.BeforeMM*uy
	m.to[0], m.to[1] = e.X1+out*ox+a.BeyondMM*ux, e.Y1+out*oy+a.BeyondMM*uy
	m.told = [2]float64{m.to[0], m.to[1]}
	if d, _ := f.machine.Dial(dialX); d.Travel > 0 && long+a.BeforeMM+a.BeyondMM > float64(d.Travel)+same {
		f.failOp("travel", "cut %q is %s long; the table goes %s", cut.Name, mm(long+a.BeforeMM+a.BeyondMM), mm(float64(d.Travel)))
	}
	return m, true
}

// byLine is what brings a cutter beside an edge that lies along the table: its scribed line, or a gauge.
const byLine = "line"

// askewRoom is how far beyond all work a cutter runs at the most, mm; more is no run in but a mistake. Ours, no source.
const askewRoom = 50.0
