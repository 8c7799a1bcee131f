package units

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestLengthText(t *testing.T) {
	third := Inch / 3
	cases := []struct {
		l      Length
		mm, in string
	}{
		{22.225, "22.225 mm", "7/8 in"},
		{47.625, "47.625 mm", "1 7/8 in"},
		{25.4, "25.4 mm", "1 in"},
		{0, "0 mm", "0 in"},
		{-12.7, "-12.7 mm", "-1/2 in"},
		{20, "20 mm", "≈0.787 in"},
		{0.0254, "0.025 mm", "0.001 in"},
		{12.8016, "12.802 mm", "0.504 in"},
		{2.59588, "2.596 mm", "0.1022 in"},
		{0.001, "0.001 mm", "≈0.000039 in"},
		{third, "8.467 mm", "≈0.333 in"},
		{0.1 + 0.2, "0.3 mm", "≈0.012 in"},
		{-0.0001, "0 mm", "≈-0.0000039 in"},
		{Length(math.NaN()), "? mm", "? in"},
		{Length(math.Inf(1)), "? mm", "? in"},
	}
	for _, c := range cases {
		assert.Equal(t, c.mm, c.l.Text(InMM))
		assert.Equal(t, c.in, c.l.Text(InInch))
	}
	assert.Equal(t, "7/8 in (22.225 mm)", Length(22.225).Both(InInch))
	assert.Equal(t, "20 mm (≈0.787 in)", Length(20).Both(InMM))
	assert.Equal(t, "5 bad unit", Length(5).Text(0))
}

func TestDimensionText(t *testing.T) {
	cases := []struct {
		d    Dimension
		want string
	}{
		{Dimension{38.1, `1-1/2"`, true}, `1-1/2" (38.1 mm)`},
		{Dimension{22.225, "0.875", true}, "0.875 in (22.225 mm)"},
		{Dimension{20, "20", false}, "20 mm (≈0.787 in)"},
		{Dimension{1.6256, "16 swg", true}, "16 swg (1.626 mm)"},
		{Dimension{22.225, "", true}, "7/8 in (22.225 mm)"},
	}
	for _, c := range cases {
		assert.Equal(t, c.want, c.d.Text())
	}
}

func TestLimits(t *testing.T) {
	l := Around(22, -0.02, 0)
	assert.Equal(t, "21.98 to 22.00", l.Figures(InMM))
	assert.Equal(t, "21.98 to 22.00 mm", l.String())
	assert.Equal(t, "0.8654 to 0.8661 in", l.Text(InInch))
	assert.Equal(t, Length(0.02), l.Width())
	assert.Equal(t, Length(21.99), l.Middle())
	assert.True(t, l.Contains(21.98) && l.Contains(22) && !l.Contains(22.001))
	assert.Equal(t, Limits{20.98, 21}, l.Shift(-1))
	assert.True(t, l.Shrink(0.01).Valid())
	assert.False(t, l.Shrink(0.011).Valid())
	assert.Equal(t, "20 to 21 mm", Limits{20, 21}.String())
	assert.Equal(t, Length(20.02), Around(20, 0, 0.02).High)
}

func TestOtherQuantitiesText(t *testing.T) {
	assert.Equal(t, "1 h 20 min", Minutes(80).String())
	assert.Equal(t, "2 h", Minutes(119.7).String())
	assert.Equal(t, "45 min", Minutes(45.2).String())
	assert.Equal(t, "under 1 min", Minutes(0.4).String())
	assert.Equal(t, "0 min", Minutes(0).String())
	assert.Equal(t, "? min", Minutes(-1).String())
	assert.Equal(t, "640 rev/min", Speed(640.4).String())
	assert.Equal(t, "7.5 rev/min", Speed(7.5).String())
	assert.Equal(t, "1200 N", Force(1234).String())
	assert.Equal(t, "0.12 N", Force(0.123).String())
	assert.Equal(t, "5.71°", Angle(5.7106).String())
	assert.Equal(t, "5° 43'", Angle(5.7106).DegreesMinutes())
	assert.Equal(t, "-1° 00'", Angle(-0.9999).DegreesMinutes())
	assert.InDelta(t, math.Pi/2, (90 * Degree).Radians(), 1e-15) // one rounding of pi
	assert.Equal(t, Angle(180), Radians(math.Pi))
}

// Every 64th of an inch is shown as a fraction and reads back as itself.
func TestInchFractionsReadBack(t *testing.T) {
	for i := range 64 * 12 {
		l := Length(i) / 64 * Inch
		back, err := ParseLength(l.Text(InInch), MM)
		require.NoError(t, err)
		assert.InDelta(t, float64(l), float64(back), exactWithin)
		assert.NotContains(t, l.Text(InInch), "≈")
	}
}

// A figure without "≈" is exact; one with it is within half a thou.
func TestInchTextIsHonest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.IntRange(100, 500_000).Draw(t, "micrometres")) / 1000
		text := l.Text(InInch)
		allowed := exactWithin
		if rest := []rune(text); rest[0] == '≈' {
			text, allowed = string(rest[1:]), float64(Thou)/2+exactWithin
		}
		back, err := ParseLength(text, MM)
		require.NoError(t, err)
		assert.InDelta(t, float64(l), float64(back), allowed)
	})
}
