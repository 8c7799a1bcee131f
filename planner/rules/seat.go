package rules

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// seating reports whether an operation cuts a seat to its shape; the file only takes crests off.
func seating(w Work, o shape.Op) bool {
	_, seat := w.Part.Feature(o.Feature).(*partspec.Seat)
	return seat && (o.Process == plan.SeatSteps || o.Process == plan.BoreHead)
}

// sideSeated reports whether an operation cuts a seat across the side.
func sideSeated(w Work, o shape.Op) bool {
	_, seat := w.Part.Feature(o.Feature).(*partspec.SideSeat)
	return seat && o.Process != plan.FileSeat
}

// seatWeb is the least metal under a seat's crown beside a bore with which the bore may be finished first (rule A-37: 3 mm).
const seatWeb = 3.0

var seatFromPilot = Order{
	plan.Rule{ID: "A-37", Class: "order", Title: "Pilot bore, seat, final bore",
		Text: "IF a seat is cut across an end with a bore through it THEN the end face, the pilot and the line that says which way round come first, the seat is located from the pilot, and the bore is finished last; it may be finished before, with a tight plug in it, where more than 3 mm is left under the crown.",
		Why:  "the pilot gives the axis; the finishing cut cleans the feathered edge that the seat leaves",
		Sure: "published", Source: "builders' pages on curved bases (2012-01; a1peppercorn): pilot hole, faces, seat, then bore to size; the 3 mm is ours", Except: "a seat bored between two halves"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			if seating(w, b) {
				first := a.Process == plan.Face && a.End == b.End || a.Process == plan.Drill && a.Inside || a.Process == plan.MarkOut && a.Feature == b.Feature
				return first, partspec.EndInvalid
			}
			final := b.Stage == shape.Finishing && b.Inside && (b.Process == plan.BoreOut || b.Process == plan.Ream)
			return seating(w, a) && final && meet(a, b) && w.Length-(a.Z1-a.Z0) <= seatWeb, partspec.EndInvalid
		})
	},
}

var workFromFlatSide = Holding{
	plan.Rule{ID: "A-37b", Class: "holding", Title: "Work from the flat side",
		Text: "IF a seat has been cut across an end THEN nothing is turned, drilled, bored or reamed from that end any more: from the flat side, or before the seat.",
		Why:  "there is no face left to take a length from, and a drill would enter on a slope",
		Sure: "published", Source: "a builder's page on curved bases (2012-01), whose bore is finished from the flat side", Except: "line-boring on a pilot; parting or sawing off, where the saddle is set level with the high points of the rim"},
	func(c Case) Verdict {
		if c.Hollow {
			return refuse("the seat has hollowed out the end that it would be worked from")
		}
		return Verdict{}
	},
}

var holesBeforeSeat = Order{
	plan.Rule{ID: "A-38", Class: "order", Title: "Holes of a seated flange before the seat, threads after",
		Text: "IF a flange has holes beside its axis and a seat THEN mark which way round, drill the holes while their far side is flat, cut the seat, and tap after it. A hole across the axis is drilled before a seat across the side in which it lies.",
		Why:  "entry and exit are square to the drill; the seat's cut takes the exit burr away; no thread is milled into",
		Sure: "common practice", Source: "common practice, no source", Except: "holes square to the seat come after it (A-38n)"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			switch {
			case sideSeated(w, b):
				_, hole := w.Part.Feature(a.Feature).(*partspec.CrossHole)
				return hole && overlap(a, b) && a.Process != plan.Deburr, partspec.EndInvalid
			case seating(w, b):
				return beside(a) && !leaning(w, a) && a.Process != plan.Tap, partspec.EndInvalid
			case beside(b) && b.Process == plan.Tap:
				_, seat := w.Part.Feature(a.Feature).(*partspec.Seat)
				return seat, partspec.EndInvalid
			case beside(b) && b.Process == plan.Drill:
				_, seat := w.Part.Feature(a.Feature).(*partspec.Seat)
				return seat && a.Process == plan.MarkOut, partspec.EndInvalid
			}
			return false, partspec.EndInvalid
		})
	},
}

// leaning reports whether an operation works on holes that are square to a seat.
func leaning(w Work, o shape.Op) bool {
	h, ok := w.Part.Feature(o.Feature).(*partspec.Holes)
	return ok && h.SquareTo != ""
}

var leaningAfterSeat = Order{
	plan.Rule{ID: "A-38n", Class: "order", Title: "Holes square to a seat after it, from its hollow",
		Text: "IF holes are square to a seat THEN the seat is cut and filed first, and they are drilled out of its hollow with the work set over: there the drill meets metal that is square to it, and runs off on neither side. Where it comes out on the slope of the far side the feed is eased, unless bar is still behind.",
		Why:  "from the flat side every drill would enter on a slope",
		Sure: "common practice", Source: "common practice, no source", Except: "holes on the crown, which do not lean"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			h, _ := w.Part.Feature(b.Feature).(*partspec.Holes)
			return h != nil && h.SquareTo != "" && a.Feature == h.SquareTo, partspec.EndInvalid
		})
	},
}

var seatLast = Order{
	plan.Rule{ID: "A-37f", Class: "order", Title: "On flat work the seat comes last",
		Text: "IF a seat is cut across a face of a flat part THEN its other cuts come before it; threads are tapped, and edges broken, after it.",
		Why:  "a hollowed face stands on no parallels, and a drill would come out on a slope",
		Sure: "common practice", Source: "common practice, no source", Except: "work that a block of the pipe's own radius carries"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			_, seat := w.Part.Feature(a.Feature).(*partspec.Seat)
			return w.Part.Flat() && seating(w, b) && !seat && a.Process != plan.Tap && a.Process != plan.Deburr, partspec.EndInvalid
		})
	},
}

var roundBeforeInterruptions = Order{
	plan.Rule{ID: "A-22", Class: "order", Title: "Round work before interruptions",
		Text: "IF a turned or bored surface is crossed by a seat, a flat, a slot or a hole across the axis THEN finish the turning first and cut the interruption after; a toleranced bore is reamed or dressed last where the crossing burrs it.",
		Why:  "an interrupted cut hammers the tool, loosens the grip and leaves lands at different sizes",
		Sure: "common practice", Source: "common practice, no source", Except: "a bore through a seat (rule A-37); large interruptions in rough stock that must come off first"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			outside := !beside(a) && (a.Process == plan.TurnRough || a.Process == plan.TurnFinish || a.Process == plan.TaperTurn && !a.Inside || a.Process == plan.Groove || a.Process == plan.Steps || a.Process == plan.FileProfile)
			inside := a.Inside && a.Stage == shape.Finishing && a.Process == plan.BoreOut
			faced := sideSeated(w, b) && a.Process == plan.Face // its cutter comes over the end face where that is near
			return interrupts(w, b) && under(a, b) && (outside || faced || inside && !seating(w, b)), partspec.EndInvalid
		})
	},
}

// interrupts reports whether an operation cuts across the round of the work.
func interrupts(w Work, o shape.Op) bool {
	switch w.Part.Feature(o.Feature).(type) {
	case *partspec.Seat, *partspec.SideSeat, *partspec.CrossHole, *partspec.Flat, *partspec.Slot:
		return o.Process != plan.MarkOut && o.Process != plan.FileSeat && o.Process != plan.Tap
	}
	return false
}

// under reports whether an operation works where the tool of another comes to stand.
func under(a, b shape.Op) bool {
	if b.Over != nil {
		b.Z0, b.Z1 = b.Over.Z0, b.Over.Z1
	}
	return overlap(a, b)
}

// overlap reports whether two operations work on one stretch of the axis, not only against one place.
func overlap(a, b shape.Op) bool { return a.Z0 < b.Z1 && a.Z1 > b.Z0 }

var (
	setOverByRise = number("C-37", "Set over by a rise", "IF work is drilled square to a seat THEN it is set over on a tilting plate by packing of sine length x sin(tilt), made up to 0.05; sin(tilt) is the hole's distance beside the pipe's axis divided by the seat's radius. Holes at one distance share a setting; those on the other side of the axis want the work turned half round.",
		"packing over a length sets an angle finer than a scale is read: 0.05 over 100 is 0.03 of a degree", "published", "plane geometry; Precision Locating and Dividing Methods (1914) for the sine bar; the 0.05 is common practice, no source")
	sagitta = number("C-20", "Sagitta of a radius", "IF a radius R is measured over a chord c by its rise s THEN R = c²/8s + s/2, and an error e in s shows as 8R²e/c² in R: the longest chord is chosen. Over a seat of half width w/2 the metal left at an offset x from the crown is H - (sqrt(R² - x²) - sqrt(R² - w²/4)).",
		"depth micrometer and rollers measure radii that no gauge fits", "published", "plane geometry")
	wrongRadius = number("C-21", "What a wrong seat radius costs", "IF a seat of width w is cut to R + e for a pipe of R THEN the gap at its edges is the difference of the two sagittas, about w²e/8R²; too large rocks on the crown, too small bears on two edges.",
		"tells how much care the radius deserves", "published", "plane geometry")
	swungRadius = number("C-34", "Swinging a seat", "IF a boring head or fly-cutter swings a seat's radius THEN set it over tip and bar, try it in scrap, gauge the sagitta, and take 0.25 to 0.5 mm a pass at reduced speed.",
		"one radius of the cutter makes the whole seat", "published", "builders' pages on saddles (neidrauer.com): saddle cuts by fly-cutter; passes common practice")
	gaugeSeat = number("E-14", "Gauging a seat on its pipe", "IF a seat has been cut THEN blue the pipe at its very place, lay the part on without rocking and rub it 2 mm each way: both edges and the crown must mark, over 60 % for metal contact.",
		"the pipe is the gauge", "published", "Bourne, A Catechism of the Steam Engine, q. 707 (blue); US Navy 14310 (Prussian blue); the 60 % is common practice")
)
