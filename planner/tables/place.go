package tables

import (
	"fmt"

	"catchplate/partspec/units"
)

// Placing is a step by which the place of a hole is found or kept, as the table of accuracies names it.
type Placing string

// What a place rests on. Each adds its own error; see PlaceError.
const (
	ByDrill    Placing = "coordinate drilling, dials" // a drill that has been spotted, from where its spindle stands
	ByPunch    Placing = "punch marking and drilling" // a punch mark, from the lines it stands on; the drill follows it
	ByEdge     Placing = "edge found, edge finder"    // one edge, from where the dial then has it
	ByTool     Placing = "edge found, tool and paper" // the same without an edge finder
	ByClocking Placing = "round surface clocked"      // the centre of a bore or spigot
	ByFlush    Placing = "edges laid flush"           // an edge of one part, from that of another, where both touch a bar

	BySlide Placing = "work on a vertical slide" // what the slide gives under the cut

	ByFileToLine  Placing = "filed to a scribed line" // an edge, from its line
	ByFileToGauge Placing = "filed to a gauge"        // an edge, from where a gauge, a template or a measure has it
)

// PlaceError is how far a step may put a place off, mm, radially (an edge: square to it), at the worse end of the table; a centre lies off by half the
// indicator's full reading. A punch mark is taken at the middle of its row: the wander of the drill that follows it is the row ByDrill's, and both
// together make the worse end. A tool's own accuracy, where the workshop gives it, takes the place of ByEdge and ByPunch.
//
// A boring head bores where its spindle stands and adds nothing. Reamers, taps, counterbores, countersinks and larger drills follow the hole that is there.
func PlaceError(p Placing) units.Length {
	row, ok := FindProcess(string(p))
	if !ok {
		panic(fmt.Sprintf("tables: no row for %q", p))
	}
	switch p {
	case ByPunch:
		return (row.RunOut.Low + row.RunOut.High) / 2
	case ByClocking:
		return row.RunOut.High / 2
	}
	return row.RunOut.High
}
