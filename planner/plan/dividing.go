package plan

// HeadDial is the name under which a dividing head is read on cards and in cuts: its graduations are the holes of the circle in use, or the notches of a direct plate.
const HeadDial = "head"

// Dividing is a dividing head as it is set in a setup. A count of n holes from its nought has turned the work by
//
//	360 n / (Ratio Circle) degrees
//
// so that what looked that much further round from X, anticlockwise as seen from the right end, is now where AcrossDeg was, or on one that stands upright AskewDeg.
type Dividing struct {
	Ratio    int     `json:"ratio"`     // turns of its crank for one of the work; 1 = a plate on the spindle itself
	Circle   int     `json:"circle"`    // holes of the circle in use, or notches of the plate
	HeightMM float64 `json:"height_mm"` // of its axis over the table
}

// Marks is what it counts.
func (d Dividing) Marks() string {
	if d.Ratio == 1 {
		return "notches"
	}
	return "holes"
}

// Degrees is how far a count has turned the work.
func (d Dividing) Degrees(holes int64) float64 {
	return 360 * float64(holes) / float64(d.Ratio*d.Circle)
}
