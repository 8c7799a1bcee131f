package holding

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/rules"
)

// A small angle plate, where the workshop does not say. Common practice, no source.
const (
	usualLedgeWidth = 100.0
	usualLedgeReach = 60.0
	usualLedgeLeg   = 60.0
	usualLedgeThick = 10.0
	usualLedgeSlope = 0.02 // out of parallel with the spindle over 100, clocked (that of a vice, rule B-02)
)

// What straps on a ledge need. Common practice, no source.
const (
	strapsOnLedge  = 2
	barBeyondStud  = 6.0 // a bar past its studs
	packingHalf    = 5.0 // of the packing under a strap's outer end, along the ledge
	columnClear    = 2.0 // metal between a hole and what a toe presses on
	columnStep     = 1.0 // of the search along and down the work
	ledgeBoltShare = 0.5 // of the leg has to lie on the faceplate, for its bolts
)

// onAnglePlate lists work that stands by a straight edge on an angle plate on the faceplate, for every place that is turned about and every straight edge that places are measured from (rule B-10).
func (s Shop) onAnglePlate(h partspec.Holding) []Mount {
	var mounts []Mount
	for _, c := range s.centres() {
		for i, e := range s.Flat.Drawn.Edges {
			if e.IsArc() || !s.measuredFrom(i) {
				continue
			}
			for _, free := range faces() {
				m := Mount{Holding: h, Free: free, Surface: fmt.Sprintf("its %s edge", s.Part.Outline.Edges[i].Name), Base: i, CentreX: c.x, CentreY: c.y, About: c.name, Z1: s.Length, Minutes: s.minutes(h), RunOut: s.runOut(h, false)}
				for _, f := range s.found(m) {
					f.Locate += s.leans(h)
					mounts = append(mounts, f)
				}
			}
		}
	}
	return mounts
}

// measuredFrom reports whether an edge is a datum of its outline, or the outline has none.
func (s Shop) measuredFrom(edge int) bool {
	o := s.Part.Outline
	return len(o.Datum) == 0 || slices.Contains(o.Datum, o.Edges[edge].Name)
}

// leans is how far a ledge that is out of parallel with the spindle takes one face of the work to the side of the other.
func (s Shop) leans(h partspec.Holding) float64 {
	return or(float64(h.Squareness), usualLedgeSlope) * s.Length / 100
}

// ledged is how work would run on an angle plate.
type ledged struct {
	rules.LedgeFacts
	squeeze
	ledge             plan.Ledge
	balance           plan.Balance
	gap               float64
	plate             string  // the largest that is owned
	leftEnd, rightEnd float64 // of the straps, along the foot
}

// onLedge works out how work stands on an angle plate at a moment.
func (s Shop) onLedge(m Mount, at moment) ledged {
	l := s.ledgeOwned(m, at)
	f, rim := footOf(s.Flat.Drawn.Edges[m.Base]), s.rim(at)
	axis, height := f.sees(m.CentreX, m.CentreY)
	left, right, ok := s.toes(m, f, rim, axis)
	if !ok {
		l.Why = fmt.Sprintf("beside the bore no straight edge opposite %s lets a strap press on metal that is solid down to the ledge, on both sides", m.Surface)
		return l
	}
	around := f.extent(rim)
	if around.bottom < -edgeNoise {
		l.Why = fmt.Sprintf("the work reaches %.1f past %s, into the ledge", -around.bottom, m.Surface)
		return l
	}
	l.lay(f, left, right, around, m.Holding)
	if off, tool := l.strapsOff(left, right, axis, height), s.turnedOut(m); off < tool+toolRoom {
		l.Why = fmt.Sprintf("the straps would lie %.1f from the axis, the tool comes to %.1f", off, tool)
	}
	l.reachOut(m, f, rim)
	l.balance, _ = balance(append([]mechanics.Weight{s.weight(at)}, l.weights(f)...), m.CentreX, m.CentreY, math.Max(l.Plate/2-plateRim, 1))
	l.Unbalance, l.WeightKg, l.MostRPM = l.balance.UnbalanceKgMM, l.balance.WeightKg, l.balance.MostRPM
	middle, long := (left.along+right.along)/2, f.Length()
	l.HaveN = strapsOnLedge * clampForce(m.Holding)
	l.NeedN = s.ledgeNeed(at, mechanics.LedgeDemand{HeightMM: height, BesideMM: math.Max(math.Abs(axis), math.Abs(long-axis)), ArmMM: math.Min(middle, long-middle)})
	l.squeeze = s.pressedBeside(at, rim, l.HaveN)
	return l
}

// ledgeOwned is what is owned of faceplate and angle plate, and how the lathe may turn it.
func (s Shop) ledgeOwned(m Mount, at moment) ledged {
	h := m.Holding
	l := ledged{gap: s.gapBehind(m, at)}
	l.Owned, l.Width, l.Thick, l.Swing = boltsOwned(h), or(float64(h.Width), usualLedgeWidth), at.flat.Front-at.flat.Back, float64(s.Lathe.Swing)
	l.On = math.Min(l.Thick, or(float64(h.Reach), usualLedgeReach)-l.gap)
	l.Raw = at.flat.Left[m.Base] > sameSpot
	l.Slowest = float64(s.Lathe.SlowestSpeed)
	if len(s.Lathe.Speeds) > 0 {
		l.Slowest = float64(s.Lathe.Speeds[0])
	}
	for _, p := range s.Shop.Holdings {
		if wide := 2 * (s.plateRadius(p) + plateRim); p.Kind == partspec.Faceplate && wide > l.Plate {
			l.Plate, l.plate = wide, p.Name
		}
	}
	return l
}

// reachOut lays the ledge under the middle of its straps, and works out how far all of it gets from the spindle's axis.
func (l *ledged) reachOut(m Mount, f foot, rim plane.Region) {
	middle := l.middle()
	l.Wide = l.rightEnd - l.leftEnd
	l.ledge.X0, l.ledge.Y0 = f.place(middle-l.Width/2, 0)
	l.ledge.X1, l.ledge.Y1 = f.place(middle+l.Width/2, 0)
	axis, height := f.sees(m.CentreX, m.CentreY)
	l.LegOff = height + l.ledge.ThickMM + ledgeBoltShare*(l.ledge.LegMM-l.ledge.ThickMM)
	far := math.Abs(middle-axis) + l.Width/2
	l.Reach = math.Max(swing(rim, m.CentreX, m.CentreY), math.Hypot(far, height+l.ledge.LegMM))
	for _, c := range l.ledge.Straps {
		x, y := strapEnd(c, l.ledge.Bar)
		l.Reach = math.Max(l.Reach, math.Hypot(x-m.CentreX, y-m.CentreY)+strapThick)
	}
}

// middle is the middle of the straps along the foot.
func (l *ledged) middle() float64 { return (l.leftEnd + l.rightEnd) / 2 }

// turnedOut is the widest radius about a mount's axis that a tool may come to while it holds.
func (s Shop) turnedOut(m Mount) float64 {
	most := 0.0
	for _, z := range s.heldClear(m) {
		if !z.beyond {
			most = math.Max(most, z.Radius)
		}
	}
	return most
}

func boltsOwned(h partspec.Holding) int {
	if h.Clamps > 0 {
		return h.Clamps
	}
	return strapsOnLedge
}

// ledgeNeed is what the straps have to press with in all for the heaviest cut of a moment.
func (s Shop) ledgeNeed(at moment, d mechanics.LedgeDemand) float64 {
	need := 0.0
	d.Friction, d.Safety = clampFriction, safety
	for i, k := range at.tasks {
		way := at.ways[i]
		force := way.Force(at.light)
		d.SideN, d.TorqueNmm = math.Hypot(force, force/2), force*way.ForceAt
		if axial(s.Tasks[k].By(at.ways[i])) {
			d.SideN = 0
		}
		if n, err := mechanics.LeastLedgeForce(d); err == nil {
			need = math.Max(need, math.Ceil(n))
		}
	}
	return need
}

// pressedBeside is what straps do to the roundest bore that is finished between them.
func (s Shop) pressedBeside(at moment, rim plane.Region, force float64) squeeze {
	var q squeeze
	for _, k := range at.tasks {
		t := s.Tasks[k]
		hole, ok := finishedBore(t)
		if !ok {
			continue
		}
		metal := s.Part.Material
		limit := t.Round * lobeShare
		web := rim.Inside(hole.X, hole.Y) - hole.Radius
		d, err := mechanics.PressedBeside{ForceN: force, BoreMM: 2 * hole.Radius, WebMM: web, ThickMM: at.flat.Front - at.flat.Back, ModulusMPa: metal.ModulusGPa.Low * 1000, YieldMPa: metal.YieldMPa.Low}.Distortion()
		if err != nil {
			d.Confidence = mechanics.Confidence{Trust: mechanics.TrustNone, Why: err.Error()}
		}
		if q.limit > 0 && d.ErrorMostMM/limit <= q.lobe/q.limit {
			continue
		}
		q = squeeze{most: math.Floor(force * limit / math.Max(d.ErrorMostMM, leastLobe)), lobe: d.ErrorMostMM, limit: limit, stress: d.StressMostMPa, sure: d.Confidence, web: web}
	}
	return q
}

// leastLobe keeps a force that does next to nothing from allowing any force.
const leastLobe = 1e-6

// ledgeFigures fills in what an angle plate asks and does.
func (s Shop) ledgeFigures(f *Figures, m Mount, at moment) {
	l := s.onLedge(m, at)
	c := &f.Case
	c.Ledge = &l.LedgeFacts
	c.LeastN, c.LightN, c.FirmN = l.NeedN, l.HaveN, l.HaveN
	if l.Why == "" {
		f.pressed(l.squeeze)
	}
}

// ledgeTooHeavy is a cut that straps on a ledge cannot hold against sliding, however the work stands.
func (s Shop) ledgeTooHeavy(m Mount, at moment) *rules.LedgeFacts {
	need, have := s.ledgeNeed(at, mechanics.LedgeDemand{ArmMM: slidesFirst}), strapsOnLedge*clampForce(m.Holding)
	if need <= have {
		return nil
	}
	return &rules.LedgeFacts{Owned: boltsOwned(m.Holding), Plate: 1, NeedN: need, HaveN: have}
}

// slidesFirst is an arm so long that nothing tips before it slides, mm.
const slidesFirst = 1e5
