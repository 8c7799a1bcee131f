package holding

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
)

// inFourJaw lists flat work gripped by its four sides in the independent chuck, for every place that is turned about, hard back on a backing piece (rule B-04).
func (s Shop) inFourJaw(h partspec.Holding) []Mount {
	var mounts []Mount
	if jawCount(h) != 4 {
		return nil
	}
	for _, c := range s.centres() {
		for _, free := range faces() {
			m := Mount{Holding: h, Free: free, Surface: "its four sides", CentreX: c.x, CentreY: c.y, About: c.name, Z1: s.Length, Minutes: s.minutes(h), RunOut: s.runOut(h, false), Stop: true}
			mounts = append(mounts, s.found(m)...)
		}
	}
	return mounts
}

// jaw is where one of four jaws meets the rim, and how far from the spindle's axis.
type jaw struct {
	plan.Press
	out  float64
	edge int
}

// fourJaws finds where the jaws meet the rim, each on its own line through the spindle's axis; false where the rim there does not face the jaw.
func (s Shop) fourJaws(m Mount, at moment) ([]jaw, bool) {
	width := or(float64(m.Holding.JawWidth), usualJawWidth)
	rim := s.rim(at)
	var jaws []jaw
	for k := range 4 {
		j, ok := jawOn(rim, m.CentreX, m.CentreY, float64(k)*90, width)
		if !ok {
			return nil, false
		}
		jaws = append(jaws, j)
	}
	return jaws, true
}

// jawOn is where a jaw on a line meets a rim: on an edge square to it, or on the crown of an arc. The rim may fall away from a part of its width.
func jawOn(rim plane.Region, cx, cy, deg, width float64) (jaw, bool) {
	ux, uy := math.Round(math.Cos(deg*math.Pi/180)), math.Round(math.Sin(deg*math.Pi/180))
	best := jaw{out: -1}
	for i, e := range rim.Edges {
		var px, py float64
		switch {
		case e.IsArc():
			if math.Abs((e.CX-cx)*uy-(e.CY-cy)*ux) > sameSpot || e.Hollow {
				continue
			}
			px, py = e.CX+e.Radius*ux, e.CY+e.Radius*uy
			if _, _, off := e.Nearest(px, py); off > sameSpot {
				continue
			}
		default:
			ox, oy := e.Outward(0)
			if ox*ux+oy*uy < 1-facingSlack {
				continue
			}
			t0, t1 := (e.X0-cx)*-uy+(e.Y0-cy)*ux, (e.X1-cx)*-uy+(e.Y1-cy)*ux
			if math.Min(math.Max(t0, t1), width/2)-math.Max(math.Min(t0, t1), -width/2) < math.Min(width, leastContact)-sameSpot {
				continue
			}
			d := (e.X0-cx)*ux + (e.Y0-cy)*uy
			px, py = cx+d*ux, cy+d*uy
		}
		if out := (px-cx)*ux + (py-cy)*uy; out > best.out {
			best = jaw{Press: plan.Press{XMM: px, YMM: py, AngleDeg: deg, WidthMM: width}, out: out, edge: i}
		}
	}
	return best, best.out > 0
}

// facingSlack: an edge faces a jaw when it is square to it within the rounding of its coordinates.
const facingSlack = 1e-9

// jawed is what four jaws do to flat work.
type jawed struct {
	rules.JawFacts
	squeeze
	jaws  []jaw
	least float64
}

func (s Shop) jawed(m Mount, at moment) jawed {
	var g jawed
	var ok bool
	if g.jaws, ok = s.fourJaws(m, at); !ok {
		g.Why = "the rim does not face all four jaws where they meet it"
		return g
	}
	mean := 0.0
	for _, j := range g.jaws {
		g.Reach = math.Max(g.Reach, j.out)
		mean += j.out / 4
	}
	g.Capacity = float64(m.Holding.Largest) / 2
	b := s.jawBalance(m, at, g.jaws)
	g.Unbalance, g.MostRPM = b.UnbalanceKgMM, b.MostRPM
	light, firm := float64(m.Holding.GripLight), float64(m.Holding.GripFirm)
	if firm == 0 {
		light, firm = UsualLight, UsualFirm
	}
	g.least = s.jawsNeed(at, mean)
	g.squeeze = s.squeezed(at, pressing{jaws: 4, widthMM: g.jaws[0].WidthMM, alongX: true, alongY: true}, math.Min(math.Max(g.least, light), firm))
	return g
}

// jawsNeed is the force a jaw that the heaviest cut asks; the backing piece takes the feed.
func (s Shop) jawsNeed(at moment, radius float64) float64 {
	need := 0.0
	for i, k := range at.tasks {
		force := at.ways[i].Force(at.light)
		d := mechanics.GripDemand{MainN: force, CutRadiusMM: at.ways[i].ForceAt, GripRadiusMM: radius, GripLengthMM: at.flat.Front - at.flat.Back, Jaws: 4, Friction: frictionFinished, Safety: safety, AxialStop: true}
		if !axial(s.Tasks[k].By(at.ways[i])) {
			d.PassiveN = force / 2
		}
		if f, err := mechanics.LeastGripPerJaw(d); err == nil {
			need = math.Max(need, math.Ceil(f.PerJawN))
		}
	}
	return need
}

// squeeze is what a grip does to the bores that are finished in it.
type squeeze struct {
	most   float64 // force that the worst of them stands
	lobe   float64 // at the working force
	limit  float64
	stress float64
	sure   mechanics.Confidence
	web    float64
	waste  float64 // web with which it would pass; 0 = it passes, or nothing is at stake
}

// squeezed works out the lobed error of the roundest bore that is finished in a grip, and the web with which it would pass. Where the figure for one of them cannot be
// trusted, none is.
func (s Shop) squeezed(at moment, p pressing, working float64) squeeze {
	var q squeeze
	var unsure *mechanics.Confidence
	for _, k := range at.tasks {
		t := s.Tasks[k]
		hole, ok := finishedBore(t)
		if !ok {
			continue
		}
		hole.Radius += t.Tight / 4 // as large as it may be measured to
		web := s.webOf(at, hole, p)
		limit := t.Round * lobeShare
		d, err := s.webError(web, working)
		if err != nil {
			d.Confidence = mechanics.Confidence{Trust: mechanics.TrustNone, Why: err.Error()}
		}
		if d.Trust == mechanics.TrustNone && unsure == nil {
			unsure = &d.Confidence
		}
		if err != nil || q.limit > 0 && d.ErrorMostMM/limit <= q.lobe/q.limit {
			continue
		}
		q.lobe, q.limit, q.stress, q.sure, q.web = d.ErrorMostMM, limit, d.StressMostMPa, d.Confidence, web.thin
		q.most = s.trusted(web, working, math.Floor(working*limit/d.ErrorMostMM))
		if d.ErrorMostMM > limit || d.Trust == mechanics.TrustNone {
			q.waste = s.enough(web, working, limit)
		}
	}
	if unsure != nil {
		q.sure = *unsure
	}
	return q
}

// webKey is a web under a force of each jaw, wasteKey with what may be left in the bore.
type (
	webKey struct {
		web
		forceN float64
	}
	wasteKey struct {
		webKey
		limit float64
	}
	webAnswer struct {
		mechanics.Distortion
		err error
	}
)

// webError is the distortion of a web as it is. Answers are kept.
func (s Shop) webError(w web, force float64) (mechanics.Distortion, error) {
	key := webKey{w, force}
	a, ok := s.webs[key]
	if !ok {
		a.Distortion, a.err = w.at(0, force)
		s.webs[key] = a
	}
	return a.Distortion, a.err
}

// trusted is the most force up to another whose figure for a web can be trusted: a web that yields goes out of round by more than it tells.
func (s Shop) trusted(w web, force, most float64) float64 {
	trust := func(n float64) bool {
		d, err := s.webError(w, n)
		return err == nil && d.Trust != mechanics.TrustNone
	}
	if most <= force || trust(most) {
		return most
	}
	for most-force > 1 {
		if mid := math.Floor((force + most) / 2); trust(mid) {
			force = mid
		} else {
			most = mid
		}
	}
	return math.Floor(force)
}

// enough is the web's own with its answers kept.
func (s Shop) enough(w web, force, limit float64) float64 {
	key := wasteKey{webKey{w, force}, limit}
	least, ok := s.wastes[key]
	if !ok {
		least = w.enough(force, limit)
		s.wastes[key] = least
	}
	return least
}

// finishedBore is the round hole that a task brings to a size that has to be round.
func finishedBore(t process.Task) (shape.Round, bool) {
	if t.Stage != shape.Finishing || t.Round <= 0 || t.Flat == nil || len(t.Flat.Holes) != 1 {
		return shape.Round{}, false
	}
	return t.Flat.Holes[0], true
}

// pressing is how jaws press on the rim: how many, how wide, along which directions.
type pressing struct {
	jaws           int
	widthMM        float64
	alongX, alongY bool
}

// A web is the metal between a bore and the rim where jaws press, as a plate or, outside that figure's reach, as the thinnest uniform wall.
type web struct {
	thin    float64
	plate   mechanics.PlateGrip
	onThin  bool // jaws press across the thin section, and across the plate's width
	onSide  bool
	round   bool // it is the ring that counts
	ring    mechanics.RingGrip
	whole   bool // there is metal enough round it to be but a hole in what is pressed
	pressed mechanics.PressedPlate
}

// webOf describes the metal round a bore. Between two jaws, with metal enough round it, it is a hole in what they press. A rectangle with the bore on its middle line
// is a plate; all else is bounded by a ring as thin as its thinnest wall.
func (s Shop) webOf(at moment, hole shape.Round, p pressing) web {
	metal := s.Part.Material
	rim := s.rim(at)
	thin := rim.Inside(hole.X, hole.Y) - hole.Radius
	thick := s.thinnest(at.flat.Front - at.flat.Back)
	w := web{thin: thin}
	w.pressed = mechanics.PressedPlate{WidthMM: p.widthMM, ThickMM: thick, BoreMM: 2 * hole.Radius, RoundMM: thin, ModulusMPa: metal.ModulusGPa.Low * 1000, Poisson: metal.Poisson, YieldMPa: metal.YieldMPa.Low}
	if w.whole = p.jaws == 2 && w.pressed.Surrounded(); w.whole {
		return w
	}
	if g, alongX, ok := plateAround(rim, hole, p.alongX); ok {
		g.ThicknessMM, g.BoreDiameterMM, g.ThinMM, g.JawWidthMM = thick, 2*hole.Radius, thin, p.widthMM
		g.ModulusMPa, g.Poisson, g.YieldMPa = metal.ModulusGPa.Low*1000, metal.Poisson, metal.YieldMPa.Low
		w.plate, w.onThin, w.onSide = g, p.alongX && alongX || p.alongY && !alongX, p.alongX && !alongX || p.alongY && alongX
		return w
	}
	w.round, w.ring = true, mechanics.RingGrip{OutsideDiameterMM: 2 * (hole.Radius + thin), WallMM: thin, LengthMM: thick, GripLengthMM: thick, Jaws: p.jaws, JawWidthMM: p.widthMM,
		ModulusMPa: metal.ModulusGPa.Low * 1000, Poisson: metal.Poisson, YieldMPa: metal.YieldMPa.Low, Departure: "a plate round a bore"}
	return w
}

// plateAround reads a rim as a rectangle with a hole on one of its middle lines, and whether its thin section lies along X. On both lines, as far from two edges, the
// thin section is where jaws press along X: more gives there than beside them.
func plateAround(rim plane.Region, hole shape.Round, pressedX bool) (g mechanics.PlateGrip, alongX, ok bool) {
	x0, y0, x1, y1 := rim.Bounds()
	for _, e := range rim.Edges {
		if e.IsArc() || e.X0 != e.X1 && e.Y0 != e.Y1 {
			return g, false, false
		}
	}
	offX, offY := math.Abs(hole.X-(x0+x1)/2), math.Abs(hole.Y-(y0+y1)/2)
	acrossX, acrossY := math.Min(hole.X-x0, x1-hole.X), math.Min(hole.Y-y0, y1-hole.Y)
	thinX, thinY := offY <= middleSlack && acrossX <= acrossY+sameSpot, offX <= middleSlack && acrossY <= acrossX+sameSpot
	if thinX && (pressedX || !thinY) {
		return mechanics.PlateGrip{LengthMM: x1 - x0, WidthMM: y1 - y0}, true, true
	}
	return mechanics.PlateGrip{LengthMM: y1 - y0, WidthMM: x1 - x0}, false, thinY
}

// middleSlack is how far a bore may lie off the middle line and count as on it.
const middleSlack = 0.5 - sameSpot

// at is the distortion with so much more metal beside the bore, under a force of each jaw.
func (w web) at(more, force float64) (mechanics.Distortion, error) {
	if w.whole {
		g := w.pressed
		g.RoundMM, g.ForceN = g.RoundMM+more, force
		return g.Distortion()
	}
	if w.round {
		r := w.ring
		r.WallMM, r.OutsideDiameterMM, r.ForcePerJawN = r.WallMM+more, r.OutsideDiameterMM+2*more, force
		return r.Distortion()
	}
	p := w.plate
	p.ThinMM, p.LengthMM = p.ThinMM+more, p.LengthMM+more
	if w.onThin {
		p.ForceThinN = force
	}
	if w.onSide {
		p.ForceSideN = force
	}
	return p.Distortion()
}

// enough is the least web with which a force leaves no more than a limit, found by halving; infinite where not even as much again as the bore would do.
func (w web) enough(force, limit float64) float64 {
	passes := func(more float64) bool {
		d, err := w.at(more, force)
		return err == nil && d.Trust != mechanics.TrustNone && d.ErrorMostMM <= limit
	}
	lo, hi := 0.0, mostMore
	if !passes(hi) {
		return math.Inf(1)
	}
	for hi-lo > wasteWithin {
		if mid := (lo + hi) / 2; passes(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return w.thin + hi
}

// Waste is looked for up to mostMore and found within wasteWithin: nobody saws closer.
const (
	mostMore    = 60.0
	wasteWithin = 0.01
)
