package partspec_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

// ISO 2768-1 medium: 0.5 to 3 mm 0.1, 3 to 6 mm 0.1, 6 to 30 mm 0.2, 30 to 120 mm 0.3;
// ISO 286-2: 25 H7 is 25.000 to 25.021, 20 h6 is 19.987 to 20.000 (both from memory of the printed tables).
func TestLimits(t *testing.T) {
	job := read(t, brassPart(`
spigot "a" {
  diameter = "20 h6"
  length = 5
}
spigot "b" {
  diameter = "49.9..50.0"
  length = 30
}
spigot "c" {
  diameter = 35
}
bore "hole" {
  diameter = "14 H7"
  depth = "10 ±0.05"
}`))
	cases := []struct {
		size           partspec.Size
		low, high      units.Length
		class, because string
	}{
		{feature[*partspec.Spigot](t, job, "p", "a").Diameter, 19.987, 20, "h6", "h6 (ISO 286-1)"},
		{feature[*partspec.Spigot](t, job, "p", "a").Length, 4.9, 5.1, "", "general tolerance ISO 2768-m"},
		{feature[*partspec.Spigot](t, job, "p", "b").Diameter, 49.9, 50, "", "as drawn"},
		{feature[*partspec.Spigot](t, job, "p", "b").Length, 29.8, 30.2, "", "general tolerance ISO 2768-m"},
		{feature[*partspec.Spigot](t, job, "p", "c").Diameter, 34.7, 35.3, "", "general tolerance ISO 2768-m"},
		{feature[*partspec.Bore](t, job, "p", "hole").Diameter, 14, 14.018, "H7", "H7 (ISO 286-1)"},
		{feature[*partspec.Bore](t, job, "p", "hole").Depth, 9.95, 10.05, "", "as drawn"},
	}
	for _, c := range cases {
		assert.Equal(t, c.low, c.size.Low)
		assert.Equal(t, c.high, c.size.High)
		assert.Equal(t, c.class, c.size.Class)
		assert.Equal(t, c.because, c.size.Basis)
	}
}

// In a part drawn in inches bare figures and names are inches.
func TestInches(t *testing.T) {
	job := read(t, `
part "a" {
  material = "brass"
  drawn_in = "inch"
  length = 2
  stock "bar" {
    diameter = 1
  }
  spigot "one" {
    diameter = 7 / 8
    length = 25.4 * mm
  }
  spigot "two" {
    diameter = part.b.spigot.one.diameter + 0.1
  }
}
part "b" {
  material = "brass"
  length = 20
  stock "bar" {
    diameter = 30
  }
  spigot "one" {
    diameter = part.a.length / 4 + 2 * thou
  }
}`)
	one, two := feature[*partspec.Spigot](t, job, "a", "one"), feature[*partspec.Spigot](t, job, "a", "two")
	assert.Equal(t, units.Length(22.225), one.Diameter.Value)
	assert.True(t, one.Diameter.InInches)
	assert.Equal(t, units.Length(25.4), one.Length.Value)
	assert.False(t, one.Length.InInches)
	assert.InDelta(t, 12.7508+2.54, float64(two.Diameter.Value), micrometre)
	assert.Equal(t, units.Length(12.7508), feature[*partspec.Spigot](t, job, "b", "one").Diameter.Value)
	assert.Equal(t, "2", job.Part("a").Length.Written)
}

func TestExpressions(t *testing.T) {
	cases := map[string]units.Length{
		`7 / 8 * inch`:                 22.225,
		`"7/8 in"`:                     22.225,
		`1 / 3 * 3`:                    1,
		`max(3, 5, 4) + min(1, 2)`:     6,
		`abs(0 - 4) + sqrt(9)`:         7,
		`20 * sin(30 * deg)`:           10,
		`20 * cos(60) + 10 * tan(45)`:  20,
		`part.p.length > 30 ? 12 : 14`: 12,
		`(1 + 2) * 3 - -1`:             10,
		`10 * thou + 1 * mm`:           1.254,
		`0.1 + 0.2`:                    0.3,
	}
	for text, want := range cases {
		source := brassPart("spigot \"a\" {\n diameter = " + text + "\n}")
		job, _, found := partspec.Parse([]partspec.Source{{Name: "test.hcl", Text: []byte(source)}})
		require.NotNil(t, job, found)                                                                                     // small diameters may be asked about
		assert.InDelta(t, float64(want), float64(feature[*partspec.Spigot](t, job, "p", "a").Diameter.Value), 1e-9, text) // 1e-9: double rounding in trigonometry
	}
}
