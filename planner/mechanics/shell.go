package mechanics

import "math"

const (
	// shellElements is how many pieces the wall is cut into along the axis; halving it moves no case by more than 0.2 %.
	shellElements = 28
	// leastElements is the least number of pieces on either side of the end of the grip.
	leastElements = 6
	// leastTwist keeps the twist stiffness of very short rings from vanishing: 1 - 0.63 h/L is Saint-Venant's factor for
	// a thin rectangle and holds down to L = h only, where it is 0.37.
	leastTwist = 0.37
	// planeAbove is the m h/R above which a harmonic is so short that the wall answers it slice by slice.
	planeAbove = 2.5
)

// A wall is the ring as a shell: how one harmonic of the pressure spreads along the axis.
//
// Each harmonic m makes stationary (Donnell's shallow shell with the circumferential curvature corrected to m^2-1, after
// Morley; in the far field Vlasov's semi-membrane shell), w the radial movement and P the Airy function of the membrane:
//
//	1/2 Int [D w''^2 - 2 cx w'' w + Kp w^2 + tw w'^2] + Int P'' w/R
//	  - 1/(2Eh) Int [P''^2 + q^2 P^2 + 2 nu q P P'' + 2(1+nu) q P'^2] - Int p w,   q = (m/R)^2
//	D = E h^3/12(1-nu^2), Kp = K/(1-nu^2), cx = nu sqrt(D Kp), tw = 2D(1-nu)((m^2-1)/(mR))^2 max(0.37, 1-0.63h/L)
//
// K is the ring's exact stiffness against the harmonic, so that a load over the full length of a short ring gives back
// the plane annulus. Free ends: P = P' = 0. Unknowns are scaled: w = h v, P = E h^2 f, which puts all terms within reach.
type wall struct {
	annulus
	length, grip float64 // mm; pressure acts from 0 to grip
	web          float64 // thickness of a web closing the end, its outer face at z = 0; 0 for none
}

func (s wall) thickness() float64  { return s.outside - s.bore }
func (s wall) meanRadius() float64 { return (s.outside + s.bore) / 2 }

// A profile is the shape of one harmonic along the axis: the plane answer is multiplied by these factors.
type profile struct {
	at      []float64 // z of the nodes, mm
	stretch []float64 // w K: movement as a share of the plane answer
	slope   []float64 // its derivative, 1/mm
	bend    []float64 // its second derivative, 1/mm^2
	hoop    []float64 // P''/h, membrane hoop stress, MPa, for 1 MPa outward
	axial   []float64 // -q P/h, membrane axial stress, MPa, for 1 MPa outward
}

// spread solves harmonic m for a unit pressure; stiffness is K, MPa/mm. Complexity: linear in the number of elements.
func (s wall) spread(m int, stiffness float64) profile {
	if m == 0 {
		return s.spreadEven(stiffness)
	}
	f := s.assemble(m, stiffness)
	right := f.pressure()
	f.hold(f.last(), right, 0, 0)
	if s.web > 0 {
		f.webSprings()
	} else {
		f.hold(0, right, 0, 0)
	}
	f.equations.solve(right)
	return f.profile(right)
}

// spreadEven is m = 0: a beam on springs, D w”” + K w = p. It holds no membrane part: K is the hoop stiffness itself.
func (s wall) spreadEven(stiffness float64) profile {
	f := s.frame(0, stiffness)
	h := s.thickness()
	d := s.modulus * h * h * h / (12 * (1 - s.poisson*s.poisson))
	for i := 0; i+1 < len(f.nodes); i++ {
		c := hermite.scaled(f.nodes[i+1] - f.nodes[i])
		for a := range 4 {
			for b := range 4 {
				f.addTo(i, a, b, 0, 0, (d*c.bends[a][b]+stiffness*c.values[a][b])/(s.modulus*h))
			}
		}
	}
	if s.web > 0 {
		f.evenWeb()
	}
	right := f.pressure()
	for i := range f.nodes {
		f.hold(i, right, 0, 0)
	}
	f.equations.solve(right)
	return f.profile(right)
}

// shellFrame is one harmonic's set of equations: four unknowns (v, v', f, f') at each node.
type shellFrame struct {
	wall
	m, stiffness float64
	nodes        []float64
	equations    *bandMatrix
}

func (s wall) frame(m int, stiffness float64) *shellFrame {
	nodes := s.mesh()
	return &shellFrame{s, float64(m), stiffness, nodes, newBandMatrix(4*len(nodes), 7)}
}

func (s wall) assemble(m int, stiffness float64) *shellFrame {
	f := s.frame(m, stiffness)
	h, r, e, nu := s.thickness(), s.meanRadius(), s.modulus, s.poisson
	n := f.m*f.m - 1
	q := (f.m / r) * (f.m / r)
	kp := stiffness / (1 - nu*nu)
	d := e * h * h * h / (12 * (1 - nu*nu))
	twist := 2 * d * (1 - nu) * math.Pow(n/(f.m*r), 2) * math.Max(leastTwist, 1-0.63*h/s.length)
	crossed := nu * math.Sqrt(d*kp)
	for i := 0; i+1 < len(f.nodes); i++ {
		c := hermite.scaled(f.nodes[i+1] - f.nodes[i])
		for a := range 4 {
			for b := range 4 {
				shape, slope, bend := c.values[a][b], c.slopes[a][b], c.bends[a][b]
				mixed := c.mixed[a][b] + c.mixed[b][a]
				f.addTo(i, a, b, 0, 0, (d*bend-crossed*mixed+kp*shape+twist*slope)/(e*h))
				f.addTo(i, a, b, 2, 2, -(bend + q*q*shape + nu*q*mixed + 2*(1+nu)*q*slope))
				f.addTo(i, a, b, 0, 2, c.mixed[a][b]/r)
				f.addTo(i, b, a, 2, 0, c.mixed[a][b]/r)
			}
		}
	}
	return f
}

// addTo puts a coefficient between local unknowns a and b (v1 v1' v2 v2') of element i; fields are 0 for v, 2 for f.
func (f *shellFrame) addTo(i, a, b, rowField, colField int, v float64) {
	row := 4*i + 4*(a/2) + a%2 + rowField
	col := 4*i + 4*(b/2) + b%2 + colField
	f.equations.add(row, col, v)
}

// mesh places the nodes: evenly on either side of the end of the grip, starting at the flexible part of the wall.
func (s wall) mesh() []float64 {
	start := s.rigidLength()
	if s.grip <= start || s.grip >= s.length {
		return evenly([]float64{start}, s.length, shellElements)
	}
	share := int(math.Round(shellElements * (s.grip - start) / (s.length - start)))
	share = min(max(share, leastElements), shellElements-leastElements)
	return evenly(evenly([]float64{start}, s.grip, share), s.length, shellElements-share)
}

func evenly(nodes []float64, to float64, pieces int) []float64 {
	from := nodes[len(nodes)-1]
	for i := 1; i <= pieces; i++ {
		nodes = append(nodes, from+(to-from)*float64(i)/float64(pieces))
	}
	return nodes
}

func (f *shellFrame) last() int { return len(f.nodes) - 1 }

// hold fixes the Airy function and its slope at a node.
func (f *shellFrame) hold(node int, right []float64, value, slope float64) {
	f.equations.fix(4*node + 2)
	f.equations.fix(4*node + 3)
	right[4*node+2], right[4*node+3] = value, slope
}

// pressure is the right-hand side for 1 MPa outward from z = 0 to the end of the grip.
func (f *shellFrame) pressure() []float64 {
	right := make([]float64, 4*len(f.nodes))
	unit := 1 / (f.modulus * f.thickness() * f.thickness())
	for i := 0; i+1 < len(f.nodes) && (f.nodes[i]+f.nodes[i+1])/2 < f.grip; i++ {
		l := f.nodes[i+1] - f.nodes[i]
		for a, share := range [4]float64{l / 2, l * l / 12, l / 2, -l * l / 12} {
			right[4*i+4*(a/2)+a%2] += unit * share
		}
	}
	onRigid := math.Min(f.rigidLength(), f.grip)
	right[0] += unit * onRigid
	right[1] -= unit * onRigid * (f.rigidLength() - onRigid/2)
	return right
}

func (f *shellFrame) profile(x []float64) profile {
	n := len(f.nodes)
	p := profile{at: f.nodes, stretch: make([]float64, n), slope: make([]float64, n), bend: make([]float64, n),
		hoop: make([]float64, n), axial: make([]float64, n)}
	h := f.thickness()
	q := (f.m / f.meanRadius()) * (f.m / f.meanRadius())
	for i := range n {
		p.stretch[i] = x[4*i] * h * f.stiffness
		p.slope[i] = x[4*i+1] * h * f.stiffness
		p.axial[i] = -q * x[4*i+2] * f.modulus * h
		p.bend[i] = secondDerivative(f.nodes, x, i, 0) * h * f.stiffness
		p.hoop[i] = secondDerivative(f.nodes, x, i, 2) * f.modulus * h
	}
	return p
}
