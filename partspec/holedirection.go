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

// holeDirection reads which way holes run: along the axis, also when nothing is written, or square to a seat, from whose end they are then drilled.
func (s *shaper) holeDirection(e *entry, f *Holes) {
	text := e.text("direction")
	switch {
	case text == "" || text == alongAxis:
	case text != squareToSeat:
		s.c.fail(e, e.at("direction"), fmt.Sprintf("%s cannot run %q", e.title(), text), `Write direction = "axis" or "normal", or leave it out.`)
	default:
		s.comesOutOf(e, f)
	}
}

// comesOutOf finds the seat that holes are square to: the part's only one, or that of the end that the file says.
func (s *shaper) comesOutOf(e *entry, f *Holes) {
	var seats []*entry
	for _, other := range s.entries {
		if other.word == "seat" && (!e.has("from") || other.text("on") == e.text("from")) {
			seats = append(seats, other)
		}
	}
	switch {
	case len(seats) == 0 && e.has("from"):
		s.c.fail(e, e.at("direction"), fmt.Sprintf("%s has no seat to be square to on its %s", e.title(), e.text("from")), `Leave from out, or write direction = "axis"; a seat is a block of its own.`)
	case len(seats) == 0:
		s.c.fail(e, e.at("direction"), fmt.Sprintf("%s has no seat to be square to", e.title()), `Write direction = "axis", or leave it out; a seat is a block of its own.`)
	case len(seats) > 1:
		s.c.fail(e, e.at("direction"), fmt.Sprintf("%s does not say which seat it is square to", e.title()), `Write from = "left" or from = "right": the end with that seat.`)
	default:
		f.SquareTo = seats[0].name
		if seats[0].text("on") == "left" || seats[0].text("on") == "back" {
			f.From = Left
		} else {
			f.From = Right
		}
		s.plainLeaning(e, f)
	}
}

// plainLeaning refuses of leaning holes what no plan makes.
func (s *shaper) plainLeaning(e *entry, f *Holes) {
	refuse := func(name, what, say string) {
		at := e.head()
		if e.has(name) {
			at = e.at(name)
		}
		s.c.fail(e, at, fmt.Sprintf("%s is square to a seat and %s", e.title(), what), "%s", say)
	}
	switch {
	case f.Make == DowelHole:
		refuse("dowel", "reamed for dowels", "Such holes are drilled to size or tapped: write diameter, clearance or thread.")
	case !f.Through:
		refuse("depth", "blind", "Such holes go right through: write through = true, and full_thread where not all of it is tapped.")
	case f.Sink != nil:
		refuse("", "has a widened mouth", "Such holes are plain or tapped: leave the counterbore or the countersink out, and put the screw's head on a washer cut to the slope.")
	case e.has("match"):
		refuse("match", "drilled through from another part", "Give it places of its own: leave match out.")
	case f.Locate != "" && f.Locate != LocateDial:
		refuse("locate_by", "not found by dials", `Such holes are found by the dials of a mill: write locate_by = "dial", or leave it out.`)
	}
}

// checkLeaning judges holes square to a seat: on turned work only, no steeper than work is set over, and wholly inside the rim where they come out.
func (s *shaper) checkLeaning(e *entry, h *Holes, seat *Seat) {
	if h.SquareTo != seat.Name {
		return
	}
	if s.flat {
		s.c.fail(e, e.at("direction"), fmt.Sprintf("%s would lean, and flat work is not held tilted", e.title()),
			`Square to %s they lean from the axis by, hole 1 onward, %s. Write direction = "axis", with the screws' heads on the flat side; or leave them out and drill each from the pipe's side in a tilting vice, by those angles.`,
			s.entryOf(seat.Name).title(), s.tilts(h, seat))
		return
	}
	for i, at := range h.Places {
		if lean := seat.Tilt(at); lean > mostTilt {
			s.c.fail(e, e.at("direction"), fmt.Sprintf("Hole %d of %s leans too far", i+1, e.title()), "It would lean by %s, and work is set over by %d° at most: move it nearer to the plane of the pipe's axis.", lean, mostTilt)
			return
		}
	}
	s.outAtRim(e, h, seat)
}

// rimWeb is the least metal left outside a hole that leans towards the rim, when all is as drawn: limits take of it, and less bulges and tears. Common practice, no source.
const rimWeb = 1.0

// outAtRim refuses holes that run out through the rim of their flange, or so near to it that they may: they lean outward, away from the pipe.
func (s *shaper) outAtRim(e *entry, h *Holes, seat *Seat) {
	across, _ := s.endMetal(seat.On)
	rim := float64(across) / 2
	for i, at := range h.Places {
		beside := seat.Beside(at.X.Value, at.Y.Value)
		sin := math.Abs(beside) / float64(seat.Radius.Value)
		cos := math.Sqrt(1 - sin*sin)
		thick := float64(h.Span.Length() - seat.hollow(math.Abs(beside)))
		along := math.Sqrt(math.Max(0, math.Pow(float64(at.X.Value), 2)+math.Pow(float64(at.Y.Value), 2)-beside*beside))
		room := float64(h.Within)
		if room == 0 {
			room = math.Hypot(float64(at.X.Width()), float64(at.Y.Width())) / 2
		}
		if far := math.Hypot(along, math.Abs(beside)+thick*sin/cos) + float64(h.largest())/cos; far+room > rim-rimWeb {
			s.c.fail(e, e.head(), fmt.Sprintf("Hole %d of %s runs out through the rim", i+1, e.title()),
				"It leans outward by %s and reaches %s from the axis on the other side, and may lie %s off; the rim is %s away, and %s of metal must stay: a smaller circle, a thinner flange, or turn the pattern with start.",
				seat.Tilt(at), s.shown(units.Length(far)), s.shown(units.Length(room)), s.shown(units.Length(rim)), s.shown(rimWeb))
			return
		}
	}
}

// tilts lists how far holes lean.
func (s *shaper) tilts(h *Holes, seat *Seat) string {
	var list []string
	for _, p := range h.Places {
		list = append(list, seat.Tilt(p).String())
	}
	return strings.Join(list, ", ")
}

// Tilt is how far a hole square to the seat leans from the part's axis: asin(x/R), x its place beside the pipe's axis. Plane geometry.
func (f *Seat) Tilt(at Point) units.Angle {
	share := math.Abs(f.Beside(at.X.Value, at.Y.Value)) / float64(f.Radius.Value)
	return units.Angle(math.Asin(math.Min(1, share)) * 180 / math.Pi).Round(tiltDecimals)
}

// tiltDecimals is how finely a tilt is told, in decimals of a degree: finer than work is set.
const tiltDecimals = 2
