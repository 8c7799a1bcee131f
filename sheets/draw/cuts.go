package draw

import (
	"fmt"
	"math"
	"sort"
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
	cutRoom  = 13.0 // above the work, for the arrows of cuts
	cutLong  = 8.0  // an arrow of a cut
	cutAbove = 3.5  // from the work to an arrow along it
)

var words = map[plan.Process]string{
	plan.Face: "face", plan.Spot: "spot", plan.Drill: "drill", plan.BoreOut: "bore", plan.Ream: "ream", plan.TurnRough: "rough",
	plan.TurnFinish: "finish", plan.Groove: "groove", plan.Recess: "recess", plan.Chamfer: "chamfer", plan.Fillet: "round",
	plan.TaperTurn: "taper", plan.Steps: "step cuts", plan.FileProfile: "file", plan.Thread: "thread", plan.Tap: "tap", plan.Die: "die",
	plan.Knurl: "knurl", plan.PartOff: "part off", plan.SawOff: "saw off", plan.Deburr: "deburr",
}

func opText(op plan.Operation) string {
	word, ok := words[op.Process]
	if !ok {
		word = string(op.Process)
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
		dim, ok := find(sc.dims, op.Feature)
		if !ok {
			return m, false
		}
		m.place, m.inside = place{min(dim.Z0, dim.Z1), max(dim.Z0, dim.Z1), dim.R}, dim.Inside
	}
	m.key = fmt.Sprint(op.Feature, m.way)
	return m, true
}

// find is the dimension that best says where a feature lies.
func find(dims []plan.Dim, feature string) (plan.Dim, bool) {
	for _, kind := range []plan.DimKind{plan.DimDiameter, plan.DimLeader} {
		for _, d := range dims {
			if d.Kind == kind && d.Feature == feature {
				return d, true
			}
		}
	}
	return plan.Dim{}, false
}

// wayOf is the way of the last cut, read from its dials; where no dial tells, it is the usual one of the process.
func wayOf(op plan.Operation) heading {
	if n := len(op.Cuts); n > 0 {
		if way := wayOfCut(op, op.Cuts[n-1]); way != headingInvalid {
			return way
		}
	}
	switch op.Process {
	case plan.Face, plan.Groove, plan.Chamfer, plan.Fillet, plan.PartOff, plan.SawOff, plan.Deburr:
		return inward
	case plan.Recess:
		return outward
	}
	return toHead
}

func wayOfCut(op plan.Operation, cut plan.Cut) heading {
	for _, from := range cut.From {
		for _, to := range cut.To {
			if from.Dial != to.Dial || from.Graduations == to.Graduations {
				continue
			}
			forward := to.Graduations > from.Graduations
			switch from.Dial {
			case "cross":
				if forward != outwardDial(op) {
					return inward
				}
				return outward
			default:
				if forward {
					return toHead
				}
				return toFree
			}
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

// arrowGap is the least distance between the middles of two arrows above the work.
const arrowGap = cutLong + 2

// cutArrows draws an arrow for every outside cut and gives the marks of their labels.
func (c *Canvas) cutArrows(sc *scene, cuts []cutMark) []mark {
	sort.SliceStable(cuts, func(i, j int) bool { return sc.middle(cuts[i]) < sc.middle(cuts[j]) })
	xs := sc.arrowPlaces(cuts)
	var marks []mark
	for i, m := range cuts {
		surface := -greatest(sc.before.Outer, m.place.z0, m.place.z1) * sc.v.scale
		var top float64
		switch {
		case m.way == toHead || m.way == toFree:
			top = c.alongArrow(xs[i], surface-cutAbove, m.way)
		case m.atFace:
			top = c.crossArrow(xs[i], surface-2, surface-2+cutLong, m.way)
		default:
			top = c.crossArrow(xs[i], surface-cutLong-1, surface-0.5, m.way)
		}
		marks = append(marks, mark{x: xs[i], start: top, lines: m.lines, bold: true})
	}
	return marks
}

// arrowPlaces moves the arrows apart, and those at the free end face clear of the work.
func (sc *scene) arrowPlaces(cuts []cutMark) []float64 {
	var xs []float64
	for _, m := range cuts {
		if !m.atFace {
			xs = append(xs, sc.middle(m))
		}
	}
	xs = apart(xs, arrowGap)
	out := make([]float64, len(cuts))
	last, next := math.Inf(-1), 0
	for i, m := range cuts {
		if !m.atFace {
			out[i] = max(xs[next], last+arrowGap)
			next++
		} else {
			out[i] = max(sc.middle(m), last+arrowGap/2)
		}
		last = out[i]
	}
	return out
}

func (sc *scene) middle(m cutMark) float64 {
	if m.atFace {
		return sc.xFree + 3
	}
	return (sc.v.x(m.place.z0) + sc.v.x(m.place.z1)) / 2
}

// alongArrow is an arrow along the axis with its middle at x.
func (c *Canvas) alongArrow(x, y float64, way heading) (top float64) {
	tip, tail := Point{x - cutLong/2, y}, Point{x + cutLong/2, y}
	if way == toFree {
		tip, tail = tail, tip
	}
	c.shaft(tip, tail)
	return y
}

// crossArrow is an arrow across the axis between two heights.
func (c *Canvas) crossArrow(x, top, bottom float64, way heading) float64 {
	tip, tail := Point{x, bottom}, Point{x, top}
	if way == outward {
		tip, tail = tail, tip
	}
	c.shaft(tip, tail)
	return top
}

// shaft is an arrow with a heavy shaft.
func (c *Canvas) shaft(tip, tail Point) {
	c.Line(CutWay, tail, Point{tip.X + (tail.X-tip.X)*0.3, tip.Y + (tail.Y-tip.Y)*0.3})
	c.Arrow(tip, tail)
}
