package drawing

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// crossed are the seats, cross holes, flats and slots of a turned part.
func crossed(p *partspec.Part) []plan.Crossed {
	var out []plan.Crossed
	for _, f := range p.Features {
		switch f := f.(type) {
		case *partspec.Seat:
			out = append(out, seatShape(p, f))
		case *partspec.SideSeat:
			in := f.Hollowed()
			out = append(out, plan.Crossed{Kind: plan.CrossedSeat, Feature: f.Name, Z0: mm(in.Left), Z1: mm(in.Right), AngleDeg: float64(f.Angle), RadiusMM: mm(f.Radius.Value),
				FloorMM: outside(p).radius(mm(f.AxisZ)) - mm(f.Depth), WidthMM: mm(f.Across), AxisZ: mm(f.AxisZ)})
		case *partspec.CrossHole:
			r := mm(f.Diameter.Value) / 2
			c := plan.Crossed{Kind: plan.CrossedHole, Feature: f.Name, Z0: mm(f.Z.Value) - r, Z1: mm(f.Z.Value) + r, AngleDeg: float64(f.Angle), RadiusMM: r}
			out = append(out, floorOf(p, f, c))
		case *partspec.Flat:
			out = append(out, plan.Crossed{Kind: plan.CrossedFlat, Feature: f.Name, Z0: mm(f.Span.Left), Z1: mm(f.Span.Right), AngleDeg: float64(f.Angle),
				FloorMM: mm(f.Distance.Value), Count: f.Count})
		case *partspec.Slot:
			out = append(out, plan.Crossed{Kind: plan.CrossedSlot, Feature: f.Name, Z0: mm(f.Span.Left), Z1: mm(f.Span.Right), AngleDeg: float64(f.Angle),
				FloorMM: outside(p).radius(mm(f.Span.Left+f.Span.Right)/2) - mm(f.Depth.Value), WidthMM: mm(f.Width.Value)})
		}
	}
	return out
}

func seatShape(p *partspec.Part, f *partspec.Seat) plan.Crossed {
	c := plan.Crossed{Kind: plan.CrossedSeat, Feature: f.Name, AngleDeg: float64(f.Angle), RadiusMM: mm(f.Radius.Value), WidthMM: mm(f.Across), AxisZ: mm(f.AxisZ)}
	switch f.On {
	case partspec.Left:
		c.On, c.Z1 = "left", mm(f.Depth)
	case partspec.Right:
		c.On, c.Z0, c.Z1 = "right", mm(p.Length.Value-f.Depth), mm(p.Length.Value)
	}
	return c
}

// floorOf says how deep a cross hole goes: right through, into the bore that it ends in, or to its depth.
func floorOf(p *partspec.Part, f *partspec.CrossHole, c plan.Crossed) plan.Crossed {
	z := mm(f.Z.Value)
	out := outside(p).radius(z)
	switch {
	case f.Through:
		c.FloorMM = -out
	case f.Into != "":
		c.FloorMM = hollow(p).radius(z)
	default:
		c.FloorMM = out - mm(f.Depth.Value)
	}
	return c
}

// crossedDims point at what is cut across the axis and say all of it.
func crossedDims(p *partspec.Part, f partspec.Feature) []plan.Dim {
	switch f := f.(type) {
	case *partspec.Seat:
		if p.Flat() {
			return faceSeatDims(p, f)
		}
		text := "seat R" + sizeText(p, f.Radius) + ", " + figure(p, f.Depth) + " deep at the crown, pipe along " + f.Angle.String()
		r := mm(f.Across) / 4
		up := math.Sqrt(max(0, mm(f.Radius.Value)*mm(f.Radius.Value)-r*r))
		z := mm(f.AxisZ) + up
		if f.On == partspec.Right {
			z = mm(f.AxisZ) - up
		}
		return []plan.Dim{leader(z, r, false, f.Name, text)}
	case *partspec.SideSeat:
		return sideSeatDims(p, f)
	case *partspec.CrossHole:
		return []plan.Dim{leader(mm(f.Z.Value), outside(p).radius(mm(f.Z.Value)), false, f.Name, crossHoleText(p, f))}
	case *partspec.Flat:
		z := mm(f.Span.Left+f.Span.Right) / 2
		text := "flat, " + sizeText(p, f.Distance) + " from the axis, at " + f.Angle.String()
		if f.Count > 1 {
			text = fmt.Sprintf("%d flats, each %s from the axis, the first at %s", f.Count, sizeText(p, f.Distance), f.Angle)
		}
		return []plan.Dim{leader(z, outside(p).radius(z), false, f.Name, text)}
	case *partspec.Slot:
		if p.Flat() {
			return slotDims(p, f)
		}
		z := mm(f.Span.Left+f.Span.Right) / 2
		text := "slot " + sizeText(p, f.Width) + " wide, " + sizeText(p, f.Depth) + " deep, at " + f.Angle.String() + ", " + place(p, f.Span)
		return []plan.Dim{leader(z, outside(p).radius(z), false, f.Name, text)}
	}
	return nil
}

func crossHoleText(p *partspec.Part, f *partspec.CrossHole) string {
	text := "cross hole "
	switch {
	case f.Thread != nil:
		text += f.Thread.Thread.Designation
	case f.Screw != "":
		text += diameterText(p, f.Diameter) + " for " + f.Screw
	default:
		text += diameterText(p, f.Diameter)
	}
	switch {
	case f.Through:
		text += " right through"
	case f.Into != "":
		text += " into " + f.Into
	default:
		text += " × " + shortText(p, f.Depth) + " deep"
	}
	return text + ", " + sizeText(p, f.Z) + " from the left end, at " + f.Angle.String()
}

func slotDims(p *partspec.Part, f *partspec.Slot) []plan.Dim {
	text := "slot " + sizeText(p, f.Width) + " wide"
	if f.Through {
		text += " through"
	} else {
		text += " × " + shortText(p, f.Depth) + " deep"
	}
	out := []plan.Dim{pointedAt(f.Ends[0], f.Name, text)}
	for _, e := range f.Ends {
		out = append(out, from(p, e, f.Name)...)
	}
	return out
}
