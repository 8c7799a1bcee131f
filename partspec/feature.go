package partspec

import (
	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// Feature is a thing cut on a part. The kinds are closed: Spigot, Bore, Recess, Taper, Groove, Profile, Chamfer, Fillet, Thread, Knurl.
// A flange is a Spigot, a counterbore is a Bore; Head.Word keeps the word the drawing used.
type Feature interface {
	Head() FeatureHead
	isFeature()
}

// FeatureHead is what every feature has.
type FeatureHead struct {
	Word  string // block type in the file: "spigot", "flange", "bore", "counterbore", ...
	Name  string // label, unique within the part
	Note  string
	Range Range // of the block's header
}

// ID is the feature's part of an operation id: "bore.main".
func (h FeatureHead) ID() string { return h.Word + "." + h.Name }

func (h FeatureHead) Head() FeatureHead { return h }

// Spigot is an outside cylinder (spigot or flange).
type Spigot struct {
	FeatureHead
	Diameter   Size
	Length     Size
	Span       Span
	Roughness  float64       // Ra micrometres, 0 = the part's
	AsSupplied bool          // the stock's own outside is left (the only form a hexagon's flats can have)
	Measured   *units.Length // as-made diameter, when it has been made and measured
}

// Bore is an inside cylinder open at one end (From) or through: bore or counterbore.
// Deeper, smaller bores lie behind larger, shallower ones; Span is what is left of this bore once larger ones have taken their part.
type Bore struct {
	FeatureHead
	Diameter   Size
	Depth      Size // full-diameter depth from the mouth's end face; the part's length when Through
	From       End
	Through    bool
	FlatBottom bool // a blind bore whose floor must be flat; else the drill's point may stay
	Span       Span
	Roughness  float64
	AsSupplied bool // the stock tube's own bore is left
	Measured   *units.Length
}

// Recess is a groove inside a bore.
type Recess struct {
	FeatureHead
	On       string // the bore it is cut in
	Diameter Size
	Width    Size
	Span     Span
}

// Taper is a cone, outside or inside.
type Taper struct {
	FeatureHead
	Inside       bool
	Large, Small Size
	LargeAt      End
	HalfAngle    units.Angle
	Length       Size
	Span         Span
	Named        string // "MT2" when it is a named taper
	Roughness    float64
}

// Groove is an outside groove: square, or a vee of the included Angle with a flat bottom of width BottomWidth.
type Groove struct {
	FeatureHead
	On          string // the outside feature it is cut in
	Bottom      Size   // diameter at the bottom
	Width       Size   // at the surface of On
	Angle       units.Angle
	BottomWidth units.Length // equals Width.Value for a square groove
	Span        Span
}

// Profile is an outside shape made of lines and arcs, one radius for each position along the axis.
type Profile struct {
	FeatureHead
	Segments   []Segment // from left to right, end to start
	Zone       Size      // Value 0; Low and High are the metal allowed off (negative) and on (positive), normal to the surface
	FinishFile bool      // finish_by = "file": step cuts leave crests, the file takes them
	Span       Span
	Roughness  float64
}

// Segment is a line or an arc in the half plane (position along the axis, radius).
type Segment struct {
	Z0, R0, Z1, R1 units.Length
	Arc            bool
	CentreZ        units.Length
	CentreR        units.Length
	Radius         units.Length
	Convex         bool // metal bulges outward
}

// Chamfer breaks an edge by a cone: Size along the axis, Angle from the axis (45 by default).
type Chamfer struct {
	FeatureHead
	Edge  Edge
	Size  Size
	Angle units.Angle
}

// Fillet rounds an edge (convex) or fills a corner (concave).
type Fillet struct {
	FeatureHead
	Edge   Edge
	Radius Size
}

// Edge is a circle where a feature ends.
type Edge struct {
	Feature string
	End     End
	Z, R    units.Length // nominal place of the edge
	Inside  bool         // edge of a bore
	Convex  bool         // metal fills less than half of the surroundings: an outer edge, to be broken
	// Axial is the direction along the axis in which the metal of this feature lies, seen from the edge: Left or Right.
	Axial End
}

// Thread is cut on a spigot or in a bore, whose blank diameter follows from it.
type Thread struct {
	FeatureHead
	On       string
	Inside   bool
	Thread   tables.Thread
	Class    string // as drawn: "6g"; empty when the drawing gives none
	Length   Size   // full thread, from the end of On that is nearer to a free end
	From     End
	LeftHand bool
	Span     Span
}

// Knurl is pressed on a spigot. It does not subtract metal; the blank is turned smaller by part of the pitch.
type Knurl struct {
	FeatureHead
	On      string
	Pitch   units.Length
	Pattern string // "diamond" or "straight"
	Span    Span
}

func (*Spigot) isFeature()  {}
func (*Bore) isFeature()    {}
func (*Recess) isFeature()  {}
func (*Taper) isFeature()   {}
func (*Groove) isFeature()  {}
func (*Profile) isFeature() {}
func (*Chamfer) isFeature() {}
func (*Fillet) isFeature()  {}
func (*Thread) isFeature()  {}
func (*Knurl) isFeature()   {}

var (
	_ Feature = (*Spigot)(nil)
	_ Feature = (*Bore)(nil)
	_ Feature = (*Recess)(nil)
	_ Feature = (*Taper)(nil)
	_ Feature = (*Groove)(nil)
	_ Feature = (*Profile)(nil)
	_ Feature = (*Chamfer)(nil)
	_ Feature = (*Fillet)(nil)
	_ Feature = (*Thread)(nil)
	_ Feature = (*Knurl)(nil)
)
