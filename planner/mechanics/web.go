package mechanics

const (
	// webStart is where the flexible wall of a cup begins, in web thicknesses from the web's outer face. It was chosen
	// once on two groups of finite-element cases (D and R of testdata/cases.csv), then kept for the others.
	webStart = 0.65
	// webMiddle is the web's middle plane, where its springs act.
	webMiddle = 0.5
)

// rigidLength is the part of the wall that moves as one with the web, mm.
func (s wall) rigidLength() float64 { return webStart * s.web }

// webSprings closes the end z = 0 by a plate without a hole (or with one below 0.3 of its diameter). Per unit of
// circumference and for one harmonic the plate resists in its plane with kW and across it with the symmetric pair
// (kuu, kus, kss) against edge deflection u and edge slope s. The axial membrane force -q P is the dual of u, so
//
//	1/2 kW w^2 - (q P - kus w')^2/(2 kuu) + 1/2 kss w'^2
//
// joins the functional, with P and P' left free there, and w taken back to the middle plane as a rigid arm.
func (f *shellFrame) webSprings() {
	kuu, kus, kss := f.webBending()
	f.webArm(f.webInPlane(), kss-kus*kus/kuu)
	q := (f.m / f.meanRadius()) * (f.m / f.meanRadius())
	f.equations.add(1, 2, q*kus/kuu)
	f.equations.add(2, 1, q*kus/kuu)
	f.equations.add(2, 2, -q*q*f.modulus*f.thickness()/kuu)
}

// evenWeb is the web under an even squeeze: a disc with u = p R (1-nu)/E, and a plate that is dished by its edge.
func (f *shellFrame) evenWeb() {
	r, nu := f.meanRadius(), f.poisson
	d := f.modulus * f.web * f.web * f.web / (12 * (1 - nu*nu))
	f.webArm(f.web*f.modulus/((1-nu)*r), d*(1+nu)/r)
}

// webArm holds movement (at the web's middle plane) and turn of the wall's start with a spring each.
func (f *shellFrame) webArm(movement, turn float64) {
	eh, arm := f.modulus*f.thickness(), (webStart-webMiddle)*f.web
	f.equations.add(0, 0, movement/eh)
	f.equations.add(0, 1, -movement*arm/eh)
	f.equations.add(1, 0, -movement*arm/eh)
	f.equations.add(1, 1, (movement*arm*arm+turn)/eh)
}

// webInPlane is the stiffness of a solid disc of the web's thickness against the edge movement u_r = cos(m th),
// u_th = -1/m sin(m th), MPa: the movement of a wall that bends without stretching.
func (f *shellFrame) webInPlane() float64 {
	m, r := f.m, f.meanRadius()
	disc := annulus{f.metal, 0, r}.michell(m, r)
	k := (3 - f.poisson) / (1 + f.poisson)
	twoG := f.modulus / (1 + f.poisson)
	across := terms{m * r / twoG, (m + 1 + k) * r / twoG} // tangential movement, x sin(m th)
	det := disc.move[0]*across[1] - disc.move[1]*across[0]
	a := (across[1] + disc.move[1]/m) / det
	b := (-disc.move[0]/m - across[0]) / det
	radial := disc.radial[0]*a + disc.radial[1]*b
	shear := disc.shear[0]*a + disc.shear[1]*b
	return f.web * (radial - shear/m)
}

// webBending is the stiffness of the web as a plate, per unit of circumference. The deflection is
// (c1 rho^m + c2 rho^(m+2)) cos(m th) with c2 = (R s - m u)/2, c1 = u - c2; the energy integrals are closed.
func (f *shellFrame) webBending() (kuu, kus, kss float64) {
	m, r, nu := f.m, f.meanRadius(), f.poisson
	d := f.modulus * f.web * f.web * f.web / (12 * (1 - nu*nu))
	energy := func(p, q float64) float64 {
		laplace := (p*p - m*m) * (q*q - m*m)
		gauss := p*(p-1)*(q-m*m) + q*(q-1)*(p-m*m) - 2*m*m*(p-1)*(q-1)
		return d / (r * r * r) * (laplace - (1-nu)*gauss) / (p + q - 2)
	}
	e11, e12, e22 := energy(m, m), energy(m, m+2), energy(m+2, m+2)
	// u moves c1 by 1+m/2 and c2 by -m/2; s moves c1 by -R/2 and c2 by R/2.
	u1, u2, s1, s2 := 1+m/2, -m/2, -r/2, r/2
	kuu = u1*u1*e11 + 2*u1*u2*e12 + u2*u2*e22
	kus = u1*s1*e11 + (u1*s2+u2*s1)*e12 + u2*s2*e22
	kss = s1*s1*e11 + 2*s1*s2*e12 + s2*s2*e22
	return kuu, kus, kss
}
