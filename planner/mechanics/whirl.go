package mechanics

import "math"

// gravity, m/s^2; it cancels in the critical speed and only scales the trial shape.
const gravity = 9.80665

// CriticalSpeed is a speed at which long work whips.
type CriticalSpeed struct {
	RPM float64
	Confidence
}

// CriticalSpeedRPM is the first critical speed of a shaft by Rayleigh's quotient on its own-weight shape, and on the shape
// with the weight turned over beyond a steady, the lower of the two: n = 30/pi sqrt(g sum(m y)/sum(m y^2)).
// Density in kg/m3. Domain: slender work, stiff supports. Error: up to 1.5 % high by the method; a real chuck and centre give way, so
// stay below 60 % of it. Source: Rayleigh's method, standard text.
func (s Shaft) CriticalSpeedRPM(densityKGM3 float64) (CriticalSpeed, error) {
	total, err := s.check(0, 0)
	if err != nil {
		return CriticalSpeed{}, err
	}
	if err := firstFault(positive("density (kg/m3)", densityKGM3)); err != nil {
		return CriticalSpeed{}, err
	}
	least := math.Inf(1)
	turns := []float64{total}
	if s.SteadyAtMM > 0 {
		turns = append(turns, s.SteadyAtMM)
	}
	for _, turn := range turns {
		least = math.Min(least, s.rayleigh(densityKGM3, turn))
	}
	return CriticalSpeed{least, good(bandBeam, "stiff supports taken: stay well below")}, nil
}

// rayleigh weighs the shaft at its nodes, upward beyond turnAt, and returns rev/min.
func (s Shaft) rayleigh(density, turnAt float64) float64 {
	b := s.lay(0)
	masses := make([]float64, len(b.at))
	for i, c := range b.pieces {
		area := math.Pi / 4 * (c.OutsideDiameterMM*c.OutsideDiameterMM - c.BoreMM*c.BoreMM)
		half := density * 1e-9 * area * c.LengthMM / 2
		masses[i] += half
		masses[i+1] += half
	}
	weights := make([]float64, len(b.at))
	for i, m := range masses {
		weights[i] = m * gravity
		if b.at[i] > turnAt {
			weights[i] = -weights[i]
		}
	}
	shape, _ := b.bend(weights)
	work, moving := 0.0, 0.0
	for i, m := range masses {
		y := shape[i] / 1000
		work += weights[i] * y
		moving += m * y * y
	}
	return 30 / math.Pi * math.Sqrt(work/moving)
}
