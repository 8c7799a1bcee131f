package holding

import (
	"math"
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
		if off := s.drilledPast(m); m.Stop && !m.Step && off > 0 && off < long {
			mounts = append(mounts, m.stoodOff(off))
		}
	}
	return mounts
}

// stoodOff is a grip with the work's shoulder so far above the jaws, for drills that come out there.
func (m Mount) stoodOff(off float64) Mount {
	m.Stop, m.StandOff = false, off
	if m.Free == partspec.Right {
		m.Z1 -= off
	} else {
		m.Z0 += off
	}
	return m
}

// drilledPast is how far the shoulder of a grip has to stand above the jaws so that all that is drilled from the free end comes out clear of them; 0 where nothing
// comes out there.
func (s Shop) drilledPast(m Mount) float64 {
	far := 0.0
	for _, t := range s.Tasks {
		for _, w := range t.Ways {
			past := m.Z1 - w.Span[0]
			if m.Free == partspec.Left {
				past = w.Span[1] - m.Z0
			}
			if w.Machine == m.Machine && w.End == m.Free && pressesDown(t) && !w.Across && past < breakThrough {
				far = max(far, past)
			}
		}
	}
	if far <= 0 {
		return 0
	}
	return math.Ceil(far + jawClearance)
}

func wholeTurns(n float64) string {
	if n == 1 {
		return "one whole turn"
	}
	return strconv.FormatFloat(n, 'f', 0, 64) + " whole turns"
}
