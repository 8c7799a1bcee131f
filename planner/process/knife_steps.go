package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/numbers/steps"
	"catchplate/planner/shape"
)

// A knife steps a curve that falls away towards the free end: the cross slide is set, the tool fed along from off that end up to the saddle's figure, layer under
// layer. So it roughs as it goes, and its point gets into the corner at a shoulder, where a round nose does not.

// knifeBeyond is how much wider than the curve the blade is that stands for a knife in the step table: it reaches past the free end with every step.
const knifeBeyond = 1.0

// knifeClear says why a knife cannot step a curve from an end; nil where it can.
func (c *Context) knifeClear(b shape.Block, f *partspec.Profile, e partspec.End) error {
	for _, other := range c.Blocks {
		beyond := e == partspec.Right && other.Z0 >= b.Z1-faceNoise || e == partspec.Left && other.Z1 <= b.Z0+faceNoise
		if beyond && other.Greatest > b.Least+sizeNoise {
			return fmt.Errorf("it is fed along from the %v end, and %s stands in its way", e, other.Name)
		}
	}
	for _, s := range c.stepCurve(b, f, e).Segments {
		if !fallsAway(s) {
			return fmt.Errorf("it cuts only what falls away towards the %v end", e)
		}
	}
	return nil
}

// fallsAway reports whether a piece of a curve nowhere rises towards the free end, where across begins, by more than nobody can measure: a dome that is drawn to
// end in a small flat has its crest a hair before its foot.
func fallsAway(s steps.Segment) bool {
	p := stepPiece(s)
	if p.FromDepthMM < p.ToDepthMM-sizeNoise {
		return false
	}
	if p.CentreAcrossMM <= p.FromAcrossMM || p.CentreAcrossMM >= p.ToAcrossMM {
		return true
	}
	rises := p.ToDepthMM - (p.CentreDepthMM - p.RadiusMM)
	if p.Hollow {
		rises = p.CentreDepthMM + p.RadiusMM - p.FromDepthMM
	}
	return p.RadiusMM == 0 || rises < levelHair
}

// levelHair is how far a curve may rise and count as level, in mm. Ours, no source.
const levelHair = 1e-4

// fedAlong reckons rate, time and force of a way that feeds a knife along.
func (c *Context) fedAlong(w *Way, b shape.Block, t steps.Table, task Task) {
	w.Rate = c.rate(cutRough, 2*b.Greatest, w.Tool)
	for _, cut := range t.Cuts {
		w.Minutes += minutesAPass + (cut.AcrossMM+cutterHalf(latheCutter(b, w.Tool))+clearance)/(w.Rate.FeedMM*w.Rate.RPM)
	}
	w.deep(c, task.Depth+DepthSlack)
}

// alongCuts writes the steps of a knife, with the passes between two of them that lie farther apart than a pass is deep. It returns all of them.
func (p *page) alongCuts(cuts []numbered) []numbered {
	start, _ := p.saddleShort(p.j.DatumZ - p.toChuck()*clearance)
	var all []numbered
	before := int64(0)
	for _, cut := range cuts {
		for k, deep := range p.between(before, cut.DepthGrads) {
			part := cut
			part.DepthGrads, part.first, part.resume, part.partial = deep, cut.first && k == 0, false, true
			part.label, part.DepthMM = fmt.Sprintf("%s, pass %d", cut.label, k+1), cut.DepthMM-float64(cut.DepthGrads-deep)*radial(p.dial("cross"))
			all, cut.first = append(all, part), false
		}
		all, before = append(all, cut), cut.DepthGrads
	}
	for _, cut := range all {
		p.cut(cut.label, at(cut.DepthGrads, start), at(cut.DepthGrads, cut.AcrossGrads), nil)
		p.stepLines(cut)
		p.sweeps(p.knife(), start, cut.AcrossGrads, cut.DepthGrads)
	}
	p.note("Set the cross slide to its figure, feed along from %s off the end up to the saddle's figure, wind out and back.", p.both(clearance, "saddle"))
	p.note("The saddle's figure is for the leading side of the knife; set that side square to the axis.")
	return all
}

// between are the readings of the cross dial at which passes are taken on the way from one to another, none deeper than a pass may be.
func (p *page) between(from, to int64) []int64 {
	g := radial(p.dial("cross"))
	n := int64(passes(float64(to-from)*g, p.dialled()))
	var out []int64
	for k := int64(1); k < n; k++ {
		out = append(out, from+int64(math.Round(float64((to-from)*k)/float64(n))))
	}
	return out
}
