package solid

import (
	"math"
	"math/rand"
)

// sampleTol is what a sampled value may differ from an exact one near ends of pieces: the square root of a snapped width, for an arc may stand
// upright there.
var sampleTol = math.Sqrt(20 * Snap)

// randomCurve makes a curve over about 0..20 of lines and arcs, with shoulders and here and there a gap.
func randomCurve(r *rand.Rand) Curve {
	var c Curve
	for z := 0.0; z < 20; {
		w := 0.5 + 4*r.Float64()
		c = c.Join(randomPiece(r, z, z+w))
		if z += w; r.Intn(6) == 0 {
			z += r.Float64()
		}
	}
	return c
}

func randomPiece(r *rand.Rand, z0, z1 float64) Curve {
	round := func() float64 { return math.Round(r.Float64()*20) / 2 }
	switch r.Intn(3) {
	case 0:
		return Const(z0, z1, round())
	case 1:
		return Line(z0, round(), z1, round())
	}
	rho := (z1 - z0) * (0.5 + r.Float64())
	cz, cr := (z0+z1)/2, 3+round()
	upper := r.Intn(2) == 0
	p := Piece{Radius: rho, CentreZ: cz, CentreR: cr, Upper: upper}.clip(z0, z1)
	return Arc(p.Z0, p.R0, p.Z1, p.R1, cz, cr, upper)
}

// value is the radius of a curve at z, NaN in gaps, and whether z is far enough from any end of a piece for it to be clear.
func value(c Curve, z float64) (v float64, clear bool) {
	for _, p := range c.pieces {
		if math.Abs(z-p.Z0) < 2*Snap || math.Abs(z-p.Z1) < 2*Snap {
			return 0, false
		}
	}
	if p, ok := c.pieceOver(z); ok {
		return p.At(z), true
	}
	return math.NaN(), true
}
