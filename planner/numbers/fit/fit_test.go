package fit

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"catchplate/partspec/units"
)

func TestResolve(t *testing.T) {
	for _, c := range []struct {
		nominal     units.Length
		spec        string
		hole, shaft units.Limits
		least, most units.Length
		kind        Kind
		source      string
	}{
		{34, "H11/c11", units.Limits{Low: 34, High: 34.16}, units.Limits{Low: 33.72, High: 33.88}, 0.12, 0.44, Clearance, "Shigley, example on 34H11/c11, from memory"},
		{25, "H7/g6", units.Limits{Low: 25, High: 25.021}, units.Limits{Low: 24.98, High: 24.993}, 0.007, 0.041, Clearance, "ISO 286-2"},
		{25, "sliding", units.Limits{Low: 25, High: 25.021}, units.Limits{Low: 24.98, High: 24.993}, 0.007, 0.041, Clearance, "ISO 286-2"},
		{40, "H7/k6", units.Limits{Low: 40, High: 40.025}, units.Limits{Low: 40.002, High: 40.018}, -0.018, 0.023, Transition, "ISO 286-2"},
		{25, "H7/s6", units.Limits{Low: 25, High: 25.021}, units.Limits{Low: 25.035, High: 25.048}, -0.048, -0.014, Interference, "ISO 286-2"},
		{10, "P7 / h6", units.Limits{Low: 9.976, High: 9.991}, units.Limits{Low: 9.991, High: 10}, -0.024, 0, Interference, "ISO 286-2"},
	} {
		f, err := Resolve(c.nominal, c.spec)
		require.NoError(t, err, c.spec)
		assert.Equal(t, c.hole, f.Hole.Limits, c.spec)
		assert.Equal(t, c.shaft, f.Shaft.Limits, c.spec)
		assert.Equal(t, c.least, *f.LeastClearance, c.spec)
		assert.Equal(t, c.most, *f.MostClearance, c.spec)
		assert.Equal(t, c.kind, KindOf(units.Limits{Low: *f.LeastClearance, High: *f.MostClearance}), c.spec)
		assert.NotEmpty(t, f.Source)
	}
}

func TestOneClass(t *testing.T) {
	f, err := Resolve(25, "H7")
	require.NoError(t, err)
	assert.Nil(t, f.Shaft)
	assert.Nil(t, f.LeastClearance)
	_, err = f.ShaftFor(25)
	assert.Error(t, err)
	f, err = Resolve(25, "g6")
	require.NoError(t, err)
	assert.Nil(t, f.Hole)
	_, err = f.HoleFor(25)
	assert.Error(t, err)
}

func TestResolveRefuses(t *testing.T) {
	for _, spec := range []string{"", "H7/H7", "g6/H7", "H7/g66", "wobbly", "H7/", "Q7", "/"} {
		_, err := Resolve(25, spec)
		assert.Error(t, err, spec)
	}
	_, err := Resolve(0, "H7/g6")
	assert.Error(t, err)
}

// The keys that the command promises.
func TestJSONKeys(t *testing.T) {
	f, err := Resolve(25, "H7/g6")
	require.NoError(t, err)
	raw, err := json.Marshal(f)
	require.NoError(t, err)
	var got struct {
		Hole, Shaft struct {
			Lower float64 `json:"lower_mm"`
			Upper float64 `json:"upper_mm"`
		}
		Least float64 `json:"least_clearance_mm"`
		Most  float64 `json:"most_clearance_mm"`
	}
	require.NoError(t, json.Unmarshal(raw, &got))
	assert.Equal(t, []float64{25, 25.021, 24.98, 24.993, 0.007, 0.041}, []float64{got.Hole.Lower, got.Hole.Upper, got.Shaft.Lower, got.Shaft.Upper, got.Least, got.Most})
}

// A shaft made for a measured hole gives a clearance within the fit's.
func TestMadeToSuit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, err := Resolve(25, rapid.SampledFrom([]string{"H7/g6", "H7/k6", "H7/s6"}).Draw(t, "fit"))
		require.NoError(t, err)
		measured := units.Length(rapid.IntRange(24_900, 25_100).Draw(t, "micrometres")) / 1000
		shaft, err := f.ShaftFor(measured)
		require.NoError(t, err)
		hole, err := f.HoleFor(measured)
		require.NoError(t, err)
		own := units.Limits{Low: *f.LeastClearance, High: *f.MostClearance}
		assert.Equal(t, own, Clearances(units.Limits{Low: measured, High: measured}, shaft))
		assert.Equal(t, own, Clearances(hole, units.Limits{Low: measured, High: measured}))
	})
}
