package partspec

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec/units"
)

var seatShape = shapeOf{attrs: []attr{
	need("on", kindWord), may("at", kindPosition), may("radius", kindSize), may("chord", kindSize), may("rise", kindSize), may("across", kindLength), may("angle", kindTurn),
	may("depth", kindSize), may("from", kindWord), // across the side of a turned part
	may("finish_by", kindWord), may("leftover", kindLength), may("note", kindText),
}}

// seat builds a hollow across an end, in which the part sits on a pipe. Its depth at the crown is the sagitta of the part's width over the pipe.
func (s *shaper) seat(e *entry) Feature {
	f := &Seat{FeatureHead: s.head(e), Angle: units.Angle(e.number("angle")), Finish: s.byFile(e), Leftover: e.length("leftover")}
	if e.has("leftover") && !f.Finish {
		s.c.fail(e, e.at("leftover"), "leftover is what the steps leave for the file", `Write finish_by = "file" beside it, or leave it out.`)
	}
	s.seatRadius(e, f)
	if s.onSide(e) {
		return s.sideSeat(e, f)
	}
	s.seatEnd(e, f)
	if e.broken || s.bodyless {
		return nil
	}
	if s.flat {
		s.faceSeat(e, f)
	} else {
		s.seatDepth(e, f)
	}
	if e.broken {
		return nil
	}
	return f
}

// seatEnd reads which end sits on the pipe.
func (s *shaper) seatEnd(e *entry, f *Seat) {
	words, say := map[string]End{"left": Left, "right": Right}, `Write on = "left" or on = "right", the end that sits on the pipe, or the name of the spigot or flange across whose side it lies.`
	if s.flat {
		words = map[string]End{"back": Left, "front": Right}
		say = `Write on = "back" or on = "front": the face that sits on the pipe. A hollow through the thickness is an arc with bulge = "in" in an outline "chain".`
	} else if e.has("at") {
		s.c.fail(e, e.at("at"), "A seat on a turned part lies about its axis", "Leave at out.")
	}
	for _, name := range []string{"depth", "from"} {
		if e.has(name) {
			s.c.fail(e, e.at(name), fmt.Sprintf("%s belongs to a seat across the side of a spigot or a flange", name), "Leave it out: across an end or a face the depth follows from the radius and the width.")
		}
	}
	var ok bool
	if f.On, ok = words[e.text("on")]; !ok {
		s.c.fail(e, e.at("on"), fmt.Sprintf("A seat cannot be on %q", e.text("on")), "%s", say)
	}
}

// seatRadius is drawn, or follows from the chord and the rise that were measured on the pipe: R = c²/8s + s/2 (rule C-20).
func (s *shaper) seatRadius(e *entry, f *Seat) {
	drawn, measured := e.has("radius"), e.has("chord") || e.has("rise")
	switch {
	case drawn == measured:
		s.c.fail(e, e.head(), fmt.Sprintf("%s does not say its radius once", e.title()),
			"Write radius = 57, radius = part.pipe.spigot.outside.diameter / 2, or the chord and the rise that were measured on the pipe.")
	case drawn:
		f.Radius = s.size(e, "radius", useLength)
	case !e.has("chord") || !e.has("rise"):
		s.c.fail(e, e.head(), fmt.Sprintf("%s lacks chord or rise", e.title()),
			"A radius follows from both: chord = 60 is the length laid across the pipe, rise = 8.5 the height of the pipe over its middle.")
	default:
		s.fromChord(e, f)
	}
}

func (s *shaper) fromChord(e *entry, f *Seat) {
	chord, rise := s.size(e, "chord", useLength), s.size(e, "rise", useLength)
	c, h := float64(chord.Value), float64(rise.Value)
	if e.broken || c <= 0 || h <= 0 {
		return
	}
	if h > c/2+float64(sameLength) {
		s.c.fail(e, e.at("rise"), "The rise is more than half of the chord", "A chord of %s rises by %s at most: measure again, or are the two the wrong way round?", s.shown(chord.Value), s.shown(chord.Value/2))
		return
	}
	radius := units.Length(c*c/(8*h) + h/2).Round(positionDecimals)
	// The errors of both add up at worst: dR/ds = 1/2 - c²/8s², dR/dc = c/4s.
	f.RadiusBy = units.Length(math.Abs(0.5-c*c/(8*h*h))*float64(s.measuredTo(rise, riseTakers)) + c/(4*h)*float64(s.measuredTo(chord, chordTakers))).Round(positionDecimals)
	f.Chord, f.Rise = &chord, &rise
	size := Size{Dimension: units.Dimension{Value: radius, InInches: s.part.Inches}, Range: e.at("chord")}
	f.Radius = size.within(units.Limits{Low: (radius - f.RadiusBy).Round(positionDecimals), High: (radius + f.RadiusBy).Round(positionDecimals)},
		fmt.Sprintf("from chord %s and rise %s, each as sure as it is measured", s.shown(chord.Value), s.shown(rise.Value)))
}

// The instruments that take a chord and a rise.
var (
	chordTakers = []InstrumentKind{Rule, Caliper, Micrometer}
	riseTakers  = []InstrumentKind{Rule, Caliper, DepthMicrometer, DialIndicator}
)

// measuredTo is how far a measured size may be off: half of the limits that are written with it, else what the workshop's finest instrument that takes it
// can be wrong by.
func (s *shaper) measuredTo(size Size, takers []InstrumentKind) units.Length {
	if !size.general {
		return size.Width() / 2
	}
	best := Instrument{Kind: Rule}.Uncertainty()
	for _, in := range s.c.shop.Instruments {
		if slices.Contains(takers, in.Kind) && size.Value >= in.Smallest && (in.Largest == 0 || size.Value <= in.Largest) {
			best = min(best, in.Uncertainty())
		}
	}
	return best
}

// seatDepth finds how deep the seat is at its crown, and refuses one that the part has no metal for.
func (s *shaper) seatDepth(e *entry, f *Seat) {
	if !s.roundEnd(f.On) {
		s.c.fail(e, e.at("on"), fmt.Sprintf("The %s end is no cylinder", f.On), "A seat is cut across a turned spigot or flange; its depth follows from their diameter.")
		return
	}
	width, flange := s.endMetal(f.On)
	f.Across = width
	if e.has("across") {
		f.Across = e.length("across")
	}
	s.sunkSeat(e, f, width, flange)
}

// roundEnd reports whether an end is that of a turned cylinder.
func (s *shaper) roundEnd(end End) bool {
	pieces := s.outsidePieces()
	if len(pieces) == 0 {
		return false
	}
	p := pieces[0]
	if end == Right {
		p = pieces[len(pieces)-1]
	}
	f, ok := s.done[p.name].(*Spigot)
	return ok && !(f.AsSupplied && s.part.Stock.Kind == Hexagon)
}

// endMetal is the diameter at an end, and how far the metal at its rim reaches along the axis.
func (s *shaper) endMetal(end End) (across, thick units.Length) {
	pieces := s.outsidePieces()
	if end == Right {
		slices.Reverse(pieces)
	}
	for i, p := range pieces {
		least, _ := p.extremes()
		if i == 0 {
			across = 2 * p.at(end)
		}
		if i > 0 && 2*least < across-sameLength {
			break
		}
		thick += p.span.Length()
	}
	return across, thick
}

// left is how thick the metal round a hole is behind the seat, on the side where it is thinnest, towards the crown: t(x) = H - (sqrt(R² - x²) - sqrt(R² - w²/4)),
// x measured square to the pipe's axis, less the hole's radius (rule C-20). H is the metal's thickness without the seat.
func (f *Seat) left(at Point, radius, metal units.Length) units.Length {
	return metal - f.hollow(math.Max(0, math.Abs(f.Beside(at.X.Value, at.Y.Value))-float64(radius)))
}

// hollow is how deep below the end the seat lies so far beside the plane of its pipe's axis; 0 where it does not reach.
func (f *Seat) hollow(beside float64) units.Length {
	r := float64(f.Radius.Value)
	return units.Length(max(0, math.Sqrt(max(0, r*r-beside*beside))-(r-float64(f.Depth))))
}

// checkSeats: an end has one seat, and tapped and blind holes over it keep their thread and floor where the metal is thinnest.
func (s *shaper) checkSeats() {
	seated := map[End]*entry{}
	for _, e := range s.entries {
		f, ok := s.done[e.name].(*Seat)
		if !ok {
			continue
		}
		if first := seated[f.On]; first != nil {
			s.c.fail(e, e.at("on"), fmt.Sprintf("%s and %s are on one end", first.title(), e.title()), "An end sits on one pipe: leave one out.")
			continue
		}
		seated[f.On] = e
		for _, other := range s.entries {
			if other.broken {
				continue
			}
			if h, ok := s.done[other.name].(*Holes); ok {
				s.overSeat(other, h, f)
				s.checkLeaning(other, h, f)
			}
			if s.flat {
				s.overFlat(other, f)
			}
		}
	}
}

// overSeat judges holes whose metal a seat makes thinner.
func (s *shaper) overSeat(e *entry, h *Holes, seat *Seat) {
	if h.From == seat.On && (!h.Through || h.Sink != nil) && (!s.flat || seat.reached(h)) {
		s.c.fail(e, e.head(), fmt.Sprintf("%s begins in %s", e.title(), s.entryOf(seat.Name).title()),
			"No depth can be counted from a hollow: drill from the other end, or write a plain hole with through = true.")
		return
	}
	reaches := h.Span.Left <= sameLength
	if seat.On == Right {
		reaches = h.Span.Right >= s.length()-sameLength
	}
	wall := h.Span.Length()
	if !h.Through { // the metal goes on behind the floor
		wall = h.Span.Right
		if seat.On == Right {
			wall = s.length() - h.Span.Left
		}
		reaches = true
	}
	if !reaches {
		return
	}
	thinnest, number := wall, 0
	for i, p := range h.Places {
		t := seat.left(p, h.largest(), wall)
		if !h.Through { // its point is as deep only in the middle
			t = min(t+h.Diameter.Value*pointPerDiameter, seat.left(p, 0, wall))
		}
		if t < thinnest-sameLength {
			thinnest, number = t, i+1
		}
	}
	s.thinHole(e, h, thinnest.Round(positionDecimals), number, seat)
}

// reached reports whether a hole's mouth lies in the hollow.
func (f *Seat) reached(h *Holes) bool {
	for _, p := range h.Places {
		if f.hollow(math.Max(0, math.Abs(f.Beside(p.X.Value, p.Y.Value))-float64(h.mouth()))) > sameLength {
			return true
		}
	}
	return false
}

// leastThreads is the share of its diameter that a thread should be long, in steel (common practice, no source).
const leastThreads units.Length = 1

// thinHole says what is wrong where the metal over a seat is thinnest.
func (s *shaper) thinHole(e *entry, h *Holes, thinnest units.Length, number int, seat *Seat) {
	if number == 0 {
		return
	}
	over := s.entryOf(seat.Name).title()
	switch {
	case !h.Through && h.Depth.Value+h.Diameter.Value*pointPerDiameter >= thinnest:
		s.c.fail(e, e.head(), fmt.Sprintf("Hole %d of %s breaks out in %s", number, e.title(), over),
			"The metal there is %s thick, on its side towards the crown, and the hole with its point %s deep: write through = true, a smaller depth, or turn the pattern with start.",
			s.shown(thinnest), s.shown(h.Depth.Value+h.Diameter.Value*pointPerDiameter))
	case h.Thread != nil && e.has("full_thread") && h.Thread.Length.Value > thinnest+sameLength:
		s.c.fail(e, e.at("full_thread"), fmt.Sprintf("Hole %d of %s has no metal for its thread over %s", number, e.title(), over),
			"The metal there is %s thick, on its side towards the crown: write full_thread = %s at most, or turn the pattern with start.", s.shown(thinnest), s.shown(thinnest))
	case h.Thread != nil && thinnest < leastThreads*h.Thread.Thread.Major-sameLength:
		s.c.report(question(e.head(), fmt.Sprintf("Does the thread of hole %d of %s hold?", number, e.title()),
			"Over %s the metal there is %s thick, on its side towards the crown, less than the screw's diameter %s. Turn the pattern with start, or make the flange thicker.", over, s.shown(thinnest), s.shown(h.Thread.Thread.Major)))
	}
}
