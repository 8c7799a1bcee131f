package shape

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// Stage is how far an operation brings its surface.
type Stage int

const (
	StageInvalid Stage = iota
	Roughing           // metal is left for a later operation
	Finishing          // the surface is then at its size
)

// Op is an operation as the planner orders it: what it takes away and what it makes, without yet how it is held or dialled.
type Op struct {
	ID      string // "bore.main/ream"
	Feature string // feature name; "face.left", "face.right", "part" for the ends and for parting
	Process plan.Process
	Stage   Stage
	Inside  bool
	End     partspec.End // the end it belongs to: of a face, of an edge's broken side, the mouth of a bore; EndInvalid = either
	Z0, Z1  float64      // where the tool works
	Over    *Stretch     // where it comes to stand, if beyond that: nothing may be left higher there than when the part is finished

	Outer solid.Curve // the outside it leaves, over its own stretch; empty = untouched
	Inner solid.Curve // the inside it leaves
	Keep  *Stretch    // facing and parting: what is left along the axis

	Spots []Spot   // where it works beside the axis (holes of a pattern), or nil: about the axis, or all over
	Cross bool     // it works across the axis: a cross hole, a flat, a slot
	Flat  *FlatCut // what it takes off a flat part

	Makes []string // surfaces brought to size: feature names and plane faces ("face.left", "rim.left")
	Tight float64  // narrowest tolerance it must hold, on diameter or length; 0 = open
	Place float64  // how far what it makes beside the axis may lie from its place, radially in a zone, else along either axis; 0 = open
	Zone  bool     // Place is the radius of a zone
	About float64  // of a ring: how far its middle may lie off, beside Place: what moves all its holes alike
	Round float64  // roundness asked of what it makes, radial; 0 = none asked
	Depth float64  // most metal off radially (axially for faces)
}

// Spot is a circle beside the axis within which an operation works.
type Spot struct{ X, Y, Radius float64 }

// Stretch is a length of the axis.
type Stretch struct{ Z0, Z1 float64 }

// Touches reports whether the operation works anywhere between z0 and z1.
func (o Op) Touches(z0, z1 float64) bool {
	if o.Keep != nil && o.Z0 == o.Z1 {
		return o.Z0 > z0 && o.Z0 < z1
	}
	return o.Z0 < z1 && o.Z1 > z0
}

// MakesSurface reports whether the operation brings the named surface to size.
func (o Op) MakesSurface(name string) bool {
	for _, m := range o.Makes {
		if m == name {
			return true
		}
	}
	return false
}

// Apply takes the operation's metal off a body.
func (o Op) Apply(b solid.Body) solid.Body {
	if !o.Outer.Empty() {
		b = b.TurnTo(o.Outer)
	}
	if !o.Inner.Empty() {
		b = b.BoreTo(o.Inner)
	}
	if o.Keep != nil {
		b = b.Keep(o.Keep.Z0, o.Keep.Z1)
	}
	return b
}

// After is the shape of the work once the operations chosen by done have been carried out on the stock.
func After(stock solid.Body, ops []Op, done func(int) bool) solid.Body {
	b := stock
	for i, o := range ops {
		if done(i) {
			b = o.Apply(b)
		}
	}
	return b
}
