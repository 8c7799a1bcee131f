package draw

import (
	"math"

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

// withBores adds to a flat shape the drawn bores that have been cut by some stage and that it does not list: a lathe's bores may stand in its operations alone.
func withBores(p *plan.Part, s *plan.Setup, f *plan.Flat, by stage) *plan.Flat {
	out := *f
	out.Holes = append([]plan.FlatHole(nil), f.Holes...)
	for _, h := range drawnHoles(p) {
		known := h.Number != 0
		for _, o := range f.Holes {
			known = known || o.Feature == h.Feature
		}
		if at := stageOf(p, s, h.Feature); !known && at <= by {
			out.Holes = append(out.Holes, h)
		}
	}
	return &out
}

// markedOut reports whether a feature has been marked out by the end of a holding.
func markedOut(p *plan.Part, s *plan.Setup, feature string) bool {
	for _, o := range p.Setups {
		for _, op := range o.Operations {
			if o.Number <= s.Number && op.Feature == feature {
				return true
			}
		}
	}
	return false
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
	for _, h := range beside {
		f.Holes = append(f.Holes, openEnds(outer, h))
	}
	return f
}

// openEnds moves a hole's ends that come out of the work to the outermost faces, so that it counts as seen from there however far its mouth lies back.
func openEnds(outer []plan.Segment, h plan.FlatHole) plan.FlatHole {
	low, high := facesAt(outer, math.Hypot(h.XMM, h.YMM))
	for _, z := range []*float64{&h.FromZ, &h.ToZ} {
		if *z <= low+touching {
			*z = outer[0].Z0
		} else if *z >= high-touching {
			*z = outer[len(outer)-1].Z1
		}
	}
	return h
}

// facesAt are the first and the last place along the axis where the outside reaches so far off it.
func facesAt(outer []plan.Segment, off float64) (low, high float64) {
	low, high = outer[0].Z0, outer[len(outer)-1].Z1
	for i := 0; i < len(outer) && min(outer[i].R0, outer[i].R1) < off; i++ {
		low = outer[i].Z1
	}
	for i := len(outer) - 1; i >= 0 && min(outer[i].R0, outer[i].R1) < off; i-- {
		high = outer[i].Z0
	}
	return low, high
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
		if stageOf(sc.p, sc.s, x.Feature) != cutLater || x.On != "" && markedOut(sc.p, sc.s, x.Feature) {
			c.crossedEnd(sc.v, sc.sections[1], x, &sc.keep)
		}
	}
}

// acrossPipe reports whether a seat's own shape is shown in the lower view.
func (sc *flatScene) acrossPipe() bool {
	for _, x := range sc.p.Drawing.Crossed {
		if x.Kind == plan.CrossedSeat && x.On != "" && sc.turned() && !sc.atBench() && stageOf(sc.p, sc.s, x.Feature) != cutLater {
			return true
		}
	}
	return false
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
	for _, x := range sc.p.Drawing.Crossed {
		class := Paper
		switch stageOf(sc.p, sc.s, x.Feature) {
		case cutNow:
			class = Off
		case cutLater:
			continue
		}
		if x.Kind == plan.CrossedSeat && x.On != "" {
			lying.seatCut(along, x, class)
		}
	}
	standing := NewCanvas()
	standing.PlaceTurned(lying)
	c.Place(standing, 0, v.base)
	c.openGaps(sc, v)
	c.Line(Centre, Point{0, v.base + 3}, Point{0, v.base - v.high(sc.before.FrontZ) - v.high(sc.before.BackZ) - 4})
}
