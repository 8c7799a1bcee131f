package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/shape"
)

// startRadius is the radius of the hole that is there before, from the stock or from a deeper hole.
func (c *Context) startRadius(h shape.Hole) float64 {
	r := math.Max(0, c.Stock.Inner.Least(h.Z0, h.Z1))
	for _, other := range c.Holes {
		deeper := other.Through || other.From == h.From && other.Depth > h.Depth
		if other.Name != h.Name && deeper && other.Radius < h.Radius {
			r = math.Max(r, other.Radius)
		}
	}
	return r
}

// openedTo is the diameter that a boring bar finds.
func (c *Context) openedTo(h shape.Hole) float64 {
	return math.Max(2*c.startRadius(h), c.drillSize(h, ChainBore))
}

// barRoom is the part of a hole's diameter that a boring bar fills at most, so that chips get past it. Common practice, no source.
const barRoom = 0.8

// barWanted says which boring bar would do.
func (c *Context) barWanted(h shape.Hole) string {
	least, most := c.reachInto(h)/4, barRoom*c.openedTo(h)
	switch {
	case math.Ceil(least) == math.Floor(most):
		return fmt.Sprintf("a bar of Ø%.0f would do", math.Floor(most))
	case math.Ceil(least) > most:
		return "none that goes in is stiff enough; open it by a larger drill or a reamer, or bore it from both ends"
	}
	return fmt.Sprintf("a bar of Ø%.0f to Ø%.0f would do", math.Ceil(least), math.Floor(most))
}

// reachInto is how far a boring bar stands into the work for a hole.
func (c *Context) reachInto(h shape.Hole) float64 {
	if h.Through && c.Place.OnBar() {
		return h.Depth + c.Place.Spare + overrun
	}
	if h.Through {
		return h.Depth + 2*overrun
	}
	return h.Depth
}

// overrun is how far a through hole is cut past the end.
const overrun = 0.6

// bars lists the boring bar that bores a hole: the stiffest.
func (c *Context) bars(h shape.Hole) []partspec.Tool {
	if h.Flat {
		if straight := c.straightBars(h); len(straight) > 0 {
			return straight
		}
		// Else the bottom that the drill's point leaves is faced layer by layer: with its edge at the middle, the bar's back must still clear the wall, a pass short of its size.
		return c.barsInto(h, math.Min(c.openedTo(h), h.Radius-boreDepth+c.startRadius(h)-c.stillToCome(h)/2))
	}
	return c.barsInto(h, c.openedTo(h))
}

// straightBars lists the bar that bores a hole with a flat floor straight down: into the hole that goes on from its floor, which may still want its last cut.
func (c *Context) straightBars(h shape.Hole) []partspec.Tool {
	return c.barsInto(h, 2*c.startRadius(h)-c.stillToCome(h))
}

// barsInto lists the stiffest bar that goes into an opening and reaches a hole's depth.
func (c *Context) barsInto(h shape.Hole, open float64) []partspec.Tool {
	var bars []partspec.Tool
	for _, t := range c.tools(partspec.Boring) {
		reach := float64(t.Reach)
		if c.Rules.Has("C-06") {
			reach = math.Min(reach, 4*float64(t.BarDiameter))
		}
		if float64(t.LeastBore) <= open+sizeNoise && reach >= c.reachInto(h) {
			bars = append(bars, t)
		}
	}
	slices.SortStableFunc(bars, func(a, b partspec.Tool) int { return int(math.Copysign(1, float64(b.BarDiameter-a.BarDiameter))) })
	return bars[:min(1, len(bars))]
}

// stillToCome is what the deeper hole in a hole's bottom may still lack of its diameter: it is bored or reamed to size later, unless it is drilled so.
func (c *Context) stillToCome(h shape.Hole) float64 {
	for _, other := range c.Holes {
		if other.Name != h.Name && other.Radius == c.startRadius(h) && c.chainLack(other, ChainDrill) != "" {
			return boreLeave
		}
	}
	return 0
}
