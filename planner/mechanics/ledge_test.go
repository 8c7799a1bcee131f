package mechanics

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Worked by hand: 200 N across the spindle, 3000 N mm about it, the axis 30 over the ledge, 40 from the far end of the foot, the straps 25 from the near one.
func TestLeastLedgeForce(t *testing.T) {
	d := LedgeDemand{SideN: 200, TorqueNmm: 3000, HeightMM: 30, BesideMM: 40, ArmMM: 25, Friction: 0.15, Safety: 2.5}
	const newton = 0.5
	f, err := LeastLedgeForce(d)
	require.NoError(t, err)
	assert.InDelta(t, 2.5*200/0.15, f, newton, "it slides first")
	d.ArmMM = 5
	f, err = LeastLedgeForce(d)
	require.NoError(t, err)
	assert.InDelta(t, 2.5*(200*50+3000)/5, f, newton, "it tips first: the lever is hypot(30, 40) = 50")
	d.SideN = 0
	f, err = LeastLedgeForce(d)
	require.NoError(t, err)
	assert.InDelta(t, 2.5*3000/5, f, newton, "a drill only twists it")
	_, err = LeastLedgeForce(LedgeDemand{SideN: 1, Friction: 0.15, Safety: 2.5})
	assert.Error(t, err, "straps over the end of the foot")
}

// 8 kN on two columns of 10 by 30 press with 13.3 MPa; a bore of 20 in steel goes 2 p D/E out of round, and three times the pressure stands beside it.
func TestPressedBeside(t *testing.T) {
	g := PressedBeside{ForceN: 8000, BoreMM: 20, WebMM: 10, ThickMM: 30, ModulusMPa: 205000, YieldMPa: 350}
	d, err := g.Distortion()
	require.NoError(t, err)
	const micron = 0.0001
	assert.InDelta(t, 0.0026, d.ErrorMostMM, micron)
	assert.InDelta(t, 40, d.StressMostMPa, 0.1)
	assert.Equal(t, TrustRough, d.Trust)
	g.WebMM = 0.5
	d, err = g.Distortion()
	require.NoError(t, err)
	assert.Equal(t, TrustNone, d.Trust, "the columns yield")
	g.WebMM = 0
	_, err = g.Distortion()
	assert.Error(t, err)
}
