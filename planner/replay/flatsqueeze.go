package replay

import (
	"math"

	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

// boredHere is a bore that a setup brings to size, with what grips it then and how much out of round it may take from that.
type boredHere struct {
	name         string
	op           int // that brings it to size
	x, y, radius float64
	limit        float64
	forceN       float64 // of a jaw
}

// squeezedHere is a bore as jaws on the edges squeezed it when it was brought to size: what is cut away beside it later in the same grip moves it no more, for it is
// let go from where it was made.
type squeezedHere struct {
	boredHere
	mechanics.Distortion
	err error
}

// noteSqueezed reckons what jaws on the edges do to every bore that an operation has just brought to size.
func (f *flatWalk) noteSqueezed(op int) {
	if len(f.setup.Presses) == 0 {
		return
	}
	for _, b := range f.finishedHere() {
		if b.op == op {
			d, err := f.squeezed(b)
			f.squeezes = append(f.squeezes, squeezedHere{b, d, err})
		}
	}
}

// checkSqueeze holds the out of round that jaws on the edges leave in every bore finished between them against what the drawing lets pass.
func (f *flatWalk) checkSqueeze() {
	most := 0.0
	for _, b := range f.squeezes {
		if b.err != nil || b.Trust == mechanics.TrustNone {
			f.failOp("distortion", "what the jaws do to %s cannot be told: %s", b.name, b.Why)
			return
		}
		if b.ErrorMostMM > b.limit+figure {
			f.failOp("distortion", "the jaws leave %s out of round by %s; %s is allowed (rule B-23)", b.name, mm(b.ErrorMostMM), mm(b.limit))
		}
		most = math.Max(most, b.ErrorMostMM)
	}
	if said := f.setup.Grip.ErrorMM; said < most*(1-errorFigure)-figure {
		f.failOp("distortion", "the jaws leave a bore out of round by %s; the plan says %s", mm(most), mm(said))
	}
}

// finishedHere lists the bores that a cut of this setup brings to their least radius.
func (f *flatWalk) finishedHere() []boredHere {
	var list []boredHere
	for _, c := range f.drawn.columns {
		for _, r := range c.rounds {
			if r.cone > 0 || r.hole.number > 0 { // holes of a pattern are not asked to be round
				continue
			}
			x, y := c.place()
			t, ok := f.sizedHere(x, y, r.low)
			if !ok {
				continue
			}
			allowed := float64(f.part.Roundness)
			if allowed == 0 {
				allowed = r.high - r.low
			}
			_, _, radius := t.centred((math.Max(t.z0, f.work.back) + math.Min(t.z1, f.work.front)) / 2)
			list = append(list, boredHere{c.name, t.key.op, x, y, radius, allowed * roundShare, f.workingN(f.setup.Operations[t.key.op].ID)})
		}
	}
	return list
}

// boreLimit is the least out of round that a bore about the spindle's axis, finished in this setup, may take from the grip, and whose it is.
func (f *flatWalk) boreLimit() (limit float64, of string) {
	limit = math.Inf(1)
	for _, b := range f.finishedHere() {
		if math.Hypot(b.x-f.setup.CentreX, b.y-f.setup.CentreY) <= centreNear && b.limit < limit {
			limit, of = b.limit, b.name
		}
	}
	return limit, of
}

// sizedHere is the cut of this setup that brings a bore to its least radius.
func (f *flatWalk) sizedHere(x, y, least float64) (taken, bool) {
	for i := len(f.work.taken) - 1; i >= 0; i-- {
		t := f.work.taken[i]
		if !t.centre || t.mark || t.mouth || t.key.setup != f.setup.Number-1 {
			continue
		}
		if hx, hy, r := t.centred((math.Max(t.z0, f.work.back) + math.Min(t.z1, f.work.front)) / 2); math.Hypot(hx-x, hy-y) <= centreNear && r >= least-figure {
			return t, true
		}
	}
	return taken{}, false
}

// squeezed is the out of round that the jaws leave in a bore: as of a hole in what two of them press where there is metal enough round it; of a rectangular plate where it
// lies on a middle line; else bounded by a ring as thin as the thinnest wall.
func (f *flatWalk) squeezed(b boredHere) (mechanics.Distortion, error) {
	back, front, _ := f.work.faces()
	rim := plane.Region{Edges: f.work.outer((back + front) / 2)}
	m, g := f.part.Material, f.setup.Grip
	thin := rim.Inside(b.x, b.y) - b.radius
	modulus, yield := m.ModulusGPa.Low*1000, m.YieldMPa.Low
	hole := mechanics.PressedPlate{ForceN: b.forceN, WidthMM: g.JawWidthMM, ThickMM: front - back, BoreMM: 2 * b.radius, RoundMM: thin, ModulusMPa: modulus, Poisson: m.Poisson, YieldMPa: yield}
	if len(f.setup.Presses) == 2 && hole.Surrounded() {
		return hole.Distortion()
	}
	p := mechanics.PlateGrip{ThicknessMM: front - back, BoreDiameterMM: 2 * b.radius, ThinMM: thin, JawWidthMM: g.JawWidthMM, ModulusMPa: modulus, Poisson: m.Poisson, YieldMPa: yield}
	if alongX, ok := f.onMiddleLine(rim, b, &p); ok && f.rectangular() {
		for _, press := range f.setup.Presses {
			if pressesAlongX(press) == alongX {
				p.ForceThinN = b.forceN
			} else {
				p.ForceSideN = b.forceN
			}
		}
		return p.Distortion()
	}
	return mechanics.RingGrip{OutsideDiameterMM: 2 * (b.radius + thin), WallMM: thin, LengthMM: front - back, GripLengthMM: front - back, Jaws: g.Jaws, JawWidthMM: g.JawWidthMM, ForcePerJawN: b.forceN,
		ModulusMPa: modulus, Poisson: m.Poisson, YieldMPa: yield}.Distortion()
}

func pressesAlongX(p plan.Press) bool {
	return math.Abs(math.Cos(p.AngleDeg*math.Pi/180)) > math.Abs(math.Sin(p.AngleDeg*math.Pi/180))
}

// onMiddleLine measures the plate round a bore on one of its middle lines, whose thin section lies along that line; alongX: the line runs along X. Of a bore on both,
// as near to the edges of both, the section counts that is pressed.
func (f *flatWalk) onMiddleLine(rim plane.Region, b boredHere, p *mechanics.PlateGrip) (alongX, ok bool) {
	x0, y0, x1, y1 := rim.Bounds()
	thinX, thinY := math.Min(b.x-x0, x1-b.x), math.Min(b.y-y0, y1-b.y)
	lineX := math.Abs(b.y-(y0+y1)/2) <= middleLine+same && thinX <= thinY+same
	lineY := math.Abs(b.x-(x0+x1)/2) <= middleLine+same && thinY <= thinX+same
	if lineX && (!lineY || pressesAlongX(f.setup.Presses[0])) {
		p.LengthMM, p.WidthMM = x1-x0, y1-y0
		return true, true
	}
	p.LengthMM, p.WidthMM = y1-y0, x1-x0
	return false, lineY
}

// middleLine is how far a bore may lie off a plate's middle line and still be reckoned as on it. Ours, no source.
const middleLine = 0.5
