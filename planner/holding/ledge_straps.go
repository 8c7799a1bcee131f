package holding

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

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

// around is how far a rim reaches along a foot and up from it.
type around struct{ low, high, bottom, top float64 }

func (f foot) extent(rim plane.Region) around {
	a := around{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)}
	take := func(x, y, more float64) {
		along, up := f.sees(x, y)
		a.low, a.high, a.bottom, a.top = math.Min(a.low, along-more), math.Max(a.high, along+more), math.Min(a.bottom, up-more), math.Max(a.top, up+more)
	}
	for _, e := range rim.Edges {
		take(e.X0, e.Y0, 0)
		for k := 1; e.IsArc() && k < arcParts; k++ {
			x, y := e.At(float64(k) / arcParts)
			take(x, y, 0)
		}
	}
	return a
}

// arcParts is in how many parts an arc is looked at: the sagitta of a 64th of a half circle is 0.0003 of its radius.
const arcParts = 64

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
func (l *ledged) lay(f foot, left, right toe, a around, h partspec.Holding) {
	l.ledge = plan.Ledge{Faceplate: l.plate, ReachMM: or(float64(h.Reach), usualLedgeReach), LegMM: or(float64(h.Leg), usualLedgeLeg), ThickMM: or(float64(h.Thickness), usualLedgeThick)}
	l.ledge.Bar = math.Abs(left.up-right.up) <= edgeNoise && a.top <= left.up+edgeNoise
	for _, side := range []struct {
		toe
		stud float64
		sign float64
	}{{left, left.along - (a.low - studRoom), -1}, {right, a.high + studRoom - right.along, 1}} {
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
func (l *ledged) weights(f foot) []mechanics.Weight {
	g, middle := l.ledge, l.middle()
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
