package steps

import (
	"fmt"
	"math"
)

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
	if err := flanksClear(s, r.Cutter); err != nil {
		return nil, err
	}
	if lo, hi := s.within(r.LeftoverMM + tieMM); lo >= hi {
		return nil, fmt.Errorf("a leftover of %g mm is as large as the curve itself: allow less", r.LeftoverMM)
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
