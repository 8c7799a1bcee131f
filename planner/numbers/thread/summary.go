package thread

import (
	"math"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// Clearance are the three clearance holes of a bolt.
type Clearance struct {
	Close  units.Length `json:"close"`
	Medium units.Length `json:"medium"`
	Free   units.Length `json:"free"`
}

// Summary is a thread at a glance.
type Summary struct {
	Designation       string       `json:"designation"`
	Series            string       `json:"series"`
	Major             units.Length `json:"major_mm"`
	Pitch             units.Length `json:"pitch_mm"`
	TPI               float64      `json:"threads_per_inch,omitempty"`
	AngleDeg          units.Angle  `json:"angle_deg"`
	Depth             units.Length `json:"depth_mm"` // of the bolt's thread
	Effective         units.Length `json:"effective_mm"`
	Core              units.Length `json:"core_mm"` // of the bolt
	MinorInternal     units.Length `json:"minor_internal_mm"`
	TappingDrill      units.Length `json:"tapping_drill_mm"`
	TappingDrillName  string       `json:"tapping_drill"`
	EngagementPercent float64      `json:"engagement_percent"`
	EasyDrill         units.Length `json:"easy_drill_mm"` // about 65 %, tough metal or hand tapping
	Clearance         Clearance    `json:"clearance_mm"`
	Blank             units.Limits `json:"die_blank"`
	HexAF             units.Length `json:"hexagon_mm,omitempty"`
	Notes             string       `json:"notes,omitempty"`
	Source            string       `json:"source"`
	DrillSource       string       `json:"drill_source"`
	ClearanceSource   string       `json:"clearance_source"`
	FromMemory        bool         `json:"from_memory"`
}

// Summarise gathers the figures of a thread. The pitch is rounded to a nanometre.
func Summarise(t tables.Thread) Summary {
	return Summary{
		Designation: t.Designation, Series: string(t.Series), Major: t.Major, Pitch: t.Pitch, TPI: t.TPI, AngleDeg: t.AngleDeg,
		Depth: t.Depth, Effective: t.Effective, Core: t.CoreExt, MinorInternal: t.MinorInt,
		TappingDrill: t.TapDrill, TappingDrillName: t.TapDrillName, EngagementPercent: t.EngagementPercent, EasyDrill: t.Drill65,
		Clearance: Clearance{t.ClearClose, t.ClearMedium, t.ClearFree}, Blank: DieBlank(t), HexAF: t.HexAF, Notes: t.Notes,
		Source: t.Source, DrillSource: t.DrillSource, ClearanceSource: t.ClearSource, FromMemory: t.FromMemory,
	}
}

// DieBlank is the diameter of a bar for a hand die: a twentieth to a seventh of
// a pitch below the major diameter, because the metal swells into the die
// (common practice, no source).
func DieBlank(t tables.Thread) units.Limits {
	return units.Around(t.Major, (-t.Pitch / 7).Round(3), (-t.Pitch / 20).Round(3))
}

// BestWire is the wire that touches the flanks at the effective diameter:
// P / (2 cos(a/2)).
func BestWire(t tables.Thread) units.Length {
	half := (t.AngleDeg / 2).Radians()
	return units.Length(float64(t.Pitch) / (2 * math.Cos(half))).Round(4)
}

// OverWires is the measurement over three wires of that diameter:
// E + W (1 + 1/sin(a/2)) - (P/2) cot(a/2); the lead angle is left out, which
// costs less than 0.002 mm on single-start fastener threads.
func OverWires(t tables.Thread, wire units.Length) units.Length {
	half := (t.AngleDeg / 2).Radians()
	m := float64(t.Effective) + float64(wire)*(1+1/math.Sin(half)) - float64(t.Pitch)/2/math.Tan(half)
	return units.Length(m).Round(4)
}
