package draw

import (
	"catchplate/planner/plan"
)

// stage says when something across the axis is cut: before a holding, in it, or not yet.
type stage int

const (
	stageInvalid stage = iota
	cutBefore
	cutNow
	cutLater
)

// stageOf is the stage of a feature in a holding of a part. A mark alone cuts nothing.
func stageOf(p *plan.Part, s *plan.Setup, feature string) stage {
	for _, o := range p.Setups {
		for _, op := range o.Operations {
			if op.Feature != feature || op.Process == plan.MarkOut || op.Process == plan.Spot {
				continue
			}
			switch {
			case o.Number < s.Number:
				return cutBefore
			case o.Number == s.Number:
				return cutNow
			}
		}
	}
	return cutLater
}

// besideBefore are the holes beside the axis as they are when a holding begins.
func besideBefore(p *plan.Part, s *plan.Setup) []plan.FlatHole {
	var out []plan.FlatHole
	for _, o := range p.Setups {
		if o.Number < s.Number {
			out = o.Beside
		}
	}
	return out
}

// endShape is a turned shape as its free end shows it: the largest circle, the bore at that end, and the holes beside the axis.
func endShape(section plan.Section, beside []plan.FlatHole, left bool) *plan.Flat {
	outer := section.Outer
	first, last := outer[0].Z0, outer[len(outer)-1].Z1
	f := &plan.Flat{Outline: discOutline(greatest(outer, first, last)), BackZ: first, FrontZ: last}
	for _, h := range beside { // what is drilled from the free end is seen, however far its mouth lies behind the outermost face
		if !left && h.FromZ > h.ToZ {
			h.FromZ = last
		} else if left && h.FromZ < h.ToZ {
			h.FromZ = first
		}
		f.Holes = append(f.Holes, h)
	}
	return f
}

// uprightSetup is the sketch of turned work that stands on a table or lies at the bench: its free end from above, and cut open below that.
func uprightSetup(name string, p *plan.Part, s *plan.Setup, before, after plan.Section) Page {
	left := s.FreeEnd == "left"
	return flatSetup(name, p, s, endShape(before, besideBefore(p, s), left), endShape(after, s.Beside, left), before, after)
}

// turnedWork draws, over the plain circle, what else the free end shows.
func (c *Canvas) turnedWork(sc *flatScene) {
	c.endEdges(sc.v, sc.sections[1], &sc.keep)
	for _, x := range sc.p.Drawing.Crossed {
		if stageOf(sc.p, sc.s, x.Feature) != cutLater {
			c.crossedEnd(sc.v, sc.sections[1], x, &sc.keep)
		}
	}
}

// cutTurned draws turned work that stands on the table, cut open through its axis.
func (c *Canvas) cutTurned(sc *flatScene, v cutView) {
	lying := NewCanvas()
	along := view{scale: sc.v.scale, mirror: sc.v.mirror, originZ: v.under}
	for _, side := range []half{upper, lower} {
		lying.metal(Off, along, sc.sections[0], side)
		lying.metal(Stays, along, sc.sections[1], side)
	}
	for _, e := range edges(sc.sections[1].Inner) {
		if e.r > 0 {
			lying.Line(Outline, along.at(e.z, -e.r), along.at(e.z, e.r))
		}
	}
	standing := NewCanvas()
	standing.PlaceTurned(lying)
	c.Place(standing, 0, v.base)
	c.openGaps(sc, v)
	c.Line(Centre, Point{0, v.base + 3}, Point{0, v.base - v.high(sc.before.FrontZ) - v.high(sc.before.BackZ) - 4})
}
