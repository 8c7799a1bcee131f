package mechanics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// worked is the rounding of the worked grips' figures, which were printed with two or three digits.
const worked = 0.02

// Worked grip 1: aluminium ring 60 x 3 x 24, finish bored 0.25 deep at 0.08.
func TestWorkedGripAluminiumRing(t *testing.T) {
	cut, err := CuttingForce(Cut{800, 0.25, 0.25, 0.08, 90, 1.3, 0})
	require.NoError(t, err)
	assert.InEpsilon(t, 39, cut.MainN, worked)
	need, err := LeastGripPerJaw(GripDemand{cut.MainN, cut.FeedN, cut.PassiveN, 27, 30, 24, 0, 3, 0.095, 2.5, false})
	require.NoError(t, err)
	assert.InEpsilon(t, 1060, need.TotalN, worked)
	assert.Equal(t, "slip", need.RuledBy)
	ring := RingGrip{OutsideDiameterMM: 60, WallMM: 3, LengthMM: 24, GripLengthMM: 24, Jaws: 3, JawWidthMM: 8,
		ForcePerJawN: need.PerJawN, ModulusMPa: 70000, Poisson: 0.33, YieldMPa: 250}
	narrow := distortion(t, ring)
	assert.InEpsilon(t, 0.060, narrow.ErrorJawPlaneMM, worked)
	assert.InEpsilon(t, 49, narrow.StressMostMPa, worked)
	ring.JawArcDeg = 100
	assert.InEpsilon(t, 0.013, distortion(t, ring).ErrorJawPlaneMM, 0.04)
	ring.Rigid = &RigidJaws{0}
	assert.InEpsilon(t, 0.0007, distortion(t, ring).ErrorJawPlaneMM, 0.08)
	ring.Rigid = &RigidJaws{0.02}
	assert.InEpsilon(t, 0.0094, distortion(t, ring).ErrorJawPlaneMM, worked)
	ring.Rigid, ring.JawArcDeg, ring.ForcePerJawN = nil, 0, 1700./3
	assert.InEpsilon(t, 0.096, distortion(t, ring).ErrorJawPlaneMM, worked)
}

// Worked grip 2: steel tube 100 x 5 x 40 roughed on a grip of 15; mild steel would yield.
func TestWorkedGripSteelTube(t *testing.T) {
	cut, err := CuttingForce(Cut{1500, 0.22, 1, 0.15, 90, 1.3, 0})
	require.NoError(t, err)
	demand := GripDemand{cut.MainN, cut.FeedN, cut.PassiveN, 45, 50, 15, 30, 3, 0.20, 2.5, false}
	need, err := LeastGripPerJaw(demand)
	require.NoError(t, err)
	assert.InEpsilon(t, 2286, need.SlipN, worked)
	assert.InEpsilon(t, 3441, need.TiltN, worked)
	assert.InEpsilon(t, 14300, need.TotalN, worked)
	ring := RingGrip{OutsideDiameterMM: 100, WallMM: 5, LengthMM: 40, GripLengthMM: 15, Jaws: 3, JawWidthMM: 12,
		ForcePerJawN: need.PerJawN, ModulusMPa: 210000, Poisson: 0.3, YieldMPa: 250}
	d := distortion(t, ring)
	assert.InEpsilon(t, 0.269, d.ErrorMostMM, worked)
	assert.InEpsilon(t, 407, d.StressMostMPa, 0.03)
	assert.Equal(t, TrustNone, d.Trust)
	demand.AxialStop = true
	eased, err := LeastGripPerJaw(demand)
	require.NoError(t, err)
	assert.Less(t, eased.TotalN, 0.7*need.TotalN, "an axial stop takes the feed and half the tilt")
}

// Worked grip 3: brass 40 x 1.5 x 20; six jaws at the same total leave a twentieth.
func TestWorkedGripBrassRing(t *testing.T) {
	cut, err := CuttingForce(Cut{700, 0.27, 0.15, 0.05, 90, 1.3, 0})
	require.NoError(t, err)
	assert.InEpsilon(t, 15, cut.MainN, 0.03)
	need, err := LeastGripPerJaw(GripDemand{cut.MainN, cut.FeedN, cut.PassiveN, 18.5, 20, 20, 0, 3, 0.09, 2.5, false})
	require.NoError(t, err)
	assert.InEpsilon(t, 448, need.TotalN, worked)
	ring := RingGrip{OutsideDiameterMM: 40, WallMM: 1.5, LengthMM: 20, GripLengthMM: 20, Jaws: 3, JawWidthMM: 6,
		ForcePerJawN: need.TotalN / 3, ModulusMPa: 100000, Poisson: 0.34}
	assert.InEpsilon(t, 0.051, distortion(t, ring).ErrorJawPlaneMM, 0.03)
	ring.Jaws, ring.ForcePerJawN = 6, need.TotalN/6
	assert.InEpsilon(t, 0.0024, distortion(t, ring).ErrorJawPlaneMM, 0.04)
}

// Worked grip 4: glued on a spigot, bore 54 x 24: 112 N m against 2.8 needed; on the face alone 15.6.
func TestWorkedGripGluedRing(t *testing.T) {
	shear := BondDesignShearMPa(10.2) // aluminium after ten minutes
	spigot, err := BondedSpigot(54, 24, shear)
	require.NoError(t, err)
	assert.InEpsilon(t, 112, spigot.TorqueNm, worked)
	face, err := BondedFace(60, 54, shear)
	require.NoError(t, err)
	assert.InEpsilon(t, 15.6, face.TorqueNm, worked)
	assert.InEpsilon(t, 40, spigot.Reserve(2.8, 0), worked)
	assert.Less(t, spigot.Reserve(2.8, 100), spigot.Reserve(2.8, 0))
}

// Worked grip 5: plate 75 x 90 x 4, thin section 2: four M6 straps at 5 N m hold ten times the cut; jaws crush it.
func TestWorkedGripCoverPlate(t *testing.T) {
	cut, err := CuttingForce(Cut{1350, 0.21, 0.5, 0.1, 90, 1.3, 0})
	require.NoError(t, err)
	need, err := LeastGripPerJaw(GripDemand{cut.MainN, cut.FeedN, cut.PassiveN, 30, 37.5, 4, 0, 4, 0.10, 2.5, false})
	require.NoError(t, err)
	assert.InEpsilon(t, 839, need.PerJawN, worked)
	plate := PlateGrip{75, 90, 4, 60, 2, 15, need.PerJawN, need.PerJawN, 210000, 0.3, 0}
	even := plate.frame(need.PerJawN, need.PerJawN)
	assert.InEpsilon(t, 0.058, even.ErrorMostMM, worked)
	assert.InEpsilon(t, 352, even.StressMostMPa, worked)
	uneven, err := plate.Distortion()
	require.NoError(t, err)
	assert.InEpsilon(t, plate.frame(need.PerJawN, 0).ErrorMostMM, uneven.ErrorMostMM, rounding, "the worst of either pair alone")
	assert.Greater(t, uneven.ErrorMostMM, even.ErrorMostMM)

	bolt, err := BoltPreloadN(5, 6)
	require.NoError(t, err)
	strap, err := StrapForceN(bolt, 20, 20)
	require.NoError(t, err)
	straps, err := ClampedFace(4*strap, 50, 0.10)
	require.NoError(t, err)
	assert.InEpsilon(t, 10, straps.TorqueNm/(cut.MainN*30/1000), 0.03)
	least, err := LeastClampForce(ClampDemand{cut.MainN, cut.PassiveN, 30, 50, 0.10, 2.5})
	require.NoError(t, err)
	assert.Less(t, least, 4*strap)
}

// A longer grip, more friction, less overhang: never more force.
func TestLongerGripNeverWeaker(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := GripDemand{
			MainN: rapid.Float64Range(1, 1000).Draw(t, "main"), FeedN: rapid.Float64Range(0, 500).Draw(t, "feed"),
			PassiveN: rapid.Float64Range(0, 500).Draw(t, "passive"), CutRadiusMM: rapid.Float64Range(0, 100).Draw(t, "cut"),
			GripRadiusMM: rapid.Float64Range(2, 100).Draw(t, "grip"), GripLengthMM: rapid.Float64Range(2, 60).Draw(t, "length"),
			OverhangMM: rapid.Float64Range(0, 200).Draw(t, "overhang"), Jaws: rapid.IntRange(2, 8).Draw(t, "jaws"),
			Friction: rapid.Float64Range(0.05, 0.4).Draw(t, "friction"), Safety: 2.5,
		}
		force := func(d GripDemand) float64 {
			f, err := LeastGripPerJaw(d)
			require.NoError(t, err)
			assert.InDelta(t, f.TotalN, f.PerJawN*float64(d.Jaws), rounding*f.TotalN)
			return f.PerJawN
		}
		base := force(d)
		longer, rougher, nearer, stopped := d, d, d, d
		longer.GripLengthMM *= 1.5
		rougher.Friction *= 1.2
		nearer.OverhangMM *= 0.7
		stopped.AxialStop = true
		for _, better := range []GripDemand{longer, rougher, nearer, stopped} {
			assert.LessOrEqual(t, force(better), base*(1+rounding))
		}
	})
}

// 0.577 for three jaws; two jaws cannot resist a tilt along their faces.
func TestTiltShare(t *testing.T) {
	assert.InDelta(t, 0.5774, tiltShare(3), 5e-5)
	assert.Zero(t, tiltShare(2))
	assert.InDelta(t, 0.5, tiltShare(4), 5e-5)
	for jaws := 3; jaws <= 12; jaws++ {
		least := 1.0
		for step := range 3600 { // by walking round
			sum := 0.0
			for i := range jaws {
				sum += absCos(float64(i)*360/float64(jaws) + float64(step)/10)
			}
			least = min(least, sum/float64(jaws))
		}
		assert.InDelta(t, least, tiltShare(jaws), 1e-3, "%d jaws", jaws)
	}
}

func absCos(deg float64) float64 { return math.Abs(math.Cos(deg * math.Pi / 180)) }

// Rule B-42's tipping figure rules where the grip is short and slippery.
func TestTippingRules(t *testing.T) {
	f, err := LeastGripPerJaw(GripDemand{200, 0, 0, 1, 2, 20, 60, 3, 0.05, 2.5, true})
	require.NoError(t, err)
	assert.Equal(t, "tipping", f.RuledBy)
	assert.InEpsilon(t, 2.5*200*30/(20./4+3*0.05*2/2), f.PerJawN, rounding)
}
