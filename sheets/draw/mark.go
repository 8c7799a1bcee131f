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

// inOrder sorts marks along the axis and moves their risers apart.
func inOrder(marks []mark) ([]mark, []riser) {
	sort.SliceStable(marks, func(i, j int) bool { return marks[i].x < marks[j].x })
	risers := make([]riser, len(marks))
	for i, m := range marks {
		risers[i] = riser{m.x, m.lines, m.bold}
	}
	return marks, spread(risers)
}

// marks places and draws labels in rows that begin at base and go up (away = -1) or down (away = 1), within the bounds if they can.
func (c *Canvas) marks(marks []mark, base, away float64, left, right float64) {
	marks, risers := inOrder(marks)
	starts := make([]float64, len(marks))
	for i, m := range marks {
		starts[i] = m.start
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
