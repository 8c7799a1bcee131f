package process

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/tables"
)

// slotDepth is the deepest that an end mill of a diameter cuts over its whole width: half of it, a quarter in steel (cutting table, slot).
func (c *Context) slotDepth(d float64) float64 {
	if soft(c.Part.Material.Family) || c.Part.Material.Family == tables.FamilyBronze {
		return c.sprung(d/2, d)
	}
	return d / 4
}

// sprung is how deep a milling cutter goes at once in the lathe, where the work stands on a springy slide: a quarter of its diameter (rule B-32); else as deep as it is
// asked to.
func (c *Context) sprung(deepMM, d float64) float64 {
	if c.Slide == nil || !c.Rules.Has("B-32") {
		return deepMM
	}
	return math.Min(deepMM, d/4)
}

// millRate is the speed and feed of a milling cutter on the mill, its passes so deep.
func (c *Context) millRate(d, deepMM float64, tool partspec.Tool) Rate {
	return c.capped(Rate{kind: cutEdge, diameter: d, tool: tool, on: partspec.Mill, own: deepMM})
}

// millForce is the force on the work of a milling cutter that cuts so deep, N, on the high side: as if one tooth took the feed of a whole turn, and what pushes it
// off taken in.
func (c *Context) millForce(kind partspec.ToolKind, d, deepMM float64) float64 {
	if kind == partspec.BallNose {
		return c.pushOf(deepMM, c.ballFeed(d))
	}
	return c.pushOf(deepMM, c.millFeed(d))
}

// ballFeed is a ball nose's feed a revolution: it has two teeth whatever its size. Common practice, no source.
func (c *Context) ballFeed(d float64) float64 {
	return math.Round(1000*c.millFeed(d)*ballTeeth/teethOf(d)) / 1000
}

const ballTeeth = 2.0

// pushOf is what a cut so deep at a feed a turn pushes sideways with, N.
func (c *Context) pushOf(deepMM, feedMM float64) float64 {
	f, err := mechanics.CuttingForce(mechanics.Cut{KC11MPa: c.kc(), MC: c.Part.Material.Mc, DepthMM: deepMM, FeedMM: feedMM, EdgeAngleDeg: 90, WearFactor: wear})
	if err != nil {
		return 0
	}
	return math.Hypot(f.MainN, f.PassiveN)
}

// lightMill is how deep a milling cutter of a diameter goes over its whole width on work that is only screwed down: as deep as a slot bears, or until it pushes
// with lightPush.
func (c *Context) lightMill(kind partspec.ToolKind, d float64) float64 {
	deep := c.slotDepth(d)
	if one := c.millForce(kind, d, 1); one > 0 {
		deep = math.Min(deep, lightPush/one)
	}
	return math.Max(leastMill, math.Floor(deep*10)/10)
}

// lightPush is what a screw through a bore holds with the usual safety, N; leastMill the shallowest layer that is worth roughing by. Ours, no source.
const (
	lightPush = 250.0
	leastMill = 0.8
)
