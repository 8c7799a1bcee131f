package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// Chain is how a hole is brought to size.
type Chain string

// The chains. Each begins with what drilling it needs.
const (
	ChainDrill Chain = "drill" // drilled to size
	ChainBore  Chain = "bore"  // bored to size
	ChainReam  Chain = "ream"  // reamed, bored true before when its place matters
	ChainTaper Chain = "taper" // an inside taper
)

// Chains lists the chains that the tools owned allow for a hole, and why the others fall out.
func (c *Context) Chains(h shape.Hole) (chains []Chain, lacking []string) {
	if _, ok := h.Feature.(*partspec.Taper); ok {
		return []Chain{ChainTaper}, nil
	}
	for _, chain := range []Chain{ChainDrill, ChainReam, ChainBore} {
		if why := c.chainLack(h, chain); why != "" {
			lacking = append(lacking, why)
			continue
		}
		chains = append(chains, chain)
	}
	return chains, lacking
}

// chainLack says why a chain cannot make a hole, or nothing: the limits, the place or floor, and the tools owned decide (rules, C-06).
func (c *Context) chainLack(h shape.Hole, chain Chain) string {
	d := 2 * h.Radius
	switch chain {
	case ChainDrill:
		if c.Rules.Has("A-26n") && float64(h.Diameter.Width()) < drillWidth(d) {
			return fmt.Sprintf("drilling %s to size: a drill is trusted with %.2f, the limits are %.3f apart", h.Name, drillWidth(d), float64(h.Diameter.Width()))
		}
		if c.related(h.Name) || h.Flat {
			return fmt.Sprintf("drilling %s to size: its place or its floor matters", h.Name)
		}
		if _, _, ok := c.sized(partspec.Drills, float64(h.Diameter.Low), float64(h.Diameter.High)); !ok {
			return fmt.Sprintf("drilling %s to size: no drill owned between %.2f and %.2f (tool \"drills\" { sizes = [...] })", h.Name, float64(h.Diameter.Low), float64(h.Diameter.High))
		}
	case ChainReam:
		if _, ok := c.Lathe.Dial("tailstock"); !ok {
			return fmt.Sprintf("reaming %s: the lathe has no tailstock dial", h.Name)
		}
		if h.Flat {
			return fmt.Sprintf("reaming %s: a reamer leaves no flat floor", h.Name)
		}
		if _, _, ok := c.sized(partspec.Reamers, float64(h.Diameter.Low), float64(h.Diameter.High)); !ok {
			return fmt.Sprintf("reaming %s: no reamer owned between %.3f and %.3f (tool \"reamers\" { sizes = [...] })", h.Name, float64(h.Diameter.Low), float64(h.Diameter.High))
		}
		if !c.reamable(h) {
			return fmt.Sprintf("reaming %s: no drill owned leaves %.2f for the reamer, and no boring bar enters", h.Name, reamLeave(d))
		}
	case ChainBore:
		if why := c.unmeasurable(h.Name, h.Diameter, insideCheck); why != "" {
			return "boring " + why
		}
		if c.openedTo(h) == 0 {
			return fmt.Sprintf("boring %s: no drill is owned to open it for a boring bar (tool \"drills\" { sizes = [...] })", h.Name)
		}
		if len(c.bars(h)) == 0 {
			return fmt.Sprintf("boring %s: no boring bar owned enters Ø%.2f and reaches %.1f (a bar may stand out 4 times its diameter): %s", h.Name, c.openedTo(h), c.reachInto(h), c.barWanted(h))
		}
	}
	return ""
}

// drillWidth is the least width of limits that a drill is trusted with: it cuts 0.05 to 0.15 over. From memory of handbook practice.
func drillWidth(d float64) float64 { return 0.1 + 0.004*d }

// reamLeave is the metal left for a reamer on diameter (rule A-27).
func reamLeave(d float64) float64 {
	switch {
	case d <= 5:
		return 0.15
	case d <= 20:
		return 0.25
	}
	return 0.4
}

// related reports whether a relation binds a surface.
func (c *Context) related(name string) bool {
	for _, r := range c.Part.Relations {
		if r.Of.Feature == name || r.To.Feature == name {
			return true
		}
	}
	return false
}

// boreLeave is what drilling leaves for boring on diameter; floorShort how far a drill's point stays off a flat floor.
const (
	boreLeave  = 0.5
	floorShort = 0.3
)

// drillSize is the drill a chain ends with, or 0 when the hole that is there is wide enough already.
func (c *Context) drillSize(h shape.Hole, chain Chain) float64 {
	d := 2 * h.Radius
	if chain == ChainDrill {
		_, s, _ := c.sized(partspec.Drills, float64(h.Diameter.Low), float64(h.Diameter.High))
		return s
	}
	if h.Flat && c.startRadius(h) > 0 && len(c.straightBars(h)) > 0 {
		return 0 // a drill's cone would have to be bored out of the floor again
	}
	if chain == ChainTaper && len(c.taperBars(h, c.startRadius(h))) > 0 {
		return 0 // the bar enters the deeper hole, and cuts the cone from that
	}
	most := d - boreLeave
	if chain == ChainReam && !c.boredFirst(h) {
		most = d - reamLeave(d)/2
	}
	best := 0.0
	for _, t := range c.tools(partspec.Drills) {
		for _, s := range t.Sizes {
			if v := float64(s); v <= most+sizeNoise && v > best && (!h.Flat || pointLength(v)+floorShort+clearance <= h.Depth) { // over a flat floor its full width goes in
				best = v
			}
		}
	}
	if best <= 2*c.startRadius(h) {
		return 0
	}
	return best
}

// boredFirst reports whether a reamed hole is bored true before (rule A-28): its place is bound to another surface, and a bar enters.
func (c *Context) boredFirst(h shape.Hole) bool {
	return c.Rules.Has("A-28") && c.related(h.Name) && len(c.bars(h)) > 0
}

func (c *Context) reamable(h shape.Hole) bool {
	if c.boredFirst(h) {
		return true
	}
	d := 2 * h.Radius
	left := d - math.Max(c.drillSize(h, ChainReam), 2*c.startRadius(h))
	return left <= mostReam && left > 0
}

// mostReam is the most a reamer is asked to take on diameter (rule A-27: never over 0.8).
const mostReam = 0.8

// hole makes the tasks of one hole by the chain chosen for it.
func (c *Context) hole(h shape.Hole) []Task {
	if h.AsSupplied {
		return nil
	}
	chain, ok := c.Bored[h.Name]
	if !ok {
		_, lacking := c.Chains(h)
		return []Task{{Op: shape.Op{ID: h.Feature.Head().ID() + "/bore", Feature: h.Name, Process: plan.BoreOut, Inside: true, Z0: h.Z0, Z1: h.Z1}, Lacking: lacking}}
	}
	var tasks []Task
	if d := c.drillSize(h, chain); d > 0 {
		tasks = append(tasks, c.drill(h, chain, d))
	}
	switch chain {
	case ChainBore:
		tasks = append(tasks, c.bore(h, 2*h.Radius, &h.Diameter))
	case ChainReam:
		if c.boredFirst(h) {
			tasks = append(tasks, c.bore(h, 2*h.Radius-reamLeave(2*h.Radius), nil))
		}
		tasks = append(tasks, c.ream(h))
	case ChainTaper:
		tasks = append(tasks, c.taperHole(h))
	}
	return tasks
}

// mouths are the ends a hole can be worked from.
func mouths(h shape.Hole) []partspec.End {
	if h.Through {
		e := ends()
		return e[:]
	}
	return []partspec.End{h.From}
}

// into is the direction into the work from an end: +1 from the left.
func into(e partspec.End) float64 {
	if e == partspec.Left {
		return 1
	}
	return -1
}

// through is where a through cut from an end stops: past the parting place while the part hangs on its bar, else past the far end.
func (c *Context) through(e partspec.End, past float64) float64 {
	if c.Place.OnBar() && e == c.Place.Free {
		return c.Place.BarEnd(c.Length) + into(e)*past
	}
	return c.stockEnd(e.Other()) + into(e)*past
}
