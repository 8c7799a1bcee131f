package solid

import "math"

// Body is a body of revolution: metal between Inner and Outer wherever Inner < Outer. Both have values over the same stretches, those with metal.
type Body struct{ Outer, Inner Curve }

// Cylinder is a tube, or a bar where rInner is 0.
func Cylinder(z0, z1, rOuter, rInner float64) Body {
	return NewBody(Const(z0, z1, rOuter), Const(z0, z1, rInner))
}

// NewBody is the metal between two curves, where both have a value. A negative inner radius counts as 0.
func NewBody(outer, inner Curve) Body {
	var b Body
	eachMetal(outer, inner, func(out, in Piece) {
		b.Outer.add(out)
		b.Inner.add(in)
	})
	return b
}

// eachMetal calls f with the outer and inner piece over each stretch that has metal thicker than Noise at its middle.
func eachMetal(outer, inner Curve, f func(out, in Piece)) {
	axis := Piece{Z0: -Far, Z1: Far}
	eachStretch(stops(outer, inner), func(z0, z1 float64) {
		mid := (z0 + z1) / 2
		p, hasOuter := outer.pieceOver(mid)
		q, hasInner := inner.pieceOver(mid)
		if !hasOuter || !hasInner {
			return
		}
		at := append(crossings(p, q), append(crossings(q, axis), crossings(p, axis)...)...)
		eachStretch(within(at, z0, z1), func(u, v float64) {
			m := (u + v) / 2
			in := q
			if q.At(m) < 0 {
				in = axis
			}
			if p.At(m)-in.At(m) > Noise {
				f(p.clip(u, v), in.clip(u, v))
			}
		})
	})
}

// TurnTo is what is left after everything outside c has been cut away.
func (b Body) TurnTo(c Curve) Body { return NewBody(Lower(b.Outer, c), b.Inner) }

// BoreTo is what is left after everything inside c has been cut away.
func (b Body) BoreTo(c Curve) Body { return NewBody(b.Outer, Upper(b.Inner, c)) }

// Keep is what lies between z0 and z1.
func (b Body) Keep(z0, z1 float64) Body {
	return NewBody(b.Outer.Clip(z0, z1), b.Inner.Clip(z0, z1))
}

// Add is the metal of both, for bodies whose metal at each z touches or overlaps (a gap between them would be filled).
func (b Body) Add(d Body) Body {
	outer := Upper(b.Outer, d.Outer).Join(d.Outer)
	inner := Lower(b.Inner, d.Inner).Join(d.Inner)
	return NewBody(outer, inner)
}

// Empty reports whether there is no metal.
func (b Body) Empty() bool { return b.Outer.Empty() }

// Ends are the first and the last place with metal; both 0 where there is none.
func (b Body) Ends() (z0, z1 float64) {
	z0, z1, _ = b.Outer.Domain()
	return z0, z1
}

// LeastWall is the least of outer minus inner radius over z0..z1 where there is metal, +Inf where there is none.
func (b Body) LeastWall(z0, z1 float64) float64 {
	least := math.Inf(1)
	eachMetal(b.Outer.Clip(z0, z1), b.Inner.Clip(z0, z1), func(out, in Piece) {
		_, wall := greatestGap(in, out, out.Z0, out.Z1)
		least = math.Min(least, -wall)
	})
	return least
}

// Whole reports whether the metal is one lump over its whole length, with no gap along the axis.
func (b Body) Whole() bool {
	whole := true
	for i := 1; i < len(b.Outer.pieces); i++ {
		whole = whole && b.Outer.pieces[i].Z0-b.Outer.pieces[i-1].Z1 <= Snap
	}
	return whole
}

// greatestGap is the greatest p - q over z0..z1 and where it is.
func greatestGap(p, q Piece, z0, z1 float64) (z, gap float64) {
	z, gap = z0, p.At(z0)-q.At(z0)
	take := func(at float64) {
		if g := p.At(at) - q.At(at); g > gap {
			z, gap = at, g
		}
	}
	take(z1)
	for _, at := range parallels(p, q) {
		if at >= z0 && at <= z1 {
			take(at)
		}
	}
	return z, gap
}
