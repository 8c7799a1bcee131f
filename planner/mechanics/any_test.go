package mechanics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Whatever numbers come in: an error that says what was expected, or finite figures. Never a panic, never NaN.
func TestAnyNumbersGetAnAnswerOrAnError(t *testing.T) {
	number := rapid.OneOf(rapid.Float64Range(0, 200), rapid.Float64Range(0, 1), rapid.Float64(),
		rapid.SampledFrom([]float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e-9, 1e12}))
	rapid.Check(t, func(t *rapid.T) {
		n := func() float64 { return number.Draw(t, "n") }
		jaws := rapid.IntRange(-1, 30).Draw(t, "jaws")
		judge := func(err error, figures ...float64) {
			if err != nil {
				assert.Contains(t, err.Error(), "expected")
				return
			}
			assert.True(t, finite(figures...), "%v", figures)
		}
		cut, err := CuttingForce(Cut{n(), n(), n(), n(), n(), n(), n()})
		judge(err, cut.MainN, cut.FeedN, cut.SpecificMPa)
		grip, err := LeastGripPerJaw(GripDemand{n(), n(), n(), n(), n(), n(), n(), jaws, n(), n(), false})
		judge(err, grip.PerJawN, grip.TotalN)
		clamp, err := LeastClampForce(ClampDemand{n(), n(), n(), n(), n(), n()})
		judge(err, clamp)
		beam, err := Shaft{[]Section{{n(), n(), n()}, {n(), n(), 0}}, n(), jaws > 5, jaws%2 == 0, n()}.Deflection(n(), n())
		judge(err, beam.AtForceMM, beam.MostMM, beam.StressMPa)
		fit, err := PressFit{n(), n(), n(), n(), n(), n(), n(), n(), n(), n()}.Load()
		judge(err, fit.PressureMPa, fit.TorqueNm, fit.HubGrowthMM)
		plate, err := PlateGrip{n(), n(), n(), n(), n(), n(), n(), n(), n(), n(), n()}.Distortion()
		judge(err, plate.ErrorMostMM, plate.StressMostMPa)
		straps, err := AxialStraps{n(), n(), n(), jaws, n(), n(), n(), n(), n()}.Distortion()
		judge(err, straps.ErrorMostMM, straps.StressMostMPa)
		drill, err := DrillCut{n(), n(), n(), n(), n(), n(), n()}.Force()
		judge(err, drill.TorqueNm, drill.ThrustN)
		chuck, err := HandChuckGrip(n(), n())
		judge(err, chuck.LowN, chuck.HighN)
		wedge, err := WedgeRadialN(n(), n(), n())
		judge(err, wedge)
		bond, err := BondedFace(n(), n(), n())
		judge(err, bond.TorqueNm, bond.AxialN)
		left, err := GripAtSpeed(n(), n(), n(), n(), false)
		judge(err, left)
	})
}
