package steps

import (
	"math"
	"math/big"
)

const (
	// tieMM: two places across nearer than this are one place. Far below a dial, far above rounding errors.
	tieMM = 1e-9
	// roundingShare bounds the relative rounding error of the few operations between the given numbers and a height.
	roundingShare = 32 * 0x1p-53
)

// span holds a true value between lo and hi.
type span struct{ lo, hi float64 }

func (s *span) raise(lo, hi float64) { s.lo, s.hi = max(s.lo, lo), max(s.hi, hi) }

// heightSpan is the height of g at x with its rounding error; scale bounds every length that goes into it.
func (g graph) heightSpan(x, scale float64) span {
	e := roundingShare*scale + g.doubt
	if g.kind == straight {
		v, e := g.at(x), e*math.Hypot(1, g.slope)
		return span{v - e, v + e}
	}
	d := x - g.x
	q, eq := (g.radius-d)*(g.radius+d), roundingShare*scale*scale
	lo, hi := math.Sqrt(max(0, q-eq)), math.Sqrt(max(0, q+eq))
	if g.kind == lower {
		lo, hi = -hi, -lo
	}
	return span{g.y + lo - e, g.y + hi + e}
}

// feeler finds how deep a cutter may go: intervals first, rational numbers where they cannot tell.
type feeler struct {
	surface   surface
	flat      float64
	nose      float64
	flatExact *big.Rat
	rolling   []graph // the surface lifted by the nose radius: where the middle of a nose may run
	peaks     []corner
	exact     []exactPiece
	noseExact *big.Rat
	across    dial
	depth     dial
	tops      []float64 // no point of a piece is higher
	scale     float64
}

func newFeeler(s surface, r Request) *feeler {
	f := &feeler{surface: s, flat: r.Cutter.flatHalfMM(), nose: r.Cutter.noseMM(), across: newDial(r.Across), depth: newDial(r.Depth), peaks: s.peaks()}
	f.rolling = s.lifted(f.nose)
	f.flatExact = sub(quo(decimal(r.Cutter.WidthMM), big.NewRat(2, 1)), decimal(r.Cutter.CornerRadiusMM))
	f.noseExact = decimal(f.nose)
	f.scale = s.scale() + math.Abs(r.Across.OriginMM) + math.Abs(r.Depth.OriginMM) + 2*r.Cutter.halfWidthMM()
	for _, g := range s.pieces {
		f.exact = append(f.exact, exactOf(g))
		top := max(g.heightSpan(g.lo, f.scale).hi, g.heightSpan(g.hi, f.scale).hi)
		if g.kind == upper {
			top = g.y + g.radius*(1+roundingShare) + roundingShare*f.scale
		}
		f.tops = append(f.tops, top)
	}
	return f
}

// deepest returns the greatest depth reading at which the cutter, across at the given reading, does not pass the curve.
// ok is false where the cutter does not meet the curve at all.
func (f *feeler) deepest(across int64) (depth int64, ok bool) {
	x := f.across.at(across)
	least := f.nothingBelow(x)
	if math.IsInf(least.hi, -1) {
		return 0, false
	}
	travel := f.depth.travelMM
	reading := func(height float64) float64 { return (f.nose - height - f.depth.originMM) / travel }
	slack := roundingShare * (f.scale/travel + 1)
	safe := int64(math.Floor(reading(least.hi) - slack))
	deep := safe + 1 // at a joint, or at the very end of the curve, which such a cut touches at most
	if !math.IsInf(least.lo, -1) {
		deep = int64(math.Floor(reading(least.lo) + slack))
	}
	for safe < deep { // bisect on the exact answer; safe stays clear
		mid := safe + (deep-safe+1)/2
		if f.clear(across, mid) {
			safe = mid
		} else {
			deep = mid - 1
		}
	}
	return safe, true
}

// nothingBelow is the least height that the middle of the cutter's noses may have at x, as a span; -Inf if nothing is met.
// The highest point of the lifted surface under a flat is over one of the flat's ends or over a peak of the surface.
func (f *feeler) nothingBelow(x float64) span {
	s := span{math.Inf(-1), math.Inf(-1)}
	f.raiseAt(&s, x-f.flat)
	if f.flat == 0 {
		return s
	}
	f.raiseAt(&s, x+f.flat)
	e := roundingShare * f.scale
	for _, p := range f.peaks {
		if d := math.Abs(p.x - x); d <= f.flat-tieMM {
			s.raise(p.y+f.nose-e-p.doubt, p.y+f.nose+e+p.doubt)
		} else if d <= f.flat+tieMM {
			s.raise(math.Inf(-1), p.y+f.nose+e+p.doubt)
		}
	}
	return s
}

func (f *feeler) raiseAt(s *span, x float64) {
	for _, g := range f.rolling {
		if g.lo > x+tieMM {
			break // sorted by lo
		}
		if x > g.hi+tieMM {
			continue
		}
		h := g.heightSpan(x, f.scale)
		if x < g.lo+tieMM || x > g.hi-tieMM {
			h.lo = math.Inf(-1)
		}
		s.raise(h.lo, h.hi)
	}
}

// clear reports, exactly, whether the cutter at these readings keeps out of the metal under the curve.
func (f *feeler) clear(across, depth int64) bool {
	x, nose := f.across.exactAt(across), f.noseExact
	y := sub(nose, f.depth.exactAt(depth))
	left, right := sub(x, f.flatExact), add(x, f.flatExact)
	at, reach, low := f.across.at(across), f.flat+f.nose+tieMM, -f.depth.at(depth)-roundingShare*f.scale
	for n, e := range f.exact {
		if g := f.surface.pieces[n]; g.lo > at+reach || g.hi < at-reach || f.tops[n] < low {
			continue // beside the cutter or below it
		}
		if !e.clearOf(left, y, nose) || !e.clearOf(right, y, nose) || !e.peaksClear(left, right, sub(y, nose)) {
			return false
		}
	}
	return true
}

// peaksClear reports whether the flat from left to right at height y is over the ends and the top of e that lie between.
func (e exactPiece) peaksClear(left, right, y *big.Rat) bool {
	between := func(x *big.Rat) bool { return x.Cmp(left) >= 0 && x.Cmp(right) <= 0 }
	zero := new(big.Rat)
	if between(e.lo) && !e.ends[0].atMost(y, zero) || between(e.hi) && !e.ends[1].atMost(y, zero) {
		return false
	}
	top := e.kind == upper && between(e.x) && e.x.Cmp(e.lo) >= 0 && e.x.Cmp(e.hi) <= 0
	return !top || y.Cmp(add(e.y, e.radius)) >= 0
}
