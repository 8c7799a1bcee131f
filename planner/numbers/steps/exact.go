package steps

import (
	"math/big"
	"strconv"
)

// This file decides "is the cutter clear of the curve?" in rational numbers, for the rare places where rounding could
// matter. Every height that the question meets is a + s*sqrt(p) + sqrt(q) with rational a, p, q and s = -1, 0 or 1, so its sign
// is found by squaring.

// decimal is the number that v prints as: 0.02 becomes 1/50.
func decimal(v float64) *big.Rat {
	r, _ := new(big.Rat).SetString(strconv.FormatFloat(v, 'g', -1, 64))
	return r
}

func add(a, b *big.Rat) *big.Rat { return new(big.Rat).Add(a, b) }
func sub(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }
func mul(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
func quo(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

// signRoot is the sign of a + b*sqrt(p), p >= 0.
func signRoot(a, b, p *big.Rat) int {
	sb := b.Sign()
	if p.Sign() == 0 {
		sb = 0
	}
	sa := a.Sign()
	if sa == 0 || sb == 0 || sa == sb {
		return max(min(sa+sb, 1), -1)
	}
	return sa * mul(a, a).Cmp(mul(mul(b, b), p))
}

// surd is a + s*sqrt(p).
type surd struct {
	a, p *big.Rat
	s    int
}

// atLeast reports whether y >= h + sqrt(q), q >= 0.
func (h surd) atMost(y, q *big.Rat) bool {
	a, s := sub(y, h.a), big.NewRat(int64(-h.s), 1)
	if signRoot(a, s, h.p) < 0 {
		return false
	}
	// Both sides are now 0 or more: compare (a + s*sqrt p)^2 = a^2 + p + 2as*sqrt p (or a^2 without a root) with q.
	square := mul(a, a)
	if h.s != 0 {
		square.Add(square, h.p)
	}
	return signRoot(sub(square, q), mul(big.NewRat(2, 1), mul(a, s)), h.p) >= 0
}

// exactPiece is a graph in rational numbers.
type exactPiece struct {
	lo, hi, x, y, slope, radius *big.Rat
	kind                        graphKind
	ends                        [2]surd
}

func exactOf(g graph) exactPiece {
	e := exactPiece{lo: decimal(g.lo), hi: decimal(g.hi), x: decimal(g.x), y: decimal(g.y), radius: decimal(g.radius), kind: g.kind}
	if g.kind == straight {
		e.slope = quo(sub(decimal(g.endY), e.y), sub(e.hi, e.lo))
		e.ends = [2]surd{{e.y, new(big.Rat), 0}, {decimal(g.endY), new(big.Rat), 0}}
		return e
	}
	for n, x := range []*big.Rat{e.lo, e.hi} {
		d := sub(x, e.x)
		e.ends[n] = surd{e.y, sub(mul(e.radius, e.radius), mul(d, d)), 1}
		if g.kind == lower {
			e.ends[n].s = -1
		}
	}
	return e
}

// clearOf reports whether a disc of radius r about (x, y), with everything above it, has no inner point in the metal under e.
func (e exactPiece) clearOf(x, y, r *big.Rat) bool {
	if tip := sub(y, r); e.kind == straight && tip.Cmp(e.ends[0].a) >= 0 && tip.Cmp(e.ends[1].a) >= 0 {
		return true // the common case: a cutter that rests on a level face
	}
	for n, end := range []*big.Rat{e.lo, e.hi} {
		d := sub(x, end)
		if q := sub(mul(r, r), mul(d, d)); q.Sign() >= 0 && !e.ends[n].atMost(y, q) {
			return false
		}
	}
	if e.kind == straight {
		return e.lineClearOf(x, y, r)
	}
	return e.arcClearOf(x, y, r)
}

// lineClearOf: the highest disc point over the line is above t = x + r*m/sqrt(1+m^2), where the height is the parallel line's.
func (e exactPiece) lineClearOf(x, y, r *big.Rat) bool {
	norm2 := add(big.NewRat(1, 1), mul(e.slope, e.slope))
	rm := mul(r, e.slope)
	if signRoot(rm, sub(x, e.lo), norm2) < 0 || signRoot(rm, sub(x, e.hi), norm2) > 0 {
		return true
	}
	base := add(e.y, mul(e.slope, sub(x, e.x)))
	return signRoot(sub(y, base), new(big.Rat).Neg(r), norm2) >= 0
}

// arcClearOf: the disc's centre stays outside R+r about a round arc's centre, and inside R-r of a hollow one's.
func (e exactPiece) arcClearOf(x, y, r *big.Rat) bool {
	grown := add(e.radius, r)
	if e.kind == lower {
		grown = sub(e.radius, r)
		if grown.Sign() <= 0 {
			return true // a hollow as tight as the disc meets it at its ends only
		}
	}
	d := sub(x, e.x)
	foot := add(e.x, quo(mul(d, e.radius), grown))
	if foot.Cmp(e.lo) < 0 || foot.Cmp(e.hi) > 0 {
		return true
	}
	half := sub(mul(grown, grown), mul(d, d))
	if e.kind == upper {
		return surd{e.y, new(big.Rat), 0}.atMost(y, half)
	}
	return signRoot(sub(y, e.y), big.NewRat(1, 1), half) >= 0
}
