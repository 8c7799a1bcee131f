package replay

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// A hole square to a seat, set over by its own tilt, stands upright in the plane of the pipe's axis, its mouth the pipe's radius below it: from either end, on either side of the pipe.
func TestLeaningHoleStandsUpright(t *testing.T) {
	for name, c := range map[string]struct {
		on    partspec.End
		axisZ float64
		free  string
		x     float64
		along float64
	}{
		"right end, beside +X": {partspec.Right, 70, "right", 27, 90},
		"right end, beside -X": {partspec.Right, 70, "right", -27, 270},
		"left end, beside -X":  {partspec.Left, -40, "left", -27, 90},
		"left end, beside +X":  {partspec.Left, -40, "left", 27, 270},
	} {
		t.Run(name, func(t *testing.T) {
			seat := &partspec.Seat{FeatureHead: partspec.FeatureHead{Name: "pipe"}, On: c.on, Angle: 90, AxisZ: units.Length(c.axisZ)}
			seat.Radius.Value = 45
			holes := &partspec.Holes{SquareTo: "pipe"}
			w := &walk{part: &partspec.Part{Features: []partspec.Feature{seat, holes}}}
			w.setup = plan.Setup{FreeEnd: c.free, Tilt: &plan.Tilt{SineMM: 100, RiseMM: 60, AlongDeg: c.along}} // 27/45
			var at partspec.Point
			at.X.Value, at.Y.Value = units.Length(c.x), 8
			l, p := w.leaningAt(holes, at), w.poseOf()
			upright := p.lay(l.outward)
			assert.InDeltaSlice(t, []float64{0, 0, 1}, upright[:], 1e-9)
			mouth, axis := p.lay(l.mouth), p.lay([3]float64{0, 0, c.axisZ})
			assert.InDelta(t, axis[1], mouth[1], 1e-9)
			assert.InDelta(t, axis[2]-45, mouth[2], 1e-9)
			assert.InDelta(t, 8, mouth[0]*map[bool]float64{true: 1, false: -1}[c.along == 90], 1e-9)
		})
	}
}
