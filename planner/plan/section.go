package plan

// Segment is a line or an arc of a section, in the half plane (Z along the axis, R radius).
type Segment struct {
	Z0       float64 `json:"z0"`
	R0       float64 `json:"r0"`
	Z1       float64 `json:"z1"`
	R1       float64 `json:"r1"`
	RadiusMM float64 `json:"radius,omitempty"` // 0 = a line
	CentreZ  float64 `json:"centre_z,omitempty"`
	CentreR  float64 `json:"centre_r,omitempty"`
}

// Section is half of a turned shape: Outer from left to right, Inner likewise (radius 0 where the metal is solid). A step shows as
// two segments that meet at one Z with different R.
type Section struct {
	Outer []Segment `json:"outer"`
	Inner []Segment `json:"inner"`
	// Near is, of work that is set over, the outside on the side of the spindle's axis on which it is nearest; Outer is then the side on which it is farthest.
	Near []Segment `json:"near,omitempty"`
}

// Drawing is the part as it was understood, to be held against the paper drawing.
type Drawing struct {
	Section Section    `json:"section"`
	Flat    *Flat      `json:"flat,omitempty"`    // of a flat part, instead of Section
	Beside  []FlatHole `json:"beside,omitempty"`  // of a turned part: holes beside its axis
	Datum   []string   `json:"datum,omitempty"`   // of a flat part: names of the edges that coordinates begin at
	Rings   []Ring     `json:"rings,omitempty"`   // pitch circles
	Crossed []Crossed  `json:"crossed,omitempty"` // of a turned part: what is cut across its axis
	Axes    []Axis     `json:"axes,omitempty"`    // of a turned part: beside its main one, towards +X
	Hexagon bool       `json:"hexagon"`           // the outside is a hexagon bar's; Section shows it across corners
	Dims    []Dim      `json:"dims"`
	Notes   []string   `json:"notes"` // chamfers, general tolerances, relations
}

// Axis is an axis beside the main one, with what is turned about it.
type Axis struct {
	Name       string      `json:"name"`
	ThrowMM    float64     `json:"throw_mm"` // from the main axis, towards +X
	Text       string      `json:"text"`     // the throw as drawn
	Eccentrics []Eccentric `json:"eccentrics"`
}

// Eccentric is a cylinder about an offset axis.
type Eccentric struct {
	Feature  string  `json:"feature"`
	Z0       float64 `json:"z0"`
	Z1       float64 `json:"z1"`
	RadiusMM float64 `json:"radius_mm"`
	Inside   bool    `json:"inside"`
}

// Ring is the pitch circle of a pattern.
type Ring struct {
	Feature    string  `json:"feature"`
	XMM        float64 `json:"x_mm"`
	YMM        float64 `json:"y_mm"`
	DiameterMM float64 `json:"diameter_mm"`
	StartDeg   float64 `json:"start_deg"` // of hole 1 from +X, anticlockwise
	Count      int     `json:"count"`
}

// CrossedKind is what is cut across a turned part's axis.
type CrossedKind string

const (
	CrossedSeat CrossedKind = "seat" // a cylinder across an end, whose axis crosses the part's, or across the side
	CrossedHole CrossedKind = "cross_hole"
	CrossedFlat CrossedKind = "flat"
	CrossedSlot CrossedKind = "slot"
)

// Crossed is a seat, a cross hole, a flat or a slot of a turned part.
type Crossed struct {
	Kind    CrossedKind `json:"kind"`
	Feature string      `json:"feature"`
	Z0      float64     `json:"z0"` // where it lies along the axis; of a seat across an end from the end to its crown
	Z1      float64     `json:"z1"`
	// AngleDeg is, from +X as seen from the right end, the direction of a hole or slot from the axis outward, of a flat's normal, of the axis of a seat's pipe,
	// or of a seat across the side from the axis outward.
	AngleDeg float64 `json:"angle_deg"`
	RadiusMM float64 `json:"radius_mm,omitempty"` // of a seat or a hole
	FloorMM  float64 `json:"floor_mm"`            // from the axis to a flat, to the floor of a slot or of a seat across the side, or to the bottom of a hole; less than 0 beyond the axis
	WidthMM  float64 `json:"width_mm,omitempty"`  // of a slot; of a seat the chord
	AxisZ    float64 `json:"axis_z,omitempty"`    // of a seat's pipe
	On       string  `json:"on,omitempty"`        // end that a seat is cut across: "left" or "right"; empty: the side
	Count    int     `json:"count,omitempty"`     // of like flats, equally spaced; 0 = one
}

// DimKind is how a dimension is drawn.
type DimKind string

const (
	DimDiameter DimKind = "diameter" // of the surface at Z0..Z1, radius R; Inside for a bore
	DimLength   DimKind = "length"   // from Z0 to Z1, along the axis
	DimLeader   DimKind = "leader"   // a note that points at (Z0, R)
	DimAcross   DimKind = "across"   // flat: along X from X0 to X1
	DimUp       DimKind = "up"       // flat: along Y from Y0 to Y1
	DimPlace    DimKind = "place"    // flat, or in an end: a note that points at (X0, Y0)
)

// Dim is one dimension of the drawing.
type Dim struct {
	Kind    DimKind `json:"kind"`
	Z0      float64 `json:"z0"`
	Z1      float64 `json:"z1"`
	R       float64 `json:"r"`
	X0      float64 `json:"x0,omitempty"` // of flat dimensions
	Y0      float64 `json:"y0,omitempty"`
	X1      float64 `json:"x1,omitempty"`
	Y1      float64 `json:"y1,omitempty"`
	Inside  bool    `json:"inside"`
	Text    string  `json:"text"` // as drawn, with limits
	Feature string  `json:"feature"`
}

// Proof is the record of the replay.
type Proof struct {
	Clauses []Clause `json:"clauses"`
	Cuts    int      `json:"cuts"` // movements rebuilt from pose, tool and dial readings
}

// Clause is one thing that was proved, with the figure.
type Clause struct {
	Name string `json:"name"`
	Text string `json:"text"`
}
