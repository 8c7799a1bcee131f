package steps

import (
	"fmt"
	"math"
)

// Check decides again, from the readings alone, what Fewest promises about t: places agree with readings, nothing past the curve
// (in rational numbers), leftover kept, each run one way, and the witnesses of the proof.
func (t Table) Check(r Request) error {
	j, err := newJob(r)
	if err != nil {
		return err
	}
	cuts, err := j.recut(t.Cuts)
	if err != nil {
		return err
	}
	if !j.feeler.keeps(cuts, r.LeftoverMM+2*tieMM) {
		return fmt.Errorf("the cuts leave more than %g mm somewhere", r.LeftoverMM)
	}
	if err := checkRuns(t.Cuts, t.Runs); err != nil {
		return err
	}
	if err := j.checkCrests(t, cuts); err != nil {
		return err
	}
	return j.checkWitnesses(t)
}

// checkCrests: the crests said are those that the cuts leave.
func (j *job) checkCrests(t Table, cuts []place) error {
	_, after, worst := j.feeler.crests(cuts, j.request.LeftoverMM+2*tieMM)
	for n, crest := range after {
		if math.Abs(crest-t.Cuts[n].CrestAfterMM) > tieMM {
			return fmt.Errorf("the crest after cut %d is not %g but %g", n+1, t.Cuts[n].CrestAfterMM, crest)
		}
	}
	if math.Abs(worst-t.WorstLeftoverMM) > tieMM {
		return fmt.Errorf("the leftover said, %g, is not the worst: %g", t.WorstLeftoverMM, worst)
	}
	return nil
}

// recut turns cuts back into places and tests each exactly.
func (j *job) recut(cuts []Cut) ([]place, error) {
	if len(cuts) == 0 {
		return nil, fmt.Errorf("the table has no cuts")
	}
	f := j.feeler
	var places []place
	for n, c := range cuts {
		if c.AcrossMM != f.across.mm(c.AcrossGrads) || c.DepthMM != f.depth.mm(c.DepthGrads) {
			return nil, fmt.Errorf("cut %d: the millimetres do not agree with the dial readings", n+1)
		}
		if n > 0 && c.AcrossGrads <= cuts[n-1].AcrossGrads {
			return nil, fmt.Errorf("cut %d: not farther across than the one before it", n+1)
		}
		if !f.clear(c.AcrossGrads, c.DepthGrads) {
			return nil, fmt.Errorf("cut %d: the cutter passes the curve", n+1)
		}
		places = append(places, place{across: c.AcrossGrads, depth: c.DepthGrads, x: f.across.at(c.AcrossGrads), y: -f.depth.at(c.DepthGrads)})
	}
	if places[0].across < j.first || places[len(places)-1].across > j.last {
		return nil, fmt.Errorf("the table leaves the room between the walls")
	}
	return places, nil
}

// checkRuns: every cut is in one run, and along a run no dial turns back and the depth never falls.
func checkRuns(cuts []Cut, runs []Run) error {
	seen := 0
	for n, r := range runs {
		step := 1
		if r.First > r.Last {
			step = -1
		}
		for i := r.First; ; i += step {
			if i < 0 || i >= len(cuts) {
				return fmt.Errorf("run %d points outside the table", n+1)
			}
			seen++
			if i == r.Last {
				break
			}
			if cuts[i+step].DepthGrads < cuts[i].DepthGrads {
				return fmt.Errorf("run %d: the depth dial turns back after cut %d", n+1, i+1)
			}
		}
	}
	if seen != len(cuts) {
		return fmt.Errorf("the runs hold %d cuts, the table %d", seen, len(cuts))
	}
	return nil
}

// checkWitnesses: no admissible cut brings two witnesses within the leftover, and a table said to be proved has as many, or the search
// for a shorter one fails again.
func (j *job) checkWitnesses(t Table) error {
	c := j.feeler.cover(j.places, j.request.LeftoverMM)
	for i, p := range c.places {
		held := 0
		for _, x := range t.WitnessAcrossMM {
			for _, s := range c.parts[i] {
				if s.a <= x && x <= s.b {
					held++
				}
			}
		}
		if held > 1 {
			return fmt.Errorf("the cut at reading %d across covers %d witnesses", p.across, held)
		}
	}
	if len(t.WitnessAcrossMM) > len(t.Cuts) {
		return fmt.Errorf("there are %d witnesses for %d cuts", len(t.WitnessAcrossMM), len(t.Cuts))
	}
	if t.ProvenFewest && len(t.WitnessAcrossMM) < len(t.Cuts) {
		if picked, proven, _ := c.fewest(); !proven || len(picked) != len(t.Cuts) {
			return fmt.Errorf("the table is said to be proved and is not")
		}
	}
	return nil
}
