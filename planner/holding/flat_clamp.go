package holding

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/process"
	"catchplate/planner/rules"
)

// What a clamp needs (rule B-07): its toe stays so far from a finished cut, and its strap from a tool (rule B-45). A toe bites at least leastBite onto the work.
// The bite, the stud's room and the step of the search are ours, no source.
const (
	toeFromCut  = 3.0
	toolRoom    = 2.0
	leastBite   = 4.0
	studRoom    = 8.0 // from the rim to the middle of the stud
	searchStep  = 2.0 // along the rim
	leastClamps = 3
	mostClamps  = 6
	usualToe    = 10.0
	usualClamps = 4
)

// spot is a place where a clamp may press.
type spot struct {
	plan.Clamp
	angle float64 // seen from the middle of the clamps, radians
}

// laid is the clamps found for some cuts.
type laid struct {
	rules.Clamped
	list []plan.Clamp
}

// clampKey is what of a mount and of the work decides where clamps stand: not how the place that runs true is found.
type clampKey struct {
	holding string
	machine partspec.MachineKind
	free    partspec.End
	surface string
	x, y    float64
	outline int
}

// clamping is where clamps stand.
type clamping struct {
	list   [][]plan.Clamp // the best three, four and so on, as far as there are
	gapDeg []float64
	any    bool    // a clamp finds a place somewhere
	least  float64 // gap between all the places there are
}

// clampsAt finds the clamps of a mount at a moment: clear of all that may be cut under them. The middle that they are spread about is the spindle's axis on a
// lathe, else the middle of the work. Answers are kept.
func (s Shop) clampsAt(m Mount, at moment) clamping {
	key := clampKey{m.Holding.Name, m.Machine, m.Free, m.Surface, m.CentreX, m.CentreY, s.outline(at)}
	if c, ok := s.clamps[key]; ok {
		return c
	}
	rim := s.rim(at)
	cx, cy := m.CentreX, m.CentreY
	if m.Machine != "" {
		cx, cy = rim.Centroid()
	}
	spots := s.clampSpots(m, rim, s.heldClear(m), cx, cy)
	sort.SliceStable(spots, func(i, j int) bool { return spots[i].angle < spots[j].angle })
	c := clamping{any: len(spots) > 0, least: widestGap(spots)}
	for n := leastClamps; n <= min(clampsOwned(m.Holding), mostClamps); n++ {
		if list, gap := spread(spots, n); list != nil {
			c.list, c.gapDeg = append(c.list, list), append(c.gapDeg, gap)
		}
	}
	s.clamps[key] = c
	return c
}

// clampsFor finds the fewest of a mount's clamps that hold against the cuts of a moment; all there are where none do.
func (s Shop) clampsFor(m Mount, at moment) laid {
	c := s.clampsAt(m, at)
	l := laid{Clamped: rules.Clamped{Owned: clampsOwned(m.Holding), SpreadDeg: c.least}}
	for i, list := range c.list {
		cx, cy := m.CentreX, m.CentreY
		if m.Machine != "" {
			cx, cy = middleOfClamps(list)
		}
		l.Placed, l.SpreadDeg, l.NeedN, l.HaveN = len(list), c.gapDeg[i], s.clampNeed(m, at, list, cx, cy), clampForce(m.Holding)*float64(len(list))
		l.list = slices.Clone(list)
		for k := range l.list {
			l.list[k].ForceN = clampForce(m.Holding)
		}
		if l.HaveN >= l.NeedN {
			break
		}
	}
	if l.Placed == 0 {
		l.Why = fmt.Sprintf("there is no place for three clamps spread about the cut: a toe wants %.0f of solid, supported metal, %.0f clear of the cut", leastBite, toeFromCut)
		if c.any {
			l.Why += fmt.Sprintf("; those there leave a gap of %.0f degrees", l.SpreadDeg)
		}
	}
	return l
}

func clampsOwned(h partspec.Holding) int {
	if h.Clamps > 0 {
		return h.Clamps
	}
	return usualClamps
}

// Bolt of a usual clamp and the torque a hand gives it (rule B-08: M6 at 6 N m pulls 5 kN); with the stud at a third of the strap the work gets two thirds.
const (
	clampBoltMM    = 6.0
	clampTorqueNm  = 6.0
	studToWork     = 1.0
	studToPacking  = 2.0
	clampFriction  = 0.15
	strapLongTimes = 3.0 // toe to packing, of toe to stud
)

// clampForce is what one clamp presses with.
func clampForce(h partspec.Holding) float64 {
	if h.ClampForce > 0 {
		return float64(h.ClampForce)
	}
	pull, err := mechanics.BoltPreloadN(clampTorqueNm, clampBoltMM)
	if err != nil {
		return 0
	}
	force, err := mechanics.StrapForceN(pull, studToWork, studToPacking)
	if err != nil {
		return 0
	}
	return force
}

// clampSpots lists where a clamp may press, in the order of the rim.
func (s Shop) clampSpots(m Mount, rim plane.Region, zones []zone, cx, cy float64) []spot {
	holes := s.finishedHoles()
	figure := rim.Figure()
	most := float64(m.Holding.ToeWidth)
	if most == 0 {
		most = usualToe
	}
	var list []spot
	for _, e := range rim.Edges {
		n := max(1, int(math.Floor(e.Length()/searchStep)))
		for k := range n {
			share := (float64(k) + 0.5) / float64(n)
			if ox, oy := e.Outward(share); s.onSpared(m, ox, oy) {
				continue
			}
			if p, ok := s.clampAt(e, share, most, figure, rim, holes, zones); ok && (m.Machine != "" || s.onPlate(m, p.Clamp)) {
				p.angle = math.Atan2(p.YMM-cy, p.XMM-cx)
				list = append(list, p)
			}
		}
	}
	return list
}

// onSpared reports whether a place of the rim faces as an edge that is to stay free does.
func (s Shop) onSpared(m Mount, ox, oy float64) bool {
	for _, i := range m.Spared {
		if ex, ey := s.Flat.Drawn.Edges[i].Outward(0.5); math.Abs(ox*ex+oy*ey) > facesJaws {
			return true
		}
	}
	return false
}

// clampAt is the clamp with the deepest bite that stands square to an edge there, its stud and its packing beside the work.
func (s Shop) clampAt(e plane.Edge, share, most float64, figure plane.Set, rim plane.Region, holes, zones []zone) (spot, bool) {
	x, y := e.At(share)
	ox, oy := e.Outward(share)
	for bite := most; bite >= leastBite; bite-- {
		r := bite / 2
		px, py := x-ox*r, y-oy*r
		if rim.Inside(px, py) < r-edgeNoise || clearOf(holes, px, py) < r || clearOf(zones, px, py) < math.Max(r+toeFromCut, r*math.Sqrt2+toolRoom) {
			continue
		}
		stud := r + studRoom
		strap := plane.Capsule{X0: px, Y0: py, X1: px + ox*stud*strapLongTimes, Y1: py + oy*stud*strapLongTimes, Radius: most / 2}
		if rim.Inside(px+ox*stud, py+oy*stud) > -studThick/2 || rim.Inside(strap.X1, strap.Y1) > -strap.Radius || strikes(strap, zones) {
			continue
		}
		return spot{Clamp: plan.Clamp{XMM: px, YMM: py, ToeMM: bite, AngleDeg: degrees(math.Atan2(oy, ox)), StudMM: stud}}, true
	}
	return spot{}, false
}

// edgeNoise lets a toe that just reaches the rim count as on the metal.
const edgeNoise = 1e-6

// strikes reports whether a strap comes within reach of a tool. Looked at from toe to packing in short steps, which can miss by no more than the steps' sag.
func strikes(strap plane.Capsule, zones []zone) bool {
	long, reach := strap.Length(), strap.Radius+toolRoom
	n := int(math.Ceil(long / strapStep))
	for _, z := range zones {
		if z.away((strap.X0+strap.X1)/2, (strap.Y0+strap.Y1)/2) > reach+long/2+edgeNoise {
			continue // no place of the strap is farther from its middle than half its length
		}
		for i := range n + 1 {
			t := float64(i) / float64(n)
			if z.away(strap.X0+t*(strap.X1-strap.X0), strap.Y0+t*(strap.Y1-strap.Y0)) < reach && (i > 0 || z.edge) {
				return true
			}
		}
	}
	return false
}

const strapStep = 1.0

func degrees(radians float64) float64 {
	return math.Mod(radians*180/math.Pi+360, 360)
}

// mostGapDeg is how far apart two neighbours of so many clamps may stand, seen from the middle (rule B-07: three at about 120 degrees; four at the corners of a long plate
// leave more, which is ours, no source).
func mostGapDeg(clamps int) float64 {
	if clamps <= 3 {
		return 130
	}
	return 150
}

// spread picks so many of the places, in the order of their angles, that leave no wide gap: about evenly from each on round, and of those the ones with the least gap,
// then the first. Nil: there are none.
func spread(sorted []spot, n int) ([]plan.Clamp, float64) {
	var best []spot
	bestGap := math.Inf(1)
	for first := range sorted {
		round := evenly(sorted, first, n)
		if gap := math.Max(widestGap(round), widestGap(fromTheirMiddle(round))); len(round) == n && gap <= mostGapDeg(n) && gap < bestGap-gapNoise {
			best, bestGap = round, gap
		}
	}
	var list []plan.Clamp
	for _, p := range best {
		list = append(list, p.Clamp)
	}
	return list, bestGap
}

// gapNoise keeps gaps that differ by rounding from deciding, in degrees.
const gapNoise = 1e-6

// evenly picks n places about equally far apart, beginning with the first.
func evenly(sorted []spot, first, n int) []spot {
	var picked []spot
	for k := range n {
		want := sorted[first].angle + float64(k)*2*math.Pi/float64(n)
		best, off := -1, math.Inf(1)
		for i, p := range sorted {
			if d := math.Abs(halfTurn(p.angle - want)); d < off-1e-12 && !near(picked, p) {
				best, off = i, d
			}
		}
		if best < 0 {
			return nil
		}
		picked = append(picked, sorted[best])
	}
	sort.SliceStable(picked, func(i, j int) bool { return picked[i].angle < picked[j].angle })
	return picked
}

// halfTurn is an angle of few turns as one of at most half a turn either way.
func halfTurn(a float64) float64 {
	for a < -math.Pi {
		a += 2 * math.Pi
	}
	for a > math.Pi {
		a -= 2 * math.Pi
	}
	return a
}

// fromTheirMiddle sees places from the middle of them all.
func fromTheirMiddle(list []spot) []spot {
	x, y := middleOf(list)
	out := append([]spot(nil), list...)
	for i, p := range out {
		out[i].angle = math.Atan2(p.YMM-y, p.XMM-x)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].angle < out[j].angle })
	return out
}

func middleOfClamps(list []plan.Clamp) (x, y float64) {
	for _, c := range list {
		x, y = x+c.XMM/float64(len(list)), y+c.YMM/float64(len(list))
	}
	return x, y
}

func middleOf(list []spot) (x, y float64) {
	for _, p := range list {
		x, y = x+p.XMM/float64(len(list)), y+p.YMM/float64(len(list))
	}
	return x, y
}

// near reports whether a clamp would stand in another's way.
func near(picked []spot, p spot) bool {
	for _, q := range picked {
		if math.Hypot(p.XMM-q.XMM, p.YMM-q.YMM) < usualToe*1.5 {
			return true
		}
	}
	return false
}

// widestGap is the widest angle between neighbours, in degrees; 360 for fewer than two.
func widestGap(sorted []spot) float64 {
	if len(sorted) < 2 {
		return 360
	}
	gap := 2*math.Pi - sorted[len(sorted)-1].angle + sorted[0].angle
	for i := 1; i < len(sorted); i++ {
		gap = math.Max(gap, sorted[i].angle-sorted[i-1].angle)
	}
	return gap * 180 / math.Pi
}

// clampNeed is the total clamping force that the heaviest cut asks: what turns the work about the middle of the clamps, and what pushes it aside.
func (s Shop) clampNeed(m Mount, at moment, list []plan.Clamp, cx, cy float64) float64 {
	radius := 0.0
	for _, c := range list {
		radius += math.Hypot(c.XMM-cx, c.YMM-cy) / float64(len(list))
	}
	need := 0.0
	for i, k := range at.tasks {
		way := at.ways[i]
		d := mechanics.ClampDemand{MainN: way.Force(at.light), CutRadiusMM: way.ForceAt, ClampRadiusMM: radius, Friction: clampFriction, Safety: safety}
		if !axial(s.Tasks[k].By(at.ways[i])) {
			d.PassiveN = d.MainN / 2
			if m.Machine != "" {
				d.PassiveN, d.CutRadiusMM = d.MainN, s.farthest(s.Tasks[k], way, cx, cy)
			}
		}
		if n, err := mechanics.LeastClampForce(d); err == nil {
			need = math.Max(need, n)
		}
	}
	return math.Ceil(need)
}

// axial reports whether a tool only twists the work and presses it down.
func axial(p plan.Process) bool {
	switch p {
	case plan.Spot, plan.Drill, plan.Ream, plan.Tap, plan.Counterbore, plan.Countersink, plan.SawHole:
		return true
	}
	return false
}

// farthest is how far from a place a task's cut gets.
func (s Shop) farthest(t process.Task, way process.Way, cx, cy float64) float64 {
	zones, all := s.worked(t, way)
	far := 0.0
	if all { // a face, to its corners
		far = swing(s.rawRim(), cx, cy)
	}
	for _, z := range zones {
		far = math.Max(far, math.Max(math.Hypot(z.X0-cx, z.Y0-cy), math.Hypot(z.X1-cx, z.Y1-cy)))
	}
	return far
}
