package partspec

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
)

// vec is a place or a direction in the plane of an outline, in millimetres.
type vec struct{ x, y float64 }

func at(p Point) vec { return vec{float64(p.X.Value), float64(p.Y.Value)} }

func (a vec) to(b vec) vec           { return vec{b.x - a.x, b.y - a.y} }
func (a vec) plus(b vec) vec         { return vec{a.x + b.x, a.y + b.y} }
func (a vec) times(k float64) vec    { return vec{k * a.x, k * a.y} }
func (a vec) dot(b vec) float64      { return a.x*b.x + a.y*b.y }
func (a vec) cross(b vec) float64    { return a.x*b.y - a.y*b.x }
func (a vec) length() float64        { return math.Hypot(a.x, a.y) }
func (a vec) left() vec              { return vec{-a.y, a.x} }
func (a vec) unit() vec              { return a.times(1 / a.length()) }
func (a vec) far(b vec) units.Length { return units.Length(a.to(b).length()) }

// side is +1 for an arc that turns left, round metal, and -1 for one that turns right, round a hollow.
func (l *link) side() float64 {
	if l.out {
		return 1
	}
	return -1
}

// solveChain finds the ends of every edge. Corners that are rounded count as sharp; roundCorners follows.
func (s *shaper) solveChain(e *entry, links []*link, start vec, begun bool) bool {
	var ring []*link
	for _, l := range links {
		if !l.corner {
			ring = append(ring, l)
		}
	}
	n := len(ring)
	if n == 0 {
		s.c.fail(e, e.head(), "The outline has no shape", "It has rounded corners and no lines between them.")
		return false
	}
	if !begun && !ring[0].ball {
		s.c.fail(e, e.head(), "The outline has no start", "Write start { at = [0, 0] } on lines of its own, before the first edge.")
		return false
	}
	if begun && ring[0].ball {
		s.c.fail(e, ring[0].entry.head(), "The outline cannot start on an arc whose ends are not known", "Take start out: the lines before and behind the arc find its ends.")
		return false
	}
	if last := ring[n-1]; begun && last.ball {
		s.c.fail(e, last.entry.head(), "The outline does not close", "Write a line behind this arc, back to the start.")
		return false
	}
	here := start
	for i, l := range ring {
		before, next := ring[(i+n-1)%n], ring[(i+1)%n]
		if !s.solveLink(e, l, before, next, here, i == n-1 && begun, start) {
			return false
		}
		here = l.to
	}
	if ring[0].ball {
		ring[0].from = ring[n-1].to
	} else if far := here.far(start); far > sameLength {
		s.c.fail(e, ring[n-1].entry.head(), "The outline does not close", "Its last edge ends %s from the start: write to = [%s, %s], or leave to out of a last line.", s.shown(far), units.Decimal(start.x, 3), units.Decimal(start.y, 3))
		return false
	}
	return true
}

// solveLink finds the ends of one edge that begins here.
func (s *shaper) solveLink(e *entry, l, before, next *link, here vec, last bool, start vec) bool {
	l.from = here
	if l.entry.word == "line" {
		return s.solveLine(e, l, before, next, last, start)
	}
	switch {
	case l.ball && (before.entry.word != "line" || next.entry.word != "line"):
		s.c.fail(e, l.entry.head(), fmt.Sprintf("Arc %q does not stand between two lines", l.entry.name),
			"An arc with centre and radius alone ends where the lines before and behind it touch it. Write to, or put lines beside it.")
		return false
	case l.ball:
		return true // its neighbours find its ends
	}
	return s.solveArc(e, l, before)
}

// solveLine finds a line between two known places, or from or to an arc that it touches.
func (s *shaper) solveLine(e *entry, l, before, next *link, last bool, start vec) bool {
	a, b := &link{to: l.from}, &link{to: l.to}
	if before.ball {
		a = before
	}
	switch {
	case next.ball && l.ends:
		s.c.fail(e, l.entry.at("to"), fmt.Sprintf("Line %q and the arc behind it both say where it ends", l.entry.name), "Leave to out: it ends where it touches the arc.")
		return false
	case next.ball:
		b = next
	case !l.ends && last:
		b.to = start
	case !l.ends:
		s.c.fail(e, l.entry.head(), fmt.Sprintf("Line %q lacks to", l.entry.name), "Write where it ends: to = [60, 0]. Only the last line, and one that touches an arc about a centre, may leave it out.")
		return false
	}
	p, q, ok := tangent(a, b)
	if !ok {
		s.noTangent(e, l)
		return false
	}
	l.from, l.to = p, q
	if before.ball {
		before.to = p
	}
	if next.ball {
		next.from = q
	}
	return true
}

func (s *shaper) noTangent(e *entry, l *link) {
	s.c.fail(e, l.entry.head(), fmt.Sprintf("Line %q touches no arc", l.entry.name), "The arc that it should touch lies around its other end: move the centre, or make the radius smaller.")
}

// tangent is the line that runs from a to b, each a place or an arc that it touches so that the arc goes on in its direction: with the unit vector u along
// it and n on its left, a circle's centre lies its radius along side times n. (cb - ca)·n = side_b rb - side_a ra gives u.
func tangent(a, b *link) (from, to vec, ok bool) {
	ca, ra := a.round()
	cb, rb := b.round()
	if ra == 0 && rb == 0 {
		return ca, cb, true
	}
	d := ca.to(cb)
	k, far := rb-ra, d.length()
	if far == 0 || math.Abs(k) > far {
		return from, to, false
	}
	angle := math.Atan2(d.y, d.x) - math.Asin(k/far)
	n := vec{math.Cos(angle), math.Sin(angle)}.left()
	return ca.plus(n.times(-ra)), cb.plus(n.times(-rb)), true
}

// round is the centre of an arc and its radius, negative when it turns right; of a place the place and 0.
func (l *link) round() (vec, float64) {
	if !l.ball {
		return l.to, 0
	}
	return l.centre, l.side() * l.radius
}

// solveArc finds the centre, the radius and the sense of an arc with known ends.
func (s *shaper) solveArc(e *entry, l, before *link) bool {
	chord := l.from.to(l.to)
	if units.Length(chord.length()) < leastSize {
		s.c.fail(e, l.entry.head(), fmt.Sprintf("Arc %q ends where it begins", l.entry.name), "A full circle is outline \"disc\"; else write another to.")
		return false
	}
	switch {
	case l.entry.has("radius"):
		return s.chainRadius(e, l, chord)
	case l.entry.has("centre"):
		return s.chainCentre(e, l)
	case l.entry.has("through"):
		p, ok := s.place(l.entry, "through")
		return ok && s.chainThrough(e, l, at(p))
	}
	return s.chainTangent(e, l, before, chord)
}

// chainRadius is the shorter of the two arcs of a radius over a chord.
func (s *shaper) chainRadius(e *entry, l *link, chord vec) bool {
	half := chord.length() / 2
	if l.radius < half-float64(sameLength) {
		s.c.fail(e, l.entry.at("radius"), "The radius is too small for the arc", "Its ends are %s apart, so the radius is at least %s.", s.shown(units.Length(2*half)), s.shown(units.Length(half)))
		return false
	}
	off := math.Sqrt(max(0, l.radius*l.radius-half*half))
	l.centre = l.from.plus(chord.times(0.5)).plus(chord.unit().left().times(l.side() * off))
	return true
}

func (s *shaper) chainCentre(e *entry, l *link) bool {
	a, b := l.centre.far(l.from), l.centre.far(l.to)
	if (a - b).Abs() > sameLength {
		s.c.fail(e, l.entry.at("centre"), fmt.Sprintf("The ends of arc %q are not equally far from its centre", l.entry.name), "Its start is %s from it, its end %s.", s.shown(a), s.shown(b))
		return false
	}
	l.radius = float64(a)
	return true
}

// chainThrough is the circle through three places.
func (s *shaper) chainThrough(e *entry, l *link, p vec) bool {
	a, b := l.from.to(p), l.from.to(l.to)
	k := a.cross(b)
	if math.Abs(k) < float64(sameLength)*b.length() {
		s.c.fail(e, l.entry.at("through"), "The three places lie on one line", "Write a line, or another place that the arc goes through.")
		return false
	}
	centre := b.left().times(-a.dot(a)).plus(a.left().times(b.dot(b))).times(1 / (2 * k))
	l.centre, l.radius, l.out = l.from.plus(centre), centre.length(), k > 0
	return true
}

// chainTangent goes on from the edge before without a corner: the centre lies on the left normal n of its direction, at chord²/(2 chord·n).
func (s *shaper) chainTangent(e *entry, l, before *link, chord vec) bool {
	u, known := before.direction()
	if !known {
		s.c.fail(e, l.entry.at("tangent"), "The arc has nothing before it to be tangent to", "A tangent arc follows a line or another arc; give this one a radius.")
		return false
	}
	n := u.left()
	if math.Abs(chord.dot(n)) < float64(sameLength) {
		s.c.fail(e, l.entry.head(), "The tangent arc is a straight line", "Its end lies on the line before it: write a line, or another end.")
		return false
	}
	k := chord.dot(chord) / (2 * chord.dot(n))
	l.centre, l.radius, l.out = l.from.plus(n.times(k)), math.Abs(k), k > 0
	return true
}

// direction is that of an edge at its end; not known before it is solved.
func (l *link) direction() (vec, bool) {
	along := l.from.to(l.to)
	if l.entry.word == "arc" {
		along = l.centre.to(l.to).left().times(l.side())
	}
	if along.length() < float64(leastSize) {
		return along, false
	}
	return along.unit(), true
}

// roundCorners fits the arcs that round corners between their lines: each takes radius × tan(turn/2) of both.
func (s *shaper) roundCorners(e *entry, links []*link) bool {
	n := len(links)
	for i, l := range links {
		if !l.corner {
			continue
		}
		before, next := links[(i+n-1)%n], links[(i+1)%n]
		if before.entry.word != "line" || next.entry.word != "line" {
			s.c.fail(e, l.entry.head(), fmt.Sprintf("Arc %q does not round the corner of two lines", l.entry.name), "An arc with a radius alone stands between two lines. Write to, or put lines beside it.")
			return false
		}
		if !s.roundCorner(e, l, before, next) {
			return false
		}
	}
	return true
}

func (s *shaper) roundCorner(e *entry, l, before, next *link) bool {
	corner := before.to
	u, known := before.direction()
	v, alsoKnown := next.direction()
	turn := math.Atan2(u.cross(v), u.dot(v))
	const straight = 1e-3 // radians: no corner that anyone rounds
	if !known || !alsoKnown || math.Abs(turn) < straight || math.Pi-math.Abs(turn) < straight {
		s.c.fail(e, l.entry.head(), fmt.Sprintf("There is no corner for arc %q", l.entry.name), "The two lines beside it run on in one direction, or back over each other.")
		return false
	}
	takes := l.radius * math.Tan(math.Abs(turn)/2)
	for _, line := range []*link{before, next} {
		if room := line.from.to(line.to).length(); takes > room+float64(sameLength) {
			s.c.fail(e, l.entry.head(), fmt.Sprintf("Arc %q does not fit its corner", l.entry.name), "It takes %s of each line, and of line %q there is %s left: write a smaller radius.",
				s.shown(units.Length(takes)), line.entry.name, s.shown(units.Length(room)))
			return false
		}
	}
	l.out = turn > 0
	l.from, l.to = corner.plus(u.times(-takes)), corner.plus(v.times(takes))
	l.centre = l.from.plus(u.left().times(l.side() * l.radius))
	before.to, next.from = l.from, l.to
	return true
}
