package draw

import (
	"math"
	"sort"
	"strings"

	"catchplate/planner/plan"
)

// bench is what is known of a part while it is dimensioned.
type bench struct {
	v           view
	section     plan.Section
	dims        []plan.Dim
	first, last float64 // ends of the part
	reach       float64 // greatest radius on paper
	room        float64 // on the page for the section and its labels
}

func newBench(v view, d plan.Drawing) *bench {
	outer := d.Section.Outer
	b := &bench{v: v, section: d.Section, dims: d.Dims, first: outer[0].Z0, last: outer[len(outer)-1].Z1, room: PageWidth}
	b.reach = greatest(outer, b.first, b.last) * v.scale
	return b
}

// depth is where an extension line of a length begins below the axis.
func (b *bench) depth(d plan.Dim, z float64) float64 {
	if d.Inside {
		return radiusAt(b.section.Inner, z) * b.v.scale
	}
	return radiusAt(b.section.Outer, z) * b.v.scale
}

// seen reports whether a surface can be seen from an end along the axis, so that an extension line reaches it through free air.
func (b *bench) seen(d plan.Dim, fromLeft bool) bool {
	from, to := b.first, min(d.Z0, d.Z1)
	if !fromLeft {
		from, to = max(d.Z0, d.Z1), b.last
	}
	if d.Inside {
		return least(b.section.Inner, from, to) >= d.R-touching
	}
	return greatestBetween(b.section.Outer, from, to) <= d.R+touching
}

// touching is how far, in millimetres of the part, a surface may stand in the way of another one's extension line and still count as level.
const touching = 1e-6

// greatestBetween is the greatest radius strictly between two places: what only touches them does not count.
func greatestBetween(segments []plan.Segment, from, to float64) float64 {
	most := 0.0
	for _, s := range segments {
		if s.Z1 > from+touching && s.Z0 < to-touching {
			most = max(most, greatest([]plan.Segment{s}, from, to))
		}
	}
	return most
}

func least(segments []plan.Segment, from, to float64) float64 {
	small := math.Inf(1)
	for _, s := range segments {
		if s.Z1 > from+touching && s.Z0 < to-touching {
			small = min(small, s.R0, s.R1)
		}
	}
	return small
}

const (
	columnFirst = 9.0  // from the part's end to the first dimension line of a diameter
	columnStep  = 6.0  // and on to the next
	halfPast    = 4.0  // a half dimension line goes on beyond the axis
	rowsBase    = 6.0  // from the part to the first label
	labelMost   = 48.0 // widest label
)

// diameters draws dimension lines of diameters beside the part, leaders to what cannot be seen from the ends, and all their labels above.
func (c *Canvas) diameters(b *bench) {
	onLeft, onRight, leaders := b.sort()
	var marks []mark
	marks = append(marks, c.columns(b, onLeft, -1)...)
	marks = append(marks, c.columns(b, onRight, 1)...)
	marks = append(marks, b.leaders(leaders, marks)...)
	left, right := b.bounds()
	c.marks(marks, -b.reach-rowsBase, -1, left, right)
}

// bounds are the page's edges, with the part in the middle.
func (b *bench) bounds() (left, right float64) {
	middle := (b.v.x(b.first) + b.v.x(b.last)) / 2
	return middle - b.room/2 + pageEdge, middle + b.room/2 - pageEdge
}

// sort shares the dimensions out: the diameters to the end they can be seen from, the nearer one of two.
func (b *bench) sort() (left, right, leaders []plan.Dim) {
	for _, d := range b.dims {
		fromLeft, fromRight := b.seen(d, true), b.seen(d, false)
		nearLeft := d.Z0-b.first <= b.last-d.Z1
		switch {
		case d.Kind == plan.DimLength || d.Kind == plan.DimPlace || d.Kind == plan.DimAcross || d.Kind == plan.DimUp:
		case d.Kind != plan.DimDiameter || !fromLeft && !fromRight:
			leaders = append(leaders, d)
		case fromLeft && (nearLeft || !fromRight):
			left = append(left, d)
		default:
			right = append(right, d)
		}
	}
	return left, right, leaders
}

// columns draws the dimension lines at one end, small diameters near the part, and gives the marks for their labels.
func (c *Canvas) columns(b *bench, dims []plan.Dim, side float64) []mark {
	sort.SliceStable(dims, func(i, j int) bool { return dims[i].R < dims[j].R })
	end := b.v.x(b.last)
	if side < 0 {
		end = b.v.x(b.first)
	}
	var marks []mark
	for i, d := range dims {
		x := end + side*(columnFirst+float64(i)*columnStep)
		r := d.R * b.v.scale
		from := b.v.x(d.Z1)
		if side < 0 {
			from = b.v.x(d.Z0)
		}
		c.Line(Thin, Point{from + side*extGap, -r}, Point{x + side*extPast, -r})
		if d.Inside {
			c.halfLine(x, r)
		} else {
			c.Line(Thin, Point{from + side*extGap, r}, Point{x + side*extPast, r})
			c.fullLine(x, r)
		}
		marks = append(marks, mark{x: x, start: -r, lines: labelLines(d.Text)})
	}
	return marks
}

// labelLines parts a long text, first before its limits in brackets.
func labelLines(text string) []string {
	text = Plain(text)
	if Width(text, textSize, false) <= labelMost {
		return []string{text}
	}
	head, limits, found := strings.Cut(text, " (")
	if !found {
		return Wrap(text, labelMost, textSize, false)
	}
	return append(Wrap(head, labelMost, textSize, false), Wrap("("+limits, labelMost, textSize, false)...)
}

// fullLine is the dimension line of a diameter; its label rises from its upper end.
func (c *Canvas) fullLine(x, r float64) {
	top, bottom := Point{x, -r}, Point{x, r}
	if 2*r < 3*arrowLong {
		c.Arrow(top, Point{x, -r - 1})
		c.Arrow(bottom, Point{x, r + 1})
		c.Line(Thin, top, Point{x, r + tailLong})
		return
	}
	c.Arrow(top, bottom)
	c.Arrow(bottom, top)
	c.Line(Thin, top, bottom)
}

// halfLine is the dimension line of a bore that only the upper half shows: one arrow, and a line that goes on beyond the axis.
func (c *Canvas) halfLine(x, r float64) {
	top := Point{x, -r}
	if r < 1.5*arrowLong {
		c.Arrow(top, Point{x, -r - 1})
	} else {
		c.Arrow(top, Point{x, 0})
	}
	c.Line(Thin, top, Point{x, halfPast})
}

// leaders finds a riser for each surface or edge that a leader points at: near it, but on no edge of the part and on no other line.
func (b *bench) leaders(dims []plan.Dim, columns []mark) []mark {
	sort.SliceStable(dims, func(i, j int) bool { return b.target(dims[i]).X < b.target(dims[j]).X })
	var taken []float64
	for _, m := range columns {
		taken = append(taken, m.x)
	}
	for _, e := range append(edges(b.section.Outer), edges(b.section.Inner)...) {
		taken = append(taken, b.v.x(e.z))
	}
	start := -b.reach - rowsBase + 2
	var xs []float64
	for _, d := range dims {
		p := b.target(d)
		rightHalf := p.X > b.v.x((b.first+b.last)/2)
		x := clearOf(taken, p.X, max(riserGap, slant*(p.Y-start)), rightHalf != d.Inside)
		taken, xs = append(taken, x), append(xs, x)
	}
	sort.Float64s(xs) // in the order of what they point at, so that no leader crosses another
	var marks []mark
	for i, d := range dims {
		p := b.target(d)
		marks = append(marks, mark{x: xs[i], start: start, foot: &p, arrow: true, lines: labelLines(d.Text)})
	}
	return marks
}

// target is the place that a leader points at: the middle of a surface, or of what is left of it.
func (b *bench) target(d plan.Dim) Point {
	curve := b.section.Outer
	if d.Inside {
		curve = b.section.Inner
	}
	for _, s := range curve {
		from, to := max(s.Z0, d.Z0), min(s.Z1, d.Z1)
		if from < to && math.Abs(s.R0-d.R) < touching && math.Abs(s.R1-d.R) < touching {
			return b.v.at((from+to)/2, d.R)
		}
	}
	return b.v.at((d.Z0+d.Z1)/2, d.R)
}

// slant is how far a leader leans for each millimetre that it rises, so that it cannot be taken for an edge of the part.
const slant = 0.35

// clearOf is the place nearest to x, but at least off away from it, that keeps riserGap from all that is taken.
func clearOf(taken []float64, x, off float64, rightFirst bool) float64 {
	sign := -1.0
	if rightFirst {
		sign = 1
	}
	for step := 0.0; ; step++ {
		for _, s := range []float64{sign, -sign} {
			if at := x + s*(off+step*riserGap/2); !near(taken, at) {
				return at
			}
		}
	}
}

func near(taken []float64, x float64) bool {
	for _, t := range taken {
		if math.Abs(t-x) < riserGap {
			return true
		}
	}
	return false
}
