package draw

import (
	"math"
	"sort"

	"catchplate/planner/plan"
)

// planeView carries a place of a flat part, or of a turned part's end, to paper: Y upwards, X to the right, or to the left where it is seen from behind.
type planeView struct {
	scale  float64
	mirror bool
}

func (v planeView) at(x, y float64) Point {
	if v.mirror {
		x = -x
	}
	return Point{x * v.scale, -y * v.scale}
}

// towards is the direction on paper of an angle from +X.
func (v planeView) towards(deg float64) Point {
	p := planeView{1, v.mirror}.at(math.Cos(deg*math.Pi/180), math.Sin(deg*math.Pi/180))
	return p
}

// rim is an outline as a closed path. Its arcs are parted into quarters, since a Step is at most half a circle.
func (v planeView) rim(class Class, outline []plan.OutlineSegment) Path {
	p := Path{Class: class, Closed: true}
	for i, s := range outline {
		if i == 0 {
			p.Start = v.at(s.X0, s.Y0)
		}
		p.Steps = append(p.Steps, v.segment(s)...)
	}
	return p
}

// segment is one line or arc of an outline.
func (v planeView) segment(s plan.OutlineSegment) []Step {
	if s.RadiusMM == 0 {
		return []Step{{To: v.at(s.X1, s.Y1)}}
	}
	from, sweep := sweepOf(s)
	parts := int(math.Ceil(math.Abs(sweep)/(math.Pi/2) - touching))
	var out []Step
	for i := 1; i <= max(parts, 1); i++ {
		a := from + sweep*float64(i)/float64(max(parts, 1))
		to := v.at(s.CentreX+s.RadiusMM*math.Cos(a), s.CentreY+s.RadiusMM*math.Sin(a))
		out = append(out, Step{To: to, Radius: s.RadiusMM * v.scale, Centre: v.at(s.CentreX, s.CentreY), Clockwise: s.Hollow != v.mirror})
	}
	return out
}

// sweepOf is where an arc begins, as an angle, and what it sweeps, in radians: anticlockwise positive, clockwise where it is hollow.
func sweepOf(s plan.OutlineSegment) (from, sweep float64) {
	from = math.Atan2(s.Y0-s.CentreY, s.X0-s.CentreX)
	sweep = math.Atan2(s.Y1-s.CentreY, s.X1-s.CentreX) - from
	if s.Hollow {
		sweep = -sweep
	}
	for sweep <= touching {
		sweep += 2 * math.Pi
	}
	for sweep > 2*math.Pi+touching {
		sweep -= 2 * math.Pi
	}
	if s.Hollow {
		sweep = -sweep
	}
	return from, sweep
}

// arcPoints is how finely an arc is followed where only its course counts, not its look.
const arcPoints = 90

// xy is a place of the part.
type xy struct{ x, y float64 }

// course is an outline as a chain of short straight pieces, closed.
func course(outline []plan.OutlineSegment) []xy {
	var out []xy
	for _, s := range outline {
		out = append(out, xy{s.X0, s.Y0})
		if s.RadiusMM == 0 {
			continue
		}
		from, sweep := sweepOf(s)
		for i := 1; i < arcPoints; i++ {
			a := from + sweep*float64(i)/arcPoints
			out = append(out, xy{s.CentreX + s.RadiusMM*math.Cos(a), s.CentreY + s.RadiusMM*math.Sin(a)})
		}
	}
	return out
}

// extent is the smallest rectangle around an outline.
func extent(outline []plan.OutlineSegment) (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range course(outline) {
		x0, y0, x1, y1 = min(x0, p.x), min(y0, p.y), max(x1, p.x), max(y1, p.y)
	}
	return x0, y0, x1, y1
}

// crossings says where a line meets a course: from a place in a direction, as distances, in order.
func crossings(course []xy, from xy, dir xy) []float64 {
	var out []float64
	for i, a := range course {
		b := course[(i+1)%len(course)]
		ex, ey := b.x-a.x, b.y-a.y
		det := dir.x*ey - dir.y*ex
		if math.Abs(det) < touching*touching {
			continue
		}
		t := ((a.x-from.x)*ey - (a.y-from.y)*ex) / det
		if u := ((a.x-from.x)*dir.y - (a.y-from.y)*dir.x) / det; u >= 0 && u < 1 {
			out = append(out, t)
		}
	}
	sort.Float64s(out)
	return out
}

// exit is how far it is from a place in a direction to where the metal ends for good.
func exit(course []xy, from xy, deg float64) float64 {
	hits := crossings(course, from, xy{math.Cos(deg * math.Pi / 180), math.Sin(deg * math.Pi / 180)})
	if len(hits) == 0 {
		return 0
	}
	return max(0, hits[len(hits)-1])
}

// chords are the stretches that a line along Y at x (or along X at y) has in the metal inside an outline.
func chords(outline []plan.OutlineSegment, at float64, alongY bool) [][2]float64 {
	from, dir := xy{at, 0}, xy{0, 1}
	if !alongY {
		from, dir = xy{0, at}, xy{1, 0}
	}
	hits := crossings(course(outline), from, dir)
	var out [][2]float64
	for i := 0; i+1 < len(hits); i += 2 {
		out = append(out, [2]float64{hits[i], hits[i+1]})
	}
	return out
}

// named finds a segment of an outline by its name.
func named(outline []plan.OutlineSegment, name string) (plan.OutlineSegment, bool) {
	for _, s := range outline {
		if s.Name == name {
			return s, true
		}
	}
	return plan.OutlineSegment{}, false
}
