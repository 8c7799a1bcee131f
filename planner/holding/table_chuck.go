package holding

import (
	"fmt"
	"strconv"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
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

// Bed is what carries the work on a table; nil on a lathe and at the bench.
func (m Mount) Bed() *plan.Bed {
	if m.Machine != partspec.Mill && m.Machine != partspec.Drill {
		return nil
	}
	return &plan.Bed{Kind: "jaws", GapMM: breakThrough}
}

// tableTitle names a setup on a table or at the bench.
func (m Mount) tableTitle(noun, on string) string {
	if m.Machine == partspec.Bench {
		return fmt.Sprintf("At the bench, %s end up", m.Free)
	}
	return fmt.Sprintf("%s set upright on the %s's table, on %s, %s end up", noun, m.Machine, on, m.Free)
}

// howOnTable tells how the chuck stands and how the spindle is brought over the work.
func (m Mount) howOnTable() []string {
	if m.Machine != partspec.Mill && m.Machine != partspec.Drill {
		return nil
	}
	how := []string{fmt.Sprintf("Chuck flat on the table, bolted down; the work's lower end %s clear of its face, on two parallels while it is gripped: draw them out.", units.Length(breakThrough))}
	if m.Machine == partspec.Mill {
		how = append(how, fmt.Sprintf("Clock %s with an indicator in the spindle until it reads the same all round (%.2f full reading); lock the table to try it.", m.Surface, m.RunOut))
	}
	return how
}
