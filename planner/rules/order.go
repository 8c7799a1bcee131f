package rules

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

var faceFirst = Order{
	plan.Rule{ID: "A-01", Class: "order", Title: "Face first",
		Text: "IF an end serves as a length datum THEN face it before anything else is cut from that end; lengths are taken from it.",
		Why:  "a skewed end starts a drill off line and gives the dial no true zero",
		Sure: "published", Source: "course notes on lathe work, turning (Machine Shop Work, chestofbooks.com); the allowance of 1 mm a sawn face is common practice, no source",
		Except: "long bar that needs the tailstock: faced to a centre"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			return a.Process == plan.Face && b.Process != plan.Face && b.Process != plan.PartOff && b.Process != plan.SawOff, a.End
		})
	},
}

var roughBeforeFinish = Order{
	plan.Rule{ID: "A-03", Class: "order", Title: "Rough everything before finishing anything",
		Text: "IF any surface has a tolerance under 0.1 mm or the wall ends up thinner than a tenth of the diameter THEN rough everything that is reached from the same end first, let it cool, then finish.",
		Why:  "roughing heats the work, lets out stress and shifts it in the grip; a surface finished early moves",
		Sure: "published", Source: "US Navy, Machinery Repairman training course, rough and finish turning; the figures 0.1 and D/10 are ours",
		Except: "stiff, short parts with open tolerances"},
	func(w Work) []Arc {
		var arcs []Arc
		for _, end := range []partspec.End{partspec.Left, partspec.Right} {
			arcs = append(arcs, pairs(w, func(a, b shape.Op) (bool, partspec.End) {
				fine := b.Stage == shape.Finishing && !beside(b) && (b.Process == plan.TurnFinish || b.Process == plan.BoreOut || b.Process == plan.Ream || b.Process == plan.TaperTurn)
				rough := a.Process == plan.TurnRough || a.Process == plan.Drill && !beside(a) && turned(b)
				return fine && rough && !firstCut(w, b) && (a.Feature == b.Feature || w.FromEnd(indexOf(w, a), end)), end
			})...)
		}
		return arcs
	},
}

var insideFirst = Order{
	plan.Rule{ID: "B-41", Class: "order", Title: "Inside first while the wall is thick",
		Text: "IF the finished wall is under a tenth of the diameter THEN finish the bore before the outside that lies over it.",
		Why:  "the wall is stiffest while the outside is still on", Sure: "common practice", Source: "trade articles on thin rings (cimindustry 2009, east-cnc): bore before thinning",
		Except: "an outside that the bore is held by; the blank of a knurl, which is pressed in before the bore is finished"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			inside := a.Inside && a.Stage == shape.Finishing && (a.Process == plan.BoreOut || a.Process == plan.Ream)
			over := b.Process == plan.TurnFinish && b.Z0 < a.Z1 && b.Z1 > a.Z0
			return inside && over && !knurled(w.Part, b) && greatest(b)-widest(a) < 2*greatest(b)/10, partspec.EndInvalid
		})
	},
}

var freeEndFirst = Order{
	plan.Rule{ID: "A-04", Class: "order", Title: "Work from the free end towards the chuck",
		Text: "IF several diameters step up towards the chuck THEN cut the one nearest the free end first and the one nearest the support last; finish it first too, where what roughing left on it would stand in the tool's way to the next.",
		Why:  "the work is stiffest while the metal by the chuck is still there, and the tool comes to each shoulder from clear air",
		Sure: "published", Source: "F. D. Jones, Turning and Boring (1914), on keeping one half stiff while the other is machined",
		Except: "where the grip itself is on the metal to be removed"},
	func(w Work) []Arc {
		var arcs []Arc
		for _, end := range []partspec.End{partspec.Left, partspec.Right} {
			arcs = append(arcs, pairs(w, func(a, b shape.Op) (bool, partspec.End) {
				if a.Feature == b.Feature || !turned(b) && !outsideTaper(b) || !outboard(a, b, end) {
					return false, end
				}
				return firstCut(w, a) || inWay(w, a, b) || a.Process == plan.Steps && greatest(a) >= greatest(b)-roughLeft, end
			})...)
		}
		return arcs
	},
}

var diameterBeforeEdge = Order{
	plan.Rule{ID: "A-12", Class: "order", Title: "Diameter, then groove or corner, then edge",
		Text: "IF a surface carries a groove, recess, fillet or chamfer THEN bring the surface to size first, then cut the groove or corner, then break the edge.",
		Why:  "an edge broken first is the wrong size once the surface has moved",
		Sure: "common practice", Source: "common practice, no source", Except: "a form tool that makes both at once"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			return !beside(a) && !beside(b) && rank(w, a) < rank(w, b) && rank(w, a) > 0 && a.Inside == b.Inside && meet(a, b), partspec.EndInvalid
		})
	},
}

var threadLate = Order{
	plan.Rule{ID: "A-13", Class: "order", Title: "Thread late",
		Text: "IF a thread is cut THEN its blank, its run-out groove and its lead chamfer come before it, and so does all other heavy cutting nearby.",
		Why:  "threads bruise, and the tool must enter and leave in clear metal",
		Sure: "common practice", Source: "run-out need: course slides on grooving; the order is common practice, no source",
		Except: "a thread that serves as the holding for the second side is cut in the first"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			return !beside(a) && !beside(b) && threading(b) && !threading(a) && a.Process != plan.PartOff && a.Process != plan.SawOff && a.Process != plan.Face &&
				a.Inside == b.Inside && (meet(a, b) || runsOutIn(w, b, a)), partspec.EndInvalid
		})
	},
}

var knurlEarly = Order{
	plan.Rule{ID: "A-14", Class: "order", Title: "Knurl early",
		Text: "IF a part is knurled THEN knurl after roughing and its own blank, before finishing neighbours and before the final bore.",
		Why:  "knurling presses very hard and bends or closes what is slender",
		Sure: "published", Source: "Modern Metalworking (Goodheart-Willcox, 2004), p. 453", Except: "cutting knurls on stiff work"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			if a.Process != plan.Knurl || b.Stage != shape.Finishing || b.Feature == a.Feature {
				return false, partspec.EndInvalid
			}
			return (b.Process == plan.TurnFinish || b.Process == plan.BoreOut || b.Process == plan.Ream) && !b.MakesSurface(onOf(w.Part, a.Feature)) && !knurled(w.Part, b), partspec.EndInvalid
		})
	},
}

var weakenLate = Order{
	plan.Rule{ID: "A-15", Class: "order", Title: "Weaken late",
		Text: "IF a groove is cut THEN cut it after the roughing of everything, and after a wider groove that it lies in; the middle of a vee before its flanks.",
		Why:  "the work chatters and bends at a neck",
		Sure: "common practice", Source: "common practice, no source", Except: "a clearance groove needed by the next tool"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			wider := a.Process == plan.Groove && a.Z0 <= b.Z0 && a.Z1 >= b.Z1
			if a.Feature == b.Feature {
				wider = a.Process == plan.Groove && a.Stage < b.Stage
			}
			return (a.Process == plan.TurnRough || a.Process == plan.Drill && !beside(a) || wider) && b.Process == plan.Groove, partspec.EndInvalid
		})
	},
}

var stepsThenFile = Order{
	plan.Rule{ID: "A-39", Class: "order", Title: "Rough, steps, file",
		Text: "IF a curve is made by steps THEN rough to its largest diameter with straight cuts, run the step table, then file until the inner corners of the steps just vanish.",
		Why:  "the inner corners of the steps lie on the curve and serve as witness marks",
		Sure: "published", Source: "a builder's step chart for curved bases; the witness rule is common practice", Except: "a cutter set to swing the radius itself"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			order := map[plan.Process]int{plan.TurnRough: 1, plan.Steps: 2, plan.FileProfile: 3, plan.SeatSteps: 2, plan.FileSeat: 3}
			return a.Feature == b.Feature && order[b.Process] > 1 && order[a.Process] > 0 && order[a.Process] < order[b.Process], partspec.EndInvalid
		})
	},
}

var partOffLast = Order{
	plan.Rule{ID: "A-17", Class: "order", Title: "Part off last",
		Text: "IF the part is cut from a bar THEN everything that can be reached from the free end is finished and measured before parting.",
		Why:  "nothing true can be done on that holding afterwards",
		Sure: "published", Source: "US War Department, TM 1-420 Lathes (1940), parting rules",
		Except: "a surface that belongs to another one which cannot be reached from there"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			cutsOff := b.Process == plan.PartOff || b.Process == plan.SawOff
			return cutsOff && a.Process != b.Process && w.Free != partspec.EndInvalid && w.FromEnd(indexOf(w, a), w.Free) && !boundElsewhere(w, a), partspec.EndInvalid
		})
	},
}

var drillBeforeBore = Order{
	plan.Rule{ID: "A-26", Class: "order", Title: "Drill, then bore",
		Text: "IF a hole is wanted better than about IT11, or its place matters THEN drill it under size and bore or ream it; a coarse hole is drilled to size.",
		Why:  "a drill sets size and place poorly; boring sets both, a reamer sets size but follows the hole",
		Sure: "published", Source: "Shop Practice V1 (chestofbooks.com) on cored holes; grades by process as in Machinery's Handbook (not opened)",
		Except: "holes under about 4 mm, which no boring bar enters"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			if b.Process == plan.BoreHead || b.Process == plan.SawHole || a.Process == plan.Spot { // a head roughs before it finishes; a mark comes before what starts in it
				return a.Feature == b.Feature && opening(a) < opening(b), partspec.EndInvalid
			}
			return (a.Feature == b.Feature || !beside(a) && !beside(b)) && a.Process == plan.Drill && (b.Process == plan.BoreOut || b.Process == plan.Ream || b.Process == plan.Recess || b.Process == plan.Tap || (b.Process == plan.TaperTurn && b.Inside)) && meet(a, b) && inLine(w, a, b), partspec.EndInvalid
		})
	},
}

var boreBeforeReam = Order{
	plan.Rule{ID: "A-28", Class: "order", Title: "Bore for place, ream for size",
		Text: "IF both place and size of a reamed hole matter THEN bore it true to the reaming size, and ream it without moving the work.",
		Why:  "a reamer follows whatever hole it finds",
		Sure: "published", Source: "Shop Practice V1 (chestofbooks.com); Design for Manufacturability Handbook, ch. 4.5", Except: "bored straight to size"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			return (a.Process == plan.BoreOut || a.Process == plan.BoreHead) && b.Process == plan.Ream && a.Feature == b.Feature, partspec.EndInvalid
		})
	},
}

var finalFaceBeforeItsHoles = Order{
	plan.Rule{ID: "A-43", Class: "order", Title: "Surfaces before what is cut in them",
		Text: "IF a feature is cut into a surface (a recess in a bore, a thread, a groove in a rim) THEN that surface is there first.",
		Why:  "depth and place are measured from the final surface",
		Sure: "common practice", Source: "common practice, no source", Except: "holes used to hold the part"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			on := onOf(w.Part, b.Feature)
			return on != "" && b.Feature != a.Feature && a.MakesSurface(on), partspec.EndInvalid
		})
	},
}

var throughBeforeCounterbore = Order{
	plan.Rule{ID: "A-44", Class: "order", Title: "The deep hole before its counterbore",
		Text: "IF a larger, shallower hole lies in the mouth of a deeper one THEN drill the deep one first.",
		Why:  "the larger tool finds its way cleared, and its floor is cut last",
		Sure: "published", Source: "notes on counterbore preparation (machinistpost.com)", Except: "a counterbore located by dial"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			deeper := a.Feature != b.Feature && a.Z1-a.Z0 > b.Z1-b.Z0 && meet(a, b)
			opens := a.Process == plan.Drill || a.Process == plan.BoreOut
			return deeper && opens && a.Inside && b.Inside && rank(w, b) <= 1 && b.Process != plan.Ream, partspec.EndInvalid
		})
	},
}

var partedBeforeSecondFace = Order{
	plan.Rule{ID: "A-20", Class: "order", Title: "Second side after parting",
		Text: "IF a part needs its second end worked THEN it is parted off first; what is toleranced and related belongs to the first setting, plain facing to the second.",
		Why:  "the second side has the poorer truth, and before parting its end does not exist",
		Sure: "common practice", Source: "\"Geometer\", Setting-up for second operations", Except: "a second side with a relation of its own: a true holding is chosen"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			cutsOff := a.Process == plan.PartOff || a.Process == plan.SawOff
			return cutsOff && b.Process == plan.Face && b.End == w.Free.Other(), partspec.EndInvalid
		})
	},
}
