package tables

import (
	"sync"

	"catchplate/partspec/units"
)

// InstrumentError is what a kind of instrument can be wrong by in careful hands (rule E-02).
type InstrumentError struct {
	Instrument string
	ReadsTo    units.Length // of one that reads this finely; 0 = any
	Error      units.Length
	Source     string
	FromMemory bool
}

func parseInstrumentError(r *record) InstrumentError {
	e := InstrumentError{Instrument: r.need("instrument"), ReadsTo: r.length("reads_to_mm"), Error: r.length("error_mm")}
	e.Source, e.FromMemory = r.provenance("source")
	if e.Error <= 0 {
		r.fail("error_mm", "is not above 0")
	}
	return e
}

var instrumentErrors = sync.OnceValue(func() []InstrumentError { return mustLoad("instruments.csv", parseInstrumentError) })

// UncertaintyOf is what an instrument of a kind that reads to a resolution can be wrong by, mm: the table's figure, or half the resolution where that is more. A
// kind that is not in the table has its resolution only.
func UncertaintyOf(kind string, resolution units.Length) units.Length {
	usual := units.Length(0)
	for _, e := range instrumentErrors() {
		if e.Instrument == kind && (e.ReadsTo == 0 || resolution > 0 && resolution <= e.ReadsTo) {
			usual = e.Error
		}
	}
	return max(usual, resolution/2)
}
