package process

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// What is cut across the axis of a turned part: the part lies along the table, the spindle stands square to it. up counts from the axis towards the spindle.

// crossTask begins a task that works across the axis over a stretch of it.
func crossTask(f partspec.Feature, verb string, kind plan.Process, z0, z1 float64) Task {
	h := f.Head()
	return Task{Op: shape.Op{ID: h.ID() + "/" + verb, Feature: h.Name, Process: kind, Stage: shape.Roughing, Cross: true, Z0: z0, Z1: z1}}
}

// roundOff is how far a place along the axis lies from the nearest graduation of the dial x, counted from either end face.
func (c *Context) roundOff(z float64) float64 {
	d, _ := c.Mill.Dial("x")
	return math.Max(offGraduation(z, d), offGraduation(c.Length-z, d))
}

// offGraduation is how far a length is from a whole number of a dial's graduations.
func offGraduation(v float64, d partspec.Dial) float64 {
	g := radial(d)
	if g <= 0 {
		return 0
	}
	return math.Abs(math.Remainder(v, g))
}

// crossWays lists where the part lies under a spindle with a direction up, either end free; marked where it is found by a punch mark on a drilling machine.
func (c *Context) crossWays(deg float64, marked bool, z0, z1 float64) []Way {
	z := (z0 + z1) / 2
	var ways []Way
	machines := []partspec.MachineKind{partspec.Mill}
	if marked {
		machines = nil
		if c.Drill.Kind != "" {
			machines = append(machines, partspec.Drill)
		}
		if c.Mill.Kind != "" {
			machines = append(machines, partspec.Mill)
		}
	}
	for _, m := range machines {
		for _, e := range ends() {
			w := Way{Machine: m, Across: true, AcrossDeg: deg, End: e, Marked: marked, Span: [2]float64{z0, z1}, Off: c.roundOff(z)}
			if marked {
				w.Off = c.markError()
			}
			ways = append(ways, w)
		}
	}
	return ways
}

// outsideAt is the radius of the drawn outside over a stretch; ok is false where it is no plain cylinder.
func (c *Context) outsideAt(z0, z1 float64) (r float64, ok bool) {
	for _, b := range c.Blocks {
		if b.Z0 <= z0+sizeNoise && b.Z1 >= z1-sizeNoise && b.Cylinder() {
			return b.Greatest, true
		}
	}
	return 0, false
}

// crownNow is how far from the axis the round that is crossed over a stretch stands, as it was turned.
func crownNow(z0, z1 float64, j Job) float64 { return j.Before.Outer.Greatest(z0, z1) }

// insideAt is the radius of the drawn bore over a stretch; 0 where it is solid.
func (c *Context) insideAt(z0, z1 float64) float64 {
	r := 0.0
	for _, h := range c.Holes {
		if h.Z0 < z1 && h.Z1 > z0 {
			_, most := holeWidth(h, math.Max(z0, h.Z0), math.Min(z1, h.Z1))
			r = math.Max(r, most)
		}
	}
	return r
}

// overAxis puts the spindle over a place along the part's axis, and to a side of it.
func (p *page) overAxis(w Way, z, side float64) stand {
	if w.Marked {
		return stand{place: &plan.Place{XMM: tidyMM(z), YMM: tidyMM(side), By: "punch mark", WithinMM: p.c.markError()}}
	}
	return p.overDials(z, side)
}

// beginAcross sets the dials of an operation across the axis, and tells where the work is found.
func (p *page) beginAcross(w Way, top float64, how string) {
	p.turnHead(w)
	p.setRound(w)
	if !w.Marked {
		p.tableZeros()
		p.why("each place is counted from one nought, always coming up in the same direction", "C-08")
	}
	p.quillZero(top, how)
}

// setRound tells how the work is turned about its axis, without a dividing head, where other features across it look elsewhere.
func (p *page) setRound(w Way) {
	if p.j.Setup == nil || p.j.Setup.Dividing != nil {
		return
	}
	var others []string
	for _, f := range p.c.Part.Features {
		deg, crosses := lookingTo(f)
		if turned := math.Abs(math.Remainder(deg-w.AcrossDeg, 360)); crosses && f.Head().Name != p.op.Feature && turned > sameDirection {
			others = append(others, fmt.Sprintf("%s at %s", f.Head().Name, units.Angle(deg)))
		}
	}
	if len(others) > 0 {
		p.note("Here %s of the drawing looks up, anticlockwise from X as seen from the right end. It is set round by a square or protractor from whichever of these is cut already: %s.", units.Angle(w.AcrossDeg), strings.Join(others, ", "))
	}
}

// sameDirection is the angle, in degrees, within which two directions are one: noise of the drawing's figures.
const sameDirection = 1e-6

// lookingTo is the direction in which a feature across the axis looks.
func lookingTo(f partspec.Feature) (deg float64, crosses bool) {
	switch f := f.(type) {
	case *partspec.CrossHole:
		return float64(f.Angle), true
	case *partspec.Flat:
		return float64(f.Angle), true
	case *partspec.Slot:
		return float64(f.Angle), true
	case *partspec.SideSeat:
		return float64(f.Angle), true
	}
	return 0, false
}

// standLines puts a stand's counts on the card.
func (p *page) standLines(s stand, label string) {
	for _, rd := range s.at {
		p.line(label, rd.Dial, rd.Graduations, "", "", false)
	}
}

// lowered is the count for a height above the axis between limits, from the quill's nought; where no graduation lies in the limits the height is measured.
func (p *page) lowered(low, high float64) (marks int64, m *plan.Measured) {
	top := p.zero(p.quill()).ReferenceMM
	g := float64(p.dial(p.quill()).Graduation.Value)
	marks = p.whole((top - (low+high)/2) / g)
	if at := top - float64(marks)*g; at < low-sizeNoise || at > high+sizeNoise {
		return marks, &plan.Measured{What: "position", LowMM: low, HighMM: high}
	}
	return marks, nil
}

// deburrInside is the task of taking the burr out of a bore that something crosses.
func (c *Context) deburrInside(f partspec.Feature, z0, z1 float64) []Task {
	bore := ""
	for _, h := range c.Holes {
		if h.Z0 < z1 && h.Z1 > z0 {
			bore = h.Name
		}
	}
	if bore == "" || c.Bench.Kind == "" {
		return nil
	}
	t := crossTask(f, "deburr", plan.Deburr, z0, z1)
	t.Stage = shape.Finishing
	for _, e := range ends() {
		w := Way{Machine: partspec.Bench, End: e, Minutes: 2, Span: [2]float64{z0, z1}}
		w.Write = func(j Job) (plan.Operation, Done) {
			p := c.page(j, t, w, fmt.Sprintf("Take the burr out of %s", bore))
			p.op.Tool, p.op.RPM = plan.ToolRef{Text: "scraper"}, 0
			p.note("Scraper or a stone in the bore, where %s comes in; then try the mating part, or its reamer turned by hand.", f.Head().Name)
			p.why("a crossing hole leaves a long burr in the bore", "A-35")
			return p.finish()
		}
		t.Ways = append(t.Ways, w)
	}
	return []Task{t}
}
