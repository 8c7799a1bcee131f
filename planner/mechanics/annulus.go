package mechanics

import "math"

// A face of a ring: where a pressure acts.
type face int

const (
	onOutside face = iota + 1
	onBore
)

// A metal is what the elastic formulas need to know of a material.
type metal struct {
	modulus, poisson float64 // MPa, -
}

// An annulus is a flat ring in plane stress; a bore of 0 is a solid disc.
type annulus struct {
	metal
	bore, outside float64 // radii, mm
}

// A response is what a pressure of 1 MPa x cos(m angle) does to an annulus: outward radial movement (mm) and hoop
// stress (MPa) at the bore and at the outside, all x cos(m angle).
type response struct {
	boreMove, outsideMove float64
	boreHoop, outsideHoop float64
}

func (r response) move(at face) float64 {
	if at == onBore {
		return r.boreMove
	}
	return r.outsideMove
}

// respond gives the exact plane-stress answer to a pressure 1 x cos(m angle) on one face.
//
// m = 0 is the thick cylinder under even pressure (Lamé). For m >= 2 the stress function is
// (A r^m + B r^(m+2) + C r^-m + D r^(2-m)) cos(m angle), fixed by normal and shear stress on both faces (Michell's
// solution; displacements as tabulated in Barber, Elasticity; from memory, checked against finite elements).
// Domain: m = 0 or m >= 2; m = 1 is a body force and never arises from equal loads. Error: rounding only.
func (g annulus) respond(m int, loaded face) response {
	if m == 0 {
		return g.evenPressure(loaded)
	}
	return g.lobedPressure(float64(m), loaded)
}

func (g annulus) evenPressure(loaded face) response {
	a, b := g.bore, g.outside
	between := b*b - a*a
	var r response
	switch {
	case loaded == onOutside && a == 0:
		r.boreHoop, r.outsideHoop = -1, -1
	case loaded == onOutside:
		r.boreHoop, r.outsideHoop = -2*b*b/between, -(b*b+a*a)/between
	default:
		r.boreHoop, r.outsideHoop = (b*b+a*a)/between, 2*a*a/between
	}
	radialBore, radialOutside := 0.0, -1.0
	if loaded == onBore {
		radialBore, radialOutside = -1, 0
	}
	r.boreMove = a / g.modulus * (r.boreHoop - g.poisson*radialBore)
	r.outsideMove = b / g.modulus * (r.outsideHoop - g.poisson*radialOutside)
	return r
}

// terms are the factors of the four constants A, B, C, D in one quantity at one radius.
type terms [4]float64

// michell holds the factors of stress and displacement at one radius. The constants are scaled so that A and B terms
// are of order 1 at the outside, C and D terms at the bore: without that, high m loses all digits.
type michell struct {
	radial, shear, hoop, move terms
}

func (g annulus) michell(m, r float64) michell {
	out := math.Pow(r/g.outside, m)
	scale := terms{out * g.outside * g.outside / (r * r), out, 0, 0}
	if g.bore > 0 {
		in := math.Pow(g.bore/r, m)
		scale[2], scale[3] = in*g.bore*g.bore/(r*r), in
	}
	k := (3 - g.poisson) / (1 + g.poisson)
	twoG := g.modulus / (1 + g.poisson)
	f := michell{
		radial: terms{-m * (m - 1), -(m - 2) * (m + 1), -m * (m + 1), -(m + 2) * (m - 1)},
		shear:  terms{m * (m - 1), m * (m + 1), -m * (m + 1), -m * (m - 1)},
		hoop:   terms{m * (m - 1), (m + 2) * (m + 1), m * (m + 1), (m - 2) * (m - 1)},
		move:   terms{-m, k - m - 1, m, k + m - 1},
	}
	for i := range scale {
		f.radial[i] *= scale[i]
		f.shear[i] *= scale[i]
		f.hoop[i] *= scale[i]
		f.move[i] *= scale[i] * r / twoG
	}
	return f
}

func (g annulus) lobedPressure(m float64, loaded face) response {
	outer := g.michell(m, g.outside)
	if g.bore == 0 {
		return g.solidDisc(outer)
	}
	inner := g.michell(m, g.bore)
	rows := [4]terms{outer.radial, outer.shear, inner.radial, inner.shear}
	constants := make([]float64, 4)
	constants[0] = -1
	if loaded == onBore {
		constants[0], constants[2] = 0, -1
	}
	equations := newBandMatrix(4, 3)
	for i, row := range rows {
		for j, v := range row {
			equations.add(i, j, v)
		}
	}
	equations.solve(constants)
	return response{
		boreMove: inner.move.of(constants), outsideMove: outer.move.of(constants),
		boreHoop: inner.hoop.of(constants), outsideHoop: outer.hoop.of(constants),
	}
}

// solidDisc solves for A and B alone: nothing may be infinite at the centre.
func (g annulus) solidDisc(outer michell) response {
	det := outer.radial[0]*outer.shear[1] - outer.radial[1]*outer.shear[0]
	constants := []float64{-outer.shear[1] / det, outer.shear[0] / det, 0, 0}
	return response{outsideMove: outer.move.of(constants), outsideHoop: outer.hoop.of(constants)}
}

func (t terms) of(constants []float64) float64 {
	sum := 0.0
	for i, c := range constants {
		sum += t[i] * c
	}
	return sum
}
