package holding

import (
	"strconv"

	"catchplate/partspec"
)

// breakThrough is the clear depth that is kept between the work and the chuck's face, for drills that go through.
const breakThrough = 8.0

// chuckOnTable is what bolting a chuck to the table and clocking the work in it takes beside the holding's own time. Ours, no source.
const chuckOnTable = 8.0

// uprightChuck lists grips of a lathe's chuck set upright on a table: the surface is the one clocked, so that the chuck's own run-out does not count.
func (s Shop) uprightChuck(h partspec.Holding, on partspec.MachineKind) []Mount {
	var mounts []Mount
	for _, m := range s.onOutside(h) {
		m.Machine, m.Minutes, m.Locate, m.RunOut = on, m.Minutes+chuckOnTable, s.centreError(), 2*s.centreError()
		long := min(m.Z1-m.Z0, jawLength(h)-breakThrough)
		if m.Free == partspec.Right {
			m.Z0 = m.Z1 - long
		} else {
			m.Z1 = m.Z0 + long
		}
		mounts = append(mounts, m)
	}
	return mounts
}

func wholeTurns(n float64) string {
	if n == 1 {
		return "one whole turn"
	}
	return strconv.FormatFloat(n, 'f', 0, 64) + " whole turns"
}
