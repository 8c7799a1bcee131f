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
}

// Drawing is the part as it was understood, to be held against the paper drawing.
type Drawing struct {
	Section Section    `json:"section"`
	Flat    *Flat      `json:"flat,omitempty"`   // of a flat part, instead of Section
	Beside  []FlatHole `json:"beside,omitempty"` // of a turned part: holes beside its axis
	Hexagon bool       `json:"hexagon"`          // the outside is a hexagon bar's; Section shows it across corners
	Dims    []Dim      `json:"dims"`
	Notes   []string   `json:"notes"` // chamfers, general tolerances, relations
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
