package planner

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/process"
)

// onMachine reports whether any way of a task is done on a machine: what is done by hand leaves nothing to compare.
func onMachine(t process.Task) bool {
	for _, w := range t.Ways {
		if w.Machine != partspec.Bench {
			return true
		}
	}
	return false
}

// flat fills in what is known of an option for flat work: clamping against the cut, the jaws' squeeze with the waste that would save it, and the balance.
func (c comparer) flat(f *found) {
	k := f.figures.Case
	if k.Gone || k.Elsewhere {
		return
	}
	switch {
	case k.Clamped != nil:
		f.LeastN, f.WorkingN = k.Clamped.NeedN, math.Floor(k.Clamped.HaveN)
	case k.Vice != nil:
		f.LeastN, f.WorkingN, f.GripMM = k.Vice.NeedN, k.Vice.HaveN, tidy(k.Vice.Grip)
	}
	if p := k.Plate; p != nil {
		f.UnbalanceKgMM, f.CounterweightKg, f.MostRPM = round2(p.Unbalance), round2(p.WeightKg), p.MostRPM
	}
	if l := k.Ledge; l != nil {
		f.LeastN, f.WorkingN = l.NeedN, math.Floor(l.HaveN)
		f.UnbalanceKgMM, f.CounterweightKg, f.MostRPM = round2(l.Unbalance), round2(l.WeightKg), l.MostRPM
	}
	if j := k.Jaws; j != nil {
		f.UnbalanceKgMM = round2(j.Unbalance)
		if f.MostRPM == 0 || j.MostRPM < f.MostRPM {
			f.MostRPM = j.MostRPM
		}
	}
	if k.LimitMM <= 0 {
		return
	}
	f.LimitMM, f.YieldMPa, f.WallMM = k.LimitMM, c.ctx.Part.Material.YieldMPa.Low, tidy(math.Round(f.figures.Wall*100)/100)
	f.ErrorMM, f.BandPercent, f.Trust, f.TrustWhy, f.StressMPa = f.figures.LobeMM, f.figures.Sure.BandPercent, f.figures.Trust, f.figures.Sure.Why, f.figures.StressMPa
	f.SharePercent = 100 * f.ErrorMM / f.LimitMM
	if k.WasteMM > 0 && !math.IsInf(k.WasteMM, 0) {
		f.WasteMM = math.Ceil(k.WasteMM*10) / 10
	}
	if f.figures.Sure.Trust != mechanics.TrustNone && f.figures.MostN > 0 {
		f.MostN, f.MostBy = f.figures.MostN, "tolerance"
	}
}

func round2(v float64) float64 { return math.Round(v*100) / 100 }
