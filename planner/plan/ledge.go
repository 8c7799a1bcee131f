package plan

// Ledge is the ledge of an angle plate on a faceplate: flat work stands on it by a straight edge, and straps press it down, square to the edge.
type Ledge struct {
	Faceplate string `json:"faceplate"` // name in the workshop
	// From X0, Y0 to X1, Y1 is the ledge's face, across the spindle in the part's frame; the metal of the work lies to the left of that direction.
	X0 float64 `json:"x0"`
	Y0 float64 `json:"y0"`
	X1 float64 `json:"x1"`
	Y1 float64 `json:"y1"`
	// ReachMM is how far the ledge stands out from the faceplate, LegMM how far its other leg goes down it, away from the work; both are ThickMM thick.
	ReachMM float64 `json:"reach_mm"`
	LegMM   float64 `json:"leg_mm"`
	ThickMM float64 `json:"thick_mm"`
	// Straps press on edges that look away from the ledge. The toe of each lies flat there over ToeMM; AngleDeg points along the ledge from the toe to the stud, which
	// stands beside the work.
	Straps []Clamp `json:"straps"`
	Bar    bool    `json:"bar,omitempty"` // one bar over both toes, a stud at each end, in place of straps on packing
}
