package partspec

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec/units"
)

// Which way holes run.
const (
	alongAxis    = "axis"   // of the part; of a flat part square to its faces
	squareToSeat = "normal" // to the seat that they come out of
)

// holeDirection reads which way holes run: along the axis, also when nothing is written.
func (s *shaper) holeDirection(e *entry) {
	text := e.text("direction")
	switch {
	case text == "" || text == alongAxis:
	case text != squareToSeat:
		s.c.fail(e, e.at("direction"), fmt.Sprintf("%s cannot run %q", e.title(), text), `Write direction = "axis", or leave it out.`)
	case !s.hasSeat():
		s.c.fail(e, e.at("direction"), fmt.Sprintf("%s has no seat to be square to", e.title()), `Write direction = "axis", or leave it out; a seat is a block of its own.`)
	}
}

func (s *shaper) hasSeat() bool {
	for _, e := range s.entries {
		if e.word == "seat" {
			return true
		}
	}
	return false
}

// squareToSeat refuses holes square to a seat, and tells how far each would lean.
func (s *shaper) squareToSeat(e *entry, h *Holes, seat *Seat) {
	if e.text("direction") != squareToSeat {
		return
	}
	var list []string
	for _, p := range h.Places {
		list = append(list, seat.tilt(p).String())
	}
	s.c.fail(e, e.at("direction"), fmt.Sprintf("%s would lean, and nothing here holds the work tilted", e.title()),
		`Square to %s they lean from the axis by, hole 1 onward, %s. Write direction = "axis", with the screws' heads on the flat side; or leave them out and drill each from the pipe's side in a tilting vice, by those angles.`,
		s.entryOf(seat.Name).title(), strings.Join(list, ", "))
}

// tilt is how far a hole square to the seat leans from the part's axis: asin(x/R), x its place beside the pipe's axis. Plane geometry.
func (f *Seat) tilt(at Point) units.Angle {
	share := math.Abs(f.Beside(at.X.Value, at.Y.Value)) / float64(f.Radius.Value)
	return units.Angle(math.Asin(math.Min(1, share)) * 180 / math.Pi).Round(tiltDecimals)
}

// tiltDecimals is how finely a tilt is told, in decimals of a degree: finer than work is set.
const tiltDecimals = 2
