package solid

import "math"

// Piece is a line, or an arc of a circle, with one radius for each z between Z0 and Z1.
type Piece struct {
	Z0, R0, Z1, R1 float64
	// Radius is 0 for a line. An arc is the upper or the lower half of the circle about (CentreZ, CentreR), or a part of it.
	Radius, CentreZ, CentreR float64
	Upper                    bool
}

// IsArc reports whether the piece is an arc.
func (p Piece) IsArc() bool { return p.Radius > 0 }

// At is the radius at z. Outside Z0..Z1 it is that of the line, or of the nearest place of the circle.
func (p Piece) At(z float64) float64 {
	if p.IsArc() {
		t := z - p.CentreZ
		return p.CentreR + p.sign()*math.Sqrt(math.Max(0, p.Radius*p.Radius-t*t))
	}
	switch z {
	case p.Z0:
		return p.R0
	case p.Z1:
		return p.R1
	}
	return p.R0 + p.slope()*(z-p.Z0)
}

// sign is +1 on the upper half of the circle, -1 on the lower.
func (p Piece) sign() float64 {
	if p.Upper {
		return 1
	}
	return -1
}

// slope is that of a line.
func (p Piece) slope() float64 { return (p.R1 - p.R0) / (p.Z1 - p.Z0) }

// clip is the piece over another stretch of z.
func (p Piece) clip(z0, z1 float64) Piece {
	r0, r1 := p.At(z0), p.At(z1)
	p.Z0, p.R0, p.Z1, p.R1 = z0, r0, z1, r1
	return p
}

// least is the piece's least radius.
func (p Piece) least() float64 {
	least := min(p.R0, p.R1)
	if p.IsArc() && !p.Upper && p.Z0 < p.CentreZ && p.CentreZ < p.Z1 {
		least = min(least, p.CentreR-p.Radius)
	}
	return least
}

// raise moves the piece outward.
func (p Piece) raise(by float64) Piece {
	p.R0 += by
	p.R1 += by
	p.CentreR += by
	return p
}

// flip turns the half plane over: r becomes -r.
func (p Piece) flip() Piece {
	p.R0, p.R1, p.CentreR, p.Upper = -p.R0, -p.R1, -p.CentreR, !p.Upper
	return p
}

// mirror turns the axis round: z becomes -z.
func (p Piece) mirror() Piece {
	p.Z0, p.Z1, p.CentreZ = -p.Z1, -p.Z0, -p.CentreZ
	p.R0, p.R1 = p.R1, p.R0
	return p
}

// shift moves the piece.
func (p Piece) shift(dz, dr float64) Piece {
	p.Z0 += dz
	p.Z1 += dz
	p.CentreZ += dz
	return p.raise(dr)
}

// continues reports whether q goes on where p ends on the same line or circle.
func (p Piece) continues(q Piece) bool {
	if p.IsArc() != q.IsArc() || q.Z0-p.Z1 > Snap {
		return false
	}
	if p.IsArc() {
		return p.Upper == q.Upper && near(p.Radius, q.Radius) && near(p.CentreZ, q.CentreZ) && near(p.CentreR, q.CentreR)
	}
	whole := Piece{Z0: p.Z0, R0: p.R0, Z1: q.Z1, R1: q.R1}
	return near(p.R1, q.R0) && near(whole.At(p.Z1), p.R1)
}

func near(a, b float64) bool { return math.Abs(a-b) <= roundOff*math.Max(1, math.Abs(a)) }

// roundOff is the relative error of a few sums in float64: what has gone through them still counts as the same line or circle.
const roundOff = 1e-12

// crossings gives the places where p and q, prolonged, may meet; more than those is harmless, for the caller looks between them.
//
// Lines: the root of a linear equation. Line and circle: (z-cz)² + (r(z)-cr)² = ρ². Two circles: their radical line, and Pythagoras.
func crossings(p, q Piece) []float64 {
	switch {
	case p.IsArc() && q.IsArc():
		return circleCrossings(p, q)
	case p.IsArc():
		return lineCircleCrossings(q, p)
	case q.IsArc():
		return lineCircleCrossings(p, q)
	}
	turn := p.slope() - q.slope()
	if turn == 0 {
		return nil
	}
	return []float64{p.Z0 - (p.R0-q.At(p.Z0))/turn}
}

func lineCircleCrossings(line, circle Piece) []float64 {
	m := line.slope()
	// With t = z - cz the line is m t + k above the circle's centre.
	k := line.R0 + m*(circle.CentreZ-line.Z0) - circle.CentreR
	a := 1 + m*m
	disc := circle.Radius*circle.Radius*a - k*k
	if disc < 0 {
		return nil
	}
	root := math.Sqrt(disc)
	return []float64{circle.CentreZ + (-m*k-root)/a, circle.CentreZ + (-m*k+root)/a}
}

func circleCrossings(p, q Piece) []float64 {
	dz, dr := q.CentreZ-p.CentreZ, q.CentreR-p.CentreR
	d := math.Hypot(dz, dr)
	if d == 0 {
		return nil
	}
	along := (d*d + p.Radius*p.Radius - q.Radius*q.Radius) / (2 * d)
	h2 := p.Radius*p.Radius - along*along
	if h2 < 0 {
		return nil
	}
	h := math.Sqrt(h2)
	z := p.CentreZ + along*dz/d
	return []float64{z - h*dr/d, z + h*dr/d}
}

// parallels gives the places where p and q, prolonged, run in the same direction: there, or at an end, lies the extreme of p - q.
//
// On an arc the slope is -u·tan θ with sin θ = (z-cz)/ρ and u = ±1 for the half. Line of slope m: sin θ = -u·m/√(1+m²). Two arcs:
// (z-cz₁)/ρ₁ = u₁u₂·(z-cz₂)/ρ₂.
func parallels(p, q Piece) []float64 {
	switch {
	case p.IsArc() && q.IsArc():
		u := p.sign() * q.sign()
		a, b := 1/p.Radius, u/q.Radius
		if a == b {
			return nil
		}
		return []float64{(a*p.CentreZ - b*q.CentreZ) / (a - b)}
	case p.IsArc():
		m := q.slope()
		return []float64{p.CentreZ - p.sign()*p.Radius*m/math.Hypot(1, m)}
	case q.IsArc():
		return parallels(q, p)
	}
	return nil
}
