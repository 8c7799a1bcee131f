package holding

import (
	"catchplate/partspec"
)

// clampedDown lists work clamped to the table of a mill or drilling machine, either face up (rule B-34).
func (s Shop) clampedDown(h partspec.Holding) []Mount {
	var mounts []Mount
	for _, k := range s.uprights() {
		for _, free := range faces() {
			mounts = append(mounts, Mount{Holding: h, Machine: k, Free: free, Surface: "its " + FaceName(free.Other()), Z0: 0, Z1: s.Length, Minutes: s.minutes(h), Locate: s.atDatum()})
		}
	}
	return mounts
}
