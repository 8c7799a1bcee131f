package plan

import "math"

// PackingMM is how finely packing under a tilting plate is made up of feelers and shims. Common practice, no source.
const PackingMM = 0.05

// Tilt is how a tilting plate is set over in a setup: hinged along the table's x, its far side raised by packing, so that the sine of the tilt is RiseMM / SineMM.
type Tilt struct {
	SineMM   float64 `json:"sine_mm"`   // from the hinge to the packing
	RiseMM   float64 `json:"rise_mm"`   // of the packing
	AlongDeg float64 `json:"along_deg"` // direction of the part, from +X anticlockwise as seen from the right end, that lies along the table's +x
}

// Degrees is how far the work is set over.
func (t Tilt) Degrees() float64 { return math.Asin(t.RiseMM/t.SineMM) * 180 / math.Pi }
