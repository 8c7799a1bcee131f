package replay

import (
	"math"
	"slices"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
)

// beds are what carries flat work.
var beds = []string{"plate", "parallels", "backing board", "jaws"}

// checkSaid holds what a setup says of itself: figures of jaws, bed and surface that must agree with the workshop and with each other.
func (f *flatWalk) checkSaid() {
	s, g, h := f.setup, f.setup.Grip, f.holding
	if s.Tailstock {
		f.failOp("grip", "a centre cannot support flat work")
	}
	if s.Bed != nil && !slices.Contains(beds, s.Bed.Kind) {
		f.failOp("bed", "%q carries no work: expected plate, parallels, backing board or jaws", s.Bed.Kind)
	}
	if counted := f.onSpindle() && !f.onLathe() && s.Locates == f.datumWords(); g.Surface != s.Locates && !counted {
		f.failOp("grip", "it grips %q and is located on %q", g.Surface, s.Locates)
	}
	if g.Kind == "vice" {
		if g.Jaws != 2 {
			f.failOp("grip", "a vice has two jaws, not %d", g.Jaws)
		}
		for _, p := range s.Presses {
			if widest := float64(h.JawWidth); math.Abs(p.WidthMM-g.JawWidthMM) > figure || widest > 0 && p.WidthMM > widest+figure {
				f.failOp("grip", "a jaw presses over %s; the grip says %s, the jaws are %s wide", mm(p.WidthMM), mm(g.JawWidthMM), mm(widest))
			}
		}
	}
	if last := f.lastN(); g.MostN != 0 && last > g.MostN*(1+figure) {
		f.failOp("grip force", "%.0f N is more than the %.0f that the work stands", last, g.MostN)
	}
}

// datumWords name the edges that the dials of a table count from.
func (f *flatWalk) datumWords() string {
	return "its " + strings.Join(f.part.Outline.Datum, " and ") + " edges"
}

// checkSuits holds that an operation's tool is of a kind that does such work.
func (f *flatWalk) checkSuits(op plan.Operation) {
	if c, err := findCutter(f.job.Workshop, op.Tool.ID, op.Tool.SizeMM); err == nil && !suits(op.Process, c.Kind) {
		f.failOp("tool", "a %s does not %s", c.Kind, op.Process)
	}
}

// checkHandTool holds that hand work has a tool of the workshop for it, and no speed.
func (f *flatWalk) checkHandTool(op plan.Operation) {
	kinds := map[plan.Process]partspec.ToolKind{plan.Saw: partspec.Saw, plan.FileEdge: partspec.Files, plan.MarkOut: partspec.Scriber, plan.FileSeat: partspec.Files}
	c, err := findCutter(f.job.Workshop, op.Tool.ID, op.Tool.SizeMM)
	if err != nil || c.Kind != kinds[op.Process] {
		f.failOp("tool", "%q is no %s of the workshop", op.Tool.ID, kinds[op.Process])
	}
	if op.RPM != 0 || f.onSpindle() {
		f.failOp("machine", "%s is hand work at the bench", op.Process)
	}
}

// checkCaps holds what the plan says of the shaking against what it reckons with, and every speed against it.
func (f *flatWalk) checkCaps(b plan.Balance, limit float64) {
	most, err := mechanics.Unbalance{KGMM: b.LeftOverKgMM}.SpeedCapRPM(limit)
	if err != nil {
		return
	}
	if b.ShakingN > limit+figure || b.MostRPM > most*(1+figure)+sameSpeed {
		f.failOp("balance", "it allows %s rev/min and %s N of shaking; %s kg·mm allow %.0f and %s (rule B-09)", mm(b.MostRPM), mm(b.ShakingN), mm(b.LeftOverKgMM), most, mm(limit))
	}
	for _, op := range f.setup.Operations {
		if op.RPM > b.MostRPM+sameSpeed && op.RPM > slowest(f.machine)+sameSpeed {
			f.fail(where{f.setup.Number, op.ID}, "balance", "%s rev/min is more than the %s that its balance allows (rule B-09)", mm(op.RPM), mm(b.MostRPM))
			return
		}
	}
}

// flatSize is the drawn size that a check of a flat part measures.
func flatSize(part *partspec.Part, c plan.Check) (partspec.Size, bool) {
	if c.What == "thickness" {
		return part.Length, true
	}
	name, ok := strings.CutPrefix(c.Feature, "edge.")
	if !ok || part.Outline == nil {
		return partspec.Size{}, false
	}
	for _, size := range edgeSizes(part, name) {
		loose := figure + size.loose
		if math.Abs(size.low-c.LowMM) <= loose && math.Abs(size.high-c.HighMM) <= loose {
			return partspec.Size{Low: units.Length(c.LowMM), High: units.Length(c.HighMM)}, true
		}
	}
	return partspec.Size{}, false
}

// edgeSize is a measure at an edge: its limits, and how far a bore that it is measured from may lie off its middle size, in radius.
type edgeSize struct{ low, high, loose float64 }

// edgeSizes are what can be measured of an edge: across to a parallel edge that looks the other way; an arc's radius or diameter, and its wall round a bore.
func edgeSizes(part *partspec.Part, name string) []edgeSize {
	e, ok := part.Outline.Edge(name)
	if !ok {
		return nil
	}
	var sizes []edgeSize
	add := func(nominal, off, on, loose units.Length) {
		sizes = append(sizes, edgeSize{float64(nominal - off), float64(nominal + on), float64(loose)})
	}
	off, on := looseOf(part, e)
	if e.Arc {
		add(e.Radius, off, on, 0)
		add(2*e.Radius, 2*off, 2*on, 0)
		for _, f := range part.Features {
			if b, ok := f.(*partspec.Bore); ok && b.At != nil && math.Hypot(float64(b.At.X.Mid()-e.CX), float64(b.At.Y.Mid()-e.CY)) <= figure {
				add(e.Radius-b.Diameter.Mid()/2, off, on, b.Diameter.Width()/4)
			}
		}
		return sizes
	}
	for _, o := range part.Outline.Edges {
		along := (e.X1-e.X0)*(o.X1-o.X0) + (e.Y1-e.Y0)*(o.Y1-o.Y0)
		across := (e.X1-e.X0)*(o.Y1-o.Y0) - (e.Y1-e.Y0)*(o.X1-o.X0)
		if o.Arc || along >= 0 || math.Abs(float64(across)) > figure {
			continue
		}
		long := math.Hypot(float64(e.X1-e.X0), float64(e.Y1-e.Y0))
		apart := math.Abs(float64((o.X0-e.X0)*(e.Y1-e.Y0)-(o.Y0-e.Y0)*(e.X1-e.X0))) / long
		otherOff, otherOn := looseOf(part, o)
		add(units.Length(apart), off+otherOff, on+otherOn, 0)
	}
	return sizes
}

// looseOf is how far an edge may lie off its place; a datum edge not at all.
func looseOf(part *partspec.Part, e partspec.OutlineEdge) (off, on units.Length) {
	if slices.Contains(part.Outline.Datum, e.Name) {
		return 0, 0
	}
	return e.Off, e.On
}
