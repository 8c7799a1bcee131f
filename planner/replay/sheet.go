package replay

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// checkPlan holds what the plan says of itself and of the workshop.
func checkPlan(job *partspec.Job, p *plan.Plan) (failures []Failure) {
	fail := func(format string, a ...any) {
		failures = append(failures, Failure{Clause: "plan", Reason: fmt.Sprintf(format, a...)})
	}
	if p.Schema != plan.Schema {
		fail("its form is %q; this proof reads %q", p.Schema, plan.Schema)
	}
	if p.Workshop != job.Workshop.Name || p.BuiltInWorkshop != job.Workshop.BuiltIn {
		fail("it is for the workshop %q, the job's is %q", p.Workshop, job.Workshop.Name)
	}
	for i, part := range p.Parts {
		for _, m := range part.Mates {
			if k := slices.IndexFunc(p.Parts, func(other plan.Part) bool { return other.Name == m.Part }); k > i {
				fail("%s is spotted through from %s, which comes after it", part.Name, m.Part)
			}
		}
	}
	return failures
}

// checkHead holds what the sheet says of the part against the job.
func checkHead(r *record, part *partspec.Part, p plan.Part) {
	s := part.Stock
	switch {
	case p.Material != part.Material.ID || p.MaterialName != part.Material.Name:
		r.fail(where{}, "part", "the plan is for %q, the part is of %q", p.MaterialName, part.Material.Name)
	case p.Quantity != part.Quantity:
		r.fail(where{}, "part", "the plan makes %d, the job asks for %d", p.Quantity, part.Quantity)
	case p.DrawnInInch != part.Inches:
		r.fail(where{}, "part", "the plan and the job differ on whether it is drawn in inches")
	case math.Abs(p.LengthMM-float64(part.Length.Value)) > figure:
		r.fail(where{}, "part", "the plan makes it %s long, it is drawn %s", mm(p.LengthMM), mm(float64(part.Length.Value)))
	case p.Stock.Kind != s.Kind.String() || math.Abs(p.Stock.OutsideMM-float64(s.Outside.Value)) > figure || math.Abs(p.Stock.InsideMM-float64(s.Inside.Value)) > figure:
		r.fail(where{}, "stock", "the list asks for %s of %s by %s; the job has %s of %s by %s", p.Stock.Kind, mm(p.Stock.OutsideMM), mm(p.Stock.InsideMM),
			s.Kind, mm(float64(s.Outside.Value)), mm(float64(s.Inside.Value)))
	}
}

// checkWords holds, in an operation, what the metal cannot show: whose it is, its place in the row, and figures that must not be negative.
func checkWords(r *record, at where, part *partspec.Part, op plan.Operation) {
	switch op.Feature {
	case "part", "face.left", "face.right":
	default:
		if part.Feature(op.Feature) == nil && !isEdge(part, op.Feature) {
			r.fail(at, "part", "it is for %q, which is no feature of the part", op.Feature)
		}
	}
	if op.DepthMM < 0 || op.FeedMM < 0 || op.ForceN < 0 || op.RPM < 0 {
		r.fail(at, "figures", "depth, feed, force and speed are 0 or more")
	}
	readsTop := false
	for _, cut := range op.Cuts {
		_, top := countsOf(cut)["top"]
		readsTop = readsTop || top
	}
	if op.TopSlideDeg != 0 && !readsTop {
		r.fail(at, "figures", "the top slide is set over by %g degrees, and no cut moves it", op.TopSlideDeg)
	}
	for _, z := range op.Zeros {
		if z.Outward && z.Dial != "cross" {
			r.fail(at, "zero", "the %s dial does not count outward", z.Dial)
		}
	}
}

// isEdge reports whether a name is that of an edge of the outline, "edge.left".
func isEdge(part *partspec.Part, name string) bool {
	edge, ok := strings.CutPrefix(name, "edge.")
	if !ok || part.Outline == nil {
		return false
	}
	_, known := part.Outline.Edge(edge)
	return known
}

// checkSizes holds the limits that the sheet gives to measure by against the drawn ones, and the instrument against the workshop.
func checkSizes(r *record, job *partspec.Job, part *partspec.Part, p plan.Part) {
	for _, s := range p.Setups {
		for _, c := range s.BeforeRelease {
			checkSize(r, where{setup: s.Number}, job, part, c)
		}
		for _, op := range s.Operations {
			for _, c := range op.Checks {
				checkSize(r, where{s.Number, op.ID}, job, part, c)
			}
		}
	}
}

func checkSize(r *record, at where, job *partspec.Job, part *partspec.Part, c plan.Check) {
	low, high := c.LowMM, c.HighMM
	if size, ok := sizeOf(part, c); ok {
		low, high = float64(size.Low), float64(size.High)
	} else if low != 0 || high != 0 {
		r.fail(at, "check", "%q is no size of the drawing, or of another feature than %q", c.What, c.Feature)
	}
	if math.Abs(c.LowMM-low) > figure || math.Abs(c.HighMM-high) > figure {
		r.fail(at, "check", "%s is to be measured against %s to %s; it is drawn %s to %s", c.What, mm(c.LowMM), mm(c.HighMM), mm(low), mm(high))
	}
	if c.Instrument == "" {
		return
	}
	for _, i := range job.Workshop.Instruments {
		if i.Name == c.Instrument {
			return
		}
	}
	r.fail(at, "check", "%s is to be measured with %q, which the workshop has not", c.What, c.Instrument)
}

// sizeOf is the drawn size that a check is about, where its words tell. The blank of a knurl has none of its own: it is anything that the metal's own
// proof lets pass.
func sizeOf(part *partspec.Part, c plan.Check) (partspec.Size, bool) {
	if c.What == "length over all" {
		return part.Length, true
	}
	_, what, _ := strings.Cut(c.What, ", ")
	switch f := part.Feature(c.Feature).(type) {
	case *partspec.Spigot:
		if what == "diameter" && knurled(part, f.Name) {
			return partspec.Size{Low: units.Length(c.LowMM), High: units.Length(c.HighMM)}, true
		}
		return f.Diameter, what == "diameter"
	case *partspec.Bore:
		if what == "depth" {
			return f.Depth, true
		}
		return f.Diameter, what == "diameter"
	case *partspec.Recess:
		return f.Diameter, what == "diameter"
	case *partspec.Groove:
		return f.Bottom, strings.HasPrefix(what, "diameter")
	case *partspec.Taper:
		return f.Large, what == "large end"
	case *partspec.Holes:
		return f.Diameter, what == "diameter"
	case *partspec.CrossHole:
		return f.Diameter, what == "diameter"
	case *partspec.Flat:
		return f.Distance, what == "distance"
	case *partspec.Slot:
		if strings.HasPrefix(what, "depth") {
			return f.Depth, true
		}
		return f.Width, what == "width"
	case *partspec.Seat:
		return f.Radius, what == "radius"
	}
	return flatSize(part, c)
}

func knurled(part *partspec.Part, name string) bool {
	for _, f := range part.Features {
		if k, ok := f.(*partspec.Knurl); ok && k.On == name {
			return true
		}
	}
	return false
}
