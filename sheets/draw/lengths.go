package draw

import (
	"math"
	"sort"
)

// A span is a length to be dimensioned below the work. depth is how far down its extension lines begin, at either end.
type span struct {
	x0, x1         float64
	depth0, depth1 float64
	text           string
	least          float64 // nothing of it may stand left of this; 0 = anywhere
}

// rung is a span with its place found.
type rung struct {
	span
	level int
	textX float64 // middle of the text
}

const (
	levelStep   = 7.0 // distance of two dimension lines
	firstLevel  = 8.0 // from the work to the first
	extPast     = 1.5 // an extension line goes on beyond the dimension line
	extGap      = 1.0 // and begins this far from the work
	tailLong    = 5.0 // the shaft of an arrow that stands outside
	textAbove   = 1.0 // from a dimension line to the base line of its text
	textPad     = 1.0 // white beside a text
	mostLevels  = 40
	linePrice   = 9.0  // levels that a text goes farther out rather than be cut by an extension line
	besidePrice = 0.5  // and rather than stand beside its dimension line
	shiftPrice  = 0.1  // and rather than stand off its middle
	crowdPrice  = 0.2  // and rather than keep a neighbour from its level
	farPrice    = 0.02 // and rather than stand a millimetre farther beside its line
)

// ladder finds a place for every span: short ones near the work. busy holds other lines that run down past the work.
func ladder(spans []span, busy []float64) []rung {
	order := append([]span(nil), spans...)
	sort.SliceStable(order, func(i, j int) bool {
		a, b := order[i], order[j]
		if a.x1-a.x0 != b.x1-b.x0 {
			return a.x1-a.x0 < b.x1-b.x0
		}
		return a.x0 < b.x0
	})
	var done []rung
	for i, s := range order {
		done = append(done, settleSpan(s, done, order[i+1:], busy))
	}
	for range secondLooks {
		for i := range done {
			others := append(append([]rung(nil), done[:i]...), done[i+1:]...)
			done[i] = settleSpan(done[i].span, others, nil, busy)
		}
	}
	return done
}

// secondLooks is how often every rung is placed again when the places of all others are known.
const secondLooks = 3

// settleSpan tries every level and every place of the text, and takes the cheapest that meets no other rung.
func settleSpan(s span, done []rung, later []span, busy []float64) rung {
	lines := append([]float64(nil), busy...)
	for _, l := range later {
		lines = append(lines, l.x0, l.x1)
	}
	best, bestCost := rung{span: s, level: mostLevels}, math.Inf(1)
	places := textPlaces(s, append(linesOf(done), lines...))
	for level := 0; level < mostLevels && float64(level) < bestCost; level++ {
		for i, textX := range places {
			r := rung{span: s, level: level, textX: textX}
			if !r.free(done) || !r.kept() {
				continue
			}
			cost := float64(level) + linePrice*float64(r.cut(done, lines)) + crowdPrice*float64(r.crowds(later))
			switch {
			case r.beside():
				cost += besidePrice + farPrice*r.away()
			case i > 0:
				cost += shiftPrice
			}
			if cost < bestCost {
				best, bestCost = r, cost
			}
		}
	}
	return best
}

// crowds counts the spans yet to be placed that could not share this rung's level.
func (r rung) crowds(later []span) int {
	n := 0
	left, right := r.room()
	for _, l := range later {
		if l.x0 < right-textPad && left+textPad < l.x1 && (l.x0 >= r.x1 || l.x1 <= r.x0) {
			n++
		}
	}
	return n
}

// textPlaces are the middles of the text: above its line, where it fits, then along it, then beside it to the right and left, then clear of
// each line that others draw.
func textPlaces(s span, lines []float64) []float64 {
	half := Width(s.text, textSize, false)/2 + textPad
	var out []float64
	room := (s.x1-s.x0)/2 - half
	if room >= 0 {
		middle := (s.x0 + s.x1) / 2
		out = append(out, middle)
		for _, share := range []float64{0.5, -0.5, 1, -1} {
			out = append(out, middle+share*room)
		}
	}
	right, left := s.x1+tailLong+half, s.x0-tailLong-half
	out = append(out, right, left)
	for _, l := range lines {
		for _, x := range []float64{l + half, l - half} {
			if x > right || x < left || room >= 0 && x >= s.x0+half && x <= s.x1-half {
				out = append(out, x)
			}
		}
	}
	return out
}

// linesOf are the places of all extension lines.
func linesOf(rungs []rung) []float64 {
	var out []float64
	for _, r := range rungs {
		out = append(out, r.x0, r.x1)
	}
	return out
}

// away is how far the text stands beside its line.
func (r rung) away() float64 {
	left, right := r.textSpan()
	return max(left-r.x1, r.x0-right)
}

// textSpan is the room of the text along the axis.
func (r rung) textSpan() (left, right float64) {
	half := Width(r.text, textSize, false)/2 + textPad
	return r.textX - half, r.textX + half
}

// beside is true when the text stands beside its dimension line, not above it.
func (r rung) beside() bool { return r.textX < r.x0 || r.textX > r.x1 }

// room is all that the rung takes on its level.
func (r rung) room() (left, right float64) {
	left, right = r.textSpan()
	left, right = min(left, r.x0), max(right, r.x1)
	if r.tight() {
		left, right = min(left, r.x0-tailLong), max(right, r.x1+tailLong)
	}
	return left, right
}

// tight is true when the arrows do not fit between the extension lines.
func (r rung) tight() bool { return r.x1-r.x0 < 3*arrowLong }

// kept reports whether the rung keeps out of what lies left of its least place.
func (r rung) kept() bool {
	left, _ := r.room()
	return r.least == 0 || left >= r.least
}

func (r rung) free(done []rung) bool {
	left, right := r.room()
	for _, o := range done {
		if l, rr := o.room(); o.level == r.level && l < right+textPad && left < rr+textPad {
			return false
		}
	}
	return true
}

// cut counts the extension lines that run through the text, and the texts of nearer rungs that its own extension lines run through.
func (r rung) cut(done []rung, later []float64) int {
	n := 0
	left, right := r.textSpan()
	lines := append([]float64{r.x0, r.x1}, later...)
	for _, o := range done {
		if o.level >= r.level {
			lines = append(lines, o.x0, o.x1)
		}
		if l, rr := o.textSpan(); o.level < r.level {
			n += between(l, r.x0, rr) + between(l, r.x1, rr)
		}
	}
	for _, x := range lines {
		n += between(left, x, right)
	}
	return n
}

func between(left, x, right float64) int {
	if left < x && x < right {
		return 1
	}
	return 0
}

// rungs draws dimension lines beyond base, going down (away = 1) or up (away = -1).
func (c *Canvas) rungs(rungs []rung, base, away float64) {
	at := func(r rung) float64 { return base + away*(firstLevel+float64(r.level)*levelStep) }
	for _, r := range rungs {
		y := at(r)
		c.Line(Thin, Point{r.x0, r.depth0 + away*extGap}, Point{r.x0, y + away*extPast})
		c.Line(Thin, Point{r.x1, r.depth1 + away*extGap}, Point{r.x1, y + away*extPast})
		c.dimensionLine(r, y)
	}
	for _, r := range rungs { // texts last: they are written over the lines of others
		y := at(r) - textAbove
		c.Text(Text{At: Point{r.textX, y}, Anchor: AtMiddle, Size: textSize, Text: r.text})
	}
}

func (c *Canvas) dimensionLine(r rung, y float64) {
	a, b := Point{r.x0, y}, Point{r.x1, y}
	left, right := r.textSpan()
	if r.tight() {
		c.Arrow(a, Point{a.X - 1, y})
		c.Arrow(b, Point{b.X + 1, y})
		c.Line(Thin, Point{min(a.X-tailLong, left), y}, Point{max(b.X+tailLong, right), y})
		return
	}
	c.Arrow(a, b)
	c.Arrow(b, a)
	c.Line(Thin, Point{min(a.X, left), y}, Point{max(b.X, right), y})
}
