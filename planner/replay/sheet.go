package replay

import (
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// checkHead holds what the sheet says of the part against the job.
func checkHead(r *record, part *partspec.Part, p plan.Part) {
	if p.Material != part.Material.ID {
		r.fail(where{}, "part", "the plan is for %q, the part is of %q", p.Material, part.Material.ID)
	}
	if p.Quantity != part.Quantity {
		r.fail(where{}, "part", "the plan makes %d, the job asks for %d", p.Quantity, part.Quantity)
	}
	if math.Abs(p.LengthMM-float64(part.Length.Value)) > figure {
		r.fail(where{}, "part", "the plan makes it %s long, it is drawn %s", mm(p.LengthMM), mm(float64(part.Length.Value)))
	}
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
	if size, ok := sizeOf(part, c); ok {
		low, high := float64(size.Low), float64(size.High)
		if math.Abs(c.LowMM-low) > figure || math.Abs(c.HighMM-high) > figure {
			r.fail(at, "check", "%s is to be measured against %s to %s; it is drawn %s to %s", c.What, mm(c.LowMM), mm(c.HighMM), mm(low), mm(high))
		}
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

// sizeOf is the drawn size that a check is about, where its words tell.
func sizeOf(part *partspec.Part, c plan.Check) (partspec.Size, bool) {
	if c.What == "length over all" {
		return part.Length, true
	}
	_, what, _ := strings.Cut(c.What, ", ")
	switch f := part.Feature(c.Feature).(type) {
	case *partspec.Spigot:
		return f.Diameter, what == "diameter" && !knurled(part, f.Name) // a knurl's blank is smaller; the metal itself is held to it
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
	}
	return partspec.Size{}, false
}

func knurled(part *partspec.Part, name string) bool {
	for _, f := range part.Features {
		if k, ok := f.(*partspec.Knurl); ok && k.On == name {
			return true
		}
	}
	return false
}
