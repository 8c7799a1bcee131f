package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

// An angle plate where the workshop does not give its sizes, and what work needs on it. Common practice, no source.
const (
	ledgeWidth   = 100.0
	ledgeReach   = 60.0
	ledgeLeg     = 60.0
	ledgeThick   = 10.0
	ledgeSlope   = 0.02 // out of parallel with the spindle over 100, clocked (that of a vice, rule B-02)
	ledgeShare   = 2.0 / 3
	ledgeStraps  = 2
	barEnd       = 6.0  // of a bar, past its stud
	packingAlong = 10.0 // of the packing under a strap's outer end, along the ledge
	studBeyond   = 30.0 // of a stud, through ledge, strap and nut
	plateOfSwing = 0.9  // of a faceplate's diameter
)

func given(v, usual float64) float64 {
	if v > 0 {
		return v
	}
	return usual
}

// standing is flat work as an angle plate's ledge sees it: along the ledge from its beginning, and up from its face.
type standing struct {
	*plan.Ledge
	long, ux, uy float64
}

// standing is false where no ledge is told of, or one without two straps.
func (f *flatWalk) standing() (standing, bool) {
	l := f.setup.Ledge
	if l == nil || len(l.Straps) != ledgeStraps {
		return standing{}, false
	}
	long := math.Hypot(l.X1-l.X0, l.Y1-l.Y0)
	return standing{l, long, (l.X1 - l.X0) / long, (l.Y1 - l.Y0) / long}, long > same
}

func (s standing) sees(x, y float64) (along, up float64) {
	return (x-s.X0)*s.ux + (y-s.Y0)*s.uy, (y-s.Y0)*s.ux - (x-s.X0)*s.uy
}

func (s standing) place(along, up float64) (x, y float64) {
	return s.X0 + along*s.ux - up*s.uy, s.Y0 + along*s.uy + up*s.ux
}

// block is a rectangle along the ledge.
func (s standing) block(a0, up0, a1, up1 float64) plane.Set {
	var r plane.Region
	corners := [][2]float64{{a0, up0}, {a1, up0}, {a1, up1}, {a0, up1}}
	for i, c := range corners {
		n := corners[(i+1)%len(corners)]
		x0, y0 := s.place(c[0], c[1])
		x1, y1 := s.place(n[0], n[1])
		r.Edges = append(r.Edges, plane.Edge{X0: x0, Y0: y0, X1: x1, Y1: y1})
	}
	return r.Figure()
}

// end is where a strap ends, over the outer side of its packing, or its bar.
func (s standing) end(c plan.Clamp) (x, y float64) {
	long := 3*c.StudMM + packingAlong/2 // the stud stands at one third (rule B-08)
	if s.Bar {
		long = c.StudMM + barEnd
	}
	sin, cos := math.Sincos(c.AngleDeg * math.Pi / 180)
	return c.XMM + long*cos, c.YMM + long*sin
}

// foot is the stretch of a finished edge that stands on the ledge, along it.
func (f *flatWalk) foot(s standing) (from, to float64, ok bool) {
	lo, hi := f.heights()
	from, to = math.Inf(1), math.Inf(-1)
	for _, e := range f.work.outer((lo + hi) / 2) {
		a0, up0 := s.sees(e.X0, e.Y0)
		a1, up1 := s.sees(e.X1, e.Y1)
		if e.IsArc() || math.Abs(up0) > figure || math.Abs(up1) > figure || a1 <= a0 {
			continue
		}
		for _, d := range f.drawn.outline.Edges {
			b0, v0 := s.sees(d.X0, d.Y0)
			b1, v1 := s.sees(d.X1, d.Y1)
			if !d.IsArc() && math.Abs(v0) <= figure && math.Abs(v1) <= figure && b1 > b0 {
				from, to, ok = math.Min(from, math.Max(a0, b0)), math.Max(to, math.Min(a1, b1)), true
			}
		}
	}
	return from, to, ok && to > from
}

// checkLedge holds that work stands by a finished edge on an angle plate that is owned and has room, and that its straps press on metal that is solid down to it.
func (f *flatWalk) checkLedge() {
	l, h := f.setup.Ledge, f.holding
	s, ok := f.standing()
	if !ok {
		f.failOp("grip", "nothing tells where the angle plate's ledge lies and which two straps press the work on it")
		return
	}
	differs := func(told float64, owned units.Length, usual float64) bool {
		return math.Abs(told-given(float64(owned), usual)) > figure
	}
	if differs(s.long, h.Width, ledgeWidth) || differs(l.ReachMM, h.Reach, ledgeReach) || differs(l.LegMM, h.Leg, ledgeLeg) || differs(l.ThickMM, h.Thickness, ledgeThick) {
		f.failOp("grip", "a ledge of %s by %s, its leg %s, both %s thick, is not that of %s", mm(s.long), mm(l.ReachMM), mm(l.LegMM), mm(l.ThickMM), h.Name)
	}
	f.checkBolted(s)
	from, to, stands := f.foot(s)
	if !stands {
		f.failOp("grip", "no finished straight edge of the work stands on the ledge")
		return
	}
	lo, hi := f.heights()
	for _, e := range f.work.outer((lo + hi) / 2) {
		for _, share := range []float64{0, 0.25, 0.5, 0.75} {
			if _, up := s.sees(e.At(share)); up < -figure {
				f.failOp("grip", "the work reaches %s into the ledge", mm(-up))
				return
			}
		}
	}
	on := math.Min(hi-lo, l.ReachMM)
	if b := f.setup.Bed; b != nil {
		on = math.Min(hi-lo, l.ReachMM-b.HeightMM)
	}
	if on < ledgeShare*(hi-lo)-figure {
		f.failOp("grip", "%s of %s thickness stand on the ledge; two thirds are the least (rule B-10)", mm(on), mm(hi-lo))
	}
	f.checkStraps(s, from, to)
}

// checkBolted holds that the angle plate finds a faceplate under its leg.
func (f *flatWalk) checkBolted(s standing) {
	plate := 0.0
	for _, h := range f.job.Workshop.Holdings {
		if h.Kind == partspec.Faceplate && h.Name == s.Faceplate {
			plate = math.Max(plate, given(float64(h.Diameter), plateOfSwing*float64(f.machine.Swing)))
		}
	}
	if plate == 0 {
		f.failOp("holding", "an angle plate is bolted to a faceplate, and no %q is owned", s.Faceplate)
		return
	}
	if _, height := s.sees(f.setup.CentreX, f.setup.CentreY); height+(s.LegMM+s.ThickMM)/2 > plate/2+figure {
		f.failOp("holding", "the middle of the angle plate's leg lies %s from the axis, beyond the faceplate of Ø%s", mm(height+(s.LegMM+s.ThickMM)/2), mm(plate))
	}
}

// checkStraps holds the straps on a ledge: two, on both sides of the axis, each toe flat on an edge, over solid metal all the way down, their ends on the ledge.
func (f *flatWalk) checkStraps(s standing, from, to float64) {
	if owned := f.holding.Clamps; owned > 0 && owned < ledgeStraps {
		f.failOp("clamps", "%d bolt with its strap is owned: two hold the work (rule B-10)", owned)
		return
	}
	axis, _ := s.sees(f.setup.CentreX, f.setup.CentreY)
	low, high := f.sides(s)
	beside := [2]bool{}
	for i, c := range s.Straps {
		a, up := s.sees(c.XMM, c.YMM)
		sin, cos := math.Sincos(c.AngleDeg * math.Pi / 180)
		out := cos*s.ux + sin*s.uy
		ends, _ := s.sees(s.end(c))
		stud := a + out*c.StudMM
		half := c.ToeMM / 2
		switch {
		case !(c.ToeMM > 0) || !(c.StudMM > 0) || math.Abs(math.Abs(out)-1) > same*100 || i == 1 && s.Bar && math.Abs(up-f.upOf(s, 0)) > figure:
			f.failOp("clamps", "a strap at %s, %s does not lie along the ledge", mm(c.XMM), mm(c.YMM))
		case stud > low+figure && stud < high-figure:
			f.failOp("clamps", "the stud of the strap at %s, %s would stand in the work", mm(c.XMM), mm(c.YMM))
		case ends < -figure || ends > s.long+figure:
			f.failOp("clamps", "the strap at %s, %s ends beyond the ledge", mm(c.XMM), mm(c.YMM))
		case a-half < from-figure || a+half > to+figure || !f.column(s, a, up, half):
			f.failOp("clamps", "the toe at %s, %s does not press on metal that is solid down to the ledge (rule B-10)", mm(c.XMM), mm(c.YMM))
		case math.Abs(a-axis) < half:
			f.failOp("clamps", "the strap at %s, %s presses over the bore", mm(c.XMM), mm(c.YMM))
		}
		if most := float64(f.holding.ClampForce); most > 0 && c.ForceN > most*(1+figure) {
			f.failOp("grip force", "a strap is to press with %.0f N; those of %s give %.0f", c.ForceN, f.holding.Name, most)
		}
		if widest := float64(f.holding.ToeWidth); widest > 0 && c.ToeMM > widest+figure {
			f.failOp("clamps", "a toe %s wide; those of %s are %s", mm(c.ToeMM), f.holding.Name, mm(widest))
		}
		if a < axis {
			beside[0] = true
		} else {
			beside[1] = true
		}
	}
	if !beside[0] || !beside[1] {
		f.failOp("clamps", "both straps press on one side of the bore (rule B-10)")
	}
}

func (f *flatWalk) upOf(s standing, strap int) float64 {
	_, up := s.sees(s.Straps[strap].XMM, s.Straps[strap].YMM)
	return up
}

// sides are how far the work reaches along the ledge.
func (f *flatWalk) sides(s standing) (low, high float64) {
	lo, hi := f.heights()
	low, high = math.Inf(1), math.Inf(-1)
	for _, e := range f.work.outer((lo + hi) / 2) {
		for _, share := range []float64{0, 0.25, 0.5, 0.75} {
			a, _ := s.sees(e.At(share))
			low, high = math.Min(low, a), math.Max(high, a)
		}
	}
	return low, high
}

// column reports whether the toe lies flat on an edge that looks away from the ledge, with solid metal under it all the way down.
func (f *flatWalk) column(s standing, a, up, half float64) bool {
	lo, hi := f.heights()
	flat := 0.0
	for _, e := range f.work.outer((lo + hi) / 2) {
		a0, up0 := s.sees(e.X0, e.Y0)
		a1, up1 := s.sees(e.X1, e.Y1)
		if !e.IsArc() && math.Abs(up0-up) <= figure && math.Abs(up1-up) <= figure && a1 < a0 {
			flat += math.Max(0, math.Min(a0, a+half)-math.Max(a1, a-half))
		}
	}
	if flat < 2*half-2*figure {
		return false
	}
	block := s.block(a-half+figure, figure, a+half-figure, up-figure)
	for _, z := range []float64{lo + 2*same, (lo + hi) / 2, hi - 2*same} {
		if !f.work.solidAt(block, z) {
			return false
		}
	}
	return true
}
