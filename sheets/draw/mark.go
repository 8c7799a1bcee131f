package draw

import "sort"

// mark is a label with the line that leads to it: straight from start, or by way of a slanting line from foot.
type mark struct {
	x     float64
	start float64
	foot  *Point
	arrow bool // at the foot
	lines []string
	bold  bool
}

// marks places and draws labels in rows that begin at base and go up (away = -1) or down (away = 1), within the bounds if they can.
func (c *Canvas) marks(marks []mark, base, away, left, right float64) {
	sort.SliceStable(marks, func(i, j int) bool { return marks[i].x < marks[j].x })
	risers := make([]riser, len(marks))
	starts := make([]float64, len(marks))
	for i, m := range marks {
		risers[i] = riser{m.x, m.lines, m.bold}
		starts[i] = m.start
	}
	risers = spread(risers)
	for i, m := range marks {
		if m.foot == nil {
			continue
		}
		elbow := Point{risers[i].x, m.start}
		c.Line(Thin, *m.foot, elbow)
		if m.arrow {
			c.Arrow(*m.foot, elbow)
		}
	}
	c.flags(stack(risers, left, right), base, away, starts)
}
