package steps

import "math/big"

// dial turns readings into places of the cutter in the drawing.
type dial struct {
	originMM, travelMM float64
	origin, travel     *big.Rat
}

func newDial(a Axis) dial {
	d := dial{originMM: a.OriginMM, travelMM: a.TravelMM(), origin: decimal(a.OriginMM), travel: decimal(a.GraduationMM)}
	if a.Reads == ReadsDiameter {
		d.travel = quo(d.travel, big.NewRat(2, 1))
	}
	return d
}

// at is the place at a reading but for rounding errors, which the spans allow for.
func (d dial) at(grads int64) float64 { return d.originMM + float64(grads)*d.travelMM }

// exactAt is the place at a reading.
func (d dial) exactAt(grads int64) *big.Rat { return add(d.origin, d.moved(grads)) }

// moved is how far the slide goes for so many graduations.
func (d dial) moved(grads int64) *big.Rat { return mul(d.travel, new(big.Rat).SetInt64(grads)) }

// mm is exactAt as the nearest float64, so that it prints as people write it.
func (d dial) mm(grads int64) float64 {
	v, _ := d.exactAt(grads).Float64()
	return v
}
