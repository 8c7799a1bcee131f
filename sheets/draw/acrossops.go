package draw

import (
	"math"

	"catchplate/planner/plan"
)

// acrossOperations finds ways for the labels from where each operation cuts to above the work.
func (c *Canvas) acrossOperations(sc *acrossScene, held Box) (marks []mark, unmarked []string) {
	var all []flatMark
	for _, op := range sc.s.Operations {
		targets := sc.place(op)
		if len(targets) == 0 {
			unmarked = append(unmarked, opText(op))
			continue
		}
		i := 0
		for i < len(all) && all[i].key != op.Feature {
			i++
		}
		if i == len(all) {
			all = append(all, flatMark{key: op.Feature, targets: targets})
		}
		all[i].lines = append(all[i].lines, opText(op))
		c.acrossFeed(sc, op, targets)
	}
	ways := leaderWays{start: held.Top - flatLabelsOff, left: held.Left - leaderSpread/2, right: held.Right + leaderSpread/2, keep: &sc.keep}
	for _, m := range all {
		mk := ways.mark(m.targets, m.lines)
		mk.bold = true
		marks = append(marks, mk)
	}
	return marks, unmarked
}

// place is where an operation cuts, as seen from above.
func (sc *acrossScene) place(op plan.Operation) []target {
	for _, x := range sc.p.Drawing.Crossed {
		if x.Feature != op.Feature {
			continue
		}
		switch x.Kind {
		case plan.CrossedHole:
			return []target{{sc.v.at((x.Z0+x.Z1)/2, 0), x.RadiusMM * sc.v.scale}}
		case plan.CrossedSeat:
			if sideSeat(x) {
				break
			}
			var out []target
			for _, share := range []float64{0.25, 0.4, 0.1} {
				r := x.WidthMM * share
				z := x.AxisZ + math.Sqrt(max(0, x.RadiusMM*x.RadiusMM-r*r))
				if x.On == "right" {
					z = x.AxisZ - math.Sqrt(max(0, x.RadiusMM*x.RadiusMM-r*r))
				}
				out = append(out, target{p: sc.v.at(z, r)})
			}
			return out
		}
		var out []target
		for _, share := range []float64{0.5, 0.3, 0.7} {
			out = append(out, target{p: sc.v.at(x.Z0+share*(x.Z1-x.Z0), 0)})
		}
		return out
	}
	return nil
}

// acrossFeed draws the cutter's way at the place of an operation that feeds along the table.
func (c *Canvas) acrossFeed(sc *acrossScene, op plan.Operation, targets []target) {
	for _, cut := range op.Cuts {
		way, ok := tableWay(cut)
		if !ok {
			continue
		}
		p := Point{targets[0].p.X, sc.reach + feedOff}
		tip, tail := stepBy(p, way, feedLong/2), stepBy(p, way, -feedLong/2)
		if way.Y != 0 {
			p.Y += feedLong / 2
			tip, tail = stepBy(p, way, feedLong/2), stepBy(p, way, -feedLong/2)
		}
		c.shaft(tip, tail)
		return
	}
}

// upZeros marks the heights at which the quill, or the table's z, stands at nought, beside the view that is cut open.
func (c *Canvas) upZeros(sc *acrossScene, down, left float64) {
	var side []sideLabel
	for _, z := range zerosOf(sc.s, "quill", "z") {
		foot := Point{sc.left, down - z.referenceMM*sc.v.scale}
		c.Circle(Head, foot, 0.7)
		side = append(side, sideLabel{foot, DialName(sc.s, z.dial) + " 0 (" + z.numbers(sc.s) + ")"})
	}
	c.leftLabels(side, left)
}
