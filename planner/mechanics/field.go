package mechanics

import "math"

const (
	// angleSteps is how many steps half a sector is read at.
	angleSteps = 60
	// planeSteps is how many steps the length is read at, besides the middle and the end of the grip.
	planeSteps = 10
	// plainStressAbove is the m h/R above which a harmonic's stress is read from the plane annulus alone.
	plainStressAbove = 1.5
)

// A field is a ring with all that is needed to tell movement and stress anywhere, for any pressures that repeat
// themselves jaws times round the ring, are symmetric about each jaw, and act over the grip length.
type field struct {
	wall
	jaws      int
	plane     bool // read as a plane annulus of the grip's length: no shell along the axis
	harmonics []harmonic
}

// A harmonic is one term of the pressure, m waves round the ring, and the ring's answer to 1 MPa of it on either face.
type harmonic struct {
	m             int
	outside, bore answer
}

// An answer is how the ring yields to one harmonic on one face.
type answer struct {
	response
	sign    float64 // -1 where the pressure pushes inward, +1 where outward
	profile *profile
}

// loads are the amplitudes of the pressure on either face, MPa, one for each harmonic of the field.
type loads struct {
	outside, bore []float64
}

func (s wall) field(jaws, terms int, plane bool, pressed ...face) *field {
	f := &field{wall: s, jaws: jaws, plane: plane}
	for k := range terms {
		h := harmonic{m: k * jaws}
		for _, at := range pressed {
			if at == onOutside {
				h.outside = f.answer(h.m, at)
			} else {
				h.bore = f.answer(h.m, at)
			}
		}
		f.harmonics = append(f.harmonics, h)
	}
	return f
}

func (f *field) answer(m int, pressed face) answer {
	a := answer{response: f.respond(m, pressed), sign: -1}
	// A pressure on the outside is weighed by what the bore does and the other way round: the face that will be cut.
	seen := onBore
	if pressed == onBore {
		a.sign, seen = 1, onOutside
	}
	if !f.plane && f.wavesPerWall(m) <= planeAbove {
		p := f.spread(m, 1/math.Abs(a.move(seen)))
		a.profile = &p
	}
	return a
}

// state is the harmonic's course along the axis at z: stretch and bend of the plane answer, membrane stresses.
func (f *field) state(a answer, z float64) (stretch, bend, hoop, axial float64) {
	if a.profile != nil {
		return a.profile.read(z)
	}
	if f.gripped(z) {
		return 1, 0, 0, 0
	}
	return 0, 0, 0, 0
}

// edgeShare is the share by which a figure may lie past an edge and still count as on it. Round dimensions hit edges
// exactly, and rounding must not decide there: the same ring in inches has to give the same figures.
const edgeShare = 1e-9

// wavesPerWall is m h/R: how short a harmonic is against the wall.
func (f *field) wavesPerWall(m int) float64 {
	return float64(m) * f.thickness() / f.meanRadius() / (1 + edgeShare)
}

func (f *field) gripped(z float64) bool { return z <= f.grip*(1+edgeShare) }

// outOfRound is the peak-to-valley radial movement of a face at z, mm.
func (f *field) outOfRound(l loads, z float64, seen face) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, u := range f.movements(l, z, seen) {
		low, high = math.Min(low, u), math.Max(high, u)
	}
	return high - low
}

// movements are the outward radial movements of a face at z at the angles of the half sector, mm.
func (f *field) movements(l loads, z float64, seen face) []float64 {
	amplitudes := make([]float64, len(f.harmonics))
	for k, h := range f.harmonics {
		amplitudes[k] = f.moveAmplitude(h.outside, at(l.outside, k), z, seen) + f.moveAmplitude(h.bore, at(l.bore, k), z, seen)
	}
	return series(amplitudes)
}

func (f *field) moveAmplitude(a answer, pressure, z float64, seen face) float64 {
	if pressure == 0 {
		return 0
	}
	stretch, _, _, _ := f.state(a, z)
	return pressure * a.move(seen) * stretch
}

func at(list []float64, k int) float64 {
	if k < len(list) {
		return list[k]
	}
	return 0
}

// series sums amplitude k x cos(k jaws angle) at the angles of the half sector 0..pi/jaws.
func series(amplitudes []float64) []float64 {
	sums := make([]float64, angleSteps+1)
	for k, a := range amplitudes {
		if a == 0 {
			continue
		}
		for i := range sums {
			sums[i] += a * cosines[(k*i)%(2*angleSteps)]
		}
	}
	return sums
}

// cosines of i pi/angleSteps over a full turn.
var cosines = func() (table [2 * angleSteps]float64) {
	for i := range table {
		table[i] = math.Cos(float64(i) * math.Pi / angleSteps)
	}
	return table
}()

// middle is the middle of the grip, or the nearest place where a cup has a bore.
func (f *field) middle() float64 { return math.Max(f.grip/2, f.web) }

// planes are the places along the axis where the wall is read, the middle of the grip first.
func (f *field) planes() []float64 {
	list := []float64{f.middle()}
	if f.plane {
		return list
	}
	list = append(list, f.grip)
	for i := range planeSteps + 1 {
		list = append(list, f.length*float64(i)/planeSteps)
	}
	return list
}

// read interpolates the profile at z; before the first node the wall moves as one with the web.
func (p *profile) read(z float64) (stretch, bend, hoop, axial float64) {
	if z <= p.at[0] {
		return p.stretch[0] + p.slope[0]*(z-p.at[0]), p.bend[0], p.hoop[0], p.axial[0]
	}
	i := 0
	for i+2 < len(p.at) && z > p.at[i+1] {
		i++
	}
	l := p.at[i+1] - p.at[i]
	t := (z - p.at[i]) / l
	mix := func(list []float64) float64 { return list[i]*(1-t) + list[i+1]*t }
	stretch = p.stretch[i]*(1+2*t)*(1-t)*(1-t) + p.slope[i]*l*t*(1-t)*(1-t) +
		p.stretch[i+1]*t*t*(3-2*t) + p.slope[i+1]*l*t*t*(t-1)
	return stretch, mix(p.bend), mix(p.hoop), mix(p.axial)
}
