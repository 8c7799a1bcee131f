package steps

import (
	"fmt"
	"math"
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

	EqualStepsCount int // cuts in ConstantStep, the best table with equal steps; 0 if there is none
	ConstantStep    ConstantStep
	// CustomarySteps is the number of cuts by the usual quarter-millimetre steps across; 0 if those do not keep the leftover.
	CustomarySteps  int
	Rough           Rough
	LeftoverAreaMM2 float64 // section of all crests: what is left for the file
	Why             string
}

// mostPlaces bounds the work: this many readings across.
const mostPlaces = 500_000

// job is one request being answered.
type job struct {
	request Request
	feeler  *feeler
	places  []place
	first   int64 // outermost readings across that can matter
	last    int64
}

func newJob(r Request) (*job, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	s, err := newSurface(r.Curve, 2*r.Cutter.halfWidthMM())
	if err != nil {
		return nil, err
	}
	if err := reachable(s, r.Cutter); err != nil {
		return nil, err
	}
	j := &job{request: r, feeler: newFeeler(s, r)}
	return j, j.findPlaces()
}

// reachable refuses a hollow tighter than the nose: it can be bridged, never cut.
func reachable(s surface, c Cutter) error {
	for _, g := range s.pieces {
		if g.kind == lower && g.radius < c.noseMM() {
			return fmt.Errorf("a %v of radius %g cannot cut a hollow of radius %g: use a nose of radius %g or less", c.Kind, c.noseMM(), g.radius, g.radius)
		}
	}
	return nil
}

// findPlaces lists the deepest admissible cut at every reading across where the cutter meets the curve. No other cut is needed: a
// shallower one at the same reading clears less.
func (j *job) findPlaces() error {
	f, s := j.feeler, j.feeler.surface
	first, last := j.readings(s.lo, s.left, -1), j.readings(s.hi, s.right, 1)
	j.first, j.last = first, last
	if last < first {
		return fmt.Errorf("the cutter is wider than the room between the walls")
	}
	if last-first >= mostPlaces {
		return fmt.Errorf("%d readings across are too many (most %d): give a coarser graduation or a shorter curve", last-first+1, mostPlaces)
	}
	for i := first; i <= last; i++ {
		if k, ok := f.deepest(i); ok {
			j.places = append(j.places, place{across: i, depth: k, x: f.across.at(i), y: -f.depth.at(k)})
		}
	}
	return nil
}

// readings returns the outermost reading that can matter at an end of the curve: within a wall, or overhanging the end.
func (j *job) readings(end float64, b Beyond, side int) int64 {
	f := j.feeler
	half := f.flat + f.nose
	limit := end + float64(side)*half
	if b == Wall {
		limit = end - float64(side)*half
	}
	reading := (limit - f.across.originMM) / f.across.travelMM
	if b != Wall {
		return int64(math.Floor(reading)) + int64((1+side)/2)
	}
	return f.insideWall(int64(math.Round(reading)), end, side)
}

// insideWall moves a reading until the cutter's side is within the wall, exactly, and no farther than needed.
func (f *feeler) insideWall(reading int64, end float64, side int) int64 {
	inside := func(reading int64) bool {
		x := f.across.exactAt(reading)
		half := add(f.flatExact, f.noseExact)
		if side > 0 {
			return add(x, half).Cmp(decimal(end)) <= 0
		}
		return sub(x, half).Cmp(decimal(end)) >= 0
	}
	for !inside(reading) {
		reading -= int64(side)
	}
	for inside(reading + int64(side)) {
		reading += int64(side)
	}
	return reading
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
	best := loose
	strict := j.feeler.cover(j.places, r.LeftoverMM-tieMM)
	for _, c := range []coverage{strict.toEnds(j.feeler.surface), strict} {
		if within, _ := c.greedy(); len(within) == len(picked) {
			best, picked = c, within
			break
		}
	}
	twin, mirrored := j.mirrored(best, picked)
	if mirrored {
		picked = twin
	}
	t := j.table(best, picked)
	t.ProvenFewest = proven
	t.WitnessAcrossMM = loose.witnesses([]stretch{{loose.lo, loose.hi}})
	t.Mirrored, t.MirrorAcrossMM = mirrored, (j.feeler.surface.lo+j.feeler.surface.hi)/2
	j.compare(&t, best)
	t.Why = t.why()
	t.Rough, err = j.rough()
	return t, err
}

// why says in one or two sentences what was proved and what it saves.
func (t Table) why() string {
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
		b.WriteString(" No equal steps keep the leftover.")
	}
	return b.String()
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
	start, after, worst := j.feeler.crests(cuts, c.leftover+tieMM)
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
			step := compare(cuts[last+1].DepthGrads, cuts[last].DepthGrads)
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
		run.AcrossSign = compare(int64(run.Last), int64(run.First))
		out = append(out, run)
		first = last + 1
	}
	return out
}

func compare(a, b int64) int {
	switch {
	case a > b:
		return 1
	case a < b:
		return -1
	}
	return 0
}

// stuck explains why no cut reaches the curve at x closely enough.
func (j *job) stuck(x float64) error {
	h := j.request.LeftoverMM
	for _, g := range j.feeler.surface.pieces {
		if flat := 2 * j.feeler.flat; g.kind == lower && g.lo <= x && x <= g.hi && flat > 0 {
			if widest := 2 * math.Sqrt(h*(2*g.radius-h)); h < g.radius && flat > widest {
				return fmt.Errorf("a flat %.3g mm wide cannot get within %g mm of the bottom of a hollow of radius %g: use one narrower than %.3f mm, or a round nose",
					flat, h, g.radius, widest)
			}
		}
	}
	return fmt.Errorf("at %.3f mm across no cut on these graduations comes within %g mm of the curve: use a smaller nose or a narrower cutter, finer graduations, or allow more leftover", x, h)
}
