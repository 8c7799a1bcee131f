package holding

import (
	"math"

	"catchplate/partspec"
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
		}
	}
	return mounts
}
