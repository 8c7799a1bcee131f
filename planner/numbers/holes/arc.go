package holes

import (
	"errors"
	"math"

	"catchplate/partspec/units"
)

// Rise is the height of an arc over its chord: s = R - sqrt(R^2 - c^2/4), for
// 0 <= chord <= 2 R. It is computed as (c^2/4) / (R + sqrt(...)), which keeps
// its figures for a flat arc.
func Rise(radius, chord units.Length) (units.Length, error) {
	if !(radius > 0) || !(chord >= 0) || chord > 2*radius || radius > units.MaxLength {
		return 0, errors.New("an arc needs a radius above 0 and a chord of at most twice the radius")
	}
	quarter := float64(chord) * float64(chord) / 4
	root := math.Sqrt(math.Max(0, float64(radius)*float64(radius)-quarter))
	return units.Length(quarter / (float64(radius) + root)), nil
}

// RadiusFrom is the radius of an arc with that chord and rise, as measured on a
// mating part: R = (c^2 + 4 s^2) / 8 s, for chord and rise above 0.
func RadiusFrom(chord, rise units.Length) (units.Length, error) {
	if !(chord > 0) || !(rise > 0) || chord > units.MaxLength || rise > units.MaxLength {
		return 0, errors.New("a radius needs a chord and a rise above 0")
	}
	return (chord*chord + 4*rise*rise) / (8 * rise), nil
}
