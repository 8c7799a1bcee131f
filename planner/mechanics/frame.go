package mechanics

import "math"

// A frameBeam is a straight Timoshenko beam in the plane between two joints.
type frameBeam struct {
	cos, sin, length       float64
	axial, bending, shears float64 // EA, EI, 12EI/(k G A L^2)
}

func (g PlateGrip) beamBetween(from, to float64) frameBeam {
	r := g.BoreDiameterMM / 2
	d0, d1 := g.depth(from), g.depth(to)
	x0, y0 := (r+d0/2)*math.Cos(from), (r+d0/2)*math.Sin(from)
	x1, y1 := (r+d1/2)*math.Cos(to), (r+d1/2)*math.Sin(to)
	l := math.Hypot(x1-x0, y1-y0)
	depth := (d0 + d1) / 2
	area, inertia := depth*g.ThicknessMM, depth*depth*depth*g.ThicknessMM/12
	shear := g.ModulusMPa / (2 * (1 + g.Poisson))
	return frameBeam{(x1 - x0) / l, (y1 - y0) / l, l, g.ModulusMPa * area, g.ModulusMPa * inertia,
		12 * g.ModulusMPa * inertia / (shearFactor * shear * area * l * l)}
}

// stiffness is the beam's matrix in its own axes (along, across, turn at either end).
func (b frameBeam) stiffness() [6][6]float64 {
	a := b.axial / b.length
	k := b.bending / (1 + b.shears)
	l := b.length
	p, q, r, s := 12*k/(l*l*l), 6*k/(l*l), (4+b.shears)*k/l, (2-b.shears)*k/l
	return [6][6]float64{
		{a, 0, 0, -a, 0, 0},
		{0, p, q, 0, -p, q},
		{0, q, r, 0, -q, s},
		{-a, 0, 0, a, 0, 0},
		{0, -p, -q, 0, p, -q},
		{0, q, s, 0, -q, r},
	}
}

// turn maps plane movements to the beam's own axes.
func (b frameBeam) turn() [6][6]float64 {
	var t [6][6]float64
	for i := 0; i < 6; i += 3 {
		t[i][i], t[i][i+1] = b.cos, b.sin
		t[i+1][i], t[i+1][i+1] = -b.sin, b.cos
		t[i+2][i+2] = 1
	}
	return t
}

func (b frameBeam) addTo(m *bandMatrix, first int) {
	k, t := b.stiffness(), b.turn()
	for i := range 6 {
		for j := range 6 {
			sum := 0.0
			for p := range 6 {
				for q := range 6 {
					sum += t[p][i] * k[p][q] * t[q][j]
				}
			}
			m.add(first+i, first+j, sum)
		}
	}
}

// stress is |N/A| + |M| c/I at the beam's first joint, for a section of the given depth and thickness.
func (b frameBeam) stress(x []float64, depth, thickness float64) float64 {
	k, t := b.stiffness(), b.turn()
	var own, end [6]float64
	for i := range 6 {
		for j := range 6 {
			own[i] += t[i][j] * x[j]
		}
	}
	for i := range 6 {
		for j := range 6 {
			end[i] += k[i][j] * own[j]
		}
	}
	return math.Abs(end[0])/(depth*thickness) + math.Abs(end[2])*6/(depth*depth*thickness)
}
