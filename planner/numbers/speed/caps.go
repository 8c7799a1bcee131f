package speed

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
)

// Jaws says how a chuck is set up.
type Jaws string

// The ways to set up a chuck.
const (
	JawsNormal   Jaws = "normal"
	JawsReversed Jaws = "reversed" // or near full opening
	JawsHeavy    Jaws = "heavy"    // heavy or special jaws
)

// An unmarked chuck may have this rim speed in m/s, and no more than this speed
// whatever its size (trade rule B-29, opinion).
const (
	unmarkedRimMPerS             = 20.0
	unmarkedTop      units.Speed = 4000
)

// ChuckCap is the cap of a chuck of that diameter: the speed marked on it, or
// with marked 0 that of a rim at 20 m/s in round hundreds, at most 4000. Jaws
// reversed or near full opening take two thirds of it, heavy jaws half.
func ChuckCap(diameter units.Length, marked units.Speed, jaws Jaws) (Cap, error) {
	if !(diameter > 0) || !(marked >= 0) {
		return Cap{}, fmt.Errorf("a chuck needs a diameter above 0 and a marked speed of 0 or more")
	}
	c := Cap{What: "the speed marked on the chuck", RPM: marked, Rule: "B-29", Source: "the chuck's own mark"}
	if marked == 0 {
		rim := 60_000 * unmarkedRimMPerS / (math.Pi * float64(diameter))
		c.RPM = min(unmarkedTop, units.Speed(math.Floor(rim/100)*100))
		c.What, c.Source = "the chuck, which has no marked speed", "rim at 20 m/s, opinion"
	}
	switch jaws {
	case JawsReversed:
		c.RPM, c.What = c.RPM*2/3, c.What+", with jaws reversed or wide open"
	case JawsHeavy:
		c.RPM, c.What = c.RPM/2, c.What+", with heavy jaws"
	case JawsNormal:
	default:
		return Cap{}, fmt.Errorf("jaws are normal, reversed or heavy, not %q", jaws)
	}
	return c, nil
}

// BalanceCap is the speed at which work out of balance by kgMM (mass times
// distance from the axis) shakes the machine with that force: the force is
// U n^2 / 91 189 newtons. A bench lathe of up to 100 kg takes 30 N, a heavier
// one 100 N (opinion).
func BalanceCap(kgMM float64, shaking units.Force) (Cap, error) {
	if !(kgMM > 0) || !(shaking > 0) {
		return Cap{}, fmt.Errorf("a balance cap needs an imbalance and a force above 0")
	}
	n := math.Sqrt(float64(shaking) * newtonRPM2 / kgMM)
	return Cap{What: "the balance of the work", RPM: units.Speed(math.Floor(n/10) * 10), Source: "force U n^2 / 91 189, computed; limit opinion"}, nil
}

// newtonRPM2 turns kg mm and newtons into rev/min squared: 1000 (60 / 2 pi)^2.
const newtonRPM2 = 1000 * 60 * 60 / (4 * math.Pi * math.Pi)

// GluedCap is the cap of work held by glue or solder: 60 % of the wanted speed
// (trade rule C-02).
func GluedCap(w Want) Cap {
	return Cap{What: "the glued holding", RPM: w.RPM * 0.6, Rule: "C-02", Source: "common practice, no source"}
}
