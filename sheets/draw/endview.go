package draw

import (
	"math"

	"catchplate/planner/plan"
)

// endApart is from the half section to the view of the end.
const endApart = 12.0

// hasEnd reports whether a drawing of a turned part needs a view of its end.
func hasEnd(d plan.Drawing) bool { return len(d.Beside) > 0 || len(d.Crossed) > 0 || len(d.Axes) > 0 }

// endView draws a turned part as seen from its right end: the ring of holes with numbers and pitch circle, seats, flats, slots and cross holes.
func endView(d plan.Drawing, scale float64) *Canvas {
	outer := d.Section.Outer
	first, last := outer[0].Z0, outer[len(outer)-1].Z1
	most := greatest(outer, first, last)
	flat := &plan.Flat{Outline: discOutline(most), BackZ: first, FrontZ: last}
	for _, h := range d.Beside {
		flat.Holes = append(flat.Holes, openEnds(outer, h))
	}
	c := NewCanvas()
	b := &flatBench{v: planeView{scale: scale}, d: plan.Drawing{Flat: flat, Rings: d.Rings}}
	for _, dim := range d.Dims {
		if dim.Kind == plan.DimAcross || dim.Kind == plan.DimUp || dim.Kind == plan.DimPlace {
			b.d.Dims = append(b.d.Dims, dim)
		}
	}
	b.x0, b.y0, b.x1, b.y1 = -most, -most, most, most
	r := most * scale
	b.box = Box{-r, -r, r, r}
	c.endEdges(b.v, d.Section, &b.field)
	if d.Hexagon {
		c.hexagonEnd(b.v, most)
	}
	for _, x := range d.Crossed {
		c.crossedEnd(b.v, d.Section, x, &b.field)
	}
	c.cross(Point{}, r+4, &b.field)
	for _, h := range flat.Holes {
		c.hole(b.v, h, seenClass(h, flat, b.v), &b.field)
	}
	c.axesEnd(b.v, d, &b.field)
	c.rings(b.v, d.Rings, flat.Holes, &b.field)
	for _, ring := range d.Rings {
		c.angleArc(b.v, &b.field, b.v.at(ring.XMM, ring.YMM), ring.StartDeg)
	}
	c.flatLengths(b, nil)
	c.flatLeaders(b)
	c.holeNumbers(b.v, flat.Holes, flat.Holes, d.Rings, &b.field)
	box := c.Bounds()
	c.Text(Text{At: Point{0, box.Bottom + 2 + LineStep*noteSize}, Anchor: AtMiddle, Size: noteSize, Text: "seen from the right end"})
	return c
}

// endEdges draws the circles of a turned shape that are seen from its right end, or from the left one in a mirrored view.
func (c *Canvas) endEdges(v planeView, s plan.Section, keep *field) {
	var drawn []float64
	add := func(r float64) {
		if r <= 0 || hasRadius(drawn, r) {
			return
		}
		drawn = append(drawn, r)
		c.Circle(Outline, Point{}, r*v.scale)
		keep.ring(Point{}, r*v.scale)
	}
	first, last := s.Outer[0].Z0, s.Outer[len(s.Outer)-1].Z1
	way := func(z float64) (float64, float64) {
		if v.mirror {
			return first, z
		}
		return z, last
	}
	for _, e := range edges(s.Outer) {
		if from, to := way(e.z); greatestBetween(s.Outer, from, to) <= e.r+touching {
			add(e.r)
		}
	}
	for _, e := range edges(s.Inner) {
		if from, to := way(e.z); e.r > 0 && (to-from < touching || least(s.Inner, from, to) >= e.r-touching) {
			add(e.r)
		}
	}
}

func hasRadius(list []float64, x float64) bool {
	for _, l := range list {
		if math.Abs(l-x) < touching {
			return true
		}
	}
	return false
}

// hexagonEnd draws the six flats of a hexagon bar inside the circle of its corners.
func (c *Canvas) hexagonEnd(v planeView, corners float64) {
	var points []Point
	for i := range 6 {
		a := (30 + 60*float64(i)) * math.Pi / 180
		points = append(points, v.at(corners*math.Cos(a), corners*math.Sin(a)))
	}
	c.Poly(Outline, true, points...)
}

// crossedEnd draws what crosses the axis as the end shows it: flats and slots cut out of the circle, cross holes dashed, the axis of a seat's pipe.
func (c *Canvas) crossedEnd(v planeView, s plan.Section, x plan.Crossed, keep *field) {
	r := greatest(s.Outer, min(x.Z0, x.Z1), max(x.Z0, x.Z1))
	along, left := v.unit(x.AngleDeg)
	at := func(out, side float64) Point {
		return Point{along.X*out*v.scale + left.X*side*v.scale, along.Y*out*v.scale + left.Y*side*v.scale}
	}
	switch x.Kind {
	case plan.CrossedSeat:
		if sideSeat(x) {
			c.flatEnd(v, s, x, r, keep)
			return
		}
		reach := r + 8/v.scale
		c.Line(Centre, at(-reach, 0), at(reach, 0))
		keep.line(at(-reach, 0), at(reach, 0))
		end := at(reach, 0)
		if end.Y < 0 { // labels stand above the view
			end, along = at(-reach, 0), Point{-along.X, -along.Y}
		}
		c.near(keep, end, 1, along, Text{Size: noteSize, Text: "axis of the pipe"})
	case plan.CrossedHole:
		for _, side := range []float64{-x.RadiusMM, x.RadiusMM} {
			c.Line(Hidden, at(x.FloorMM, side), at(r, side))
			keep.line(at(x.FloorMM, side), at(r, side))
		}
		c.Line(Centre, at(min(x.FloorMM, 0), 0), at(r+4/v.scale, 0))
		keep.line(at(min(x.FloorMM, 0), 0), at(r+4/v.scale, 0))
	case plan.CrossedFlat:
		for i := range max(x.Count, 1) {
			turned := x
			turned.AngleDeg += 360 * float64(i) / float64(max(x.Count, 1))
			c.flatEnd(v, s, turned, r, keep)
		}
	case plan.CrossedSlot:
		h := x.WidthMM / 2
		if !openTo(s, x, v.mirror) {
			edge := math.Sqrt(max(0, r*r-h*h))
			c.Poly(Hidden, false, at(edge, -h), at(x.FloorMM, -h), at(x.FloorMM, h), at(edge, h))
			return
		}
		c.Poly(Paper, true, at(x.FloorMM, -h), at(x.FloorMM, h), at(r+1/v.scale, h), at(r+1/v.scale, -h))
		edge := math.Sqrt(max(0, r*r-h*h))
		c.Poly(Outline, false, at(edge, -h), at(x.FloorMM, -h), at(x.FloorMM, h), at(edge, h))
		keep.line(at(edge, -h), at(x.FloorMM, -h))
		keep.line(at(x.FloorMM, h), at(edge, h))
	}
}

// openTo reports whether a flat or a slot is seen from the right end, or in a mirrored view from the left one: no metal stands before its floor.
func openTo(s plan.Section, x plan.Crossed, left bool) bool {
	from, to := x.Z1, s.Outer[len(s.Outer)-1].Z1
	if left {
		from, to = s.Outer[0].Z0, x.Z0
	}
	return to-from < touching || greatestBetween(s.Outer, from, to) <= x.FloorMM+touching
}

// flatEnd takes the segment of a circle beyond a flat away and draws the flat.
func (c *Canvas) flatEnd(v planeView, s plan.Section, x plan.Crossed, r float64, keep *field) {
	if x.FloorMM >= r {
		return
	}
	along, left := v.unit(x.AngleDeg)
	half := math.Sqrt(r*r - x.FloorMM*x.FloorMM)
	at := func(out, side float64) Point {
		return Point{(along.X*out + left.X*side) * v.scale, (along.Y*out + left.Y*side) * v.scale}
	}
	points := []Point{at(x.FloorMM, -half), at(x.FloorMM, half)}
	if !openTo(s, x, v.mirror) {
		c.Line(Hidden, points[0], points[1])
		return
	}
	from := math.Acos(x.FloorMM / r)
	for i := range arcPieces + 1 {
		a := from - 2*from*float64(i)/arcPieces
		far := r + 1/v.scale
		points = append(points, at(far*math.Cos(a), far*math.Sin(a)))
	}
	c.Poly(Paper, true, points...)
	c.Line(Outline, points[0], points[1])
	keep.line(points[0], points[1])
}

// crossedSection cuts seats, flats, slots and cross holes out of the half section that is already drawn, turned into its plane.
func (c *Canvas) crossedSection(v view, s plan.Section, crossed []plan.Crossed) {
	for _, x := range crossed {
		r := greatest(s.Outer, min(x.Z0, x.Z1), max(x.Z0, x.Z1))
		switch {
		case x.Kind == plan.CrossedSeat && x.On != "":
			c.seatSection(v, x)
		case x.Kind == plan.CrossedSeat:
			c.sideNotch(v, x, Paper, r, 1)
		case x.Kind == plan.CrossedFlat || x.Kind == plan.CrossedSlot:
			c.notch(v, s, x, r)
		case x.Kind == plan.CrossedHole:
			floor := max(x.FloorMM, 0)
			c.Rect(Paper, v.at(x.Z0, floor), Point{v.x(x.Z1), -r*v.scale - coverMore})
			c.Line(Outline, v.at(x.Z0, floor), v.at(x.Z0, r))
			c.Line(Outline, v.at(x.Z1, floor), v.at(x.Z1, r))
			if x.FloorMM > radiusAt(s.Inner, (x.Z0+x.Z1)/2)+touching {
				c.Line(Outline, v.at(x.Z0, floor), v.at(x.Z1, floor))
			}
			z := (x.Z0 + x.Z1) / 2
			c.Line(Centre, v.at(z, floor-2/v.scale), v.at(z, r+4/v.scale))
		}
	}
}

// notch takes a flat or a slot off the upper half; its walls stand where metal goes on beyond it.
func (c *Canvas) notch(v view, s plan.Section, x plan.Crossed, r float64) {
	const beyond = 0.01 // of a millimetre of the part: far less than any feature
	left, right := v.at(x.Z0, x.FloorMM), v.at(x.Z1, x.FloorMM)
	cover := [2]float64{left.X, right.X}
	if radiusAt(s.Outer, x.Z0-beyond) <= x.FloorMM {
		cover[0] -= coverMore
	}
	if radiusAt(s.Outer, x.Z1+beyond) <= x.FloorMM {
		cover[1] += coverMore
	}
	c.Rect(Paper, Point{cover[0], left.Y}, Point{cover[1], -r*v.scale - coverMore})
	c.Line(Outline, left, right)
	for _, w := range []struct {
		z float64
		p Point
	}{{x.Z0 - beyond, left}, {x.Z1 + beyond, right}} {
		if side := radiusAt(s.Outer, w.z); side > x.FloorMM {
			c.Line(Outline, w.p, Point{w.p.X, -min(side, r) * v.scale})
		}
	}
}

// coverMore is how far white goes beyond an edge to take its pen's width away.
const coverMore = 0.6

// seatSection takes the metal of a seat off both halves and draws its arc, as in a cut square to the axis of its pipe.
func (c *Canvas) seatSection(v view, x plan.Crossed) {
	half := x.WidthMM / 2
	end, crown := x.Z0, x.Z1
	if x.On == "right" {
		end, crown = x.Z1, x.Z0
	}
	from, to, top := v.at(end, half), v.at(end, -half), v.at(crown, 0)
	centre := v.at(x.AxisZ, 0)
	arc := func(a, b Point) Step {
		return Step{To: b, Radius: x.RadiusMM * v.scale, Centre: centre, Clockwise: cross(centre, a, b) > 0}
	}
	beyond := coverMore
	if v.x(crown) > v.x(end) {
		beyond = -beyond
	}
	c.Path(Path{Class: Paper, Closed: true, Start: from, Steps: []Step{arc(from, top), arc(top, to), {To: Point{to.X + beyond, to.Y}}, {To: Point{from.X + beyond, from.Y}}}})
	c.Path(Path{Class: Outline, Start: from, Steps: []Step{arc(from, top), arc(top, to)}})
}
