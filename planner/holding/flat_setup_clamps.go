package holding

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/process"
)

// clampedGrip fills in what clamps hold with.
func clampedGrip(l laid, setup *plan.Setup) {
	g := &setup.Grip
	g.Kind, g.LeastN, g.WorkingN, g.Feel = "clamps", l.NeedN, math.Floor(l.HaveN), "each nut a firm pull with a short spanner, in turns, a little at a time"
	setup.Clamps = tidyClamps(l.list)
	setup.Why = append(setup.Why, plan.Reason{Text: fmt.Sprintf("%d clamps on solid metal, no two more than %.0f degrees apart, press with %.0f N in all; the cuts ask %.0f, safety 2.5", l.Placed, math.Ceil(l.SpreadDeg), g.WorkingN, l.NeedN), Rule: "B-07"})
}

func (s Shop) tableSetup(m Mount, at moment, setup *plan.Setup) {
	l := s.clampsFor(m, at)
	clampedGrip(l, setup)
	setup.Bed = &plan.Bed{Kind: "plate"}
	setup.How = []string{"Table and work wiped clean, every burr off the lower face."}
	if board := s.backing(m, at); board > 0 {
		setup.Bed = &plan.Bed{Kind: "backing board", HeightMM: board, GapMM: board}
		setup.How = append(setup.How, fmt.Sprintf("A flat board of MDF or hardwood %s thick under the whole of it, for what comes through.", mm(board)))
	}
	if m.AskewDeg != 0 {
		setup.AskewDeg, setup.Locates = m.AskewDeg, m.Surface
		setup.How = append(setup.How, process.AskewHow(s.Part, m.AskewDeg)...)
	}
	setup.How = append(setup.How, s.howClamped(l, setup.Bed.HeightMM)...)
	if s.Rules.Has("B-34") {
		setup.How = append(setup.How, "An end stop against the cut's push; never take a clamp off before the next one is on.")
		setup.Why = append(setup.Why, plan.Reason{Text: "all edges stay free, clamps on solid metal", Rule: "B-34"})
	}
	if m.AskewDeg == 0 {
		setup.How = append(setup.How, s.howFound(m)...)
	}
}

// howClamped tells where the clamps stand and how they are set.
func (s Shop) howClamped(l laid, under float64) []string {
	how := []string{fmt.Sprintf("%d clamps where the sketch shows them, no two more than %.0f degrees apart, each toe at least %.0f clear of the cut, card under it on a finished face.", l.Placed, math.Ceil(l.SpreadDeg), toeFromCut)}
	if s.Rules.Has("B-08") {
		how = append(how, fmt.Sprintf("Stud at one third of the strap from the work, packing 1 to 2 higher than its upper face (%s): the strap level or a shade down at the work.", mm(under+s.Length+1.5)))
	}
	return append(how, fmt.Sprintf("Tighten evenly, in turns: together they press with about %.0f N; %.0f must hold.", math.Floor(l.HaveN/10)*10, l.NeedN))
}

// backing is how thick a board must be for what comes through it: 0.3 of the widest tool and 3, and more than the longest point (rule B-35); 0 where nothing does.
func (s Shop) backing(m Mount, at moment) float64 {
	if !s.Rules.Has("B-35") {
		return 0
	}
	widest := 0.0
	for i, k := range at.tasks {
		zones, _ := s.worked(s.Tasks[k], at.ways[i])
		for _, z := range zones {
			if z.through {
				widest = math.Max(widest, 2*z.Radius)
			}
		}
	}
	if widest == 0 {
		return 0
	}
	return math.Ceil(math.Max(math.Max(leastBoard, backingShare*widest+backingMore), s.comesOut(m, at)+clearBehind))
}

// Backing for what comes through (rule B-35): a board's figures, and what stays clear behind the tools where work is packed off a plate. The thinnest board is
// ours, no source.
const (
	leastBoard   = 6.0
	backingShare = 0.3
	backingMore  = 3.0
	clearBehind  = 3.0
	leastGap     = 6.0
)

// comesOut is how far the tools of a moment come out behind the held face.
func (s Shop) comesOut(m Mount, at moment) float64 {
	out := 0.0
	for _, w := range at.ways {
		if m.Free == partspec.Right {
			out = math.Max(out, at.flat.Back-w.Span[0])
		} else {
			out = math.Max(out, w.Span[1]-at.flat.Front)
		}
	}
	return out
}

// gapBehind is how high packing stands between plate or chuck and work, so that every tool comes out free.
func (s Shop) gapBehind(m Mount, at moment) float64 {
	if !s.Rules.Has("B-35") {
		return 0
	}
	return math.Ceil(math.Max(leastGap, s.comesOut(m, at)+clearBehind))
}

func (s Shop) plateSetup(m Mount, at moment, setup *plan.Setup) {
	p := s.plated(m, at)
	clampedGrip(p.laid, setup)
	gap := s.gapBehind(m, at)
	setup.Bed = &plan.Bed{Kind: "parallels", HeightMM: gap, GapMM: gap, Under: tidyStrips(underToes(p.list))}
	b := p.balance
	b.MassKg, b.UnbalanceKgMM, b.WeightKg, b.AngleDeg = round3(b.MassKg), round3(b.UnbalanceKgMM), round3(b.WeightKg), round1(b.AngleDeg)
	b.LeftOverKgMM = round3(b.LeftOverKgMM)
	if s.Rules.Has("B-06") {
		setup.Why = append(setup.Why, plan.Reason{Text: fmt.Sprintf("it reaches %.0f from the axis, the plate %.0f; its centre of mass lies %.0f off", p.Reach, p.Diameter/2, p.OffCentre), Rule: "B-06"})
	}
	if s.Rules.Has("B-09") {
		setup.Balance = &b
		setup.Why = append(setup.Why, plan.Reason{Text: fmt.Sprintf("%.1f kg mm out of balance with its clamps: a counterweight of %.2f kg; the %.1f that balancing leaves shake with %.0f N at %.0f a minute", b.UnbalanceKgMM, b.WeightKg, b.LeftOverKgMM, b.ShakingN, b.MostRPM), Rule: "B-09"})
	}
	setup.RunOutMM = m.RunOut
	setup.How = []string{
		"Skim or check the faceplate; wipe plate and work, thin paper between them for grip.",
		fmt.Sprintf("Packing %s high, all of one height, each piece whole and screwed to the plate, under every clamp's toe: the tool's nose needs at least 3 clear behind the bore.", mm(gap)),
	}
	setup.How = append(setup.How, s.howClamped(p.laid, gap)...)
	setup.How = append(setup.How, "A peg against the turning direction, touching an edge of the work.")
	setup.How = append(setup.How, s.howFound(m)...)
	setup.How = append(setup.How,
		fmt.Sprintf("Counterweight about %.2f kg at %s from the axis, opposite the heavy side (%.0f degrees from +X): move it until the plate, out of gear, stops anywhere.", b.WeightKg, mm(b.RadiusMM), b.AngleDeg),
		fmt.Sprintf("Turn it by hand one full revolution, the tool at each end of its travel; then no faster than %.0f a minute.", b.MostRPM))
}

// underToes is a piece of packing under each clamp, as large as fits under its toe.
func underToes(list []plan.Clamp) []plan.Strip {
	var under []plan.Strip
	for _, c := range list {
		h := c.ToeMM / 2
		under = append(under, plan.Strip{X0: c.XMM - h, Y0: c.YMM - h, X1: c.XMM + h, Y1: c.YMM + h})
	}
	return under
}
