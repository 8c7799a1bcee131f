package rules

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// edged reports whether an operation cuts edges of an outline.
func edged(o shape.Op) bool { return o.Flat != nil && len(o.Flat.Edges) > 0 }

// brings reports whether an operation brings edges of an outline to their places.
func brings(o shape.Op) bool { return edged(o) && o.Stage == shape.Finishing }

// datum reports whether coordinates begin at an edge that an operation cuts.
func datum(w Work, o shape.Op) bool {
	for _, e := range o.Flat.Edges {
		for _, name := range w.Part.Outline.Datum {
			if w.Part.Outline.Edges[e.Edge].Name == name {
				return true
			}
		}
	}
	return false
}

// sameEdge reports whether two operations cut an edge in common.
func sameEdge(a, b shape.Op) bool {
	for _, x := range a.Flat.Edges {
		for _, y := range b.Flat.Edges {
			if x.Edge == y.Edge {
				return true
			}
		}
	}
	return false
}

// largeBore is the diameter from which on a hole counts as a bore whose web is looked at; thinShare the part of the bore's diameter under which the web beside
// it is thin while it is being bored (rule A-34: at least a tenth is to be left; twice that is the figure taken here, which is ours).
const (
	largeBore = 10.0
	thinShare = 0.2
)

// ThinWeb reports whether the metal between a hole and an edge is so thin that the edge is cut after the hole (rule A-34).
func ThinWeb(webMM, diameterMM float64) bool {
	if diameterMM < largeBore {
		return webMM < diameterMM // centre to edge under 1.5 diameters
	}
	return webMM < thinShare*diameterMM
}

// thinBeside reports whether an operation's holes end up near an edge that another one cuts.
func thinBeside(w Work, hole, edge shape.Op) bool {
	drawn := shape.DrawnRegion(w.Part.Outline)
	for _, s := range hole.Spots {
		d := finalDiameter(w.Part, hole.Feature, 2*s.Radius)
		for _, e := range edge.Flat.Edges {
			if _, _, off := drawn.Edges[e.Edge].Nearest(s.X, s.Y); ThinWeb(off-d/2, d) {
				return true
			}
		}
	}
	return false
}

func finalDiameter(p *partspec.Part, feature string, now float64) float64 {
	switch f := p.Feature(feature).(type) {
	case *partspec.Bore:
		return float64(f.Diameter.Value)
	case *partspec.Holes:
		return math.Max(now, float64(f.Diameter.Value))
	}
	return now
}

// heavyBore is the radial depth above which a boring operation is more than a last cut.
const heavyBore = 0.5

func opens(o shape.Op) bool {
	switch o.Process {
	case plan.Drill, plan.SawHole:
		return true
	case plan.BoreOut, plan.BoreHead:
		return o.Depth > heavyBore || o.Stage == shape.Roughing
	}
	return false
}

// opening is the place of an operation in the order in which a hole is opened; 0 for what has no place in it.
func opening(o shape.Op) int {
	switch o.Process {
	case plan.Spot, plan.MarkOut:
		return 1
	case plan.Drill:
		return 2
	case plan.SawHole:
		return 3
	case plan.BoreHead, plan.BoreOut:
		return 3 + int(o.Stage)
	case plan.Ream:
		return 6
	}
	return 0
}

var facesBeforeEdges = Order{
	plan.Rule{ID: "A-43f", Class: "order", Title: "Faces, then edges, then what is cut in them",
		Text: "IF the faces of a plate are machined THEN both are at size before an edge is milled, filed or marked out, and before any hole.",
		Why:  "edges are square to a face, depths are measured from it, and facing over a hole burrs its mouth",
		Sure: "common practice", Source: "common practice, no source", Except: "sawing, which leaves metal to clean up"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			return a.Process == plan.MillFace && b.Process != plan.MillFace && b.Process != plan.Saw && b.Process != plan.Deburr, partspec.EndInvalid
		})
	},
}

var datumEdgesFirst = Order{
	plan.Rule{ID: "A-41", Class: "order", Title: "One corner square first",
		Text: "IF a plate has dimensions in two directions THEN its two datum edges are brought to their places first; everything else is marked and counted from them.",
		Why:  "marks and dial zeros want one corner",
		Sure: "common practice", Source: "common practice, no source", Except: "plates located by a finished bore"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			counted := beside(b) || b.Process == plan.MarkOut || brings(b) && !datum(w, b)
			return brings(a) && datum(w, a) && counted, partspec.EndInvalid
		})
	},
}

var sawBeforeFile = Order{
	plan.Rule{ID: "A-40", Class: "order", Title: "Saw near the line, then clean up",
		Text: "IF an edge is sawn THEN 0.5 to 2 mm is left by the thickness, and the edge is milled, filed or turned after.",
		Why:  "a saw wanders and leaves a torn edge",
		Sure: "common practice", Source: "common practice, no source", Except: "edges left as sawn"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			return a.Process == plan.Saw && b.Process != plan.Saw && edged(b) && sameEdge(a, b), partspec.EndInvalid
		})
	},
}

var holesBeforeNearEdge = Order{
	plan.Rule{ID: "A-34", Class: "order", Title: "Holes before the edge they are close to",
		Text: "IF a hole's centre lies under 1.5 diameters from an edge, or the web beside a bore is under a fifth of it THEN it is drilled or bored, all but a last light cut, before that edge is cut back.",
		Why:  "thin edges bulge and break out, and a web that springs away from the tool leaves the bore out of round",
		Sure: "published", Source: "hole spacing notes (ekinsun, crenshawdie); the fifth is ours", Except: "datum edges, which the hole is measured from"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			return opens(a) && beside(a) && edged(b) && !datum(w, b) && thinBeside(w, a, b), partspec.EndInvalid
		})
	},
}

var lastCutAfterNearEdge = Order{
	plan.Rule{ID: "A-34b", Class: "order", Title: "Last cut in a bore after the edge beside it",
		Text: "IF an edge close to a bore is milled THEN the bore's last light cut comes after it.",
		Why:  "cutting the edge back relieves the web, and the bore with it; the last cut makes it round again",
		Sure: "common practice", Source: "common practice, no source", Except: "an edge that is cut elsewhere: then the bore is measured again after it"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			last := b.Process == plan.BoreHead && b.Stage == shape.Finishing && b.Depth <= heavyBore
			return a.Process == plan.MillEdge && last && !datum(w, a) && thinBeside(w, b, a), partspec.EndInvalid
		})
	},
}

var holesWhileSolid = Order{
	plan.Rule{ID: "A-36s", Class: "order", Title: "Small holes and marks while the blank is solid",
		Text: "IF holes of a plate need not be truer than 0.1 mm to a large bore THEN they are drilled before it; and the outline is marked out before it.",
		Why:  "the blank is flat, solid and easy to hold, and dividers find metal to stand in",
		Sure: "common practice", Source: "common practice, no source", Except: "holes that are true to the bore, or spotted through from a part that sits in it"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			h, pattern := w.Part.Feature(a.Feature).(*partspec.Holes)
			pattern = pattern && h.Mate == nil // a bore may have to register the mate first
			f, bore := w.Part.Feature(b.Feature).(*partspec.Bore)
			loose := a.Process == plan.Drill && (a.Place == 0 || a.Place > ringTrue)
			if a.Process == plan.MarkOut && edgeMarks(w, a) {
				return bore && opens(b), partspec.EndInvalid // its centre is still metal to set dividers in
			}
			return pattern && bore && w.Part.Flat() && loose && float64(f.Diameter.Value) >= largeBore && opens(b) && b.Process != plan.Drill, partspec.EndInvalid
		})
	},
}

// edgeMarks reports whether an operation marks out edges of an outline.
func edgeMarks(w Work, o shape.Op) bool {
	return w.Part.Outline != nil && !beside(o) && w.Part.Feature(o.Feature) == nil
}

var edgesBrokenLast = Order{
	plan.Rule{ID: "A-18", Class: "order", Title: "Break the edges last",
		Text: "IF a flat part is cut THEN its sharp edges are broken when everything else is done.",
		Why:  "a burr under a datum tips the work by its own height, and edges cut hands",
		Sure: "common practice", Source: "PMPA Designer's Guide on burrs at breakthrough; the order is common practice", Except: "a face that is a datum before: wipe a file over it in between"},
	func(w Work) []Arc {
		return pairs(w, func(a, b shape.Op) (bool, partspec.End) {
			return b.Process == plan.Deburr && a.Process != plan.Deburr, partspec.EndInvalid
		})
	},
}
