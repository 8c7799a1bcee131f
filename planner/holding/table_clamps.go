package holding

import (
	"math"
	"slices"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/tables"
)

// clampedDown lists work clamped to the table of a mill or drilling machine, either face up (rule B-34): by clamps that stand where they like, or, so that edges can
// be cut, only on the sides that face X or only on those that face Y.
func (s Shop) clampedDown(h partspec.Holding) []Mount {
	var mounts []Mount
	for _, k := range s.uprights(h) {
		for _, free := range faces() {
			m := Mount{Holding: h, Machine: k, Free: free, Surface: "its " + FaceName(free.Other()), Z0: 0, Z1: s.Length, Minutes: s.minutes(h), Locate: s.atDatum(), Along: s.edgeError()}
			mounts = append(mounts, m)
			for _, side := range []struct {
				name   string
				spared []int
			}{
				{"left and right", s.milledEdges(k, func(ox, _ float64) bool { return math.Abs(ox) < facesJaws })},
				{"bottom and top", s.milledEdges(k, func(_, oy float64) bool { return math.Abs(oy) < facesJaws })},
			} {
				if len(side.spared) > 0 {
					m.Surface, m.Spared = "its "+FaceName(free.Other())+", clamps on the "+side.name+" edges", side.spared
					mounts = append(mounts, m)
				}
			}
			if k == partspec.Mill {
				mounts = append(mounts, s.turnedRound(h, free)...)
			}
		}
	}
	return mounts
}

// turnedRound lists the work clamped to the mill's table by a face, turned round so that a slanting edge lies along x: for each direction that an edge is milled in.
func (s Shop) turnedRound(h partspec.Holding, free partspec.End) []Mount {
	var mounts []Mount
	for _, t := range s.Tasks {
		for _, w := range t.Ways {
			if w.AskewDeg == 0 || w.End != free || w.Machine != partspec.Mill {
				continue
			}
			edge := t.Flat.Edges[0].Edge
			if i := slices.IndexFunc(mounts, func(m Mount) bool { return m.AskewDeg == w.AskewDeg }); i >= 0 {
				mounts[i].Spared = append(mounts[i].Spared, edge)
				continue
			}
			name := strings.ReplaceAll(s.Part.Outline.Edges[edge].Name, "_", " ")
			mounts = append(mounts, Mount{Holding: h, Machine: partspec.Mill, Free: free, AskewDeg: w.AskewDeg, Spared: []int{edge}, EdgesOnly: true, Z0: 0, Z1: s.Length,
				Surface: "its " + FaceName(free.Other()) + ", the " + name + " edge along the table", Minutes: s.minutes(h) + askewMinutes, Locate: float64(tables.PlaceError(tables.ByPunch))})
		}
	}
	return mounts
}

// askewMinutes is what setting work round to a line takes on top. Ours, no source.
const askewMinutes = 5.0
