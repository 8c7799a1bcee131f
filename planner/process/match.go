package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/tables"
)

// Holes that are spotted through from another part (rule A-33): the two are held together by the fit that registers them, or with their datum edges flush, a drill that just passes the other part's
// holes is turned in each until its cone is full, and the other part is taken off before anything is drilled.

// mateSpots is how a pattern is spotted from its mate.
type mateSpots struct {
	drill   partspec.Tool
	drillMM float64
	apart   float64 // how far a spot may lie from the mate's hole once the two are screwed together, radially
	off     float64 // how far it may lie from its own drawn place
}

// spotThrough chooses the drill that spots a pattern through from its mate: the largest that passes, which leans least.
func (c *Context) spotThrough(f *partspec.Holes) (t mateSpots, lacking string) {
	switch {
	case !c.Rules.Has("A-33"):
		return t, fmt.Sprintf("%s: without rule A-33 nothing says how holes are spotted through", f.Name)
	case c.Bench.Kind == "" || c.Drill.Kind == "" && c.Mill.Kind == "":
		return t, fmt.Sprintf("%s: spotting through from %s wants a bench, and a drilling machine or a mill to drill in the spots", f.Name, f.Match)
	}
	least := float64(f.Mate.Diameter.Low)
	for _, tool := range c.tools(partspec.Drills) {
		for _, size := range tool.Sizes {
			if d := float64(size); d <= least+sizeNoise && d > t.drillMM {
				t.drill, t.drillMM = tool, d
			}
		}
	}
	if t.drillMM == 0 {
		return t, fmt.Sprintf("%s: no drill owned passes the holes of %s, Ø%.2f", f.Name, f.Match, least)
	}
	lean := (float64(f.Mate.Diameter.High) - t.drillMM) / 2
	t.apart = lean + float64(f.Mate.Shift())
	t.off = lean + float64(f.Mate.Slack) + float64(f.Mate.Spread) + c.markError()
	if all := t.apart + wander(false); all > float64(f.Mate.Room) {
		return t, fmt.Sprintf("%s: a hole spotted through from %s with a %s mm drill may lie %.2f off, and the screw has %.2f to each side (rule A-33): buy a drill nearer to Ø%.2f, or write %s",
			f.Name, f.Match, units.Decimal(t.drillMM, 3), all, float64(f.Mate.Room), least, f.Mate.Closer(f.Match))
	}
	return t, ""
}

// writeSpots tells how the two parts are brought together and spotted.
func (c *Context) writeSpots(s spotted, t Task, w Way, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Spot %s through from %s of %s: %s", s.Name, s.Match.Feature, s.Match.Part, holesInWords(len(s.Places))))
	p.op.Card, p.op.RPM = nil, 0
	for i, at := range s.Places {
		x, y := tidyMM(float64(at.X.Value)), tidyMM(float64(at.Y.Value))
		p.op.Holes = append(p.op.Holes, plan.HoleLine{Number: i + 1, XMM: x, YMM: y})
		p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: fmt.Sprintf("spot %d", i+1), At: s.mated(x, y)})
	}
	mate := s.Match.Part
	if s.Mate.Flush != nil {
		p.layFlush(s, mate)
	} else {
		p.note("%s is there, its holes %s drilled and deburred, and fit %s has been tried: it goes home, without shake.", mate, s.Match.Feature, s.Mate.Fit)
		p.note("Lay %s on as it will sit, registered by %s, and turn it until its hole stands over the place of hole 1. Clamp the two with toolmaker's clamps and scribe a line across the rims of both.", mate, s.Mate.Register)
	}
	p.note("Turn a %s mm drill in each hole, in a hand drill or a pin chuck, square to the face, until its cone is full. Look at each spot before the clamps come off.", units.Decimal(s.spots.drillMM, 3))
	p.note("Stamp both parts beside the line: they go together this way round only. Take %s off and number the spots.", mate)
	p.why(fmt.Sprintf("the errors of the pattern are the same in both parts: a hole lies within %s of the one that it was spotted through, its screw has %s",
		up(s.spots.apart+wander(false)).Text(c.unit()), s.Mate.Room.Round(2).Text(c.unit())), "A-33")
	return p.finish()
}

// layFlush tells how the other part is laid on with its datum edges flush, so that it neither shifts nor turns.
func (p *page) layFlush(s spotted, mate string) {
	lies, down := s.Mate.Flush, s.From.Other()
	as := ""
	if lies.Over {
		down, as = s.From, "turned over, "
	}
	p.note("%s is there, its holes %s drilled and deburred. No burr on the %s and %s edges of either part.", mate, s.Match.Feature, lies.Here[0], lies.Here[1])
	p.note("Lay %s on the %s face as it will sit, %sits %s down: its %s edge flush with the %s edge, its %s edge with the %s edge. Press both parts against a straight bar along each of the two pairs: no light between, no step under a finger nail. Clamp them with toolmaker's clamps, look at both pairs again, and scribe a line across one of them.",
		mate, faceWord(s.From), as, faceWord(down), lies.There[0], lies.Here[0], lies.There[1], lies.Here[1])
	p.note("When the two are screwed together, bring the edges flush in the same way before the screws are tight.")
	p.why(fmt.Sprintf("edges that touch a bar lie within %s of each other there, and the farthest hole within %s", tables.PlaceError(tables.ByFlush).Text(p.c.unit()), up(float64(s.Mate.Slack)).Text(p.c.unit())), "A-33")
}

// mated is the place of a spot.
func (s spotted) mated(x, y float64) *plan.Place {
	return &plan.Place{XMM: x, YMM: y, By: "mate", WithinMM: s.spots.off}
}

// up is a length for the sheet that is never told smaller than it is.
func up(mm float64) units.Length { return units.Length(math.Ceil(100*(mm-sizeNoise)) / 100) }
