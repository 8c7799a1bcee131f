package solid

import (
	"math"
	"sort"
)

// Curve is a radius for each z of its domain: pieces from left to right. Neighbours may differ in radius where they meet (a shoulder), and there
// may be gaps, where the curve has no value. The zero Curve is empty.
type Curve struct{ pieces []Piece }

// Const is the cylinder of radius r over z0..z1.
func Const(z0, z1, r float64) Curve { return Line(z0, r, z1, r) }

// Line is the straight line from (z0, r0) to (z1, r1), in either order; empty when it stands square to the axis.
func Line(z0, r0, z1, r1 float64) Curve {
	if z1 < z0 {
		z0, r0, z1, r1 = z1, r1, z0, r0
	}
	return curveOf(Piece{Z0: z0, R0: r0, Z1: z1, R1: r1})
}

// Arc is the arc about (cz, cr) from (z0, r0) to (z1, r1): r = cr + √(ρ²-(z-cz)²) on the upper half of the circle, cr - √(...) on the
// lower one. ρ is the mean distance of the two ends from the centre.
func Arc(z0, r0, z1, r1, cz, cr float64, upper bool) Curve {
	rho := (math.Hypot(z0-cz, r0-cr) + math.Hypot(z1-cz, r1-cr)) / 2
	if z1 < z0 {
		z0, z1 = z1, z0
	}
	if rho == 0 {
		return Curve{}
	}
	p := Piece{Radius: rho, CentreZ: cz, CentreR: cr, Upper: upper}
	return curveOf(p.clip(z0, z1))
}

// curveOf keeps the pieces that are wide enough to be one.
func curveOf(pieces ...Piece) Curve {
	var c Curve
	for _, p := range pieces {
		if p.Z1-p.Z0 > Snap {
			c.pieces = append(c.pieces, p)
		}
	}
	return c
}

// Join is c with d where c has no value.
func (c Curve) Join(d Curve) Curve {
	return combine(c, d, union, func(p, _ Piece, _ float64) Piece { return p })
}

// Pieces are the pieces from left to right.
func (c Curve) Pieces() []Piece { return append([]Piece(nil), c.pieces...) }

// Empty reports whether the curve has no value anywhere.
func (c Curve) Empty() bool { return len(c.pieces) == 0 }

// Domain is the stretch from the curve's first to its last place; not ok when it is empty.
func (c Curve) Domain() (z0, z1 float64, ok bool) {
	if c.Empty() {
		return 0, 0, false
	}
	return c.pieces[0].Z0, c.pieces[len(c.pieces)-1].Z1, true
}

// At is the radius just left and just right of z; NaN on a side where the curve has no value.
func (c Curve) At(z float64) (left, right float64) {
	left, right = math.NaN(), math.NaN()
	for _, p := range c.pieces {
		if p.Z0 < z-Noise && z <= p.Z1+Noise {
			left = p.At(math.Min(z, p.Z1))
		}
		if p.Z0 <= z+Noise && z < p.Z1-Noise {
			right = p.At(math.Max(z, p.Z0))
		}
	}
	return left, right
}

// Clip is the curve over z0..z1 only.
func (c Curve) Clip(z0, z1 float64) Curve {
	var out Curve
	for _, p := range c.pieces {
		from, to := math.Max(z0, p.Z0), math.Min(z1, p.Z1)
		if to-from > Snap {
			out.pieces = append(out.pieces, p.clip(from, to))
		}
	}
	return out
}

// Raise is the curve moved outward.
func (c Curve) Raise(by float64) Curve { return c.each(func(p Piece) Piece { return p.raise(by) }) }

// Flip is the half plane turned over: -r for r, so that what is done to outer curves serves for inner ones.
func (c Curve) Flip() Curve { return c.each(Piece.flip) }

// Shift is the curve moved by dz along the axis and dr outward.
func (c Curve) Shift(dz, dr float64) Curve {
	return c.each(func(p Piece) Piece { return p.shift(dz, dr) })
}

// Mirror is the curve with -z for z.
func (c Curve) Mirror() Curve {
	out := c.each(Piece.mirror)
	for i, j := 0, len(out.pieces)-1; i < j; i, j = i+1, j-1 {
		out.pieces[i], out.pieces[j] = out.pieces[j], out.pieces[i]
	}
	return out
}

func (c Curve) each(f func(Piece) Piece) Curve {
	out := Curve{make([]Piece, len(c.pieces))}
	for i, p := range c.pieces {
		out.pieces[i] = f(p)
	}
	return out
}

// Least is the least radius over z0..z1, +Inf where the curve has no value there.
func (c Curve) Least(z0, z1 float64) float64 {
	least := math.Inf(1)
	for _, p := range c.pieces {
		if from, to := max(z0, p.Z0), min(z1, p.Z1); to-from > Snap {
			least = min(least, p.clip(from, to).least())
		}
	}
	return least
}

// Greatest is the greatest radius over z0..z1, -Inf where the curve has no value there.
func (c Curve) Greatest(z0, z1 float64) float64 {
	greatest := math.Inf(-1)
	for _, p := range c.pieces {
		if from, to := max(z0, p.Z0), min(z1, p.Z1); to-from > Snap {
			greatest = max(greatest, -p.clip(from, to).flip().least())
		}
	}
	return greatest
}

// pieceOver is the piece that has z inside.
func (c Curve) pieceOver(z float64) (Piece, bool) {
	i := sort.Search(len(c.pieces), func(i int) bool { return c.pieces[i].Z1 >= z })
	if i < len(c.pieces) && c.pieces[i].Z0 <= z {
		return c.pieces[i], true
	}
	return Piece{}, false
}
