package tables

import (
	"fmt"
	"slices"
	"sync"

	"catchplate/partspec/units"
)

// Series is a standard series of screw threads.
type Series string

// The series. SeriesUN and SeriesWhitworth are specials: a standard form with a
// number of threads an inch that no series has.
const (
	SeriesMetricCoarse Series = "ISO metric coarse"
	SeriesMetricFine   Series = "ISO metric fine"
	SeriesBA           Series = "BA"
	SeriesME40         Series = "ME 40 tpi"
	SeriesME32         Series = "ME 32 tpi"
	SeriesBrass        Series = "BSB 26 tpi"
	SeriesBSW          Series = "BSW"
	SeriesBSF          Series = "BSF"
	SeriesG            Series = "BSP parallel (G)"
	SeriesUNC          Series = "UNC"
	SeriesUNF          Series = "UNF"
	SeriesUN           Series = "UN special"
	SeriesWhitworth    Series = "Whitworth form special"
)

// Thread is one screw thread. Lengths that no source gives are zero. Source
// tells where the geometry comes from, DrillSource and ClearSource where the
// drills do.
type Thread struct {
	Designation string // as printed on a sheet: "M8x1", "10BA", "1/4x40 ME"
	Series      Series
	Standard    string
	Form        Form

	Major     units.Length
	Pitch     units.Length
	TPI       float64 // threads an inch; 0 for a metric pitch
	AngleDeg  units.Angle
	Depth     units.Length // of the external thread
	Effective units.Length
	CoreExt   units.Length // core of the bolt
	MinorInt  units.Length // basic minor diameter of the nut

	TapDrill          units.Length
	TapDrillName      string
	EngagementPercent float64
	Drill65           units.Length // stock metric drill nearest 65 %: tough metal, hand tapping
	DrillSource       string

	ClearClose, ClearMedium, ClearFree units.Length
	ClearSource                        string

	HexAF units.Length // hexagon across flats

	Notes      string
	Source     string
	FromMemory bool

	size string // as its designation names it: "6", "1/4", "#10"
}

func parseThread(r *record) Thread {
	spec, err := parseDesignation(r.need("designation"))
	if err != nil {
		r.fail("designation", "%v", err)
		return Thread{}
	}
	series := Series(r.need("series"))
	t := threadOf(series, spec.size, r.length("major_mm"), r.length("pitch_mm"), r.number("tpi"))
	t.Designation, t.Standard = r.text("designation"), r.need("standard")
	t.TapDrill, t.TapDrillName, t.DrillSource = r.length("tap_drill_mm"), r.need("tap_drill_name"), r.need("tap_drill_basis")
	if d, ok := FindDrill(t.TapDrillName); ok {
		t.TapDrill = d.Diameter
	} else {
		r.fail("tap_drill_name", "no such drill")
	}
	t.Drill65 = r.length("drill_65pct_mm")
	t.ClearClose, t.ClearMedium, t.ClearFree = r.length("clear_close_mm"), r.length("clear_medium_mm"), r.length("clear_free_mm")
	t.ClearSource, t.HexAF, t.Notes = r.text("clear_basis"), r.length("hex_af_mm"), r.text("notes")
	t.Source, t.FromMemory = r.provenance("source")
	t.FromMemory = t.FromMemory || remembered(t.DrillSource) || remembered(t.ClearSource)
	return t
}

// parseThreadSize reads a standard size that is not in the full table; the
// geometry follows from the series, and an empty drill is computed.
func parseThreadSize(r *record) Thread {
	series, size := Series(r.need("series")), r.need("size")
	major, pitch := r.length("major_mm"), r.length("pitch_mm")
	if series == SeriesBA {
		number := int(r.number("size"))
		major, pitch = baSize(number)
	}
	t := threadOf(series, size, major, pitch, r.number("tpi"))
	t.Designation, t.Standard = designationOf(series, size, t.Pitch, t.TPI), standardOf(series)
	t.Source, t.FromMemory = r.provenance("source")
	if name := r.text("tap_drill"); name != "" {
		d, ok := FindDrill(name)
		if !ok {
			r.fail("tap_drill", "no drill %q", name)
		}
		t.TapDrill, t.TapDrillName, t.DrillSource = d.Diameter, d.Name, t.Source
	}
	t.ClearClose, t.ClearMedium, t.ClearFree = r.length("clear_close_mm"), r.length("clear_medium_mm"), r.length("clear_free_mm")
	if t.ClearMedium > 0 {
		t.ClearSource = t.Source
	}
	return t
}

// publishedThreads lists the rows as the files have them: the full rows, then
// the sizes whose geometry is made from their series' formulas.
var publishedThreads = sync.OnceValue(func() []Thread {
	return append(mustLoad("threads.csv", parseThread), mustLoad("threads_more.csv", parseThreadSize)...)
})

// threads lists the same rows with the missing drills filled in.
var threads = sync.OnceValue(func() []Thread {
	rows := slices.Clone(publishedThreads())
	for i, t := range rows {
		rows[i] = withDrills(t)
	}
	return rows
})

// Threads lists every standard size, series by series.
func Threads() []Thread { return slices.Clone(threads()) }

// FindThread returns the thread of a designation: "M6", "M8x1", "M20 x 1.5",
// "BA 10", "10BA", "ME 1/4x40", "BSW 1/4", "UNC 10-24", "#10-24 UNC", "G 1/4",
// "26 tpi brass 1/4". A size outside the tables is computed from its series'
// formulas, and its Source says so.
func FindThread(designation string) (Thread, error) {
	spec, err := parseDesignation(designation)
	if err != nil {
		return Thread{}, err
	}
	found := spec.match(threads())
	if len(found) == 0 {
		return spec.compute()
	}
	for _, t := range found[1:] {
		if t.Form != found[0].Form || t.Pitch != found[0].Pitch || t.Major != found[0].Major {
			return Thread{}, fmt.Errorf("%q may be %s or %s: write which", designation, found[0].Designation, t.Designation)
		}
	}
	return found[0], nil
}
