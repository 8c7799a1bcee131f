package mechanics

import "math"

// A pad is one jaw's patch of even pressure on a face of the ring.
type pad struct {
	jaws      int
	halfAngle float64 // rad, up to pi/jaws
	radius    float64 // of the face, mm
	grip      float64 // length along the axis, mm
}

// widestStraightJaw is the share of its sector that a jaw of straight width is taken to touch at most: beyond half, a
// chuck jaw that is not bored to size touches on its edges or its middle only.
const widestStraightJaw = 0.5

// padOfWidth is a jaw of straight width: half its chord is r sin(half angle).
func padOfWidth(jaws int, width, radius, grip float64) pad {
	most := widestStraightJaw * math.Pi / float64(jaws)
	half := most
	if s := width / (2 * radius); s < math.Sin(most) {
		half = math.Asin(s)
	}
	return pad{jaws, half, radius, grip}
}

// pressure is the even pressure whose resultant along the jaw is force, MPa.
func (p pad) pressure(force float64) float64 {
	return force / (2 * p.radius * p.grip * math.Sin(p.halfAngle))
}

// amplitudes are the Fourier amplitudes of 1 MPa under every jaw: n al/pi, then 2n/(pi m) sin(m al), m = n, 2n, ...
func (p pad) amplitudes(terms int) []float64 {
	return boxAmplitudes(p.jaws, 0, p.halfAngle, terms)
}

// boxAmplitudes are the Fourier amplitudes of 1 MPa between two angles of the half sector and wherever symmetry repeats it.
func boxAmplitudes(jaws int, from, to float64, terms int) []float64 {
	list := make([]float64, terms)
	n := float64(jaws)
	list[0] = n * (to - from) / math.Pi
	for k := 1; k < terms; k++ {
		m := float64(k) * n
		list[k] = 2 * n / (math.Pi * m) * (math.Sin(m*to) - math.Sin(m*from))
	}
	return list
}

// shape is 1 under the pad and 0 beside it, at the angles of the half sector.
func (p pad) shape(scale float64) []float64 {
	list := make([]float64, angleSteps+1)
	for i := range list {
		if float64(i)*math.Pi/float64(p.jaws)/angleSteps <= p.halfAngle {
			list[i] = scale
		}
	}
	return list
}

func scaled(list []float64, by float64) []float64 {
	out := make([]float64, len(list))
	for i, v := range list {
		out[i] = v * by
	}
	return out
}
