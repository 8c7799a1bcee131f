package shape

import (
	"catchplate/partspec"
	"catchplate/planner/solid"
)

// Placement is how the stock lies around the part before the first cut.
type Placement struct {
	Free      partspec.End // the end that points away from the headstock while the part hangs on its bar; EndInvalid for a blank
	LeftZ     float64      // where the stock begins
	RightZ    float64      // where it ends
	PartWidth float64      // width of the cut that separates the part from its bar; 0 for a blank
	Spare     float64      // metal left on the parted face for facing
	ByHand    bool         // sawn off, not parted
}

// OnBar reports whether the part hangs on its bar until it is parted off.
func (p Placement) OnBar() bool { return p.Free != partspec.EndInvalid }

// Held is the end that stays with the bar.
func (p Placement) Held() partspec.End { return p.Free.Other() }

// BarEnd is where the part's metal stops on the bar's side once it is parted off.
func (p Placement) BarEnd(length float64) float64 {
	if p.Free == partspec.Right {
		return -p.Spare
	}
	return length + p.Spare
}

// BarSide is where the parting cut stops on the bar's side.
func (p Placement) BarSide(length float64) float64 {
	if p.Free == partspec.Right {
		return -p.Spare - p.PartWidth
	}
	return length + p.Spare + p.PartWidth
}

// Existing is the placement of a piece that is there already.
func Existing(s partspec.Stock) Placement {
	return Placement{LeftZ: float64(s.At), RightZ: float64(s.At + s.Length.Value)}
}

// existingBody is the shape of a piece that is there already, in the part's frame.
func existingBody(s partspec.Stock) solid.Body {
	piece := &partspec.Part{Stock: s, Features: s.Features, Length: partspec.Size{Dimension: s.Length, Low: s.Length.Value, High: s.Length.Value}}
	var outer, inner solid.Curve
	for _, b := range Blocks(piece) {
		outer = outer.Join(b.Curve)
	}
	inner = solid.Const(0, float64(s.Length.Value), 0)
	for _, h := range Holes(piece) {
		inner = solid.Upper(inner, h.Curve)
	}
	return solid.NewBody(outer.Shift(float64(s.At), 0), inner.Shift(float64(s.At), 0))
}

// Body is the stock so placed. A hexagon is taken across its corners: its flats are on the stock and on the part alike.
func (p Placement) Body(s partspec.Stock) solid.Body {
	if s.Kind == partspec.Existing {
		return existingBody(s)
	}
	return solid.Cylinder(p.LeftZ, p.RightZ, float64(s.EnvelopeDiameter())/2, float64(s.Inside.Value)/2)
}
