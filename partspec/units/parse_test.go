package units

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The inch sizes are exact: figure x 25.4. Wire gauge and drill sizes are the
// printed inch sizes x 25.4.
func TestParseLength(t *testing.T) {
	cases := []struct {
		text string
		bare Length
		want Length
	}{
		{"12.5", MM, 12.5},
		{"12.5", Inch, 317.5},
		{"12.5 mm", Inch, 12.5},
		{"12.5mm", Inch, 12.5},
		{"0", MM, 0},
		{"+3", MM, 3},
		{"7/8 in", MM, 22.225},
		{"7/8in", MM, 22.225},
		{"1 1/2 in", MM, 38.1},
		{`1-1/2"`, MM, 38.1},
		{"1½ in", MM, 38.1},
		{"⅞″", MM, 22.225},
		{"0.875in", MM, 22.225},
		{"0.875 inch", MM, 22.225},
		{".875 in", MM, 22.225},
		{"7/8", Inch, 22.225},
		{"3 thou", MM, 0.0762},
		{"16 swg", MM, 1.6256},
		{"22 SWG", MM, 0.7112},
		{"3/0 swg", MM, 9.4488},
		{"#30 drill", MM, 3.2639},
		{"no. 30 drill", MM, 3.2639},
		{"number 60 drill", MM, 1.016},
		{"letter F drill", MM, 6.5278},
		{"letter F", MM, 6.5278},
		{"F drill", MM, 6.5278},
		{"7/32 drill", MM, 5.55625},
		{"5.5 mm drill", Inch, 5.5},
		{"5.5 drill", MM, 5.5},
		{"  1   7/8   in ", MM, 47.625},
	}
	for _, c := range cases {
		t.Run(c.text, func(t *testing.T) {
			got, err := ParseLength(c.text, c.bare)
			require.NoError(t, err)
			assert.Equal(t, c.want, got) // exact: one rounding only
		})
	}
}

func TestParseLengthRefuses(t *testing.T) {
	cases := []struct{ text, part string }{
		{"", "empty"},
		{"   ", "empty"},
		{"1e3", "powers of ten"},
		{"1E3 mm", "powers of ten"},
		{"12,5", "use a point"},
		{"-3", "negative"},
		{"-7/8 in", "negative"},
		{"--3", "cannot read"},
		{"5/0 in", "cannot read"},
		{"1.5 1/2 in", "cannot read"},
		{"1 2 in", "cannot read"},
		{"1.2.3", "cannot read"},
		{"5.", "cannot read"},
		{"1/2/3", "cannot read"},
		{"inf", "not a size"},
		{"NaN", "not a size"},
		{"3 cm", "write mm, in"},
		{"3 yards", "write mm, in"},
		{"0x10", "cannot read"},
		{"1_000", "cannot read"},
		{"51 swg", "7/0 swg to 50 swg"},
		{"-1 swg", "7/0 swg to 50 swg"},
		{"#0 drill", "#1 drill to #80 drill"},
		{"#81 drill", "#1 drill to #80 drill"},
		{"letter FF drill", "A drill to Z drill"},
		{"drill", "not a size"},
		{"1234567890123", "cannot read"},
		{"100001", "too long"},
		{"99999 in", "too long"},
		{strings.Repeat("1", 65), "at most 64"},
	}
	for _, c := range cases {
		t.Run(c.text, func(t *testing.T) {
			_, err := ParseLength(c.text, MM)
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.part)
		})
	}
}

func TestParsePositionTakesASign(t *testing.T) {
	got, err := ParsePosition("-1 1/2 in", MM)
	require.NoError(t, err)
	assert.Equal(t, Length(-38.1), got)
}

func TestParseDimensionKeepsTheWords(t *testing.T) {
	cases := []struct {
		text   string
		bare   Length
		inches bool
	}{
		{"7/8 in", MM, true}, {"22.225", MM, false}, {"0.875", Inch, true}, {"16 swg", MM, true}, {"3 mm", Inch, false},
	}
	for _, c := range cases {
		d, err := ParseDimension(" "+c.text, c.bare)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.text, d.Written)
		assert.Equal(t, c.inches, d.InInches, c.text)
	}
}

func TestParseToleranced(t *testing.T) {
	cases := []struct {
		text           string
		bare           Length
		nominal        Length
		low, high      Length
		class          string
		inches, limits bool
	}{
		{text: "20 +0.02 -0", bare: MM, nominal: 20, low: 20, high: 20.02, limits: true},
		{text: "20 +0.02/-0.01", bare: MM, nominal: 20, low: 19.99, high: 20.02, limits: true},
		{text: "20 -0.02 -0.05", bare: MM, nominal: 20, low: 19.95, high: 19.98, limits: true},
		{text: "20 -0.05 +0.02", bare: MM, nominal: 20, low: 19.95, high: 20.02, limits: true},
		{text: "20 ±0.05", bare: MM, nominal: 20, low: 19.95, high: 20.05, limits: true},
		{text: "20 +/- 0.05 mm", bare: MM, nominal: 20, low: 19.95, high: 20.05, limits: true},
		{text: "20±2 thou", bare: MM, nominal: 20, low: 19.9492, high: 20.0508, limits: true},
		{text: "7/8 in +0.002 -0", bare: MM, nominal: 22.225, low: 22.225, high: 22.2758, limits: true, inches: true},
		{text: "1-1/2 in ±1/64", bare: MM, nominal: 38.1, low: 37.7031, high: 38.4969, limits: true, inches: true},
		{text: "0.875 +0.001/-0.001 in", bare: MM, nominal: 22.225, low: 22.1996, high: 22.2504, limits: true, inches: true},
		{text: "19.98..20.00", bare: MM, nominal: 19.99, low: 19.98, high: 20, limits: true},
		{text: "0.874 .. 0.875 in", bare: MM, nominal: 22.2123, low: 22.1996, high: 22.225, limits: true, inches: true},
		{text: "25 H7", bare: MM, nominal: 25, class: "H7"},
		{text: "1 in js6", bare: MM, nominal: 25.4, class: "js6", inches: true},
		{text: "25 e8", bare: MM, nominal: 25, class: "e8"},
		{text: "1 7/8 in", bare: MM, nominal: 47.625, inches: true},
		{text: "16 swg", bare: MM, nominal: 1.6256, inches: true},
	}
	for _, c := range cases {
		t.Run(c.text, func(t *testing.T) {
			got, err := ParseToleranced(c.text, c.bare)
			require.NoError(t, err)
			assert.Equal(t, c.nominal, got.Nominal.Value.Round(4))
			assert.Equal(t, c.text, got.Nominal.Written)
			assert.Equal(t, c.inches, got.Nominal.InInches)
			assert.Equal(t, c.class, got.Class)
			assert.Equal(t, c.limits, got.HasLimits)
			assert.Equal(t, Limits{c.low, c.high}, Limits{got.Limits.Low.Round(4), got.Limits.High.Round(4)})
		})
	}
}

func TestParseTolerancedRefuses(t *testing.T) {
	cases := []struct{ text, part string }{
		{"20..19", "wrong way round"},
		{"20 +0.02", "cannot read"},
		{"20 ±", "not a size"},
		{"0.01 -0.02 -0.03", "negative"},
		{"20 +1e-3 -0", "cannot read"},
		{"20e8", "cannot read"},
		{"20+0.02-0.01", "cannot read"}, // a minus that touches the figure may be a mixed number
		{"..", "cannot read"},
		{"H7", "cannot read"},
	}
	for _, c := range cases {
		t.Run(c.text, func(t *testing.T) {
			_, err := ParseToleranced(c.text, MM)
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.part)
		})
	}
}

// FuzzParse: whatever the text, no panic; what is accepted is finite, within
// bounds, and its own text reads back as the same length to a micrometre.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{"1 7/8 in", "16 swg", "20 +0.02 -0", "25 H7", "#30 drill", "19.98..20", "-1-1/2\"", "½", "+-", "\xff"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if toleranced, err := ParseToleranced(text, Inch); err == nil && toleranced.HasLimits {
			assert.True(t, toleranced.Limits.Valid())
		}
		l, err := ParseLength(text, MM)
		if err != nil {
			return
		}
		require.True(t, finite(float64(l)) && l >= 0 && l <= MaxLength)
		back, err := ParseLength(l.Text(InMM), Inch)
		require.NoError(t, err)
		assert.InDelta(t, float64(l), float64(back), halfMicrometre)
	})
}

// halfMicrometre is the rounding of a length shown to three decimals.
const halfMicrometre = 0.0005000001
