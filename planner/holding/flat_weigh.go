package holding

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

const (
	kgPerM3ToMM3 = 1e-9
	steelKgM3    = 7850.0
	strapThick   = 8.0
	studLong     = 45.0 // with its nut and washer, as steel of the stud's diameter and a half
	studThick    = 9.0
)

// weight is a flat part's mass at a moment and where its centre lies.
func (s Shop) weight(at moment) mechanics.Weight {
	f, rim := at.flat, s.rim(at)
	area := rim.Area()
	cx, cy := rim.Centroid()
	mx, my := area*cx, area*cy
	thick := f.Front - f.Back
	volume := area * thick
	mx, my = mx*thick, my*thick
	for _, h := range widest(f.Holes) {
		z0, z1 := math.Max(h.Z0, f.Back), math.Min(h.Z1, f.Front)
		if z1 <= z0 {
			continue
		}
		v := math.Pi * h.Radius * h.Radius * (z1 - z0)
		volume, mx, my = volume-v, mx-v*h.X, my-v*h.Y
	}
	return mechanics.Weight{MassKG: volume * s.Part.Material.DensityKgM3 * kgPerM3ToMM3, XMM: mx / volume, YMM: my / volume}
}

// widest keeps of holes about one place the widest: a pilot is part of the bore that follows it.
func widest(holes []shape.Round) []shape.Round {
	var kept []shape.Round
next:
	for _, h := range holes {
		for i, k := range kept {
			if math.Hypot(h.X-k.X, h.Y-k.Y) <= sameSpot {
				if h.Radius > k.Radius {
					kept[i] = h
				}
				continue next
			}
		}
		kept = append(kept, h)
	}
	return kept
}

// clampWeights are the straps with their studs, each as a weight at its stud.
func clampWeights(list []plan.Clamp, toe float64) []mechanics.Weight {
	var out []mechanics.Weight
	for _, c := range list {
		long := strapLongTimes * c.StudMM
		mass := (toe*strapThick*long + math.Pi/4*studThick*studThick*studLong) * steelKgM3 * kgPerM3ToMM3
		a := c.AngleDeg * math.Pi / 180
		out = append(out, mechanics.Weight{MassKG: mass, XMM: c.XMM + c.StudMM*math.Cos(a), YMM: c.YMM + c.StudMM*math.Sin(a)})
	}
	return out
}

// Balancing by hand, the spindle out of gear, leaves what its bearings' drag hides: about 0.02 N m on a small lathe, so 2 kg mm, or a tenth of what there was.
// The force that a bench lathe may be shaken by is rule B-09's. Ours, no source.
const (
	leastLeft     = 2.0
	leftShare     = 0.1
	mostShakingN  = 30.0
	weightRadius  = 0.8 // of the plate's radius
	rpmRoundsDown = 10.0
)

// balance is what makes weights that turn about a place run quietly; plate is the radius that a counterweight can be bolted within.
func balance(weights []mechanics.Weight, x, y, plate float64) (plan.Balance, bool) {
	var b plan.Balance
	about := make([]mechanics.Weight, len(weights))
	for i, w := range weights {
		b.MassKg += w.MassKG
		about[i] = mechanics.Weight{MassKG: w.MassKG, XMM: w.XMM - x, YMM: w.YMM - y}
	}
	u, err := mechanics.UnbalanceOf(about)
	if err != nil {
		return b, false
	}
	b.UnbalanceKgMM, b.RadiusMM = u.KGMM, round1(plate*weightRadius)
	if b.WeightKg, b.AngleDeg, err = u.Counterweight(b.RadiusMM); err != nil {
		return b, false
	}
	b.LeftOverKgMM, b.ShakingN = math.Max(leastLeft, leftShare*u.KGMM), mostShakingN
	b.MostRPM = mostRPM(b.LeftOverKgMM)
	return b, true
}

// jawMass is what one jaw of a small four-jaw chuck weighs, and jawMiddle how far its middle lies beyond the edge that it presses on. Ours, no source.
const (
	jawMass   = 0.25
	jawMiddle = 15.0
)

// jawBalance is how work in the four-jaw runs: its jaws stand at different distances, and no counterweight can be bolted on.
func (s Shop) jawBalance(m Mount, at moment, jaws []jaw) plan.Balance {
	weights := []mechanics.Weight{s.weight(at)}
	for _, j := range jaws {
		a := j.AngleDeg * math.Pi / 180
		weights = append(weights, mechanics.Weight{MassKG: jawMass, XMM: j.XMM + jawMiddle*math.Cos(a), YMM: j.YMM + jawMiddle*math.Sin(a)})
	}
	b, _ := balance(weights, m.CentreX, m.CentreY, 1)
	b.LeftOverKgMM, b.WeightKg, b.RadiusMM, b.AngleDeg = math.Max(leastLeft, b.UnbalanceKgMM), 0, 0, 0
	b.MostRPM = mostRPM(b.LeftOverKgMM)
	b.MassKg, b.UnbalanceKgMM, b.LeftOverKgMM = round3(b.MassKg), round3(b.UnbalanceKgMM), round3(b.LeftOverKgMM)
	return b
}

// mostRPM is the speed at which what is left out of balance shakes with the most force.
func mostRPM(leftKgMM float64) float64 {
	cap, err := mechanics.Unbalance{KGMM: leftKgMM}.SpeedCapRPM(mostShakingN)
	if err != nil {
		return 0
	}
	return math.Floor(cap/rpmRoundsDown) * rpmRoundsDown
}

// turning is how work on a mandrel, on glue or in jaws on its rim runs, where no counterweight can be bolted on; nil where it is so well in balance that it does not matter.
func (s Shop) turning(m Mount, at moment) *plan.Balance {
	b, ok := balance([]mechanics.Weight{s.weight(at)}, m.CentreX, m.CentreY, 1)
	if !ok {
		return nil
	}
	b.MassKg, b.UnbalanceKgMM, b.WeightKg, b.RadiusMM, b.AngleDeg = round3(b.MassKg), round3(b.UnbalanceKgMM), 0, 0, 0
	b.LeftOverKgMM = b.UnbalanceKgMM
	if b.MostRPM = mostRPM(b.LeftOverKgMM); b.MostRPM == 0 || b.MostRPM >= s.fastest() {
		return nil
	}
	return &b
}

// fastest and slowest are the ends of the lathe's speeds, rev/min; 0 where they are not given.
func (s Shop) fastest() float64 {
	if n := len(s.Lathe.Speeds); n > 0 {
		return float64(s.Lathe.Speeds[n-1])
	}
	return float64(s.Lathe.FastestSpeed)
}

func (s Shop) slowest() float64 {
	if len(s.Lathe.Speeds) > 0 {
		return float64(s.Lathe.Speeds[0])
	}
	return float64(s.Lathe.SlowestSpeed)
}

// swings says why flat work cannot turn in a lathe about a place: it fouls the bed, or shakes at the slowest speed. On a faceplate and an angle plate their own rules
// say so.
func (s Shop) swings(m Mount, at moment) string {
	var b *plan.Balance
	switch m.Holding.Kind {
	case partspec.Faceplate, partspec.AnglePlate:
		return ""
	case partspec.FourJaw:
		if jaws, ok := s.fourJaws(m, at); ok {
			jawed := s.jawBalance(m, at, jaws)
			b = &jawed
		}
	default:
		b = s.turning(m, at)
	}
	reach := swing(s.rim(at), m.CentreX, m.CentreY)
	switch {
	case s.Lathe.Swing > 0 && 2*reach > float64(s.Lathe.Swing):
		return fmt.Sprintf("it swings Ø%s, over the lathe's %s", mm(2*reach), mm(float64(s.Lathe.Swing)))
	case b != nil && b.MostRPM < s.slowest():
		return fmt.Sprintf("%.1f kg mm out of balance, it may run at %.0f a minute, the lathe's slowest is %.0f (rule B-09)", b.UnbalanceKgMM, b.MostRPM, s.slowest())
	}
	return ""
}
