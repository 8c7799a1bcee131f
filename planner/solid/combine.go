package solid

import "sort"

// Lower is the smaller of both radii over a's domain; where b has no value, a's.
func Lower(a, b Curve) Curve {
	return combine(a, b, overFirst, func(p, q Piece, z float64) Piece {
		if q.At(z) < p.At(z) {
			return q
		}
		return p
	})
}

// Upper is the greater of both radii over a's domain; where b has no value, a's.
func Upper(a, b Curve) Curve { return Lower(a.Flip(), b.Flip()).Flip() }

// extent says over which stretches two curves are combined.
type extent int

const (
	overFirst extent = iota + 1 // where the first has a value
	union                       // where either has one
)

// combine cuts the axis into stretches over which a and b have one piece each and do not cross, and takes for each what pick chooses at
// its middle. Where only one has a value, that one stays.
func combine(a, b Curve, over extent, pick func(p, q Piece, z float64) Piece) Curve {
	var out Curve
	eachStretch(stops(a, b), func(z0, z1 float64) {
		mid := (z0 + z1) / 2
		p, inA := a.pieceOver(mid)
		q, inB := b.pieceOver(mid)
		switch {
		case inA && inB:
			eachStretch(within(crossings(p, q), z0, z1), func(u, v float64) {
				out.add(pick(p, q, (u+v)/2).clip(u, v))
			})
		case inA:
			out.add(p.clip(z0, z1))
		case inB && over == union:
			out.add(q.clip(z0, z1))
		}
	})
	return out
}

// add puts a piece at the right end, as the last piece's continuation where it is one.
func (c *Curve) add(p Piece) {
	if n := len(c.pieces); n > 0 && c.pieces[n-1].continues(p) {
		last := c.pieces[n-1]
		if last.IsArc() {
			c.pieces[n-1] = last.clip(last.Z0, p.Z1)
		} else {
			c.pieces[n-1].Z1, c.pieces[n-1].R1 = p.Z1, p.R1
		}
		return
	}
	c.pieces = append(c.pieces, p)
}

// stops are the ends of all pieces, in order, no two closer than Snap.
func stops(curves ...Curve) []float64 {
	var at []float64
	for _, c := range curves {
		for _, p := range c.pieces {
			at = append(at, p.Z0, p.Z1)
		}
	}
	return spread(at)
}

// within keeps those of zs that lie between z0 and z1, and adds these two.
func within(zs []float64, z0, z1 float64) []float64 {
	at := []float64{z0}
	for _, z := range zs {
		if z0+Snap < z && z < z1-Snap {
			at = append(at, z)
		}
	}
	return append(spread(at), z1)
}

// spread sorts places and drops each that lies within Snap of the one before; the last one stays.
func spread(at []float64) []float64 {
	sort.Float64s(at)
	var out []float64
	for _, z := range at {
		if len(out) == 0 || z-out[len(out)-1] > Snap {
			out = append(out, z)
		}
	}
	return out
}

// eachStretch calls f for each pair of neighbours.
func eachStretch(at []float64, f func(z0, z1 float64)) {
	for i := 1; i < len(at); i++ {
		f(at[i-1], at[i])
	}
}
