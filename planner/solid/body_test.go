package solid

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
)

// volumeTol is relative: the closed forms are sums of a few products.
const volumeTol = 1e-9

// snapVolume is what may go astray where pieces of random bodies (20 long, up to 20 in radius) meet: some fifty ends, snapped, full discs.
const snapVolume = 50 * Snap * math.Pi * 20 * 20

// The volumes are the textbook ones: cylinder, cone and frustum, sphere and its cap, torus (Pappus: 2π·R·area), fillet by Pappus.
func TestVolumes(t *testing.T) {
	const pi = math.Pi
	quarter := (1 - pi/4) * 4                 // area left in a corner of radius 2
	centroid := 2 * (10 - 3*pi) / (12 - 3*pi) // of that area, from the corner's sides: r(10-3π)/(12-3π)
	for name, k := range map[string]struct {
		body Body
		want float64
	}{
		"tube":    {Cylinder(0, 20, 10, 4), pi * 84 * 20},
		"cone":    {NewBody(Line(0, 0, 12, 5), Const(0, 12, 0)), pi * 25 * 12 / 3},
		"frustum": {NewBody(Line(0, 3, 12, 5), Const(0, 12, 0)), pi * 12 * (9 + 15 + 25) / 3},
		"sphere":  {NewBody(Arc(-5, 0, 5, 0, 0, 0, true), Const(-5, 5, 0)), pi * 4 * 125 / 3},
		"cap":     {NewBody(Arc(3, 4, 5, 0, 0, 0, true), Const(3, 5, 0)), pi * 4 * (15 - 2) / 3},
		"torus":   {NewBody(Arc(-2, 10, 2, 10, 0, 10, true), Arc(-2, 10, 2, 10, 0, 10, false)), 2 * pi * 10 * pi * 4},
		"fillet in the corner of a shoulder": {
			NewBody(Arc(0, 12, 2, 10, 2, 12, false), Const(0, 2, 10)), 2 * pi * (10 + centroid) * quarter,
		},
		"groove of half round": {
			Cylinder(0, 10, 10, 0).TurnTo(Arc(3, 10, 7, 10, 5, 10, false)),
			pi*1000 - 2*pi*(10-8/(3*pi))*(pi*4/2),
		},
		"hole with a drill's point": {
			Cylinder(0, 30, 10, 0).BoreTo(Drill(10, 6, 118, TowardsPlus)),
			pi*3000 - pi*9*(20-3/math.Tan(59*pi/180)) - pi*9*3/math.Tan(59*pi/180)/3,
		},
	} {
		assert.InEpsilon(t, k.want, k.body.Volume(), volumeTol, name)
	}
}

// What is cut away and what is left make the whole; parts of a body along the axis add up.
func TestVolumeAdds(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	for n := 0; n < 200; n++ {
		b := NewBody(Upper(randomCurve(r), randomCurve(r)), randomCurve(r))
		z := 20 * r.Float64()
		whole := b.Volume()
		assert.InDelta(t, whole, b.Keep(-1, z).Volume()+b.Keep(z, 30).Volume(), snapVolume)

		c := randomCurve(r).Join(Const(-5, 30, 5))
		assert.InDelta(t, whole, b.TurnTo(c).Volume()+b.BoreTo(c).Volume(), snapVolume)
	}
}

func TestEndsAndWall(t *testing.T) {
	b := Cylinder(0, 40, 10, 0).BoreTo(Const(30, 50, 8.5)).TurnTo(Line(25, 10, 40, 9))
	z0, z1 := b.Ends()
	assert.Equal(t, 0.0, z0)
	assert.Equal(t, 40.0, z1)
	assert.InDelta(t, 0.5, b.LeastWall(0, 40), Noise)
	assert.InDelta(t, 10-5.0/15-8.5, b.LeastWall(0, 30.0001), 0.001)
	assert.True(t, b.Whole())
	assert.True(t, math.IsInf(b.LeastWall(50, 60), 1))

	parted := b.TurnTo(Const(12, 15, 0))
	assert.False(t, parted.Whole())
	faced := b.TurnTo(Const(38, 99, -0.4))
	_, z1 = faced.Ends()
	assert.Equal(t, 38.0, z1)
	assert.True(t, b.TurnTo(Const(-1, 99, 0)).Empty())
	// An arc that bulges into a bore: the least wall lies inside both pieces.
	ring := NewBody(Arc(0, 10, 6, 10, 3, 10-4, true), Const(0, 6, 9))
	assert.InDelta(t, 1, ring.LeastWall(0, 6), Noise)
	thin := NewBody(Const(0, 6, 12), Arc(0, 9, 6, 9, 3, 5, true))
	assert.InDelta(t, 2, thin.LeastWall(0, 6), Noise)
}

func TestWithin(t *testing.T) {
	drawn := Cylinder(0, 20, 10, 0).TurnTo(Const(12, 20, 6)).BoreTo(Const(0, 20, 3))
	for name, k := range map[string]struct {
		body Body
		ok   bool
		by   float64
		z    float64
		in   bool
	}{
		"itself":                 {drawn, true, 0, 0, false},
		"smaller":                {Cylinder(1, 19, 6, 3), true, 0, 0, false},
		"nothing":                {Body{}, true, 0, 0, false},
		"by noise":               {Cylinder(0, 20, 6+Noise, 3), true, Noise, 0, false},
		"too thick":              {drawn.Add(Cylinder(12, 20, 6.02, 3)), false, 0.02, 12, false},
		"hole too small":         {drawn.Add(Cylinder(5, 7, 5, 2.95)), false, 0.05, 5, true},
		"shoulder a little long": {Cylinder(0, 12+Noise, 10, 3), true, 0, 0, false},
		"shoulder too long":      {Cylinder(0, 12.01, 10, 3), false, 4, 12, false},
		"beyond the end":         {Cylinder(0, 20.01, 6, 3), false, 3, 20, false},
	} {
		ok, where := Within(k.body, drawn, Same)
		assert.Equal(t, k.ok, ok, name)
		assert.InDelta(t, k.by, where.By, Same, name)
		if !ok {
			assert.InDelta(t, k.z, where.Z, 2*Same, name)
			assert.Equal(t, k.in, where.Inside, name)
		}
	}
}

// A sphere in its cylinder, and a line that touches an arc from inside: extremes inside pieces decide.
func TestWithinRoundShapes(t *testing.T) {
	ball := NewBody(Arc(-5, 0, 5, 0, 0, 0, true), Const(-5, 5, 0))
	ok, _ := Within(ball, Cylinder(-5, 5, 5, 0), Same)
	assert.True(t, ok)
	ok, where := Within(ball, Cylinder(-5, 5, 4.9, 0), Same)
	assert.False(t, ok)
	assert.InDelta(t, 0.1, where.By, Noise)
	assert.InDelta(t, 0, where.Z, Noise)

	chord := NewBody(Line(-3, 4, 3, 4), Const(-3, 3, 0))
	ok, _ = Within(chord, ball, Same)
	assert.True(t, ok)
	_, where = Within(ball, chord.Add(Cylinder(-5, 5, 1, 0)), Same)
	assert.InDelta(t, 3, math.Abs(where.Z), 2*Same) // beyond the chord's ends the ball stands out most
}

// Within against sampling: what it calls inside is inside at every sampled place, and the worst place is at least as bad as any sample.
func TestWithinAgainstSampling(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	inside := 0
	for n := 0; n < 300; n++ {
		a := NewBody(randomCurve(r), randomCurve(r))
		b := a
		if n%3 > 0 {
			b = NewBody(Upper(a.Outer, randomCurve(r)), Lower(a.Inner, randomCurve(r)))
		}
		if n%3 == 2 {
			b = b.TurnTo(randomCurve(r).Raise(5))
		}
		ok, where := Within(a, b, Same)
		if ok {
			inside++
		}
		for k := 0; k < 100; k++ {
			z := 20 * r.Float64()
			ao, c1 := value(a.Outer, z)
			ai, c2 := value(a.Inner, z)
			bo, c3 := value(b.Outer, z)
			bi, c4 := value(b.Inner, z)
			if !c1 || !c2 || !c3 || !c4 || math.IsNaN(ao) {
				continue
			}
			by := math.Max(ao-bo, bi-ai)
			if math.IsNaN(bo) {
				by = ao - ai
			}
			assert.LessOrEqual(t, by, where.By+sampleTol)
		}
	}
	assert.Greater(t, inside, 100)
	assert.Less(t, inside, 290)
}

func TestLost(t *testing.T) {
	bar := Cylinder(0, 50, 10, 0)
	assert.False(t, Lost(bar, bar, Same).Any())
	l := Lost(bar, bar.TurnTo(Const(20, 60, 8)).BoreTo(Const(40, 60, 3)), Same)
	assert.Equal(t, Loss{Z0: 20, Z1: 50, Outside: 2, Inside: 3}, l)
	l = Lost(bar, bar.TurnTo(Const(48, 60, -1)), Same)
	assert.Equal(t, Loss{Z0: 48, Z1: 50, Whole: 10}, l)
	assert.InDelta(t, 2, Lost(bar, bar.TurnTo(Arc(10, 10, 14, 10, 12, 10, false)), Same).Outside, Noise)
}
