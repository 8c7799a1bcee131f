package steps

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Cut is one plunge: set across, then feed to depth.
type Cut struct {
	AcrossGrads, DepthGrads int64   // dial readings in graduations from their zero
	AcrossMM, DepthMM       float64 // place of the cutter's reference point in the drawing
	CrestAfterMM            float64 // leftover between this cut and the next one across, or the end of the curve
	Steep                   bool    // the curve is past 45 degrees here: the depth dial leads and the across dial follows
}

// Run is a part of the table in which each axis moves one way only, always going deeper. Take up the backlash of both
// slides before its first cut. First and Last index Cuts; First > Last means that the run is walked backwards.
type Run struct {
	First, Last           int
	AcrossSign, DepthSign int // +1 or -1: which way the readings go; 0 where one does not change
}

// Table is the answer: cuts in order of across, and what they leave.
type Table struct {
	Cuts            []Cut
	Runs            []Run // in cutting order
	CrestBeforeMM   float64
	WorstLeftoverMM float64

	ProvenFewest bool
	// WitnessAcrossMM is the proof: so many points of the curve, no two of which any one cut on these graduations can bring
	// within the leftover. Where the proof came by search it is shorter than the table.
	WitnessAcrossMM []float64
	// Mirrored says that the readings on both sides of MirrorAcrossMM are the same with the sign turned.
	Mirrored       bool
	MirrorAcrossMM float64

	// ConstantStep is the shortest table found in which one dial leads by a constant step.
	ConstantStep ConstantStep
	// EqualStepsCount is the number of cuts by the best equal steps across (in depth where the curve is past 45 degrees), and
	// CustomarySteps by the usual quarter-millimetre steps across; 0 if no such steps were found that keep the leftover.
	EqualStepsCount, CustomarySteps int

	Rough           Rough
	LeftoverAreaMM2 float64 // section of all crests: what is left for the file
	Why             string
}

// Fewest returns the shortest table of cuts on the graduations that keeps the leftover and never passes the curve.
func Fewest(r Request) (Table, error) {
	j, err := newJob(r)
	if err != nil {
		return Table{}, err
	}
	// A table that keeps the leftover less a tie keeps it for certain; what no table can do with a tie more, none can do.
	loose := j.feeler.cover(j.places, r.LeftoverMM+tieMM)
	picked, proven, stuckAt := loose.fewest()
	if picked == nil {
		return Table{}, j.stuck(stuckAt)
	}
	base, best := loose, loose
	strict := j.feeler.cover(j.places, r.LeftoverMM-tieMM)
	if within, _, _ := strict.fewest(); len(within) == len(picked) {
		base, best, picked = strict, strict, within
	}
	full := strict.toEnds(j.feeler.surface)
	if within, _ := full.greedy(); len(within) == len(picked) {
		base, best, picked = strict, full, within
	}
	twin, mirrored := j.mirrored(best, picked)
	if mirrored {
		picked = twin
	}
	t := j.table(best, picked)
	t.ProvenFewest = proven
	t.WitnessAcrossMM = slices.Collect(loose.witnesses([]stretch{{loose.lo, loose.hi}}))
	t.Mirrored, t.MirrorAcrossMM = mirrored, (j.feeler.surface.lo+j.feeler.surface.hi)/2
	j.compare(&t, base)
	t.Why = t.why()
	t.Rough, err = j.rough()
	return t, err
}

// why says in one or two sentences what was proved and what it saves.
func (t Table) why() string {
	if len(t.Cuts) == 1 {
		return "One cut serves the whole curve."
	}
	var b strings.Builder
	switch {
	case t.ProvenFewest && len(t.WitnessAcrossMM) == len(t.Cuts):
		fmt.Fprintf(&b, "No cut on these graduations serves two of %d chosen points of the curve, so no table is shorter than %d.", len(t.Cuts), len(t.Cuts))
	case t.ProvenFewest:
		fmt.Fprintf(&b, "Every table of fewer than %d cuts was ruled out by search.", len(t.Cuts))
	default:
		fmt.Fprintf(&b, "No table has fewer than %d cuts; whether %d is the fewest was not settled.", len(t.WitnessAcrossMM), len(t.Cuts))
	}
	if n := t.EqualStepsCount; n > 0 {
		fmt.Fprintf(&b, " The best equal steps need %d.", n)
	} else {
		b.WriteString(" No equal steps were found that keep the leftover.")
	}
	return b.String()
}

// Part is the table without the cuts before first and after last, for work on which those find no metal. As many witnesses go at
// either end as cuts: of those that stay still no cut serves two, so that they are the proof of the part. A number that was
// proved by search was proved for the whole only.
func (t Table) Part(first, last int) Table {
	before, after := first, len(t.Cuts)-1-last
	if before == 0 && after == 0 {
		return t
	}
	for _, cut := range t.Cuts[:first] {
		t.CrestBeforeMM = max(t.CrestBeforeMM, cut.CrestAfterMM)
	}
	t.ProvenFewest = t.ProvenFewest && len(t.WitnessAcrossMM) == len(t.Cuts)
	left := min(before, len(t.WitnessAcrossMM))
	t.WitnessAcrossMM = t.WitnessAcrossMM[left:max(left, len(t.WitnessAcrossMM)-after)]
	var kept []Run
	for _, r := range t.Runs {
		if max(r.First, r.Last) < first || min(r.First, r.Last) > last {
			continue
		}
		r.First, r.Last = min(max(r.First, first), last)-first, min(max(r.Last, first), last)-first
		kept = append(kept, r)
	}
	t.Cuts, t.Runs = t.Cuts[first:last+1], kept
	t.Mirrored = t.Mirrored && before == after
	t.Why = t.why()
	return t
}

// compare adds the best tables that people would make by hand.
func (j *job) compare(t *Table, c coverage) {
	t.CustomarySteps = j.customary(c)
	for _, by := range []lead{acrossLeads, steeperLeads, depthLeads} {
		l := j.newLadder(c, by)
		top, step := l.best()
		if top == nil {
			continue
		}
		if by == steeperLeads {
			t.EqualStepsCount = top.count
		}
		if best := len(t.ConstantStep.Cuts); best == 0 || top.count < best {
			picked, zones := l.way(top, step)
			made := j.table(l.coverage, picked)
			t.ConstantStep = ConstantStep{Cuts: made.Cuts, Runs: made.Runs, StepGrads: int64(step), Zones: zones, WorstLeftoverMM: made.WorstLeftoverMM}
		}
	}
}

// table fills in what the picked places, in order of across, leave.
func (j *job) table(c coverage, picked []int) Table {
	var cuts []place
	for _, i := range picked {
		cuts = append(cuts, c.places[i])
	}
	start, after, worst := j.feeler.crests(cuts, j.request.LeftoverMM+2*tieMM)
	t := Table{CrestBeforeMM: start, WorstLeftoverMM: worst, LeftoverAreaMM2: j.feeler.leftoverArea(cuts)}
	for n, p := range cuts {
		t.Cuts = append(t.Cuts, Cut{AcrossGrads: p.across, DepthGrads: p.depth, AcrossMM: j.feeler.across.mm(p.across), DepthMM: j.feeler.depth.mm(p.depth),
			CrestAfterMM: after[n], Steep: j.zoneOf(c, picked[n], steeperLeads) != 0})
	}
	t.Runs = runs(t.Cuts)
	return t
}

// runs splits cuts where the depth turns.
func runs(cuts []Cut) []Run {
	var out []Run
	for first := 0; first < len(cuts); {
		last, sign := first, 0
		for ; last+1 < len(cuts); last++ {
			step := cmp.Compare(cuts[last+1].DepthGrads, cuts[last].DepthGrads)
			if step != 0 && sign != 0 && step != sign {
				break
			}
			if step != 0 {
				sign = step
			}
		}
		run := Run{First: first, Last: last, DepthSign: sign * sign}
		if sign < 0 {
			run.First, run.Last = last, first
		}
		run.AcrossSign = cmp.Compare(run.Last, run.First)
		out = append(out, run)
		first = last + 1
	}
	return out
}
