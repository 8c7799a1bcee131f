package drawing

import (
	"fmt"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

// notes are what stands beside the picture: relations, general tolerance, roundness, roughness, sizes measured, remarks.
func notes(p *partspec.Part) []string {
	var out []string
	for _, r := range p.Relations {
		out = append(out, relationText(p, r))
	}
	for _, f := range p.Features {
		if profile, ok := f.(*partspec.Profile); ok {
			out = append(out, profileNotes(p, profile)...)
		}
		if m := measured(f); m != nil {
			out = append(out, f.Head().Name+": made and measured, "+m.String()+"; this size counts.")
		}
	}
	out = append(out, holesNotes(p)...)
	out = append(out, axisNotes(p)...)
	if p.General != "" {
		out = append(out, "Sizes without limits: ISO 2768-"+p.General+".")
	}
	if p.Roundness > 0 {
		out = append(out, "Round within "+p.Roundness.String()+" (radius).")
	}
	out = append(out, roughness(p)...)
	for _, f := range p.Features {
		if h := f.Head(); h.Note != "" {
			out = append(out, h.Name+": "+h.Note)
		}
	}
	return out
}

func relationText(p *partspec.Part, r partspec.Relation) string {
	within := r.Within.String()
	if p.Inches {
		within = r.Within.Both(units.InInch)
	}
	switch r.Kind {
	case partspec.Concentric:
		return fmt.Sprintf("%s and %s: axes within %s (diameter of the zone).", r.Of, r.To, within)
	case partspec.RunOut:
		return fmt.Sprintf("%s about %s: run-out at most %s, full indicator reading.", r.Of, r.To, within)
	case partspec.Square:
		return fmt.Sprintf("%s square to %s within %s.", r.Of, r.To, within)
	case partspec.Parallel:
		return fmt.Sprintf("%s parallel to %s within %s.", r.Of, r.To, within)
	}
	return fmt.Sprintf("%s to %s: %s within %s.", r.Of, r.To, r.Kind, within)
}

func measured(f partspec.Feature) *units.Length {
	switch f := f.(type) {
	case *partspec.Spigot:
		return f.Measured
	case *partspec.Bore:
		return f.Measured
	}
	return nil
}

func roughness(p *partspec.Part) []string {
	var out []string
	ra := func(r float64) string { return "Ra " + units.Decimal(r, 2) + " µm" }
	if p.Roughness > 0 {
		out = append(out, "Machined surfaces: "+ra(p.Roughness)+" unless said otherwise.")
	}
	for _, f := range p.Features {
		own := 0.0
		switch f := f.(type) {
		case *partspec.Spigot:
			own = f.Roughness
		case *partspec.Bore:
			own = f.Roughness
		case *partspec.Taper:
			own = f.Roughness
		case *partspec.Profile:
			own = f.Roughness
		}
		if own > 0 {
			out = append(out, f.Head().Name+": "+ra(own)+".")
		}
	}
	return out
}
