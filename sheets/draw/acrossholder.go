package draw

import "math"

// Sizes of the symbols that hold lying work, in millimetres on paper.
const (
	veeBelow   = 8.0 // of a vee block below its groove
	veeWider   = 1.35
	viceTall   = 7.0
	plateWide  = 6.0
	plateOver  = 5.0
	footLong   = 18.0
	clampWide  = 8.0
	lyingTable = 3.5
)

// outline is a closed chain of points that is drawn as a holder.
type outline []Point

func (c *Canvas) lyingHolder(_ *acrossScene, parts []outline) {
	for _, p := range parts {
		c.Poly(Holder, true, p...)
	}
}

func rect(left, top, right, bottom float64) outline {
	return outline{{left, top}, {right, top}, {right, bottom}, {left, bottom}}
}

// grip is the stretch that is held, on paper, and its radius.
func (sc *acrossScene) grip() (from, to, r float64) {
	g := sc.s.Grip
	from, to = sc.v.x(min(g.FromZ, g.ToZ)), sc.v.x(max(g.FromZ, g.ToZ))
	return max(from, sc.left), min(to, sc.right), g.RadiusMM * sc.v.scale
}

// groove is how far below the axis the bottom of a right-angled vee lies that holds a round.
func groove(r float64) float64 { return r * math.Sqrt2 }

// plateAt is where the face of an angle plate stands: at the end that is not free.
func (sc *acrossScene) plateAt() (x, away float64) {
	if sc.s.FreeEnd == "left" {
		return sc.right, 1
	}
	return sc.left, -1
}

func (sc *acrossScene) bolted() bool { return sc.s.Grip.Kind == "clamps" }

// holderAbove is what lies under or beside the work as seen from above.
func (sc *acrossScene) holderAbove() []outline {
	from, to, r := sc.grip()
	switch {
	case sc.s.Grip.Kind == "vee":
		w := r * veeWider
		return []outline{rect(from, -w, to, w)}
	case sc.s.Grip.Kind == "vice":
		return []outline{rect(from, -r-jawDeep, to, -r), rect(from, r, to, r+jawDeep)}
	case sc.bolted():
		x, away := sc.plateAt()
		return []outline{rect(x, -sc.reach-plateOver, x+away*plateWide, sc.reach+plateOver)}
	case sc.divided():
		return sc.headAlong(headHalf)
	}
	return nil
}

// clampAbove is the strap over work in a vee block.
func (sc *acrossScene) clampAbove() []outline {
	if sc.s.Grip.Kind != "vee" {
		return nil
	}
	from, to, r := sc.grip()
	middle, half := (from+to)/2, min(clampWide, (to-from)*0.7)/2
	return []outline{rect(middle-half, -r*veeWider-2, middle+half, r*veeWider+2)}
}

// holderAlong is what carries the work as the cut along its axis shows it, and the table below.
func (sc *acrossScene) holderAlong() []outline {
	from, to, r := sc.grip()
	floor := sc.floor()
	table := rect(sc.left-footLong/2, floor, sc.right+footLong/2, floor+lyingTable)
	if x, away := sc.plateAt(); sc.bolted() {
		table = rect(min(sc.left, x+away*footLong)-footLong/4, floor, max(sc.right, x+away*footLong)+footLong/4, floor+lyingTable)
	}
	switch {
	case sc.s.Grip.Kind == "vee":
		middle, half := (from+to)/2, min(clampWide, (to-from)*0.7)/2
		return []outline{rect(from, r*0.4, to, floor), rect(middle-half, -r-strapThick, middle+half, -r), table}
	case sc.s.Grip.Kind == "vice":
		return []outline{rect(from, -r*0.4, to, floor), table}
	case sc.bolted():
		x, away := sc.plateAt()
		return []outline{{{x, -sc.reach - plateOver}, {x + away*plateWide, -sc.reach - plateOver}, {x + away*plateWide, floor - plateWide},
			{x + away*footLong, floor - plateWide}, {x + away*footLong, floor}, {x, floor}}, table}
	}
	if sc.divided() {
		return append(sc.headAlong(floor), sc.underHead(floor))
	}
	return []outline{table}
}

// floor is how far below the axis the table lies.
func (sc *acrossScene) floor() float64 {
	_, _, r := sc.grip()
	switch {
	case sc.s.Grip.Kind == "vee":
		return max(groove(r)+veeBelow, sc.reach+3)
	case sc.bolted():
		return sc.reach + plateOver + 3
	case sc.divided():
		return max(sc.reach+3, r+jawHigh+headBelow)
	}
	return sc.reach + viceTall
}

// bushShare is how much of the gripped bore the bush is drawn to fill.
const bushShare = 0.55

// boltAlong is the bush and the screw that draw work against an angle plate.
func (sc *acrossScene) boltAlong() []outline {
	if !sc.bolted() || sc.s.Grip.RadiusMM == 0 {
		return nil
	}
	x, away := sc.plateAt()
	from, to, r := sc.grip()
	tail := to
	if away < 0 {
		tail = from
	}
	start := tail - away*(to-from)*bushShare
	return []outline{rect(start, -r, tail, r), rect(start-away*3, -r*0.6, start, r*0.6), rect(start, -r*0.3, x+away*(plateWide+3), r*0.3)}
}

// holderEnd is what carries the work as its end shows it, and the table below.
func (sc *acrossScene) holderEnd() []outline {
	_, _, r := sc.grip()
	floor, wide := sc.floor(), sc.reach+jawDeep
	table := rect(-wide-4, floor, wide+4, floor+lyingTable)
	switch {
	case sc.s.Grip.Kind == "vee":
		w := max(r*veeWider, sc.reach)
		return []outline{{{-w, r * 0.4}, {-groove(r) + r*0.4, r * 0.4}, {0, groove(r)}, {groove(r) - r*0.4, r * 0.4}, {w, r * 0.4}, {w, floor}, {-w, floor}}, table}
	case sc.s.Grip.Kind == "vice":
		vee := outline{{r + 4, -r * 0.4}, {r * 1.06, -r * 0.4}, {groove(r), 0}, {r * 1.06, r * 0.4}, {r + 4, r * 0.4}}
		return []outline{rect(-r-jawDeep, -r*0.5, -r, floor), rect(r+4, -r*0.5, r+4+jawDeep, floor), vee, table}
	case sc.bolted():
		return []outline{rect(-sc.reach-plateOver, -sc.reach-plateOver, sc.reach+plateOver, floor), table}
	case sc.divided():
		return append(sc.chuckFace(), table)
	}
	return []outline{table}
}

// clampEnd is the strap over a vee block, from the end.
func (sc *acrossScene) clampEnd() []outline {
	if sc.s.Grip.Kind != "vee" {
		return nil
	}
	_, _, r := sc.grip()
	w := max(r*veeWider, sc.reach) + 2
	return []outline{rect(-w, -r-strapThick, w, -r)}
}
