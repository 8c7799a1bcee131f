package main

import (
	"fmt"
	"io"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"catchplate/partspec/units"
	"catchplate/planner/numbers/steps"
)

// stepsAnswer is a table of steps for a radius.
type stepsAnswer struct {
	Schema          string       `json:"schema"`
	Count           int          `json:"count"`
	ProvenFewest    bool         `json:"proven_fewest"` // no table on these graduations that keeps the leftover has fewer cuts
	WorstLeftoverMM float64      `json:"worst_leftover_mm"`
	Cuts            []stepAnswer `json:"cuts"`              // in order across
	Runs            []runAnswer  `json:"runs"`              // in which order to cut, so that both dials go one way and always deeper
	EqualStepsCount int          `json:"equal_steps_count"` // cuts by the best equal steps that keep the leftover; 0 when none do
	CustomaryCount  int          `json:"customary_count"`   // cuts by steps of a quarter of a millimetre; 0 when they do not keep the leftover
	FileAreaMM2     float64      `json:"file_area_mm2"`     // section of the crests that are left for the file
	Why             string       `json:"why"`               // what the proof rests on
}

// stepAnswer is one cut: set across, then feed to depth.
type stepAnswer struct {
	AcrossMM     float64 `json:"across_mm"` // of the cutter's middle, from the centre line
	DepthMM      float64 `json:"depth_mm"`  // of the cutter's lowest point, from the bottom (concave) or the crown (convex); more is deeper
	AcrossMarks  int64   `json:"across_marks"`
	DepthMarks   int64   `json:"depth_marks"` // readings in whole graduations
	CrestAfterMM float64 `json:"crest_after_mm"`
}

// runAnswer is a stretch of the table to be cut from First to Last, counted from 1.
type runAnswer struct {
	First int `json:"first"`
	Last  int `json:"last"`
}

// stepsFlags are the arguments of the command.
type stepsFlags struct {
	concave, convex                          bool
	radius, width, roundNose, square, corner length
	graduation, graduationAcross, leftover   length
}

func (c *cli) steps() *cobra.Command {
	var f stepsFlags
	cmd := &cobra.Command{
		Use:     "steps",
		GroupID: groupBench,
		Short:   "The fewest cuts that step out a radius on the graduations of two dials",
		Example: `  catchplate steps --concave --radius 45 --width 40 --round-nose 2 --graduation 0.02 --leftover 0.05
  catchplate steps --convex --radius 20 --width 16 --square 3 --graduation 0.05 --leftover 0.1`,
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			table, err := steps.Fewest(f.request())
			if err != nil {
				return problem("%v", err)
			}
			return c.show(newStepsAnswer(table))
		},
	}
	flags := cmd.Flags()
	flags.BoolVar(&f.concave, "concave", false, "a hollow")
	flags.BoolVar(&f.convex, "convex", false, "a round back")
	flags.Var(&f.radius, "radius", "radius of the curve")
	flags.Var(&f.width, "width", "width of the work across the curve")
	flags.Var(&f.roundNose, "round-nose", "radius of a round-nosed cutter")
	flags.Var(&f.square, "square", "width of a square-ended cutter")
	flags.Var(&f.corner, "corner", "corner radius of the square-ended cutter (default 0)")
	flags.Var(&f.graduation, "graduation", "travel of one graduation of the depth dial, and of the other unless it is given")
	flags.Var(&f.graduationAcross, "graduation-across", "travel of one graduation of the dial across")
	flags.Var(&f.leftover, "leftover", "most metal to leave for the file, square to the curve")
	need(cmd, "radius", "width", "graduation", "leftover")
	cmd.PreRunE = inOrder(exactlyOne("concave", "convex"), exactlyOne("round-nose", "square"))
	return cmd
}

func (f stepsFlags) request() steps.Request {
	curve, cutter := steps.ConvexArc(f.radius.mm(), f.width.mm()), steps.Cutter{Kind: steps.RoundNose, RadiusMM: f.roundNose.mm()}
	if f.concave {
		curve = steps.ConcaveSeat(f.radius.mm(), f.width.mm())
	}
	if f.square.set {
		cutter = steps.Cutter{Kind: steps.SquareEnd, WidthMM: f.square.mm(), CornerRadiusMM: f.corner.mm()}
	}
	across := f.graduation
	if f.graduationAcross.set {
		across = f.graduationAcross
	}
	return steps.Request{
		Curve: curve, Cutter: cutter, LeftoverMM: f.leftover.mm(),
		Across: steps.Axis{GraduationMM: across.mm(), Reads: steps.ReadsTravel},
		Depth:  steps.Axis{GraduationMM: f.graduation.mm(), Reads: steps.ReadsTravel},
	}
}

func newStepsAnswer(t steps.Table) stepsAnswer {
	a := stepsAnswer{
		Schema: "catchplate-steps-1", Count: len(t.Cuts), ProvenFewest: t.ProvenFewest, WorstLeftoverMM: tidy(t.WorstLeftoverMM),
		EqualStepsCount: t.EqualStepsCount, CustomaryCount: t.CustomarySteps, FileAreaMM2: tidy(t.LeftoverAreaMM2), Why: t.Why,
		Cuts: []stepAnswer{}, Runs: []runAnswer{},
	}
	for _, cut := range t.Cuts {
		a.Cuts = append(a.Cuts, stepAnswer{tidy(cut.AcrossMM), tidy(cut.DepthMM), cut.AcrossGrads, cut.DepthGrads, tidy(cut.CrestAfterMM)})
	}
	for _, run := range t.Runs {
		a.Runs = append(a.Runs, runAnswer{run.First + 1, run.Last + 1})
	}
	return a
}

func (a stepsAnswer) text(w io.Writer) {
	fmt.Fprintf(w, "%d cuts", a.Count)
	if a.ProvenFewest {
		fmt.Fprint(w, ": proven to be the fewest on these graduations")
	}
	fmt.Fprintf(w, "\n  worst crest %s", inMM(a.WorstLeftoverMM))
	if a.EqualStepsCount > 0 {
		fmt.Fprintf(w, "; equal steps would need %d", a.EqualStepsCount)
	}
	if a.CustomaryCount > 0 {
		fmt.Fprintf(w, "; steps of 0.25 mm, %d", a.CustomaryCount)
	}
	fmt.Fprintln(w)
	for _, run := range a.Runs {
		fmt.Fprintf(w, "  cut from number %d to number %d; take up the backlash of both dials first\n", run.First, run.Last)
	}
	columns := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(columns, "cut\tacross mm\tmarks\tdepth mm\tmarks\tcrest mm\t")
	for i, cut := range a.Cuts {
		fmt.Fprintf(columns, "%d\t%s\t%d\t%s\t%d\t%s\t\n", i+1, units.Decimal(cut.AcrossMM, 3), cut.AcrossMarks,
			units.Decimal(cut.DepthMM, 3), cut.DepthMarks, units.Decimal(cut.CrestAfterMM, 3))
	}
	columns.Flush()
}
