package units

// Dimension is a size with the words of the drawing.
type Dimension struct {
	Value    Length `json:"value_mm"`
	Written  string `json:"written,omitempty"`   // as drawn; may be empty
	InInches bool   `json:"in_inches,omitempty"` // drawn in inches
}

// Unit is the unit in which the dimension was drawn.
func (d Dimension) Unit() Unit {
	if d.InInches {
		return InInch
	}
	return InMM
}

// Limits are the least and the greatest size allowed, Low <= High.
type Limits struct {
	Low  Length `json:"lower_mm"`
	High Length `json:"upper_mm"`
}

// noiseDecimals is where sums of sizes are rounded: to a nanometre, far below
// anything measured and far above float64 noise, so that 20 + 0.02 is 20.02.
const noiseDecimals = 6

// Around makes limits of a nominal size and its lower and upper deviation.
func Around(nominal, lower, upper Length) Limits {
	return Limits{(nominal + lower).Round(noiseDecimals), (nominal + upper).Round(noiseDecimals)}
}

// Valid reports whether both limits are finite and in order.
func (l Limits) Valid() bool {
	return finite(float64(l.Low)) && finite(float64(l.High)) && l.Low <= l.High
}

// Width is the tolerance: the distance between the limits.
func (l Limits) Width() Length { return (l.High - l.Low).Round(noiseDecimals) }

// Middle is the size half-way between the limits.
func (l Limits) Middle() Length { return ((l.Low + l.High) / 2).Round(noiseDecimals) }

// Contains reports whether size lies on or between the limits.
func (l Limits) Contains(size Length) bool { return l.Low <= size && size <= l.High }

// Shift moves both limits by d.
func (l Limits) Shift(d Length) Limits { return Around(d, l.Low, l.High) }

// Shrink draws both limits in by d, the uncertainty of a measurement, say. The
// result is not Valid where the limits are closer than 2d.
func (l Limits) Shrink(d Length) Limits {
	return Limits{(l.Low + d).Round(noiseDecimals), (l.High - d).Round(noiseDecimals)}
}
