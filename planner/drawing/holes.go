package drawing

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// holesOf are the holes along Z beside the axis, in the order of the file: bores at a place by themselves, patterns numbered from 1.
func holesOf(p *partspec.Part) []plan.FlatHole {
	var out []plan.FlatHole
	for _, f := range p.Features {
		switch f := f.(type) {
		case *partspec.Bore:
			if f.At != nil {
				out = append(out, mouthFirst(plan.FlatHole{Feature: f.Name, XMM: mm(f.At.X.Value), YMM: mm(f.At.Y.Value), DiameterMM: mm(f.Diameter.Value)}, f.Span, f.From))
			}
		case *partspec.Thread:
			if h, ok := overBore(p, f.On, f.Name, f.From); ok {
				h.Thread = f.Thread.Designation
				out = append(out, h)
			}
		case *partspec.Chamfer:
			if h, ok := overBore(p, f.Edge.Feature, f.Name, f.Edge.End); ok {
				h.SinkMM = h.DiameterMM + 2*mm(f.Size.Value)*math.Tan(f.Angle.Radians())
				out = append(out, h)
			}
		case *partspec.Holes:
			for i, at := range f.Places {
				h := plan.FlatHole{Number: i + 1, Feature: f.Name, XMM: mm(at.X.Value), YMM: mm(at.Y.Value), DiameterMM: mm(f.Diameter.Value)}
				if f.Thread != nil {
					h.Thread = f.Thread.Thread.Designation
				}
				if f.Sink != nil {
					h.SinkMM = mm(f.Sink.Diameter.Value)
				}
				out = append(out, mouthFirst(h, f.Span, f.From))
			}
		}
	}
	return out
}

// overBore is what is drawn of a thread or a chamfer over the bore that it is in; none on the axis of a turned part.
func overBore(p *partspec.Part, bore, feature string, from partspec.End) (plan.FlatHole, bool) {
	b, ok := p.Feature(bore).(*partspec.Bore)
	if !ok || b.At == nil {
		return plan.FlatHole{}, false
	}
	return mouthFirst(plan.FlatHole{Feature: feature, XMM: mm(b.At.X.Value), YMM: mm(b.At.Y.Value), DiameterMM: mm(b.Diameter.Value)}, b.Span, from), true
}

// mouthFirst says where a hole begins and ends along Z.
func mouthFirst(h plan.FlatHole, s partspec.Span, from partspec.End) plan.FlatHole {
	h.FromZ, h.ToZ = mm(s.Right), mm(s.Left)
	if from == partspec.Left {
		h.FromZ, h.ToZ = h.ToZ, h.FromZ
	}
	return h
}

func slotsOf(p *partspec.Part) []plan.FlatSlot {
	var out []plan.FlatSlot
	for _, f := range p.Features {
		s, ok := f.(*partspec.Slot)
		if !ok {
			continue
		}
		slot := plan.FlatSlot{Feature: s.Name, X0: mm(s.Ends[0].X.Value), Y0: mm(s.Ends[0].Y.Value), X1: mm(s.Ends[1].X.Value), Y1: mm(s.Ends[1].Y.Value),
			WidthMM: mm(s.Width.Value), FromZ: mm(p.Length.Value), ToZ: mm(p.Length.Value - s.Depth.Value)}
		if s.From == partspec.Left {
			slot.FromZ, slot.ToZ = 0, mm(s.Depth.Value)
		}
		if s.Through {
			slot.FromZ, slot.ToZ = mm(p.Length.Value), 0
		}
		out = append(out, slot)
	}
	return out
}

// rings are the pitch circles.
func rings(p *partspec.Part) []plan.Ring {
	var out []plan.Ring
	for _, f := range p.Features {
		if h, ok := f.(*partspec.Holes); ok && h.Circle != nil {
			c := h.Circle
			out = append(out, plan.Ring{Feature: h.Name, XMM: mm(c.Centre.X.Value), YMM: mm(c.Centre.Y.Value), DiameterMM: mm(c.Diameter.Value), StartDeg: float64(c.Start), Count: c.Count})
		}
	}
	return out
}

// mostPlaces is how many different coordinates of a pattern are dimensioned each way; more become a list among the notes.
const mostPlaces = 4

// holesDims are what a pattern is, and where its circle or its holes lie.
func holesDims(p *partspec.Part, f *partspec.Holes) []plan.Dim {
	if len(f.Places) == 0 {
		return nil
	}
	out := []plan.Dim{pointedAt(f.Places[0], f.Name, holesText(p, f))}
	if f.Circle != nil {
		return append(out, from(p, f.Circle.Centre, f.Name)...)
	}
	if listed(f) {
		return out
	}
	said := map[string]string{} // the text of each coordinate; only asked, never walked
	for i, at := range f.Places {
		for _, d := range from(p, at, f.Name) {
			key := fmt.Sprint(d.Kind, d.X1)
			if d.Kind == plan.DimUp {
				key = fmt.Sprint(d.Kind, d.Y1)
			}
			before, same := said[key]
			switch {
			case same && before == d.Text:
				continue
			case same: // the same place with limits of its own
				d.Text += fmt.Sprintf(" for hole %d", i+1)
			default:
				said[key] = d.Text
			}
			out = append(out, d)
		}
	}
	return out
}

// listed reports whether a pattern's places are too many for dimensions and stand in a list.
func listed(f *partspec.Holes) bool {
	if f.Circle != nil {
		return false
	}
	xs, ys := map[units.Length]bool{}, map[units.Length]bool{}
	for _, at := range f.Places {
		xs[at.X.Value], ys[at.Y.Value] = true, true
	}
	return len(xs) > mostPlaces || len(ys) > mostPlaces
}

// leansText says how far each hole leans that is square to a seat.
func leansText(p *partspec.Part, f *partspec.Holes) string {
	seat, ok := p.Feature(f.SquareTo).(*partspec.Seat)
	if !ok {
		return ""
	}
	var list []string
	for _, at := range f.Places {
		list = append(list, seat.Tilt(at).String())
	}
	return " (leaning by " + strings.Join(list, ", ") + ")"
}

// holesText says how many holes of what kind, how deep, how sunk, and how they lie on a circle.
func holesText(p *partspec.Part, f *partspec.Holes) string {
	text := fmt.Sprintf("%d × ", len(f.Places))
	if len(f.Places) == 1 {
		text = ""
	}
	switch {
	case f.Thread != nil:
		text += f.Thread.Thread.Designation
		if f.Thread.LeftHand {
			text += " left hand"
		}
	case f.Screw != "":
		text += diameterText(p, f.Diameter) + " for " + f.Screw
	default:
		text += diameterText(p, f.Diameter)
	}
	text += deepText(p, f)
	if s := f.Sink; s != nil && s.Angle > 0 {
		text += ", countersink Ø" + drawn(p, s.Diameter.Dimension) + " × " + s.Angle.String()
	} else if s != nil {
		text += ", counterbore Ø" + drawn(p, s.Diameter.Dimension) + " × " + drawn(p, s.Depth.Dimension) + " deep"
	}
	text += sideText(p, f)
	if c := f.Circle; c != nil {
		text += ", on Ø" + drawn(p, c.Diameter.Dimension) + ", 1 at " + c.Start.String()
	}
	if f.SquareTo != "" {
		text += ", square to " + f.SquareTo + leansText(p, f)
	}
	if f.Match != (partspec.FeatureRef{}) {
		text += ", drilled through from " + f.Match.String()
		if f.Mate != nil && f.Mate.Flush != nil {
			text += " with the edges flush"
		}
	}
	return text
}

func deepText(p *partspec.Part, f *partspec.Holes) string {
	full := ""
	if f.Thread != nil && f.Thread.Length.Value > 0 && f.Thread.Length.Value < p.Length.Value {
		full = ", " + drawn(p, f.Thread.Length.Dimension) + " full thread"
	}
	if f.Through {
		return full + " through"
	}
	return full + " × " + shortText(p, f.Depth) + " deep"
}

// sideText says from which side holes are drilled where that matters.
func sideText(p *partspec.Part, f *partspec.Holes) string {
	if f.Through && f.Sink == nil {
		return ""
	}
	side := f.From.String() + " end"
	if p.Flat() {
		side = "front"
		if f.From == partspec.Left {
			side = "back"
		}
		if f.From != partspec.Left {
			return ""
		}
	}
	return ", from the " + side
}

// holesNotes list the places of patterns that are too many for the picture, and how near each hole must lie.
func holesNotes(p *partspec.Part) []string {
	var out []string
	for _, f := range p.Features {
		h, ok := f.(*partspec.Holes)
		if !ok {
			continue
		}
		if listed(h) {
			text := h.Name + ", hole at X, Y:"
			for i, at := range h.Places {
				text += fmt.Sprintf(" %d at %s, %s;", i+1, figure(p, at.X.Value), figure(p, at.Y.Value))
			}
			out = append(out, text[:len(text)-1]+".")
		}
		if h.Within > 0 {
			out = append(out, h.Name+": each hole's axis in a zone of Ø"+figure(p, 2*h.Within)+" about its place.")
		}
	}
	return out
}
