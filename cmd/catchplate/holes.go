package main

import (
	"fmt"
	"io"
	"strconv"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"catchplate/partspec/units"
	"catchplate/planner/numbers/dividing"
	"catchplate/planner/numbers/holes"
)

// holesAnswer is a ring of holes, and what a caliper reads across it.
type holesAnswer struct {
	Schema string `json:"schema"`
	holes.Pattern
	Checks   []holes.PinCheck `json:"checks"`             // with pins of the size that was given, else over the centres
	Dividing *dividingAnswer  `json:"dividing,omitempty"` // where a dividing head was told of
}

// holesFlags are the arguments of the command.
type holesFlags struct {
	circle, pin length
	count       int
	start       number
	ratio       int
	plates      []int
}

func (c *cli) holes() *cobra.Command {
	f := holesFlags{start: preset(float64(holes.DefaultStart), -360, 360)}
	cmd := &cobra.Command{
		Use:     "holes",
		GroupID: groupBench,
		Short:   "Places of holes on a circle, with the chords that check them",
		Example: `  catchplate holes --circle 100 --count 7
  catchplate holes --circle "3 1/2 in" --count 6 --start 0 --pin 5
  catchplate holes --circle 100 --count 7 --dividing 40 --plates 15,16,17,18,19,20,21`,
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			p, err := holes.Circle(f.circle.value, f.count, units.Angle(f.start.value))
			if err != nil {
				return problem("%v", err)
			}
			answer := holesAnswer{Schema: "catchplate-holes-1", Pattern: p, Checks: p.Checks(f.pin.value)}
			if cmd.Flags().Changed("dividing") {
				if answer.Dividing, err = divided(p, dividing.Head{Ratio: f.ratio, Circles: f.plates}); err != nil {
					return problem("%v", err)
				}
			}
			return c.show(answer)
		},
	}
	flags := cmd.Flags()
	flags.Var(&f.circle, "circle", "pitch circle diameter")
	flags.IntVar(&f.count, "count", 0, "how many holes")
	flags.Var(&f.start, "start", "angle of hole 1 from the x axis, anticlockwise, in degrees")
	flags.Var(&f.pin, "pin", "diameter of pins for the check over two of them (default: none, centres are checked)")
	flags.IntVar(&f.ratio, "dividing", 0, "turns of a dividing head's crank for one of the work; 1 for a direct plate")
	flags.IntSliceVar(&f.plates, "plates", nil, "holes of each circle on the head's plates: 15,16,17")
	cmd.MarkFlagsRequiredTogether("dividing", "plates")
	need(cmd, "circle", "count")
	return cmd
}

func (a holesAnswer) text(w io.Writer) {
	fmt.Fprintf(w, "%d holes on a circle of %s, hole 1 at %s\n", a.Count, both(float64(a.Circle)), a.Start)
	columns := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(columns, "hole\tx mm\ty mm\tx in\ty in\t")
	for i, h := range a.Holes {
		fmt.Fprintf(columns, "%d\t%s\t%s\t%s\t%s\t\n", i+1, fixed(float64(h.X), 3), fixed(float64(h.Y), 3),
			fixed(h.X.Inches(), 4), fixed(h.Y.Inches(), 4))
	}
	columns.Flush()
	for _, check := range a.Checks {
		fmt.Fprintf(w, "%s: %s between centres", gapsText(check.Gaps), check.Chord)
		if check.Over != check.Chord {
			fmt.Fprintf(w, ", %s over the pins, %s between them", check.Over, check.Inside)
		}
		fmt.Fprintln(w)
	}
	if a.Dividing != nil {
		a.Dividing.text(w, a.Count)
	}
}

// fixed shows a coordinate with all its decimals, so that the columns line up.
func fixed(x float64, decimals int) string {
	return strconv.FormatFloat(float64(units.Length(x).Round(decimals)), 'f', decimals, 64)
}

func gapsText(gaps int) string {
	if gaps == 1 {
		return "next hole"
	}
	return fmt.Sprintf("%d holes on", gaps)
}
