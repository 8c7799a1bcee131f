package mechanics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Hand chucks at full key torque (maker's table), and a light 5 N m by straight line: about 1.5 kN.
func TestHandChuckPublishedForces(t *testing.T) {
	for _, row := range []struct{ diameter, torque, total float64 }{
		{80, 35, 10000}, {100, 50, 17000}, {125, 75, 24000}, {160, 120, 31000}, {200, 160, 37000},
		{80, 5, 1430}, {100, 5, 1700},
	} {
		r, err := HandChuckGrip(row.diameter, row.torque)
		require.NoError(t, err)
		assert.InEpsilon(t, row.total, r.HighN, printed)
		assert.InEpsilon(t, row.total/2, r.LowN, printed)
		assert.Equal(t, TrustRough, r.Trust)
	}
	_, err := HandChuckGrip(80, 36)
	assert.ErrorContains(t, err, "key torque (N m) is 36: expected 0 up to the chuck's rated key torque")
}

// 230 to 340 N per N m whatever the size, and never less from a bigger chuck at its rated torque.
func TestHandChuckBetweenTheRows(t *testing.T) {
	last := 0.0
	for d := 60.0; d <= 240; d++ {
		rated, perNm := ratedKey(d)
		assert.GreaterOrEqual(t, perNm, 230.0)
		assert.LessOrEqual(t, perNm, 340.0)
		assert.GreaterOrEqual(t, rated*perNm, last)
		last = rated * perNm
	}
}

func TestFeelsOverlapLittleAndRise(t *testing.T) {
	last := ForceRange{}
	for _, feel := range Feels() {
		r, err := HandTightened(100, feel)
		require.NoError(t, err)
		assert.Greater(t, r.LowN, last.LowN)
		assert.Greater(t, r.HighN, last.HighN)
		assert.GreaterOrEqual(t, r.HighN/r.LowN, 2.0, "hand force scatters by 2 or more")
		last = r
	}
	_, err := HandTightened(100, "gorilla")
	assert.ErrorContains(t, err, "expected nip, firm or hard")
}

func TestGripLostToSpeed(t *testing.T) {
	left, err := GripAtSpeed(24000, 24000, 3000, 3000, false)
	require.NoError(t, err)
	assert.InEpsilon(t, 8000, left, printed, "a third at the reference speed")
	inside, err := GripAtSpeed(5000, 24000, 1500, 3000, true)
	require.NoError(t, err)
	assert.InEpsilon(t, 9000, inside, printed)
	gone, err := GripAtSpeed(1000, 24000, 3000, 3000, false)
	require.NoError(t, err)
	assert.Zero(t, gone)
	rpm, err := SpeedForGrip(5000, 24000, 3000, 3000)
	require.NoError(t, err)
	back, err := GripAtSpeed(5000, 24000, rpm, 3000, false)
	require.NoError(t, err)
	assert.InEpsilon(t, 3000, back, rounding)
	none, err := SpeedForGrip(1000, 24000, 3000, 3000)
	require.NoError(t, err)
	assert.Zero(t, none)
}

// Rule B-29's defaults: 20 m/s at the rim, rounded down.
func TestRimSpeed(t *testing.T) {
	for diameter, rpm := range map[float64]float64{100: 3800, 125: 3000, 160: 2300, 200: 1900} {
		got, err := RimSpeedRPM(diameter, 20)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, got, rpm)
		assert.Less(t, got, rpm*1.04)
	}
}

// Rule B-08: M6 at 6 N m pulls 5 kN, M8 at 14 N m 8.7 kN; the stud at a third gives the work two thirds.
func TestBoltsAndStraps(t *testing.T) {
	for _, row := range []struct{ torque, diameter, pull float64 }{{6, 6, 5000}, {14, 8, 8750}} {
		pull, err := BoltPreloadN(row.torque, row.diameter)
		require.NoError(t, err)
		assert.InEpsilon(t, row.pull, pull, printed)
	}
	strap, err := StrapForceN(9000, 20, 40)
	require.NoError(t, err)
	assert.InEpsilon(t, 6000, strap, rounding)
	thin, err := FaceRadiusMM(60, 59.99)
	require.NoError(t, err)
	assert.InEpsilon(t, 30, thin, 0.001)
	solid, err := FaceRadiusMM(60, 0)
	require.NoError(t, err)
	assert.InEpsilon(t, 20, solid, rounding)
}

// Rule B-16: a bore of 24 glued 10 deep at 1.5 MPa holds 13.6 N m.
func TestBonds(t *testing.T) {
	h, err := BondedSpigot(24, 10, 1.5)
	require.NoError(t, err)
	assert.InEpsilon(t, 13.6, h.TorqueNm, printed)
	assert.InEpsilon(t, 1.5*math.Pi*240, h.AxialN, rounding)
	assert.Equal(t, TrustRough, h.Trust)
	_, err = BondedFace(30, 30, 1.5)
	assert.ErrorContains(t, err, "inside diameter (mm) is 30: expected less than the outside diameter")
	assert.True(t, math.IsInf(h.Reserve(0, 0), 1))
	assert.Zero(t, Hold{}.Reserve(1, 0))
}

func TestWedgesAndFriction(t *testing.T) {
	// Frictionless: a taper of 1 in 16 multiplies by 32; friction 0.1 leaves a quarter of that.
	half := math.Atan(1./32) * 180 / math.Pi
	free, err := WedgeRadialN(100, half, 0)
	require.NoError(t, err)
	assert.InEpsilon(t, 3200, free, rounding)
	real, err := WedgeRadialN(100, half, 0.1)
	require.NoError(t, err)
	assert.InEpsilon(t, 100/math.Tan(math.Atan(1./32)+math.Atan(0.1)), real, rounding)
	draw, err := WedgeDrawN(real, half, 0.1)
	require.NoError(t, err)
	assert.InEpsilon(t, 100, draw, rounding)
	_, err = WedgeDrawN(-1, half, 0.1)
	assert.Error(t, err)
	drive, err := RadialDrive(30, 2000, 0.15)
	require.NoError(t, err)
	assert.InEpsilon(t, 4.5, drive.TorqueNm, rounding)
	pressed, err := FrictionDrive(20, 30, 10, 0.1)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.1*10*math.Pi*400*30/2/1000, pressed.TorqueNm, rounding)
}

// Marks' figure: radial interference 0.01, radii 50 and 80, E 207 GPa: 12.6 MPa.
func TestPressFitIsLame(t *testing.T) {
	f := PressFit{100, 160, 0, 40, 0.02, 207000, 0.29, 207000, 0.29, 0.1}
	load, err := f.Load()
	require.NoError(t, err)
	assert.InDelta(t, 12.6, load.PressureMPa, 0.05)
	assert.InEpsilon(t, load.PressureMPa*(160.*160+100*100)/(160*160-100*100), load.HubHoopMPa, rounding)
	assert.InEpsilon(t, 0.1*load.PressureMPa*math.Pi*100*40, load.AxialN, rounding)
	// Interference is shared out: what the hub's bore opens and the shaft closes add up to it.
	hub := annulus{metal{207000, 0.29}, 50, 80}.respond(0, onBore)
	shaft := annulus{metal{207000, 0.29}, 0, 50}.respond(0, onOutside)
	assert.InEpsilon(t, 0.01, load.PressureMPa*(hub.boreMove-shaft.outsideMove), rounding)
	assert.InEpsilon(t, 2*load.PressureMPa*hub.outsideMove, load.HubGrowthMM, rounding)
	f.ShaftBoreMM = 40
	hollow, err := f.Load()
	require.NoError(t, err)
	assert.Less(t, hollow.PressureMPa, load.PressureMPa)
	tube := annulus{metal{207000, 0.29}, 20, 50}.respond(0, onOutside)
	assert.InEpsilon(t, hollow.PressureMPa*tube.boreHoop, hollow.ShaftHoopMPa, rounding)
	f.InterferenceMM = 10
	_, err = f.Load()
	assert.ErrorContains(t, err, "less than a twentieth of the diameter")
}

// Rule B-12: with a taper of 0.5 a metre a bore error of 0.01 is 20 along.
func TestTaperMandrel(t *testing.T) {
	got, err := TaperMandrelInterferenceMM(20, 0.0005)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.01, got, rounding)
}

// 10 kg mm is shaken with 30 N at 520 rev/min, 50 at 230; the counterweight cancels it.
func TestBalance(t *testing.T) {
	for kgmm, rpm := range map[float64]float64{10: 520, 50: 230} {
		limit, err := Unbalance{KGMM: kgmm}.SpeedCapRPM(30)
		require.NoError(t, err)
		assert.InEpsilon(t, rpm, limit, worked)
	}
	assert.InEpsilon(t, 1/91189., Unbalance{KGMM: 1}.ShakingForceN(1), 1e-4)
	weights := []Weight{{1.2, 40, 10}, {0.3, -20, 55}, {-0.4, 12, -8}}
	u, err := UnbalanceOf(weights)
	require.NoError(t, err)
	mass, angle, err := u.Counterweight(80)
	require.NoError(t, err)
	sin, cos := math.Sincos(angle * math.Pi / 180)
	left, err := UnbalanceOf(append(weights, Weight{mass, 80 * cos, 80 * sin}))
	require.NoError(t, err)
	assert.InDelta(t, 0, left.KGMM, 1e-9)
	still, err := Unbalance{}.SpeedCapRPM(30)
	require.NoError(t, err)
	assert.True(t, math.IsInf(still, 1))
	// A tool maker's printed figure: 2 kg, 10 000 rev/min, grade 6.3: 12 g mm.
	g, err := PermissibleUnbalanceGMM(6.3, 2, 10000)
	require.NoError(t, err)
	assert.InDelta(t, 12.03, g, 0.01)
}

// Torque and thrust of a drill by hand: 6 mm in mild steel at 0.1: h 0.0429, kc 2618 MPa.
func TestDrill(t *testing.T) {
	cut := DrillCut{6, 0.1, 118, 1350, 0.21, 1, 0}
	f, err := cut.Force()
	require.NoError(t, err)
	assert.InEpsilon(t, 1.178, f.TorqueNm, printed)
	assert.InEpsilon(t, 673, f.ThrustN, printed)
	cut.PilotMM = 3
	opened, err := cut.Force()
	require.NoError(t, err)
	assert.InEpsilon(t, 0.75*f.TorqueNm, opened.TorqueNm, rounding)
	assert.InEpsilon(t, 0.25*f.ThrustN, opened.ThrustN, rounding)
	short, err := DrillBuckleN(3, 30, 200000)
	require.NoError(t, err)
	long, err := DrillBuckleN(3, 60, 200000)
	require.NoError(t, err)
	assert.InEpsilon(t, 4, short/long, rounding)
	cut.PilotMM = 6
	_, err = cut.Force()
	assert.ErrorContains(t, err, "pilot hole (mm) is 6: expected 0, or less than the drill")
}
