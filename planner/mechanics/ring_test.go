package mechanics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// bezel is a thin steel ring in three narrow jaws: 60 x 3 x 24, 1000 N each.
func bezel() RingGrip {
	return RingGrip{OutsideDiameterMM: 60, WallMM: 3, LengthMM: 24, GripLengthMM: 24, Jaws: 3, JawWidthMM: 8,
		ForcePerJawN: 1000, ModulusMPa: 210000, Poisson: 0.3, YieldMPa: 300}
}

func distortion(t require.TestingT, g RingGrip) Distortion {
	d, err := g.Distortion()
	require.NoError(t, err)
	return d
}

// What bored jaws and plugs do to the bezel: finite-element figures in um, within the stated band of stiff jaws and plugs.
func TestJawsAndPlugsFamiliarFigures(t *testing.T) {
	tests := []struct {
		name   string
		change func(*RingGrip)
		um     float64
		band   float64
	}{
		{"narrow jaws", func(*RingGrip) {}, 57.2, 0.01},
		{"pie jaws, even pressure", func(g *RingGrip) { g.JawArcDeg = 100 }, 12.7, 0.01},
		{"pie jaws exactly to size", func(g *RingGrip) { g.JawArcDeg, g.Rigid = 100, &RigidJaws{0} }, 0.66, 0.20},
		{"pie jaws 0.02 too large", func(g *RingGrip) { g.JawArcDeg, g.Rigid = 100, &RigidJaws{0.02} }, 9.3, 0.10},
		{"pie jaws 0.02 too small", func(g *RingGrip) { g.JawArcDeg, g.Rigid = 100, &RigidJaws{-0.02} }, 8.8, 0.10},
		{"twice the force, no plug", func(g *RingGrip) { g.JawWidthMM, g.ForcePerJawN = 6, 2000 }, 116, 0.01},
		{"twice the force on a plug", func(g *RingGrip) {
			g.JawWidthMM, g.ForcePerJawN, g.Plug = 6, 2000, &Plug{0.01, 70000, 0.33}
		}, 21.5, 0.02},
	}
	for _, test := range tests {
		g := bezel()
		test.change(&g)
		assert.InEpsilon(t, test.um, 1000*distortion(t, g).ErrorJawPlaneMM, test.band, test.name)
	}
}

// Part-length grip: the gripped end suffers, the far end of a tube stays round.
func TestPartLengthGripFamiliarFigures(t *testing.T) {
	g := bezel()
	g.LengthMM, g.GripLengthMM = 45, 15
	short := distortion(t, g)
	g.GripLengthMM = 45
	full := distortion(t, g)
	assert.InEpsilon(t, 0.072, short.ErrorMostMM, 0.03)
	assert.Greater(t, short.ErrorMostMM, 1.5*full.ErrorMostMM)
}

func TestTrustFollowsTheDomain(t *testing.T) {
	tests := []struct {
		name   string
		change func(*RingGrip)
		want   Trust
		why    string
	}{
		{"checked range", func(*RingGrip) {}, TrustGood, "full length"},
		{"part length", func(g *RingGrip) { g.GripLengthMM = 12 }, TrustGood, "part of the length"},
		{"cup", func(g *RingGrip) { g.WebMM = 4 }, TrustGood, "web"},
		{"no force", func(g *RingGrip) { g.ForcePerJawN = 0 }, TrustGood, "full length"},
		{"solid bar", func(g *RingGrip) { g.WallMM = 30 }, TrustRough, "solid bar"},
		{"wall beyond the centre", func(g *RingGrip) { g.WallMM = 40 }, TrustRough, "solid bar"},
		{"thick wall", func(g *RingGrip) { g.WallMM = 12 }, TrustRough, "thick wall"},
		{"long tube", func(g *RingGrip) { g.LengthMM = 200 }, TrustRough, "longer than 50 walls"},
		{"five jaws", func(g *RingGrip) { g.Jaws = 5 }, TrustRough, "2, 3, 4 and 6"},
		{"pie jaws of unknown fit", func(g *RingGrip) { g.JawArcDeg = 110 }, TrustRough, "mismatch"},
		{"jaw wider than its share", func(g *RingGrip) { g.JawWidthMM = 40 }, TrustRough, "half their share"},
		{"flange", func(g *RingGrip) { g.Departure = "flange" }, TrustRough, "not a plain ring (flange)"},
		{"yields", func(g *RingGrip) { g.ForcePerJawN = 3000 }, TrustNone, "would yield"},
		{"yield not known", func(g *RingGrip) { g.YieldMPa = 0 }, TrustGood, "full length"},
		{"gives too much", func(g *RingGrip) { g.YieldMPa, g.ForcePerJawN = 0, 6000 }, TrustNone, "0.5 %"},
		{"foil", func(g *RingGrip) { g.WallMM, g.ForcePerJawN = 0.5, 1 }, TrustNone, "1/40"},
	}
	for _, test := range tests {
		g := bezel()
		test.change(&g)
		d := distortion(t, g)
		assert.Equal(t, test.want, d.Trust, test.name)
		assert.Contains(t, d.Why, test.why, test.name)
		assert.Equal(t, test.want == TrustNone, d.BandPercent == 0, test.name)
		assert.GreaterOrEqual(t, d.ErrorMostMM, d.ErrorJawPlaneMM, test.name)
	}
}

func TestRingRefusesWhatCannotBe(t *testing.T) {
	tests := []struct {
		change func(*RingGrip)
		want   string
	}{
		{func(g *RingGrip) { g.OutsideDiameterMM = -1 }, "outside diameter (mm) is -1: expected a number above 0"},
		{func(g *RingGrip) { g.WallMM = math.NaN() }, "wall (mm) is NaN"},
		{func(g *RingGrip) { g.GripLengthMM = 25 }, "grip length (mm) is 25: expected a number from 1e-09 to 24"},
		{func(g *RingGrip) { g.Jaws = 1 }, "number of jaws is 1: expected a number from 2 to 24"},
		{func(g *RingGrip) { g.JawWidthMM = 0 }, "jaw width (mm) is 0"},
		{func(g *RingGrip) { g.JawArcDeg = 121 }, "arc of one jaw (deg) is 121"},
		{func(g *RingGrip) { g.WebMM = 24 }, "web (mm) is 24: expected 0, or less than the length"},
		{func(g *RingGrip) { g.Inside, g.WallMM = true, 30 }, "a bar has no bore to grip in"},
		{func(g *RingGrip) { g.Plug, g.WallMM = &Plug{}, 30 }, "for the plug to sit in"},
		{func(g *RingGrip) { g.Plug, g.Rigid = &Plug{}, &RigidJaws{} }, "expected one of the two"},
	}
	for _, test := range tests {
		g := bezel()
		test.change(&g)
		_, err := g.Distortion()
		assert.ErrorContains(t, err, test.want)
	}
}

// plainRing draws a ring inside the checked range, in jaws that press evenly.
func plainRing(t *rapid.T) RingGrip {
	od := rapid.Float64Range(20, 150).Draw(t, "od")
	slender := rapid.Float64Range(2.6, 38).Draw(t, "radius over wall")
	wall := od / 2 / (slender + 0.5)
	length := rapid.Float64Range(5, math.Min(80, 50*wall)).Draw(t, "length")
	jaws := rapid.SampledFrom([]int{2, 3, 4, 6}).Draw(t, "jaws")
	return RingGrip{OutsideDiameterMM: od, WallMM: wall, LengthMM: length,
		GripLengthMM: length * rapid.SampledFrom([]float64{1, 0.6, 0.3}).Draw(t, "grip"), Jaws: jaws,
		JawArcDeg:    360 / float64(jaws) * rapid.Float64Range(0.1, 0.8).Draw(t, "arc"),
		ForcePerJawN: rapid.Float64Range(1, 2000).Draw(t, "force"), ModulusMPa: 100000, Poisson: 0.34,
		Inside: rapid.Bool().Draw(t, "inside")}
}

// rounding is the relative difference that arithmetic alone may leave in a ring's figures: short wide rings are cut into
// elements so much shorter than their radius that half the digits go.
const rounding = 5e-5

func TestErrorIsInProportionToForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := plainRing(t)
		one := distortion(t, g)
		g.ForcePerJawN *= 3
		three := distortion(t, g)
		assert.InEpsilon(t, 3*one.ErrorMostMM, three.ErrorMostMM, rounding)
		assert.InEpsilon(t, 3*one.StressMostMPa, three.StressMostMPa, rounding)
	})
}

// Inside the checked range; beyond it the first harmonic changes from shell to plane in one step.
func TestThickerWallNeverMoreError(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := plainRing(t)
		g.Inside = false
		thin := distortion(t, g)
		thickest := g.OutsideDiameterMM / 2 / (thickestRing + 0.5)
		g.WallMM = rapid.Float64Range(math.Min(1.02*g.WallMM, thickest), thickest).Draw(t, "thicker")
		thick := distortion(t, g)
		assert.LessOrEqual(t, thick.ErrorMostMM, thin.ErrorMostMM*(1+rounding))
	})
}

func TestWiderEvenContactNeverMoreError(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := plainRing(t)
		narrow := distortion(t, g)
		g.JawArcDeg *= rapid.Float64Range(1, 1.2).Draw(t, "wider")
		wide := distortion(t, g)
		assert.LessOrEqual(t, wide.ErrorMostMM, narrow.ErrorMostMM*(1+rounding))
	})
}

func TestFullLengthGripNeverWorseThanPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := plainRing(t)
		g.GripLengthMM = 0.4 * g.LengthMM
		part := distortion(t, g)
		g.GripLengthMM = g.LengthMM
		full := distortion(t, g)
		assert.LessOrEqual(t, full.ErrorMostMM, part.ErrorMostMM*(1+rounding))
	})
}

// All lengths times k and the force times k squared: the same stress, the error times k.
func TestSimilarRingsGiveSimilarErrors(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := plainRing(t)
		k := rapid.Float64Range(0.1, 10).Draw(t, "k")
		small := distortion(t, g)
		for _, length := range []*float64{&g.OutsideDiameterMM, &g.WallMM, &g.LengthMM, &g.GripLengthMM} {
			*length *= k
		}
		g.ForcePerJawN *= k * k
		large := distortion(t, g)
		assert.InEpsilon(t, k*small.ErrorMostMM, large.ErrorMostMM, rounding)
		assert.InEpsilon(t, small.StressMostMPa, large.StressMostMPa, rounding)
	})
}

// Similarity with contact: mismatch and clearance are lengths too.
func TestSimilarContactsGiveSimilarErrors(t *testing.T) {
	const k = 2.5
	for _, touch := range []func(*RingGrip, float64){
		func(g *RingGrip, k float64) { g.JawArcDeg, g.Rigid = 100, &RigidJaws{0.02 * k} },
		func(g *RingGrip, k float64) { g.JawArcDeg, g.Rigid = 100, &RigidJaws{-0.02 * k} },
		func(g *RingGrip, k float64) { g.JawArcDeg, g.Plug = 15, &Plug{0.01 * k, 70000, 0.33} },
	} {
		small, large := bezel(), bezel()
		touch(&small, 1)
		touch(&large, k)
		large.OutsideDiameterMM, large.WallMM, large.LengthMM, large.GripLengthMM = k*60, k*3, k*24, k*24
		large.ForcePerJawN *= k * k
		assert.InEpsilon(t, k*distortion(t, small).ErrorMostMM, distortion(t, large).ErrorMostMM, rounding)
	}
}

// contactGrain: a contact ends at a cell's edge, so figures step by this share where a cell joins in.
const contactGrain = 1e-3

// More force never less error, where jaws or plug touch with play.
func TestMoreForceNeverLessErrorInContact(t *testing.T) {
	for _, touch := range []func(*RingGrip){
		func(g *RingGrip) { g.JawArcDeg, g.Rigid = 100, &RigidJaws{0.02} },
		func(g *RingGrip) { g.JawArcDeg, g.Rigid = 100, &RigidJaws{0} },
		func(g *RingGrip) { g.Plug = &Plug{0.01, 70000, 0.33} },
		func(g *RingGrip) { g.Plug = &Plug{0.01, 0, 0} },
	} {
		g := bezel()
		touch(&g)
		most := 0.0
		for force := 10.0; force < 3000; force *= 1.3 {
			g.ForcePerJawN = force
			e := distortion(t, g).ErrorMostMM
			assert.GreaterOrEqual(t, e, most*(1-contactGrain), "%g N", force)
			most = math.Max(most, e)
		}
	}
}

// A plug can only help, and a plug too loose to touch changes nothing.
func TestPlugNeverHurts(t *testing.T) {
	g := bezel()
	free := distortion(t, g)
	last := 0.0
	for _, clearance := range []float64{0, 0.005, 0.01, 0.02, 0.03} {
		g.Plug = &Plug{clearance, 210000, 0.3}
		e := distortion(t, g).ErrorMostMM
		assert.Less(t, e, free.ErrorMostMM)
		assert.Greater(t, e, last, "a looser plug holds less")
		last = e
	}
	g.Plug = &Plug{0.1, 210000, 0.3}
	assert.InEpsilon(t, free.ErrorJawPlaneMM, distortion(t, g).ErrorJawPlaneMM, 0.002) // 24 and 72 harmonics
}

// Six jaws are two sets of three, a sixth of a turn apart: what each set does at a jaw and midway adds up.
func TestSixJawsAreTwiceThree(t *testing.T) {
	for _, grip := range []float64{24, 10} {
		w := wall{annulus{steel, 27, 30}, 24, grip, 3}
		three, six := w.field(3, 48, false, onOutside), w.field(6, 24, false, onOutside)
		u3 := three.movements(loads{outside: padOfWidth(3, 8, 30, grip).amplitudes(48)}, 12, onBore)
		u6 := six.movements(loads{outside: padOfWidth(6, 8, 30, grip).amplitudes(24)}, 12, onBore)
		assert.InEpsilon(t, u3[0]+u3[angleSteps], u6[0], rounding)
		assert.InEpsilon(t, 2*u3[angleSteps/2], u6[angleSteps], rounding)
	}
}

func TestFullWrapAtEvenPressureIsRound(t *testing.T) {
	for _, jaws := range []int{2, 3, 4, 6} {
		g := bezel()
		g.Jaws, g.JawArcDeg = jaws, 360/float64(jaws)
		d := distortion(t, g)
		assert.InDelta(t, 0, d.ErrorMostMM, 1e-12)
		assert.Greater(t, d.StressMostMPa, 1.0)
		assert.Equal(t, TrustRough, d.Trust)
	}
}

func TestMostForceUsesUpToleranceOrYield(t *testing.T) {
	tests := []struct {
		name   string
		change func(*RingGrip)
		tol    float64
		rules  string
	}{
		{"tolerance", func(*RingGrip) {}, 0.01, "tolerance"},
		{"yield", func(g *RingGrip) { g.WallMM = 9 }, 0.05, "yield"},
		{"range", func(g *RingGrip) { g.YieldMPa = 0 }, 1, "range"},
		{"stiff jaws", func(g *RingGrip) { g.JawArcDeg, g.Rigid = 100, &RigidJaws{0.02} }, 0.006, "tolerance"},
		{"plug", func(g *RingGrip) { g.Plug = &Plug{0.01, 70000, 0.33} }, 0.015, "tolerance"},
		{"plug and yield", func(g *RingGrip) { g.Plug = &Plug{0.01, 70000, 0.33} }, 0.2, "yield"},
	}
	for _, test := range tests {
		g := bezel()
		test.change(&g)
		m, err := g.MostForcePerJaw(test.tol)
		require.NoError(t, err, test.name)
		assert.Equal(t, test.rules, m.RuledBy, test.name)
		assert.NotEqual(t, TrustNone, m.Trust, test.name)
		g.ForcePerJawN = m.PerJawN
		within := distortion(t, g)
		assert.LessOrEqual(t, within.ErrorMostMM, test.tol*(1+rounding), test.name)
		assert.NotEqual(t, TrustNone, within.Trust, test.name)
		g.ForcePerJawN = 1.01 * m.PerJawN
		over := distortion(t, g)
		assert.True(t, over.ErrorMostMM > test.tol || over.Trust == TrustNone, test.name)
	}
}

// Whatever is asked: no panic, no hang, no number that is none, and every answer with a trust.
func TestAnyRingGetsAnAnswerOrAnError(t *testing.T) {
	number := rapid.OneOf(rapid.Float64Range(0, 200), rapid.Float64(), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), 1e-9, 1e12}))
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) float64 { return number.Draw(t, name) }
		g := RingGrip{draw("od"), draw("wall"), draw("length"), draw("grip"), rapid.IntRange(-1, 30).Draw(t, "jaws"), draw("width"),
			draw("arc"), draw("force"), draw("E"), rapid.Float64Range(0, 0.6).Draw(t, "nu"), draw("yield"), draw("web"),
			rapid.Bool().Draw(t, "inside"), "", nil, nil}
		switch rapid.IntRange(0, 2).Draw(t, "contact") {
		case 1:
			g.Rigid = &RigidJaws{draw("mismatch")}
		case 2:
			g.Plug = &Plug{draw("clearance"), draw("plug E"), 0.3}
		}
		d, err := g.Distortion()
		if err != nil {
			assert.Contains(t, err.Error(), "expected")
			return
		}
		assert.True(t, finite(d.ErrorJawPlaneMM, d.ErrorMostMM, d.StressMostMPa))
		assert.Contains(t, []Trust{TrustGood, TrustRough, TrustNone}, d.Trust)
		assert.NotEmpty(t, d.Why)
	})
}
