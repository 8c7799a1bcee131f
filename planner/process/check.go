package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// checkKind is where a size is measured.
type checkKind int

const (
	outsideCheck checkKind = iota + 1
	insideCheck
	depthCheck
)

// instruments are the kinds that measure a size, best first. The order is common practice, no source.
func (k checkKind) instruments() []partspec.InstrumentKind {
	switch k {
	case outsideCheck:
		return []partspec.InstrumentKind{partspec.Micrometer, partspec.Caliper, partspec.Rule}
	case insideCheck:
		return []partspec.InstrumentKind{partspec.PlugGauge, partspec.BoreGauge, partspec.Caliper}
	}
	return []partspec.InstrumentKind{partspec.DepthMicrometer, partspec.Caliper, partspec.Rule}
}

// check writes a measurement out: with the coarsest instrument that is still fine enough (rule E-01), or the finest there is, with a doubt.
func (c *Context) check(what, feature string, s partspec.Size, kind checkKind) plan.Check {
	ch := plan.Check{What: what, Feature: feature, LowMM: float64(s.Low), HighMM: float64(s.High),
		Limits: units.Limits{Low: s.Low, High: s.High}.Text(c.unit()), When: "before release"}
	if float64(s.Width()) <= 0.2 && c.Rules.Has("E-03") {
		ch.When = "before the last cut, and before release"
	}
	ch.IfLarge, ch.IfSmall = "take off what is over", "stop: metal cannot be put back"
	if kind == insideCheck {
		ch.IfLarge, ch.IfSmall = "stop: metal cannot be put back", "take out what is under"
	}
	if kind == depthCheck {
		ch.IfLarge, ch.IfSmall = "face the mouth back, if the length allows", "go on to depth"
	}
	c.instrument(&ch, s, kind)
	return ch
}

func (c *Context) instrument(ch *plan.Check, s partspec.Size, kind checkKind) {
	width := float64(s.Width())
	best := math.Inf(1)
	for i := len(kind.instruments()) - 1; i >= 0; i-- {
		for _, in := range c.Shop.Instruments {
			doubt := float64(in.Uncertainty())
			fits := in.Kind == kind.instruments()[i] && s.Value >= in.Smallest && (in.Largest == 0 || s.Value <= in.Largest)
			if !fits || best <= width/10 || doubt >= best {
				continue
			}
			best, ch.Instrument = doubt, in.Name
		}
	}
	switch {
	case ch.Instrument == "":
		ch.Doubt = "no instrument owned measures this: try it with the mating part or a gauge"
	case best > width/4:
		ch.Doubt = "too coarse for these limits: prove it with a gauge or the mating part"
	case best > width/10:
		ch.Doubt = "measure three times"
	}
}

// unmeasurable says why limits cannot be worked to by measuring: no instrument owned is certain within a quarter of them (rule E-01). Empty where one is, or where
// the dial alone serves.
func (c *Context) unmeasurable(name string, s partspec.Size, kind checkKind) string {
	cross, _ := c.Lathe.Dial("cross")
	width := float64(s.Width())
	if width > trialWidth && width >= 4*radial(cross) || !c.Rules.Has("E-01") {
		return ""
	}
	best := math.Inf(1)
	for _, in := range c.Shop.Instruments {
		if slices.Contains(kind.instruments(), in.Kind) && s.Value >= in.Smallest && (in.Largest == 0 || s.Value <= in.Largest) {
			best = math.Min(best, float64(in.Uncertainty()))
		}
	}
	if best <= width/4+sizeNoise {
		return ""
	}
	return fmt.Sprintf("%s: limits %.3f apart cannot be measured here: an instrument certain within %.4f is wanted (a quarter of them, rule E-01); widen the limits or add one", name, width, width/4)
}
