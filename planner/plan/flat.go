package plan

// Clamp is one strap, toe or screw that presses on the work. Its toe presses on a disc ToeMM wide about its place. The strap runs from there over its stud,
// StudMM away, to its packing, three times as far (rule B-08: the stud at one third).
type Clamp struct {
	XMM   float64 `json:"x_mm"` // where its toe presses, in the part's frame
	YMM   float64 `json:"y_mm"`
	ToeMM float64 `json:"toe_mm"` // width of the toe
	// AngleDeg is the direction from the toe towards its stud, from +X.
	AngleDeg float64 `json:"angle_deg"`
	StudMM   float64 `json:"stud_mm"` // from the middle of the toe
	ForceN   float64 `json:"force_n"` // on the work
}

// Bed is what carries work that is clamped or gripped in a vice.
type Bed struct {
	Kind     string  `json:"kind"`      // "parallels", "backing board", "plate", "jaws", "jaw steps"
	HeightMM float64 `json:"height_mm"` // of packing or board under the work
	GapMM    float64 `json:"gap_mm"`    // clear depth below the work where a tool may break through; 0 = none
	// Under is where parallels or packing carry the work: strips, in the part's frame. Empty: all over.
	Under []Strip `json:"under"`
}

// Strip is a rectangle of the part's X-Y plane.
type Strip struct {
	X0 float64 `json:"x0"`
	Y0 float64 `json:"y0"`
	X1 float64 `json:"x1"`
	Y1 float64 `json:"y1"`
}

// Balance is what makes off-centre work run quietly on a lathe's spindle (rule B-09).
type Balance struct {
	MassKg        float64 `json:"mass_kg"`         // work, clamps and packing
	UnbalanceKgMM float64 `json:"unbalance_kg_mm"` // without counterweight
	WeightKg      float64 `json:"weight_kg"`       // counterweight
	RadiusMM      float64 `json:"radius_mm"`       // of its centre from the spindle's axis
	AngleDeg      float64 `json:"angle_deg"`       // from +X of the part's frame
	LeftOverKgMM  float64 `json:"left_over_kg_mm"` // that balancing by hand is taken to leave
	MostRPM       float64 `json:"most_rpm"`        // that the shaking force allows
	ShakingN      float64 `json:"shaking_n"`       // the force it was reckoned with
}

// OutlineSegment is a line or an arc of an outline, seen from the front, anticlockwise around the metal.
type OutlineSegment struct {
	Name     string  `json:"name,omitempty"`
	X0       float64 `json:"x0"`
	Y0       float64 `json:"y0"`
	X1       float64 `json:"x1"`
	Y1       float64 `json:"y1"`
	RadiusMM float64 `json:"radius,omitempty"` // 0 = a line
	CentreX  float64 `json:"centre_x,omitempty"`
	CentreY  float64 `json:"centre_y,omitempty"`
	Hollow   bool    `json:"hollow,omitempty"` // of an arc: its centre lies outside the metal
}

// Flat is a flat part at some moment: its outline, its faces and what is cut in it along Z.
type Flat struct {
	Outline []OutlineSegment `json:"outline"`
	BackZ   float64          `json:"back_z"`
	FrontZ  float64          `json:"front_z"`
	Holes   []FlatHole       `json:"holes"`
	Slots   []FlatSlot       `json:"slots,omitempty"`
	Seats   []FlatSeat       `json:"seats,omitempty"`
}

// FlatSeat is a hollow across a face of a flat part, in which it sits on a pipe that lies along X or along Y.
type FlatSeat struct {
	Feature  string  `json:"feature"`
	On       string  `json:"on"`        // "back" or "front"
	AlongY   bool    `json:"along_y"`   // the pipe lies along Y
	MiddleMM float64 `json:"middle_mm"` // where its axis lies along the other direction
	RadiusMM float64 `json:"radius_mm"`
	AcrossMM float64 `json:"across_mm"` // width that sits on the pipe
	DepthMM  float64 `json:"depth_mm"`  // at the crown, below the face
}

// FlatSlot is a slot with round ends in a flat part's face.
type FlatSlot struct {
	Feature string  `json:"feature"`
	X0      float64 `json:"x0"` // centres of its round ends
	Y0      float64 `json:"y0"`
	X1      float64 `json:"x1"`
	Y1      float64 `json:"y1"`
	WidthMM float64 `json:"width_mm"`
	FromZ   float64 `json:"from_z"`
	ToZ     float64 `json:"to_z"`
}

// Press is where a jaw presses on an edge of flat work, in the part's frame.
type Press struct {
	XMM      float64 `json:"x_mm"`
	YMM      float64 `json:"y_mm"`
	AngleDeg float64 `json:"angle_deg"` // from the work out into the jaw, from +X
	WidthMM  float64 `json:"width_mm"`  // of the jaw
}

// FlatHole is a hole, or the mark of one to come, along Z at a place beside the axis. On a turned part it lies in one of its ends.
type FlatHole struct {
	Number     int     `json:"number"` // within its pattern, from 1; 0 = a bore by itself
	Feature    string  `json:"feature"`
	XMM        float64 `json:"x_mm"`
	YMM        float64 `json:"y_mm"`
	DiameterMM float64 `json:"diameter_mm"`
	FromZ      float64 `json:"from_z"` // its mouth: the face it is drilled from, where a sink lies
	ToZ        float64 `json:"to_z"`
	Thread     string  `json:"thread,omitempty"`
	SinkMM     float64 `json:"sink_mm,omitempty"` // diameter of its widened mouth
}

// HoleLine is one line of a table of holes: where it lies from the setting's datum, and what the dials then read.
type HoleLine struct {
	Number int     `json:"number"`
	XMM    float64 `json:"x_mm"` // in the part's frame
	YMM    float64 `json:"y_mm"`
	X      Line    `json:"x"` // dial readings; Dial "" on a machine without dials, and where a dividing head brings the hole under the spindle
	Y      Line    `json:"y"`
	Head   *Line   `json:"head,omitempty"`    // dividing head that stands upright: the count that brings the hole there
	PastMM float64 `json:"past_mm,omitempty"` // how far past its place, anticlockwise along its circle, that count drills it
}

// ChordCheck is a distance over two holes to measure when a pattern is drilled.
type ChordCheck struct {
	From       int     `json:"from"` // hole numbers
	To         int     `json:"to"`
	DistanceMM float64 `json:"distance_mm"` // between centres
	WithinMM   float64 `json:"within_mm"`   // either way
	OverMM     float64 `json:"over_mm"`     // over the far sides of pins or shanks of PinMM in both holes
	PinMM      float64 `json:"pin_mm"`
}

// EdgeLeft is what sawing, filing, or milling to a line or a gauge leaves on an edge of the outline, square to it.
type EdgeLeft struct {
	Edge     string  `json:"edge"`
	LeftMM   float64 `json:"left_mm"`   // 0 = it is at its place
	WithinMM float64 `json:"within_mm"` // either way
}
