package tables

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec/units"
)

// Published limits. The source stands beside each value.
func TestISO286(t *testing.T) {
	for _, c := range []struct {
		class        string
		size         units.Length
		lower, upper units.Length
		source       string
	}{
		{"H11", 34, 0, 0.160, "Shigley, 34 H11/c11"},
		{"c11", 34, -0.280, -0.120, "Shigley, 34 H11/c11"},
		{"H7", 25, 0, 0.021, "ISO 286-2"},
		{"g6", 25, -0.020, -0.007, "ISO 286-2"},
		{"k6", 25, 0.002, 0.015, "ISO 286-2"},
		{"n6", 25, 0.015, 0.028, "ISO 286-2"},
		{"p6", 25, 0.022, 0.035, "ISO 286-2"},
		{"s6", 25, 0.035, 0.048, "ISO 286-2"},
		{"f7", 25, -0.041, -0.020, "ISO 286-2"},
		{"h6", 25, -0.013, 0, "ISO 286-2"},
		{"js6", 25, -0.0065, 0.0065, "ISO 286-2"},
		{"K7", 25, -0.015, 0.006, "ISO 286-2"},
		{"N7", 25, -0.028, -0.007, "ISO 286-2"},
		{"P7", 25, -0.035, -0.014, "ISO 286-2"},
		{"R7", 25, -0.041, -0.020, "ISO 286-2; here by the rule with delta"},
		{"S7", 25, -0.048, -0.027, "ISO 286-2; here by the rule with delta"},
		{"U7", 20, -0.054, -0.033, "ISO 286-2; here by the rule with delta"},
		{"R7", 3, -0.020, -0.010, "ISO 286-2; no delta up to 3 mm"},
		{"M8", 10, -0.021, 0.001, "ISO 286-2"},
		{"J7", 25, -0.009, 0.012, "ISO 286-2"},
		{"j6", 25, -0.004, 0.009, "ISO 286-2"},
		{"t6", 30, 0.041, 0.054, "ISO 286-2"},
		{"H7", 18, 0, 0.018, "a size on the edge belongs to the lower range"},
		{"H7", 18.001, 0, 0.021, "just over the edge"},
		{"H8", 250, 0, 0.072, "ISO 286-2"},
		{"H9", 3, 0, 0.025, "ISO 286-2"},
		{"h4", 25, -0.006, 0, "ISO 286-2"},
		{"H15", 100, 0, 1.4, "ISO 286-1"},
		{"js16", 10, -0.45, 0.45, "ISO 286-1"},
	} {
		d, err := ISO286(c.class, c.size)
		require.NoError(t, err, c.class)
		assert.Equal(t, [2]units.Length{c.lower, c.upper}, [2]units.Length{d.Lower, d.Upper}, "%s at %s: %s", c.class, c.size, c.source)
		assert.NotEmpty(t, d.Source)
	}
}

func TestISO286Refuses(t *testing.T) {
	for _, c := range []struct {
		class string
		size  units.Length
		part  string
	}{
		{"H7", 0, "over 0 up to 250"}, {"H7", -5, "over 0"}, {"H7", 250.1, "over 0"},
		{"H3", 20, "grades run from 4 to 16"}, {"H17", 20, "grades run from 4 to 16"}, {"H", 20, "like H7"}, {"7", 20, "like H7"}, {"Hg7", 20, "not a class"},
		{"Q7", 20, "letters here are"}, {"K9", 20, "letters here are"}, {"t6", 20, "letters here are"}, {"", 20, "like H7"},
	} {
		_, err := ISO286(c.class, c.size)
		require.Error(t, err, c.class)
		assert.Contains(t, err.Error(), c.part, c.class)
	}
}

// Properties of every class of the tables: a hole H starts at the nominal size,
// a shaft h ends there, G to C mirror g to c, and the width is the grade's.
func TestISO286Properties(t *testing.T) {
	for _, size := range []units.Length{1, 3, 5, 10, 14, 22, 30, 45, 60, 90, 110, 130, 170, 190, 210, 250} {
		for grade, text := range map[int]string{6: "6", 7: "7", 9: "9", 11: "11"} {
			width, err := toleranceWidth(grade, size)
			require.NoError(t, err)
			for _, letter := range letters() {
				d, err := ISO286(letter+text, size)
				if err != nil {
					continue
				}
				assert.InDelta(t, width.micrometres/1000, float64(d.Upper-d.Lower), 1e-6, letter+text)
			}
			for _, letter := range []string{"c", "d", "e", "f", "g", "h"} {
				shaft, err := ISO286(letter+text, size)
				require.NoError(t, err)
				hole, err := ISO286(string(letter[0]-'a'+'A')+text, size)
				require.NoError(t, err)
				assert.Equal(t, -shaft.Upper, hole.Lower)
			}
		}
	}
}

func TestFits(t *testing.T) {
	for purpose, want := range map[string]string{
		"sliding": "H7/g6", "push": "H7/h6", "light press": "H7/p6", "press": "H7/s6", "shrink": "H7/s6", "close running": "H8/f7", "free running": "H9/d9",
	} {
		c, err := FindFit(purpose)
		require.NoError(t, err, purpose)
		assert.Equal(t, want, c.Hole+"/"+c.Shaft, purpose)
	}
	_, err := FindFit("snug-ish")
	require.Error(t, err)
	assert.Contains(t, err.Error(), "sliding")
	gap, ok := FindGap("silver-braze")
	require.True(t, ok)
	assert.Equal(t, units.Limits{Low: 0.05, High: 0.15}, gap.Clearance)
	for _, bad := range []string{"g6/H7", "H7", "H7/", "/g6", "H7/H7"} {
		_, _, err := SplitFit(bad)
		assert.Error(t, err, bad)
	}
}

// ISO 2768-1 and -2, values from memory of the standards, as the table says.
func TestISO2768(t *testing.T) {
	for _, c := range []struct {
		class        string
		kind         GeneralKind
		size         units.Length
		lower, upper units.Length
	}{
		{"m", GeneralLength, 20, -0.2, 0.2},
		{"m", GeneralLength, 30, -0.2, 0.2},
		{"m", GeneralLength, 30.01, -0.3, 0.3},
		{"f", GeneralLength, 0.5, -0.05, 0.05},
		{"c", GeneralLength, 200, -1.2, 1.2},
		{"v", GeneralLength, 5, -0.5, 0.5},
		{"mK", GeneralLength, 100, -0.3, 0.3},
		{"m", GeneralEdge, 1, -0.2, 0.2},
		{"c", GeneralEdge, 8, -2, 2},
		{"mK", GeneralFlatness, 50, 0, 0.2},
		{"H", GeneralSquareness, 90, 0, 0.2},
		{"L", GeneralRunOut, 40, 0, 0.5},
	} {
		d, err := ISO2768(c.class, c.kind, c.size)
		require.NoError(t, err)
		assert.Equal(t, [2]units.Length{c.lower, c.upper}, [2]units.Length{d.Lower, d.Upper}, "%s %s %s", c.class, c.kind, c.size)
		assert.True(t, d.FromMemory)
	}
	angle, source, err := ISO2768Angle("m", 40)
	require.NoError(t, err)
	assert.Equal(t, 0.5*units.Degree, angle)
	assert.NotEmpty(t, source)

	for _, c := range []struct {
		class string
		kind  GeneralKind
		size  units.Length
	}{{"m", GeneralLength, 0.4}, {"v", GeneralLength, 2}, {"x", GeneralLength, 20}, {"", GeneralLength, 20}, {"m", GeneralLength, 5000}, {"m", GeneralAngle, 20}, {"m", GeneralFlatness, 20}} {
		_, err := ISO2768(c.class, c.kind, c.size)
		assert.Error(t, err)
	}
}

// ISO 296: the small end follows from gauge diameter, ratio and length; the
// table rounds it to 0.1 mm.
func TestMorseTapersAreConsistent(t *testing.T) {
	const roundedTenth = 0.05 + 1e-3
	count := 0
	for _, taper := range Tapers() {
		if taper.Small == 0 || taper.Name[:2] != "MT" {
			continue
		}
		count++
		assert.InDelta(t, float64(taper.Gauge)-float64(taper.Length)/taper.Ratio, float64(taper.Small), roundedTenth, taper.Name)
	}
	assert.Equal(t, 7, count)
	for name, want := range map[string]string{"MT2": "MT2", "Morse 2": "MT2", "2 MT": "MT2", "No. 3 Morse": "MT3", "jt6": "JT6", "7:24": "7/24"} {
		taper, ok := FindTaper(name)
		require.True(t, ok, name)
		assert.Equal(t, want, taper.Name)
	}
	_, ok := FindTaper("MT9")
	assert.False(t, ok)
}

func TestCuttingAndAccuracy(t *testing.T) {
	feed, ok := FindCutting("rough turn", "feed", "small lathe")
	require.True(t, ok)
	assert.Equal(t, Range{0.08, 0.2}, feed.Range)
	assert.Len(t, CuttingRules("drill", "feed"), 5)

	ream, ok := FindProcess("ream, machine")
	require.True(t, ok)
	assert.Equal(t, 7, ream.ITBest)
	assert.Equal(t, 8, ream.ITUsual)
	drill, ok := FindProcess("drill")
	require.True(t, ok)
	assert.Equal(t, 13, drill.ITUsual)
	chuck, ok := FindHolding("3-jaw self-centring, new")
	require.True(t, ok)
	assert.Equal(t, units.Limits{Low: 0.03, High: 0.1}, chuck.RunOut)
	_, ok = FindHolding("")
	assert.False(t, ok)
}
