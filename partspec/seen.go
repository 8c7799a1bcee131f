package partspec

import "catchplate/partspec/units"

// Seen says from where a part is looked at.
type Seen struct {
	From Axis
	Base *Part // the part as drawn
}

// SeenFrom is the part as a tool meets it while an offset axis runs on the spindle's: a piece of existing stock, whose outside is as far out as its farthest metal
// swings (its own radius and the throw), with the eccentrics to be cut in it. What lies about the main axis is finished and stays as it is.
//
// It holds more metal than there is, never less: a cut that is clear of it is clear of the work, and what is turned about the offset axis is exact.
func (p *Part) SeenFrom(a Axis) *Part {
	seen := *p
	seen.Axes, seen.Relations, seen.Seen = nil, nil, &Seen{From: a, Base: p}
	whole := exact(p.Length.Dimension, p.Length.Range, "as turned about the main axis")
	seen.Length = whole
	var swept []Feature
	for _, f := range p.Features {
		if s, ok := sweptBy(f, a.Offset); ok {
			swept = append(swept, s)
		}
	}
	seen.Stock = Stock{Kind: Existing, Length: whole.Dimension, Outside: widestOf(swept), Features: swept, Range: p.Stock.Range}
	seen.Features = nil
	for _, f := range swept {
		left := *(f.(*Spigot))
		left.AsSupplied = true
		for _, e := range a.Features {
			if s, ok := e.(*Spigot); ok {
				left.leave(s)
			}
		}
		seen.Features = append(seen.Features, &left)
	}
	seen.Features = append(seen.Features, a.Features...)
	return &seen
}

// sweptBy is the cylinder that an outside feature swings in about an axis that lies an offset away.
func sweptBy(f Feature, offset Size) (*Spigot, bool) {
	var span Span
	var across Size
	switch f := f.(type) {
	case *Spigot:
		span, across = f.Span, f.Diameter
	case *Taper:
		span, across = f.Span, f.Large
	case *Profile:
		span, across = f.Span, f.widest()
	default:
		return nil, false
	}
	s := &Spigot{FeatureHead: f.Head(), Span: span}
	s.Length = exact(units.Dimension{Value: span.Right - span.Left}, f.Head().Range, "as turned about the main axis")
	s.Diameter = exact(units.Dimension{Value: across.Value + 2*offset.Value}, across.Range, "as it swings about the offset axis")
	s.Diameter.Low, s.Diameter.High = across.Low+2*offset.Low, across.High+2*offset.High
	return s, true
}

// widest is a profile's largest diameter.
func (f *Profile) widest() Size {
	most := units.Length(0)
	for _, g := range f.Segments {
		most = max(most, g.R0, g.R1)
		if g.Arc && g.Convex {
			most = max(most, g.CentreR+g.Radius)
		}
	}
	return exact(units.Dimension{Value: 2 * most}, f.Range, "widest of the profile")
}

// leave takes the stretch of an eccentric at an end away.
func (f *Spigot) leave(e *Spigot) {
	switch {
	case e.Span.Right <= f.Span.Left || e.Span.Left >= f.Span.Right:
		return
	case e.Span.Left <= f.Span.Left:
		f.Span.Left = e.Span.Right
	default:
		f.Span.Right = e.Span.Left
	}
	f.Length = Size{Dimension: units.Dimension{Value: f.Span.Right - f.Span.Left}, Low: f.Length.Low - e.Length.High, High: f.Length.High - e.Length.Low, Basis: "what the eccentric leaves", Range: f.Length.Range}
}

func widestOf(swept []Feature) Size {
	var most Size
	for _, f := range swept {
		if s := f.(*Spigot); s.Diameter.Value > most.Value {
			most = s.Diameter
		}
	}
	return most
}
