package drawing

import (
	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// mostPoints is how many points of a profile are dimensioned in the picture; a longer chain becomes a table among the notes.
const mostPoints = 6

// profileDims are the points of a profile and the radii of its arcs.
func profileDims(p *partspec.Part, f *partspec.Profile) []plan.Dim {
	var out []plan.Dim
	if f.Span.Length() != p.Length.Value { // else the part's own length says it
		out = append(out, length(mm(f.Span.Left), mm(f.Span.Right), f.Name, figure(p, f.Span.Length())))
	}
	for _, s := range f.Segments {
		if s.Arc {
			z := mm(s.Z0+s.Z1) / 2
			out = append(out, leader(z, at(profileSegment(s), z), false, f.Name, "R"+figure(p, s.Radius)))
		}
	}
	if len(f.Segments) > mostPoints {
		return out
	}
	said := map[units.Length]bool{} // one dimension serves all points of one diameter
	for i, point := range points(f) {
		if !said[point.r] {
			out = append(out, pointDim(p, f, point))
		}
		said[point.r] = true
		if i > 0 && i < len(f.Segments) {
			out = append(out, length(mm(f.Span.Left), mm(point.z), f.Name, figure(p, point.z-f.Span.Left)))
		}
	}
	return out
}

func pointDim(p *partspec.Part, f *partspec.Profile, at point) plan.Dim {
	d := leader(mm(at.z), mm(at.r), false, f.Name, "Ø"+figure(p, 2*at.r))
	d.Kind = plan.DimDiameter
	return d
}

type point struct{ z, r units.Length }

// points are the ends of a profile's segments, from left to right.
func points(f *partspec.Profile) []point {
	var out []point
	for i, s := range f.Segments {
		if i == 0 {
			out = append(out, point{s.Z0, s.R0})
		}
		out = append(out, point{s.Z1, s.R1})
	}
	return out
}

func figure(p *partspec.Part, l units.Length) string {
	if p.Inches {
		return l.Text(units.InInch)
	}
	return l.Figure(units.InMM)
}

// profileNotes say what the picture cannot: a long chain's points, and the metal allowed on and off.
func profileNotes(p *partspec.Part, f *partspec.Profile) []string {
	var out []string
	if len(f.Segments) > mostPoints {
		text := f.Name + ", distance from its left end and diameter:"
		for _, point := range points(f) {
			text += " " + figure(p, point.z-f.Span.Left) + " Ø" + figure(p, 2*point.r) + ";"
		}
		out = append(out, text[:len(text)-1]+".")
	}
	if f.Zone.Low != 0 || f.Zone.High != 0 {
		zone := units.Limits{Low: f.Zone.Low, High: f.Zone.High}
		text := f.Name + ": " + zone.Text(units.InMM) + " of metal on the curve, square to it"
		if f.FinishFile {
			text += ", finished by file"
		}
		out = append(out, text+".")
	}
	return out
}
