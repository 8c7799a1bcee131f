package holding

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/process"
)

// Bed is what carries turned work, so far from its axis at its widest, on a table; nil on a lathe and at the bench.
func (m Mount) Bed(widest float64) *plan.Bed {
	switch {
	case m.Machine != partspec.Mill && m.Machine != partspec.Drill:
		return nil
	case m.GripKind() == "clamps":
		return &plan.Bed{Kind: "plate"}
	case m.swings():
		return m.clearBelow(widest)
	case m.GripKind() == "jaws":
		bed := &plan.Bed{Kind: "jaws", GapMM: math.Floor(jawLength(m.Holding) - (m.Z1 - m.Z0))} // what the jaws are deeper than the grip
		if m.Step {
			bed.Kind, bed.HeightMM = "jaw steps", bed.GapMM
		}
		return bed
	}
	return &plan.Bed{Kind: "parallels", HeightMM: lyingGap, GapMM: lyingGap, Under: []plan.Strip{{X0: m.Z0, Y0: -m.Radius, X1: m.Z1, Y1: m.Radius}}}
}

// lyingGap is the clear depth under round work that lies in a vice or in vee blocks, where it is drilled through. Common practice, no source.
const lyingGap = 10.0

// tableTitle names a setup on a table or at the bench.
func (m Mount) tableTitle(noun, on string) string {
	switch {
	case m.Machine == partspec.Bench:
		return fmt.Sprintf("At the bench, %s end up", m.Free)
	case m.OnSlide():
		return fmt.Sprintf("Vertical slide, the part lying across the bed in its vice, on %s, %s end free", on, m.Free)
	case m.indexes():
		return fmt.Sprintf("Dividing head upright on the mill's table, %s on %s, %s end up", strings.ToLower(noun[:1])+noun[1:], on, m.Free)
	case m.Head != nil:
		return fmt.Sprintf("Dividing head on the mill's table, %s on %s, %s end free", strings.ToLower(noun[:1])+noun[1:], on, m.Free)
	case m.Tilted != nil:
		return fmt.Sprintf("Tilting plate %s on the mill's table, %s on %s, %s end up", m.tiltInWords(), strings.ToLower(noun[:1])+noun[1:], on, m.Free)
	case m.Across:
		return fmt.Sprintf("%s on the %s's table, the part lying, on %s, %s end free", noun, m.Machine, on, m.Free)
	}
	return fmt.Sprintf("%s on the %s's table, on %s, %s end up", noun, m.Machine, on, m.Free)
}

// howOnTable tells how the work stands or lies and how the spindle is brought over it.
func (m Mount) howOnTable() []string {
	if m.Machine != partspec.Mill && m.Machine != partspec.Drill {
		return nil
	}
	how := m.howOnSlide()
	switch m.GripKind() {
	case "clamps":
		how = m.howBolted()
	case "vice", "vee":
		how = append(how, m.howLying()...)
	case "jaws":
		if m.swings() {
			how = m.howOnHead()
			break
		}
		if m.Tilted != nil {
			return m.howTilted()
		}
		how = []string{"Chuck flat on the table, bolted down; " + clearOfBody}
		if m.indexes() {
			how = m.howIndexed()
		}
		if m.StandOff > 0 {
			how = append(how, fmt.Sprintf("Its shoulder stands %s above the jaws, on a packing that is taken out once they are tight: drills come out there.", units.Length(m.StandOff)))
		}
	}
	switch {
	case m.Machine != partspec.Mill:
	case m.indexes():
		how = append(how, m.howUnderSpindle()...)
	case m.Across:
		how = append(how, "Find both sides of the round with the edge finder and stand half way between; find the free end's face.")
	default:
		how = append(how, fmt.Sprintf("Clock %s with an indicator in the spindle until it reads the same all round (%.2f full reading).", m.clocked(), m.RunOut))
	}
	return how
}

// clearOfBody is where work stands in a chuck that lies on a table, for drills that come out below it.
var clearOfBody = fmt.Sprintf("the work's lower end at least %s clear of the chuck's body.", units.Length(breakThrough))

func (m Mount) howBolted() []string {
	on := "the table"
	if m.Holding.Kind == partspec.AnglePlate {
		on = "the angle plate"
	}
	return []string{fmt.Sprintf("The %s face flat on %s, both clean; a close bush in %s, and a screw through it with its head sunk below what is cut.", m.Free.Other(), on, m.Surface),
		"A stop against the rim takes the push of the cut."}
}

func (m Mount) howLying() []string {
	if m.Holding.Kind == partspec.VeeBlock {
		return []string{fmt.Sprintf("In the vee block on Ø%s, clamp over the middle, the axis parallel to the x slide by an indicator.", units.Length(2*m.Radius).Round(2))}
	}
	return []string{fmt.Sprintf("In the vice on Ø%s, a vee strip against the moving jaw, the axis along the %s.", units.Length(2*m.Radius).Round(2), m.along())}
}

// bushToMake is the bush that fills a bore round the screw that draws the work down.
func (m Mount) bushToMake(c *process.Context, h *plan.Helper, size string) {
	h.Title = "Bush and screw, to hold the work down through its bore"
	h.Steps = []string{fmt.Sprintf("Turn a bush to %s, less 0.005 to 0.015: a push by hand; drill it for an M6 screw and sink the head, under the seat's crown or 1 below the face.", size),
		"As long as the bore less 1, so that the screw draws the work and not the bush.", "A plate or the table's slot takes the screw from below."}
	h.Rules = append(h.Rules, "A-37")
	h.Minutes = boltMinutes
}
