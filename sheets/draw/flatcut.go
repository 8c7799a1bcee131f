package draw

import (
	"math"

	"catchplate/planner/plan"
)

// Sizes of the cut-open view of flat work, in millimetres on paper: heights are drawn so that they can be seen, not to scale.
const (
	leastThick = 5.0
	mostThick  = 26.0
	leastBed   = 4.0
	mostBed    = 13.0
	tableThick = 4.0
	strapThick = 3.0
	chuckTall  = 9.0
	jawStep    = 4.0
	sideOff    = 8.0
)

// cutView carries a place along the cut and a depth under the free face to paper: standing, with the free face up, or lying, with it to the right.
type cutView struct {
	scale, deep float64 // along the work, and across its thickness
	mirror      bool
	lathe       bool
	base        float64 // where the work's underside lies
	under       float64 // z of the underside
	up          float64 // +1 where z rises from it
	bed         float64 // height of the bed on paper
}

func (sc *flatScene) cutView() cutView {
	low, high := sc.before.BackZ, sc.before.FrontZ
	thick := max(high-low, touching)
	v := cutView{scale: sc.v.scale, mirror: sc.v.mirror, lathe: onLathe(sc.s), under: low, up: 1}
	v.deep = min(max(thick*sc.v.scale, leastThick), mostThick) / thick
	if sc.turned() {
		v.deep = sc.v.scale
	}
	if sc.v.mirror {
		v.under, v.up = high, -1
	}
	if b := sc.s.Bed; b != nil && max(b.HeightMM, b.GapMM) > 0 {
		v.bed = min(max(max(b.HeightMM, b.GapMM)*sc.v.scale, leastBed), mostBed)
	}
	return v
}

// high is how far above the underside a depth lies.
func (v cutView) high(z float64) float64 { return (z - v.under) * v.up * v.deep }

// at is a place along the cut (x, or y on a lathe) and a height on paper above the underside.
func (v cutView) at(along, high float64) Point {
	if v.lathe {
		return Point{v.base + high, -along * v.scale}
	}
	if v.mirror {
		along = -along
	}
	return Point{along * v.scale, v.base - high}
}

// stretch draws a rectangle along the cut between two heights.
func (c *Canvas) stretch(class Class, v cutView, from, to, low, high float64) {
	c.Rect(class, v.at(from, low), v.at(to, high))
}

// cutWork draws the work cut open: what comes off dotted, what stays hatched.
func (c *Canvas) cutWork(sc *flatScene, v cutView) {
	alongY := v.lathe
	solid := func(class Class, f *plan.Flat) {
		for _, run := range chords(f.Outline, sc.cutAt, alongY) {
			c.stretch(class, v, run[0], run[1], v.high(f.BackZ), v.high(f.FrontZ))
			c.stretch(Outline, v, run[0], run[1], v.high(f.BackZ), v.high(f.FrontZ))
		}
	}
	solid(Off, sc.before)
	solid(Stays, sc.after)
	c.openGaps(sc, v)
	c.openSeats(sc, v)
}

// openSeats opens the seats that the cut meets: dotted where they are made in this holding.
func (c *Canvas) openSeats(sc *flatScene, v cutView) {
	for _, s := range sc.after.Seats {
		class := Off
		if hasSeat(sc.before.Seats, s.Feature) {
			class = Paper
		}
		z, in := faceZ(sc.after, s)
		for _, line := range troughs(sc.after, s, sc.cutAt, v.lathe) {
			c.trough(class, line, func(along, deep, over float64) Point {
				out := over
				if in*v.up > 0 { // the face below
					out = -over
				}
				return v.at(along, v.high(z+in*deep)+out)
			})
		}
	}
}

// openGaps opens the holes that the cut meets: dotted where they are made in this holding.
func (c *Canvas) openGaps(sc *flatScene, v cutView) {
	alongY := v.lathe
	open := func(class Class, f *plan.Flat, g gap) {
		z0, z1 := max(g.z0, f.BackZ), min(g.z1, f.FrontZ)
		if z0 >= z1 {
			return
		}
		c.stretch(class, v, g.y0, g.y1, v.high(z0), v.high(z1))
		c.stretch(Outline, v, g.y0, g.y1, v.high(z0), v.high(z1))
	}
	were := gapsAlong(sc.before, sc.cutAt, alongY)
	for _, g := range gapsAlong(sc.after, sc.cutAt, alongY) {
		class := Off
		for _, o := range were {
			if o == g {
				class = Paper
			}
		}
		open(class, sc.after, g)
	}
	for _, g := range were {
		open(Paper, sc.before, g)
	}
}

// gapsAlong are the holes that a cut along Y at x (or along X at y) opens.
func gapsAlong(f *plan.Flat, at float64, alongY bool) []gap {
	if alongY {
		return gaps(f, at)
	}
	turned := plan.Flat{}
	for _, h := range f.Holes {
		h.XMM, h.YMM = h.YMM, h.XMM
		turned.Holes = append(turned.Holes, h)
	}
	return gaps(&turned, at)
}

// tableSide draws, below the plan, the work on a table cut open along X, with what carries and presses it.
func (c *Canvas) tableSide(sc *flatScene, held Box) {
	v := sc.cutView()
	thick := math.Abs(sc.before.FrontZ-sc.before.BackZ) * v.deep
	v.base = c.Bounds().Bottom + sideOff + strapThick + thick
	edge := func(x float64) float64 { return sc.v.at(x, 0).X }
	x0, _, x1, _ := extent(sc.before.Outline)
	for _, pr := range sc.presses() {
		c.sideJaw(sc, v, pr)
	}
	if b := sc.s.Bed; b != nil && v.bed > 0 {
		if len(b.Under) == 0 && b.HeightMM > 0 && sc.s.Grip.Kind != "jaws" {
			c.stretch(Holder, v, x0, x1, -v.bed, 0)
		}
		for _, u := range b.Under {
			c.stretch(Holder, v, u.X0, u.X1, -v.bed, 0)
		}
	}
	table := v.base + v.bed
	if sc.s.Grip.Kind == "jaws" {
		c.Rect(Holder, Point{held.Left, table}, Point{held.Right, table + chuckTall})
		table += chuckTall
		if sc.s.Dividing != nil {
			table = c.headUnder(held, table, sc.s.Dividing.Ratio > 1)
		}
	}
	c.Rect(Holder, Point{held.Left - 4, table}, Point{held.Right + 4, table + tableThick})
	if sc.turned() {
		c.cutTurned(sc, v)
	} else {
		c.cutWork(sc, v)
	}
	c.sideBolt(sc, v)
	for _, cl := range sc.s.Clamps {
		c.sideClamp(sc, v, cl)
	}
	c.depthZeros(sc, v, min(edge(x0), edge(x1), held.Left))
	c.slideSide(sc.s)
	c.heldWords(append([]string{holderWords(sc.s)}, bedWords(sc.s)...))
}

// sideBolt draws the bush in a bore, and the screw through it that draws turned work down.
func (c *Canvas) sideBolt(sc *flatScene, v cutView) {
	g := sc.s.Grip
	if !sc.turned() || g.Kind != "clamps" || !g.Inside || g.RadiusMM <= 0 {
		return
	}
	r, high := g.RadiusMM*sc.v.scale, math.Abs(sc.before.FrontZ-sc.before.BackZ)*v.deep*bushShare
	c.Rect(Holder, Point{-r, v.base}, Point{r, v.base - high})
	c.Rect(Holder, Point{-r * 0.6, v.base - high}, Point{r * 0.6, v.base - high - 3})
	c.Rect(Holder, Point{-r * 0.3, v.base + v.bed + tableThick}, Point{r * 0.3, v.base - high})
}

// sideJaw draws a jaw beside the work, with its step where the work sits on that, or a vice's jaw behind it where the vice grips along the other way. A chuck's
// jaws behind the work are hidden.
func (c *Canvas) sideJaw(sc *flatScene, v cutView, pr plan.Press) {
	top := max(v.high(sc.s.Grip.FromZ), v.high(sc.s.Grip.ToZ), 0)
	foot := v.base + v.bed
	p := v.at(pr.XMM, 0)
	along := sc.v.towards(pr.AngleDeg)
	chuck := sc.s.Grip.Kind == "jaws"
	switch {
	case math.Abs(along.X) > math.Abs(along.Y) || chuck && math.Abs(along.X) > 0.3:
		out := math.Copysign(1, along.X)
		c.Rect(Holder, Point{p.X, foot}, Point{p.X + out*jawDeep, v.base - top})
		if b := sc.s.Bed; chuck && b != nil && b.HeightMM > 0 {
			c.Rect(Holder, Point{p.X - out*jawStep, foot}, Point{p.X, v.base})
		}
	case !chuck:
		half := max(pr.WidthMM*sc.v.scale, 8) / 2
		c.Rect(Holder, Point{p.X - half, foot}, Point{p.X + half, v.base - top})
	}
}

// sideClamp draws a strap over the work: from the side where it lies along the cut, else from its end.
func (c *Canvas) sideClamp(sc *flatScene, v cutView, cl plan.Clamp) {
	face := max(v.high(sc.after.BackZ), v.high(sc.after.FrontZ))
	along := sc.v.towards(cl.AngleDeg)
	wide := max(cl.ToeMM*sc.v.scale, 4)
	toe := v.at(cl.XMM, face)
	if v.lathe {
		toe = v.at(cl.YMM, face)
	}
	lengthwise := math.Abs(along.X)
	if v.lathe {
		lengthwise = math.Abs(along.Y)
	}
	if lengthwise < 0.7 {
		if v.lathe {
			c.Rect(Holder, Point{toe.X, toe.Y - wide/2}, Point{toe.X + strapThick, toe.Y + wide/2})
		} else {
			c.Rect(Holder, Point{toe.X - wide/2, toe.Y}, Point{toe.X + wide/2, toe.Y - strapThick})
		}
		return
	}
	stud, end := sc.strap(cl)
	start := stepBy(sc.v.at(cl.XMM, cl.YMM), along, -cl.ToeMM*sc.v.scale/2)
	if v.lathe {
		c.Rect(Holder, Point{v.base - v.bed, stud.Y - 1.3}, Point{toe.X + strapThick + 3, stud.Y + 1.3})
		c.Rect(Holder, Point{v.base - v.bed, end.Y - packHalf}, Point{toe.X, end.Y + packHalf})
		c.Rect(Holder, Point{toe.X, start.Y}, Point{toe.X + strapThick, end.Y})
		return
	}
	c.Rect(Holder, Point{stud.X - 1.3, v.base + v.bed}, Point{stud.X + 1.3, toe.Y - strapThick - 3})
	c.Rect(Holder, Point{end.X - packHalf, v.base + v.bed}, Point{end.X + packHalf, toe.Y})
	c.Rect(Holder, Point{start.X, toe.Y}, Point{end.X, toe.Y - strapThick})
}

// depthZeros marks the heights at which the quill, or the table's z, stands at nought.
func (c *Canvas) depthZeros(sc *flatScene, v cutView, left float64) {
	var side []sideLabel
	for _, z := range zerosOf(sc.s, "quill", "z") {
		foot := Point{sc.box.Left, v.at(0, v.high(z.referenceMM)).Y}
		c.Circle(Head, foot, 0.7)
		side = append(side, sideLabel{foot, DialName(sc.s, z.dial) + " 0 (" + z.numbers(sc.s) + ")"})
	}
	c.leftLabels(side, left)
}

// onArbor reports whether flat work turns on a mandrel or an arbor, in its bore or glued by its face.
func (sc *flatScene) onArbor() bool {
	k := sc.s.Grip.Kind
	return k == "mandrel" || k == "glued_bore" || k == "glued_face"
}

// arborBehind is the body of an arbor, and its shoulder or plate that the work lies against.
func (c *Canvas) arborBehind(sc *flatScene, v cutView, left, axis float64) {
	r := sc.s.Grip.RadiusMM * sc.v.scale
	shoulder := max(r+4, 1.4*r)
	if sc.s.Grip.Kind == "glued_face" {
		shoulder = r
	}
	c.Rect(Holder, Point{left - 6, axis - shoulder*0.7}, Point{v.base - leastBed, axis + shoulder*0.7})
	c.Rect(Holder, Point{v.base - leastBed, axis - shoulder}, Point{v.base, axis + shoulder})
	if sc.s.Grip.Kind == "glued_face" {
		c.Line(Glue, Point{v.base, axis - shoulder}, Point{v.base, axis + shoulder})
	}
}

// arborThrough is what fills the bore, with the film of adhesive where it is glued, or the nut and washer of a mandrel.
func (c *Canvas) arborThrough(sc *flatScene, v cutView, axis float64) {
	if sc.s.Grip.Kind == "glued_face" {
		return
	}
	r := sc.s.Grip.RadiusMM * sc.v.scale
	end := v.base + max(v.high(sc.before.BackZ), v.high(sc.before.FrontZ))
	c.Rect(Holder, Point{v.base, axis - r}, Point{end, axis + r})
	if sc.s.Grip.Kind == "glued_bore" {
		c.Line(Glue, Point{v.base, axis - r}, Point{end, axis - r})
		c.Line(Glue, Point{v.base, axis + r}, Point{end, axis + r})
		return
	}
	c.Rect(Holder, Point{end, axis - r - 3}, Point{end + 1.5, axis + r + 3})
	c.Rect(Holder, Point{end + 1.5, axis - r*0.7}, Point{end + 5, axis + r*0.7})
}

// latheSide draws, right of the plan, the work on a lathe cut open along Y through the axis.
func (c *Canvas) latheSide(sc *flatScene, held Box) {
	v := sc.cutView()
	plate := c.Bounds().Right + 13
	const plateThick = 6.0
	v.base = plate + plateThick + v.bed
	axis := -sc.centre.y * sc.v.scale
	arbor := sc.onArbor()
	if arbor {
		c.arborBehind(sc, v, plate, axis)
	} else {
		c.Rect(Holder, Point{plate, held.Top + 1}, Point{plate + plateThick, held.Bottom - 1})
		c.Rect(Holder, Point{plate - 6, axis - 9}, Point{plate, axis + 9})
	}
	if b := sc.s.Bed; b != nil && v.bed > 0 && !arbor {
		_, y0, _, y1 := extent(sc.before.Outline)
		if len(b.Under) == 0 {
			c.stretch(Holder, v, y0, y1, -v.bed, 0)
		}
		for _, u := range b.Under {
			c.stretch(Holder, v, u.Y0, u.Y1, -v.bed, 0)
		}
	}
	for _, pr := range sc.presses() {
		if along := sc.v.towards(pr.AngleDeg); math.Abs(along.Y) > 0.7 {
			p := v.at(pr.YMM, 0)
			top := max(v.high(sc.s.Grip.FromZ), v.high(sc.s.Grip.ToZ), leastThick/2)
			c.Rect(Holder, Point{plate + plateThick, p.Y}, Point{v.base + top, p.Y + math.Copysign(jawDeep, along.Y)})
		}
	}
	c.ledgeSide(sc, v, plate+plateThick)
	c.cutWork(sc, v)
	if arbor {
		c.arborThrough(sc, v, axis)
	}
	for _, cl := range sc.s.Clamps {
		c.sideClamp(sc, v, cl)
	}
	face := v.base + max(v.high(sc.before.BackZ), v.high(sc.before.FrontZ))
	c.Line(Centre, Point{plate - 9, axis}, Point{face + 20, axis})
	if len(sc.s.Operations) > 0 {
		feed := axis - 2.5
		if arbor { // the rim is turned
			feed = sc.box.Top - 2.5
		}
		c.shaft(Point{face + 3, feed}, Point{face + 3 + cutLong, feed})
	}
	c.heldWords(latheWords(sc.s))
}
