package mechanics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func bend(t require.TestingT, s Shaft, force, at float64) Deflection {
	d, err := s.Deflection(force, at)
	require.NoError(t, err)
	return d
}

func bar(length, diameter float64) Shaft {
	return Shaft{Sections: []Section{{length, diameter, 0}}, ModulusMPa: 207000}
}

// Closed forms of beam theory: overhang, propped overhang at mid span, between centres at mid span.
func TestBeamClosedForms(t *testing.T) {
	const l, f = 100.0, 50.0
	s := bar(l, 10)
	ei := 207000 * math.Pi / 64 * 1e4
	over := bend(t, s, f, l)
	assert.InEpsilon(t, f*l*l*l/(3*ei), over.AtForceMM, rounding)
	assert.InEpsilon(t, f*l*5/(math.Pi/64*1e4), over.StressMPa, rounding)
	s.Tailstock = true
	propped := bend(t, s, f, l/2)
	assert.InEpsilon(t, 7*f*l*l*l/(768*ei), propped.AtForceMM, rounding)
	assert.InEpsilon(t, 3*f*l/16*5/(math.Pi/64*1e4), propped.StressMPa, rounding)
	s.OnCentre = true
	assert.InEpsilon(t, f*l*l*l/(48*ei), bend(t, s, f, l/2).AtForceMM, rounding)
	assert.InDelta(t, 0, bend(t, s, f, l).MostMM, 1e-12)
}

// The worked overhang: 10 mm steel bar 40 out, 50 N: 0.0105; a boring bar is the same sum.
func TestWorkedOverhang(t *testing.T) {
	assert.InDelta(t, 0.0105, bend(t, bar(40, 10), 50, 40).AtForceMM, 5e-5)
	assert.InDelta(t, 0.0105, bend(t, BoringBar(10, 40, 207000), 50, 40).AtForceMM, 5e-5)
	assert.Equal(t, TrustRough, bend(t, bar(25, 10), 50, 25).Trust)
}

// A stepped overhang by Mohr: M/EI over each section.
func TestSteppedOverhang(t *testing.T) {
	s := Shaft{Sections: []Section{{30, 20, 0}, {50, 10, 4}}, ModulusMPa: 207000}
	i1, i2 := math.Pi/64*math.Pow(20, 4), math.Pi/64*(1e4-256)
	const f = 80.0
	want := f / 207000 * ((80.*80*80-50*50*50)/(3*i1) + 50.*50*50/(3*i2))
	assert.InEpsilon(t, want, bend(t, s, f, 80).AtForceMM, rounding)
}

// Support never hurts; a bore never stiffens; cutting a section in two changes nothing; force and deflection go together.
func TestBeamProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		section := func(name string) Section {
			return Section{rapid.Float64Range(5, 80).Draw(t, name), rapid.Float64Range(4, 40).Draw(t, name), 0}
		}
		s := Shaft{Sections: []Section{section("a"), section("b"), section("c")}, ModulusMPa: 100000}
		total := s.Sections[0].LengthMM + s.Sections[1].LengthMM + s.Sections[2].LengthMM
		at := total * rapid.Float64Range(0.05, 1).Draw(t, "at")
		base := bend(t, s, 100, at)
		assert.InEpsilon(t, 2*base.AtForceMM, bend(t, s, 200, at).AtForceMM, rounding)
		assert.GreaterOrEqual(t, base.MostMM, base.AtForceMM)

		propped := s
		propped.Tailstock = true
		assert.LessOrEqual(t, bend(t, propped, 100, at).AtForceMM, base.AtForceMM*(1+rounding))
		steadied := s
		steadied.SteadyAtMM = total / 2
		assert.LessOrEqual(t, bend(t, steadied, 100, at).AtForceMM, base.AtForceMM*(1+rounding))
		bored := s
		bored.Sections = append([]Section(nil), s.Sections...)
		bored.Sections[1].BoreMM = bored.Sections[1].OutsideDiameterMM / 2
		assert.GreaterOrEqual(t, bend(t, bored, 100, at).AtForceMM, base.AtForceMM*(1-rounding))
		split, half := s, s.Sections[0]
		half.LengthMM /= 2
		split.Sections = append([]Section{half, half}, s.Sections[1:]...)
		assert.InEpsilon(t, base.AtForceMM, bend(t, split, 100, at).AtForceMM, rounding)
	})
}

func TestBeamRefusesWhatCannotBe(t *testing.T) {
	loose := bar(100, 10)
	loose.OnCentre = true
	_, err := loose.Deflection(10, 50)
	assert.ErrorContains(t, err, "expected a tailstock or a steady as well, or a chuck")
	_, err = bar(100, 10).Deflection(10, 101)
	assert.ErrorContains(t, err, "place of the force (mm) is 101: expected a number from 0 to 100")
	_, err = Shaft{ModulusMPa: 1}.Deflection(1, 0)
	assert.ErrorContains(t, err, "number of sections is 0")
}

// First critical speed of uniform bars (beam theory): (factor)^2 sqrt(E I/(rho A L^4)); Rayleigh is a little high.
func TestCriticalSpeedOfUniformBars(t *testing.T) {
	const rayleighHigh = 0.015
	i, a := math.Pi/64*1e4, math.Pi/4*100
	unit := 30 / math.Pi * math.Sqrt(207000*i/(7850e-12*a*math.Pow(300, 4)))
	for _, test := range []struct {
		name      string
		onCentre  bool
		tailstock bool
		steady    float64
		factor    float64
	}{
		{"overhang", false, false, 0, 1.8751},
		{"chuck and tailstock", false, true, 0, 3.9266},
		{"between centres", true, true, 0, math.Pi},
		{"between centres, steady in the middle", true, true, 150, 2 * math.Pi},
	} {
		s := bar(300, 10)
		s.OnCentre, s.Tailstock, s.SteadyAtMM = test.onCentre, test.tailstock, test.steady
		c, err := s.CriticalSpeedRPM(7850)
		require.NoError(t, err)
		ratio := c.RPM / (unit * test.factor * test.factor)
		assert.GreaterOrEqual(t, ratio, 1-rayleighHigh, test.name)
		assert.LessOrEqual(t, ratio, 1+rayleighHigh, test.name)
	}
}

// A cone built in at its thick end bends under a force at its thin end by F L^3 / (3 E I1) · d1/d2, I1 that of the thick end: the integral of x²/(E I(x)) for a
// diameter that falls evenly (common practice, derived here; no source). The slices are never stiffer, and within a fifth.
func TestConeBendsAsItsIntegral(t *testing.T) {
	const length, d1, d2, modulus, force = 40.0, 10.0, 5.0, 200e3, 50.0
	thick := math.Pi / 64 * math.Pow(d1, 4)
	want := force * math.Pow(length, 3) / (3 * modulus * thick) * d1 / d2
	got, err := Shaft{Sections: Cone(length, d1, d2, 0), ModulusMPa: modulus}.Deflection(force, length)
	require.NoError(t, err)
	assert.GreaterOrEqual(t, got.AtForceMM, want)
	assert.InEpsilon(t, want, got.AtForceMM, 0.2)
	assert.Len(t, Cone(length, d1, d1, 0), 1)
}
