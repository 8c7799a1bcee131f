// Package taper gives the settings that turn a taper.
//
// In flow: a taper by its ends, its ratio, inches per foot, its angle or its
// standard name. Out flow: half and included angle in degrees, the ratio, the
// tailstock set-over, and the rise of an indicator by which the top slide is
// set, with rule and source.
//
// What holds after: tan(half angle) = 1 / (2 x ratio); 0 < half angle < 90.
package taper

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// indicatorTravel is the slide travel over which the indicator's rise is given
// (trade rule C-22).
const indicatorTravel units.Length = 25

// Setting is how to set a lathe for a taper.
type Setting struct {
	HalfAngle     units.Angle  `json:"half_angle_deg"`     // top slide from the axis
	IncludedAngle units.Angle  `json:"included_angle_deg"` // from side to side
	Ratio         float64      `json:"ratio"`              // length for 1 of diameter: 20.02 means 1:20.02
	RisePer25     units.Length `json:"rise_per_25_mm"`     // indicator along a true bar, per 25 mm of slide travel
	SetoverPer100 units.Length `json:"setover_per_100_mm"` // tailstock, per 100 mm between centres
	Setover       units.Length `json:"setover_mm,omitempty"`
	SlideTravel   units.Length `json:"slide_travel_mm,omitempty"` // along the taper; only where its length is known
	Large         units.Length `json:"large_mm,omitempty"`
	Small         units.Length `json:"small_mm,omitempty"`
	Length        units.Length `json:"length_mm,omitempty"`
	Rule          string       `json:"rule"`
	Source        string       `json:"source"`
}

const (
	rule   = "C-22"
	source = "tan(half angle) = (D - d) / 2l, plane geometry"
)

// FromEnds sets for a taper from one diameter to another over a length:
// half angle = atan((D - d) / 2l). The set-over is for work as long as the
// taper; Between gives it for other work.
func FromEnds(large, small, length units.Length) (Setting, error) {
	if !(length > 0) || !(large > small) || !(small >= 0) || large > units.MaxLength || length > units.MaxLength {
		return Setting{}, errors.New("a taper needs a large end over a small end of 0 or more, and a length above 0")
	}
	s := fromTangent(float64((large-small)/2) / float64(length))
	s.Large, s.Small, s.Length = large, small, length
	return s.Between(length), nil
}

// FromRatio sets for a taper of 1 in ratio on diameter ("1:20.02").
func FromRatio(ratio float64) (Setting, error) {
	if !(ratio >= leastRatio) || ratio > 1/leastTangent {
		return Setting{}, fmt.Errorf("a taper of 1:%g cannot be set: write the length for 1 of diameter, like 1:20", ratio)
	}
	return fromTangent(1 / (2 * ratio)), nil
}

// FromPerFoot sets for a taper in inches of diameter a foot of length.
func FromPerFoot(inches float64) (Setting, error) {
	if !(inches > 0) {
		return Setting{}, fmt.Errorf("a taper of %g in per foot cannot be set: write it like 0.6 in per foot", inches)
	}
	return FromRatio(12 / inches)
}

// FromIncluded sets for a taper by its included angle, over 0 and under 180.
func FromIncluded(included units.Angle) (Setting, error) { return FromHalf(included / 2) }

// FromHalf sets for a taper by its angle per side, over 0 and under 90.
func FromHalf(half units.Angle) (Setting, error) {
	if !(half > 0 && half < 90) || math.Tan(half.Radians()) < leastTangent {
		return Setting{}, fmt.Errorf("a half angle of %g degrees is no taper: it lies over 0 and under 90", float64(half))
	}
	return fromTangent(math.Tan(half.Radians())), nil
}

// Named sets for a standard taper such as "MT2", with its ends where the
// standard fixes them.
func Named(name string) (Setting, error) {
	t, ok := tables.FindTaper(name)
	if !ok {
		return Setting{}, fmt.Errorf("no taper is called %q: write MT0 to MT6, JT1, B16, or a ratio like 1:20", name)
	}
	s, err := FromRatio(t.Ratio)
	if err != nil {
		return Setting{}, err
	}
	s.Large, s.Small, s.Length, s.Source = t.Gauge, t.Small, t.Length, t.Source
	if t.Length > 0 {
		s = s.Between(t.Length)
	}
	return s, nil
}

// leastTangent and leastRatio bound what is called a taper: finer than 1 in a
// million is a cylinder, blunter than 1:0.005 is a face.
const (
	leastTangent = 1e-6
	leastRatio   = 0.005
)

// Parse reads a taper as a drawing writes it: "1:20.02", "0.6 in per foot",
// "5/8 in/ft", or a standard name.
func Parse(text string) (Setting, error) {
	clean := strings.ToLower(strings.Join(strings.Fields(text), " "))
	if one, ratio, ok := strings.Cut(clean, ":"); ok && strings.TrimSpace(one) == "1" {
		x, err := strconv.ParseFloat(strings.TrimSpace(ratio), 64)
		if err != nil {
			return Setting{}, fmt.Errorf("cannot read the ratio %q: write it like 1:20", text)
		}
		return FromRatio(x)
	}
	for _, suffix := range []string{" per foot", "/ft", "/foot", " per ft"} {
		if inches, ok := strings.CutSuffix(clean, suffix); ok {
			l, err := units.ParseLength(inches, units.Inch)
			if err != nil {
				return Setting{}, err
			}
			return FromPerFoot(l.Inches())
		}
	}
	return Named(text)
}

// Between adds the tailstock set-over for work of that length between centres,
// however long the taper on it is: L x (D - d) / 2l.
func (s Setting) Between(work units.Length) Setting {
	s.Setover = (work * units.Length(1/(2*s.Ratio))).Round(places)
	if s.Length > 0 {
		s.SlideTravel = (s.Length / units.Length(math.Cos(s.HalfAngle.Radians()))).Round(places)
	}
	return s
}

// places is where results are rounded, to take out the noise of float64.
const places = 6

func fromTangent(tangent float64) Setting {
	half := units.Radians(math.Atan(tangent))
	return Setting{
		HalfAngle:     half.Round(places),
		IncludedAngle: (2 * half).Round(places),
		Ratio:         1 / (2 * tangent),
		RisePer25:     (indicatorTravel * units.Length(math.Sin(half.Radians()))).Round(places),
		SetoverPer100: units.Length(100 * tangent).Round(places),
		Rule:          rule,
		Source:        source,
	}
}

// SineBar is the height of the blocks under one end of a sine bar of that
// length for an angle of 0 to 90 degrees: length x sin(angle).
func SineBar(length units.Length, angle units.Angle) (units.Length, error) {
	if !(length > 0 && length <= units.MaxLength) || !(angle >= 0 && angle <= 90) {
		return 0, errors.New("a sine bar needs a length above 0 and an angle of 0 to 90 degrees")
	}
	return (length * units.Length(math.Sin(angle.Radians()))).Round(places), nil
}
