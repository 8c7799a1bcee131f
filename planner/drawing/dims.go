package drawing

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

func length(z0, z1 float64, feature, text string) plan.Dim {
	return plan.Dim{Kind: plan.DimLength, Z0: z0, Z1: z1, Feature: feature, Text: text}
}

func leader(z, r float64, inside bool, feature, text string) plan.Dim {
	return plan.Dim{Kind: plan.DimLeader, Z0: z, Z1: z, R: r, Inside: inside, Feature: feature, Text: text}
}

func diameter(s partspec.Span, r float64, inside bool, feature, text string) plan.Dim {
	return plan.Dim{Kind: plan.DimDiameter, Z0: mm(s.Left), Z1: mm(s.Right), R: r, Inside: inside, Feature: feature, Text: text}
}

// dims are the dimensions of one feature.
func dims(p *partspec.Part, f partspec.Feature) []plan.Dim {
	switch f := f.(type) {
	case *partspec.Spigot:
		return spigotDims(p, f)
	case *partspec.Bore:
		return boreDims(p, f)
	case *partspec.Recess:
		text := "recess " + diameterText(p, f.Diameter) + " × " + drawn(p, f.Width.Dimension) + " wide, " + place(p, f.Span)
		return []plan.Dim{diameter(f.Span, mm(f.Diameter.Value)/2, true, f.Name, text)}
	case *partspec.Taper:
		return taperDims(p, f)
	case *partspec.Groove:
		return []plan.Dim{diameter(f.Span, mm(f.Bottom.Value)/2, false, f.Name, grooveText(p, f))}
	case *partspec.Profile:
		return profileDims(p, f)
	case *partspec.Chamfer:
		if p.Flat() {
			return nil // told with its bore
		}
		from, to := reach(f.Edge, mm(f.Size.Value))
		r := outside(p).radius((from + to) / 2)
		if f.Edge.Inside {
			r = hollow(p).radius((from + to) / 2)
		}
		return []plan.Dim{leader((from+to)/2, r, f.Edge.Inside, f.Name, "chamfer "+drawn(p, f.Size.Dimension)+" × "+f.Angle.String())}
	case *partspec.Fillet:
		return []plan.Dim{leader(mm(f.Edge.Z), mm(f.Edge.R), f.Edge.Inside, f.Name, "R"+drawn(p, f.Radius.Dimension))}
	case *partspec.Thread:
		if p.Flat() {
			return nil // told with its bore
		}
		return []plan.Dim{threadDim(p, f)}
	case *partspec.Knurl:
		z := mm(f.Span.Left+f.Span.Right) / 2
		return []plan.Dim{leader(z, outside(p).radius(z), false, f.Name, f.Pattern+" knurl, pitch "+f.Pitch.String())}
	}
	return besideDims(p, f)
}

// besideDims are the dimensions of what lies beside the axis or across it.
func besideDims(p *partspec.Part, f partspec.Feature) []plan.Dim {
	switch f := f.(type) {
	case *partspec.Holes:
		return holesDims(p, f)
	case *partspec.Seat, *partspec.SideSeat, *partspec.CrossHole, *partspec.Flat, *partspec.Slot:
		return crossedDims(p, f)
	}
	return nil
}

func spigotDims(p *partspec.Part, f *partspec.Spigot) []plan.Dim {
	along := length(mm(f.Span.Left), mm(f.Span.Right), f.Name, sizeText(p, f.Length))
	middle := mm(f.Span.Left+f.Span.Right) / 2
	if f.AsSupplied && p.Stock.Kind == partspec.Hexagon {
		r := mm(p.Stock.EnvelopeDiameter()) / 2
		return []plan.Dim{leader(middle, r, false, f.Name, drawn(p, p.Stock.Outside.Dimension)+" across flats, as supplied"), along}
	}
	r, text := mm(f.Diameter.Value)/2, diameterText(p, f.Diameter)
	if f.AsSupplied {
		r, text = mm(p.Stock.EnvelopeDiameter())/2, "Ø"+drawn(p, p.Stock.Outside.Dimension)+" as supplied"
	}
	return []plan.Dim{diameter(f.Span, r, false, f.Name, text+threadOn(p, f.Name)), along}
}

func boreDims(p *partspec.Part, f *partspec.Bore) []plan.Dim {
	if f.At != nil {
		return append([]plan.Dim{pointedAt(*f.At, f.Name, boreText(p, f))}, from(p, *f.At, f.Name)...)
	}
	return []plan.Dim{diameter(f.Span, mm(f.Diameter.Value)/2, true, f.Name, boreText(p, f))}
}

func boreText(p *partspec.Part, f *partspec.Bore) string {
	text := diameterText(p, f.Diameter)
	if f.AsSupplied {
		text = "Ø" + drawn(p, p.Stock.Inside.Dimension) + " as supplied"
	}
	if f.At == nil {
		text += threadOn(p, f.Name)
	}
	switch {
	case f.Through:
		text += " through"
	case f.FlatBottom:
		text += " × " + shortText(p, f.Depth) + " deep, flat"
	default:
		text += " × " + shortText(p, f.Depth) + " deep"
	}
	if f.At != nil {
		text += mouthText(p, f)
	}
	return text
}

// mouthText tells the threads and chamfers of a flat part's bore, which the picture shows from the front.
func mouthText(p *partspec.Part, b *partspec.Bore) string {
	text := ""
	for _, f := range p.Features {
		switch f := f.(type) {
		case *partspec.Thread:
			if f.On == b.Name {
				text += ", " + threadText(p, f)
			}
		case *partspec.Chamfer:
			if f.Edge.Feature == b.Name {
				text += ", chamfer " + drawn(p, f.Size.Dimension) + " × " + f.Angle.String() + " at the " + faceWord(f.Edge.End)
			}
		}
	}
	return text
}

// faceWord is the word for a face of a flat part.
func faceWord(end partspec.End) string {
	if end == partspec.Left {
		return "back"
	}
	return "front"
}

// threadOn says that a diameter is only the blank of a thread.
func threadOn(p *partspec.Part, name string) string {
	for _, f := range p.Features {
		if t, ok := f.(*partspec.Thread); ok && t.On == name {
			return " under the thread"
		}
	}
	return ""
}

func taperDims(p *partspec.Part, f *partspec.Taper) []plan.Dim {
	large, small := f.Span.At(f.LargeAt), f.Span.At(f.LargeAt.Other())
	end := func(at float64, s partspec.Size, which string) plan.Dim {
		d := leader(at, mm(s.Value)/2, f.Inside, f.Name, diameterText(p, s)+" at the "+which+" end")
		d.Kind = plan.DimDiameter
		return d
	}
	slope := f.HalfAngle.DegreesMinutes() + " a side"
	if f.Named != "" {
		slope = f.Named + ", " + slope
	}
	middle := mm(f.Span.Left+f.Span.Right) / 2
	along := length(mm(f.Span.Left), mm(f.Span.Right), f.Name, sizeText(p, f.Length))
	along.Inside = f.Inside
	along.R = mm(f.Small.Value) / 2
	whole := diameter(f.Span, mm(f.Large.Value+f.Small.Value)/4, f.Inside, f.Name, slope)
	whole.Kind = plan.DimLeader
	whole.Z0, whole.Z1 = middle, middle
	return []plan.Dim{end(mm(large), f.Large, "large"), end(mm(small), f.Small, "small"), whole, along}
}

func grooveText(p *partspec.Part, f *partspec.Groove) string {
	text := "groove to " + diameterText(p, f.Bottom) + ", " + drawn(p, f.Width.Dimension) + " wide"
	if f.BottomWidth < f.Width.Value && f.Angle > 0 {
		text += ", vee " + f.Angle.String()
	}
	return text + ", " + place(p, f.Span)
}

func threadText(p *partspec.Part, f *partspec.Thread) string {
	text := f.Thread.Designation + ", " + drawn(p, f.Length.Dimension) + " full thread"
	if f.LeftHand {
		text += ", left hand"
	}
	return text
}

func threadDim(p *partspec.Part, f *partspec.Thread) plan.Dim {
	z := mm(f.Span.Left+f.Span.Right) / 2
	r := outside(p).radius(z)
	if f.Inside {
		r = hollow(p).radius(z)
	}
	return leader(z, r, f.Inside, f.Name, threadText(p, f))
}
