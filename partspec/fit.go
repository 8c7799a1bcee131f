package partspec

import (
	"fmt"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

var fitShape = shapeOf{attrs: []attr{
	need("hole", kindWord), need("shaft", kindWord), may("class", kindWord), may("purpose", kindWord), may("note", kindText),
}}

func (c *checker) gatherFit(block *hclsyntax.Block) {
	e := c.enter(block, "", false, fitShape, nameLabel)
	if len(c.fits) == maxFits {
		c.report(fault(e.head(), "There are too many fits", "A job has at most %d.", maxFits))
		return
	}
	for _, other := range c.fits {
		if other.name == e.name && e.name != "" {
			c.fail(e, e.head(), fmt.Sprintf("A second fit %q", e.name), "The first is at %s:%d. Give this one another name.",
				other.head().Filename, other.head().Start.Line)
			c.strays = append(c.strays, e)
			return
		}
	}
	c.fits = append(c.fits, e)
}

// mate is one side of a fit: the size that the fit sets, and the as-made one.
type mate struct {
	ref      FeatureRef
	size     *Size
	measured *units.Length
	general  bool // nobody wrote limits for it yet
}

// resolveFits sets the limits of holes and shafts that belong together. It runs
// last: nominal sizes first, fits after.
func (c *checker) resolveFits(job *Job) []Fit {
	var fits []Fit
	for _, e := range c.fits {
		if e.broken {
			c.ownFit(e, job)
			continue
		}
		class, pair := c.fitClass(e)
		hole, shaft := c.mate(e, "hole", job), c.mate(e, "shaft", job)
		if e.broken || hole.size == nil || shaft.size == nil {
			continue
		}
		if c.applyFit(e, pair, hole, shaft) {
			fits = append(fits, Fit{Name: e.name, Hole: hole.ref, Shaft: shaft.ref, Class: class, Range: e.head()})
		}
	}
	return fits
}

// fitClass is the pair of classes, and how the file asked for it.
func (c *checker) fitClass(e *entry) (said, pair string) {
	switch {
	case e.has("class") == e.has("purpose"):
		c.fail(e, e.head(), fmt.Sprintf("%s does not say which fit", e.title()),
			`Write class = "H7/g6", or purpose = "sliding"; one of them.`)
	case e.has("class"):
		if _, _, err := tables.SplitFit(e.text("class")); err != nil {
			c.fail(e, e.at("class"), "There is no such fit", "%s", sentence(err))
		}
		return e.text("class"), e.text("class")
	default:
		choice, err := tables.FindFit(e.text("purpose"))
		if err != nil {
			c.fail(e, e.at("purpose"), "There is no such fit", "%s", sentence(err))
		}
		pair = choice.Hole + "/" + choice.Shaft
		return fmt.Sprintf("%s (%s)", choice.Purpose, pair), pair
	}
	return "", ""
}

// ownFit judges what each attribute of a fit that failed says by itself.
func (c *checker) ownFit(e *entry, job *Job) {
	if e.known("class") != e.known("purpose") {
		c.fitClass(e)
	}
	for _, side := range []string{"hole", "shaft"} {
		if e.known(side) {
			c.mate(e, side, job)
		}
	}
}

// mate finds the feature that hole or shaft names as "part.feature". Its size
// is nil when the feature failed and was told.
func (c *checker) mate(e *entry, side string, job *Job) mate {
	partName, featureName, ok := strings.Cut(e.text(side), ".")
	if !ok || strings.Contains(featureName, ".") {
		c.fail(e, e.at(side), fmt.Sprintf("%q names no feature of a part", e.text(side)),
			`Write the part and the feature, like %s = "boss.seat".`, side)
		return mate{}
	}
	part := job.Part(partName)
	if part == nil {
		e.broken = true
		if !c.unread {
			c.report(fault(e.at(side), fmt.Sprintf("There is no part %q", partName), "%s", didYouMean(partName, c.partNames(), noParts)))
		}
		return mate{}
	}
	m := mate{ref: FeatureRef{partName, featureName}}
	switch f := part.anywhere(featureName).(type) {
	case *Bore:
		if side == "hole" {
			m.size, m.measured = &f.Diameter, f.Measured
		}
	case *Holes:
		if side == "hole" && f.Thread == nil && f.Screw == "" {
			m.size = &f.Diameter
		}
	case *CrossHole:
		if side == "hole" && f.Thread == nil && f.Screw == "" {
			m.size = &f.Diameter
		}
	case *Spigot:
		if side == "shaft" {
			m.size, m.measured = &f.Diameter, f.Measured
		}
	case nil:
		c.missingMate(e, side, partName, featureName)
		return m
	}
	if m.size == nil {
		c.fail(e, e.at(side), fmt.Sprintf("%s is no %s", e.text(side), side),
			"A hole is a bore, a counterbore, plain holes or a cross hole; a shaft is a spigot or a flange.")
		return m
	}
	m.general = m.size.general
	return m
}

func (c *checker) missingMate(e *entry, side, partName, featureName string) {
	e.broken = true
	var known []string
	for _, p := range c.parts {
		if p.name != partName {
			continue
		}
		for _, f := range p.features {
			if f.name == featureName {
				return // it failed: told already
			}
			known = append(known, f.name)
		}
	}
	c.report(fault(e.at(side), fmt.Sprintf("part %q has no feature %q", partName, featureName), "%s",
		didYouMean(featureName, known, noFeatures)))
}

// applyFit sets the limits. Where one side is made and measured, the other is
// made to suit it: its limits keep the least and the most clearance of the pair.
func (c *checker) applyFit(e *entry, pair string, hole, shaft mate) bool {
	holeClass, shaftClass, _ := tables.SplitFit(pair)
	nominal := hole.size.Value
	if shaft.measured != nil && hole.measured == nil {
		nominal = shaft.size.Value // the hole may have taken over the as-made size
	}
	if !sameNominal(hole, shaft) {
		c.fail(e, e.head(), "Hole and shaft have different sizes",
			"%s is %s, %s is %s: a fit binds two of one nominal size. Let one name the other, as in diameter = part.%s.spigot.%s.diameter.",
			hole.ref, hole.size.Value, shaft.ref, shaft.size.Value, shaft.ref.Part, shaft.ref.Feature)
		return false
	}
	inHole, err1 := tables.ISO286(holeClass, nominal)
	onShaft, err2 := tables.ISO286(shaftClass, nominal)
	for _, err := range []error{err1, err2} {
		if err != nil {
			c.fail(e, e.head(), "There is no such fit", "%s", sentence(err))
			return false
		}
	}
	least, most := (inHole.Lower - onShaft.Upper).Round(positionDecimals), (inHole.Upper - onShaft.Lower).Round(positionDecimals)
	switch {
	case hole.measured != nil && shaft.measured != nil:
		return c.checkMade(e, pair, hole, shaft, least, most)
	case hole.measured != nil:
		drawn := c.class(e, hole, holeClass, units.Around(nominal, inHole.Lower, inHole.Upper), pair)
		return drawn && c.suit(e, shaft, units.Limits{Low: *hole.measured - most, High: *hole.measured - least}, suits(hole, pair, least, most))
	case shaft.measured != nil:
		drawn := c.class(e, shaft, shaftClass, units.Around(nominal, onShaft.Lower, onShaft.Upper), pair)
		return drawn && c.suit(e, hole, units.Limits{Low: *shaft.measured + least, High: *shaft.measured + most}, suits(shaft, pair, least, most))
	}
	okHole := c.class(e, hole, holeClass, units.Around(nominal, inHole.Lower, inHole.Upper), pair)
	okShaft := c.class(e, shaft, shaftClass, units.Around(nominal, onShaft.Lower, onShaft.Upper), pair)
	return okHole && okShaft
}

// sameNominal compares the drawn sizes; a side that took over the other's
// as-made size agrees with that.
func sameNominal(hole, shaft mate) bool {
	agree := func(a, b units.Length) bool { return (a - b).Abs() <= sameLength }
	return agree(hole.size.Value, shaft.size.Value) ||
		hole.measured != nil && agree(*hole.measured, shaft.size.Value) || shaft.measured != nil && agree(*shaft.measured, hole.size.Value)
}

func suits(made mate, pair string, least, most units.Length) string {
	return fmt.Sprintf("to suit %s, measured %s: %s keeps %s", made.ref, *made.measured, pair, clearance(least, most))
}

// clearance tells a range of clearance, or of interference, in words.
func clearance(least, most units.Length) string {
	if least == most && most >= 0 {
		return fmt.Sprintf("%s of clearance", most)
	}
	if least == most {
		return fmt.Sprintf("%s of interference", -most)
	}
	if most <= 0 {
		return fmt.Sprintf("%s to %s of interference", (-most).Figure(units.InMM), -least)
	}
	if least < 0 {
		return fmt.Sprintf("from %s of interference to %s of clearance", -least, most)
	}
	return fmt.Sprintf("%s to %s of clearance", least.Figure(units.InMM), most)
}

// suit gives one side limits that follow the measured other side.
func (c *checker) suit(e *entry, m mate, limits units.Limits, basis string) bool {
	if !m.general {
		return c.twice(e, m)
	}
	limits.Low, limits.High = limits.Low.Round(positionDecimals), limits.High.Round(positionDecimals)
	*m.size = m.size.within(limits, basis)
	return true
}

func (c *checker) class(e *entry, m mate, class string, limits units.Limits, pair string) bool {
	if m.size.Class == class {
		return true
	}
	if !m.general {
		return c.twice(e, m)
	}
	*m.size = m.size.within(limits, fmt.Sprintf("%s of the fit %s (ISO 286-1)", class, pair))
	m.size.Class = class
	return true
}

// twice refuses a fit on a size that has limits from somewhere else.
func (c *checker) twice(e *entry, m mate) bool {
	c.fail(e, e.head(), fmt.Sprintf("%s has limits already", m.ref),
		"Its diameter is %s to %s (%s, line %d). Leave those limits out, or the fit.",
		m.size.Low.Figure(units.InMM), m.size.High, m.size.Basis, m.size.Range.Start.Line)
	return false
}

// checkMade judges two sides that are both made.
func (c *checker) checkMade(e *entry, pair string, hole, shaft mate, least, most units.Length) bool {
	made := (*hole.measured - *shaft.measured).Round(positionDecimals)
	if made >= least-sameLength && made <= most+sameLength {
		return true
	}
	c.fail(e, e.head(), "The measured sizes do not make the fit",
		"%s measures %s and %s measures %s, which is %s; %s wants %s. Measure again, or make one of them anew.",
		hole.ref, *hole.measured, shaft.ref, *shaft.measured, clearance(made, made), pair, clearance(least, most))
	return false
}
