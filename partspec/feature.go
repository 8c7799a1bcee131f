package partspec

import (
	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// Feature is a thing cut on a part. The kinds are closed: Spigot, Bore, Recess, Taper, Groove, Profile, Chamfer, Fillet, Thread, Knurl along the
// axis; Holes, Seat, SideSeat, CrossHole, Flat and Slot beside or across it. A flange is a Spigot, a counterbore is a Bore; Head.Word keeps the word the
// drawing used. Places beside the axis are in the part's own frame, see Part.
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
	At         *Point // centre, where it is not on the part's axis: always set on a flat part
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

// Point is a place in the part's X-Y plane, each coordinate with its limits.
type Point struct{ X, Y Size }

// HoleMake is what is made of a drilled hole.
type HoleMake string

const (
	PlainHole     HoleMake = "plain"     // drilled, or reamed where its limits ask for it
	ClearanceHole HoleMake = "clearance" // plain, its size from the screw (ISO 273)
	TappedHole    HoleMake = "tapped"
	DowelHole     HoleMake = "dowel" // reamed
)

// Holes is a pattern of like holes along the part's axis, through a face.
type Holes struct {
	FeatureHead
	Make     HoleMake
	Places   []Point // in order, hole 1 first
	Circle   *Circle // how the places were given, when on a circle
	Diameter Size    // of the drilled or reamed hole; of a tapped one the core
	Thread   *Thread // of a tapped hole: Thread, Class, Length (full thread) and LeftHand are set
	Screw    string  // thread that a clearance hole lets through, else empty
	From     End     // the face it is drilled from; either serves when Through and not countersunk
	Through  bool
	Depth    Size         // full-diameter depth when blind; the part's length there when Through
	Span     Span         // along the axis: from the face that it enters to its floor, or to the face that it leaves
	Sink     *Sink        // counterbore or countersink at From
	Locate   LocateBy     // how the places are found; "" = the workshop's best
	Within   units.Length // how far each hole may lie from its place, radially, when written (position); 0 = by the places' limits
	Match    FeatureRef   // spotted through from this pattern of another part; zero = by its own places
	Mate     *Mating      // what is known of that pattern; nil without one
	SquareTo string       // seat on the end From that the holes are square to, each where it comes out there; "" = they run along the axis
}

// Circle is a ring of equally spaced holes. Start is the angle of hole 1 from +X, anticlockwise as seen from the right end (front).
type Circle struct {
	Centre   Point // with its own limits, beside those that the holes have from it
	Diameter Size
	Count    int
	Start    units.Angle
}

// Sink is the widened mouth of a hole: a counterbore of Depth, or a countersink of included Angle.
type Sink struct {
	Diameter Size
	Depth    Size        // counterbore
	Angle    units.Angle // countersink; 0 = counterbore
}

// LocateBy is how the place of a hole is found.
type LocateBy string

const (
	LocateDial   LocateBy = "dial"
	LocateScribe LocateBy = "scribed_line"
	LocatePunch  LocateBy = "punch_mark"
	LocateHead   LocateBy = "dividing_head" // turned under the spindle: a ring about the axis of a turned part
)

// Seat is a cylinder cut across an end, so that the part sits on a pipe or barrel. The pipe's axis lies parallel to the plane of X and Y at Angle from +X; it crosses the part's axis, on a flat part it runs along X or
// Y through Middle. The cut just reaches the width Across at that end, so that its depth at the crown is the sagitta of it (AxisZ says where the pipe's axis lies along Z).
type Seat struct {
	FeatureHead
	On       End          // the end cut; of a flat part Left is its back, Right its front
	Middle   Size         // flat part: where the pipe's axis lies, along Y for a pipe along X and along X for one along Y
	Radius   Size         // of the seat
	Angle    units.Angle  // of the pipe's axis from +X, as seen from the right end
	Across   units.Length // the part's width at right angles to the pipe's axis: the chord
	Depth    units.Length // at the crown, from the end face: R - sqrt(R^2 - (Across/2)^2)
	AxisZ    units.Length // where the pipe's axis lies along the part's axis
	Chord    *Size        // measured on the mate, with Rise, when the radius was given so
	Rise     *Size
	RadiusBy units.Length // uncertainty of the radius that comes from measuring Chord and Rise; 0 when drawn
	Finish   bool         // finish_by = "file": step cuts leave crests, the file takes them
	Leftover units.Length // most that the steps may leave for the file
}

// SideSeat is a seat across the side of round work: its pipe's axis stands square to the part's, and to Angle, the direction in which the hollow looks. Across is how wide
// the hollow is along the part's axis, AxisZ the middle of that; Depth is counted from the surface.
type SideSeat struct {
	Seat
	Side  string       // the outside feature that it is cut in
	Z     Size         // where the pipe's axis crosses, along the part's axis
	ZFrom units.Length // drawn place of the face that Z is measured from
	Sunk  Size         // Depth, with its limits
}

// CrossHole is a hole square to the axis of a turned part, from the outside towards the axis.
type CrossHole struct {
	FeatureHead
	Make     HoleMake
	Z        Size         // along the axis
	ZFrom    units.Length // drawn place of the face that Z is measured from
	Angle    units.Angle  // of its direction from the axis outward, from +X, as seen from the right end
	Diameter Size
	Thread   *Thread // of a tapped one, else nil
	Screw    string
	Through  bool   // right through both sides
	Into     string // the bore that it ends in; empty: Through or Depth
	Depth    Size   // from the outside, when blind
	On       string // the outside feature it enters
}

// Flat is a plane on the outside of a turned part, parallel to its axis.
type Flat struct {
	FeatureHead
	On       string
	Distance Size        // from the part's axis to the plane
	Angle    units.Angle // of its normal, from +X, as seen from the right end
	Count    int         // like flats equally spaced (6 = a hexagon), at least 1
	Span     Span
}

// Slot is a straight groove with parallel sides and a flat floor: in a flat part's face or through it, or along the outside of a turned part.
type Slot struct {
	FeatureHead
	On      string // turned part: the outside feature
	From    End    // flat part: the face
	Width   Size
	Depth   Size
	Through bool
	Ends    [2]Point    // flat part: centres of its round ends
	Angle   units.Angle // turned part
	Span    Span        // turned part: along the axis, round ends included
}

func (*Spigot) isFeature()    {}
func (*Bore) isFeature()      {}
func (*Recess) isFeature()    {}
func (*Taper) isFeature()     {}
func (*Groove) isFeature()    {}
func (*Profile) isFeature()   {}
func (*Chamfer) isFeature()   {}
func (*Fillet) isFeature()    {}
func (*Thread) isFeature()    {}
func (*Knurl) isFeature()     {}
func (*Holes) isFeature()     {}
func (*Seat) isFeature()      {}
func (*CrossHole) isFeature() {}
func (*Flat) isFeature()      {}
func (*Slot) isFeature()      {}

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
	_ Feature = (*Holes)(nil)
	_ Feature = (*Seat)(nil)
	_ Feature = (*SideSeat)(nil)
	_ Feature = (*CrossHole)(nil)
	_ Feature = (*Flat)(nil)
	_ Feature = (*Slot)(nil)
)
