package solid

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestKnifeTurnsToAShoulder(t *testing.T) {
	knife := NoseEdge(0.4, 5, 10, TowardsPlus)
	bar := Cylinder(0, 50, 10, 0)
	turned := bar.TurnTo(knife.Sweep(Point{60, 7}, Point{20, 7}))
	_, right := turned.Outer.At(25)
	assert.InDelta(t, 7, right, Noise)
	left, _ := turned.Outer.At(20)
	assert.InDelta(t, 10, left, Noise)
	// The nose leaves its radius in the corner, and no more.
	_, corner := turned.Outer.At(20)
	assert.InDelta(t, 7.4, corner, Noise)
	_, after := turned.Outer.At(20.4)
	assert.InDelta(t, 7, after, Noise)
}

// A knife facing to the centre leaves a pip as high as its nose is round; going past the centre by the nose radius takes it away.
func TestFacingLeavesAPip(t *testing.T) {
	knife := NoseEdge(0.4, 5, 10, TowardsPlus)
	bar := Cylinder(0, 50, 10, 0)
	short := bar.TurnTo(knife.Sweep(Point{49, 12}, Point{49, 0}))
	_, pip := short.Outer.At(49)
	assert.InDelta(t, 0.4, pip, Noise)
	full := bar.TurnTo(knife.Sweep(Point{49, 12}, Point{49, -0.4}))
	_, end := full.Ends()
	assert.InDelta(t, 49, end, Same)
}

func TestTrailingEdge(t *testing.T) {
	// Plunged in the middle of a bar the knife leaves its own shape: upright, nose, and the trailing edge at 5 degrees, ten wide.
	cut := Cylinder(0, 50, 10, 0).TurnTo(NoseEdge(0, 5, 10, TowardsPlus).Sweep(Point{20, 12}, Point{20, 8}))
	_, r := cut.Outer.At(20)
	assert.InDelta(t, 8, r, Noise)
	left, right := cut.Outer.At(30)
	assert.InDelta(t, 8+10*math.Tan(5*math.Pi/180), left, Noise)
	assert.InDelta(t, 10, right, Noise)
	// The other hand is its mirror.
	other := NoseEdge(0, 5, 10, TowardsMinus).Sweep(Point{-20, 12}, Point{-20, 8})
	assertCurves(t, NoseEdge(0, 5, 10, TowardsPlus).Sweep(Point{20, 12}, Point{20, 8}).Mirror(), other)
}

func TestBladeGrooves(t *testing.T) {
	b := Cylinder(0, 50, 10, 0).TurnTo(BladeEdge(3, 0.2, TowardsPlus).Sweep(Point{20, 12}, Point{20, 6}))
	assert.InDelta(t, 6, b.Outer.Least(20, 23), Noise)
	_, r := b.Outer.At(23)
	assert.InDelta(t, 10, r, Noise)
	_, r = b.Outer.At(20)
	assert.InDelta(t, 6.2, r, Noise)
	sharp := BladeEdge(3, 0, TowardsMinus).Sweep(Point{20, 12}, Point{20, 6})
	assertCurves(t, Const(17, 20, 6), sharp)
}

func TestInsideTools(t *testing.T) {
	tube := Cylinder(0, 50, 20, 5).BoreTo(NoseEdge(0.4, 5, 10, TowardsPlus).SweepInside(Point{60, 8}, Point{30, 8}))
	_, r := tube.Inner.At(31)
	assert.InDelta(t, 8, r, Noise)
	left, right := tube.Inner.At(30)
	assert.InDelta(t, 5, left, Noise)
	assert.InDelta(t, 7.6, right, Noise)
	recess := tube.BoreTo(BladeEdge(2, 0, TowardsPlus).SweepInside(Point{10, 4}, Point{10, 7}))
	assert.InDelta(t, 7, recess.Inner.Greatest(10, 12), Noise)
}

func TestVeeCutsAChamfer(t *testing.T) {
	// 45 degrees, one along the axis and one in radius, on the end of a bar of radius 10 at z = 50.
	b := Cylinder(0, 50, 10, 0).TurnTo(VeeEdge(45, 8).Sweep(Point{51, 12}, Point{51, 8}))
	_, r := b.Outer.At(49)
	assert.InDelta(t, 10, r, Noise)
	left, _ := b.Outer.At(50)
	assert.InDelta(t, 9, left, Noise)
}

func TestDrill(t *testing.T) {
	d := Drill(10, 6, 118, TowardsPlus)
	length := 3 / math.Tan(59*math.Pi/180)
	_, r := d.At(10)
	assert.InDelta(t, 0, r, Noise)
	left, _ := d.At(10 + length)
	assert.InDelta(t, 3, left, Noise)
	assert.InDelta(t, 3, Drill(10, 6, 0, TowardsMinus).Least(-5, 10), Noise)
	assert.InDelta(t, 1.5, Drill(10, 6, 90, TowardsMinus).Greatest(8.5, 10), Noise)
}

// A sweep is the lowest of the edge's many places on its way.
func TestSweepAgainstSampling(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	edges := map[string]Edge{
		"knife":      NoseEdge(0.8, 5, 10, TowardsPlus),
		"left knife": NoseEdge(0.4, 5, 6, TowardsMinus),
		"sharp":      NoseEdge(0, 5, 10, TowardsPlus),
		"blade":      BladeEdge(3, 0.3, TowardsMinus),
		"round":      RoundEdge(2),
		"vee":        VeeEdge(30, 5),
	}
	const steps = 4000
	for name, e := range edges {
		for n := 0; n < 40; n++ {
			from := Point{20 * r.Float64(), 10 * r.Float64()}
			to := Point{20 * r.Float64(), 10 * r.Float64()}
			if n%5 == 0 {
				to.Z = from.Z
			}
			swept, inside := e.Sweep(from, to), e.SweepInside(from, to)
			for k := 0; k < 20; k++ {
				z := 40*r.Float64() - 10
				low, high := math.Inf(1), math.Inf(-1)
				for i := 0; i <= steps; i++ {
					s := float64(i) / steps
					at := Point{from.Z + s*(to.Z-from.Z), from.R + s*(to.R-from.R)}
					if v, clear := value(e.curve, z-at.Z); clear && !math.IsNaN(v) {
						low, high = math.Min(low, at.R+v), math.Max(high, at.R-v)
					}
				}
				got, clear := value(swept, z)
				up, _ := value(inside, z)
				if !clear || math.IsInf(low, 1) != math.IsNaN(got) {
					continue // so near an end that the samples step over it
				}
				if math.IsNaN(got) {
					continue
				}
				// Between samples the tool moves by way/steps, and on an upright arc the radius changes by the root of that.
				tol := math.Sqrt(2 * 40.0 / steps)
				assert.InDelta(t, low, got, tol, name)
				assert.LessOrEqual(t, got, low+sampleTol, name)
				assert.InDelta(t, high, up, tol, name)
				assert.GreaterOrEqual(t, up, high-sampleTol, name)
			}
		}
	}
}
