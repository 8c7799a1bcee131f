package solid

import "math"

// Volume is the metal in cubic millimetres: π∫(outer² - inner²)dz, in closed form.
func (b Body) Volume() float64 {
	var sum float64
	for _, p := range b.Outer.pieces {
		sum += p.squares()
	}
	for _, p := range b.Inner.pieces {
		sum -= p.squares()
	}
	return math.Pi * sum
}

// squares is ∫r²dz over the piece. Line: Δz(r₀²+r₀r₁+r₁²)/3. Arc r = c ± s with s = √(ρ²-t²): c²t ± c(ts + ρ²·asin(t/ρ)) + ρ²t - t³/3
// between the ends (the table of elementary integrals; checked against sphere and torus in the tests).
func (p Piece) squares() float64 {
	if !p.IsArc() {
		return (p.Z1 - p.Z0) * (p.R0*p.R0 + p.R0*p.R1 + p.R1*p.R1) / 3
	}
	upTo := func(z float64) float64 {
		rho, c := p.Radius, p.CentreR
		t := math.Max(-rho, math.Min(rho, z-p.CentreZ))
		s := math.Sqrt(math.Max(0, rho*rho-t*t))
		return c*c*t + p.sign()*c*(t*s+rho*rho*math.Asin(t/rho)) + rho*rho*t - t*t*t/3
	}
	return upTo(p.Z1) - upTo(p.Z0)
}
