package holding

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
)

// plateShare is a faceplate's diameter as a part of the swing, where the workshop does not say; plateRim is the metal outside its slots. Common practice, no source.
const (
	plateShare = 0.9
	plateRim   = 4.0
)

// onFaceplate lists work clamped on the faceplate, for every place that is turned about, either face outward (rule B-06).
func (s Shop) onFaceplate(h partspec.Holding) []Mount {
	var mounts []Mount
	for _, c := range s.centres() {
		for _, free := range faces() {
			m := Mount{Holding: h, Free: free, Surface: "its " + FaceName(free.Other()), CentreX: c.x, CentreY: c.y, About: c.name, Z1: s.Length, Minutes: s.minutes(h), RunOut: s.runOut(h, false)}
			mounts = append(mounts, s.found(m)...)
		}
	}
	return mounts
}

// plateRadius is the radius within which a faceplate's slots lie.
func (s Shop) plateRadius(h partspec.Holding) float64 {
	return or(float64(h.Diameter), plateShare*float64(s.Lathe.Swing))/2 - plateRim
}

// plated is how work would run on the faceplate.
type plated struct {
	rules.PlateFacts
	laid
	balance plan.Balance
}

func (s Shop) plated(m Mount, at moment) plated {
	p := plated{laid: s.clampsFor(m, at)}
	rim := s.rim(at)
	p.Diameter = 2 * (s.plateRadius(m.Holding) + plateRim)
	p.Swing = float64(s.Lathe.Swing)
	p.Reach = swing(rim, m.CentreX, m.CentreY)
	p.Raw = s.seatRaw(m, at)
	work := s.weight(at)
	p.OffCentre = math.Hypot(work.XMM-m.CentreX, work.YMM-m.CentreY)
	weights := append([]mechanics.Weight{work}, clampWeights(p.list, or(float64(m.Holding.ToeWidth), usualToe))...)
	p.balance, _ = balance(weights, m.CentreX, m.CentreY, s.plateRadius(m.Holding))
	p.Unbalance, p.WeightKg, p.MostRPM = p.balance.UnbalanceKgMM, p.balance.WeightKg, p.balance.MostRPM
	p.Slowest = float64(s.Lathe.SlowestSpeed)
	if len(s.Lathe.Speeds) > 0 {
		p.Slowest = float64(s.Lathe.Speeds[0])
	}
	return p
}

// onPlate reports whether a clamp's stud and packing stand on the faceplate.
func (s Shop) onPlate(m Mount, c plan.Clamp) bool {
	a := c.AngleDeg * math.Pi / 180
	far := strapLongTimes * c.StudMM
	return math.Hypot(c.XMM+far*math.Cos(a)-m.CentreX, c.YMM+far*math.Sin(a)-m.CentreY) <= s.plateRadius(m.Holding)
}
