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

// A foot is an edge that work stands on, and the frame in which the ledge sees the work: along it, and up from it.
type foot struct {
	plane.Edge
	ux, uy float64
}

func footOf(e plane.Edge) foot {
	l := e.Length()
	return foot{e, (e.X1 - e.X0) / l, (e.Y1 - e.Y0) / l}
}

// sees is where a place lies along a foot and up from it.
func (f foot) sees(x, y float64) (along, up float64) {
	dx, dy := x-f.X0, y-f.Y0
	return dx*f.ux + dy*f.uy, -dx*f.uy + dy*f.ux
}

// place is sees the other way round.
func (f foot) place(along, up float64) (x, y float64) {
	return f.X0 + along*f.ux - up*f.uy, f.Y0 + along*f.uy + up*f.ux
}

// extent is how far a rim reaches along a foot and up from it.
func (f foot) extent(rim plane.Region) (low, high, top float64) {
	low, high, top = math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, e := range rim.Edges {
		for _, share := range []float64{0, 0.25, 0.5, 0.75, 1} {
			along, up := f.sees(e.At(share))
			low, high, top = math.Min(low, along), math.Max(high, along), math.Max(top, up)
		}
		if e.IsArc() && !e.Hollow { // its crown, wherever it lies
			along, up := f.sees(e.CX, e.CY)
			low, high, top = math.Min(low, along-e.Radius), math.Max(high, along+e.Radius), math.Max(top, up+e.Radius)
		}
	}
	return low, high, top
}

// onLedge works out how work stands on an angle plate at a moment.
func (s Shop) onLedge(m Mount, at moment) ledged {
	h := m.Holding
	l := ledged{gap: s.gapBehind(m, at)}
	l.Owned, l.Width, l.Thick, l.Swing = boltsOwned(h), or(float64(h.Width), usualLedgeWidth), at.flat.Front-at.flat.Back, float64(s.Lathe.Swing)
	l.On = math.Min(l.Thick, or(float64(h.Reach), usualLedgeReach)-l.gap)
	l.Slowest = float64(s.Lathe.SlowestSpeed)
	if len(s.Lathe.Speeds) > 0 {
		l.Slowest = float64(s.Lathe.Speeds[0])
	}
	plateR := 0.0
	for _, p := range s.Shop.Holdings {
		if p.Kind == partspec.Faceplate {
			if r := s.plateRadius(p) + plateRim; r > plateR {
				plateR, l.plate = r, p.Name
			}
		}
	}
	l.Plate = 2 * plateR
	l.Raw = at.flat.Left[m.Base] > sameSpot
	f, rim := footOf(s.Flat.Drawn.Edges[m.Base]), s.rim(at)
	axis, height := f.sees(m.CentreX, m.CentreY)
	left, right, ok := s.toes(m, f, rim, axis)
	if !ok {
		l.Why = fmt.Sprintf("beside the bore no straight edge opposite %s lets a strap press on metal that is solid down to the ledge, on both sides", m.Surface)
		return l
	}
	low, high, crown := f.extent(rim)
	l.lay(f, left, right, low, high, crown, h)
	middle := (l.leftEnd + l.rightEnd) / 2
	l.Wide = l.rightEnd - l.leftEnd
	l.ledge.X0, l.ledge.Y0 = f.place(middle-l.Width/2, 0)
	l.ledge.X1, l.ledge.Y1 = f.place(middle+l.Width/2, 0)
	l.LegOff = height + l.ledge.ThickMM + ledgeBoltShare*(l.ledge.LegMM-l.ledge.ThickMM)
	far := math.Max(math.Abs(middle-l.Width/2-axis), math.Abs(middle+l.Width/2-axis))
	l.Reach = math.Max(swing(rim, m.CentreX, m.CentreY), math.Hypot(far, height+l.ledge.LegMM))
	for _, c := range l.ledge.Straps {
		x, y := strapEnd(c, l.ledge.Bar)
		l.Reach = math.Max(l.Reach, math.Hypot(x-m.CentreX, y-m.CentreY)+strapThick)
	}
	l.balance, _ = balance(append([]mechanics.Weight{s.weight(at)}, l.weights(f, middle)...), m.CentreX, m.CentreY, math.Max(plateR-plateRim, 1))
	l.Unbalance, l.WeightKg, l.MostRPM = l.balance.UnbalanceKgMM, l.balance.WeightKg, l.balance.MostRPM
	l.HaveN = strapsOnLedge * clampForce(h)
	if off, tool := l.strapsOff(left, right, axis, height), s.turnedOut(m); off < tool+toolRoom {
		l.Why = fmt.Sprintf("the straps would lie %.1f from the axis, the tool comes to %.1f", off, tool)
	}
	foot := f.Length()
	l.NeedN = s.ledgeNeed(at, mechanics.LedgeDemand{HeightMM: height, BesideMM: math.Max(math.Abs(axis), math.Abs(foot-axis)), ArmMM: math.Min((left.along+right.along)/2, foot-(left.along+right.along)/2)})
	l.squeeze = s.pressedBeside(at, rim, l.HaveN)
	return l
}

// strapsOff is how near to the spindle's axis the straps come, or their bar.
func (l *ledged) strapsOff(left, right toe, axis, height float64) float64 {
	least := math.Inf(1)
	for _, t := range []toe{left, right} {
		over := math.Max(0, math.Max(t.up-height, height-t.up-strapThick))
		beside := math.Abs(t.along-axis) - t.wide/2
		if l.ledge.Bar {
			beside = 0
		}
		least = math.Min(least, math.Hypot(over, beside))
	}
	return least
}

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

// A toe is a strap's place on an edge that looks away from the ledge, in the frame of the foot.
type toe struct{ along, up, wide float64 }

// toes are the places farthest out, one on each side of the axis, where a strap presses on a column of solid metal that stands on the foot.
func (s Shop) toes(m Mount, f foot, rim plane.Region, axis float64) (left, right toe, ok bool) {
	most := or(float64(m.Holding.ToeWidth), usualToe)
	holes := s.finishedHoles()
	var foundL, foundR bool
	for _, e := range rim.Edges {
		ox, oy := e.Outward(0.5)
		if e.IsArc() || -ox*f.uy+oy*f.ux < 1-facingSlack {
			continue
		}
		a0, up := f.sees(e.X0, e.Y0)
		a1, _ := f.sees(e.X1, e.Y1)
		from, to := math.Max(math.Min(a0, a1), 0), math.Min(math.Max(a0, a1), f.Length())
		wide := math.Min(most, to-from)
		if wide < leastBite {
			continue
		}
		for a := from + wide/2; a <= to-wide/2+edgeNoise; a += columnStep {
			if t := (toe{a, up, wide}); a+wide/2 < axis && (!foundL || a < left.along) && s.column(f, t, rim, holes) {
				left, foundL = t, true
			}
		}
		for a := to - wide/2; a >= from+wide/2-edgeNoise; a -= columnStep {
			if t := (toe{a, up, wide}); a-wide/2 > axis && (!foundR || a > right.along) && s.column(f, t, rim, holes) {
				right, foundR = t, true
			}
		}
	}
	return left, right, foundL && foundR
}

// column reports whether there is solid metal all the way from a toe down to the foot, looked at in short steps, and no hole in it nor near.
func (s Shop) column(f foot, t toe, rim plane.Region, holes []zone) bool {
	n := int(math.Ceil(t.up / columnStep))
	for i := range n {
		up := t.up * (float64(i) + 0.5) / float64(n)
		for _, a := range []float64{t.along - t.wide/2, t.along, t.along + t.wide/2} {
			x, y := f.place(a, up)
			if rim.Inside(x, y) < -edgeNoise || clearOf(holes, x, y) < columnClear {
				return false
			}
		}
	}
	return n > 0
}

// lay puts the straps on their toes: one bar over both where nothing stands up between them, else a strap each, its packing outside its stud.
func (l *ledged) lay(f foot, left, right toe, low, high, top float64, h partspec.Holding) {
	l.ledge = plan.Ledge{Faceplate: l.plate, ReachMM: or(float64(h.Reach), usualLedgeReach), LegMM: or(float64(h.Leg), usualLedgeLeg), ThickMM: or(float64(h.Thickness), usualLedgeThick)}
	l.ledge.Bar = math.Abs(left.up-right.up) <= edgeNoise && top <= left.up+edgeNoise
	for _, side := range []struct {
		toe
		stud float64
		sign float64
	}{{left, left.along - (low - studRoom), -1}, {right, high + studRoom - right.along, 1}} {
		x, y := f.place(side.along, side.up)
		c := plan.Clamp{XMM: x, YMM: y, ToeMM: side.wide, AngleDeg: degrees(math.Atan2(side.sign*f.uy, side.sign*f.ux)), StudMM: side.stud, ForceN: clampForce(h)}
		l.ledge.Straps = append(l.ledge.Straps, c)
		ex, ey := strapEnd(c, l.ledge.Bar)
		end, _ := f.sees(ex, ey)
		if side.sign < 0 {
			l.leftEnd = end
		} else {
			l.rightEnd = end
		}
	}
}

// strapEnd is where a strap ends, over the outer side of its packing, or its bar.
func strapEnd(c plan.Clamp, bar bool) (x, y float64) {
	long := strapLongTimes*c.StudMM + packingHalf
	if bar {
		long = c.StudMM + barBeyondStud
	}
	a := c.AngleDeg * math.Pi / 180
	return c.XMM + long*math.Cos(a), c.YMM + long*math.Sin(a)
}

// weights are the angle plate's two legs and the straps with their studs.
func (l *ledged) weights(f foot, middle float64) []mechanics.Weight {
	g := l.ledge
	slab := func(long, down float64) mechanics.Weight {
		x, y := f.place(middle, -down)
		return mechanics.Weight{MassKG: l.Width * long * g.ThickMM * steelKgM3 * kgPerM3ToMM3, XMM: x, YMM: y}
	}
	list := []mechanics.Weight{slab(g.ReachMM, g.ThickMM/2), slab(g.LegMM-g.ThickMM, (g.LegMM+g.ThickMM)/2)}
	for _, c := range g.Straps {
		ex, ey := strapEnd(c, g.Bar)
		_, up := f.sees(c.XMM, c.YMM)
		sx, sy := f.place(0, up/2)
		a := c.AngleDeg * math.Pi / 180
		along, _ := f.sees(c.XMM+c.StudMM*math.Cos(a), c.YMM+c.StudMM*math.Sin(a))
		list = append(list,
			mechanics.Weight{MassKG: strapThick * c.ToeMM * math.Hypot(ex-c.XMM, ey-c.YMM) * steelKgM3 * kgPerM3ToMM3, XMM: (c.XMM + ex) / 2, YMM: (c.YMM + ey) / 2},
			mechanics.Weight{MassKG: math.Pi / 4 * studThick * studThick * (up + studMore) * steelKgM3 * kgPerM3ToMM3, XMM: sx + along*f.ux, YMM: sy + along*f.uy})
	}
	return list
}

// studMore is how much longer a stud is than the work is high: through ledge, strap, washer and nut. Common practice, no source.
const studMore = 30.0

// ledgeNeed is what the straps have to press with in all for the heaviest cut of a moment.
func (s Shop) ledgeNeed(at moment, d mechanics.LedgeDemand) float64 {
	need := 0.0
	d.Friction, d.Safety = clampFriction, safety
	for i, k := range at.tasks {
		way := at.ways[i]
		force := way.Force(at.light)
		d.SideN, d.TorqueNmm = math.Hypot(force, force/2), force*way.ForceAt
		if axial(s.Tasks[k].Process) {
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

// ledgeSetup fills in the holding on an angle plate.
func (s Shop) ledgeSetup(m Mount, at moment, setup *plan.Setup) {
	l := s.onLedge(m, at)
	f := footOf(s.Flat.Drawn.Edges[m.Base])
	_, height := f.sees(m.CentreX, m.CentreY)
	g := l.ledge
	g.X0, g.Y0, g.X1, g.Y1, g.Straps = tidyMM(g.X0), tidyMM(g.Y0), tidyMM(g.X1), tidyMM(g.Y1), tidyClamps(g.Straps)
	setup.Ledge, setup.RunOutMM = &g, m.RunOut
	setup.Bed = &plan.Bed{Kind: "parallels", HeightMM: l.gap, GapMM: l.gap}
	grip := &setup.Grip
	grip.Kind, grip.LeastN, grip.WorkingN, grip.Feel = "ledge", l.NeedN, math.Floor(l.HaveN), "both nuts a firm pull with a short spanner, in turns, a little at a time"
	grip.ErrorMM, grip.LimitMM, grip.Trust, grip.StressMPa = math.Ceil(l.lobe*1e4)/1e4, math.Round(l.limit*1e4)/1e4, string(l.sure.Trust), math.Round(l.stress)
	b := l.balance
	b.MassKg, b.UnbalanceKgMM, b.WeightKg, b.AngleDeg, b.LeftOverKgMM = round3(b.MassKg), round3(b.UnbalanceKgMM), round3(b.WeightKg), round1(b.AngleDeg), round3(b.LeftOverKgMM)
	if s.Rules.Has("B-09") {
		setup.Balance = &b
		setup.Why = append(setup.Why, plan.Reason{Text: fmt.Sprintf("%.1f kg mm out of balance with its angle plate: a counterweight of %.2f kg; the %.1f that balancing leaves shake with %.0f N at %.0f a minute", b.UnbalanceKgMM, b.WeightKg, b.LeftOverKgMM, b.ShakingN, b.MostRPM), Rule: "B-09"})
	}
	if s.Rules.Has("B-10") {
		setup.Why = append(setup.Why, plan.Reason{Text: fmt.Sprintf("%s and the bore lie one to the other as ledge and spindle do: %s apart, parallel within %.2f in 100; it swings Ø%.0f of %.0f; two straps press with %.0f N in all, the cuts ask %.0f, safety 2.5",
			m.Surface, mm(height), or(float64(m.Holding.Squareness), usualLedgeSlope), math.Ceil(2*l.Reach), l.Swing, grip.WorkingN, l.NeedN), Rule: "B-10"})
	}
	over := "Two straps, a toe on each side of the bore as the sketch shows, studs in the ledge close to the work, packing under the outer ends as high as the work."
	if g.Bar {
		over = "One bar over the top with a stud at each end, on two pads of card or soft sheet where the sketch shows the toes: nothing presses over the bore."
	}
	setup.How = append([]string{
		fmt.Sprintf("Bolt the angle plate to the faceplate, its ledge about %s from the spindle's axis; clock the ledge along the spindle: parallel within %.2f in 100.", mm(round1(height)), or(float64(m.Holding.Squareness), usualLedgeSlope)),
		fmt.Sprintf("Stand the work on %s, both faces clean; a stop of %s screwed to the faceplate behind it, clear of the bore by 2: it takes the feed.", m.Surface, mm(l.gap)),
		over,
		fmt.Sprintf("Tighten evenly, in turns: together they press with about %.0f N; %.0f must hold.", math.Floor(grip.WorkingN/10)*10, l.NeedN),
	}, s.howFound(m)...)
	setup.How = append(setup.How,
		fmt.Sprintf("Counterweight about %.2f kg at %s from the axis, opposite the heavy side (%.0f degrees from +X): move it until the plate, out of gear, stops anywhere.", b.WeightKg, mm(b.RadiusMM), b.AngleDeg),
		fmt.Sprintf("Turn it by hand one full revolution, the tool at each end of its travel; then no faster than %.0f a minute.", b.MostRPM))
}
