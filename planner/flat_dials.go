package planner

import (
	"fmt"
	"math"
	"reflect"

	"catchplate/partspec"
	"catchplate/planner/holding"
	"catchplate/planner/plan"
	"catchplate/planner/sequence"
	"catchplate/planner/shape"
	"catchplate/planner/tables"
)

// dialsMinutes is what setting a table's dials anew on work that stays where it is takes. Ours, no source.
const dialsMinutes = 2

// stillHeld says of a setup that the work stays as the setup before it has it, where it does: only the dials are set anew.
func (w *writer) stillHeld(s *plan.Setup) {
	if len(w.out.Setups) == 0 {
		return
	}
	before := w.out.Setups[len(w.out.Setups)-1]
	if before.ID != s.ID || s.Grip.WorkingN != before.Grip.WorkingN || !reflect.DeepEqual(before.Clamps, s.Clamps) || !reflect.DeepEqual(before.Presses, s.Presses) || !reflect.DeepEqual(before.Bed, s.Bed) {
		return
	}
	s.Title += ", the work as it lies"
	s.Minutes = dialsMinutes
	s.How = []string{fmt.Sprintf("Leave the work as holding %d has it: nothing is loosened.", before.Number),
		"Set the dials anew as told below: the edges that coordinates begin at are there now."}
}

// dialsAnew counts the stays in which the work stays in its holding and the dials alone are set anew, which only the order found tells.
func (o *ordering) dialsAnew() int {
	count, stays := 0, o.stays(o.result.Order)
	for i := 1; i < len(stays); i++ {
		before, now := stays[i-1][0], stays[i][0]
		if o.alts[before.Op][before.Alt].mount == o.alts[now.Op][now.Alt].mount {
			count++
		}
	}
	return count
}

// byDials reports whether any step is set by the table's dials.
func (w *writer) byDials(steps []sequence.Step) bool {
	for _, s := range steps {
		if !w.choice(s).way.Marked {
			return true
		}
	}
	return false
}

// rawEdge is how far a sawn or sheared edge may lie from where it should (rule A-40).
const rawEdge = 0.5

// edgesFound are the noughts of the table: on the two datum edges as they now are, or on the middle of what is round; and how far the work may then lie off.
func (w *writer) edgesFound(free partspec.End) (zeros []plan.Zero, offMM float64) {
	if len(w.ctx.Part.Outline.Datum) == 0 {
		return w.middleFound()
	}
	var off [2]float64
	finding, how := w.edgeFinding()
	for _, name := range w.ctx.Part.Outline.Datum {
		for i, e := range w.ctx.Part.Outline.Edges {
			side := shape.SidesOf(w.flat.Drawn)[i]
			if e.Name != name || side == shape.Inner {
				continue
			}
			ox, oy := side.Outward()
			z := plan.Zero{Dial: "x", ReferenceMM: tidy(side.Place(w.flat.Drawn) + (ox+oy)*w.flat.Left[i]), How: how + " the " + name + " edge"}
			axis := 0
			if oy != 0 {
				z.Dial, axis = "y", 1
			}
			off[axis] = finding
			if w.flat.Left[i] > nameNoise {
				z.How += ", as sawn"
				off[axis] += rawEdge
			}
			zeros = append(zeros, z)
		}
	}
	return zeros, math.Hypot(off[0], off[1]) + w.shop.Play()
}

// edgeFinding is how an edge is found with what is owned, and how far off.
func (w *writer) edgeFinding() (float64, string) {
	for _, t := range w.ctx.Shop.Tools {
		if t.Kind == partspec.EdgeFinder {
			if t.Accuracy > 0 {
				return float64(t.Accuracy), "edge finder against"
			}
			return float64(tables.PlaceError(tables.ByEdge)), "edge finder (half its diameter on) against"
		}
	}
	return float64(tables.PlaceError(tables.ByTool)), "a tool's shank and a slip of paper (half its diameter on) against"
}

// middleFound sets the table over the middle of a part without datum edges: a bore or a turned rim about its origin once one is there, else half way between the
// sides of the piece.
func (w *writer) middleFound() ([]plan.Zero, float64) {
	off := float64(tables.PlaceError(tables.ByClocking))
	owned := false
	for _, i := range w.ctx.Shop.Instruments {
		owned = owned || i.Kind == partspec.DialIndicator
	}
	if !owned {
		finding, _ := w.edgeFinding()
		off = math.Sqrt2 * finding
	}
	off += w.shop.Play()
	x, y, round := w.middle()
	how := "the spindle clocked over the middle of the work"
	if !round {
		how = "an edge found on each side of the piece, and half way between"
	}
	return []plan.Zero{{Dial: "x", ReferenceMM: tidy(x), How: how}, {Dial: "y", ReferenceMM: tidy(y), How: how}}, off
}

// middle is the place that a part without datum edges is set by, and whether it is the middle of something round.
func (w *writer) middle() (x, y float64, round bool) {
	for _, h := range w.flat.Holes {
		if math.Hypot(h.X, h.Y) < nameNoise && h.Radius >= holding.WideHole {
			return 0, 0, true
		}
	}
	for i, e := range w.flat.Drawn.Edges {
		if e.IsArc() && math.Hypot(e.CX, e.CY) < nameNoise && w.flat.Left[i] < nameNoise {
			return 0, 0, true
		}
	}
	x0, y0, x1, y1 := w.flat.Rim().Bounds()
	return (x0 + x1) / 2, (y0 + y1) / 2, false
}
