package taper

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"catchplate/partspec/units"
)

// Half a unit of the last printed place of the angle, in degrees: the standard
// prints Morse half angles to the second.
const halfSecond = 0.5/3600 + 1e-6

// ISO 296 half angles in degrees, minutes, seconds (from memory of the tables
// that print them: MT0 1 29 27, MT1 1 25 43, MT2 1 25 50, MT3 1 26 16, MT4
// 1 29 15, MT5 1 30 26, MT6 1 29 36).
func TestMorseHalfAngles(t *testing.T) {
	for name, dms := range map[string][3]float64{
		"MT0": {1, 29, 27}, "MT1": {1, 25, 43}, "MT2": {1, 25, 50}, "MT3": {1, 26, 16}, "MT4": {1, 29, 15}, "MT5": {1, 30, 26}, "MT6": {1, 29, 36},
	} {
		s, err := Named(name)
		require.NoError(t, err)
		assert.InDelta(t, dms[0]+dms[1]/60+dms[2]/3600, float64(s.HalfAngle), 2*halfSecond, name)
		assert.Contains(t, s.Source, "ISO 296")
	}
}

func TestFromEnds(t *testing.T) {
	s, err := FromEnds(20, 18, 40)
	require.NoError(t, err)
	assert.Equal(t, units.Angle(1.432096), s.HalfAngle) // atan(1/40)
	assert.Equal(t, units.Angle(2.864192), s.IncludedAngle)
	assert.Equal(t, 20.0, s.Ratio)
	assert.Equal(t, units.Length(1), s.Setover)
	assert.Equal(t, units.Length(2.5), s.SetoverPer100)
	assert.Equal(t, units.Length(0.624805), s.RisePer25)
	assert.Equal(t, "C-22", s.Rule)
}

// Rose, Modern Machine-Shop Practice (printed): work 3 ft long, taper 1 inch a
// foot: 1.5 in of set-over, however long the tapered part is.
func TestSetoverPrinted(t *testing.T) {
	s, err := FromPerFoot(1)
	require.NoError(t, err)
	assert.Equal(t, units.Length(38.1), s.Between(36*units.Inch).Setover)
}

// A turning book of 1902 prints taper per inch, 2 tan(angle/2), as twice a
// tangent cut off at five places: it is up to two units of the last place low.
func TestTaperPerInchPrinted(t *testing.T) {
	const twoUnits = 0.00002
	for included, perInch := range map[units.Angle]float64{1: 0.01746, 2: 0.03490, 5: 0.08732, 10: 0.17498, 20: 0.35266, 30: 0.53590, 45: 0.82842} {
		s, err := FromIncluded(included)
		require.NoError(t, err)
		assert.InDelta(t, perInch, 1/s.Ratio, twoUnits, "%v", included)
	}
}

// Printed: 5 inch bar, 27 degrees 2.270 in; 18 degrees 1.545 in.
func TestSineBarPrinted(t *testing.T) {
	for angle, inches := range map[units.Angle]float64{27: 2.270, 18: 1.545} {
		height, err := SineBar(5*units.Inch, angle)
		require.NoError(t, err)
		assert.InDelta(t, inches, height.Inches(), 0.0005)
	}
	_, err := SineBar(5, 91)
	assert.Error(t, err)
}

func TestParse(t *testing.T) {
	for text, ratio := range map[string]float64{
		"1:20.02": 20.02, "1 : 50": 50, "0.6 in per foot": 20, "5/8 in/ft": 19.2, "0.6 per foot": 20, "MT2": 20.02, "taper pin": 50,
	} {
		s, err := Parse(text)
		require.NoError(t, err, text)
		assert.InDelta(t, ratio, s.Ratio, 1e-12, text)
	}
	for _, text := range []string{"", "1:", "1:0", "1:-3", "1:inf", "1:nan", "2:3", "0 per foot", "x per foot", "MT44"} {
		_, err := Parse(text)
		assert.Error(t, err, text)
	}
}

func TestRefuses(t *testing.T) {
	nan := units.Length(math.NaN())
	for _, c := range [][3]units.Length{{18, 20, 40}, {20, 20, 40}, {20, 18, 0}, {20, -1, 40}, {nan, 18, 40}, {20, nan, 40}, {20, 18, nan}} {
		_, err := FromEnds(c[0], c[1], c[2])
		assert.Error(t, err, c)
	}
	for _, half := range []units.Angle{0, -1, 90, units.Angle(math.NaN())} {
		_, err := FromHalf(half)
		assert.Error(t, err)
	}
}

// Whatever way a taper is given, the settings are the same.
func TestWaysAgree(t *testing.T) {
	const degrees = 3e-6 // the rounding of angles to a millionth, twice
	rapid.Check(t, func(t *rapid.T) {
		small := units.Length(rapid.IntRange(0, 100).Draw(t, "small"))
		large := small + units.Length(rapid.IntRange(1, 100).Draw(t, "difference"))
		length := units.Length(rapid.IntRange(1, 1000).Draw(t, "length"))
		a, err := FromEnds(large, small, length)
		require.NoError(t, err)
		b, err := FromRatio(float64(length / (large - small)))
		require.NoError(t, err)
		c, err := FromIncluded(a.IncludedAngle)
		require.NoError(t, err)
		assert.InDelta(t, float64(a.HalfAngle), float64(b.HalfAngle), degrees)
		assert.InDelta(t, float64(a.HalfAngle), float64(c.HalfAngle), degrees)
	})
}
