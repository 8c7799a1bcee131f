package draw

import (
	"fmt"
	"math"

	"catchplate/planner/plan"
)

// Sizes of an angle plate's parts, in millimetres of the work: a strap, half a stud with its washer, and a pad under a bar.
const (
	ledgeStrap = 8.0
	ledgeStud  = 3.5
	ledgePad   = 1.5
	ledgeNut   = 6.0
	ledgeTail  = 5.0 // half of the packing under a strap's outer end
)

// ledgeView is an angle plate in plan: along its ledge, and up from it.
type ledgeView struct {
	*plan.Ledge
	v            planeView
	ux, uy, long float64
}

func (sc *flatScene) ledge() (ledgeView, bool) {
	l := sc.s.Ledge
	if l == nil {
		return ledgeView{}, false
	}
	long := math.Hypot(l.X1-l.X0, l.Y1-l.Y0)
	if long < touching {
		return ledgeView{}, false
	}
	return ledgeView{l, sc.v, (l.X1 - l.X0) / long, (l.Y1 - l.Y0) / long, long}, true
}

func (l ledgeView) at(along, up float64) Point {
	return l.v.at(l.X0+along*l.ux-up*l.uy, l.Y0+along*l.uy+up*l.ux)
}

// sees is where a place lies along the ledge and up from it.
func (l ledgeView) sees(x, y float64) (along, up float64) {
	return (x-l.X0)*l.ux + (y-l.Y0)*l.uy, (y-l.Y0)*l.ux - (x-l.X0)*l.uy
}

func (l ledgeView) block(c *Canvas, a0, up0, a1, up1 float64) {
	c.Poly(Holder, true, l.at(a0, up0), l.at(a1, up0), l.at(a1, up1), l.at(a0, up1))
}

// reach is a strap along the ledge: its toe, its stud and its outer end.
func (l ledgeView) reach(cl plan.Clamp) (toe, stud, end, up float64) {
	toe, up = l.sees(cl.XMM, cl.YMM)
	out := math.Copysign(1, math.Cos(cl.AngleDeg*math.Pi/180)*l.ux+math.Sin(cl.AngleDeg*math.Pi/180)*l.uy)
	stud, end = toe+out*cl.StudMM, toe+out*3*cl.StudMM
	if l.Bar {
		end = stud + out*ledgeNut
	}
	return toe, stud, end, up
}

// corners are the places of an angle plate and its straps that lie farthest out.
func (l ledgeView) corners() []Point {
	list := []Point{l.at(0, -l.LegMM), l.at(l.long, -l.LegMM)}
	for _, cl := range l.Straps {
		_, _, end, up := l.reach(cl)
		list = append(list, l.at(end, up+ledgeStrap))
	}
	return list
}

// ledgeBehind draws the faceplate and the leg that is bolted to it.
func (c *Canvas) ledgeBehind(sc *flatScene) {
	l, ok := sc.ledge()
	if !ok {
		return
	}
	centre := sc.v.at(sc.centre.x, sc.centre.y)
	c.Circle(Holder, centre, sc.plateRadius())
	sc.keep.ring(centre, sc.plateRadius())
	l.block(c, 0, -l.ThickMM, l.long, -l.LegMM)
	for _, share := range []float64{0.2, 0.8} {
		c.Circle(Head, l.at(l.long*share, -(l.ThickMM+l.LegMM)/2), studRadius)
	}
}

// ledgeBefore draws the ledge that the work stands on, and what presses it down.
func (c *Canvas) ledgeBefore(sc *flatScene) {
	l, ok := sc.ledge()
	if !ok {
		return
	}
	l.block(c, 0, -l.ThickMM, l.long, 0)
	sc.keep.line(l.at(0, -l.ThickMM/2), l.at(l.long, -l.ThickMM/2))
	pad := 0.0
	if l.Bar {
		pad = ledgePad
	}
	for _, cl := range l.Straps {
		toe, stud, end, up := l.reach(cl)
		half := cl.ToeMM / 2
		l.block(c, stud-ledgeStud, -l.ThickMM-ledgeNut, stud+ledgeStud, up+pad+ledgeStrap+ledgeNut)
		if l.Bar {
			l.block(c, toe-half, up, toe+half, up+pad)
		} else {
			l.block(c, end-ledgeTail, 0, end+ledgeTail, up)
			l.block(c, toe-math.Copysign(half, end-toe), up, end+math.Copysign(ledgeTail, end-toe), up+ledgeStrap)
		}
		sc.keep.box(around(l.at(stud, up+ledgeStrap), 3))
	}
	if l.Bar && len(l.Straps) == 2 {
		_, _, first, up := l.reach(l.Straps[0])
		_, _, last, _ := l.reach(l.Straps[1])
		l.block(c, first, up+pad, last, up+pad+ledgeStrap)
		sc.keep.line(l.at(first, up+pad+ledgeStrap/2), l.at(last, up+pad+ledgeStrap/2))
	}
}

func around(p Point, by float64) Box { return Box{p.X - by, p.Y - by, p.X + by, p.Y + by} }

// ledgeNames writes what is what beside an angle plate.
func (c *Canvas) ledgeNames(sc *flatScene) {
	l, ok := sc.ledge()
	if !ok {
		return
	}
	for i, cl := range l.Straps {
		_, _, end, up := l.reach(cl)
		name := fmt.Sprintf("strap %d", i+1)
		if l.Bar {
			name = fmt.Sprintf("stud %d", i+1)
		}
		c.near(&sc.keep, l.at(end, up+ledgeStrap/2), 2.5, sc.v.towards(cl.AngleDeg), Text{Size: noteSize, Text: name})
	}
	c.near(&sc.keep, l.at(l.long, -l.ThickMM/2), 2.5, sc.v.towards(math.Atan2(l.uy, l.ux)*180/math.Pi), Text{Size: noteSize, Text: "ledge"})
}

// ledgeSide draws the angle plate in the view cut open along Y: from its side where the ledge lies across that, with the bar over the work.
func (c *Canvas) ledgeSide(sc *flatScene, v cutView, plate float64) {
	l, ok := sc.ledge()
	if !ok || math.Abs(l.ux) < math.Abs(l.uy) {
		return
	}
	face := v.base + max(v.high(sc.before.BackZ), v.high(sc.before.FrontZ))
	y := func(up float64) float64 { return v.at(l.Y0+up*l.ux, 0).Y }
	long := l.ReachMM * v.deep
	c.Rect(Holder, Point{plate, y(0)}, Point{max(plate+long, (v.base+face)/2), y(-l.ThickMM)})
	c.Rect(Holder, Point{plate, y(-l.ThickMM)}, Point{plate + leastBed, y(-l.LegMM)})
	if len(l.Straps) == 0 {
		return
	}
	_, _, _, up := l.reach(l.Straps[0])
	middle, half := (v.base+face)/2, max(l.Straps[0].ToeMM*v.deep/2, 2)
	c.Rect(Holder, Point{middle - half, y(up)}, Point{middle + half, y(up + ledgeStrap)})
}
