package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// threadAnswer is what is known of one thread.
type threadAnswer struct {
	Schema            string          `json:"schema"`
	Designation       string          `json:"designation"`
	Series            string          `json:"series"`
	Standard          string          `json:"standard"`
	MajorMM           float64         `json:"major_mm"`
	PitchMM           float64         `json:"pitch_mm"`
	ThreadsPerInch    float64         `json:"threads_per_inch,omitempty"` // none for a metric pitch
	AngleDeg          float64         `json:"angle_deg"`                  // included angle of the thread's form
	DepthMM           float64         `json:"depth_mm"`                   // of the external thread, radial
	CoreMM            float64         `json:"core_mm"`                    // core diameter of the external thread
	NutMinorMM        float64         `json:"nut_minor_mm"`               // basic minor diameter of the internal thread
	TappingDrillMM    float64         `json:"tapping_drill_mm"`
	TappingDrill      string          `json:"tapping_drill"`      // the drill's name
	EngagementPercent float64         `json:"engagement_percent"` // of a full thread, with that drill
	EasyDrillMM       float64         `json:"easy_drill_mm"`      // stock metric drill nearest 65 % engagement, for tough metal
	ClearanceMM       clearanceAnswer `json:"clearance_mm"`
	Source            string          `json:"source"`           // of the thread's sizes
	DrillSource       string          `json:"drill_source"`     // of the tapping drill
	ClearanceSource   string          `json:"clearance_source"` // of the clearance holes
	FromMemory        bool            `json:"from_memory"`      // a source was remembered, not read: check before you rely on it
	Notes             string          `json:"notes,omitempty"`
}

// clearanceAnswer holds the three clearance holes.
type clearanceAnswer struct {
	Close  float64 `json:"close"`
	Medium float64 `json:"medium"`
	Free   float64 `json:"free"`
}

func (c *cli) thread() *cobra.Command {
	return &cobra.Command{
		Use:     "thread NAME",
		GroupID: groupBench,
		Short:   "Sizes of a screw thread, its tapping drill and clearance holes",
		Example: `  catchplate thread "BA 10"
  catchplate thread M8x1
  catchplate thread "ME 1/4x40"`,
		Args: cobra.MinimumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			t, err := tables.FindThread(strings.Join(args, " "))
			if err != nil {
				return problem("%v", err)
			}
			return c.show(newThreadAnswer(t))
		},
	}
}

func newThreadAnswer(t tables.Thread) threadAnswer {
	return threadAnswer{
		Schema: "catchplate-thread-1", Designation: t.Designation, Series: string(t.Series), Standard: t.Standard,
		MajorMM: tidy(t.Major), PitchMM: tidy(t.Pitch), ThreadsPerInch: t.TPI, AngleDeg: tidy(t.AngleDeg), DepthMM: tidy(t.Depth),
		CoreMM: tidy(t.CoreExt), NutMinorMM: tidy(t.MinorInt),
		TappingDrillMM: tidy(t.TapDrill), TappingDrill: t.TapDrillName, EngagementPercent: tidy(t.EngagementPercent), EasyDrillMM: tidy(t.Drill65),
		ClearanceMM: clearanceAnswer{tidy(t.ClearClose), tidy(t.ClearMedium), tidy(t.ClearFree)},
		Source:      t.Source, DrillSource: t.DrillSource, ClearanceSource: t.ClearSource, FromMemory: t.FromMemory, Notes: t.Notes,
	}
}

func (a threadAnswer) text(w io.Writer) {
	fmt.Fprintf(w, "%s (%s, %s)\n", a.Designation, a.Series, a.Standard)
	pitch := both(a.PitchMM)
	if a.ThreadsPerInch > 0 {
		pitch = units.Decimal(a.ThreadsPerInch, 2) + " threads an inch, " + inMM(a.PitchMM)
	}
	rows(w,
		row{"outside diameter", both(a.MajorMM)},
		row{"pitch", pitch},
		row{"form", fmt.Sprintf("%s°, %s deep", units.Decimal(a.AngleDeg, 1), inMM(a.DepthMM))},
		row{"core of the bolt", both(a.CoreMM)},
		row{"minor diameter of the nut", both(a.NutMinorMM)},
		row{"tapping drill", fmt.Sprintf("%s, %.0f %% of a full thread", a.drillText(), a.EngagementPercent)},
		row{"for tough metal", fmt.Sprintf("%s, about 65 %%", inMM(a.EasyDrillMM))},
		row{"clearance hole", fmt.Sprintf("close %s, medium %s, free %s", inMM(a.ClearanceMM.Close), inMM(a.ClearanceMM.Medium), inMM(a.ClearanceMM.Free))},
		row{"note", a.Notes},
		row{"sizes from", a.Source},
		row{"drill from", a.DrillSource},
		row{"clearance from", a.ClearanceSource},
	)
}

// drillText names the drill and its size, once where the name is the size.
func (a threadAnswer) drillText() string {
	if a.TappingDrill == inMM(a.TappingDrillMM) {
		return both(a.TappingDrillMM)
	}
	return a.TappingDrill + ": " + both(a.TappingDrillMM)
}
