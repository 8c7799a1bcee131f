package partspec

import (
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

var measuring = shapeOf{attrs: []attr{may("range", kindLengths), need("resolution", kindLength)}}

var instrumentShapes = map[string]shapeOf{
	string(Rule): measuring, string(Caliper): measuring, string(Micrometer): measuring, string(BoreGauge): measuring,
	string(DepthMicrometer): measuring, string(DialIndicator): measuring,
	string(PlugGauge): {attrs: []attr{may("range", kindLengths), may("resolution", kindLength)}},
}

// InstrumentKinds lists every kind of instrument.
func InstrumentKinds() []InstrumentKind {
	return []InstrumentKind{Rule, Caliper, Micrometer, BoreGauge, PlugGauge, DepthMicrometer, DialIndicator}
}

func (c *checker) instrument(b *hclsyntax.Block, inches bool) (Instrument, bool) {
	e, name := c.thing(b, inches, instrumentShapes, words(InstrumentKinds()))
	i := Instrument{Kind: InstrumentKind(e.name), Name: name, Resolution: e.length("resolution"), Range: e.head()}
	i.Smallest, i.Largest = c.pair(e, "range")
	return i, !e.broken
}

// Uncertainty is what the instrument can be wrong by, mm (rule E-02, tables.UncertaintyOf).
func (i Instrument) Uncertainty() units.Length {
	return tables.UncertaintyOf(string(i.Kind), i.Resolution)
}
