package holding

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/process"
	"catchplate/planner/rules"
)

// A machine vice where the workshop does not say. Common practice, no source.
const (
	usualOpening   = 80.0
	usualViceJaw   = 80.0
	usualJawHeight = 25.0
	viceLightN     = 500.0
	viceFirmN      = 5000.0
	leastContact   = 10.0 // of an edge in the jaws; so much lies free between the parallels, or a third of the work between thin ones
	thinParallel   = 3.0
	flush          = 0.5  // that work stands above the jaws when nothing has to clear them
	squareLift     = 0.02 // out of square over 100 mm (rule B-02)
)

// inVice lists work on parallels in a machine vice, gripped across X or across Y, either face up (rule B-33). Where edges beside the jaws are cut, the jaws stand
// clear of those at one end or at the other.
func (s Shop) inVice(h partspec.Holding) []Mount {
	var mounts []Mount
	for _, k := range s.uprights(h) {
		for _, free := range faces() {
			for _, press := range []float64{0, 90} {
				edges := "its left and right edges"
				if press == 90 {
					edges = "its bottom and top edges"
				}
				m := Mount{Holding: h, Machine: k, Free: free, Surface: edges, PressDeg: press, Z0: 0, Z1: s.Length, Minutes: s.minutes(h), Locate: s.atDatum(), Along: s.edgeError()}
				mounts = append(mounts, m)
				sin, cos := math.Sincos(press * math.Pi / 180)
				for _, end := range []float64{-1, 1} {
					m.Spared = s.milledEdges(k, func(ox, oy float64) bool { return (oy*cos-ox*sin)*end > facesJaws })
					if len(m.Spared) > 0 {
						m.Surface, m.EdgesOnly = edges+", "+endName(press, end), false
						m.EdgesOnly = !s.roomFor(m)
						mounts = append(mounts, m)
					}
				}
			}
		}
	}
	return mounts
}

// roomFor reports whether jaws and parallels find room clear of all that could be done in a mount, on the blank and on the finished outline. Where they do not,
// because holes lie over the parallels, the mount still serves for its edges.
func (s Shop) roomFor(m Mount) bool {
	zones := turn(s.clearZones(m), m.PressDeg)
	for _, rim := range []plane.Region{s.rawRim(), s.Flat.Drawn} {
		if l := liesAs(m, rim, zones); l.facing && l.wide == 0 {
			return false
		}
	}
	return true
}

// endName tells the edge of the work that stands out of the jaws.
func endName(press, end float64) string {
	switch {
	case press == 0 && end < 0:
		return "bottom edge standing out"
	case press == 0:
		return "top edge standing out"
	case end < 0:
		return "right edge standing out"
	}
	return "left edge standing out"
}

// pinch is how a vice holds the work.
type pinch struct {
	rules.ViceFacts
	presses []plan.Press
	under   []plan.Strip
	wide    float64 // of a parallel
	gripMM  float64
}

// grips works out how a vice holds the work for the cuts of a moment.
func (s Shop) grips(m Mount, at moment) pinch {
	var p pinch
	l := s.liesIn(m, at)
	if !l.facing {
		p.Why = "no two parallel straight edges face its jaws"
		return p
	}
	h, lo, hi, y0, y1 := m.Holding, l.lo, l.hi, l.y0, l.y1
	p.Opening, p.Across = or(float64(h.Opening), usualOpening), hi-lo
	all := false
	for i, k := range at.tasks {
		_, whole := s.worked(s.Tasks[k], at.ways[i])
		all = all || whole
	}
	if y1-y0 < leastContact {
		p.Why = fmt.Sprintf("only %.0f of the edges would lie in the jaws clear of the tool; at least %.0f", max(0, y1-y0), leastContact)
		return p
	}
	s.depthInVice(&p, m, at, all)
	p.presses = []plan.Press{press(lo, (y0+y1)/2, 180, y1-y0, m.PressDeg), press(hi, (y0+y1)/2, 0, y1-y0, m.PressDeg)}
	if p.wide, p.under = l.wide, slices.Clone(l.under); l.wide == 0 {
		p.Why = "a tool comes through where the parallels must lie"
	}
	p.HaveN = viceFirmN
	if h.GripFirm > 0 {
		p.HaveN = float64(h.GripFirm)
	}
	p.NeedN = s.viceNeed(at, (lo+hi)/2, (y0+y1)/2, (hi-lo)/2, m.PressDeg)
	thin := s.thinnest(p.Thick)
	p.NipN, p.StandsN = viceLightN, s.unbowed(thin, p.Across, y1-y0)
	p.SagMM = s.sag(at, thin, hi-lo-2*l.wide, y1-y0)
	return p
}

// lying is where work lies in a vice: as it is turned, its jaws pressing along X.
type lying struct {
	facing         bool    // two straight edges face the jaws
	lo, hi, y0, y1 float64 // between the jaws, and along them
	wide           float64 // of the parallels; 0 = there is no room for any
	under          []plan.Strip
}

// liesIn finds how work lies in a vice. Answers are kept.
func (s Shop) liesIn(m Mount, at moment) lying {
	key := outlineKey{m.ID, s.outline(at)}
	l, ok := s.inVices[key]
	if ok {
		return l
	}
	l = liesAs(m, s.rim(at), turn(s.heldClear(m), m.PressDeg))
	s.inVices[key] = l
	return l
}

// liesAs is how work of a rim lies in a vice, clear of tools that work in zones turned as it is.
func liesAs(m Mount, rim plane.Region, zones []zone) lying {
	var l lying
	if l.lo, l.hi, l.y0, l.y1, l.facing = facing(turnedRim(rim, m.PressDeg)); !l.facing {
		return l
	}
	l.y0, l.y1 = jawsAlong(zones, l.lo, l.hi, l.y0, l.y1, or(float64(m.Holding.JawWidth), usualViceJaw))
	if l.y1-l.y0 >= leastContact {
		l.parallels(zones, m.PressDeg)
	}
	return l
}

func or(v, usual float64) float64 {
	if v > 0 {
		return v
	}
	return usual
}

// turnedRim is a rim as it lies when the direction at an angle, 0 or 90, is X: turned by a right angle, or as it is.
func turnedRim(r plane.Region, deg float64) plane.Region {
	if deg == 0 {
		return r
	}
	var out plane.Region
	for _, e := range r.Edges {
		e.X0, e.Y0 = e.Y0, -e.X0
		e.X1, e.Y1 = e.Y1, -e.X1
		e.CX, e.CY = e.CY, -e.CX
		out.Edges = append(out.Edges, e)
	}
	return out
}

// turn is turnedRim for zones.
func turn(zones []zone, deg float64) []zone {
	if deg == 0 {
		return zones
	}
	out := append([]zone(nil), zones...)
	for i, z := range out {
		out[i].X0, out[i].Y0, out[i].X1, out[i].Y1 = z.Y0, -z.X0, z.Y1, -z.X1
	}
	return out
}

// press is a jaw's press, turned back into the part's frame.
func press(x, y, deg, width, turned float64) plan.Press {
	if turned == 0 {
		return plan.Press{XMM: x, YMM: y, AngleDeg: deg, WidthMM: width}
	}
	return plan.Press{XMM: -y, YMM: x, AngleDeg: math.Mod(deg+90, 360), WidthMM: width}
}

// facing finds the straight edges at both ends of a rim along X, and the stretch of Y that they share.
func facing(r plane.Region) (lo, hi, y0, y1 float64, ok bool) {
	lo, _, hi, _ = r.Bounds()
	l0, l1, left := straightAt(r, lo)
	h0, h1, right := straightAt(r, hi)
	y0, y1 = math.Max(l0, h0), math.Min(l1, h1)
	return lo, hi, y0, y1, left && right && y1 > y0
}

// straightAt is the stretch of Y over which a rim runs straight along Y at an X.
func straightAt(r plane.Region, x float64) (y0, y1 float64, ok bool) {
	y0, y1 = math.Inf(1), math.Inf(-1)
	for _, e := range r.Edges {
		if !e.IsArc() && math.Abs(e.X0-x) < sameSpot && math.Abs(e.X1-x) < sameSpot {
			y0, y1, ok = math.Min(y0, math.Min(e.Y0, e.Y1)), math.Max(y1, math.Max(e.Y0, e.Y1)), true
		}
	}
	return y0, y1, ok
}

// jawsAlong is the stretch of the shared edges that lies in jaws so long, once they stand clear of every tool that works over their side of the edges.
func jawsAlong(zones []zone, lo, hi, y0, y1, jaw float64) (from, to float64) {
	low, high := math.Inf(-1), math.Inf(1)
	for _, z := range zones {
		off := z.besideJaws()
		left, right := math.Min(z.X0, z.X1)-off, math.Max(z.X0, z.X1)+off
		if z.beyond || left > lo && right < hi {
			continue // between the jaws
		}
		below, above := math.Min(z.Y0, z.Y1)-off, math.Max(z.Y0, z.Y1)+off
		if below-y0 >= y1-above {
			high = math.Min(high, below)
		} else {
			low = math.Max(low, above)
		}
	}
	if high-low < jaw {
		return y0, y0
	}
	start := math.Min(math.Max((y0+y1-jaw)/2, low), high-jaw)
	return math.Max(y0, start), math.Min(y1, start+jaw)
}

// depthInVice is how much of the thickness the jaws grip.
func (s Shop) depthInVice(p *pinch, m Mount, at moment, all bool) {
	thick := at.flat.Front - at.flat.Back
	p.Thick = thick
	above := flush
	if all {
		above = toolRoom
		for _, k := range at.tasks {
			if f := s.Tasks[k].Flat; f != nil && (f.Back != nil || f.Front != nil || len(f.Seats) > 0) {
				above = math.Max(above, toolRoom+s.Tasks[k].Depth)
			}
		}
	}
	high := or(float64(m.Holding.JawHeight), usualJawHeight)
	p.gripMM = math.Min(thick-above, high)
	if s.Rules.Has("B-35") { // parallels high enough that what comes through stays clear of the vice
		if out := s.comesOut(m, at); out > 0 {
			p.gripMM = math.Min(p.gripMM, math.Floor(10*(high-out-clearBehind))/10)
		}
	}
	p.Grip = p.gripMM
}

// parallels finds the widest pair of parallels, one along each jaw, that lies clear of all tools that come through.
func (l *lying) parallels(zones []zone, turned float64) {
	lo, hi, y0, y1 := l.lo, l.hi, l.y0, l.y1
	if l.wide = parallelWidth(zones, lo, hi, y0, y1); l.wide > 0 {
		l.under = []plan.Strip{strip(lo, y0, lo+l.wide, y1, turned), strip(hi-l.wide, y0, hi, y1, turned)}
	}
}

// parallelWidth is the width of the widest parallels that lie clear of all tools that come through, one along each jaw; 0 where none do.
func parallelWidth(zones []zone, lo, hi, y0, y1 float64) float64 {
	for _, wide := range []float64{10, 8, 6, 5, 4, thinParallel, 2} {
		free := leastContact
		if wide <= thinParallel {
			free = math.Min(free, (hi-lo)/3)
		}
		pair := []plane.Region{plane.Rectangle(lo, y0, lo+wide, y1), plane.Rectangle(hi-wide, y0, hi, y1)}
		if 2*wide+free <= hi-lo && !underAny(pair, zones) {
			return wide
		}
	}
	return 0
}

func strip(x0, y0, x1, y1, turned float64) plan.Strip {
	if turned != 0 {
		x0, y0, x1, y1 = -y1, x0, -y0, x1
	}
	return plan.Strip{X0: x0, Y0: y0, X1: x1, Y1: y1}
}

// underAny reports whether a tool that comes through gets within reach of any of the regions.
func underAny(regions []plane.Region, zones []zone) bool {
	for _, z := range zones {
		if !z.through || z.beyond {
			continue
		}
		reach := z.Grown(toolRoom)
		for _, r := range regions {
			if plane.Meet(reach, r.Figure()) {
				return true
			}
		}
	}
	return false
}

// viceNeed is the force of the jaws that the heaviest cut asks: friction on two faces against being pushed along them and turned about their middle.
func (s Shop) viceNeed(at moment, x, y, half, turned float64) float64 {
	if turned != 0 {
		x, y = -y, x
	}
	need := 0.0
	for i, k := range at.tasks {
		need = math.Max(need, s.viceForce(s.Tasks[k], at.ways[i], at.light, x, y, half))
	}
	return math.Ceil(need)
}

func (s Shop) viceForce(t process.Task, way process.Way, light, x, y, half float64) float64 {
	force := way.Force(light)
	if axial(t.By(way)) {
		return safety * force * way.ForceAt / half / (2 * frictionFinished)
	}
	far := s.farthest(t, way, x, y)
	return safety * math.Hypot(force, force*far/half) / (2 * frictionFinished)
}
