package steps

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Where flanks are admitted, no flank of any cut passes the curve; and some are refused.
func TestFlanksNeverRub(t *testing.T) {
	const samples = 400
	c := newCases(17)
	refused := 0
	for tried := 0; tried < 150; {
		r := c.request()
		if _, err := Fewest(r); err != nil {
			continue
		}
		r.Cutter.LeftFlankDeg, r.Cutter.RightFlankDeg = c.decimalBetween(1, 60), c.decimalBetween(1, 60)
		table, err := Fewest(r)
		if err != nil {
			assert.ErrorContains(t, err, "flank")
			refused++
			continue
		}
		tried++
		for _, cut := range table.Cuts {
			for _, s := range metal(r) {
				from, to := segmentEnds(s)
				for n := range samples + 1 {
					x := from + (to-from)*float64(n)/samples
					require.LessOrEqual(t, segmentHeight(s, x), flankHeight(r.Cutter, x-cut.AcrossMM)-cut.DepthMM+oracleSlackMM, "%+v\n%+v", r, cut)
				}
			}
		}
	}
	assert.NotZero(t, refused)
}

// flankHeight is the height of the nose or, past where the flank leaves it, of the flank.
func flankHeight(c Cutter, dx float64) float64 {
	lean := c.RightFlankDeg * math.Pi / 180
	if dx < 0 {
		lean = c.LeftFlankDeg * math.Pi / 180
	}
	nose, flat := c.RadiusMM, 0.0
	if c.Kind == SquareEnd {
		nose, flat = c.CornerRadiusMM, c.WidthMM/2-c.CornerRadiusMM
	}
	leaves := flat + nose*math.Cos(lean)
	if math.Abs(dx) <= leaves {
		return edge(c, dx)
	}
	return nose*(1-math.Sin(lean)) + (math.Abs(dx)-leaves)/math.Tan(lean)
}
