package holes

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"catchplate/partspec/units"
)

// sixPlaces is the rounding of the reference table, which has six decimals.
const sixPlaces = 0.5e-6 + 1e-9

// testdata/hole_circles.csv: factors on a circle of diameter 1, computed outside
// this program; chord factors equal a published spacing table (source in each
// row). Form A has hole 1 at the top, form B a pair astride the top.
func TestCircleAgainstReferenceTable(t *testing.T) {
	file, err := os.Open("testdata/hole_circles.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 90)
	number := func(text string) float64 {
		x, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		return x
	}
	for _, row := range rows[1:] {
		count, hole := int(number(row[0])), int(number(row[2]))
		start := units.Angle(90)
		if row[1] == "B" {
			start -= units.Angle(180 / float64(count))
			hole = int(math.Mod(number(row[3])-float64(start)+720, 360)*float64(count)/360+0.5)%count + 1
		}
		p, err := Circle(1, count, start)
		require.NoError(t, err)
		got := p.Holes[hole-1]
		assert.InDelta(t, number(row[4]), float64(got.X), 2*sixPlaces, row)
		assert.InDelta(t, number(row[5]), float64(got.Y), 2*sixPlaces, row)
		corner := p.From(Hole{X: -0.5, Y: 0.5})[hole-1]
		assert.InDelta(t, number(row[6]), float64(corner.X), 2*sixPlaces, row)
		assert.InDelta(t, number(row[7]), -float64(corner.Y), 2*sixPlaces, row)
		assert.InDelta(t, number(row[8]), float64(p.Chord), 2*sixPlaces, row)
	}
}

// Printed spacing factors sin(180/n), four places; and the chords, common practice.
func TestChordsPrinted(t *testing.T) {
	for count, factor := range map[int]float64{12: 0.2588, 16: 0.1951, 24: 0.1305, 36: 0.0872} {
		p, err := Circle(1, count, DefaultStart)
		require.NoError(t, err)
		assert.InDelta(t, factor, float64(p.Chord), 0.00005)
	}
	for count, chord := range map[int]float64{4: 28.284, 6: 20, 8: 15.307} {
		p, err := Circle(40, count, DefaultStart)
		require.NoError(t, err)
		assert.InDelta(t, chord, float64(p.Chord), 0.0005)
	}
}

func TestChecks(t *testing.T) {
	p, err := Circle(40, 6, DefaultStart)
	require.NoError(t, err)
	assert.Equal(t, []PinCheck{{1, 20, 24, 16}, {3, 40, 44, 36}}, p.Checks(4))
	two, err := Circle(40, 2, 0)
	require.NoError(t, err)
	assert.Equal(t, []PinCheck{{1, 40, 44, 36}}, two.Checks(4))
	one, err := Circle(40, 1, DefaultStart)
	require.NoError(t, err)
	assert.Empty(t, one.Checks(4))
	assert.Equal(t, []Hole{{0, 20}}, one.Holes)
	assert.Zero(t, one.Chord)
}

func TestCircleRefuses(t *testing.T) {
	for _, c := range []struct {
		d     units.Length
		n     int
		start units.Angle
	}{{0, 6, 90}, {-1, 6, 90}, {units.Length(math.NaN()), 6, 90}, {40, 0, 90}, {40, 361, 90}, {40, 6, units.Angle(math.NaN())}, {40, 6, 1e9}} {
		_, err := Circle(c.d, c.n, c.start)
		assert.Error(t, err)
	}
}

// Every hole on the circle, every neighbour one chord away.
func TestCircleProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := units.Length(rapid.IntRange(1, 300).Draw(t, "diameter"))
		n := rapid.IntRange(2, maxCount).Draw(t, "count")
		p, err := Circle(d, n, units.Angle(rapid.IntRange(-360, 360).Draw(t, "start")))
		require.NoError(t, err)
		for i, h := range p.Holes {
			next := p.Holes[(i+1)%n]
			assert.InDelta(t, float64(d)/2, math.Hypot(float64(h.X), float64(h.Y)), 2*sixPlaces)
			assert.InDelta(t, float64(p.Chord), math.Hypot(float64(h.X-next.X), float64(h.Y-next.Y)), 4*sixPlaces)
		}
	})
}

// Sagitta table, computed outside; second form printed in an old pocket-book.
func TestRise(t *testing.T) {
	for _, c := range [][3]units.Length{{25, 10, 0.50510}, {25, 20, 2.08712}, {50, 20, 1.01021}, {50, 40, 4.17424}, {100, 30, 1.13140}, {12.7, 6.35, 0.40328}} {
		s, err := Rise(c[0], c[1])
		require.NoError(t, err)
		assert.InDelta(t, float64(c[2]), float64(s), 0.5e-5+1e-9)
		r, err := RadiusFrom(c[1], s)
		require.NoError(t, err)
		assert.InDelta(t, float64(c[0]), float64(r), 1e-9)
	}
	for _, c := range [][2]units.Length{{0, 1}, {10, 21}, {10, -1}, {units.Length(math.NaN()), 1}} {
		_, err := Rise(c[0], c[1])
		assert.Error(t, err)
	}
	_, err := RadiusFrom(10, 0)
	assert.Error(t, err)
}
