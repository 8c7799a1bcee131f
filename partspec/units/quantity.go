package units

import "math"

// Length is a length in millimetres.
type Length float64

// Angle is an angle in degrees.
type Angle float64

// Force is a force in newtons.
type Force float64

// Speed is a spindle speed in revolutions a minute.
type Speed float64

// Minutes is a working time in minutes.
type Minutes float64

// Units to multiply with: 7.0 / 8 * Inch is 22.225 mm. The inch is 25.4 mm
// exactly (international yard and pound agreement, 1959).
const (
	MM   Length = 1
	Inch Length = 25.4
	Thou Length = 0.0254

	Degree Angle = 1
)

// MaxLength is the longest length that is believed: 100 m is no part for a
// small workshop, so a longer one is a slip of the pen.
const MaxLength Length = 100_000

// Unit says in which unit a length is shown. The zero value is not a unit.
type Unit int

// The units in which a length can be shown.
const (
	InMM   Unit = iota + 1 // millimetres
	InInch                 // inches
)

// String names the unit as it stands behind a figure; a bad value shows as bad.
func (u Unit) String() string {
	switch u {
	case InMM:
		return "mm"
	case InInch:
		return "in"
	}
	return "bad unit"
}

// Other returns the unit that is not u.
func (u Unit) Other() Unit {
	if u == InInch {
		return InMM
	}
	return InInch
}

// Inches returns l in inches.
func (l Length) Inches() float64 { return float64(l) / float64(Inch) }

// Abs returns l without its sign.
func (l Length) Abs() Length { return Length(math.Abs(float64(l))) }

// Round returns l rounded to the given number of decimals of a millimetre,
// halves away from zero. It takes the noise of binary sums out of a result.
func (l Length) Round(decimals int) Length { return Length(round(float64(l), decimals)) }

// Radians returns a in radians, for trigonometry.
func (a Angle) Radians() float64 { return float64(a) * math.Pi / 180 }

// Radians makes an Angle of an angle in radians.
func Radians(rad float64) Angle { return Angle(rad * 180 / math.Pi) }

// Round returns a rounded to the given number of decimals of a degree.
func (a Angle) Round(decimals int) Angle { return Angle(round(float64(a), decimals)) }

func round(x float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	r := math.Round(x*scale) / scale
	if r == 0 {
		return 0 // never minus nought
	}
	return r
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
