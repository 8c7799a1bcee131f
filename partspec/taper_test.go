package partspec_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
)

// Named tapers and slopes; MT2 from memory of ISO 296: 17.780 at the gauge line, 1 in 20.020.
func TestTapers(t *testing.T) {
	cases := []struct {
		text                      string
		large, small, length, deg float64
	}{
		{`large = 20, small = 18, length = 40`, 20, 18, 40, math.Atan(1.0/40) * 180 / math.Pi},
		{`large = 20, ratio = "1:20", length = 40`, 20, 18, 40, math.Atan(1.0/40) * 180 / math.Pi},
		{`small = 18, ratio = "1:20", length = 40`, 20, 18, 40, math.Atan(1.0/40) * 180 / math.Pi},
		{`large = 20, small = 18, ratio = "1:20"`, 20, 18, 40, math.Atan(1.0/40) * 180 / math.Pi},
		{`large = 20, ratio = "1:20"`, 20, 18, 40, math.Atan(1.0/40) * 180 / math.Pi}, // the length is what is left
		{`large = 50, angle = 60, length = 40`, 50, 50 - 80*math.Tan(math.Pi/6), 40, 30},
		{`large = 50, per_side = 10, length = 40`, 50, 50 - 80*math.Tan(math.Pi/18), 40, 10},
		{`large = 20, per_foot = "1/2 in", length = 40`, 20, 20 - 40.0/24, 40, math.Atan(1.0/48) * 180 / math.Pi},
		{`named = "MT2"`, 17.780, 17.780 - 40/20.020, 40, math.Atan(0.5/20.020) * 180 / math.Pi},
		{`named = "Morse 2", large = 18`, 18, 18 - 40/20.020, 40, math.Atan(0.5/20.020) * 180 / math.Pi},
	}
	for _, c := range cases {
		for _, end := range []string{"left", "right"} {
			job := read(t, brassPart(fmt.Sprintf("taper \"t\" {\n large_at = %q\n %s\n}", end, lines(c.text))))
			f := feature[*partspec.Taper](t, job, "p", "t")
			assert.InDelta(t, c.large, float64(f.Large.Value), micrometre, c.text)
			assert.InDelta(t, c.small, float64(f.Small.Value), micrometre, c.text)
			assert.InDelta(t, c.length, float64(f.Length.Value), micrometre, c.text)
			assert.InDelta(t, c.deg, float64(f.HalfAngle), 1e-6, c.text) // degrees
			assert.Equal(t, end, f.LargeAt.String())
			assert.Equal(t, span(0, 40), f.Span)
			assert.LessOrEqual(t, f.Small.Low, f.Small.High)
		}
	}
}

// lines turns "a = 1, b = 2" into attributes on lines of their own.
func lines(text string) string {
	out := []byte(text)
	for i := range out[:len(out)-1] {
		if out[i] == ',' && out[i+1] == ' ' {
			out[i] = '\n'
		}
	}
	return string(out)
}

func TestInsideTaper(t *testing.T) {
	job := read(t, brassPart(`
spigot "body" {
  diameter = 50
}
bore "way" {
  diameter = 10
}
taper "socket" {
  inside = true
  named = "MT2"
  length = 30
  from = "right"
  at = 4
}
counterbore "relief" {
  diameter = 20
  depth = 4
  from = "right"
}`))
	socket := feature[*partspec.Taper](t, job, "p", "socket")
	assert.Equal(t, span(6, 36), socket.Span)
	assert.Equal(t, partspec.Right, socket.LargeAt)
	assert.Equal(t, span(0, 6), feature[*partspec.Bore](t, job, "p", "way").Span)
	assert.Equal(t, span(36, 40), feature[*partspec.Bore](t, job, "p", "relief").Span)
}
