package holding

import (
	"fmt"
	"math"

	"catchplate/planner/plan"
)

// ledgeSetup fills in the holding on an angle plate.
func (s Shop) ledgeSetup(m Mount, at moment, setup *plan.Setup) {
	l := s.onLedge(m, at)
	f := footOf(s.Flat.Drawn.Edges[m.Base])
	_, height := f.sees(m.CentreX, m.CentreY)
	g := l.ledge
	g.X0, g.Y0, g.X1, g.Y1, g.Straps = tidyMM(g.X0), tidyMM(g.Y0), tidyMM(g.X1), tidyMM(g.Y1), tidyClamps(g.Straps)
	setup.Ledge, setup.RunOutMM = &g, m.RunOut
	setup.Bed = &plan.Bed{Kind: "parallels", HeightMM: l.gap, GapMM: l.gap}
	grip := &setup.Grip
	grip.Kind, grip.LeastN, grip.WorkingN, grip.Feel = "ledge", l.NeedN, math.Floor(l.HaveN), "both nuts a firm pull with a short spanner, in turns, a little at a time"
	grip.ErrorMM, grip.LimitMM, grip.Trust, grip.StressMPa = math.Ceil(l.lobe*1e4)/1e4, math.Round(l.limit*1e4)/1e4, string(l.sure.Trust), math.Round(l.stress)
	b := l.balance
	b.MassKg, b.UnbalanceKgMM, b.WeightKg, b.AngleDeg, b.LeftOverKgMM = round3(b.MassKg), round3(b.UnbalanceKgMM), round3(b.WeightKg), round1(b.AngleDeg), round3(b.LeftOverKgMM)
	if s.Rules.Has("B-09") {
		setup.Balance = &b
		setup.Why = append(setup.Why, plan.Reason{Text: fmt.Sprintf("%.1f kg mm out of balance with its angle plate: a counterweight of %.2f kg; the %.1f that balancing leaves shake with %.0f N at %.0f a minute", b.UnbalanceKgMM, b.WeightKg, b.LeftOverKgMM, b.ShakingN, b.MostRPM), Rule: "B-09"})
	}
	if s.Rules.Has("B-10") {
		setup.Why = append(setup.Why, plan.Reason{Text: fmt.Sprintf("%s and the bore lie one to the other as ledge and spindle do: %s apart, parallel within %.2f in 100; it swings Ø%.0f of %.0f; two straps press with %.0f N in all, the cuts ask %.0f, safety 2.5",
			m.Surface, mm(height), or(float64(m.Holding.Squareness), usualLedgeSlope), math.Ceil(2*l.Reach), l.Swing, grip.WorkingN, l.NeedN), Rule: "B-10"})
	}
	over := "Two straps, a toe on each side of the bore as the sketch shows, studs in the ledge close to the work, packing under the outer ends as high as the work."
	if g.Bar {
		over = "One bar over the top with a stud at each end, on two pads of card or soft sheet where the sketch shows the toes: nothing presses over the bore."
	}
	setup.How = append([]string{
		fmt.Sprintf("Bolt the angle plate to the faceplate, its ledge about %s from the spindle's axis; clock the ledge along the spindle: parallel within %.2f in 100.", mm(round1(height)), or(float64(m.Holding.Squareness), usualLedgeSlope)),
		fmt.Sprintf("Stand the work on %s, both faces clean; a stop of %s screwed to the faceplate behind it, clear of the bore by 2: it takes the feed.", m.Surface, mm(l.gap)),
		over,
		fmt.Sprintf("Tighten evenly, in turns: together they press with about %.0f N; %.0f must hold.", math.Floor(grip.WorkingN/10)*10, l.NeedN),
	}, s.howFound(m)...)
	setup.How = append(setup.How,
		fmt.Sprintf("Counterweight about %.2f kg at %s from the axis, opposite the heavy side (%.0f degrees from +X): move it until the plate, out of gear, stops anywhere.", b.WeightKg, mm(b.RadiusMM), b.AngleDeg),
		fmt.Sprintf("Turn it by hand one full revolution, the tool at each end of its travel; then no faster than %.0f a minute.", b.MostRPM))
}
