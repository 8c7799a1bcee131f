package rules

import (
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// beside reports whether an operation works at places beside the axis, or across it.
func beside(o shape.Op) bool { return len(o.Spots) > 0 || o.Cross }

var facesBeforeHoles = Order{
	plan.Rule{ID: "A-43h", Class: "order", Title: "Faces before the holes in them",
		Text: "IF holes are marked out or drilled in a face THEN that face is at size first, and so is the one that through holes come out of.",
		Why:  "depth and place are measured from the final face; facing over a hole burrs its edge; a drill comes out square only through a flat",
		Sure: "common practice", Source: "common practice, no source", Except: "holes used to hold the part for the facing; a seated flange drilled on its bar, where the metal behind is solid"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			return a.Process == plan.Face && len(b.Spots) > 0 && (b.End == partspec.EndInvalid && !seated(w) || b.End == a.End), partspec.EndInvalid
		})
	},
}

var markBeforeDrill = Order{
	plan.Rule{ID: "C-24m", Class: "order", Title: "Marked out before it is drilled",
		Text: "IF holes are found by marks THEN they are marked out and punched before the first of them is drilled.",
		Why:  "the drill starts in the mark, and dividers show a wrong one while it can still be drawn over",
		Sure: "common practice", Source: "common practice, no source", Except: "holes found by dials"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			return a.Process == plan.MarkOut && b.Process != plan.MarkOut && a.Feature == b.Feature, partspec.EndInvalid
		})
	},
}

var spotThrough = Order{
	plan.Rule{ID: "A-33", Class: "order", Title: "Spot through from the mate",
		Text: "IF two parts share a pattern of holes and need not be interchangeable THEN drill one by its places, finish the fit or the datum edges that hold the two true to each other, spot the other part through with a drill that just passes, mark both for the way round, and drill one hole first.",
		Why:  "the errors of the pattern are the same in both parts, and cancel",
		Sure: "published", Source: "R. G. Sparber, Drill, tap and counterbore; that a fit's slack counts twice, and what edges come flush within once, is geometry", Except: "parts that are replaced or interchanged: places of their own in both"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			h, _ := w.Part.Feature(b.Feature).(*partspec.Holes)
			if h == nil || h.Mate == nil || b.Process != plan.MarkOut {
				return false, partspec.EndInvalid
			}
			if h.Mate.Flush != nil {
				return a.Process != plan.MarkOut && a.Flat != nil && datum(w, a), partspec.EndInvalid
			}
			return a.Stage == shape.Finishing && a.MakesSurface(h.Mate.Register), partspec.EndInvalid
		})
	},
}

// inLine reports whether two operations on one pattern work on the same of its holes: those that lean alike are drilled and tapped apart from the others.
func inLine(w Work, a, b shape.Op) bool {
	return !leaning(w, b) || a.Feature != b.Feature || slices.Equal(places(a), places(b))
}

// places are the middles of an operation's spots.
func places(o shape.Op) (list [][2]float64) {
	for _, s := range o.Spots {
		list = append(list, [2]float64{s.X, s.Y})
	}
	return list
}

var tapLast = Order{
	plan.Rule{ID: "A-30", Class: "order", Title: "Tap last, taper tap first",
		Text: "IF holes are tapped THEN drill them, widen their mouths, and then tap: taper, second, plug in blind holes; started square, under the spindle that drilled them where that can be.",
		Why:  "a countersunk mouth starts the tap and takes the burr; a tap that starts askew breaks",
		Sure: "published", Source: "notes on cutting threads by hand (offbeatbikesmagazine); order of taps: handbook practice, from memory", Except: "machine taps used singly"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			if !beside(a) || !beside(b) {
				return false, partspec.EndInvalid
			}
			mouth := threading(b) && a.Process == plan.Chamfer && onOf(w.Part, a.Feature) == onOf(w.Part, b.Feature) // of a bore of a flat part
			return mouth || a.Feature == b.Feature && b.Process == plan.Tap && a.Process != plan.Tap && a.Process != plan.Deburr && inLine(w, a, b), partspec.EndInvalid
		})
	},
}

var sinkAfterDrill = Order{
	plan.Rule{ID: "A-44s", Class: "order", Title: "Drill, then widen the mouth",
		Text: "IF a hole is counterbored or countersunk THEN drill it first; ream it after.",
		Why:  "the pilot needs its hole, and takes over where it lies",
		Sure: "published", Source: "notes on counterbore preparation (machinistpost.com)", Except: "a counterbore cut by an end mill that is set by dials"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			sink := func(o shape.Op) bool { return o.Process == plan.Counterbore || o.Process == plan.Countersink }
			if beside(a) && beside(b) && a.Feature != b.Feature { // a bore of a flat part that its counterbore stands round
				opened := a.Process == plan.Drill || a.Process == plan.BoreOut || a.Process == plan.BoreHead || a.Process == plan.SawHole
				return opened && b.Process == plan.Counterbore && a.Z1-a.Z0 > b.Z1-b.Z0 && meet(a, b), partspec.EndInvalid
			}
			same := beside(a) && a.Feature == b.Feature
			return same && (a.Process == plan.Drill && sink(b) || sink(a) && b.Process == plan.Ream), partspec.EndInvalid
		})
	},
}

var ringAfterBore = Order{
	plan.Rule{ID: "A-36", Class: "order", Title: "Ring of holes after the bore it is true to",
		Text: "IF holes must lie within 0.1 mm of their places about an axis THEN the outside and the bores of that axis are finished first, and the work is clocked by one of them.",
		Why:  "holes take their truth from what was clocked",
		Sure: "common practice", Source: "Precision Locating and Dividing Methods (1914) for clocking from bores; the figure is ours", Except: "clearance holes, which may be drilled while the blank is solid; a bore that is finished after a seat"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			near := b.Place > 0 && b.Place <= ringTrue && beside(b)
			about := a.Stage == shape.Finishing && !beside(a) && (a.Process == plan.BoreOut || a.Process == plan.Ream)
			return near && about && !seated(w), partspec.EndInvalid
		})
	},
}

// ringTrue is how near to its place a hole must lie, radially, for the pattern to be drilled after the bore.
const ringTrue = 0.1

// seated reports whether the part has a seat, which asks for bores to be finished after it.
func seated(w Work) bool {
	for _, o := range w.Ops {
		if seating(w, o) {
			return true
		}
	}
	return false
}

var coordinates = Holding{
	plan.Rule{ID: "C-24", Class: "holding", Title: "Coordinates or marking out",
		Text: "IF holes have places THEN how the work was found, how the spindle is brought there and how the drill starts may together be off by no more than the places allow: marks serve for 0.3 mm or worse, dials from a clocked surface for 0.1 mm.",
		Why:  "stepping round with dividers and punching adds the error of each step",
		Sure: "published", Source: "US Navy course 14119, flange layout; Precision Locating and Dividing Methods (1914); the errors are in the table of accuracies", Except: "holes drilled through from the mate"},
	func(c Case) Verdict {
		if c.PlaceAllow > 0 && c.PlaceOff > c.PlaceAllow+placeNoise {
			return refuse("a hole may land %.2f off its place, %.2f may pass", c.PlaceOff, c.PlaceAllow)
		}
		return Verdict{}
	},
}

var nearestCount = Holding{
	plan.Rule{ID: "C-24i", Class: "holding", Title: "Nearest hole of a circle",
		Text: "IF no circle of a dividing head has a place exactly THEN it is cut at the nearest hole, counted from one nought so that errors do not add up, where what that is off round the axis lies within the limits of its place; of a flat within the general tolerance of its angle.",
		Why:  "half a hole of a coarse circle is more than many drawings let pass, and a fine one is near enough for most",
		Sure: "published", Source: "Precision Locating and Dividing Methods (1914), approximate divisions; half a hole is plane geometry; the tolerance of angles ISO 2768-1, from memory", Except: "another plate, or compound and differential dividing, which are not planned"},
	func(c Case) Verdict {
		if c.CountAllow > 0 && c.CountOff > c.CountAllow+placeNoise {
			return refuse("the nearest hole of its circle of %d comes out %.3f off round the axis, %.3f may pass", c.Counted, c.CountOff, c.CountAllow)
		}
		return Verdict{}
	},
}

// placeNoise is the rounding of limits worked out from decimals, in mm: an error that uses them up still lies within them.
const placeNoise = 1e-6

var flatBeforeHole = Order{
	plan.Rule{ID: "A-31", Class: "order", Title: "Flat before a hole on a round or a slope",
		Text: "IF a drill would meet a slope, or a round of less than four times its diameter THEN a flat as wide as the drill is cut first; else the exact crown is spotted with a short stiff drill. A hole beside the axis wants a plane face all round its mouth.",
		Why:  "entry must be square to the drill, or it runs off",
		Sure: "published", Source: "SDP/SI design sheet T43; the quarter is common practice", Except: "a hole of up to 3, and of up to a third of the round, on the exact crown (common practice, no source); a show face: punch, short drill, pilot of 2 at most"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			return a.Cross && a.Feature == b.Feature && a.Process == plan.MillFlat && b.Process == plan.Drill, partspec.EndInvalid
		})
	},
}

var crossingHoles = Order{
	plan.Rule{ID: "A-35", Class: "order", Title: "Crossing holes",
		Text: "IF a hole ends in a bore or crosses it THEN the bore is finished first, the hole is drilled with a quarter of the feed where it breaks in, and the bore is deburred after it.",
		Why:  "a drill that enters a void has one lip loaded and wanders; it leaves a long burr",
		Sure: "published", Source: "SDP/SI design sheet T43; CTE magazine, Why so cross? (2013); PMPA Designer's Guide", Except: "off centre by more than a quarter of the hole: plug the bore with a close rod"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			bored := a.Inside && a.Stage == shape.Finishing && (a.Process == plan.BoreOut || a.Process == plan.Ream)
			_, hole := w.Part.Feature(b.Feature).(*partspec.CrossHole)
			return b.Cross && (bored && hole && overlap(a, b) && b.Process == plan.Drill || a.Feature == b.Feature && b.Process == plan.Deburr && a.Process != plan.Deburr), partspec.EndInvalid
		})
	},
}

var lyingRound = Holding{
	plan.Rule{ID: "B-43", Class: "holding", Title: "Round work lying in a vee",
		Text: "IF round work lies in a vee block, or in a vice with a vee strip, to be worked across THEN at least 12 mm of whole round lie in it, clear of the cut.",
		Why:  "the vee locates the axis; a short grip rocks", Sure: "published", Source: "Modern Mechanical Engineering, vol. I p. 203 (vees); the 12 mm is ours", Except: "stepped work on two vees of measured height"},
	func(c Case) Verdict {
		if c.Lying && c.Length < lyingLeast {
			return refuse("%.1f of round lie in it, at least %.0f wanted", c.Length, lyingLeast)
		}
		return Verdict{}
	},
}

// lyingLeast is the least length of round that lies in a vee.
const lyingLeast = 12.0

var (
	dividedRound = number("C-24d", "Divided in one setting", "IF flats, slots or cross holes lie round a turned part and a dividing head is owned THEN one setting turns to all of them: each place is the nearest whole number of holes, ratio x circle x angle / 360, from one nought on the circle that has them all exactly, else on the one whose worst place is least off, and the crank always comes up the same way.",
		"work that is let go and set round by a square loses what was clocked, and counting from place to place adds the errors up", "published", "Precision Locating and Dividing Methods (1914); the count is plane geometry")
	indexedRing = number("C-24u", "A ring turned under the spindle", "IF a ring of holes is to be located by a dividing head THEN the head stands upright under the mill's spindle, the table is set off from the head's axis by the ring's radius and stands still, and the work is turned to every hole by a count from one nought.",
		"one setting of the slides serves all holes, so that they lie on one circle whatever the table's screws are like, and the counts carry no error on", "published", "Precision Locating and Dividing Methods (1914); the count is plane geometry")
	chordCheck = number("C-25", "Chord check", "IF holes are drilled by coordinates THEN the distances over pins in neighbours, and over the two farthest apart, are on the sheet.",
		"a wrong count shows before metal is lost", "published", "US Navy course 14119 fig. 16-6, flange layout; c = C sin(180/n), plane geometry")
	fromHeldDatum = number("C-26", "Coordinates from the held datum", "IF holes are drilled by coordinates THEN every one is counted from one nought on the surface that the holding gives; spot all, then drill all, then size all.",
		"backlash, and errors that add from hole to hole", "common practice", "common practice, no source")
	blindTapped = number("A-29", "Depth of a blind tapped hole", "IF a hole is tapped blind THEN drill it deeper than the full thread by the tap's lead and a pitch, at least a quarter below M6; leave half the drill's diameter, at least 1 mm, under its point.",
		"the tap's lead and the chips need room; a bottomed tap breaks", "published", "eisc.com least tap drill depth; roymech.org quoting BS 1936; leads: Machinery's Handbook (not opened); the floor is ours")
)
