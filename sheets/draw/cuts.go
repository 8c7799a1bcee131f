package draw

import (
	"fmt"
	"strconv"

	"catchplate/planner/plan"
)

// heading is the way a tool goes under metal, as seen on paper with the headstock at the left.
type heading int

const (
	headingInvalid heading = iota
	toHead
	toFree
	inward
	outward
)

// cutMark is where one or more operations cut.
type cutMark struct {
	key    string
	place  place
	way    heading
	lines  []string
	inside bool
	atFace bool // at the work's free end face
}

// place is where a feature lies, in the part's coordinates.
type place struct {
	z0, z1, r float64
}

const (
	cutLong  = 8.0 // an arrow of a cut
	cutShort = 4.5 // and along a short surface
	cutAbove = 2.5 // from the work to an arrow along it
	cutClear = 1.0 // between two arrows, and from the work to an arrow across it
	cutRise  = 3.0 // by which an arrow gives way to others, away from the work
)

var words = map[plan.Process]string{
	plan.Face: "face", plan.Spot: "spot", plan.Drill: "drill", plan.BoreOut: "bore", plan.Ream: "ream", plan.TurnRough: "rough",
	plan.TurnFinish: "finish", plan.Groove: "groove", plan.Recess: "recess", plan.Chamfer: "chamfer", plan.Fillet: "round",
	plan.TaperTurn: "taper", plan.Steps: "step cuts", plan.FileProfile: "file", plan.Thread: "thread", plan.Tap: "tap", plan.Die: "die",
	plan.Knurl: "knurl", plan.PartOff: "part off", plan.SawOff: "saw off", plan.Deburr: "deburr",
	plan.Saw: "saw", plan.MarkOut: "mark out", plan.MillFace: "mill face", plan.MillEdge: "mill edge", plan.FileEdge: "file", plan.BoreHead: "boring head",
	plan.SawHole: "hole saw", plan.Counterbore: "counterbore", plan.Countersink: "countersink", plan.SeatSteps: "step cuts", plan.FileSeat: "file",
	plan.MillFlat: "mill flat", plan.MillSlot: "mill slot",
}

func opText(op plan.Operation) string {
	word, ok := words[op.Process]
	if !ok {
		word = string(op.Process)
	}
	if throughMate(op) {
		word = "spot through"
	}
	return strconv.Itoa(op.Number) + " " + word
}

// operationMarks sorts the operations by where they cut: outside ones get a label above, inside ones a label in the column at the free end.
// What has no place in the drawing is named in the legend.
func (sc *scene) operationMarks() (above, column []cutMark, unmarked []string) {
	var all []cutMark
	for _, op := range sc.setup.Operations {
		m, ok := sc.locate(op)
		if !ok {
			unmarked = append(unmarked, opText(op))
			continue
		}
		i := indexOf(all, m.key)
		if i < 0 {
			all, i = append(all, m), len(all)
		}
		all[i].lines = append(all[i].lines, opText(op))
	}
	for _, m := range all {
		if m.inside {
			column = append(column, m)
		} else {
			above = append(above, m)
		}
	}
	return above, column, unmarked
}

func indexOf(marks []cutMark, key string) int {
	for i, m := range marks {
		if m.key == key {
			return i
		}
	}
	return -1
}

// locate finds where an operation cuts and which way.
func (sc *scene) locate(op plan.Operation) (cutMark, bool) {
	m := cutMark{way: wayOf(op)}
	after := sc.after.Outer
	if len(after) == 0 {
		after = sc.before.Outer
	}
	left, right := after[0].Z0, after[len(after)-1].Z1
	switch op.Feature {
	case "face.left", "face.right", "part":
		z := right
		if op.Feature == "face.left" || op.Feature == "part" && sc.setup.FreeEnd == "right" {
			z = left
		}
		m.place = place{z, z, radiusAt(after, z)}
		m.atFace = op.Feature == "face."+sc.setup.FreeEnd
	default:
		var ok bool
		if m.place, m.inside, ok = find(sc.dims, op.Feature); !ok {
			return m, false
		}
	}
	m.key = fmt.Sprint(op.Feature, m.way)
	return m, true
}

// find says where a feature lies: all along what its dimensions span, at the radius of the first that has one.
func find(dims []plan.Dim, feature string) (p place, inside, ok bool) {
	for _, d := range dims {
		if d.Feature != feature {
			continue
		}
		z0, z1 := min(d.Z0, d.Z1), max(d.Z0, d.Z1)
		if !ok {
			p = place{z0, z1, 0}
		}
		ok = true
		p.z0, p.z1 = min(p.z0, z0), max(p.z1, z1)
		if p.r == 0 && d.Kind != plan.DimLength {
			p.r, inside = d.R, d.Inside
		}
	}
	return p, inside, ok
}

// wayOf is the way that matters of an operation: along the work for turning and boring, across it for facing. It is read from the dials; where
// they tell nothing, and for all other work, it is the usual one of the process.
func wayOf(op plan.Operation) heading {
	switch op.Process {
	case plan.TurnRough, plan.TurnFinish, plan.BoreOut, plan.TaperTurn:
		return firstWay(op, toHead, toFree)
	case plan.Face:
		return firstWay(op, inward, outward)
	case plan.Groove, plan.Chamfer, plan.Fillet, plan.PartOff, plan.SawOff, plan.Deburr:
		return inward
	case plan.Recess:
		return outward
	}
	return toHead
}

// firstWay is the first of two ways that a cut of the operation goes; usual when none does.
func firstWay(op plan.Operation, usual, other heading) heading {
	for _, cut := range op.Cuts {
		if way := wayOfCut(op, cut); way == usual || way == other {
			return way
		}
	}
	return usual
}

func wayOfCut(op plan.Operation, cut plan.Cut) heading {
	for _, from := range cut.From {
		for _, to := range cut.To {
			if from.Dial != to.Dial || from.Graduations == to.Graduations {
				continue
			}
			forward := to.Graduations > from.Graduations
			switch {
			case from.Dial == "cross" && forward != outwardDial(op):
				return inward
			case from.Dial == "cross":
				return outward
			case forward:
				return toHead
			}
			return toFree
		}
	}
	return headingInvalid
}

func outwardDial(op plan.Operation) bool {
	for _, z := range op.Zeros {
		if z.Dial == "cross" {
			return z.Outward
		}
	}
	return false
}
